using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

// The folder "Sheets": what each drawing of a design shows. Each sheet takes a Design and gives a Sheet; how it is written
// is the business of WheelDraft.Formats, and nothing is worked out here that a report would need too.

/// <summary>The wheel, dimensioned: copper, windows, rings, stations, and every edge in a table.</summary>
internal static class WheelSheet
{
    /// <summary>Draws it on the smallest sheet on which everything finds room at full size or larger.</summary>
    /// <param name="design">The design.</param>
    /// <param name="number">Its place in the set.</param>
    /// <param name="options">How it is drawn; a moment does not matter, a part drawing shows the wheel at home.</param>
    public static Sheet Of(Design design, SheetNumber? number = null, SheetOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        IReadOnlyList<RingCallout> key = (options ?? SheetOptions.Usual).Callouts == CalloutMarks.Numbers ? new WheelCallouts(design).Numbered() : [];

        // Hundreds of edges with their corners have no room on any paper: then corners are left to the edges' angles and the rings' windows.
        foreach (bool withCorners in (bool[])[true, false])
        {
            SheetMatter matter = new SheetMatter(WheelEdges.Tables(design, key.Count == 0, withCorners), new("Notes", WheelEdges.Notes(design))) { Caution = new(SheetWordsOf.CautionsOf(design)) }.WithKey(key);
            foreach (PaperSize size in PaperSize.Iso)
            {
                SheetPlan plan = SheetPlan.Of(size, matter);
                WheelPicture picture = WheelPicture.Fitted(design, size, plan, key);
                bool isLast = size == PaperSize.Iso[^1] && (plan.IsRoomy || !withCorners);
                if (isLast || (plan.IsRoomy && picture.Scale.Factor >= 1 && picture.HasAllCallouts))
                {
                    return picture.Draw(matter.WithKey(picture.Key), number ?? SheetNumber.Single);
                }
            }
        }

        throw new System.Diagnostics.UnreachableException();
    }
}

/// <summary>The view of the wheel on one size of paper.</summary>
internal sealed class WheelPicture
{
    // Above and below the wheel, mm on the paper: the arrow of rotation and the line of the diameter, each with its text.
    private const double AboveMm = 13;

