namespace WheelDraft.Engineering;

/// <summary>A windowed wheel that is copied as it is: every ring, the feed's too, has a radius of its own.</summary>
/// <remarks>Rings stay where they are and are judged. Where windows with the gaps that the rules ask would leave too little copper between
/// them, they are made as wide as the web lets them be, and the open contacts have findings; a web that is less than asked and a tolerance that
/// is not met are findings too. What the process cannot cut is refused as ever.</remarks>
internal sealed class CopiedWheel(Brief brief, RingShop shop, HubLayout hub)
{
    // What a window keeps beyond the inside radius of its corners, mm (methods: windowed wheel).
    private const double CornerGapMm = 0.05;

    // Gaps that differ by no more are the same: far below what is reported, far above rounding.
    private const double SameMm = 1e-9;

    /// <summary>Whether a brief asks for one.</summary>
    public static bool IsOne(Brief brief) => brief.Feed?.RadiusMm is not null && brief.Outputs.All(o => o.RadiusMm is not null);

    /// <summary>The least that a window reaches beyond its patch path, mm: its corners carry the inside radius and stay clear of the patch.</summary>
    public static double LeastSideGapMm(ProcessBrief process, double playMm) => process.InsideRadiusMm + CornerGapMm + playMm;

    /// <summary>The rings, their side gaps as wide as the copper between them allows and no wider than asked.</summary>
    public IReadOnlyList<RingDemand> Narrowed(RingDemand feed, IReadOnlyList<RingDemand> rings)
    {
        RingReach[] sorted = [.. RingOrder.All(feed, rings).Select(r => new RingReach(r)).OrderBy(r => r.FromMm)];
        double web = brief.Wheel.WebMm;
        foreach (KeptBand band in hub.Kept.Append(new(hub.Band.Name, 0, hub.Band.OuterRadiusMm + hub.Band.MoreMm, hub.Band.WhereDiameter)))
        {
            foreach (RingReach reach in sorted)
            {
                double middle = (reach.FromMm + reach.ToMm) / 2;
                reach.AtMost((middle > band.ToMm ? reach.FromMm - band.ToMm : band.FromMm - reach.ToMm) - web);
            }
        }

        foreach ((RingReach inner, RingReach outer) in sorted.Zip(sorted.Skip(1)))
        {
            Share(inner, outer, outer.FromMm - inner.ToMm - web);
        }

        if (brief.Wheel.OuterDiameterMm is double diameter && brief.Wheel.Rim)
        {
            sorted[^1].AtMost((diameter / 2) - web - sorted[^1].ToMm);
        }

        return [.. rings.Select(r => Narrow(r, sorted.First(s => ReferenceEquals(s.Ring, r)).GapMm))];
    }

    // Two neighbours share what is between them in the measure of what each asks for; a whole ring keeps what it needs.
    private void Share(RingReach inner, RingReach outer, double betweenMm)
    {
        double ofInner = Wanted(inner.Ring), ofOuter = Wanted(outer.Ring);
        if (ofInner + ofOuter > betweenMm)
        {
            inner.AtMost(outer.Ring.IsWhole ? betweenMm - ofOuter : betweenMm * ofInner / (ofInner + ofOuter));
            outer.AtMost(inner.Ring.IsWhole ? betweenMm - ofInner : betweenMm * ofOuter / (ofInner + ofOuter));
        }
    }

    private double Wanted(RingDemand ring) => ring.IsWhole ? ring.SidePlayMm + (shop.RunOutMm / 2) : ring.SideGapMm;

    private RingDemand Narrow(RingDemand ring, double mostMm)
    {
        double least = LeastSideGapMm(brief.Process, (brief.Wheel.RunOutMm / 2) + brief.Process.ToleranceMm + ring.SidePlayMm);
        double gap = Math.Max(mostMm, least);
        return ring.IsWhole || gap >= ring.SideGapMm - SameMm ? ring : ring with
        {
            SideGapMm = gap,
            CurvedRule = null,
            WornSideGapMm = ring.WornSideGapMm - (ring.SideGapMm - gap),
            SideGapWhy = $"no more than its neighbours leave it on radii that are given; {Wording.Mm(ring.SideGapMm)} would be asked for: {ring.SideGapWhy}",
        };
    }

    /// <summary>A ring's patch path, and how far a window may reach beyond it.</summary>
    private sealed class RingReach(RingDemand ring)
    {
        public RingDemand Ring => ring;

        public double FromMm { get; } = ring.WornPathFromMm(ring.AskedRadiusMm!.Value);

        public double ToMm { get; } = ring.WornPathToMm(ring.AskedRadiusMm!.Value);

        public double GapMm { get; private set; } = double.PositiveInfinity;

        public void AtMost(double gapMm) => GapMm = Math.Min(GapMm, gapMm);
    }
}
