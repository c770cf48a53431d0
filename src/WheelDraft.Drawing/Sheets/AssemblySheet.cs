using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Wheel, strips, parts and surfaces in plan, at home, seen from the wiper side; nets told apart by pattern and label as well as colour.</summary>
public static class AssemblySheet
{
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Whether a design has anything to assemble beside its wheel.</summary>
    public static bool IsWanted(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return design.Strips.Strips.Count > 0 || design.Brief.Parts.Count > 0;
    }

    /// <summary>Draws it on the smallest sheet on which everything finds room.</summary>
    public static Sheet Of(Design design, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        AssemblyWords words = new(design);
        SheetMatter matter = new(words.Table(), words.Notes());
        PaperSize size = Sizes.FirstOrDefault(s => SheetPlan.Of(s, matter).IsRoomy) ?? PaperSize.A0;
        SheetPlan plan = SheetPlan.Of(size, matter);
        SheetBuilder sheet = new(new("assembly", $"Assembly: {design.Brief.Title}", words.Description()), size);
        AssemblyPlan picture = new(design, plan.Picture);
        SheetFrame.Draw(sheet, (number ?? SheetNumber.Single).On(SheetWordsOf.TitleBlock(design, "Wheel and strips in plan", "Assembly drawing", picture.Scale)));
        if (plan.Draw(sheet, matter) is > 0 and int missing)
        {
            sheet.Warn(Invariant.Text($"The assembly drawing lacks {missing} rows of its table; report.json has all strips."));
        }

        picture.Draw(sheet);
        return sheet.Build();
    }
}

