using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Wheel, strips, parts and surfaces in plan, at home, seen from the wiper side; nets distinguished by pattern and label as well as colour.</summary>
internal static class AssemblySheet
{
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Whether a design has anything to assemble beside its wheel.</summary>
    public static bool IsWanted(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return design.Strips.Strips.Count > 0 || design.Brief.Parts.Count > 0;
    }

    /// <summary>Draws it on the smallest sheet on which everything finds room.</summary>
    /// <param name="design">The design.</param>
    /// <param name="number">Its place in the set.</param>
    /// <param name="options">How it is drawn.</param>
    public static Sheet Of(Design design, SheetNumber? number = null, SheetOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        SheetOptions chosen = options ?? SheetOptions.Usual;
        try
        {
            return With(design, number, chosen);
        }
        catch (NoRoomException) when (chosen.Callouts == CalloutMarks.Words)
        {
            // Names of legal length may be wider than any paper: then they go into a key.
            return With(design, number, chosen with { Callouts = CalloutMarks.Numbers });
        }
    }

    private static Sheet With(Design design, SheetNumber? number, SheetOptions chosen)
    {
        MomentView? moment = chosen.MomentOf(design);
        AssemblyWords words = new(design, moment);
        PlanView plan = new(design, moment);
        AssemblyLabels labels = new(design, plan, moment);
        IReadOnlyList<RingCallout> key = chosen.Callouts == CalloutMarks.Numbers ? CalloutKey.Numbered(labels.All()) : [];
        SheetMatter matter = new SheetMatter([AssemblyItems.Table(design), .. words.Tables()], words.Notes()) { Caution = new(SheetWordsOf.CautionsOf(design)) }.WithKey(key);
        PaperSize[] papers = [.. SheetPapers.Of(design, Sizes)];
        AssemblyPlan Picture(SheetPlan shared) => new(design, plan, labels, (key.Count == 0 ? labels.All() : key, shared.Picture)) { IsMoment = moment is not null };
        (PaperSize size, SheetPlan shared, AssemblyPlan picture) =
            SheetPlan.Best(papers, matter, (_, way) => Fitted(() => Picture(way)), p => p.Scale.Factor)
            ?? (papers[^1], SheetPlan.Of(papers[^1], matter), Picture(SheetPlan.Of(papers[^1], matter)));
        SheetBuilder sheet = new(new("assembly", $"Assembly: {design.Brief.Title}", words.Description()), size);
        SheetFrame.Draw(sheet, (number ?? SheetNumber.Single).On(SheetWordsOf.TitleBlock(design, "Wheel and strips in plan and from the side", "Assembly drawing", picture.Scale) with { Projection = Projection.FirstAngle }));
        if (shared.Draw(sheet, matter.WithKey(picture.Key)) is > 0 and int missing)
        {
            sheet.Warn(Invariant.Text($"The assembly drawing lacks {missing} rows of its tables; report.json has all strips."));
        }

        picture.Draw(sheet);
        return sheet.Build();
    }

    private static AssemblyPlan? Fitted(Func<AssemblyPlan> picture)
    {
        try
        {
            return picture();
        }
        catch (NoRoomException)
        {
            return null;
        }
    }
}

/// <summary>What the assembly sheet says.</summary>
internal sealed class AssemblyWords(Design design, MomentView? moment)
{
    private readonly DrawingNumbers _numbers = new(design.Brief.DrawingUnit);

    /// <summary>Where strips stand; none without strips.</summary>
    public IEnumerable<SheetTable> Tables() => design.Strips.Strips.Count == 0 ? [] : [StripTable()];

    private SheetTable StripTable() => new(
        [
            new("Item", TextAlong.End),
            new("Station, °", TextAlong.End),
            new($"Ring radius, {_numbers.UnitSign}", TextAlong.End),
            new("Approach, °", TextAlong.End),
            new("Arm"),
            new("Force, N", TextAlong.End),
        ],
        [.. design.Strips.Strips.Select(Row)])
    {
        Title = "Strips",
    };

