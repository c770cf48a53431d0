using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What a true-size template shows: each part that is cut, at full size, the copper as artwork, and a page that says how to use it all.</summary>
internal static class TemplateSheets
{
    private const double MarginMm = 20;

    // What printers leave white at the edge of the paper, mm; common practice, no source.
    private const double UnprintableMm = 8;

    // Left of and below what a page shows stand the check lines, above it the caption, mm.
    private const double LeftMm = 22;
    private const double BelowMm = 24;
    private const double AboveMm = 22;

    /// <summary>The paper that templates are printed on, whatever the drawings' own sheets: A4, or Letter where drawings are in inches.</summary>
    public static PaperSize PaperOf(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return design.Brief.DrawingUnit == DrawingUnit.Inch ? PaperSize.Letter : PaperSize.A4;
    }

    /// <summary>Where a page shows its parts, mm on the page.</summary>
    public static Bounds WindowOf(PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(paper);
        return new(LeftMm, BelowMm, paper.WidthMm - UnprintableMm, paper.HeightMm - AboveMm);
    }

    /// <summary>The parts: the wheel, its carrier, the blanks of the strips in file order, each with its fold gauge; each sheet as large as it needs to be.</summary>
    public static IReadOnlyList<Sheet> Parts(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        TemplateWheel wheel = new(design, WindowOf(PaperOf(design)).Width);
        return [wheel.Copper(), wheel.Carrier(), .. CamTemplate.Parts(design), .. design.Strips.Strips.SelectMany((s, i) => Strip(design, s.Form, i + 1))];
    }

    private static IEnumerable<Sheet> Strip(Design design, StripForm form, int number)
    {
        yield return new TemplateStrip(design, form, number).Draw();
        if (TemplateGauge.IsWanted(form))
        {
            yield return new TemplateGauge(design, form, number).Draw();
        }
    }

    /// <summary>The page of instructions, marks and cautions.</summary>
    public static Sheet Instructions(Design design, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(paper);
        double width = paper.WidthMm - (2 * MarginMm);
        SheetBuilder sheet = new(new("template-instructions", $"True-size template: {design.Brief.Title}", "How the template is printed, checked, glued and cut, what its marks mean, and what to beware of."), paper);
        GroupPen pen = sheet.Group("words", "Instructions", "words");
        double y = paper.HeightMm - MarginMm;
        FittedText title = TextFit.Into($"True-size template: {design.Brief.Title}", width, TextStyle.Title, 2);
        for (int i = 0; i < title.Lines.Count; i++)
        {
            pen.Text(title.Lines[i], new(new(MarginMm, y - (i * title.PitchMm)), TextAlong.Start, TextAcross.Top), title.Style);
        }

        y -= title.HeightMm + 8;
        Bounds steps = new NoteBlock("How to use it", Steps(design)).Draw(pen, new(MarginMm, y), width);
        double below = Key(sheet, new(MarginMm, steps.MinY - 10));
        new CautionBlock(Cautions(design)).Draw(pen, new(MarginMm, below - 6), width);
        return sheet.Build();
    }

    // The marks, drawn beside what they mean.
    private static double Key(SheetBuilder sheet, Point topLeft)
    {
        const double rowMm = 11;
        GroupPen pen = sheet.Group("key", "The marks and what they mean", "key");
        Point Row(int row) => topLeft - new Vector(-6, rowMm * row);
        void Words(int row, string words) => pen.Text(words, new(Row(row) + new Vector(10, 0), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
        pen.Add(TemplateMarks.Drill(Row(0), 3, 3));
        Words(0, "Drill mark: punch its middle and drill; the size stands under the part.");
        pen.Add(TemplateMarks.Punch(Row(1)));
        Words(1, "Punch mark: punch only; nothing is drilled here by the template.");
        pen.Add(TemplateMarks.Join(Row(2)));
        Words(2, "Join mark, a letter beside it: lay it on the mark of the same letter on the next page.");
        AngleSense.Draw(pen, Row(3) - new Vector(5.5, AngleSense.HeightMm / 2));
        pen.Text("Wheel angles count anticlockwise from the home mark, seen from the wiper side.", new(Row(3) + new Vector(28, 0), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
        return topLeft.Y - (rowMm * 3) - (AngleSense.HeightMm / 2);
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
        CheckLine check = CheckLine.Of(design.Brief.DrawingUnit);
        return
        [
            "Print at 100 %, without fitting to the page.",
            $"Measure the two lines of {check.Words} on every page. If one is off by more than {numbers.LengthWithUnit(CheckLine.MostOffMm)}, print again on another printer: angles would still be right, radii would not.",
            "Parts larger than a page: cut along one chain line of each join, lay the join marks with the same letter over each other, glue.",
            "Glue the template on the side of the copper on which the wipers run, the carrier's on the side that takes the copper; both are seen from there.",
            $"Drill before cutting, thin metal clamped between scrap boards. Drills are of this series: {DrillSeries.Of(design.Brief.DrawingUnit).Name}. What the series has not, and a bore with a flat, is drilled under size and filed to the line.",
            $"Cut what is hatched away: the inside edges first, then the outside, beside the line, and file to its middle. Lines are finished sizes, without kerf: wheel {design.Brief.Wheel.Material}, {numbers.Thickness(design.Brief.Wheel.ThicknessMm)} thick.",
            .. design.Strips.Strips.Count > 0 ? ["Thin lines across a strip's blank are fold lines, numbered from the terminal end, with angle, side and inside radius: up is towards you. Do not cut them."] : (string[])[],
            "The last page is the copper in solid black, direct and mirrored, for etching or for film; a cut part does not need it.",
        ];
    }
}

/// <summary>The lines on every page of a template by which a printer is checked.</summary>
/// <param name="LengthMm">Length, mm.</param>
/// <param name="Parts">Into how many parts its ticks divide it.</param>
/// <param name="Words">The length in words.</param>
internal sealed record CheckLine(double LengthMm, int Parts, string Words)
{
    /// <summary>By how much a print may be off, mm: a rule is not read finer.</summary>
    public const double MostOffMm = 0.2;

    private const double MmPerInch = 25.4;

    /// <summary>100 mm, or 4 in where drawings are in inches.</summary>
    public static CheckLine Of(DrawingUnit unit) => unit == DrawingUnit.Inch ? new(4 * MmPerInch, 8, "4 in") : new(100, 10, "100 mm");
}
