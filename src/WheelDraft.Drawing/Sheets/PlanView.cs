using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Wheel, strips, parts and surfaces in plan, seen from the wiper side: at home, nets distinguished; or at a moment, states distinguished.</summary>
internal sealed class PlanView
{
    private readonly Design _design;
    private readonly MomentView? _moment;

    /// <summary>The plan of a design.</summary>
    /// <param name="design">The design.</param>
    /// <param name="moment">The moment to show; null for home, where nets are distinguished instead of states.</param>
    public PlanView(Design design, MomentView? moment)
    {
        (_design, _moment) = (design, moment);
        Looks = NetLooks.Of(design);
        HashSet<string> drawn = [.. DrawnNets(design)];
        Nets = [.. Looks.Nets.Where(drawn.Contains)];
        CarrierMm = (design.Brief.Carrier.DiameterMm ?? design.Wheel.OuterDiameterMm) / 2;
    }

    /// <summary>The looks of nets, as on every sheet.</summary>
    public NetLooks Looks { get; }

    /// <summary>The nets that are drawn, in natural order.</summary>
    public IReadOnlyList<string> Nets { get; }

    /// <summary>Radius of the carrier, mm.</summary>
    public double CarrierMm { get; }

    /// <summary>Whether floating metal is seen.</summary>
    public bool HasFloatingParts => _design.Brief.Parts.Any(p => p.Kind == PartKind.Floating && !IsHidden(_design, p));

    /// <summary>Whether some part is drawn as seen through the carrier.</summary>
    public bool HasHiddenParts => _design.Brief.Parts.Any(p => IsHidden(_design, p));

    /// <summary>What must be seen: the turning wheel, strips and parts.</summary>
    public Bounds Model
    {
        get
        {
            Bounds all = new(-CarrierMm, -CarrierMm, CarrierMm, CarrierMm);
            foreach (Contour ribbon in _design.Strips.Strips.SelectMany(Ribbons))
            {
                all = all.With(ribbon.Bounds);
            }

            return _design.Brief.Parts.Select(p => p.Outline).Concat(_design.Screws.SelectMany(s => s.Solids).Select(s => s.Outline)).Aggregate(all, (a, o) => a.With(o.Bounds));
        }
    }

    /// <summary>The filling of a net: its look at home, its state at a moment.</summary>
    public Fill FillOf(string net) => _moment is MomentView moment
        ? MomentView.FillOf(moment.Net(net))
        : Looks.FillOf(net);

    /// <summary>A strip's edges in the housing.</summary>
    public static IEnumerable<Contour> Ribbons(PlacedStrip strip)
    {
        Placement placement = StripRibbon.ToHousing(strip.Placement);
        return StripRibbon.Of(strip.Form).Select(r => r.Placed(placement));
    }

    /// <summary>Draws everything, the lowest first.</summary>
    public void Draw(SheetBuilder sheet, SheetView view)
    {
        Below(sheet, view);
        Wheel(sheet, view);
        Screws(sheet, view);
        Strips(sheet, view);
    }

    // Adjusting screws with their lugs, under the strips that they push.
    private void Screws(SheetBuilder sheet, SheetView view)
    {
        ViewPen screws = sheet.Group("screws", "Adjusting screws and what holds them", "parts").In(view);
        foreach (Solid part in _design.Screws.SelectMany(s => s.Solids))
        {
            screws.Area(part.Outline, FillOf(part.Net), LineStyle.Thin);
        }
    }

    private static IEnumerable<string> DrawnNets(Design design) =>
    [
        .. design.Strips.Strips.Select(s => s.Net),
        .. design.Brief.Feed is FeedBrief feed ? [feed.Net] : Array.Empty<string>(),
        .. design.Brief.Parts.Where(p => !IsHidden(design, p)).Select(p => p.Net),
    ];

    // Below the carrier's wiper side a part is seen through it.
    private static bool IsHidden(Design design, PartBrief part) => part.ToZMm < -design.Brief.Carrier.StepMm;

    // Surfaces, parts, ribs and slots, from the lowest up.
    private void Below(SheetBuilder sheet, SheetView view)
    {
        ViewPen parts = sheet.Group("parts", "Parts", "parts").In(view);
        foreach (PartBrief part in _design.Brief.Parts.Where(p => !IsHidden(_design, p)).OrderBy(p => p.ToZMm))
        {
            parts.Area(part.Outline, FillOf(part.Net), LineStyle.Thin);
        }

        ViewPen surfaces = sheet.Group("surfaces", "Surfaces, their ribs and slots", "surfaces").In(view);
        foreach (SurfaceBrief surface in _design.Brief.Surfaces)
        {
            if (surface.Outline is Outline outline)
            {
                surfaces.Line(outline.Outer, LineStyle.Thin);
            }
        }

        foreach (RibBrief rib in _design.Brief.Ribs)
        {
            surfaces.Area(Band.Along(rib.Path, rib.ThicknessMm), Fill.Of(FillKind.Insulation), LineStyle.Thin);
        }

        foreach (SlotBrief slot in _design.Brief.Slots)
        {
            surfaces.Area(Band.Along(slot.Path, slot.WidthMm), Fill.Of(FillKind.Window), LineStyle.Thin);
        }
    }

