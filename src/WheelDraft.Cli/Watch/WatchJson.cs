using System.Text.Json;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>What the watching page asks for, as JSON.</summary>
internal static class WatchJson
{
    /// <summary>How a saving stands: its faults, or its findings.</summary>
    public static byte[] State(WatchedDesign watched, string file) => Write(json =>
    {
        json.WriteNumber("version", watched.Version);
        json.WriteString("file", file);
        json.WriteString("title", watched.Design?.Brief.Title ?? "");
        json.WriteBoolean("drawn", watched.Design is not null);
        json.WriteNumber("drawn_version", watched.DrawnVersion);
        json.WriteBoolean("meets", watched.Design?.Meets ?? false);
        List(json, "faults", watched.Faults);
        List(json, "findings", watched.Design is Design design ? AsRead(design) : []);
    });

    // The page shows them to a person.
    private static IEnumerable<Finding> AsRead(Design design)
    {
        ReadersUnit unit = ReadersUnit.Of(design.Brief);
        return design.Findings.OrderBy(f => f.Severity).Select(f => f with { Message = unit.Words(f.Message) });
    }

    /// <summary>The names of the files.</summary>
    public static byte[] Files(WatchedDesign watched) => Write(json => json.WriteStrings("files", watched.FileNames));

    /// <summary>The names of the sheets, without folder and ending.</summary>
    public static byte[] Sheets(WatchedDesign watched) => Write(json => json.WriteStrings("sheets", watched.Sheets.Select(f => Path.GetFileNameWithoutExtension(f.Name))));

    private static byte[] Write(Action<Utf8JsonWriter> members)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }

        return bytes.ToArray();
    }

    private static void List(Utf8JsonWriter json, string key, IEnumerable<Finding> findings)
    {
        json.WriteStartArray(key);
        foreach (Finding finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("severity", finding.Severity switch { FindingSeverity.Error => "error", FindingSeverity.Warning => "warning", _ => "note" });
            json.WriteString("code", finding.Code);
            json.WriteString("message", finding.Message);
            if (finding.Where is TextPlace place)
            {
                json.WriteNumber("line", place.Line);
                json.WriteNumber("column", place.Column);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
