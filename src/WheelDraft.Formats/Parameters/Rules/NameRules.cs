using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Names are unique without regard to case within their kind, and some are taken.</summary>
internal sealed class NameRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    private static readonly string[] Kinds = ["output", "load", "input", "interlock", "scenario", "surface", "strip", "part", "cam"];

    /// <summary>What the reserved names always mean.</summary>
    public static string? ReservedMeaning(string name) => name.ToUpperInvariant() switch
    {
        "L" => "line",
        "N" => "neutral",
        "E" => "earth",
        "MOTOR" => "the drive motor",
        _ => null,
    };

    private string? MeaningOf(string name) => Lines.Contains(name, StringComparer.OrdinalIgnoreCase) ? "line" : ReservedMeaning(name);

    /// <inheritdoc/>
    public override void Check()
    {
        foreach (string kind in Kinds)
        {
            Unique(kind);
        }

        foreach (CheckedTable load in Root.Tables("load").Where(l => string.Equals(l.Text("name"), "motor", StringComparison.OrdinalIgnoreCase)))
        {
            Wrong(load.PlaceOf("name"), $"the load name \"{load.Text("name")}\" is the drive motor's", "describe the motor under [drive_motor], or give the load another name");
        }

        foreach (CheckedTable output in Root.Tables("output").Where(o => !o.Has("net")))
        {
            Taken(output, "output", "give it a net, e.g. net = \"valve\", or another name");
        }

        foreach (CheckedTable part in Root.Tables("part").Where(p => p.Is("kind", "touchable") || p.Is("kind", "floating")))
        {
            Taken(part, $"{part.Text("kind")} part", "give it another name");
        }
    }

    private void Taken(CheckedTable table, string kind, string right)
    {
        if (table.Text("name") is { } name && MeaningOf(name) is { } meaning)
        {
            Wrong(table.PlaceOf("name"), $"the {kind} \"{name}\" would be on a net of that name, which always means {meaning}", right);
        }
    }

    private void Unique(string kind)
    {
        Dictionary<string, TextPlace> seen = new(StringComparer.OrdinalIgnoreCase);
        foreach (CheckedTable table in Root.Tables(kind))
        {
            if (table.Text("name") is not { } name || seen.TryAdd(name, table.PlaceOf("name")))
            {
                continue;
            }

            string line = seen[name].Line.ToString(CultureInfo.InvariantCulture);
            Wrong(table.PlaceOf("name"), $"the {kind} name \"{name}\" stands twice, first at line {line}", "names of a kind differ in more than upper and lower case, so give it another");
        }
    }
}
