using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Draws the copper of a windowed wheel as one outline: rim, windows, bore and fixings.</summary>
internal sealed class WheelCopper(Brief brief, RingShop shop, PackedWheel packed, HubLayout hub)
{
    public Outline Build(IReadOnlyList<RingLayout> rings)
    {
        List<Contour> holes = [hub.Bore];
        holes.AddRange(hub.Fixings.Select(f => Contour.Circle(f, brief.Wheel.Fixings!.DiameterMm / 2)));
        Contour outer = Contour.Circle(Point.Origin, packed.OuterRadiusMm);
        List<(PackedRing Packed, RingLayout Layout)> all = [.. packed.All.Zip(rings)];
        foreach ((PackedRing ring, RingLayout layout) in all.OrderBy(r => r.Packed.Trial.RadiusMm).Where(r => !r.Layout.IsWhole))
        {
            Placement place = new StationFrame(layout.StationRad, shop.Motion).ToWheel;
            if (layout.WindowToMm == packed.OuterRadiusMm)
            {
                outer = Notched(ring, place);
            }
            else
            {
                holes.AddRange(Windows(ring).Select(w => w.Placed(place)));
            }
        }

        return new Outline(outer, holes);
    }

    private IEnumerable<Contour> Windows(PackedRing ring)
    {
        IReadOnlyList<PeriodCut> cuts = ring.Trial.Cuts;
        for (int i = 0; i < cuts.Count; i++)
        {
            int next = (i + 1) % cuts.Count;
            yield return WindowCorners.Window(ring.Trial, cuts[i].Break, cuts[next].Make, next == 0 ? Angles.TurnRad : 0, shop.Process.InsideRadiusMm);
        }
    }

    /// <summary>Without a rim, the windows of the last ring are open outwards: the outer contour runs in and out of them.</summary>
    private Contour Notched(PackedRing ring, Placement place)
    {
        RingTrial trial = ring.Trial with { BandToMm = packed.OuterRadiusMm };
        (double inner, double outer) = (trial.BandFromMm, trial.BandToMm);
        List<Piece> pieces = [];
        for (int i = 0; i < trial.Cuts.Count; i++)
        {
            (CopperEdge make, CopperEdge off) = (trial.Cuts[i].Make, trial.Cuts[i].Break);
            int next = (i + 1) % trial.Cuts.Count;
            double turn = next == 0 ? Angles.TurnRad : 0;
            Point makeOuter = Point.Polar(outer, make.AngleAt(outer));
            Point offOuter = Point.Polar(outer, off.AngleAt(outer));
            Point offInner = Point.Polar(inner, off.AngleAt(inner));
            Point nextInner = Point.Polar(inner, trial.Cuts[next].Make.AngleAt(inner) + turn);
            Point nextOuter = Point.Polar(outer, trial.Cuts[next].Make.AngleAt(outer) + turn);
            pieces.Add(Arc.About(Point.Origin, makeOuter, offOuter, Turning.Anticlockwise));
            pieces.Add(new Segment(offOuter, offInner));
            pieces.Add(Arc.About(Point.Origin, offInner, nextInner, Turning.Anticlockwise));
            pieces.Add(new Segment(nextInner, nextOuter));
        }

        return new Contour(pieces).Filleted(shop.Process.InsideRadiusMm, Corners.ReEntrant).Placed(place);
    }
}
