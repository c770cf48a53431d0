namespace WheelDraft.Engineering;

/// <summary>The worst-case bands of single edges on a ring.</summary>
/// <remarks>One edge alone is moved by the whole centre offset, in any direction; on an on-time the same offset moves two edges.
/// The wiper may stand anywhere in its travel and side play, new or worn. Placing moves every wiper by itself. The wheel's
/// own lag in the backlash moves all edges of a wheel alike; it is counted all the same, later, on each edge by itself.</remarks>
internal sealed class EdgeBands(RingShop shop, RingDemand ring, double radiusMm)
{
    private readonly Deviations _deviations = Deviations.Of(shop, ring);
    private readonly EdgeStray _make = new(shop, ring.MakePatch, EdgeEnd.Make, Deviations.Of(shop, ring), radiusMm);
    private readonly EdgeStray _off = new(shop, ring.BreakPatch, EdgeEnd.Break, Deviations.Of(shop, ring), radiusMm);
    private readonly double _placingRad = ring.PlacingRad(shop.PlacingMm, radiusMm);

    /// <summary>The bands of one on-period.</summary>
    public PeriodBands Of(OnPeriod period, PeriodCut cut)
    {
        (double Sooner, double Later) make = _make.Over(cut.Make, ring.TravelMm / 2);
        (double Sooner, double Later) off = _off.Over(cut.Break, ring.TravelMm / 2);

        // What makes the copper reach further makes sooner and breaks later.
        double lag = _placingRad + _deviations.BacklashRad;
        EdgeBand makeBand = new(make.Later + _placingRad, make.Sooner + lag);
        EdgeBand breakBand = new(off.Sooner + _placingRad, off.Later + lag);
        (double Sooner, double Later) start = ring.TravelMm == 0 ? make : _make.Over(cut.Make, 0);
        double f = _deviations.FrequencyShare;
        double soonest = shop.Motion.SecondsFromRad(period.StartRad - start.Later - _placingRad);
        double latest = shop.Motion.SecondsFromRad(period.StartRad + start.Sooner + lag);
        return new(makeBand, breakBand, soonest / (soonest < 0 ? 1 - f : 1 + f), latest / (1 - f));
    }
}

/// <summary>How far the edges at one end of a ring's copper may stray.</summary>
internal sealed class EdgeStray(RingShop shop, ContactPatch patch, EdgeEnd end, Deviations deviations, double radiusMm)
{
    private (double OffsetMm, double TravelMm, double Sooner, double Later)? _known;

    /// <summary>How much sooner and later than nominal an edge may be left, frame of a break, rad, at least 0.</summary>
    /// <param name="edge">The edge.</param>
    /// <param name="travelMm">How far the wiper may be moved to either side of mid travel.</param>
    public (double Sooner, double Later) Over(CopperEdge edge, double travelMm)
    {
        // All radial edges of a ring stray alike.
        if (_known is not { } known || known.OffsetMm != edge.OffsetMm || known.TravelMm != travelMm)
        {
            (double sooner, double later) = Found(edge.OffsetMm, travelMm);
            _known = known = (edge.OffsetMm, travelMm, sooner, later);
        }

        return (known.Sooner, known.Later);
    }

    private (double Sooner, double Later) Found(double offsetMm, double travelMm)
    {
        double strays = (end == EdgeEnd.Make ? deviations.MakeCutMm : deviations.BreakCutMm) + deviations.CentreMm;
        double reach = deviations.SidePlayMm + travelMm;
        EdgeCurves Curves(ContactPatch of, double withinMm) =>
            new(new ProgrammePatch(of, shop.Motion.Direction).PointsFor(end), radiusMm - withinMm, radiusMm + withinMm, offsetMm);
        double nominal = Curves(patch, 0).Latest(0);
        double latest = Curves(deviations.Wears ? patch.Worn : patch, reach).Latest(strays);
        double soonest = Curves(patch, reach).Soonest(-strays);
        return (Math.Max(0, nominal - soonest), Math.Max(0, latest - nominal));
    }
}
