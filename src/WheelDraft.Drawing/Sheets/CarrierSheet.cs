using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The carrier, dimensioned: plan with the recess for the copper, section through axis and home mark, figures in a table.</summary>
internal static class CarrierSheet
{
    /// <summary>Draws it on the smallest sheet on which everything finds room at full size or larger.</summary>
    /// <param name="design">The design.</param>
    /// <param name="number">Its place in the set.</param>
    public static Sheet Of(Design design, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        SheetMatter matter = new SheetMatter(Table(design), new("Notes", CarrierWords.Notes(design))) { Caution = new(SheetWordsOf.CautionsOf(design)) };
        PaperSize[] papers = [.. SheetPapers.Of(design, PaperSize.Iso)];
        (SheetPlan plan, CarrierPicture picture) = At(1) ?? At(0) ?? (SheetPlan.Of(papers[^1], matter), new(design, papers[^1], SheetPlan.Of(papers[^1], matter).Picture));

        (SheetPlan Plan, CarrierPicture Picture)? At(double leastScale) => SheetPlan.Best(papers, matter, (size, shared) => CarrierPicture.Fitted(design, size, shared.Picture, leastScale), p => p.Scale.Factor) is { } best
            ? (best.Plan, best.Picture)
            : null;

        SheetFrame.Draw(picture.Sheet, (number ?? SheetNumber.Single).On(SheetWordsOf.TitleBlock(design, "Carrier, seen from the wiper side", "Part drawing", picture.Scale)));
        plan.Draw(picture.Sheet, matter);
        picture.Draw();
        return picture.Sheet.Build();
    }

    /// <summary>The carrier in sentences.</summary>
    public static string Description(Design design)
    {
        string recess = design.Parts.Carrier.Recess is CarrierRecess sunk
            ? $"A recess {Wording.Mm(sunk.DepthMm)} deep takes the copper, {Wording.Mm(sunk.FitMm)} larger than it all round; the carrier stands up through the copper's windows."
            : "The copper lies on its face.";
        return ReadersUnit.Of(design.Brief).Words($"An insulating disc of {Wording.Mm(design.Parts.Carrier.CutBounds.Width)} diameter and {Wording.Mm(design.Brief.Carrier.ThicknessMm)} thickness with a bore of {Wording.Mm(design.Brief.Wheel.Bore.DiameterMm)}, seen from the wiper side. {recess}");
    }

    private static SheetTable Table(Design design)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        return new([new("Size of the carrier"), new(numbers.UnitSign, TextAlong.End)], [.. Rows(design, numbers)]) { Title = "Sizes of the carrier" };
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(Design design, DrawingNumbers numbers)
    {
        WheelBrief wheel = design.Brief.Wheel;
        yield return ["Outer diameter", numbers.Length(design.Parts.Carrier.CutBounds.Width, 3)];
        yield return ["Thickness", numbers.Length(design.Brief.Carrier.ThicknessMm, 3)];
        yield return [wheel.Bore.FlatMm is null ? "Bore" : $"Bore, with a flat whose normal is at {DrawingNumbers.Direction(wheel.Bore.FlatAtRad)}", numbers.Length(wheel.Bore.DiameterMm, 3)];
        if (wheel.Bore.FlatMm is double flat)
        {
            yield return ["From the flat to the opposite side", numbers.Length(flat, 3)];
        }

        if (wheel.Fixings is FixingsBrief fixings)
        {
            yield return [$"Fixings, {DrawingNumbers.Trimmed(fixings.Count, 0)} evenly, the first at {DrawingNumbers.Direction(fixings.FirstAtRad)}", numbers.Length(fixings.DiameterMm, 3)];
            yield return ["Pitch circle of fixings", numbers.Length(design.Wheel.PitchCircleMm!.Value, 3)];
        }

        if (design.Parts.Carrier.Recess is CarrierRecess recess)
        {
            yield return ["Recess: depth", numbers.Length(recess.DepthMm, 3)];
            yield return ["Recess: larger than the copper all round by", numbers.Length(recess.FitMm, 3)];
            yield return ["Left under the recess", numbers.Length(recess.FloorMm, 3)];
        }
    }
}

/// <summary>The views of a carrier on one size of paper.</summary>
internal sealed class CarrierPicture
{
    // Round the plan, mm on the paper: dimensions beside it; between plan and section, and under that.
    private const double BesideMm = 16;
    private const double AboveMm = 14;
    private const double BetweenMm = 14;
    private const double BelowMm = 10;

    private readonly Design _design;
    private readonly DrawingNumbers _numbers;
    private readonly Bounds _picture;
    private readonly double _halfMm;
    private readonly SheetView _plan;
    private readonly SheetView _section;
    private readonly PaperSize _size;
    private SheetBuilder? _sheet;

