using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace WheelDraft.Formats.Parameters;

/// <summary>The JSON Schema (draft 2020-12) of the parameter file, made from the same key definitions as the reader, for completion in editors.</summary>
/// <remarks>It knows keys, kinds, words, units and which keys go together; ranges of quantities stand in the descriptions, and rules across tables
/// (names that must exist, times that must not overlap) are the reader's alone.</remarks>
internal static class ParameterSchema
{
    /// <summary>The schema as indented JSON with LF line ends and a last LF; always the same bytes.</summary>
    public static string Text()
    {
        using MemoryStream bytes = new();
        JsonWriterOptions form = new() { Indented = true, IndentSize = 2, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (Utf8JsonWriter writer = new(bytes, form))
        {
            TableDefinition root = FileKeys.Root;
            writer.WriteStartObject();
            writer.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            writer.WriteString("title", "WheelDraft parameter file, format 1");
            SchemaWriter schema = new(writer);
            schema.TableBody(root);
            schema.Definitions();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }
}
