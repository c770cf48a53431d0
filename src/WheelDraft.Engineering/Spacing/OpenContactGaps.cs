using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Measures how far the contacts of a wheel open.</summary>
internal abstract class OpenContactMeter
{
    /// <summary>How far friction moves the wiper of an output along the motion at most, mm, in addition to the placing.</summary>
    public Func<int, double> WoundMm { get; init; } = static _ => 0;

    /// <summary>The meter for a wheel's construction.</summary>
    public static OpenContactMeter Of(Brief brief, Motion motion, WheelLayout wheel, Func<int, double>? woundMm = null)
    {
        Func<int, double> wound = woundMm ?? (static _ => 0);
        return brief.Wheel.Construction == WheelConstruction.Lands
            ? new LandContactGaps(brief, motion, wheel) { WoundMm = wound }
            : new OpenContactGaps(brief, motion, wheel) { WoundMm = wound };
    }

    /// <summary>How far every contact opens, in file order; outputs that are always on are left out.</summary>
    /// <param name="rules">What is asked of them.</param>
    /// <param name="workingV">Working voltage across each, by index.</param>
    /// <param name="standing">Where the wheel can stand.</param>
    public IReadOnlyList<OpenContact> All(OpenContactRequirements rules, Func<int, double> workingV, IReadOnlyList<StandingStretch> standing) =>
        [.. rules.Outputs
            .Select((rule, i) => Of(i, rule, workingV(i), [.. standing.Where(s => s.VoltageAcross.Contains(i))]))
            .OfType<OpenContact>()];

    /// <summary>How far one output's contact opens; null when it never does.</summary>
    /// <param name="index">Which output.</param>
    /// <param name="requirement">What is asked of its open contact; null for nothing.</param>
    /// <param name="workingV">Working voltage across it.</param>
    /// <param name="standing">Where the wheel can stand with voltage across it; a stretch without extent is one position.</param>
    public abstract OpenContact? Of(int index, PairRequirement? requirement, double workingV, IReadOnlyList<StandingStretch> standing);

    /// <summary>The tightest gap over all stretches; null when the contact is closed in all of them.</summary>
    /// <param name="spans">For each off-period, between which programme angles the contact may be open at all.</param>
    /// <param name="standing">The stretches.</param>
    /// <param name="between">The gap within an off-period, by its index, between two programme angles.</param>
    /// <param name="touching">The gap of nothing where the contact may still be closed: an off-period, by its index, and its beginning or end.</param>
    private protected static ParkedGap? Parked(
        IReadOnlyList<OpenSpan> spans,
        IReadOnlyList<StandingStretch> standing,
        Func<int, double, double, ParkedGap> between,
        Func<int, double, OpenGap> touching) =>
        standing
            .SelectMany(stretch => Enumerable.Range(0, spans.Count).SelectMany(i => Parked(stretch, i, spans[i], between, touching)))
            .Aggregate((ParkedGap?)null, (worst, gap) => worst is null || IsTighter(gap, worst) ? gap : worst);

    /// <summary>The gap with the least to spare along the motion, the first of equals; null without any.</summary>
    private protected static OpenGap? Tightest(IEnumerable<OpenGap?> gaps) => gaps.OfType<OpenGap>().MinBy(g => g.ToSpareMm);

    // Where two positions have the same gap because sideways is less, the one with less along the motion counts.
    private static bool IsTighter(ParkedGap gap, ParkedGap than) =>
        gap.WorstMm < than.WorstMm || (gap.WorstMm <= than.WorstMm && gap.Along?.WorstMm < (than.Along?.WorstMm ?? double.PositiveInfinity));

    // A stretch of up to a turn may meet an off-period twice: at its beginning and, a turn later, at its end.
    private static IEnumerable<ParkedGap> Parked(
        StandingStretch stretch, int index, OpenSpan span, Func<int, double, double, ParkedGap> between, Func<int, double, OpenGap> touching)
    {
        double begins = stretch.FromRad - Angles.TurnRad - (Angles.TurnRad * Math.Floor((stretch.FromRad - span.EarliestRad) / Angles.TurnRad));
        for (double from = begins; from <= span.LatestRad; from += Angles.TurnRad)
        {
            double to = from + (stretch.ToRad - stretch.FromRad);
            if (to < span.EarliestRad)
            {
                continue;
            }

            ParkedGap gap = from < span.BreakRad || to > span.MakeRad
                ? Closed(from < span.BreakRad ? span.BreakRad : span.MakeRad, index, touching)
                : between(index, from, to);
            yield return gap with { FromRad = stretch.FromRad, ToRad = stretch.ToRad, Why = stretch.Why };
        }
    }

    private static ParkedGap Closed(double atRad, int index, Func<int, double, OpenGap> touching) => new(atRad, atRad, 0, 0, atRad) { Along = touching(index, atRad) };
}

/// <summary>An off-period as drawn, and how much sooner and later the contact may open and close.</summary>
/// <param name="BreakRad">Programme angle of the break.</param>
/// <param name="MakeRad">Programme angle of the next make, after the break.</param>
internal readonly record struct OpenSpan(double BreakRad, double MakeRad)
{
    /// <summary>How much sooner it may break, rad, at least 0.</summary>
    public double SoonerRad { get; init; }

    /// <summary>How much later it may make, rad, at least 0.</summary>
    public double LaterRad { get; init; }

    /// <summary>The contact is surely closed before this angle.</summary>
    public double EarliestRad => BreakRad - SoonerRad;

    /// <summary>The contact is surely closed after this angle.</summary>
    public double LatestRad => MakeRad + LaterRad;
}

/// <summary>Measures how far the contacts of a windowed wheel open.</summary>
internal sealed class OpenContactGaps(Brief brief, Motion motion, WheelLayout wheel) : OpenContactMeter
{
    public override OpenContact? Of(int index, PairRequirement? requirement, double workingV, IReadOnlyList<StandingStretch> standing)
    {
        RingLayout ring = wheel.Rings[index];
        if (ring.IsWhole)
        {
            return null;
        }

        OpenContactRule rule = OpenContactRule.Of(requirement);
        WindowGaps gaps = new(motion, ring, rule, new(brief.Wheel.RunOutMm / 2, brief.Process.ToleranceMm, ring.SidePlayMm) { PlacingMm = brief.Housing.PlacingMm + WoundMm(index) });
        IReadOnlyList<OpenPeriod> periods = [.. Enumerable.Range(0, ring.Periods.Count).Select(gaps.Period)];
        ParkedGap? park = Parked([.. Enumerable.Range(0, ring.Periods.Count).Select(gaps.Span)], standing, gaps.LeastBetween, gaps.Touching);
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
