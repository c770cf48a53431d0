using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The base in plan with every hole from the shaft axis, and the timer from the side in line above it with its heights.</summary>
internal static class BaseSheet
{
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Draws a base on the smallest sheet on which everything finds room.</summary>
    /// <param name="design">The design.</param>
    /// <param name="index">Which base, from 0.</param>
    /// <param name="number">Its place in the set.</param>
    public static Sheet Of(Design design, int index, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        BasePlate plate = design.Parts.Bases[index];
        BaseWords words = new(design, plate);
        SheetMatter matter = new([words.HoleTable(), words.LevelTable()], words.Notes()) { Caution = new(SheetWordsOf.CautionsOf(design)) };
        PaperSize[] papers = [.. SheetPapers.Of(design, Sizes)];
        (PaperSize size, SheetPlan plan, BaseViews views) =
            SheetPlan.Best(papers, matter, (_, shared) => BaseViews.Fitted(design, plate, words.Levels, shared.Picture) is { Scale.Factor: >= 1 } whole ? whole : null, v => v.Scale.Factor)
            ?? SheetPlan.Best(papers, matter, (_, shared) => BaseViews.Fitted(design, plate, words.Levels, shared.Picture), v => v.Scale.Factor)
            ?? (papers[^1], SheetPlan.Of(papers[^1], matter), new(design, plate, words.Levels, SheetPlan.Of(papers[^1], matter).Picture));
        SheetBuilder sheet = new(new(plate.Part.FileName, $"Base: {design.Brief.Title}", words.Description()), size);
        SheetFrame.Draw(sheet, (number ?? SheetNumber.Single).On(SheetWordsOf.TitleBlock(design, "Base, and the timer from the side", "Part drawing", views.Scale) with { Projection = Projection.FirstAngle }));
        if (plan.Draw(sheet, matter) is > 0 and int missing)
        {
            sheet.Warn(Invariant.Text($"The drawing of the base lacks {missing} rows of its tables; report.json has all figures."));
        }

        views.Draw(sheet);
        return sheet.Build();
    }
}

/// <summary>A height of the assembly.</summary>
/// <param name="ZMm">Over the copper face, mm.</param>
/// <param name="Name">What lies there.</param>
internal readonly record struct AssemblyLevel(double ZMm, string Name);

/// <summary>What the sheet of a base says.</summary>
internal sealed class BaseWords
{
    private readonly Design _design;
    private readonly BasePlate _plate;
    private readonly DrawingNumbers _numbers;

    public BaseWords(Design design, BasePlate plate)
    {
        (_design, _plate, _numbers) = (design, plate, new(design.Brief.DrawingUnit));
        Levels = [.. AllLevels().GroupBy(l => Math.Round(l.ZMm, 6)).Select(g => new AssemblyLevel(g.First().ZMm, string.Join(", ", g.Select(l => l.Name)))).OrderByDescending(l => l.ZMm)];
    }

    /// <summary>The heights, from the highest down, each once.</summary>
    public IReadOnlyList<AssemblyLevel> Levels { get; }

    public SheetTable HoleTable() => new(
        [new("Hole", TextAlong.End), new("For"), new($"x, {_numbers.UnitSign}", TextAlong.End), new($"y, {_numbers.UnitSign}", TextAlong.End), new($"Ø, {_numbers.UnitSign}", TextAlong.End)],
        [.. _plate.Holes.Select((h, i) => (IReadOnlyList<string>)[DrawingNumbers.Trimmed(i + 1, 0), h.Name, _numbers.LengthInColumn(h.At.X, 2), _numbers.LengthInColumn(h.At.Y, 2), _numbers.LengthInColumn(h.DiameterMm, 2)])])
    {
        Title = "Holes from the shaft axis",
    };

    public SheetTable LevelTable() => new(
        [new("Height of"), new($"over copper face, {_numbers.UnitSign}", TextAlong.End), new($"over the base, {_numbers.UnitSign}", TextAlong.End)],
        [.. Levels.Select(l => (IReadOnlyList<string>)[l.Name, _numbers.LengthInColumn(l.ZMm, 2), _numbers.LengthInColumn(l.ZMm - _plate.Surface.LevelMm, 2)])])
    {
        Title = "Heights",
    };