    /// <param name="design">The design.</param>
    /// <param name="size">The paper.</param>
    /// <param name="picture">Where the views stand.</param>
    public CarrierPicture(Design design, PaperSize size, Bounds picture)
    {
        (_design, _numbers, _picture) = (design, new(design.Brief.DrawingUnit), picture);
        _halfMm = design.Parts.Carrier.CutBounds.Width / 2;
        double thick = design.Brief.Carrier.ThicknessMm;
        Bounds room = new(picture.MinX + BesideMm, picture.MinY + BelowMm, picture.MaxX - BesideMm, picture.MaxY - AboveMm - BetweenMm);
        Scale = DrawingScale.Fitting(new(0, 0, 2 * _halfMm, (2 * _halfMm) + thick), room);
        double planHigh = 2 * _halfMm * Scale.Factor, sectionHigh = thick * Scale.Factor;
        double spare = (picture.Height - AboveMm - BetweenMm - BelowMm - planHigh - sectionHigh) / 2;
        Point centre = new(picture.Centre.X, picture.MaxY - AboveMm - spare - (planHigh / 2));
        _plan = SheetView.At(Scale, Point.Origin, centre);

        // The section's zero is the middle of the carrier's face.
        _section = SheetView.At(Scale, Point.Origin, centre - new Vector(0, (planHigh / 2) + BetweenMm));
        _size = size;
    }

    /// <summary>The views in an area, or null where they do not fit at a scale or larger.</summary>
    public static CarrierPicture? Fitted(Design design, PaperSize size, Bounds picture, double leastScale)
    {
        try
        {
            CarrierPicture fitted = new(design, size, picture);
            return fitted.Scale.Factor >= leastScale ? fitted : null;
        }
        catch (NoRoomException)
        {
            return null;
        }
    }

    /// <summary>The scale.</summary>
    public DrawingScale Scale { get; }

    /// <summary>The sheet.</summary>
    public SheetBuilder Sheet => _sheet ??= new(new("carrier", $"Carrier: {_design.Brief.Title}", CarrierSheet.Description(_design)), _size);

    private Part Part => _design.Parts.Carrier;

    /// <summary>Draws both views with their dimensions.</summary>
    public void Draw()
    {
        DrawPlan();
        DrawSection();
        DrawDimensions();
        AngleSense.TryDraw(Sheet, _picture);
    }

    private void DrawPlan()
    {
        Sheet.Group("carrier", "Carrier", "carrier").In(_plan).Area(Part.Shapes[0].Finished, Fill.Of(FillKind.Carrier), LineStyle.Edge);
        Sheet.Texts.TakeEdges(Part.Shapes[0].Finished.Pieces.Select(p => p.Placed(_plan.ToPaper)));
        if (Part.Recess is CarrierRecess recess)
        {
            ViewPen pen = Sheet.Group("recess", "Recess for the copper", "recess").In(_plan);
            Contour[] through = [.. Part.Shapes[0].Finished.Holes.Select(h => h.Travelled(Turning.Clockwise))];
            foreach (Outline pocket in recess.Pockets)
            {
                Sheet.Texts.TakeEdges(pocket.Pieces.Select(p => p.Placed(_plan.ToPaper)));
                pen.Area(new Outline(pocket.Outer, [.. pocket.Holes, .. through.Where(t => pocket.Contains(t.Pieces[0].Start))]), Fill.Of(FillKind.Recess), LineStyle.Thin);
            }
        }

        ViewPen axes = Sheet.Group("axes", "Centre lines", "axes").In(_plan);
        axes.CentreCross(Point.Origin, _halfMm);
        foreach (IReadOnlyList<Piece> mark in PartMarks.Of(_design, Part).Scribed)
        {
            axes.Line(mark, LineStyle.Thin);
        }

        GroupPen cutting = Sheet.Group("cutting-plane", "Where the section is taken", "cutting-plane");
        foreach (int side in (int[])[-1, 1])
        {
            Point end = _plan.Of(new Point(side * _halfMm, 0)) + new Vector(side * 3.5, 0);
            cutting.Line(end, end + new Vector(side * 5, 0), LineStyle.Edge);
            SectionArrow.Draw(cutting, end + new Vector(side * 5, 0));
            cutting.Text("A", new(end + new Vector(side * 3, 1.5), TextAlong.Middle), TextStyle.Label);
        }
    }

