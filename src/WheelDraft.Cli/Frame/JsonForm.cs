using System.Text.Encodings.Web;
using System.Text.Json;

namespace WheelDraft.Cli;

/// <summary>How JSON is written everywhere: the same bytes on every machine.</summary>
internal static class JsonForm
{
    /// <summary>Indented by two, LF, and only what JSON itself asks for escaped, since nothing is set into a page.</summary>
    public static JsonWriterOptions Options => new() { Indented = true, IndentSize = 2, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A key whose value is a list of texts.</summary>
    public static void WriteStrings(this Utf8JsonWriter json, string key, IEnumerable<string> values)
    {
        json.WriteStartArray(key);
        foreach (string value in values)
        {
            json.WriteStringValue(value);
        }

        json.WriteEndArray();
    }
}
