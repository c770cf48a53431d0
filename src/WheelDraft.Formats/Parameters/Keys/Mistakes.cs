namespace WheelDraft.Formats.Parameters;

/// <summary>What people write that is wrong for a reason that spelling does not show, and what would be right. One list, by key.</summary>
internal static class Mistakes
{
    private const string AlternatingOnly =
        "this program sets out timers with a synchronous motor, which needs alternating current of a known frequency; for direct current no speed, arc or contact gap can be worked out here";

    private static readonly string[] Direct = ["vdc", "v=", "v\u2393", "dc"];

    private static readonly (string Key, string[] Written, string Right)[] KnownValues =
    [
        ("direction", ["counterclockwise", "counter clockwise", "ccw", "contraclockwise", "left"], "write \"anticlockwise\", as seen from the wiper side"),
        ("direction", ["cw", "right"], "write \"clockwise\", as seen from the wiper side"),
        ("material_group", ["III", "3"], "group III is two: \"IIIa\" (tracking index from 175 to below 400) and \"IIIb\" (from 100 to below 175); write \"IIIb\" where you do not know, or cti = the index itself"),
        ("name", ["scroll saw", "scrollsaw", "jigsaw", "jig saw", "coping saw", "piercing saw", "jeweller's saw", "jeweler's saw", "saw", "hand"], "write \"fretsaw\", which stands for sawing by hand to a line, and your own figures beside it if you hold them closer"),
        ("name", ["laser", "laser cutting"], "write \"fibre-laser\""),
        ("name", ["water jet", "waterjet cutting"], "write \"waterjet\""),
        ("name", ["etching", "etched", "photo etching", "chemical etching"], "write \"photo-etch\" for copper sheet etched through, or \"board-etch\" for copper on a board"),
        ("name", ["wire erosion", "edm", "wire cutting"], "write \"wire-edm\""),
        ("name", ["mill", "milling", "cnc", "cnc router", "cnc milling"], "write \"router\" for sheet, or \"board-mill\" for copper on a board"),
        ("name", ["pcb", "circuit board"], "write \"board-etch\" or \"board-mill\""),
        ("drawing_units", ["inch", "inches"], "write \"in\""),
        ("drawing_units", ["millimetre", "millimetres", "millimeter", "millimeters", "metric"], "write \"mm\""),
        ("construction", ["window", "windows"], "write \"windowed\""),
        ("construction", ["land", "segments", "segmented"], "write \"lands\""),
        ("frequency", ["dc", "0 hz", "direct current", "none"], AlternatingOnly),
    ];

    private static readonly (string Table, string Written, string Right)[] Names =
    [
        ("the file", "motor", "write [drive_motor] for what it draws and where it hangs; how fast it turns stands in [drive]"),
        ("the file", "copper", "the copper stands in [wheel]"),
        ("the file", "contact", "each contact stands in its [[output]], and that of the feed in [feed]"),
        ("the file", "ring", "each ring is an [[output]]"),
        ("the file", "switch", "write [[input]]"),
        ("the file", "sensor", "write [[input]]"),
        ("[drive]", "rpm", "write speed = \"0.333 rpm\""),
        ("[drive]", "motor", "the motor's load stands in [drive_motor]"),
        ("[drive]", "period", "write turn_time = \"180 s\""),
    ];

    /// <summary>What would be right instead of a value; null when the list does not know it.</summary>
    public static string? OfValue(string key, string written) =>
        IsDirect(key, written) ? AlternatingOnly
        : KnownValues.FirstOrDefault(v => string.Equals(v.Key, key, StringComparison.Ordinal) && v.Written.Any(w => IsSame(w, written))).Right;

    /// <summary>What would be right instead of an unknown key or table; null when the list does not know it.</summary>
    public static string? OfName(string table, string written) =>
        Names.FirstOrDefault(n => string.Equals(n.Table, table, StringComparison.Ordinal) && IsSame(n.Written, written)).Right;

    // "24 VDC", "24 V DC", "24 V=": a voltage and the words for direct current.
    private static bool IsDirect(string key, string written)
    {
        string plain = Plain(written);
        return key is "voltage" && plain.Length > 0 && char.IsAsciiDigit(plain[0])
            && Direct.Any(d => plain.EndsWith(d, StringComparison.Ordinal));
    }

    private static bool IsSame(string a, string b) => string.Equals(Plain(a), Plain(b), StringComparison.Ordinal);

    private static string Plain(string words) => words.Replace(" ", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal).Replace("_", "", StringComparison.Ordinal).ToLowerInvariant();
}