    public NoteBlock Notes()
    {
        List<string> notes =
        [
            moment is null ? "Drawn at home." : $"{moment.Sentence} Hatched parts are live; dotted ones are joined to neither line nor neutral and may hold a charge.",
            $"Seen from the wiper side; the wheel turns {SheetWordsOf.Turns(design)}. Stations count anticlockwise from the x axis, approaches from the outward radius at the contact.",
            OverallWords(),
            "Strips are drawn free of the wheel, their contacts where they touch when pressed; from the side they are pressed on it." + (moment is null ? " Nets stand in brackets." : ""),
        ];
        notes.AddRange(design.Brief.Surfaces.Select(s => $"Surface {s.Name}: {_numbers.LengthWithUnit(Math.Abs(s.LevelMm))} {(s.LevelMm < 0 ? "below" : "above")} the copper face, material group {s.Group}{(s.Outline is null ? ", reaching beyond the drawing" : "")}."));
        notes.AddRange(design.Brief.Parts.Select(p => $"Part {p.Name} ({KindWords(p.Kind)}): from {_numbers.Length(p.FromZMm)} to {_numbers.LengthWithUnit(p.ToZMm)} over the copper face."));
        notes.AddRange(design.Brief.Ribs.Select((r, i) => Invariant.Text($"Rib {i + 1} on {r.Surface}: {_numbers.LengthWithUnit(r.HeightMm)} high, {_numbers.LengthWithUnit(r.ThicknessMm)} thick, {r.Joint.ToString().ToLowerInvariant()}.")));
        notes.AddRange(design.Brief.Slots.Select((s, i) => Invariant.Text($"Slot {i + 1} in {s.Surface}: {_numbers.LengthWithUnit(s.WidthMm)} wide, {(s.DepthMm is double depth ? _numbers.LengthWithUnit(depth) + " deep" : "through")}.")));
        return new("Notes", notes);
    }

    private string OverallWords()
    {
        Bounds plan = new PlanView(design, moment).Model;
        (double low, double high) = SideElevation.HeightsOf(design);
        return $"Overall {_numbers.Length(plan.Width)} × {_numbers.Length(plan.Height)} × {_numbers.LengthWithUnit(high - low)} high; first angle: the plan stands under the view from the side. Circled numbers are items of the parts list.";
    }

    public string Description()
    {
        string strips = string.Join("; ", design.Strips.Strips.Select(s => $"{s.Form.Strip.Name} on net {s.Net}{(moment is null ? "" : $", {moment.Word(moment.Net(s.Net))},")}{(s.Ring is RingPlace r ? $" at station {DrawingNumbers.Angle(r.StationRad)}" : "")}"));
        return $"Wheel and strips in plan, seen from the wiper side, turning {SheetWordsOf.Turns(design)}. {moment?.Sentence ?? "Drawn at home."} Strips: {(strips.Length == 0 ? "none" : strips)}.";
    }

    internal static string KindWords(PartKind kind) => kind switch
    {
        PartKind.Live => "live",
        PartKind.Earthed => "earthed",
        PartKind.Touchable => "touchable",
        _ => "floating",
    };

    private IReadOnlyList<string> Row(PlacedStrip strip) =>
    [
        Invariant.Text($"{AssemblyItems.NumberOf(design, strip.Form.Strip.Name)}"),
        strip.Ring is RingPlace ring ? DrawingNumbers.Fixed(Angles.DegFromRad(ring.StationRad), 1) : "–",
        strip.Ring is RingPlace place ? _numbers.LengthInColumn(place.RadiusMm, 2) : "–",
        DrawingNumbers.Fixed(Angles.DegFromRad(strip.Form.Strip.ApproachRad ?? 0), 1),
        strip.Sense switch { ArmSense.Trailing => "trails", ArmSense.Leading => "leads", ArmSense.Across => "across", _ => "plain" },
        strip.Spring is StripSpring spring ? DrawingNumbers.Fixed(spring.ForceN, 2) : "–",
    ];
}

/// <summary>The plan view of the assembly with its labels.</summary>
internal sealed class AssemblyPlan
{
    // Above and below the view for stations, beside it for leaders and the ends of their texts, mm on the paper.
    private const double AboveMm = 10;
    private const double BelowMm = 14;
    private const double BetweenMm = 14;
    private const double LeaderMm = 11;

    // What the plan keeps of the width, whatever its labels say; with less, labels go into a key.
    private const double PlanShare = 0.4;

