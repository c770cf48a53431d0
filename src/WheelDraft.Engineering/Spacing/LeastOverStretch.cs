namespace WheelDraft.Engineering;

/// <summary>The least value of a distance over a stretch of the turn, certified.</summary>
/// <param name="AtRad">Where the least value found is met.</param>
/// <param name="LeastMm">The least value found: the true one is not above it.</param>
/// <param name="LowerMm">The true least value is not below it; at most <see cref="WithinMm"/> under the value found.</param>
internal readonly record struct LeastOverStretch(double AtRad, double LeastMm, double LowerMm)
{
    // How far apart both bounds may be, mm: what reports round to. Larger would show; smaller costs halvings at a flat minimum.
    private const double WithinMm = 1e-6;

    // Most looks: far more than any gap takes; past them the lower bound is what is certain by then.
    private const int MostLooks = 100_000;

    /// <summary>Branch and bound: between two angles the value falls by no more than its greatest change allows (S. A. Piyavskii, USSR
    /// Computational Mathematics and Mathematical Physics 12, 1972).</summary>
    /// <param name="valueMm">The distance at an angle.</param>
    /// <param name="fromRad">Where the stretch begins.</param>
    /// <param name="toRad">Where it ends, not before.</param>
    /// <param name="mostMmPerRad">No change is greater than this.</param>
    public static LeastOverStretch Of(Func<double, double> valueMm, double fromRad, double toRad, double mostMmPerRad)
    {
        (double atFrom, double atTo) = (valueMm(fromRad), valueMm(toRad));
        (double at, double least) = atFrom <= atTo ? (fromRad, atFrom) : (toRad, atTo);
        double Lower(double a, double atA, double b, double atB) => (atA + atB - (mostMmPerRad * (b - a))) / 2;
        PriorityQueue<(double A, double AtA, double B, double AtB), double> open = new();
        open.Enqueue((fromRad, atFrom, toRad, atTo), Lower(fromRad, atFrom, toRad, atTo));
        for (int looks = 0; open.TryDequeue(out (double A, double AtA, double B, double AtB) part, out double lower); looks++)
        {
            if (lower >= least - WithinMm || looks >= MostLooks)
            {
                return new(at, least, Math.Min(least, lower));
            }

            double middle = (part.A + part.B) / 2;
            double value = valueMm(middle);
            (at, least) = value < least ? (middle, value) : (at, least);
            open.Enqueue((part.A, part.AtA, middle, value), Lower(part.A, part.AtA, middle, value));
            open.Enqueue((middle, value, part.B, part.AtB), Lower(middle, value, part.B, part.AtB));
        }

        return new(at, least, least);
    }
}
