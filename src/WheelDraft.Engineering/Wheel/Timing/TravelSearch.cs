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
    public (double MovedMm, double WorstS) Worst(PeriodCut cut) => Worst(cut, double.PositiveInfinity);

    /// <summary>Whether the worst case is beyond a limit, s, anywhere in the travel; or is not known, where an edge is out of reach.</summary>
    public bool Exceeds(PeriodCut cut, double limitS) => !(Worst(cut, limitS).WorstS <= limitS);

    // Ends at the first place whose worst case is beyond a limit.
    private (double MovedMm, double WorstS) Worst(PeriodCut cut, double limitS)
    {
        double step = ring.TravelMm / Places;
        (double moved, double worst) = (0, double.NegativeInfinity);
        for (int i = 0; i <= Places; i++)
        {
            double at = (i * step) - (ring.TravelMm / 2);
            double there = WorstAt(at, cut);
            if (!(there <= limitS))
            {
                return (at, there);
            }

            (moved, worst) = there > worst ? (at, there) : (moved, worst);
        }

        double low = Math.Max(moved - step, -ring.TravelMm / 2);
        double high = Math.Min(moved + step, ring.TravelMm / 2);
        (double first, double last) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
        (double atFirst, double atLast) = (WorstAt(first, cut), WorstAt(last, cut));
        for (int i = 0; i < Steps && worst <= limitS; i++)
        {
            (moved, worst) = atFirst > worst ? (first, atFirst) : (moved, worst);
            (moved, worst) = atLast > worst ? (last, atLast) : (moved, worst);
            if (atFirst > atLast)
            {
                (high, last, atLast) = (last, first, atFirst);
                first = high - (Golden * (high - low));
                atFirst = WorstAt(first, cut);
            }
            else
            {
                (low, first, atFirst) = (first, last, atLast);
                last = low + (Golden * (high - low));
                atLast = WorstAt(last, cut);
            }
        }

        return (moved, worst);
    }

    private double WorstAt(double movedMm, PeriodCut cut)
    {
        (double longer, double shorter) = At(movedMm, cut);
        return Math.Max(longer, shorter);
    }
}
