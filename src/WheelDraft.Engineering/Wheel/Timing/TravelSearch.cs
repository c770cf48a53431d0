namespace WheelDraft.Engineering;

/// <summary>The worst case of an adjusted on-time over the whole travel of its wiper.</summary>
/// <remarks>As a rule it is at the inner end; where two corners of a turned patch decide in turn it may be between, by milliseconds. So
/// places all along are tried, and the worst of them is made worse by golden section.</remarks>
internal sealed class TravelSearch(RingShop shop, RingDemand ring, double radiusMm)
{
    // Places tried: a few to each stretch over which one corner decides.
    private const int Places = 24;

    // Steps of golden section: a thirty-thousandth of the stretch between two places, its effect on the worst case the square of that.
    private const int Steps = 22;

    private const double Golden = 0.61803398874989485;

    private readonly Deviations _deviations = Deviations.Of(shop, ring);

    /// <summary>How much longer and shorter than nominal at worst with the wiper moved outward from mid travel, s.</summary>
    public (double LongerS, double ShorterS) At(double movedMm, PeriodCut cut) =>
        new RingTiming(shop, ring, _deviations, radiusMm, movedMm).Limits(ring.Periods[0], cut);

    /// <summary>Where the worst case is greatest, mm outward from mid travel, and what it is there, s.</summary>
    public (double MovedMm, double WorstS) Worst(PeriodCut cut)
    {
        double Of(double moved)
        {
            (double longer, double shorter) = At(moved, cut);
            return Math.Max(longer, shorter);
        }

        double step = ring.TravelMm / Places;
        (double moved, double worst) = Enumerable.Range(0, Places + 1).Select(i => (i * step) - (ring.TravelMm / 2))
            .Select(m => (Moved: m, Worst: Of(m))).MaxBy(p => double.IsNaN(p.Worst) ? double.PositiveInfinity : p.Worst);
        double low = Math.Max(moved - step, -ring.TravelMm / 2);
        double high = Math.Min(moved + step, ring.TravelMm / 2);
        for (int i = 0; i < Steps; i++)
        {
            (double first, double last) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
            (double atFirst, double atLast) = (Of(first), Of(last));
            (moved, worst) = atFirst > worst ? (first, atFirst) : (moved, worst);
            (moved, worst) = atLast > worst ? (last, atLast) : (moved, worst);
            (low, high) = atFirst > atLast ? (low, last) : (first, high);
        }

        return (moved, worst);
    }
}