    private readonly PlanView _plan;
    private readonly AssemblyLabels _words;
    private readonly Bounds _area;
    private readonly ChartLegend _legend;
    private readonly double _footMm;
    private readonly SheetView _view;
    private readonly CalloutRing _ring;
    private readonly IReadOnlyList<RingCallout> _labels;
    private readonly Design _design;
    private readonly SheetView _side;
    private readonly Bounds _seen;

    /// <summary>Puts the view from the side and under it the plan into an area.</summary>
    /// <param name="design">The design.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="words">What is said of it.</param>
    /// <param name="on">Its labels, points in the housing, numbered ones are numbered again as they stand; and the area.</param>
    public AssemblyPlan(Design design, PlanView plan, AssemblyLabels words, (IReadOnlyList<RingCallout> Labels, Bounds Area) on)
    {
        (IReadOnlyList<RingCallout> labels, Bounds area) = on;
        (_design, _plan, _words, _area) = (design, plan, words, area);
        _legend = words.Legend();
        _footMm = _legend.HeightMm(area.Width) + 4;
        Bounds model = plan.Model;
        CalloutMarks marks = labels.Any(l => l.Number is not null) ? CalloutMarks.Numbers : CalloutMarks.Words;
        double mostMm = (area.Width * (1 - PlanShare) / 2) - LeaderMm;
        if (marks == CalloutMarks.Words && CalloutRing.ColumnMm(marks, labels.Select(l => l.Text)) > mostMm)
        {
            throw new NoRoomException("The labels of the assembly drawing leave too little room for its plan.");
        }

        double side = CalloutRing.ColumnMm(marks, labels.Select(l => l.Text)) + LeaderMm + (labels.Any(l => l.Item is not null) ? CalloutRing.ItemWidthMm : 0);
        (double low, double high) = SideElevation.HeightsOf(design);
        Bounds room = new(area.MinX + side, area.MinY + BelowMm + _footMm, area.MaxX - side, area.MaxY - AboveMm - BetweenMm);
        _seen = model with { MinY = low, MaxY = high };
        double deep = AssemblySide.WithBases(design, _seen).Width;
        DrawingScale scale = DrawingScale.Fitting(new(0, 0, Math.Max(model.Width, deep), model.Height + high - low), room);
        double foot = room.MinY + ((room.Height - ((model.Height + high - low) * scale.Factor)) / 2);
        _view = SheetView.At(scale, new(model.Centre.X, model.MinY), new(room.Centre.X, foot));
        _side = SheetView.At(scale, new(model.Centre.X, low), new(room.Centre.X, foot + (model.Height * scale.Factor) + BetweenMm));
        _ring = new(_view.Of(model).Grown(3), area with { MinY = area.MinY + _footMm, MaxY = _side.Of(new Point(0, low)).Y - 4 }) { Marks = marks };
        RingCallout[] placed = [.. labels.Select(l => l with { At = _view.Of(l.At) })];
        _labels = marks == CalloutMarks.Numbers ? CalloutKey.Numbered(_ring.InOrder(placed)) : placed;
    }

    /// <summary>Whether a moment is shown, so that the wheel's home mark needs the index that it meets.</summary>
    public bool IsMoment { get; init; }

    /// <summary>The scale.</summary>
    public DrawingScale Scale => _view.Scale;

    /// <summary>The key to numbered labels, in the order in which they stand; empty for words.</summary>
    public IReadOnlyList<RingCallout> Key => _ring.Marks == CalloutMarks.Numbers ? _labels : [];

    /// <summary>Draws it.</summary>
    public void Draw(SheetBuilder sheet)
    {
        _plan.Draw(sheet, _view);
        _words.DrawStations(sheet, _view);
        if (IsMoment)
        {
            _plan.DrawIndex(sheet, _view);
        }

        _legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(_area.MinX, _area.MinY + _footMm - 4), _area.Width);
        GroupPen pen = sheet.Group("labels", "Labels", "labels");
        if (!_ring.TryDraw(pen, _labels))
        {
            bool most = _ring.TryDraw(pen, [.. _labels.Take(_ring.Capacity)]);
            sheet.Warn(most
                ? Invariant.Text($"The assembly drawing lacks {_labels.Count - _ring.Capacity} labels that find no room.")
                : "The assembly drawing lacks its labels: they find no room.");
        }

