using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Formed strips.</summary>
internal static class StripMaker
{
    /// <summary>How exactly strips are made; the usual limits without the table.</summary>
    public static FormingBrief Forming(CheckedTable? table)
    {
        FormingLimit Limit(string key) => new(table.Quantity(key)!.Value.Value, table.Has(key));
        return table is null ? new FormingBrief() : new FormingBrief
        {
            FoldRad = new(table.Rad("fold_tolerance"), table.Has("fold_tolerance")),
            ThicknessShare = Limit("thickness_tolerance"),
            HeightMm = Limit("height_tolerance"),
            RadiusMm = Limit("radius_tolerance"),
        };
    }

    /// <summary>A strip.</summary>
    public static StripBrief Strip(CheckedTable table) =>
        new(table.Text("name")!, Task(table), table.Text("material")!, table.Base("thickness"), [.. table.Tables("shape").Select(Piece)])
        {
            Designation = table.Text("designation") ?? "",
            Grain = table.Text("grain") switch { "along" => StripGrain.Along, "across" => StripGrain.Across, _ => null },
            KFactor = table.Number("k_factor"),
            Holes = [.. table.Tables("holes").Select(h => new StripHole(h.Base("at"), h.Base("across"), h.Base("diameter")))],
            Clamp = table.Items("clamp") is [{ Quantity: { } from }, { Quantity: { } to }] ? new StripClamp(from.Value, to.Value) : null,
            DeflectionMm = table.BaseOrNull("deflection"),
            ApproachRad = table.RadOrNull("approach"),
            SeatedOn = table.Text("seated_on"),
        };

    private static StripTask Task(CheckedTable table) =>
        table.Text("output") is { } output ? new ServesOutput(output, table.Is("wiper", "return"))
        : table.Text("net") is { } net ? new ServesNet(net, PlanPoints.One(table, "tip")!.Value)
        : new ServesFeed();

    private static StripPiece Piece(CheckedTable piece) => piece.Definition.Name switch
    {
        "tab" => new StripTab(piece.Text("tab")!),
        "straight" => new StripStraight(piece.BaseOrNull("straight"), piece.BaseOrNull("width"), piece.BaseOrNull("width_end")),
        "bend" => new StripBend(piece.Rad("bend"), piece.Base("radius"), piece.Flag("contact")!.Value),
        "sweep" => new StripSweep(piece.Rad("sweep"), piece.Base("radius"), piece.BaseOrNull("width")),
        _ => new StripRivet(piece.Base("rivet"), piece.Base("radius"), piece.Base("diameter")),
    };
}
