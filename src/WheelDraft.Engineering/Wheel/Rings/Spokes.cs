namespace WheelDraft.Engineering;

/// <summary>The copper that holds together what lies inside and outside a ring's windows.</summary>
internal static class Spokes
{
    /// <summary>Width of the narrowest spoke between windows, mm: the chord of an on-period at the inner end of its windows, or at the outer if that is less.</summary>
    /// <param name="ring">A ring with windows.</param>
    public static double NarrowestMm(RingLayout ring) => ring.Periods.Min(p => Math.Min(ChordMm(p, ring.WindowFromMm!.Value), ChordMm(p, ring.WindowToMm!.Value)));

    private static double ChordMm(RingPeriod period, double radiusMm) =>
        RingJudge.Chord(radiusMm, period.Break.AngleAt(radiusMm) - period.Make.AngleAt(radiusMm));
}
