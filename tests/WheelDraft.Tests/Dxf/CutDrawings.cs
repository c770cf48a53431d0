using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Dxf;

/// <summary>Cutting files of plain shapes, as tests want them.</summary>
internal static class CutDrawings
{
    /// <summary>The drawing of shapes: holes on WINDOW, outer contours on OUTLINE.</summary>
    public static CutDrawing Of(DrawingUnit unit, params IReadOnlyList<Outline> shapes) => new(unit, shapes.SelectMany(CutDrawing.ContoursOf));

    /// <summary>The unbroken lines among pieces, as stroke lettering has them: one for each run.</summary>
    public static IReadOnlyList<CutPath> Runs(CutLayer layer, IReadOnlyList<Piece> pieces) => [.. StrokeRun.Of(pieces).Select(run => new CutPath(layer, run.Pieces))];
}
