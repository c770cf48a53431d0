using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What a true-size template shows: each part that is cut, at full size, and a page that says how to use it.</summary>
internal static class TemplateSheets
{
    // Round a part, mm: room for the words under it.
    private const double AirMm = 10;
    private const double WordsMm = 14;

    // A drill centre's cross reaches this far beyond the hole, mm.
    private const double CrossBeyondMm = 3;

    /// <summary>The parts, the wheel first, then the blanks of the strips in file order; each sheet as large as it needs to be.</summary>
    public static IReadOnlyList<Sheet> Parts(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return [Wheel(design), .. design.Strips.Strips.Select((s, i) => Strip(s.Form, i + 1))];
    }

    /// <summary>The page of instructions and cautions.</summary>
    public static Sheet Instructions(Design design, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(paper);
        const double marginMm = 20;
        double width = paper.WidthMm - (2 * marginMm);
        SheetBuilder sheet = new(new("template-instructions", $"True-size template: {design.Brief.Title}", "How the template is printed, checked, glued and cut, and what to beware of."), paper);
        GroupPen pen = sheet.Group("words", "Instructions", "words");
        double y = paper.HeightMm - marginMm;
        FittedText title = TextFit.Into($"True-size template: {design.Brief.Title}", width, TextStyle.Title, 2);
        for (int i = 0; i < title.Lines.Count; i++)
        {
            pen.Text(title.Lines[i], new(new(marginMm, y - (i * title.PitchMm)), TextAlong.Start, TextAcross.Top), title.Style);
        }

        y -= title.HeightMm + 8;
        Bounds steps = new NoteBlock("How to use it", Steps(design)).Draw(pen, new(marginMm, y), width);
        new CautionBlock(Cautions(design)).Draw(pen, new(marginMm, steps.MinY - 8), width);
        return sheet.Build();
    }

    private static IReadOnlyList<string> Cautions(Design design) =>
    [
        .. SheetWordsOf.CautionsOf(design),
        "Sharp edges and burrs: file them off; a burr shortens the distance to the next live part. Clamp the metal before drilling, wear eye protection.",
        "A part cut by hand is rarely as near to size as the tolerance that the design counts with: measure it, and check the made wheel on the bench with an isolating transformer and a residual-current device before it is used.",
    ];

