using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>The note of a cutting file: what it is, in which unit, how it is compensated, from what.</summary>
internal static class CutNotes
{
    /// <summary>The note of a part, with the mark of the parameter file at its end; where the design misses something that stands in front.</summary>
    public static string Of(Design design, Part part)
    {
        string input = design.Brief.InputMark.Length > 0 ? $", INPUT {design.Brief.InputMark.ToUpperInvariant()}" : "";
        string unit = design.Brief.DrawingUnit == DrawingUnit.Inch ? "INCH" : "MM";
        string stock = $"{(part.Stock.Material is string material ? material + " " : "")}{Wording.Mm(part.Stock.ThicknessMm)}";
        return $"{(design.Meets ? "" : "MISSES: DO NOT CUT. ")}{design.Brief.DrawingNumber ?? design.Brief.Title} {part.Name}, {unit}, {Kerf(part)}, {stock}{Side(part)}{input}";
    }

    private static string Kerf(Part part) => part.KerfMm switch
    {
        null => "NOMINAL",
        0 => "NOMINAL, NO KERF",
        double kerf => $"COMPENSATED FOR A KERF OF {Wording.Mm(kerf)}",
    };

    // Folds have a side, and in hard stock a direction of the grain.
    private static string Side(Part part) => part.Role != PartRole.Strip ? "" : part.Stock.Grain switch
    {
        StripGrain.Along => ", GRAIN ALONG X, WIPER SIDE UP",
        StripGrain.Across => ", GRAIN ALONG Y, WIPER SIDE UP",
        _ => ", WIPER SIDE UP",
    };
}