    private void Wheel(SheetBuilder sheet, SheetView view)
    {
        WheelLayout wheel = _design.Wheel;
        Placement turn = _moment?.Wheel ?? Placement.Turn(0);
        sheet.Group("carrier", "Carrier", "carrier").In(view).Area(new Outline(Contour.Circle(Point.Origin, CarrierMm), [wheel.Bore.Placed(turn)]), Fill.Of(FillKind.Carrier), LineStyle.Thin);
        string title = wheel.Feed is RingLayout feed ? $"Wheel, net {feed.Net}" : "Lands";
        ViewPen copper = sheet.Group("wheel", title, "copper").In(view);
        foreach ((CopperPiece piece, Fill fill) in Copper())
        {
            copper.Area(piece.Outline.Placed(turn), fill, LineStyle.Edge);
        }

        if (_moment is not null)
        {
            Home(sheet.Group("home", "Home mark and what else is scribed, turned with the wheel", "direction"), view, turn);
        }

        ViewPen hidden = sheet.Group("hidden-parts", "Parts below the carrier", "parts").In(view);
        foreach (PartBrief part in _design.Brief.Parts.Where(p => IsHidden(_design, p)))
        {
            foreach (Contour contour in part.Outline.Contours)
            {
                hidden.Line(contour, LineStyle.Hidden);
            }
        }

        sheet.Group("axes", "Centre lines", "axes").In(view).CentreCross(Point.Origin, CarrierMm);
    }

    private IEnumerable<(CopperPiece Piece, Fill Fill)> Copper()
    {
        WheelLayout wheel = _design.Wheel;
        if (wheel.Feed is not null)
        {
            return wheel.Copper.Select(c => (c, _moment is MomentView at ? MomentView.FillOf(at.WheelCopper) : FillOf(c.Net)));
        }

        Dictionary<string, (RingLayout Ring, int Land)> lands = wheel.Rings
            .SelectMany(r => r.Lands.Select((l, i) => (l.Name, Place: (r, i))))
            .ToDictionary(l => l.Name, l => l.Place, StringComparer.Ordinal);
        return wheel.Copper.Select(c => (c, _moment is MomentView moment && lands.TryGetValue(c.Name, out (RingLayout Ring, int Land) land)
            ? MomentView.FillOf(moment.Land(land.Ring, land.Land))
            : Fill.Of(FillKind.Copper)));
    }

    /// <summary>The fixed index that the wheel's home mark meets at home; over everything, because a strip may lie there.</summary>
    public void DrawIndex(SheetBuilder sheet, SheetView view)
    {
        Point tip = view.Of(Point.Polar(CarrierMm, 0)) + new Vector(0.5, 0);
        sheet.Group("index", "Index that the home mark meets at home", "direction")
            .Area(new Outline(Contour.Polygon(tip, tip + new Vector(IndexMm, -IndexMm / 2), tip + new Vector(IndexMm, IndexMm / 2))), Fill.Solid(Ink.Accent), Halo);
    }

    // An edge of paper separates marks from copper of any look.
    private const double IndexMm = 4;
    private static readonly LineStyle Halo = LineStyle.Wide(LineKind.ContinuousWide, Ink.Paper, 0.35);

    /// <summary>The wheel's own marks, turned with it; its home mark is drawn larger than it is scribed.</summary>
    private void Home(GroupPen pen, SheetView view, Placement turn)
    {
        Placement placement = turn.Then(view.ToPaper);
        double mark = Math.Min(IndexMm / view.Scale.Factor, CarrierMm * 0.15);
        Contour home = Contour.Polygon(new(CarrierMm, 0), new(CarrierMm - mark, mark / 2), new(CarrierMm - mark, -mark / 2));
        pen.Area(new Outline(home.Placed(placement)), Fill.Solid(Ink.Accent), Halo);
        foreach (IReadOnlyList<Piece> stroke in WheelMarks.Of(_design).Strokes.Skip(1)) // the first is the home mark as scribed
        {
            pen.Line([.. stroke.Select(p => p.Placed(placement))], LineStyle.Thin);
        }
    }

    private void Strips(SheetBuilder sheet, SheetView view)
    {
        IReadOnlyList<string> slugs = FileSlugs.Of(_design.Strips.Strips.Select(s => s.Form.Strip.Name));
        GroupPen all = sheet.Group("strips", "Strips", "strips");
        foreach ((PlacedStrip strip, int i) in _design.Strips.Strips.Select((s, i) => (s, i)))
        {
            GroupPen pen = all.Group($"strip-{slugs[i]}", $"{strip.Form.Strip.Name}, net {strip.Net}", "strip");
            foreach (Contour ribbon in Ribbons(strip))
            {
                pen.Area(new Outline(ribbon.Placed(view.ToPaper)), FillOf(strip.Net), LineStyle.Edge);
            }

            Placement placement = StripRibbon.ToHousing(strip.Placement).Then(view.ToPaper);
            foreach (StripHole hole in strip.Form.Strip.Holes.Where(h => strip.Form.FrameAt(h.AtMm).Up.Z > 0.9999))
            {
                pen.Area(new Outline(Contour.Circle(strip.Form.FrameAt(hole.AtMm).At(0, hole.AcrossMm, 0).Plan, hole.DiameterMm / 2).Placed(placement)), Fill.Of(FillKind.Paper), LineStyle.Thin);
            }

            if (strip.WorkingContact is SpaceVector contact)
            {
                double radius = (strip.Form.Nose?.Rivet?.DiameterMm ?? 1) / 2;
                pen.Area(new Outline(Contour.Circle(view.Of(contact.Plan), view.OnPaperMm(radius))), Fill.Solid(Ink.Accent), LineStyle.Thin);
            }
        }
    }
}
