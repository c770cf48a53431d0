namespace WheelDraft.Engineering;

/// <summary>The order of rings that gives the smallest wheel.</summary>
/// <param name="DiameterMm">Diameter of that wheel, mm.</param>
/// <param name="LeastMm">No order gives a smaller wheel than this diameter, mm.</param>
internal sealed record OrderFound(double DiameterMm, double LeastMm)
{
    // Radii are found to a nanometre; orders that differ by no more are the same.
    internal const double SameMm = 1e-8;

    /// <summary>Names from the inside outwards, the feed as <see cref="FeedBrief.NameInOrder"/>.</summary>
    public IReadOnlyList<string> Names { get; init; } = [];

    /// <summary>The rings that were moved about, and their radii, mm.</summary>
    public IReadOnlyList<(RingDemand Ring, double AtMm)> Places { get; init; } = [];

    /// <summary>Diameter of the wheel in the usual order, mm; null where that order cannot be built.</summary>
    public double? UsualMm { get; init; }

    /// <summary>Whether every order was either tried or ruled out.</summary>
    public bool IsProved => LeastMm >= DiameterMm - (2 * SameMm);
}

/// <summary>Searches all orders of the rings without a radius of their own: branch and bound, exact up to <see cref="ExactRings"/> rings.</summary>
/// <remarks>A ring's place depends on those inside it by one number, where the outermost of them ends, and no ring comes to stand further in because
/// that number has grown. So of all orders of the same rings only the one that ends furthest in is followed (which leaves 2ⁿ branches of the n! orders), and
/// a branch ends where even the narrowest bands of what is still to come would make the wheel larger than one that is known. Tests hold it
/// against brute force.</remarks>
internal sealed class OrderSearch(RingConstruction construction, double webMm, double hubMm)
{
    /// <summary>Puts a ring behind a radius at which its band may begin, mm; null where no larger ring can be built either.</summary>
    public required Func<RingDemand, double, PackedRing?> Place { get; init; }

    /// <summary>The outer radius of a wheel with these rings, mm.</summary>
    public required Func<IReadOnlyList<PackedRing>, double> OuterRadiusMm { get; init; }

    /// <summary>Rings up to which every branch is followed.</summary>
    public const int ExactRings = 12;

    // Places that are worked out for more rings than that, in all: a few seconds.
    private const int MostPlaces = 30_000;

    // A branch is a set of rings in one word.
    private const int MostRings = 60;

    private const double SameMm = OrderFound.SameMm;

    // Where a band is narrowest: the corners of a patch reach the less beyond it the larger the ring is, and no ring is larger.
    private const double LargestRingMm = 500;

    /// <summary>Some rings in their places: where the outermost ends, what they are, and in which order.</summary>
    private sealed record Branch(double BoundMm, IReadOnlyList<PackedRing> Placed, IReadOnlyList<int> Order)
    {
        public ulong Rings { get; init; }
    }

    /// <summary>The rings in the best order.</summary>
    /// <param name="free">The rings without a radius of their own, in the usual order.</param>
    /// <returns>Null where no order can be built.</returns>
    public OrderFound? Find(IReadOnlyList<RingDemand> free)
    {
        double[] widths = [.. free.Select(NarrowestMm)];
        Dictionary<int, PackedRing?> alone = [];
        Branch root = new(hubMm, [], []);
        Branch? usual = Along(root, free, alone);
        double known = usual is null ? double.PositiveInfinity : OuterRadiusMm(usual.Placed);
        (Branch? best, double leftOut) = free.Count <= MostRings ? Followed(root, free, (widths, known), alone) : (null, LeastMm(root, widths));
        double found = best is null ? double.PositiveInfinity : OuterRadiusMm(best.Placed);

        // Of orders that are as good the usual one is taken, which people know.
        Branch? chosen = known <= found + SameMm ? usual : best;
        return chosen is null ? null : new(2 * Math.Min(known, found), 2 * Math.Min(leftOut, Math.Min(known, found)))
        {
            Places = [.. chosen.Order.Zip(chosen.Placed, (i, p) => (free[i], p.Trial.RadiusMm))],
            UsualMm = usual is null ? null : 2 * known,
        };
    }

