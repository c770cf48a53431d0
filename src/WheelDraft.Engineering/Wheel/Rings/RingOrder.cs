namespace WheelDraft.Engineering;

/// <summary>In which order rings stand, from the inside outwards.</summary>
internal static class RingOrder
{
    /// <summary>All rings, the feed first.</summary>
    public static IEnumerable<RingDemand> All(RingDemand? feed, IReadOnlyList<RingDemand> rings) => feed is null ? rings : rings.Prepend(feed);

    /// <summary>The rings in an order of names, the feed's among them as <see cref="FeedBrief.NameInOrder"/>.</summary>
    public static IReadOnlyList<RingDemand> Of(IReadOnlyList<string> names, RingDemand? feed, IReadOnlyList<RingDemand> rings) =>
        [.. names.Select(n => string.Equals(n, FeedBrief.NameInOrder, StringComparison.Ordinal) && feed is not null ? feed : rings.First(r => string.Equals(r.Name, n, StringComparison.Ordinal)))];

    /// <summary>The rings without a radius of their own: the feed, then outputs by ascending (cutter tolerance ÷ allowed angular error), ties in
    /// file order, whole rings first of all.</summary>
    public static IEnumerable<RingDemand> Usual(RingShop shop, RingDemand? feed, IReadOnlyList<RingDemand> rings) =>
        All(feed, [.. rings.OrderBy(r => r.IsWhole || r.ToleranceS is null ? 0 : shop.Process.ToleranceMm / shop.Motion.RadFromSeconds(r.ToleranceS.Value))])
            .Where(r => r.AskedRadiusMm is null);

    /// <summary>Rings that came to stand in another order than the file asks for, because some have radii of their own.</summary>
    /// <param name="placed">The rings in the order asked for.</param>
    /// <param name="feed">Which of them is the feed.</param>
    public static IEnumerable<Finding> Broken(IReadOnlyList<PackedRing> placed, RingDemand? feed)
    {
        foreach ((PackedRing inner, PackedRing outer) in placed.Zip(placed.Skip(1)).Where(p => p.First.Trial.RadiusMm >= p.Second.Trial.RadiusMm))
        {
            string first = Name(inner, feed), second = Name(outer, feed);
            yield return Finding.Error(
                "wheel.order",
                $"[wheel] order asks for {first} inside {second}; {Stands(inner, first)} and {Stands(outer, second)}. Change the order, or a radius.",
                outer.Ring.Where);
        }
    }

    private static string Stands(PackedRing ring, string name) => ring.Ring.AskedRadiusMm is double asked
        ? $"{name} has a radius of its own of {Wording.Mm(asked)}"
        : $"{name} finds room no further in than a radius of {Wording.Mm(ring.Trial.RadiusMm)}";

    private static string Name(PackedRing ring, RingDemand? feed) =>
        feed is not null && string.Equals(ring.Ring.Name, feed.Name, StringComparison.Ordinal) && ring.Ring.Where == feed.Where ? "the feed" : $"'{ring.Ring.Name}'";
}
