using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The pages of a true-size template that show bases: edge, holes with their centres, where strips, clamps and the motor's case lie.</summary>
internal static class BaseTemplate
{
    private const double AirMm = 10;
    private const double WordsMm = 14;
    private const double LeastWidthMm = 80;

    // A drill centre's cross reaches this far beyond its hole, mm.
    private const double CrossBeyondMm = 3;

    private static readonly LineStyle Cut = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.25);
    private static readonly LineStyle Seen = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Quiet, 0.18);

    /// <summary>A sheet for each base, as large as it needs to be.</summary>
    public static IReadOnlyList<Sheet> Parts(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return [.. design.Parts.Bases.Select(b => One(design, b))];
    }

    private static Sheet One(Design design, BasePlate plate)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        Outline outline = plate.Part.Shapes[0].Finished;
        Bounds bounds = outline.Bounds;
        double width = Math.Max(bounds.Width, LeastWidthMm);
        SheetBuilder sheet = new(
            new($"template-{plate.Part.FileName}", $"{design.Brief.Title}: base", "The base at true size: cut lines, drill centres, where strips, clamps and parts lie."),
            new PaperSize("part", width + (2 * AirMm), bounds.Height + (2 * AirMm) + WordsMm));
        SheetView view = SheetView.At(DrawingScale.FullSize, new(bounds.MinX, bounds.MinY), new(AirMm, AirMm + WordsMm));
        sheet.Group("cut", "Cut lines", "cut").In(view).Area(outline, Fill.Of(FillKind.Paper), Cut);
        Seats(sheet.Group("seats", "Where strips, clamps and parts lie: not cut", "marks").In(view), design, plate);
        ViewPen marks = sheet.Group("marks", "Drill centres", "marks").In(view);
        foreach (BaseHole hole in plate.Holes)
        {
            double reach = (hole.DiameterMm / 2) + CrossBeyondMm;
            marks.Line(hole.At - new Vector(reach, 0), hole.At + new Vector(reach, 0), Seen);
            marks.Line(hole.At - new Vector(0, reach), hole.At + new Vector(0, reach), Seen);
        }

        string thick = plate.Part.Stock.ThicknessMm is double thickness ? $", {numbers.LengthWithUnit(thickness)} thick" : "";
        Words(sheet, width,
            $"Base, upper face{thick}, insulating, material group {plate.Surface.Group}. {Holes(plate, numbers)}",
            "Chain lines: strips and parts. Dashed: under clamps. Neither is cut, scratched nor burnt: dirt in a line between live parts conducts.");
        return sheet.Build();
    }

    private static string Holes(BasePlate plate, DrawingNumbers numbers)
    {
        IEnumerable<string> each = plate.Holes.GroupBy(h => Math.Round(h.DiameterMm, 6)).Select(g => $"{DrawingNumbers.Trimmed(g.Count(), 0)} × {numbers.Diameter(g.Key)}");
        return plate.Holes.Count > 0 ? $"Drill {string.Join(", ", each)}." : "";
    }

    private static void Seats(ViewPen pen, Design design, BasePlate plate)
    {
        foreach (Contour strip in BaseMarks.Strips(design, plate).Concat(BaseMarks.Parts(design)).Concat(BaseMarks.Screws(design)))
        {
            pen.Line(strip, LineStyle.Centre);
        }

        foreach (Contour clamp in BaseMarks.Clamps(plate))
        {
            pen.Line(clamp, LineStyle.Hidden);
        }
    }

    private static void Words(SheetBuilder sheet, double width, params IReadOnlyList<string> words)
    {
        GroupPen pen = sheet.Group("words", "What it is", "words");
        double y = AirMm + WordsMm - 3;
        foreach (string line in words.SelectMany(w => TextFit.Wrap(w, width, TextStyle.Small)))
        {
            pen.Text(line, new(new(AirMm, y), TextAlong.Start, TextAcross.Top), TextStyle.Small);
            y -= TextStyle.Small.HeightMm * Lettering.LinePitch;
        }
    }
}
