using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>The cutting file of a wheel: copper compensated for kerf, marks to scribe, a note that is not cut.</summary>
public static class WheelCutFile
{
    // Height of the note's letters, mm, and how far under the part it stands.
    private const double NoteHeightMm = 2.5;
    private const double NoteGapMm = 5;

    /// <summary>The drawing of a design's wheel.</summary>
    public static CutDrawing Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        Geometry.Outline shape = design.CutWheel.ToCut;
        Geometry.Point under = new(shape.Bounds.MinX, shape.Bounds.MinY - NoteGapMm);
        return new CutDrawing(
            design.Brief.DrawingUnit,
            CutDrawing.ContoursOf(shape),
            WheelMarks.Of(design).Strokes.Select(s => new CutPath(CutLayer.Mark, s)),
            [new CutNote(under, NoteHeightMm, Note(design))]);
    }

    private static string Note(Design design)
    {
        ProcessBrief process = design.Brief.Process;
        string kerf = process.KerfMm > 0 ? $"COMPENSATED FOR A KERF OF {Wording.Mm(process.KerfMm)}" : "NOMINAL, NO KERF";
        string unit = design.Brief.DrawingUnit == DrawingUnit.Inch ? "INCH" : "MM";
        return $"{design.Brief.DrawingNumber ?? design.Brief.Title} WHEEL, {unit}, {kerf}, {design.Brief.Wheel.Material} {Wording.Mm(design.Brief.Wheel.ThicknessMm)}";
    }
}
