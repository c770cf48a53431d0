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

    private static StripBrief Strip(CheckedTable table) =>
        new(table.Text("name")!, Task(table), table.Text("material") ?? "", table.BaseOrNull("thickness") ?? 0, [.. table.Tables("shape").Select(Piece)])
        {
            Left = new(table.Is("shape", "auto"), table.Is("approach", "auto") || (table.Is("shape", "auto") && !table.Has("approach")), table.Is("deflection", "auto") || (table.Is("shape", "auto") && !table.Has("deflection"))),
            Designation = table.Text("designation") ?? "",
            Grain = table.Text("grain") switch { "along" => StripGrain.Along, "across" => StripGrain.Across, _ => null },
            KFactor = table.Number("k_factor"),
            Holes = [.. table.Tables("holes").Select(h => new StripHole(h.Base("at"), h.Base("across"), h.Base("diameter")))],
            Clamp = table.Items("clamp") is [{ Quantity: { } from }, { Quantity: { } to }] ? new StripClamp(from.Value, to.Value) : null,
            DeflectionMm = table.BaseOrNull("deflection"),
            ApproachRad = table.RadOrNull("approach"),
            SeatedOn = table.Text("seated_on"),
        };

    /// <summary>What strips are made of; null without the table.</summary>
    public static StripsBrief? Recipe(CheckedTable? table)
    {
        if (table is null)
        {
            return null;
        }

        CheckedTable contact = table.Table("contact")!, foot = table.Table("foot")!;
        IReadOnlyList<CheckedValue> force = table.Items("force");
        return new(
            [.. table.Tables("stock").Select(s => new StripStock(s.Text("material")!, [.. s.Items("thickness").Select(t => t.Quantity!.Value.Value)]))],
            contact.BaseOrNull("fold_radius") is double fold ? new FoldContact(fold) : new RivetContact(new(contact.Base("rivet"), contact.Base("radius"), contact.Base("diameter"))),
            new(foot.Base("length"), foot.Base("width")),
            new(force[0].Quantity!.Value.Value, force[1].Quantity!.Value.Value),
            table.Text("seated_on")!)
        {
            Tab = table.Text("tab"),
            YieldFactor = table.Number("yield_factor"),
            FatigueFactor = table.Number("fatigue_factor"),
            Room = table.Table("room") is { } room ? BoardMaker.Plain(room) : null,
        };
    }

    /// <summary>All strips: those of the file, and with a recipe one for every wiper that has none.</summary>
    public static IReadOnlyList<StripBrief> All(CheckedTable root)
    {
        List<StripBrief> strips = [.. root.Tables("strip").Select(Strip)];
        if (root.Table("strips") is null)
        {
            return strips;
        }

        bool lands = root.Table("wheel")!.Is("construction", "lands");
        foreach ((StripTask task, string name) in Wipers(root, lands).Where(w => !strips.Any(s => Serves(s.Task, w.Task))))
        {
            strips.Add(new(Named(name, strips), task, "", 0, []) { Left = new(Shape: true, Approach: true, Deflection: true) });
        }

        return strips;
    }

    private static IEnumerable<(StripTask Task, string Name)> Wipers(CheckedTable root, bool lands) =>
    [
        .. lands ? [] : new (StripTask, string)[] { (new ServesFeed(), "feed strip") },
        .. root.Tables("output").Select(o => ((StripTask)new ServesOutput(o.Text("name")!, IsReturn: false), $"{o.Text("name")} strip")),
        .. lands ? root.Tables("output").Select(o => ((StripTask)new ServesOutput(o.Text("name")!, IsReturn: true), $"{o.Text("name")} return strip")) : [],
    ];

    private static bool Serves(StripTask has, StripTask wanted) => (has, wanted) switch
    {
        (ServesFeed, ServesFeed) => true,
        (ServesOutput a, ServesOutput b) => a.IsReturn == b.IsReturn && string.Equals(a.Output, b.Output, StringComparison.OrdinalIgnoreCase),
        _ => false,
    };

    // Cut where it is too long for a name, and counted where it is taken.
    private static string Named(string name, List<StripBrief> others)
    {
        string cut = name.Length > NameShape.MostCharacters ? name[..NameShape.MostCharacters] : name;
        for (int i = 2; others.Any(s => string.Equals(s.Name, cut, StringComparison.OrdinalIgnoreCase)); i++)
        {
            string end = FormattableString.Invariant($" {i}");
            cut = (name.Length + end.Length > NameShape.MostCharacters ? name[..(NameShape.MostCharacters - end.Length)] : name) + end;
        }

        return cut;
    }

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