    private void DrawSection()
    {
        ViewPen pen = Sheet.Group("section", "Section A-A, through the axis and the home mark", "section").In(_section);
        double thick = _design.Brief.Carrier.ThicknessMm;
        List<Point> tops = [];
        IReadOnlyList<(double From, double To, double Top)> parts = SectionOf(Part);
        for (int i = 0; i < parts.Count; i++)
        {
            tops.AddRange([new(parts[i].From, parts[i].Top), new(parts[i].To, parts[i].Top)]);
            if (i + 1 == parts.Count || parts[i + 1].From > parts[i].To)
            {
                pen.Area(new Outline(Stepped(tops, -thick)), Fill.Of(FillKind.Insulation), LineStyle.Thin);
                tops.Clear();
            }
        }

        Sheet.Group("section-words", "Name of the section", "section").Text("A - A", new(_section.Of(new Point(0, 0)) + new Vector(0, 4), TextAlong.Middle), TextStyle.Label);
        pen.Line(new Point(0, 2 / Scale.Factor), new Point(0, -thick - (2 / Scale.Factor)), LineStyle.Centre);
    }

    // A body from its foot up to its steps, which run from the left; two steps of one height are one.
    private static Contour Stepped(List<Point> tops, double footMm)
    {
        Point[] corners = [.. tops.Where((p, i) => i == 0 || i == tops.Count - 1 || p.Y != tops[i - 1].Y || p.Y != tops[i + 1].Y)];
        return Contour.Polygon([new(corners[0].X, footMm), new(corners[^1].X, footMm), .. corners.Reverse()]);
    }

    private void DrawDimensions()
    {
        DimensionPen pen = new(Sheet.Group("dimensions", "Dimensions", "dimensions"));
        double half = _plan.OnPaperMm(_halfMm);
        Point centre = _plan.Of(Point.Origin);
        pen.Add(new LinearDimension(centre - new Vector(half, 0), centre + new Vector(half, 0), half + 6, _numbers.Diameter(2 * _halfMm)) { Direction = LinearDirection.Level, Subject = "outer diameter" });
        BoreBrief bore = _design.Brief.Wheel.Bore;
        pen.Add(new CalloutDimension(_plan.Of(Point.Polar(bore.DiameterMm / 2, bore.FlatAtRad + Angles.RadFromDeg(215))), Angles.RadFromDeg(235), _numbers.Diameter(bore.DiameterMm) + (bore.FlatMm is double flat ? $", flat {_numbers.Length(flat)}" : "")));
        if (_design.Brief.Wheel.Fixings is FixingsBrief fixings)
        {
            pen.Add(new CalloutDimension(_plan.Of(_design.Wheel.Fixings[0]), fixings.FirstAtRad, $"{DrawingNumbers.Trimmed(fixings.Count, 0)} × {_numbers.Diameter(fixings.DiameterMm)}"));
        }

        pen.Add(new CalloutDimension(_plan.Of(Point.Polar(_halfMm, 0)), Angles.RadFromDeg(50), "home mark, 0°"));
        double thick = _design.Brief.Carrier.ThicknessMm;
        Point right = _section.Of(new Point(_halfMm, 0));
        pen.Add(new LinearDimension(right - new Vector(0, _section.OnPaperMm(thick)), right, -6, _numbers.Length(thick, 3)) { Direction = LinearDirection.Upright, Subject = "thickness" });
        if (Part.Recess is CarrierRecess recess && SectionOf(Part).FirstOrDefault(s => s.Top < 0) is { To: var to } floor && floor.Top < 0)
        {
            pen.Add(new CalloutDimension(_section.Of(new Point((floor.From + to) / 2, floor.Top)), Angles.RadFromDeg(120), $"recess {_numbers.Length(recess.DepthMm, 3)} deep"));
        }
    }

    /// <summary>The carrier cut along the home line: from x to x, and how high it stands there from its face, mm.</summary>
    internal static IReadOnlyList<(double From, double To, double Top)> SectionOf(Part carrier)
    {
        Outline disc = carrier.Shapes[0].Finished;
        IReadOnlyList<Outline> pockets = carrier.Recess?.Pockets ?? [];
        Segment line = new(new(disc.Bounds.MinX - 1, 0), new(disc.Bounds.MaxX + 1, 0));
        double[] cuts = [.. pockets.Append(disc).SelectMany(o => o.Pieces).SelectMany(p => Intersections.Of(line, p).Points).Select(p => p.At.X).Order()];
        List<(double, double, double)> parts = [];
        for (int i = 0; i + 1 < cuts.Length; i++)
        {
            Point middle = new((cuts[i] + cuts[i + 1]) / 2, 0);
            if (cuts[i + 1] - cuts[i] > Tolerances.JoinMm && disc.Contains(middle))
            {
                parts.Add((cuts[i], cuts[i + 1], pockets.Any(p => p.Contains(middle)) ? -carrier.Recess!.DepthMm : 0));
            }
        }

        return parts;
    }
}
