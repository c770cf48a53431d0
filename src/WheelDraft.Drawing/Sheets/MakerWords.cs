using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>What every drawing of a part tells the shop beside its shape: how many, tolerance class, edges, flatness.</summary>
internal static class MakerWords
{
    // Where the file asks nothing of a face, mm. Common practice, no source.
    private const double UsualFlatMm = 0.2;

    /// <summary>The notes of a part.</summary>
    /// <remarks>ISO 2768-1 is named by its class alone: the shop has its table.</remarks>
    public static IReadOnlyList<string> Of(Design design, Part part)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(part);
        string cut = part.KerfMm is null ? "" : $"cut edges ±{Length(design, design.Brief.Process.ToleranceMm)} each, all else ";
        return [$"{Quantity(design, part)} Tolerances: {cut}ISO 2768-m. Deburr{(part.Role == PartRole.Wheel ? "; no edge stands up on the wiper side" : "")}; {Flat(design, part)}"];
    }

    private static string Quantity(Design design, Part part)
    {
        NestedStock? nested = design.Brief.Sheets.Count == 0 ? null : design.Parts.Nested.FirstOrDefault(n => n.Pieces.Any(p => string.Equals(p.Part.FileName, part.FileName, StringComparison.Ordinal)));
        return $"Quantity: 1 a timer{(nested is null ? "" : $", {Wording.Number(nested.Stock.Sets, 0)} for the sets nested on sheet {Wording.Number(nested.FirstNumber, 0)}{(nested.Result.Sheets.Count > 1 ? " and following" : "")}")}{(part.Shapes.Count > 1 ? $"; {Wording.Number(part.Shapes.Count, 0)} pieces each" : "")}.";
    }

    // The copper's face may wobble by its run-out, so the part alone may not be out of flat by more.
    private static string Flat(Design design, Part part) => part.Role switch
    {
        PartRole.Wheel or PartRole.Carrier when design.Brief.Wheel.FaceRunOutMm > 0 => $"flat within {Length(design, design.Brief.Wheel.FaceRunOutMm)}.",
        PartRole.Strip => $"blank flat within {Length(design, UsualFlatMm)} (practice, no source).",
        _ => $"flat within {Length(design, UsualFlatMm)} (practice, no source).",
    };

    private static string Length(Design design, double mm) => new DrawingNumbers(design.Brief.DrawingUnit).LengthWithUnit(mm, 3);
}
