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
        SheetMatter matter = new SheetMatter(words.Table(), words.Notes()) { Caution = new(SheetWordsOf.CautionsOf(design)) }.WithKey(key);
        PaperSize size = Sizes.FirstOrDefault(s => SheetPlan.Of(s, matter).IsRoomy) ?? PaperSize.A0;
        SheetBuilder sheet = new(new("assembly", $"Assembly: {design.Brief.Title}", words.Description()), size);
        AssemblyPlan Picture(SheetPlan shared) => new(plan, labels, key.Count == 0 ? labels.All() : key, shared.Picture) { IsMoment = moment is not null };
        (SheetPlan shared, AssemblyPlan picture) = ((SheetPlan?[])[SheetPlan.Of(size, matter), SheetPlan.WithTablesAtTheFoot(size, matter)])
            .OfType<SheetPlan>()
            .Where((p, i) => i == 0 || p.IsRoomy)
            .Select(p => (Plan: p, Picture: Picture(p)))
            .MaxBy(p => p.Picture.Scale.Factor);
        SheetFrame.Draw(sheet, (number ?? SheetNumber.Single).On(SheetWordsOf.TitleBlock(design, "Wheel and strips in plan", "Assembly drawing", picture.Scale)));
        if (shared.Draw(sheet, matter.WithKey(picture.Key)) is > 0 and int missing)
        {
            sheet.Warn(Invariant.Text($"The assembly drawing lacks {missing} rows of its tables; report.json has all strips."));
        }

        picture.Draw(sheet);
        return sheet.Build();
    }
}

/// <summary>What the assembly sheet says.</summary>
internal sealed class AssemblyWords(Design design, MomentView? moment)
{
    private readonly DrawingNumbers _numbers = new(design.Brief.DrawingUnit);

    public SheetTable Table() => new(
        [
            new("Strip"),
            new("Net"),
            new("Station, °", TextAlong.End),
            new($"Ring radius, {_numbers.UnitSign}", TextAlong.End),
            new("Approach, °", TextAlong.End),
            new("Arm"),
            new("Force, N", TextAlong.End),
        ],
        [.. design.Strips.Strips.Select(Row)]);

    public NoteBlock Notes()
    {
        List<string> notes =
        [
            moment is null ? "Drawn at home." : $"{moment.Sentence} Hatched parts are live; dotted ones are joined to neither line nor neutral and may hold a charge.",
            $"Seen from the wiper side; the wheel turns {SheetWordsOf.Turns(design)}. Stations count anticlockwise from the x axis, approaches from the outward radius at the contact.",
            "Strips are drawn free of the wheel, their contacts where they touch when pressed." + (moment is null ? " Nets stand in brackets." : ""),
        ];
        notes.AddRange(design.Brief.Surfaces.Select(s => $"Surface {s.Name}: {_numbers.LengthWithUnit(Math.Abs(s.LevelMm))} {(s.LevelMm < 0 ? "below" : "above")} the copper face, material group {s.Group}{(s.Outline is null ? ", reaching beyond the drawing" : "")}."));
        notes.AddRange(design.Brief.Parts.Select(p => $"Part {p.Name} ({KindWords(p.Kind)}): from {_numbers.Length(p.FromZMm)} to {_numbers.LengthWithUnit(p.ToZMm)} over the copper face."));
        notes.AddRange(design.Brief.Ribs.Select((r, i) => Invariant.Text($"Rib {i + 1} on {r.Surface}: {_numbers.LengthWithUnit(r.HeightMm)} high, {_numbers.LengthWithUnit(r.ThicknessMm)} thick, {r.Joint.ToString().ToLowerInvariant()}.")));
        notes.AddRange(design.Brief.Slots.Select((s, i) => Invariant.Text($"Slot {i + 1} in {s.Surface}: {_numbers.LengthWithUnit(s.WidthMm)} wide, {(s.DepthMm is double depth ? _numbers.LengthWithUnit(depth) + " deep" : "through")}.")));
        return new("Notes", notes);
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
        strip.Form.Strip.Name,
        strip.Net,
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
    private const double AboveMm = 12;
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

    /// <summary>Puts the plan into an area.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="words">What is said of it.</param>
    /// <param name="labels">Its labels, points in the housing; numbered ones are numbered again as they stand.</param>
    /// <param name="area">The area.</param>
    public AssemblyPlan(PlanView plan, AssemblyLabels words, IReadOnlyList<RingCallout> labels, Bounds area)
    {
        (_plan, _words, _area) = (plan, words, area);
        _legend = words.Legend();
        _footMm = _legend.HeightMm(area.Width) + 4;
        Bounds model = plan.Model;
        CalloutMarks marks = labels.Any(l => l.Number is not null) ? CalloutMarks.Numbers : CalloutMarks.Words;
        double mostMm = (area.Width * (1 - PlanShare) / 2) - LeaderMm;
        if (marks == CalloutMarks.Words && CalloutRing.ColumnMm(marks, labels.Select(l => l.Text)) > mostMm)
        {
            throw new NoRoomException("The labels of the assembly drawing leave too little room for its plan.");
        }

        double side = CalloutRing.ColumnMm(marks, labels.Select(l => l.Text)) + LeaderMm;
        _view = SheetView.Fitted(model, new(area.MinX + side, area.MinY + AboveMm + _footMm, area.MaxX - side, area.MaxY - AboveMm));
        _ring = new(_view.Of(model).Grown(3), area with { MinY = area.MinY + _footMm }) { Marks = marks };
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
        .. Labelled().Select(l => new RingCallout(l.At, l.Words)),
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

    private Point StationEnd(double stationRad) => Point.Polar(plan.CarrierMm * (1 + BeyondShare), stationRad);

    // Its net, or at a moment how that stands.
    private string Standing(string name, string net) => moment is null ? $"{name} ({net})" : $"{name}, {moment.Word(moment.Net(net))}";

    private IEnumerable<(Point At, string Words)> Labelled()
    {
        foreach (PlacedStrip strip in design.Strips.Strips)
        {
            StripFrame foot = strip.Placement.Of(strip.Form.FrameAt((strip.Form.Clamp.FromMm + strip.Form.Clamp.ToMm) / 2));
            yield return (foot.Origin.Plan, Standing(strip.Form.Strip.Name, strip.Net));
        }

        Placement turn = moment?.Wheel ?? Placement.Turn(0);
        if (design.Brief.Feed is FeedBrief feed)
        {
            yield return (Point.Polar(design.Wheel.OuterDiameterMm / 2, Angles.RadFromDeg(135)), Standing("wheel", feed.Net));
        }
        else
        {
            foreach (CopperPiece land in design.Wheel.Copper)
            {
                yield return (turn.Of(land.Outline.Outer.Pieces[0].PointAt(0.5)), land.Name);
            }
        }

        foreach (PartBrief part in design.Brief.Parts)
        {
            yield return (part.Outline.Outer.Pieces[0].PointAt(0.6), $"{part.Name}, {AssemblyWords.KindWords(part.Kind)}{(part.Kind == PartKind.Live ? $" ({part.Net})" : "")}");
        }
    }
}