/// <summary>What the assembly sheet says.</summary>
internal sealed class AssemblyWords(Design design)
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
            $"Seen from the wiper side, wheel at home; it turns {SheetWordsOf.Turns(design)}. Stations count anticlockwise from the x axis, approaches from the outward radius at the contact.",
            "Strips are drawn free of the wheel, their contacts where they touch when pressed. Nets stand in brackets.",
        ];
        notes.AddRange(design.Brief.Surfaces.Select(s => $"Surface {s.Name}: {_numbers.LengthWithUnit(Math.Abs(s.LevelMm))} {(s.LevelMm < 0 ? "below" : "above")} the copper face, material group {s.Group}{(s.Outline is null ? ", reaching beyond the drawing" : "")}."));
        notes.AddRange(design.Brief.Parts.Select(p => $"Part {p.Name} ({KindWords(p.Kind)}): from {_numbers.Length(p.FromZMm)} to {_numbers.LengthWithUnit(p.ToZMm)} over the copper face."));
        notes.AddRange(design.Brief.Ribs.Select((r, i) => Invariant.Text($"Rib {i + 1} on {r.Surface}: {_numbers.LengthWithUnit(r.HeightMm)} high, {_numbers.LengthWithUnit(r.ThicknessMm)} thick, {r.Joint.ToString().ToLowerInvariant()}.")));
        notes.AddRange(design.Brief.Slots.Select((s, i) => Invariant.Text($"Slot {i + 1} in {s.Surface}: {_numbers.LengthWithUnit(s.WidthMm)} wide, {(s.DepthMm is double depth ? _numbers.LengthWithUnit(depth) + " deep" : "through")}.")));
        return new("Notes", notes);
    }

    public string Description()
    {
        string strips = string.Join("; ", design.Strips.Strips.Select(s => $"{s.Form.Strip.Name} on net {s.Net}{(s.Ring is RingPlace r ? $" at station {DrawingNumbers.Angle(r.StationRad)}" : "")}"));
        return $"Wheel and strips in plan, seen from the wiper side, turning {SheetWordsOf.Turns(design)}. Strips: {(strips.Length == 0 ? "none" : strips)}.";
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

/// <summary>The plan view of the assembly.</summary>
internal sealed class AssemblyPlan
{
    // Above and below the view for stations, beside it for leaders and the ends of their texts, mm on the paper.
    private const double AboveMm = 12;
    private const double LeaderMm = 11;

    private readonly Design _design;
    private readonly Bounds _area;
    private readonly SheetView _view;
    private readonly Bounds _model;
    private readonly IReadOnlyList<string> _nets;
    private readonly double _carrierMm;

    public AssemblyPlan(Design design, Bounds area)
    {
        (_design, _area) = (design, area);
        _nets = [.. DrawnNets(design).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        _carrierMm = (design.Brief.Carrier.DiameterMm ?? design.Wheel.OuterDiameterMm) / 2;
        _model = Model();
        double legend = Legend().HeightMm(area.Width) + 4;
        double side = LabelWords().Max(DimensionForm.TextWidthMm) + LeaderMm;
        Bounds room = new(area.MinX + side, area.MinY + AboveMm + legend, area.MaxX - side, area.MaxY - AboveMm);
        _view = SheetView.Fitted(_model, room);
    }

    public DrawingScale Scale => _view.Scale;

    public void Draw(SheetBuilder sheet)
    {
        Below(sheet);
        Wheel(sheet);
        Strips(sheet);
        Stations(sheet);
        ChartLegend legend = Legend();
        legend.Draw(sheet.Group("legend", "Nets by pattern", "legend"), new Point(_area.MinX, _area.MinY + legend.HeightMm(_area.Width)), _area.Width);
        Callouts(sheet);
    }

    private static IEnumerable<string> DrawnNets(Design design) =>
    [
        .. design.Strips.Strips.Select(s => s.Net),
        .. design.Brief.Feed is FeedBrief feed ? [feed.Net] : Array.Empty<string>(),
        .. design.Brief.Parts.Where(p => !IsHidden(design, p)).Select(p => p.Net),
    ];

    // Below the carrier's wiper side a part is seen through it.
    private static bool IsHidden(Design design, PartBrief part) => part.ToZMm < -design.Brief.Carrier.StepMm;

    private Bounds Model()
    {
        Bounds all = new(-_carrierMm, -_carrierMm, _carrierMm, _carrierMm);
        foreach (Contour ribbon in _design.Strips.Strips.SelectMany(Ribbons))
        {
            all = all.With(ribbon.Bounds);
        }

        return _design.Brief.Parts.Aggregate(all, (a, p) => a.With(p.Outline.Bounds));
    }

    private Fill FillOf(string net) => Fill.Net(Math.Max(0, _nets.ToList().FindIndex(n => string.Equals(n, net, StringComparison.Ordinal))));

    private static IEnumerable<Contour> Ribbons(PlacedStrip strip)
    {
        Placement placement = StripRibbon.ToHousing(strip.Placement);
        return StripRibbon.Of(strip.Form).Select(r => r.Placed(placement));
    }

    // Surfaces, parts, ribs and slots, from the lowest up.
    private void Below(SheetBuilder sheet)
    {
        ViewPen parts = sheet.Group("parts", "Parts", "parts").In(_view);
        foreach (PartBrief part in _design.Brief.Parts.Where(p => !IsHidden(_design, p)).OrderBy(p => p.ToZMm))
        {
            parts.Area(part.Outline, FillOf(part.Net), LineStyle.Thin);
        }

        ViewPen surfaces = sheet.Group("surfaces", "Surfaces, their ribs and slots", "surfaces").In(_view);
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

    private void Wheel(SheetBuilder sheet)
    {
        WheelLayout wheel = _design.Wheel;
        sheet.Group("carrier", "Carrier", "carrier").In(_view).Area(new Outline(Contour.Circle(Point.Origin, _carrierMm), [wheel.Bore]), Fill.Of(FillKind.Carrier), LineStyle.Thin);
        string title = wheel.Feed is RingLayout feed ? $"Wheel, net {feed.Net}" : "Lands";
        ViewPen copper = sheet.Group("wheel", title, "copper").In(_view);
        foreach (CopperPiece piece in wheel.Copper)
        {
            copper.Area(piece.Outline, wheel.Feed is null ? Fill.Of(FillKind.Copper) : FillOf(piece.Net), LineStyle.Edge);
        }

        ViewPen hidden = sheet.Group("hidden-parts", "Parts below the carrier", "parts").In(_view);
        foreach (PartBrief part in _design.Brief.Parts.Where(p => IsHidden(_design, p)))
        {
            foreach (Contour contour in part.Outline.Contours)
            {
                hidden.Line(contour, LineStyle.Hidden);
            }
        }

        sheet.Group("axes", "Centre lines", "axes").In(_view).CentreCross(Point.Origin, _carrierMm);
    }

    private void Strips(SheetBuilder sheet)
    {
        IReadOnlyList<string> slugs = FileSlugs.Of(_design.Strips.Strips.Select(s => s.Form.Strip.Name));
        GroupPen all = sheet.Group("strips", "Strips", "strips");
        foreach ((PlacedStrip strip, int i) in _design.Strips.Strips.Select((s, i) => (s, i)))
        {
            GroupPen pen = all.Group($"strip-{slugs[i]}", $"{strip.Form.Strip.Name}, net {strip.Net}", "strip");
            foreach (Contour ribbon in Ribbons(strip))
            {
                pen.Area(new Outline(ribbon.Placed(_view.ToPaper)), FillOf(strip.Net), LineStyle.Edge);
            }

            Placement placement = StripRibbon.ToHousing(strip.Placement).Then(_view.ToPaper);
            foreach (StripHole hole in strip.Form.Strip.Holes.Where(h => strip.Form.FrameAt(h.AtMm).Up.Z > 0.9999))
            {
                pen.Area(new Outline(Contour.Circle(strip.Form.FrameAt(hole.AtMm).At(0, hole.AcrossMm, 0).Plan, hole.DiameterMm / 2).Placed(placement)), Fill.Of(FillKind.Paper), LineStyle.Thin);
            }

            if (strip.WorkingContact is SpaceVector contact)
            {
                double radius = (strip.Form.Nose?.Rivet?.DiameterMm ?? 1) / 2;
                pen.Area(new Outline(Contour.Circle(_view.Of(contact.Plan), _view.OnPaperMm(radius))), Fill.Solid(Ink.Accent), LineStyle.Thin);
            }
        }
    }

    private void Stations(SheetBuilder sheet)
    {
        GroupPen pen = sheet.Group("stations", "Stations", "stations");
        foreach (RingLayout ring in _design.Wheel.AllRings)
        {
            pen.In(_view).Line(Contour.Circle(Point.Origin, ring.RadiusMm), LineStyle.Centre);
        }

        foreach ((RingLayout ring, double stationRad, _) in Wipers())
        {
            pen.Line(_view.Of(Point.Polar(ring.RadiusMm, stationRad)), StationEnd(stationRad), LineStyle.Centre);
        }
    }

    // Where a station's line ends, a little outside the wheel, on the paper.
    private Point StationEnd(double stationRad)
    {
        const double beyondMm = 4;
        return _view.Of(Point.Polar(_carrierMm + (beyondMm / _view.Scale.Factor), stationRad));
    }

    private IEnumerable<(RingLayout Ring, double StationRad, string Name)> Wipers()
    {
        foreach (RingLayout ring in _design.Wheel.AllRings)
        {
            yield return (ring, ring.StationRad, ring.IsFeed ? "feed" : ring.Name);
            if (ring.Return is ReturnWiper other)
            {
                yield return (ring, other.StationRad, $"{ring.Name} return");
            }
        }
    }

    private ChartLegend Legend() => new(
    [
        .. _nets.Select(n => new LegendEntry($"net {n}", FillOf(n), LineStyle.Thin)),
        .. _design.Brief.Parts.Any(p => IsHidden(_design, p)) ? [new LegendEntry("part below the carrier", null, LineStyle.Hidden)] : Array.Empty<LegendEntry>(),
        .. _design.Brief.Ribs.Count > 0 ? [new LegendEntry("rib", Fill.Of(FillKind.Insulation), LineStyle.Thin)] : Array.Empty<LegendEntry>(),
        new("contact", Fill.Solid(Ink.Accent), LineStyle.Thin),
    ]);

    private void Callouts(SheetBuilder sheet)
    {
        GroupPen pen = sheet.Group("labels", "Labels", "labels");
        double bottom = _area.MinY + Legend().HeightMm(_area.Width) + 4;
        CalloutRing ring = new(_view.Of(_model).Grown(3), new(_area.MinX, bottom, _area.MaxX, _area.MaxY));
        List<RingCallout> labels = [.. Labels()];
        if (!ring.TryDraw(pen, labels))
        {
            bool most = ring.TryDraw(pen, [.. labels.Take(ring.Capacity)]);
            sheet.Warn(most
                ? Invariant.Text($"The assembly drawing lacks {labels.Count - ring.Capacity} labels that find no room.")
                : "The assembly drawing lacks its labels: they find no room.");
        }
    }

    private IEnumerable<RingCallout> Labels()
    {
        foreach ((Point at, string words) in Labelled())
        {
            yield return new(_view.Of(at), words);
        }

        foreach ((_, double stationRad, string name) in Wipers())
        {
            yield return new(StationEnd(stationRad), StationWords(name, stationRad));
        }
    }

    private IEnumerable<string> LabelWords() => [.. Labelled().Select(l => l.Words), .. Wipers().Select(w => StationWords(w.Name, w.StationRad))];

    private static string StationWords(string name, double stationRad) => $"{name} at {DrawingNumbers.Angle(stationRad)}";

    // What is named, and a point of it in the housing.
    private IEnumerable<(Point At, string Words)> Labelled()
    {
        foreach (PlacedStrip strip in _design.Strips.Strips)
        {
            StripFrame foot = strip.Placement.Of(strip.Form.FrameAt((strip.Form.Clamp.FromMm + strip.Form.Clamp.ToMm) / 2));
            yield return (foot.Origin.Plan, $"{strip.Form.Strip.Name} ({strip.Net})");
        }

        if (_design.Brief.Feed is FeedBrief feed)
        {
            yield return (Point.Polar(_design.Wheel.OuterDiameterMm / 2, Angles.RadFromDeg(135)), $"wheel ({feed.Net})");
        }
        else
        {
            foreach (CopperPiece land in _design.Wheel.Copper)
            {
                yield return (land.Outline.Outer.Pieces[0].PointAt(0.5), land.Name);
            }
        }

        foreach (PartBrief part in _design.Brief.Parts)
        {
            yield return (part.Outline.Outer.Pieces[0].PointAt(0.6), $"{part.Name}, {AssemblyWords.KindWords(part.Kind)}");
        }
    }
}
