using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>The cutting file of a part: its shapes as the cutter is led, fold lines, marks to scribe, a note that is not cut.</summary>
/// <remarks>A wheel and its carrier lie in the wheel frame; a strip's blank lies along x, its terminal end at x = 0.</remarks>
internal static class PartCutFile
{
    // Height of the note's letters, mm, and how far under the part it stands.
    private const double NoteHeightMm = 2.5;
    private const double NoteGapMm = 5;

    /// <summary>The drawing of one part of a design.</summary>
    public static CutDrawing Of(Design design, Part part)
    {
        PartMarks marks = PartMarks.Of(design, part);
        Bounds all = part.CutBounds;
        Point under = new(part.Role == PartRole.Strip ? 0 : all.MinX, all.MinY - NoteGapMm);
        return new CutDrawing(
            design.Brief.DrawingUnit,
            part.Shapes.SelectMany(s => CutDrawing.ContoursOf(s.ToCut)),
            [
                .. marks.Folds.Select(f => new CutPath(CutLayer.Fold, [f])),
                .. marks.Scribed.Select(s => new CutPath(CutLayer.Mark, s)),
            ],
            [new CutNote(under, NoteHeightMm, CutNotes.Of(design, part))]);
    }
}
