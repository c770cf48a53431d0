using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>The cutting file of a wheel: copper compensated for kerf, all lands in their places, marks to scribe, a note that is not cut.</summary>
public static class WheelCutFile
{
    /// <summary>The drawing of a design's wheel.</summary>
    public static CutDrawing Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        Geometry.Bounds all = design.CutWheel.Select(c => c.ToCut.Bounds).Aggregate((a, b) => a.With(b));
        return new CutDrawing(
            design.Brief.DrawingUnit,
            design.CutWheel.SelectMany(c => CutDrawing.ContoursOf(c.ToCut)),
            design.Wheel.Feed is null ? [] : WheelMarks.Of(design).Strokes.Select(s => new CutPath(CutLayer.Mark, s)),
            CutNotes.Under(design, new(all.MinX, all.MinY), Note(design)));
    }

    private static string Note(Design design)
    {
        ProcessBrief process = design.Brief.Process;
        string kerf = process.KerfMm > 0 ? $"COMPENSATED FOR A KERF OF {Wording.Mm(process.KerfMm)}" : "NOMINAL, NO KERF";
        string unit = design.Brief.DrawingUnit == DrawingUnit.Inch ? "INCH" : "MM";
        return $"{design.Brief.DrawingNumber ?? design.Brief.Title} {(design.Wheel.Feed is null ? "LANDS" : "WHEEL")}, {unit}, {kerf}, {design.Brief.Wheel.Material} {Wording.Mm(design.Brief.Wheel.ThicknessMm)}";
    }
}

/// <summary>The cutting file of the carrier of a lands wheel: its edge, bore and fixings, with the marks that lands have no room for.</summary>
/// <remarks>Nominal: the process of the parameter file is that of the copper, and a carrier is cut by another.</remarks>
public static class CarrierCutFile
{
    /// <summary>The drawing of a design's carrier.</summary>
    public static CutDrawing Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        Geometry.Outline shape = design.Wheel.Carrier;
        string unit = design.Brief.DrawingUnit == DrawingUnit.Inch ? "INCH" : "MM";
        return new CutDrawing(
            design.Brief.DrawingUnit,
            CutDrawing.ContoursOf(shape),
            WheelMarks.Of(design).Strokes.Select(s => new CutPath(CutLayer.Mark, s)),
            CutNotes.Under(
                design,
                new(shape.Bounds.MinX, shape.Bounds.MinY),
                $"{design.Brief.DrawingNumber ?? design.Brief.Title} CARRIER, {unit}, NOMINAL, {Wording.Mm(design.Brief.Carrier.ThicknessMm)}"));
    }
}
