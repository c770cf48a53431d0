using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The pages of a true-size template that show cams: outline, bore and index mark.</summary>
internal static class CamTemplate
{
    /// <summary>A sheet for each cam, as large as it needs to be.</summary>
    public static IReadOnlyList<Sheet> Parts(Design design) => [.. design.Cams.Select((c, i) => One(design, c, design.Parts.Cams[i]))];

    private static Sheet One(Design design, CamLayout cam, Part part)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        BoreBrief bore = cam.Brief.Bore ?? design.Brief.Wheel.Bore;
        string flat = bore.FlatMm is double across ? $", flat {numbers.LengthWithUnit(across)} from the opposite side" : "";
        TemplatePart sheet = TemplatePart.Of(
            new($"template-{part.FileName}", $"{design.Brief.Title}: cam {cam.Brief.Name}", "The cam at true size, seen from the wiper side: cut lines, bore, index mark."),
            cam.Outline.Bounds,
            new(ShowsSense: true),
            [
                $"Cam {cam.Brief.Name}, seen from the wiper side: {cam.Brief.Material}, {numbers.Thickness(cam.Brief.ThicknessMm)} thick. Bore {numbers.Diameter(bore.DiameterMm)}{flat}. The short line is the index mark: in line with the wheel's home mark.",
                "Saw beside the line and file to its middle; a file guided by a template of metal keeps the curve. By hand it is rarely within a tenth of a millimetre: measure it along the table of its drawing.",
            ]);
        sheet.In("cut", "Cut lines").Area(cam.Outline, Fill.Of(FillKind.Paper), TemplateMarks.Cut);
        ViewPen marks = sheet.In("marks", "Index mark and axis");
        foreach (IReadOnlyList<Piece> mark in PartMarks.Of(design, part).Scribed)
        {
            marks.Line(mark, LineStyle.Thin);
        }

        marks.CentreCross(Point.Origin, bore.DiameterMm / 2);
        return sheet.Build();
    }
}
