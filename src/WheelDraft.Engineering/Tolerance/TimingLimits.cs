namespace WheelDraft.Engineering;

/// <summary>Worst-case limits of one on-time, by contributor, all in seconds and at least 0.</summary>
/// <remarks>Sums of magnitudes, so every real deviation lies within them. Wear only lengthens an on-time.</remarks>
/// <param name="FrequencyS">Tolerance of the supply frequency.</param>
/// <param name="MakeEdgeS">The cut of the make edge.</param>
/// <param name="BreakEdgeS">The cut of the break edge.</param>
/// <param name="CentreS">The centre off the shaft axis.</param>
/// <param name="SlopeS">Side play and centre offset along the radius on a sloped edge.</param>
/// <param name="WearS">The patch grown to its worn length, one-sided.</param>
public sealed record TimingLimits(double FrequencyS, double MakeEdgeS, double BreakEdgeS, double CentreS, double SlopeS, double WearS)
{
    /// <summary>How much shorter than nominal at worst.</summary>
    public double ShorterS => FrequencyS + MakeEdgeS + BreakEdgeS + CentreS + SlopeS;

    /// <summary>How much longer than nominal at worst.</summary>
    public double LongerS => ShorterS + WearS;

    /// <summary>Root of the sum of squares of everything but wear: limits of normal contributors each at three sigma.</summary>
    public double RootSumSquareS => Math.Sqrt(
        (FrequencyS * FrequencyS) + (MakeEdgeS * MakeEdgeS) + (BreakEdgeS * BreakEdgeS) + (CentreS * CentreS) + (SlopeS * SlopeS));

    /// <summary>The contributors by name, in fixed order.</summary>
    public IReadOnlyList<(string Name, double Seconds)> Contributors =>
    [
        ("supply frequency", FrequencyS),
        ("make edge", MakeEdgeS),
        ("break edge", BreakEdgeS),
        ("centre offset", CentreS),
        ("side play on the slope", SlopeS),
        ("wear", WearS),
    ];
}

internal static class TimingLimitsOf
{
    /// <summary>The worst case of one on-period on a ring radius, after the definition of the worst case of an on-time.</summary>
    public static TimingLimits Period(RingShop shop, RingDemand ring, double radiusMm, OnPeriod period, PeriodCut cut)
    {
        double speed = shop.Motion.SpeedRadPerS;
        double onS = period.SweepRad / speed;
        double e = shop.RunOutMm / 2;
        double cutter = shop.Process.ToleranceMm;
        double lesser = Math.Min(cut.MakeTouch.RadiusMm, cut.BreakTouch.RadiusMm);
        double slope = ring.Adjust is null ? 0 : (ring.SidePlayMm + e) * Math.Abs(cut.SecondsPerMm(speed));
        return new(
            onS * shop.FrequencyShare,
            EdgeS(cutter, cut.MakeTouch, speed),
            EdgeS(cutter, cut.BreakTouch, speed),
            // Make and break edge lie the on-period apart on the wheel, and with two wipers the angle between these more.
            2 * e * Math.Abs(Math.Sin((period.SweepRad + ring.ApartRad) / 2)) / (lesser * speed),
            slope,
            WearS(shop, ring, radiusMm));
    }

    /// <summary>By how much a worn patch lengthens every on-time of a ring with radial edges, s.</summary>
    public static double WearS(RingShop shop, RingDemand ring, double radiusMm)
    {
        double Grows(ContactPatch patch, EdgeEnd end) =>
            new ProgrammePatch(patch.Worn, shop.Motion.Direction).ReachRad(end, radiusMm) - new ProgrammePatch(patch, shop.Motion.Direction).ReachRad(end, radiusMm);

        double more = Grows(ring.MakePatch, EdgeEnd.Make) + Grows(ring.BreakPatch, EdgeEnd.Break);
        return Math.Max(0, more) / shop.Motion.SpeedRadPerS;
    }

    private static double EdgeS(double cutterMm, EdgeTouch touch, double speedRadPerS) =>
        cutterMm / (Math.Cos(touch.InclinationRad) * touch.RadiusMm * speedRadPerS);
}
