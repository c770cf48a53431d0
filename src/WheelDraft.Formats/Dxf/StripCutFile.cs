using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>The cutting file of a strip's blank: along x, its terminal end at x = 0, compensated for kerf, with fold lines and marks.</summary>
public static class StripCutFile
{
    /// <summary>The drawing of one strip.</summary>
    /// <param name="design">The design.</param>
    /// <param name="index">Which strip, from 0 in file order.</param>
    public static CutDrawing Of(Design design, int index)
    {
        ArgumentNullException.ThrowIfNull(design);
        StripForm form = design.Strips.Strips[index].Form;
        Geometry.Outline shape = design.CutStrips[index].ToCut;
        return new CutDrawing(
            design.Brief.DrawingUnit,
            CutDrawing.ContoursOf(shape),
            [
                .. form.Blank.FoldLines.Select(f => new CutPath(CutLayer.Fold, [f])),
                .. StripMarks.Of(design, form).Strokes.Select(s => new CutPath(CutLayer.Mark, s)),
            ],
            CutNotes.Under(design, new(0, shape.Bounds.MinY), Note(design, form)));
    }

    private static string Note(Design design, StripForm form)
    {
        ProcessBrief process = design.Brief.Process;
        string kerf = process.KerfMm > 0 ? $"COMPENSATED FOR A KERF OF {Wording.Mm(process.KerfMm)}" : "NOMINAL, NO KERF";
        string unit = design.Brief.DrawingUnit == DrawingUnit.Inch ? "INCH" : "MM";
        string grain = form.Strip.Grain switch
        {
            StripGrain.Along => ", GRAIN ALONG X",
            StripGrain.Across => ", GRAIN ALONG Y",
            _ => "",
        };
        return $"{design.Brief.DrawingNumber ?? design.Brief.Title} {form.Strip.Name}, {unit}, {kerf}, {form.Strip.Material} {Wording.Mm(form.Strip.ThicknessMm)}{grain}, WIPER SIDE UP";
    }
}