        FromTheSide(sheet);
    }

    private void FromTheSide(SheetBuilder sheet)
    {
        DimensionPen dimensions = AssemblySide.Draw(sheet, _design, _side, _seen);
        DrawingNumbers numbers = new(_design.Brief.DrawingUnit);
        Bounds plan = _view.Of(_plan.Model);
        dimensions.Add(new LinearDimension(new(plan.MinX, plan.MinY), new(plan.MaxX, plan.MinY), -6, numbers.Length(_plan.Model.Width)) { Direction = LinearDirection.Level, Subject = "overall width" });
    }
}

/// <summary>The view of the assembly from the side, with its main dimensions.</summary>
internal static class AssemblySide
{
    /// <summary>What is seen with the bases, which may be wider.</summary>
    /// <param name="design">The design.</param>
    /// <param name="seen">What is seen else, x as in the plan, y the height over the copper face.</param>
    public static Bounds WithBases(Design design, Bounds seen) =>
        design.Parts.Bases.Select(b => b.Part.CutBounds).Aggregate(seen, (a, b) => a with { MinX = Math.Min(a.MinX, b.MinX), MaxX = Math.Max(a.MaxX, b.MaxX) });

    /// <summary>Draws it.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="design">The design.</param>
    /// <param name="view">The view: x as in the plan, y the height over the copper face.</param>
    /// <param name="seen">What is seen without bases.</param>
    /// <returns>The pen of its dimensions.</returns>
    public static DimensionPen Draw(SheetBuilder sheet, Design design, SheetView view, Bounds seen)
    {
        SideElevation.Draw(sheet, design, view, design.Parts.Bases.Count == 0 ? null : design.Parts.Bases[0]);
        Point head = view.Of(new Point(0, seen.MaxY));
        sheet.Group("side-axis", "The shaft axis from the side", "axes").Line(view.Of(new Point(0, seen.MinY)) - new Vector(0, 3), head + new Vector(0, 3), LineStyle.Centre);
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        DimensionPen dimensions = new(sheet.Group("dimensions", "Main dimensions", "dimensions"));
        Bounds side = view.Of(seen);
        Bounds all = view.Of(WithBases(design, seen));
        (double left, double right, double face) = (all.MinX, all.MaxX, view.Of(Point.Origin).Y);
        double diameter = design.Brief.Carrier.DiameterMm ?? design.Wheel.OuterDiameterMm;
        double radius = view.OnPaperMm(diameter / 2);
        dimensions.Add(new LinearDimension(new(head.X - radius, face), new(head.X + radius, face), side.MaxY - face + 4, numbers.Diameter(diameter)) { Direction = LinearDirection.Level, Subject = "wheel" });
        dimensions.Add(new LinearDimension(new(left, side.MinY), new(left, side.MaxY), 5, numbers.Length(seen.Height)) { Direction = LinearDirection.Upright, Subject = "overall height" });
        dimensions.Add(new LinearDimension(new(right, face), new(right, side.MaxY), -5, numbers.Length(seen.MaxY)) { Direction = LinearDirection.Upright, Subject = "over the copper face" });
        return dimensions;
    }
}

/// <summary>What is named on the assembly, with points in the housing.</summary>
internal sealed class AssemblyLabels(Design design, PlanView plan, MomentView? moment)
{
    // A station's line ends this share of the carrier's radius outside it.
    private const double BeyondShare = 0.12;

    /// <summary>Strips, wheel or lands, parts, stations.</summary>
    public IReadOnlyList<RingCallout> All() =>
    [
        .. Labelled().Select(l => new RingCallout(l.At, l.Words) { Item = l.Item }),
        .. design.Wheel.AllRings.SelectMany(r => r.Wipers).Select(w => new RingCallout(StationEnd(w.StationRad), $"{w.Name} at {DrawingNumbers.Angle(w.StationRad)}")),
    ];

    /// <summary>Ring radii and stations as chain lines.</summary>
    public void DrawStations(SheetBuilder sheet, SheetView view)
    {
        ViewPen pen = sheet.Group("stations", "Stations", "stations").In(view);
        foreach (RingLayout ring in design.Wheel.AllRings)
        {
            pen.Line(Contour.Circle(Point.Origin, ring.RadiusMm), LineStyle.Centre);
        }

        foreach ((RingLayout ring, RingWiper wiper) in design.Wheel.AllRings.SelectMany(r => r.Wipers, (r, w) => (r, w)))
        {
            pen.Line(Point.Polar(ring.RadiusMm, wiper.StationRad), StationEnd(wiper.StationRad), LineStyle.Centre);
        }
    }

