using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Makes a brief from a file without faults: every key that is needed is there, every value right.</summary>
internal static class BriefMaker
{
    /// <summary>The whole brief.</summary>
    public static Brief Make(CheckedTable root, IReadOnlyDictionary<string, TextPlace> places, string sha256)
    {
        SpacingBrief spacing = SurroundingsMaker.Spacing(root.Table("spacing")!);
        return ToleranceMaker.Resolve(Plain(root, places, sha256, spacing), root.Tables("output"));
    }

    private static Brief Plain(CheckedTable root, IReadOnlyDictionary<string, TextPlace> places, string sha256, SpacingBrief spacing)
    {
        return new Brief
        {
            Title = root.Text("title")!,
            DrawingNumber = root.Text("drawing"),
            DrawingUnit = root.Is("drawing_units", "in") ? DrawingUnit.Inch : DrawingUnit.Millimetre,
            Date = root.Find("date")?.Content as DateOnly?,
            InputSha256 = sha256,
            Office = root.Table("drawing_office") is { } office ? Office(office) : new DrawingOfficeBrief(),
            Supply = SurroundingsMaker.Supply(root.Table("supply")!),
            Environment = SurroundingsMaker.Environment(root.Table("environment")!),
            Drive = SurroundingsMaker.Drive(root),
            Spacing = spacing,
            Housing = root.Table("housing") is { } housing ? SurroundingsMaker.Housing(housing) : Housing.Exact,
            Wheel = WheelMaker.Wheel(root.Table("wheel")!),
            Carrier = WheelMaker.Carrier(root.Table("carrier")!),
            Process = ProcessRules.Resolve(root),
            Feed = root.Table("feed") is { } feed ? WheelMaker.Feed(feed, root.Has("strips") || root.Tables("strip").Any(s => s.Flag("feed") == true)) : null,
            Outputs = [.. root.Tables("output").Select(o => OutputMaker.Output(o, spacing, root.Has("strips") || root.Tables("strip").Any(s => s.Is("output", o.Text("name")!))))],
            Loads = [.. root.Tables("load").Select(l => CircuitMaker.Load(l, l.Text("name")!))],
            Inputs = [.. root.Tables("input").Select(CircuitMaker.Input)],
            DriveMotor = root.Table("drive_motor") is { } motor ? CircuitMaker.Load(motor, "motor") : null,
            Interlocks = [.. root.Tables("interlock").Select(CircuitMaker.Interlock)],
            MonteCarlo = CircuitMaker.MonteCarlo(root.Table("monte_carlo")),
            Scenarios = [.. root.Tables("scenario").Select(CircuitMaker.Scenario)],
            Surfaces = [.. root.Tables("surface").Select(BoardMaker.Surface)],
            Forming = StripMaker.Forming(root.Table("forming")),
            StripRecipe = StripMaker.Recipe(root.Table("strips")),
            Strips = StripMaker.All(root),
            Parts = [.. root.Tables("part").Select(BoardMaker.Part)],
            Ribs = [.. root.Tables("rib").Select(BoardMaker.Rib)],
            Slots = [.. root.Tables("slot").Select(BoardMaker.Slot)],
            Cams = [.. root.Tables("cam").Select(CamMaker.Cam)],
            Sheets = [.. root.Tables("sheet").Select(WheelMaker.Sheet)],
            Places = root.Table("strips") is { } recipe ? WithRecipe(places, recipe, StripMaker.All(root).Count) : places,
        };
    }

    // A strip that the file does not name is what [strips] made of it.
    private static Dictionary<string, TextPlace> WithRecipe(IReadOnlyDictionary<string, TextPlace> places, CheckedTable recipe, int strips)
    {
        Dictionary<string, TextPlace> all = new(places, StringComparer.Ordinal);
        for (int i = 0; i < strips; i++)
        {
            all.TryAdd(FormattableString.Invariant($"strip[{i}]"), recipe.Place);
        }

        return all;
    }

    private static DrawingOfficeBrief Office(CheckedTable table) => new()
    {
        Owner = table.Text("owner") ?? "",
        CreatedBy = table.Text("created_by") ?? "",
        ApprovedBy = table.Text("approved_by") ?? "",
        Revision = table.Text("revision") ?? "",
        LargestSheet = table.Text("sheet") ?? "",
        Revisions = [.. table.Tables("revisions").Select(r => new RevisionBrief(r.Text("revision")!, r.Find("date")?.Content as DateOnly?, r.Text("text")!))],
    };
}
