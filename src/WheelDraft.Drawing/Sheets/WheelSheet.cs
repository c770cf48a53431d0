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
        WheelCallouts callouts = new(design);
        IReadOnlyList<RingCallout> key = (options ?? SheetOptions.Usual).Callouts == CalloutMarks.Numbers ? callouts.Numbered() : [];
        PaperSize[] papers = [.. SheetPapers.Of(design, PaperSize.Iso)];
        SheetNumber place = number ?? SheetNumber.Single;

        // Where leaders turn out to have no room once everything else is drawn, the table takes the angles, or larger paper is tried.
        Sheet? withoutLeaders = null;

        // Hundreds of edges with their corners have no room on any paper: then corners are left to the edges' angles and the rings' windows.
        foreach ((bool withCorners, double leastScale) in ((bool, double)[])[(true, 1), (false, 1), (true, 0), (false, 0)])
        {
            SheetMatter withEdges = Matter(design, withCorners, hasEdges: true).WithKey(key);
            SheetMatter withoutEdges = Matter(design, withCorners, hasEdges: false);
            foreach (PaperSize size in papers)
            {
                WheelChoice? full = Best(design, size, withEdges, key.Count > 0 ? [key] : callouts.WaysWithEdges());
                WheelChoice? few = key.Count > 0 ? null : Best(design, size, withoutEdges, callouts.WaysWithoutEdges());
                bool isFull = full is not null && (few is null || full.Picture.Scale.Factor >= few.Picture.Scale.Factor || full.Picture.IsLarge);
                foreach (WheelChoice choice in (isFull ? [full, few] : (WheelChoice?[])[few]).OfType<WheelChoice>().Where(c => c.Picture.Scale.Factor >= leastScale))
                {
                    Sheet sheet = choice.Picture.Draw(choice.Matter.WithKey(choice.Picture.Key), place);
                    if (choice.Picture.HasLeaders)
                    {
                        return sheet;
                    }

                    withoutLeaders ??= ReferenceEquals(choice, few) ? sheet : null;
                }
            }
        }

        if (withoutLeaders is not null)
        {
            return withoutLeaders;
        }

        // Paper that is bounded may be too small for everything: the picture keeps its size, and the sheet says where the rest stands.
        SheetMatter last = new([.. RevisionTable.Of(design)], new("Notes", ["This paper is too small for the tables of rings and edges and for the notes: report.md and build.md have them."])) { Caution = new(SheetWordsOf.CautionsOf(design)) };
        foreach (PaperSize size in papers.Reverse())
        {
            if ((Best(design, size, last, callouts.WaysWithEdges()) ?? Best(design, size, last, callouts.WaysWithoutEdges())) is WheelChoice bare)
            {
                return bare.Picture.Draw(last, place, "The drawing of the wheel has no room for its tables and notes on the paper that [drawing_office] allows; report.md and build.md have them.");
            }
        }

        return new WheelPicture(design, papers[^1], SheetPlan.Of(papers[^1], last), callouts.WaysWithoutEdges()[^1]).Draw(last, place);
    }

    private sealed record WheelChoice(SheetMatter Matter, WheelPicture Picture);

    private static SheetMatter Matter(Design design, bool withCorners, bool hasEdges) =>
        new([.. RevisionTable.Of(design), .. WheelEdges.Tables(design, withCorners, !hasEdges)], new("Notes", WheelEdges.Notes(design, !hasEdges))) { Caution = new(SheetWordsOf.CautionsOf(design)) };

    private static WheelChoice? Best(Design design, PaperSize size, SheetMatter matter, IReadOnlyList<IReadOnlyList<RingCallout>> ways) =>
        SheetPlan.Best([size], matter, (paper, plan) => ways.Select((w, i) => WheelPicture.Fitted(design, paper, plan, w, i)).OfType<WheelPicture>().MaxBy(p => p.Worth), p => p.Worth) is { } best
            ? new(matter, best.Picture)
            : null;
}

/// <summary>The view of the wheel on one size of paper.</summary>
internal sealed class WheelPicture
{
    // Above the wheel, mm on the paper: the arrow of rotation and its text; below it the line of the diameter.
    private const double AboveMm = 13;
    private const double DiameterMm = 13;

