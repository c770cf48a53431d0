using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The pages of a true-size template that show bases: edge, holes with their centres, where strips, clamps and the motor's case lie.</summary>
internal static class BaseTemplate
{
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
        string thick = plate.Part.Stock.ThicknessMm is double thickness ? $", {numbers.LengthWithUnit(thickness)} thick" : "";
        TemplatePart part = TemplatePart.Of(
            new($"template-{plate.Part.FileName}", $"{design.Brief.Title}: base", "The base at true size: cut lines, holes to drill, where strips, clamps and parts lie."),
            outline.Bounds,
            new(),
            [
                $"Base, upper face{thick}, insulating, material group {plate.Surface.Group}. {Holes(plate, numbers)}",
                "Chain lines: strips and parts. Dashed: under clamps. Neither is cut, scratched nor burnt: dirt in a line between live parts conducts.",
            ]);
        part.In("cut", "Cut lines").Area(outline, Fill.Of(FillKind.Paper), TemplateMarks.Cut);
        Seats(part.In("seats", "Where strips, clamps and parts lie: not cut"), design, plate);
        GroupPen marks = part.On("marks", "Holes to drill");
        foreach (BaseHole hole in plate.Holes)
        {
            marks.Add(TemplateMarks.Drill(part.View.Of(hole.At), hole.DiameterMm, hole.DiameterMm));
        }

        return part.Build();
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
}
