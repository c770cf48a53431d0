using System.Text.Json;
using Tomlyn.Parsing;

namespace WheelDraft.Formats.Parameters;

/// <summary>Writes a TOML value as JSON: the examples and defaults of the key definitions.</summary>
internal static class TomlAsJson
{
    /// <summary>Writes one value.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="toml">The value as it stands in a parameter file.</param>
    public static void Write(Utf8JsonWriter writer, string toml)
    {
        TomlTable tree = new TomlTree(new DiagnosticList()).Build(SyntaxParser.Parse($"value = {toml}\n", ""));
        Write(writer, tree.Find("value")!.Value);
    }

    private static void Write(Utf8JsonWriter writer, TomlNode node)
    {
        switch (node)
        {
            case TomlText text:
                writer.WriteStringValue(text.Value);
                break;
            case TomlNumber number:
                writer.WriteNumberValue(number.Value);
                break;
            case TomlFlag flag:
                writer.WriteBooleanValue(flag.Value);
                break;
            case TomlList list:
                writer.WriteStartArray();
                list.Items.ForEach(item => Write(writer, item));
                writer.WriteEndArray();
                break;
            case TomlTable table:
                writer.WriteStartObject();
                table.Entries.ForEach(entry =>
                {
                    writer.WritePropertyName(entry.Name);
                    Write(writer, entry.Value);
                });
                writer.WriteEndObject();
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(node), node, "Dates stand as texts in a parameter file.");
        }
    }
}
