using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>The notes of a cutting file: what it is, in which unit, how it is compensated, from what.</summary>
internal static class CutNotes
{
    // Height of the letters, mm, how far under the part they stand, and the pitch of lines.
    private const double HeightMm = 2.5;
    private const double GapMm = 5;
    private const double PitchMm = 4;

    /// <summary>The notes below a part. The mark of the parameter file stands at the end, that the design misses something in front, and what the
    /// person answers for on a line of its own.</summary>
    /// <param name="design">The design.</param>
    /// <param name="part">The part.</param>
    /// <param name="tabs">How many holding tabs it has.</param>
    public static IReadOnlyList<CutNote> Of(Design design, Part part, int tabs = 0)
    {
        Bounds all = part.CutBounds;
        Point at = new(part.Role == PartRole.Strip ? 0 : all.MinX, all.MinY - GapMm);
        CutNote note = new(at, HeightMm, (design.Meets ? "" : "MISSES: DO NOT CUT. ") + Words(design, part, tabs));
        return design.Brief.Spacing.OwnResponsibility is string own
            ? [note, new(at - new Vector(0, PitchMm), HeightMm, $"BELOW THE RULES ON OWN RESPONSIBILITY: {own}")]
            : [note];
    }

    private static string Words(Design design, Part part, int tabs)
    {
        string input = design.Brief.InputMark.Length > 0 ? $", INPUT {design.Brief.InputMark.ToUpperInvariant()}" : "";
        string stock = $"{(part.Stock.Material is string material ? material + " " : "")}{(part.Stock.ThicknessMm is double thickness ? Wording.Mm(thickness) : "THICKNESS NOT GIVEN")}";
        ReadersUnit lengths = ReadersUnit.Of(design.Brief);
        return $"{Head(design, part)}, {Unit(design.Brief.DrawingUnit)}, {KerfWords(design, part)}, {lengths.Words(stock)}{Side(part)}{lengths.Words(Recess(part))}{lengths.Words(Tabs(design, tabs))}{input}";
    }

    /// <summary>How a note of a part begins, in either unit.</summary>
    internal static IEnumerable<string> Heads(Design design, Part part) => Enum.GetValues<DrawingUnit>().Select(u => $"{Head(design, part)}, {Unit(u)}, ");

    private static string Head(Design design, Part part) => $"{design.Brief.DrawingNumber ?? design.Brief.Title} {part.Name}";

    /// <summary>What a note says of holding tabs; a reader knows by it that layer TAB belongs to the outlines.</summary>
    internal static string Tabs(Design design, int count) => count == 0 ? ""
        : $", {Wording.Number(count, 0)} {DxfReader.TabNote}, LEFT UNCUT, {Wording.Mm(design.Brief.Process.TabWidthMm)} WIDE: BREAK AND FILE FLUSH";

    /// <summary>The word of a unit in notes.</summary>
    internal static string Unit(DrawingUnit unit) => unit == DrawingUnit.Inch ? "INCH" : "MM";

    /// <summary>How a part is compensated, as its note says it.</summary>
    internal static string KerfWords(Design design, Part part) => ReadersUnit.Of(design.Brief).Words(Kerf(part));

    private static string Kerf(Part part) => part.KerfMm switch
    {
        null => "NOMINAL",
        _ when part.KerfLeftToShop => "NOMINAL, THE SHOP ALLOWS FOR ITS KERF",
        0 => "NOMINAL, NO KERF",
        double kerf => $"COMPENSATED FOR A KERF OF {Wording.Mm(kerf)}",
    };

    private static string Recess(Part part) => part.Recess is CarrierRecess recess
        ? $", RECESS {Wording.Mm(recess.DepthMm)} DEEP, {Wording.Mm(recess.FitMm)} LARGER ALL ROUND THAN THE COPPER"
        : "";

    // Folds have a side, and in hard stock a direction of the grain.
    private static string Side(Part part) => part.Role != PartRole.Strip ? "" : part.Stock.Grain switch
    {
        StripGrain.Along => ", GRAIN ALONG X, WIPER SIDE UP",
        StripGrain.Across => ", GRAIN ALONG Y, WIPER SIDE UP",
        _ => ", WIPER SIDE UP",
    };
}
