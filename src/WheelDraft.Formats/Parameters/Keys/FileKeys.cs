namespace WheelDraft.Formats.Parameters;

/// <summary>The whole parameter file, format 1: the one set of key definitions that reader, schema and messages share.</summary>
/// <remarks>Each chapter of keys stands in a file of its own beside this one. No rule between keys lives here, those are in the folder Rules.</remarks>
internal static class FileKeys
{
    /// <summary>The words for a grade of insulation.</summary>
    public static string[] Insulations => ["functional", "basic", "supplementary", "reinforced"];

    /// <summary>The words for a material group.</summary>
    public static string[] Groups => ["I", "II", "IIIa", "IIIb"];

    private static TableDefinition? _root;

    /// <summary>The root table, made when it is first asked for.</summary>
    public static TableDefinition Root => _root ??=
        new("the file", "One rotary contact timer: its supply, drive, wheel, programme, strips and circuit.", [.. Head, .. Tables]);

    private static KeyDefinition[] Head =>
    [
        Make.Needed("format", Make.Whole(1, 1), "how the file is read", "Format of the file.", "1"),
        Make.Needed("title", new TextShape(120), "what the design is called on drawings and reports", "Title of the design.", "\"Propagation bench controller\""),
        Make.Optional("drawing", new TextShape(40), "Drawing number, goes into title blocks.", "\"PB-01\""),
        Make.Preset("drawing_units", Make.Word("mm", "in"), "\"mm\"", "What drawings and DXF use."),
        Make.Optional("date", new DateShape(), "The only date that ever appears in an output.", "\"2026-11-01\""),
    ];

    private static KeyDefinition[] Tables =>
    [
        Optional("drawing_office", OfficeKeys.Office),
        Needed("supply", SupplyKeys.Supply, "voltages, clearances and speed"),
        Needed("environment", SupplyKeys.Environment, "pollution and altitude, and with them every required distance"),
        Needed("drive", SupplyKeys.Drive, "how long a turn takes and which way it goes"),
        Needed("spacing", SupplyKeys.Spacing, "which rules keep live parts apart"),
        Needed("wheel", WheelKeys.Wheel, "how the wheel is built"),
        Needed("carrier", WheelKeys.Carrier, "the creepage distances over the body of the wheel"),
        Needed("process", WheelKeys.Process, "how fine the copper can be cut"),
        Optional("housing", BoardKeys.Housing),
        Optional("feed", WheelKeys.Feed),
        new("output", new TablesShape(OutputKeys.Output, 1), OutputKeys.Output.Doc) { Decides = "what the wheel switches", Example = "[[output]]" },
        Several("load", CircuitKeys.Load),
        Several("input", CircuitKeys.Input),
        Optional("drive_motor", CircuitKeys.DriveMotor),
        Several("interlock", CircuitKeys.Interlock),
        Optional("monte_carlo", CircuitKeys.MonteCarlo),
        Several("scenario", CircuitKeys.Scenario),
        Several("surface", BoardKeys.Surface),
        Optional("forming", StripKeys.Forming),
        Optional("strips", StripKeys.Strips),
        Several("strip", StripKeys.Strip),
        Several("part", BoardKeys.Part),
        Several("rib", BoardKeys.Rib),
        Several("slot", BoardKeys.Slot),
        Several("cam", CamKeys.Cam),
        Several("sheet", WheelKeys.Sheet),
    ];

    private static KeyDefinition Needed(string name, TableDefinition table, string decides) =>
        new(name, new TableShape(table), table.Doc) { Decides = decides, Example = $"[{name}]" };

    private static KeyDefinition Optional(string name, TableDefinition table) => new(name, new TableShape(table), table.Doc) { Example = $"[{name}]" };

    private static KeyDefinition Several(string name, TableDefinition table) => new(name, new TablesShape(table, 0), table.Doc) { Example = $"[[{name}]]" };
}