    private static IReadOnlyList<string> Steps(Design design)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        return
        [
            "Print at 100 %, without fitting to the page.",
            "Measure the two lines of 100 mm on every page. If one is off by more than 0.2 mm, print again on another printer: angles would still be right, radii would not.",
            "Parts larger than a page: cut along one chain line of each join, lay the crosses with the same letter over each other, glue.",
            "Glue the template on the side of the copper on which the wipers run; it is seen from there.",
            "Centre-punch at the crosses and drill before cutting; then the inside edges, then the outside.",
            $"Cut beside the line and file to its middle. Lines are finished sizes, without kerf: wheel {design.Brief.Wheel.Material}, {numbers.LengthWithUnit(design.Brief.Wheel.ThicknessMm)} thick.",
            "Thin lines across a strip's blank are fold lines; a cross without a hole is a place to mark. Do not cut them.",
        ];
    }

    private static Sheet Wheel(Design design)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        WheelLayout wheel = design.Wheel;
        TemplatePart part = new(new("template-wheel", $"{design.Brief.Title}: wheel", "The contact wheel at true size: cut lines, drill centres, home mark."), [.. wheel.Copper.Select(c => c.Outline)]);
        BoreBrief bore = design.Brief.Wheel.Bore;
        part.Cross(Point.Origin, bore.DiameterMm / 2);
        foreach (Point fixing in wheel.Fixings)
        {
            part.Cross(fixing, design.Brief.Wheel.Fixings!.DiameterMm / 2);
        }

        part.Marks(WheelMarks.Of(design).Strokes);
        string fixings = wheel.Fixings.Count > 0 ? $", {DrawingNumbers.Trimmed(wheel.Fixings.Count, 0)} × {numbers.Diameter(design.Brief.Wheel.Fixings!.DiameterMm)}" : "";
        return part.Build([$"Wheel, wiper side. Drill {numbers.Diameter(bore.DiameterMm)}{fixings}.", $"Outer {numbers.Diameter(wheel.OuterDiameterMm)}, {numbers.LengthWithUnit(design.Brief.Wheel.ThicknessMm)} {design.Brief.Wheel.Material}."]);
    }

    private static Sheet Strip(StripForm form, int number)
    {
        TemplatePart part = new(new(Invariant.Text($"template-strip-{number}"), $"Strip '{form.Strip.Name}'", "A strip's blank at true size: cut lines, fold lines, drill centres."), [form.Blank.Outline]);
        foreach (Contour hole in form.Blank.Outline.Holes)
        {
            part.Cross(hole.Centroid, hole.Bounds.Width / 2);
        }

        foreach (BlankMark mark in form.Blank.Marks)
        {
            part.Cross(mark.At, mark.DiameterMm / 2);
        }

        part.Marks([.. form.Blank.FoldLines.Select(f => (IReadOnlyList<Piece>)[f])]);
        return part.Build([$"Strip '{form.Strip.Name}', flat blank.", $"{Wording.Mm(form.Strip.ThicknessMm)} {form.Strip.Material}, {form.Folds.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} folds."]);
    }

    /// <summary>One part on a sheet of its own.</summary>
    private sealed class TemplatePart
    {
        private readonly SheetBuilder _sheet;
        private readonly ViewPen _marks;
        private readonly Bounds _bounds;

        public TemplatePart(SheetWords words, IReadOnlyList<Outline> outlines)
        {
            _bounds = outlines.Select(o => o.Bounds).Aggregate((a, b) => a.With(b));
            _sheet = new(words, new PaperSize("part", Math.Max(_bounds.Width, LeastWidthMm) + (2 * AirMm), _bounds.Height + (2 * AirMm) + WordsMm));
            SheetView view = SheetView.At(DrawingScale.FullSize, new(_bounds.MinX, _bounds.MinY), new(AirMm, AirMm + WordsMm));
            ViewPen cut = _sheet.Group("cut", "Cut lines", "cut").In(view);
            foreach (Outline outline in outlines)
            {
                cut.Area(outline, Fill.Of(FillKind.Paper), LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.25));
            }

            _marks = _sheet.Group("marks", "Drill centres, marks and fold lines", "marks").In(view);
        }

        // The words under a part have this width at least, mm.
        private const double LeastWidthMm = 80;

        /// <summary>A drill centre.</summary>
        public void Cross(Point centre, double radiusMm)
        {
            double reach = radiusMm + CrossBeyondMm;
            LineStyle thin = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Centre, 0.18);
            _marks.Line(centre - new Vector(reach, 0), centre + new Vector(reach, 0), thin);
            _marks.Line(centre - new Vector(0, reach), centre + new Vector(0, reach), thin);
        }

        public void Marks(IReadOnlyList<IReadOnlyList<Piece>> strokes)
        {
            foreach (IReadOnlyList<Piece> stroke in strokes)
            {
                _marks.Line(stroke, LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Quiet, 0.18));
            }
        }

        public Sheet Build(IReadOnlyList<string> lines)
        {
            GroupPen pen = _sheet.Group("words", "What it is", "words");
            double y = AirMm + WordsMm - 3;
            foreach (string line in lines.SelectMany(l => TextFit.Wrap(l, Math.Max(_bounds.Width, LeastWidthMm), TextStyle.Small)))
            {
                pen.Text(line, new(new(AirMm, y), TextAlong.Start, TextAcross.Top), TextStyle.Small);
                y -= TextStyle.Small.HeightMm * Lettering.LinePitch;
            }

            return _sheet.Build();
        }
    }
}