    public NoteBlock Notes()
    {
        Bounds bounds = _plate.Part.CutBounds;
        string thick = _plate.Part.Stock.ThicknessMm is double thickness ? $"{_numbers.LengthWithUnit(thickness)} thick" : "its thickness is not given";
        List<string> notes =
        [
            $"Insulating plate, material group {_plate.Surface.Group}, {thick}; {_numbers.Length(bounds.Width)} × {_numbers.LengthWithUnit(bounds.Height)} at least"
                + (_plate.Surface.Outline is null ? ", drawn round what stands on it because the file gives it no outline." : "."),
            $"x to the station of 0°, y to that of 90°, from the shaft axis; lower left corner at ({_numbers.Length(bounds.MinX)}, {_numbers.LengthWithUnit(bounds.MinY)}).",
            "The hole for the shaft is a little wider than the wheel's bore (common practice, no source); a bush or the motor's spigot may ask for more.",
            "Chain lines: strips and parts. Dashed: under clamps. Neither is cut, scratched nor burnt: dirt in a line between live parts conducts.",
            .. _design.Screws.Select(s => $"{s.Name}, {s.Thread}: meets its strip at ({_numbers.Length(s.Meets.X)}, {_numbers.LengthWithUnit(s.Meets.Y)}), its axis along the station of {DrawingNumbers.Angle(s.DirectionRad)}, {_numbers.LengthWithUnit(s.LengthMm)} long, moving {_numbers.LengthWithUnit(s.TravelMm)} in all; drawn over all of it. {Held(s)}"),
            "Strips pressed on the wheel; from the side they are seen along the y axis, one behind the other.",
        ];
        notes.AddRange(_plate.Strips.Where(i => _plate.Holes.All(h => !h.Name.StartsWith(_design.Strips.Strips[i].Form.Strip.Name + ",", StringComparison.Ordinal))).Select(i => $"'{_design.Strips.Strips[i].Form.Strip.Name}' has no hole in its foot: hold it by its clamp alone."));
        return new("Notes", notes);
    }

    // Where each lug stands and how high its hole is, so that it can be made and screwed on.
    private string Held(AdjustingScrew screw) => screw.Lugs.Count == 0
        ? "What holds it is not given ('screw_lugs')."
        : string.Join(" ", screw.Lugs.Select((l, i) => $"Lug {DrawingNumbers.Trimmed(i + 1, 0)} across its axis from ({_numbers.Length(l.From.X)}, {_numbers.Length(l.From.Y)}) to ({_numbers.Length(l.To.X)}, {_numbers.LengthWithUnit(l.To.Y)}), {_numbers.LengthWithUnit(screw.LugWidthMm)} wide, hole {_numbers.LengthWithUnit(screw.Meets.Z - _plate.Surface.LevelMm)} over the base."));

    public string Description() =>
        $"The base in plan with {DrawingNumbers.Trimmed(_plate.Holes.Count, 0)} holes, and the timer from the side above it. Heights over the copper face: {string.Join("; ", Levels.Select(l => $"{l.Name} {_numbers.Length(l.ZMm)}"))}.";

    private IEnumerable<AssemblyLevel> AllLevels()
    {
        CarrierBrief carrier = _design.Brief.Carrier;
        yield return new(0, "copper face");
        yield return new(-carrier.StepMm - carrier.ThicknessMm, "underside of the carrier");
        if (carrier.StepMm > 0)
        {
            yield return new(-carrier.StepMm, "wiper side of the carrier");
        }

        yield return new(_plate.Surface.LevelMm, "upper face of the base");
        if (_plate.Part.Stock.ThicknessMm is double thickness)
        {
            yield return new(_plate.Surface.LevelMm - thickness, "underside of the base");
        }

        foreach (PlacedStrip strip in _design.Strips.Strips)
        {
            yield return new(strip.Solids.Max(s => s.ToZMm), $"top of {strip.Form.Strip.Name}");
            if (strip.FreeContact is SpaceVector free)
            {
                yield return new(free.Z, $"contact of {strip.Form.Strip.Name}, free");
            }
        }

        foreach (AdjustingScrew screw in _design.Screws)
        {
            yield return new(screw.Meets.Z, $"axis of {screw.Name}");
        }

        foreach (PartBrief part in _design.Brief.Parts)
        {
            yield return new(part.ToZMm, $"top of {part.Name}");
            yield return new(part.FromZMm, $"underside of {part.Name}");
        }
    }
}

/// <summary>The two views of a base: from the side above, in plan below, in line and at one scale.</summary>
internal sealed class BaseViews
{
    // Between the views, and beside the upper one for its heights, mm on the paper.
    private const double BetweenMm = 12;
    private const double HeightsMm = 52;
    private const double AroundMm = 8;

    private readonly Design _design;
    private readonly BasePlate _plate;
    private readonly IReadOnlyList<AssemblyLevel> _levels;
    private readonly SheetView _plan;
    private readonly SheetView _side;
    private readonly Bounds _seen;
    private readonly Bounds _area;

    public BaseViews(Design design, BasePlate plate, IReadOnlyList<AssemblyLevel> levels, Bounds area)
    {
        (_design, _plate, _levels, _area) = (design, plate, levels, area);
        Bounds seen = plate.Part.CutBounds;
        _seen = BaseMarks.Strips(design, plate).Concat(BaseMarks.Parts(design)).Concat(BaseMarks.Screws(design)).Aggregate(seen, (a, c) => a.With(c.Bounds)).With(new Bounds(-Carrier, -Carrier, Carrier, Carrier));
        (double low, double high) = (levels[^1].ZMm, levels[0].ZMm);
        Bounds room = new(area.MinX + AroundMm, area.MinY + AroundMm, area.MaxX - HeightsMm, area.MaxY - AroundMm - BetweenMm);
        Scale = DrawingScale.Fitting(new(0, 0, _seen.Width, _seen.Height + high - low), room);
        double left = room.MinX + ((room.Width - (_seen.Width * Scale.Factor)) / 2);
        double foot = area.MinY + AroundMm + ((room.Height - ((_seen.Height + high - low) * Scale.Factor)) / 2);
        _plan = SheetView.At(Scale, new(_seen.MinX, _seen.MinY), new(left, foot));
        _side = SheetView.At(Scale, new(_seen.MinX, low), new(left, foot + (_seen.Height * Scale.Factor) + BetweenMm));
    }

