using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Tomlyn.Model;

namespace WheelDraft.Tests.Parameters;

/// <summary>TOML to JSON by the library's own model, and JSON back to TOML: shares no code with the reader.</summary>
internal static class TomlJson
{
    public static JsonObject Read(string toml) => (JsonObject)Node(Tomlyn.TomlSerializer.Deserialize<TomlTable>(toml)!)!;

    /// <summary>One key a line, everything below in brackets and braces.</summary>
    public static string Write(JsonObject root)
    {
        StringBuilder text = new();
        foreach ((string key, JsonNode? value) in root)
        {
            text.Append(Key(key)).Append(" = ").Append(Value(value)).Append('\n');
        }

        return text.ToString();
    }

    private static JsonNode? Node(object value) => value switch
    {
        TomlTable table => new JsonObject(table.Select(p => KeyValuePair.Create(p.Key, Node(p.Value)))),
        TomlTableArray tables => new JsonArray([.. tables.Select(Node)]),
        TomlArray list => new JsonArray([.. list.Select(i => Node(i!))]),
        string text => JsonValue.Create(text),
        bool flag => JsonValue.Create(flag),
        long whole => JsonValue.Create(whole),
        double number => JsonValue.Create(number),
        _ => JsonValue.Create(Convert.ToString(value, CultureInfo.InvariantCulture)),
    };

    private static string Key(string key) => "\"" + key + "\"";

    private static string Value(JsonNode? node) => node switch
    {
        JsonObject table => "{ " + string.Join(", ", table.Select(p => $"{Key(p.Key)} = {Value(p.Value)}")) + " }",
        JsonArray list => "[ " + string.Join(", ", list.Select(Value)) + " ]",
        _ => node!.ToJsonString(),
    };
}
