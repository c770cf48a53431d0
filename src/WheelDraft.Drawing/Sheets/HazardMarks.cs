using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Marks of the places where a part may go wrong while it is cut.</summary>
internal static class HazardMarks
{
    // Half the width of a mark, mm on the paper.
    private const double HalfMm = 1.7;

    private static readonly LineStyle Edge = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Warning, 0.35);

    /// <summary>Draws a triangle at every place of a part.</summary>
    public static void Draw(SheetBuilder sheet, SheetView view, Design design, Part part)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(view);
        Point[] places = [.. Of(design, part).SelectMany(h => h.Places).Select(view.Of)];
        if (places.Length == 0)
        {
            return;
        }

        GroupPen pen = sheet.Group("hazards", "Where a thin web may warp, or a piece tip, as it is cut", "hazards");
        foreach (Point at in places)
        {
            Point[] corners = [at + new Vector(-HalfMm, -HalfMm), at + new Vector(HalfMm, -HalfMm), at + new Vector(0, HalfMm)];
            pen.Area(new Outline(Contour.Polygon(corners)), Fill.Of(FillKind.Paper), Edge);
            sheet.Texts.TakeEdges([new Segment(corners[0], corners[2]), new Segment(corners[2], corners[1])]);
        }
    }

    /// <summary>What the marks mean, for the notes of a part; nothing where it has none.</summary>
    public static IReadOnlyList<string> Notes(Design design, Part part) =>
        Of(design, part).Select(h => h.Finding.Code).Distinct(StringComparer.Ordinal).ToArray() is { Length: > 0 } codes
            ? [$"Triangles, as it is cut: {string.Join("; ", codes.Select(Meaning))} (the report says more)."]
            : [];

    private static string Meaning(string code) => code switch
    {
        "cut.falls" => "the part falls through the grate",
        "cut.tips" => "a piece may tip",
        _ => "long thin webs may warp",
    };

    private static IEnumerable<CutHazard> Of(Design design, Part part) =>
        CutHazards.Of(design.Brief, design.Wheel, design.Strips, part);
}
