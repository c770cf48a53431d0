using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Measures how far the contacts of a wheel open.</summary>
internal abstract class OpenContactMeter
{
    /// <summary>The meter for a wheel's construction.</summary>
    public static OpenContactMeter Of(Brief brief, Motion motion, WheelLayout wheel) =>
        brief.Wheel.Construction == WheelConstruction.Lands ? new LandContactGaps(brief, motion, wheel) : new OpenContactGaps(brief, motion, wheel);

    /// <summary>How far one output's contact opens; null when it never does.</summary>
    /// <param name="index">Which output.</param>
    /// <param name="requirement">What is asked of its open contact; null for nothing.</param>
    /// <param name="workingV">Working voltage across it.</param>
    /// <param name="parked">Where the wheel may park: programme angles; an arc without sweep is one position.</param>
    public abstract OpenContact? Of(int index, PairRequirement? requirement, double workingV, IReadOnlyList<ParkedPosition> parked);

    /// <summary>The tightest gap over all parked positions; null when the contact is closed in all of them.</summary>
    /// <param name="periods">The off-periods.</param>
    /// <param name="parked">The parked positions.</param>
    /// <param name="between">The gap within an off-period, by its index, between two programme angles.</param>
    /// <param name="touching">The gap of nothing where the contact may still be closed: an off-period, by its index, and its beginning or end.</param>
    private protected static ParkedGap? Parked(
        IReadOnlyList<OpenPeriod> periods,
        IReadOnlyList<ParkedPosition> parked,
        Func<int, double, double, ParkedGap> between,
        Func<int, double, OpenGap> touching)
    {
        ParkedGap? worst = null;
        foreach (ParkedPosition interval in parked)
        {
            ParkedGap? gap = Parked(periods, interval, between, touching);
            worst = worst is null || (gap is not null && IsTighter(gap, worst)) ? gap ?? worst : worst;
        }

        return worst;
    }

    /// <summary>The gap with the least to spare along the motion, the first of equals; null without any.</summary>
    private protected static OpenGap? Tightest(IEnumerable<OpenGap?> gaps) => gaps.OfType<OpenGap>().MinBy(g => g.ToSpareMm);

    // Where two positions have the same gap because sideways is less, the one with less along the motion counts.
    private static bool IsTighter(ParkedGap gap, ParkedGap than) =>
        gap.WorstMm < than.WorstMm || (gap.WorstMm <= than.WorstMm && gap.Along?.WorstMm < (than.Along?.WorstMm ?? double.PositiveInfinity));

    private static ParkedGap? Parked(
        IReadOnlyList<OpenPeriod> periods,
        ParkedPosition interval,
        Func<int, double, double, ParkedGap> between,
        Func<int, double, OpenGap> touching)
    {
        double sweep = interval.ToRad - interval.FromRad;
        for (int i = 0; i < periods.Count; i++)
        {
            double ahead = Angles.InTurn(interval.FromRad - periods[i].BreakRad);
            double open = periods[i].MakeRad - periods[i].BreakRad;
            bool begins = ahead < open;
            if (begins && ahead + sweep <= open)
            {
                double from = periods[i].BreakRad + ahead;
                return between(i, from, from + sweep) with { FromRad = interval.FromRad, ToRad = interval.FromRad + sweep };
            }

            bool makesWithin = begins && ahead + sweep > open;
            bool breaksWithin = Angles.InTurn(periods[i].BreakRad - interval.FromRad) < sweep;
            if (makesWithin || breaksWithin)
            {
                double at = makesWithin ? periods[i].MakeRad : periods[i].BreakRad;
                return new(interval.FromRad, interval.FromRad + sweep, 0, 0, at) { Along = touching(i, at) };
            }
        }

        return null; // closed all the time while parked
    }
}

/// <summary>Measures how far the contacts of a windowed wheel open.</summary>
internal sealed class OpenContactGaps(Brief brief, Motion motion, WheelLayout wheel) : OpenContactMeter
{
    public override OpenContact? Of(int index, PairRequirement? requirement, double workingV, IReadOnlyList<ParkedPosition> parked)
    {
        RingLayout ring = wheel.Rings[index];
        if (ring.IsWhole)
        {
            return null;
        }

        OpenContactRule rule = OpenContactRule.Of(requirement);
        WindowGaps gaps = new(motion, ring, rule, new(brief.Wheel.RunOutMm / 2, brief.Process.ToleranceMm, ring.SidePlayMm));
        IReadOnlyList<OpenPeriod> periods = [.. Enumerable.Range(0, ring.Periods.Count).Select(gaps.Period)];
        ParkedGap? park = Parked(periods, parked, gaps.LeastBetween, gaps.Touching);
        OpenContact open = new()
        {
            Output = ring.Name,
            WiperNet = ring.Net,
            WheelNet = ring.WheelNet,
            Requirement = requirement,
            WorkingV = workingV,
            Along = Tightest([.. periods.Select(p => p.Along), park?.Along]),
            Sideways = gaps.Sideways(periods[0].GreatestAtRad),
            OpeningMmPerS = ring.RadiusMm * motion.SpeedRadPerS,
            Periods = periods,
            Parked = park,
            Steps = [],
        };
        return open with { Steps = OpenContactSteps.Of(open, rule, ring) };
    }
}