    /// <summary>The views in an area, or null where they find no room.</summary>
    public static BaseViews? Fitted(Design design, BasePlate plate, IReadOnlyList<AssemblyLevel> levels, Bounds area)
    {
        try
        {
            return new(design, plate, levels, area);
        }
        catch (NoRoomException)
        {
            return null;
        }
    }

    /// <summary>The scale of both.</summary>
    public DrawingScale Scale { get; }

    private double Carrier => (_design.Brief.Carrier.DiameterMm ?? _design.Wheel.OuterDiameterMm) / 2;

    public void Draw(SheetBuilder sheet)
    {
        SideElevation.Draw(sheet, _design, _side, _plate);
        Heights(sheet.Group("heights", "Heights over the copper face", "dimensions"));
        InPlan(sheet);
        Point foot = _plan.Of(new Point(0, _seen.MinY));
        Point head = _side.Of(new Point(0, _levels[0].ZMm));
        sheet.Group("axis", "The shaft axis in both views", "axes").Line(foot - new Vector(0, 3), head + new Vector(0, 3), LineStyle.Centre);
    }

    // Texts in a column to the right, pushed apart where heights are close, each with a leader from its height.
    private void Heights(GroupPen pen)
    {
        const double pitchMm = 4.6;
        DrawingNumbers numbers = new(_design.Brief.DrawingUnit);
        double edge = _side.Of(new Point(_seen.MaxX, 0)).X;
        double[] at = [.. _levels.Select(l => _side.Of(new Point(0, l.ZMm)).Y)];

        // Heights run from the highest down.
        double[] text = [.. Spread.Apart([.. at.Reverse()], pitchMm, _area.MinY + pitchMm, _area.MaxY - pitchMm).Reverse()];
        for (int i = 0; i < _levels.Count; i++)
        {
            Point from = new(edge + 1.5, at[i]);
            Point bend = new(edge + 5, at[i]);
            Point to = new(edge + 10, text[i]);
            pen.Polyline(LineStyle.Dimension, from, bend, to);
            string words = $"{(_levels[i].ZMm > 0 ? "+" : "")}{numbers.Length(_levels[i].ZMm)} {_levels[i].Name}";
            pen.Text(TextFit.Shortened(words, _area.MaxX - to.X - 2, TextStyle.Small), new(to + new Vector(1, 0), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
        }
    }

    private void InPlan(SheetBuilder sheet)
    {
        ViewPen plate = sheet.Group("base", "The base in plan", "base").In(_plan);
        plate.Area(_plate.Part.Shapes[0].Finished, Fill.Of(FillKind.Carrier), LineStyle.Edge);
        ViewPen seats = sheet.Group("seats", "Where strips, clamps, carrier and parts lie", "seats").In(_plan);
        foreach (Contour part in BaseMarks.Parts(_design))
        {
            seats.Line(part, LineStyle.Centre);
        }

        seats.Line(Contour.Circle(Point.Origin, Carrier), LineStyle.Phantom);
        foreach (Contour strip in BaseMarks.Strips(_design, _plate).Concat(BaseMarks.Screws(_design)))
        {
            seats.Line(strip, LineStyle.Centre);
        }

        foreach (Contour clamp in BaseMarks.Clamps(_plate))
        {
            seats.Line(clamp, LineStyle.Hidden);
        }

        sheet.Texts.TakeEdges(BaseMarks.All(_design, _plate).SelectMany(c => c).Concat(Contour.Circle(Point.Origin, Carrier).Pieces).Select(p => p.Placed(_plan.ToPaper)));
        GroupPen marks = sheet.Group("holes", "Holes and their numbers", "holes");
        foreach ((BaseHole hole, int i) in _plate.Holes.Select((h, i) => (h, i)))
        {
            marks.In(_plan).CentreCross(hole.At, hole.DiameterMm / 2);
            double reach = _plan.OnPaperMm(hole.DiameterMm / 2) + 1.2;
            Point at = _plan.Of(hole.At);
            string number = DrawingNumbers.Trimmed(i + 1, 0);
            TextSpot[] spots = [.. Enumerable.Range(0, 24).Select(k => new TextSpot(at + Vector.Polar(reach + 1.5, Angles.RadFromDeg(45 + (k * 15))), TextAlong.Middle, TextAcross.Middle))];
            TextSpot[] clear = [.. spots.Where(s => sheet.Texts.IsOffEdges(new SheetText(number, s, TextStyle.Label).Box))];
            if (!marks.TryText(number, clear, TextStyle.Label))
            {
                marks.PlatedText(number, spots[0], TextStyle.Label);
            }
        }
    }
}