    /// <summary>What patterns mean.</summary>
    public ChartLegend Legend() => new(
    [
        .. moment is null ? plan.Nets.Select(n => new LegendEntry(plan.Looks.Words(n), plan.FillOf(n), LineStyle.Thin)) : MomentView.Legend,
        .. moment is null && design.Wheel.Feed is null ? [new LegendEntry("land", Fill.Of(FillKind.Copper), LineStyle.Thin)] : Array.Empty<LegendEntry>(),
        .. moment is null && plan.HasFloatingParts ? [new LegendEntry("floating metal", Fill.Of(FillKind.Part), LineStyle.Thin)] : Array.Empty<LegendEntry>(),
        .. plan.HasHiddenParts ? [new LegendEntry("part below the carrier", null, LineStyle.Hidden)] : Array.Empty<LegendEntry>(),
        .. design.Brief.Ribs.Count > 0 ? [new LegendEntry("rib", Fill.Of(FillKind.Insulation), LineStyle.Thin)] : Array.Empty<LegendEntry>(),
        .. design.Strips.Strips.Any(s => s.WorkingContact is not null) ? [new LegendEntry("contact", Fill.Solid(Ink.Accent), LineStyle.Thin)] : Array.Empty<LegendEntry>(),
    ]);

    // The point on a circle, near a direction, that no strip covers.
    private Point Bare(double radiusMm, double nearDeg)
    {
        Outline[] strips = [.. design.Strips.Strips.SelectMany(PlanView.Ribbons).Select(r => new Outline(r.Travelled(Turning.Anticlockwise)))];
        Point[] points = [.. Enumerable.Range(0, 36).Select(i => (i % 2 == 0 ? 5 : -5) * ((i + 1) / 2)).Select(off => Point.Polar(radiusMm, Angles.RadFromDeg(nearDeg + off)))];
        return points.Append(points[0]).First(p => !Array.Exists(strips, s => s.Contains(p)) || p == points[0] && Array.TrueForAll(points, q => Array.Exists(strips, s => s.Contains(q))));
    }

    private Point StationEnd(double stationRad) => Point.Polar(plan.CarrierMm * (1 + BeyondShare), stationRad);

    // Its net, or at a moment how that stands.
    private string Standing(string name, string net) => moment is null ? $"{name} ({net})" : $"{name}, {moment.Word(moment.Net(net))}";

    private IEnumerable<(Point At, string Words, int? Item)> Labelled()
    {
        foreach (PlacedStrip strip in design.Strips.Strips)
        {
            StripFrame foot = strip.Placement.Of(strip.Form.FrameAt((strip.Form.Clamp.FromMm + strip.Form.Clamp.ToMm) / 2));
            yield return (foot.Origin.Plan, Standing(strip.Form.Strip.Name, strip.Net), AssemblyItems.NumberOf(design, strip.Form.Strip.Name));
        }

        foreach (AdjustingScrew screw in design.Screws)
        {
            yield return (screw.Meets.Plan + Vector.Polar(screw.LengthMm, screw.DirectionRad), screw.Name, AssemblyItems.NumberOf(design, screw.Name));
        }

        Placement turn = moment?.Wheel ?? Placement.Turn(0);
        yield return (Bare(plan.CarrierMm, 215), "carrier", AssemblyItems.Carrier);
        if (design.Brief.Feed is FeedBrief feed)
        {
            yield return (Bare(design.Wheel.OuterDiameterMm / 2, 135), Standing("wheel", feed.Net), AssemblyItems.Wheel);
        }
        else
        {
            foreach (CopperPiece land in design.Wheel.Copper)
            {
                yield return (turn.Of(land.Outline.Outer.Pieces[0].PointAt(0.5)), land.Name, AssemblyItems.Wheel);
            }
        }

        foreach (PartBrief part in design.Brief.Parts)
        {
            yield return (part.Outline.Outer.Pieces[0].PointAt(0.6), $"{part.Name}, {AssemblyWords.KindWords(part.Kind)}{(part.Kind == PartKind.Live ? $" ({part.Net})" : "")}", AssemblyItems.NumberOf(design, part.Name));
        }
    }
}