    // All branches ring by ring; what is left out for their number, by the least that could have come of it.
    private (Branch? Best, double LeftOutMm) Followed(Branch root, IReadOnlyList<RingDemand> free, (double[] WidthsMm, double KnownMm) limits, Dictionary<int, PackedRing?> alone)
    {
        int most = free.Count <= ExactRings ? int.MaxValue : Math.Max(8, MostPlaces / (free.Count * free.Count));
        double leftOut = double.PositiveInfinity;
        Branch[] level = [root];
        for (int depth = 0; depth < free.Count; depth++)
        {
            Dictionary<ulong, Branch> next = [];
            foreach (Branch branch in level)
            {
                Grow(branch, free, alone, next);
            }

            (Branch Branch, double LeastMm)[] open = [.. next.Values.Select(b => (b, LeastMm(b, limits.WidthsMm))).Where(b => b.Item2 <= limits.KnownMm + SameMm).OrderBy(b => b.Item2)];
            leftOut = open.Skip(most).Select(b => b.LeastMm).Append(leftOut).Min();
            level = [.. open.Take(most).Select(b => b.Branch)];
        }

        return (level.MinBy(b => OuterRadiusMm(b.Placed)), leftOut);
    }

    private Branch? Along(Branch root, IReadOnlyList<RingDemand> order, Dictionary<int, PackedRing?> alone)
    {
        Branch branch = root;
        for (int i = 0; i < order.Count; i++)
        {
            if (After(branch, order, i, alone) is not Branch next)
            {
                return null;
            }

            branch = next;
        }

        return branch;
    }

    private void Grow(Branch branch, IReadOnlyList<RingDemand> free, Dictionary<int, PackedRing?> alone, Dictionary<ulong, Branch> next)
    {
        for (int i = 0; i < free.Count; i++)
        {
            if ((branch.Rings & (1UL << i)) == 0 && After(branch, free, i, alone) is Branch grown && (!next.TryGetValue(grown.Rings, out Branch? other) || EndMm(grown, free) < EndMm(other, free) - SameMm))
            {
                next[grown.Rings] = grown;
            }
        }
    }

    private Branch? After(Branch branch, IReadOnlyList<RingDemand> free, int ring, Dictionary<int, PackedRing?> alone)
    {
        double from = branch.BoundMm + webMm;
        if (!alone.TryGetValue(ring, out PackedRing? innermost))
        {
            alone[ring] = innermost = Place(free[ring], hubMm + webMm);
        }

        // A ring that could stand no further in if it were alone stands there as long as the others leave it room.
        PackedRing? placed = innermost is not null && innermost.Trial.BandFromMm >= from ? innermost : Place(free[ring], from);
        return placed is null ? null : new(Math.Max(branch.BoundMm, placed.Trial.BandToMm), [.. branch.Placed, placed], [.. branch.Order, ring]) { Rings = branch.Rings | (1UL << ring) };
    }

    // Of branches with the same rings the one that ends furthest in; with all rings in place what counts is the wheel.
    private double EndMm(Branch branch, IReadOnlyList<RingDemand> free) => branch.Placed.Count == free.Count ? OuterRadiusMm(branch.Placed) : branch.BoundMm;

    /// <summary>A radius below which no wheel that goes on from here can end, mm.</summary>
    private double LeastMm(Branch branch, double[] widths)
    {
        if (branch.Placed.Count == widths.Length)
        {
            return OuterRadiusMm(branch.Placed);
        }

        double least = branch.BoundMm + construction.BeyondLastMm(webMm), widest = 0;
        for (int i = 0; i < widths.Length; i++)
        {
            if ((branch.Rings & (1UL << i)) == 0)
            {
                least += webMm + widths[i];
                widest = Math.Max(widest, widths[i]);
            }
        }

        // Without a rim the last windows are open, and their ring ends where its patch does.
        return least - (construction.IsLastOpen ? widest + webMm : 0);
    }

    private double NarrowestMm(RingDemand ring) =>
        Math.Max(0, ring.PathToMm(LargestRingMm) - ring.PathFromMm(LargestRingMm) + (2 * construction.ReachMm(ring)));
}