    // Patches are small, and leaders end on them: a circle lets them be found.
    private const double PatchCircleMm = 1.5;
    private static readonly LineStyle PatchCircle = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Accent, 0.35);

    // From the wheel to the texts at its sides: what the arrows of leaders need; and at the least what the frames of run-out take.
    private const double BesideMm = 12;
    private const double FramesMm = 32;

    // From the wheel by itself to the arrows of leaders: beyond the marks of the plane of section, mm.
    private const double BesideCutMm = 9;

    // Leaders to edges may cost one step of scale as long as the wheel keeps this size on the paper, mm.
    private const double LeastWheelMm = 85;

    // More leaders than this are no help; the table has all that they would say.
    private const int MostCallouts = 26;

    private readonly Design _design;
    private readonly PaperSize _size;
    private readonly CalloutMarks _marks;
    private SheetBuilder? _builder;
    private readonly SheetPlan? _plan;
    private readonly Bounds _picture;
    private readonly SheetView _view;
    private readonly IReadOnlyList<RingCallout> _callouts;

    /// <summary>Puts the wheel on a sheet.</summary>
    /// <param name="design">The design.</param>
    /// <param name="size">The paper.</param>
    /// <param name="plan">How it is shared out.</param>
    /// <param name="callouts">What is said of it, in the wheel frame.</param>
    /// <exception cref="NoRoomException">It fits at no standard scale.</exception>
    public WheelPicture(Design design, PaperSize size, SheetPlan plan, IReadOnlyList<RingCallout> callouts)
    {
        (_design, _plan, _picture, _size) = (design, plan, plan.Picture, size);
        _marks = MarksOf(callouts);
        _view = ViewOn(design, _picture, CalloutRing.ColumnMm(_marks, callouts.Select(c => c.Text)));
        _callouts = Placed(callouts);
    }

    /// <summary>The wheel by itself, without its section, in the middle of an area.</summary>
    /// <param name="design">The design.</param>
    /// <param name="area">The area.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="callouts">What is said of it, in the wheel frame.</param>
    public WheelPicture(Design design, Bounds area, DrawingScale scale, IReadOnlyList<RingCallout> callouts)
    {
        (_design, _picture, _size) = (design, area, PaperSize.A4);
        _marks = MarksOf(callouts);
        _view = SheetView.At(scale, Point.Origin, area.Centre + new Vector(0, (DiameterMm - AboveMm) / 2));
        _callouts = Placed(callouts);
    }

    /// <summary>Whether the plane of its section is marked.</summary>
    public bool IsCut { get; init; } = true;

    private static CalloutMarks MarksOf(IReadOnlyList<RingCallout> callouts) => callouts.Any(c => c.Number is not null) ? CalloutMarks.Numbers : CalloutMarks.Words;

    private IReadOnlyList<RingCallout> Placed(IReadOnlyList<RingCallout> callouts)
    {
        RingCallout[] placed = [.. callouts.Select(c => c with { At = _view.Of(c.At) })];
        return _marks == CalloutMarks.Numbers ? CalloutKey.Numbered(Ring.InOrder(placed)) : placed;
    }

    /// <summary>What the wheel takes beside its callouts, mm on the paper: the arrow of rotation above, the line of its diameter below, the arrows of leaders on either side.</summary>
    /// <param name="isCut">Whether the plane of its section is marked.</param>
    public static (double AboveMm, double BelowMm, double BesideMm) RoundMm(bool isCut) => (AboveMm, DiameterMm, BesideMm + (isCut ? BesideCutMm - 4 : 0));

    /// <summary>Diameter of what is drawn of the wheel, mm.</summary>
    public static double ReachMm(Design design) => Reach(design);

    /// <summary>The scale.</summary>
    public DrawingScale Scale => _view.Scale;

    /// <summary>Whether all leaders found room when it was drawn.</summary>
    public bool HasLeaders { get; private set; }

    /// <summary>How good it is: the scale, and of equal scales the fuller words.</summary>
    public double Worth => Scale.Factor * (1 - (0.001 * Way));

    /// <summary>Which way of annotating it has, the fullest first.</summary>
    private int Way { get; init; }

    /// <summary>Whether the wheel is large enough on the paper to give a step of scale for the angles of its edges.</summary>
    public bool IsLarge => _view.OnPaperMm(Reach(_design)) >= LeastWheelMm;

    // Begun when it is drawn: many ways are tried before, and the description costs more than all of them.
    private SheetBuilder Builder => _builder ??= new(new("wheel", $"Contact wheel: {_design.Brief.Title}", WheelEdges.Description(_design)), _size);

    /// <summary>The key to numbered callouts; empty for words.</summary>
    public IReadOnlyList<RingCallout> Key => _marks == CalloutMarks.Numbers ? _callouts : [];

    private WheelLayout Wheel => _design.Wheel;

    private Point Centre => _view.Of(Point.Origin);

    private double OuterMm => _view.OnPaperMm(Reach(_design) / 2);

    // The copper's face on the section, under the plan and the line of its diameter.
    private double SectionY => Centre.Y - OuterMm - DiameterMm - WheelSection.OverMm;

    private CalloutRing Ring
    {
        get
        {
            double half = Reach(_design) / 2;
            return new(_view.Of(new Bounds(-half, -half, half, half)).Grown(IsCut && _plan is null ? BesideCutMm : 4), _plan is null ? _picture : _picture with { MinY = SectionY + WheelSection.OverMm }) { Marks = _marks };
        }
    }

    /// <summary>The wheel on a sheet with all these callouts, or null where they find no room.</summary>
    public static WheelPicture? Fitted(Design design, PaperSize size, SheetPlan plan, IReadOnlyList<RingCallout> callouts, int way)
    {
        try
        {
            WheelPicture picture = new(design, size, plan, callouts) { Way = way };
            return callouts.Count <= picture.Ring.Capacity && (picture._marks == CalloutMarks.Numbers || callouts.Count <= MostCallouts) ? picture : null;
        }
        catch (NoRoomException)
        {
            return null;
        }
    }

    /// <summary>Draws the whole sheet.</summary>
    /// <param name="matter">What stands beside the wheel.</param>
    /// <param name="number">Its place in the set.</param>
    /// <param name="lacks">What this sheet had to do without; null for nothing.</param>
    public Sheet Draw(SheetMatter matter, SheetNumber number, string? lacks = null)
    {
        if (lacks is not null)
        {
            Builder.Warn(lacks);
        }

        SheetFrame.Draw(Builder, number.On(SheetWordsOf.TitleBlock(_design, "Contact wheel, seen from the wiper side", "Part drawing", Scale)));
        int left = _plan!.Draw(Builder, matter);
        if (left > 0)
        {
            Builder.Warn(Invariant.Text($"The table of the wheel drawing lacks its last {left} rows: even this paper is too small; report.json lists all edges."));
        }

        DrawWheel();
        bool allRadii = new WheelSection(_design, SheetView.At(Scale, Point.Origin, new(Centre.X, SectionY)), _picture).Draw(Builder);
        DrawDirection();
        DrawDimensions();
        int unnumbered = DrawNumbers();
        DrawCuttingPlane();
        AngleSense.TryDraw(Builder, _picture);
        DrawDetails(allRadii, unnumbered);
        return Builder.Build();
    }

    /// <summary>Draws the wheel by itself: no frame, tables, section, details or numbers of on-periods.</summary>
    /// <returns>Its view.</returns>
    public SheetView DrawAlone(SheetBuilder sheet)
    {
        _builder = sheet;
        DrawWheel();
        DrawDirection();
        DrawDimensions();
        if (IsCut)
        {
            DrawCuttingPlane();
        }

        AngleSense.TryDraw(sheet, _picture);
        return _view;
    }

    private static double Reach(Design design) => Math.Max(design.Wheel.OuterDiameterMm, design.Brief.Carrier.DiameterMm ?? 0);

    // The plan over its section, in line, in the middle of the picture, at the largest standard scale.
    private static SheetView ViewOn(Design design, Bounds picture, double columnMm)
    {
        double reach = Reach(design);
        double beside = Math.Max(FramesMm, Math.Min(BesideMm + columnMm, picture.Width * 0.4));
        foreach (DrawingScale scale in DrawingScale.Iso)
        {
            double high = AboveMm + (reach * scale.Factor) + DiameterMm + WheelSection.OverMm + WheelSection.UnderMm(design, scale.Factor);
            if ((reach * scale.Factor) + (2 * beside) <= picture.Width && high <= picture.Height)
            {
                double top = picture.MaxY - ((picture.Height - high) / 2);
                return SheetView.At(scale, Point.Origin, new(picture.Centre.X, top - AboveMm - (reach * scale.Factor / 2)));
            }
        }

        throw new NoRoomException("The wheel with its section and its leaders fits the paper at no standard scale.");
    }

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
            Builder.Texts.TakeEdges(piece.Outline.Pieces.Select(p => p.Placed(_view.ToPaper)));
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

        HazardMarks.Draw(Builder, _view, _design, _design.Parts.Wheel);
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
        GroupPen pen = Builder.Group("home", "Home mark and direction of rotation", "direction");
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
        GroupPen pen = Builder.Group("dimensions", "Dimensions", "dimensions");
        HasLeaders = Ring.TryDraw(pen, _callouts);
        if (!HasLeaders)
        {
            Builder.Warn("The wheel drawing has no room for leaders to its edges and wipers; its table lists them.");
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
    }

    // Where leaders to the edges find no room, each on-period's copper carries the number that it has in the table.
    private int DrawNumbers()
    {
        if (_callouts.Any(c => c.Text.Contains(" make ", StringComparison.Ordinal)))
        {
            return 0;
        }

        GroupPen pen = Builder.Group("numbers", "Numbers of the on-periods, as in the table", "dimensions");
        int missing = 0;
        foreach (RingLayout ring in Wheel.Rings)
        {
            for (int i = 0; i < ring.Periods.Count; i++)
            {
                string number = Invariant.Text($"{WheelEdges.NumberOf(_design, ring)}.{i + 1}");
                CircleArc copper = ring.Periods[i].CopperRad;
                IEnumerable<TextSpot> spots = ((double[])[0.5, 0.35, 0.65, 0.2, 0.8]).Select(share => new TextSpot(_view.Of(Point.Polar(ring.RadiusMm, copper.StartRad + (share * copper.SweepRad))), TextAlong.Middle, TextAcross.Middle));
                TextSpot? free = spots.Where(s => pen.Texts.IsFree(new SheetText(number, s, DimensionForm.TextStyle).Box.Grown(TextRegistry.AirMm))).Cast<TextSpot?>().FirstOrDefault();
                if (free is TextSpot spot)
                {
                    pen.PlatedText(number, spot, DimensionForm.TextStyle);
                }

                missing += free is null ? 1 : 0;
            }
        }

        return missing;
    }

    private void DrawCuttingPlane()
    {
        GroupPen pen = Builder.Group("cutting-plane", "Where the section is taken", "cutting-plane");
        foreach (int side in (int[])[-1, 1])
        {
            // Right of the wheel stands the index of home.
            (double from, double to) = side > 0 ? (HomeMm + 2.7, HomeMm + 4.7) : (2, 7);
            Point end = Centre + new Vector(side * (OuterMm + from), 0);
            Point tip = Centre + new Vector(side * (OuterMm + to), 0);
            pen.Line(end, tip, LineStyle.Edge);
            SectionArrow.Draw(pen, tip);
            pen.TryText(
                "A",
                from up in (double[])[1.5, -1.5, 3, -3, 4.5, -4.5]
                from along in (double[])[3, 6, 0, 9]
                select new TextSpot(end + new Vector(side * along, up), TextAlong.Middle, up > 0 ? TextAcross.Baseline : TextAcross.Top),
                TextStyle.Label);
        }
    }

    private void DrawDetails(bool allRadii, int unnumbered)
    {
        Bounds plan = new Bounds(Centre.X, Centre.Y, Centre.X, Centre.Y).Grown(OuterMm + 6);
        int missing = new WheelDetails(_design).Draw(Builder, _view, _picture, [plan]);
        string[] words =
        [
            .. missing > 0 ? [Invariant.Text($"{missing} small {(Wheel.Feed is null ? "lands" : "windows")} are not shown enlarged: no room.")] : (string[])[],
            .. unnumbered > 0 ? [Invariant.Text($"{unnumbered} on-periods have no room for their numbers: see the table.")] : (string[])[],
            .. allRadii ? (string[])[] : ["Radii that are not drawn stand in the table."],
        ];
        GroupPen pen = Builder.Group("left-out", "What is not drawn", "notes");
        foreach (string word in words)
        {
            IEnumerable<TextSpot> spots = Enumerable.Range(0, (int)(_picture.Height / 4)).SelectMany(i => new[]
            {
                new TextSpot(new(_picture.MinX, _picture.MinY + (4 * i))),
                new TextSpot(new(_picture.MaxX, _picture.MinY + (4 * i)), TextAlong.End),
            });
            if (!pen.TryText(word, spots, TextStyle.Small))
            {
                Builder.Warn($"The wheel drawing: {word}");
            }
        }
    }

    private ViewPen In(string id, string title, string role) => Builder.Group(id, title, role).In(_view);
}