    // Patches are small, and leaders end on them: a circle lets them be found.
    private const double PatchCircleMm = 1.5;
    private static readonly LineStyle PatchCircle = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Accent, 0.35);

    // From the wheel to the texts at its sides: what the arrows of leaders need.
    private const double BesideMm = 12;

    // Leaders to edges may cost one step of scale as long as the wheel keeps this size on the paper, mm.
    private const double LeastWheelMm = 85;

    // More leaders than this are no help; the table has all that they would say.
    private const int MostCallouts = 26;

    private readonly Design _design;
    private readonly SheetBuilder _sheet;
    private readonly SheetPlan _plan;
    private readonly SheetView _view;
    private readonly IReadOnlyList<RingCallout> _callouts;

    private WheelPicture(Design design, PaperSize size, SheetPlan plan, (SheetView View, IReadOnlyList<RingCallout> Callouts) choice)
    {
        _design = design;
        _plan = plan;
        _sheet = new(new("wheel", $"Contact wheel: {design.Brief.Title}", WheelEdges.Description(design)), size);
        (_view, _callouts) = choice;
    }

    /// <summary>The scale.</summary>
    public DrawingScale Scale => _view.Scale;

    /// <summary>Whether numbered callouts, which the key counts on, all find room; words may give way to the table.</summary>
    public bool HasAllCallouts => MarksOf(_callouts) == CalloutMarks.Words || _callouts.Count <= Ring(_design, (_view, _callouts), _plan.Picture).Capacity;

    /// <summary>The key to numbered callouts; empty for words.</summary>
    public IReadOnlyList<RingCallout> Key => MarksOf(_callouts) == CalloutMarks.Numbers ? _callouts : [];

    private WheelLayout Wheel => _design.Wheel;

    private Point Centre => _view.Of(Point.Origin);

    private double OuterMm => _view.OnPaperMm(Reach(_design) / 2);

    /// <summary>Chooses scale and callouts for a sheet.</summary>
    /// <param name="design">The design.</param>
    /// <param name="size">The paper.</param>
    /// <param name="plan">How it is shared out.</param>
    /// <param name="key">Numbered callouts; empty for words, as many as find room.</param>
    public static WheelPicture Fitted(Design design, PaperSize size, SheetPlan plan, IReadOnlyList<RingCallout> key)
    {
        if (key.Count > 0)
        {
            (SheetView View, IReadOnlyList<RingCallout> Callouts) all = View(design, plan.Picture, key);
            return new(design, size, plan, (all.View, CalloutKey.Numbered(Ring(design, all, plan.Picture).InOrder(all.Callouts))));
        }

        (SheetView View, IReadOnlyList<RingCallout> Callouts)[] ways = [.. new WheelCallouts(design).Ways().Select(w => View(design, plan.Picture, w))];
        (SheetView View, IReadOnlyList<RingCallout> Callouts) few = ways[^1];
        foreach ((SheetView View, IReadOnlyList<RingCallout> Callouts) way in ways)
        {
            bool large = way.View.Scale == few.View.Scale || way.View.OnPaperMm(Reach(design)) >= LeastWheelMm;
            if (large && way.Callouts.Count <= MostCallouts && way.Callouts.Count <= Ring(design, way, plan.Picture).Capacity)
            {
                return new(design, size, plan, way);
            }
        }

        return new(design, size, plan, few);
    }

    /// <summary>Draws the whole sheet.</summary>
    public Sheet Draw(SheetMatter matter, SheetNumber number)
    {
        SheetFrame.Draw(_sheet, number.On(SheetWordsOf.TitleBlock(_design, "Contact wheel, seen from the wiper side", "Part drawing", Scale)));
        int left = _plan.Draw(_sheet, matter);
        if (left > 0)
        {
            _sheet.Warn(Invariant.Text($"The table of the wheel drawing lacks its last {left} rows: even this paper is too small; report.json lists all edges."));
        }

        DrawWheel();
        DrawDirection();
        DrawDimensions();
        return _sheet.Build();
    }

    private static double Reach(Design design) => Math.Max(design.Wheel.OuterDiameterMm, design.Brief.Carrier.DiameterMm ?? 0);

    // Callouts come in the wheel frame and go on the paper.
    private static (SheetView View, IReadOnlyList<RingCallout> Callouts) View(Design design, Bounds picture, IReadOnlyList<RingCallout> chosen)
    {
        double half = Reach(design) / 2;
        double beside = Math.Min(BesideMm + CalloutRing.ColumnMm(MarksOf(chosen), chosen.Select(c => c.Text)), picture.Width * 0.4);
        Bounds area = new(picture.MinX + beside, picture.MinY + AboveMm, picture.MaxX - beside, picture.MaxY - AboveMm);
        SheetView view = SheetView.Fitted(new(-half, -half, half, half), area);
        return (view, [.. chosen.Select(c => c with { At = view.Of(c.At) })]);
    }

    private static CalloutRing Ring(Design design, (SheetView View, IReadOnlyList<RingCallout> Callouts) way, Bounds picture)
    {
        double half = Reach(design) / 2;
        return new(way.View.Of(new Bounds(-half, -half, half, half)).Grown(4), picture) { Marks = MarksOf(way.Callouts) };
    }

    private static CalloutMarks MarksOf(IReadOnlyList<RingCallout> callouts) =>
        callouts.Any(c => c.Number is not null) ? CalloutMarks.Numbers : CalloutMarks.Words;

    private void DrawWheel()
    {
        double half = Reach(_design) / 2;
        if (half > Wheel.OuterDiameterMm / 2 || Wheel.Feed is null)
        {
            In("carrier", "Carrier", "carrier").Area(new Outline(Contour.Circle(Point.Origin, half), [Wheel.Bore.Travelled(Turning.Clockwise)]), Fill.Of(FillKind.Carrier), LineStyle.Thin);
        }

        ViewPen copper = In("copper", "Copper", "copper");
        foreach (CopperPiece piece in Wheel.Copper)
        {
            copper.Area(piece.Outline, Fill.Of(FillKind.Copper), LineStyle.Edge);
            _sheet.Texts.TakeEdges(piece.Outline.Pieces.Select(p => p.Placed(_view.ToPaper)));
        }

        ViewPen rings = In("rings", "Ring radii", "rings");
        foreach (double radius in Wheel.AllRings.Select(r => r.RadiusMm).Distinct().Order())
        {
            rings.Line(Contour.Circle(Point.Origin, radius), LineStyle.Centre);
        }

        ViewPen axes = In("axes", "Centre lines", "axes");
        axes.CentreCross(Point.Origin, half);
        DrawFixingAxes(axes);
        ViewPen marks = In("marks", "Scribed marks", "marks");
        foreach (IReadOnlyList<Piece> mark in WheelMarks.Of(_design).Strokes)
        {
            marks.Line(mark, LineStyle.Thin);
        }

        ViewPen wipers = In("wipers", "Contact patches at home", "wipers");
        foreach ((RingLayout ring, RingWiper wiper) in Wheel.AllRings.SelectMany(r => r.Wipers, (r, w) => (r, w)))
        {
            wipers.Area(wiper.Patch.At(ring.RadiusMm, wiper.StationRad), Fill.Solid(Ink.Accent));
            wipers.Pen.Line(Contour.Circle(_view.Of(Point.Polar(ring.RadiusMm, wiper.StationRad)), PatchCircleMm), PatchCircle);
        }
    }

    private void DrawFixingAxes(ViewPen axes)
    {
        if (Wheel.PitchCircleMm is double pitch)
        {
            axes.Line(Contour.Circle(Point.Origin, pitch / 2), LineStyle.Centre);
            foreach (Point fixing in Wheel.Fixings)
            {
                // Across the pitch circle, a hole's radius and 1 mm of paper beyond it.
                Vector along = (fixing - Point.Origin).Unit() * ((_design.Brief.Wheel.Fixings!.DiameterMm / 2) + (1 / Scale.Factor));
                axes.Line(fixing - along, fixing + along, LineStyle.Centre);
            }
        }
    }

    /// <summary>The home mark's index outside the wheel and the arrow of rotation over it.</summary>
    private void DrawDirection()
    {
        GroupPen pen = _sheet.Group("home", "Home mark and direction of rotation", "direction");
        Point tip = Centre + new Vector(OuterMm + 2.5, 0);
        pen.Area(new Outline(Contour.Polygon(tip, tip + new Vector(HomeMm, -HomeMm / 2), tip + new Vector(HomeMm, HomeMm / 2))), Fill.Solid(Ink.Accent));
        double sense = _design.Motion.Sigma;
        double radius = OuterMm + 4.5;
        double half = Math.Min(0.6, 26 / radius);
        Arc shaft = new(Centre, radius, (Math.PI / 2) - (sense * half), sense * 2 * half);
        Vector flight = shaft.TangentAt(1);
        Point point = shaft.End + (flight * ArrowMm);
        pen.Line([shaft], LineStyle.Wide(LineKind.ContinuousWide, Ink.Accent, 0.7));
        pen.Area(new Outline(Contour.Polygon(point, shaft.End + (flight.Left * (ArrowMm / 3)), shaft.End - (flight.Left * (ArrowMm / 3)))), Fill.Solid(Ink.Accent));
        foreach ((Point from, Point to) in TextRegistry.Chords(shaft))
        {
            pen.Texts.TakeLine(from, to);
        }
    }

    // The home index and the head of the arrow of rotation, mm on the paper: twice the heads of dimensions, so that they are seen first.
    private const double HomeMm = 5;
    private const double ArrowMm = 6;

    private void DrawDimensions()
    {
        GroupPen pen = _sheet.Group("dimensions", "Dimensions", "dimensions");
        CalloutRing ring = Ring(_design, (_view, _callouts), _plan.Picture);
        if (!ring.TryDraw(pen, _callouts))
        {
            _sheet.Warn("The wheel drawing has no room for leaders to its edges and wipers; its table lists them.");
        }

        string turns = $"turns {SheetWordsOf.Turns(_design)}";
        double above = OuterMm + 6.5;
        pen.TryText(
            turns,
            from up in (double[])[0, 2.5]
            from way in (double[])[0, 18, -18, 36, -36]
            select new TextSpot(Centre + new Vector(way, above + up), TextAlong.Middle),
            TextStyle.Small);
        DimensionPen dimensions = new(pen);
        double outer = _view.OnPaperMm(Wheel.OuterDiameterMm / 2);
        dimensions.Add(new LinearDimension(Centre - new Vector(outer, 0), Centre + new Vector(outer, 0), -(OuterMm + 8), new DrawingNumbers(_design.Brief.DrawingUnit).Diameter(Wheel.OuterDiameterMm))
        {
            Direction = LinearDirection.Level,
            Subject = "outer diameter",
        });
        AngleSense.TryDraw(_sheet, _plan.Picture);
    }

    private ViewPen In(string id, string title, string role) => _sheet.Group(id, title, role).In(_view);
}
