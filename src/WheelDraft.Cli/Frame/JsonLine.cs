using System.Text;
using System.Text.Json;

namespace WheelDraft.Cli;

/// <summary>What came of one of several files, as one line of JSON.</summary>
/// <remarks>Its keys: <c>file</c> as it was named, <c>exit_status</c>, and <c>result</c>, what the command gives for that file alone, or where there is none <c>messages</c>.</remarks>
internal static class JsonLine
{
    /// <summary>The line, without its end.</summary>
    /// <param name="file">The file, as it was named.</param>
    /// <param name="status">Its exit status.</param>
    /// <param name="words">What was said of it.</param>
    public static string Of(string file, int status, AsideWords words)
    {
        using MemoryStream line = new();
        using (Utf8JsonWriter json = new(line, JsonForm.Options with { Indented = false }))
        {
            json.WriteStartObject();
            json.WriteString("file", file);
            json.WriteNumber("exit_status", status);
            if (words.Results.Length > 0)
            {
                using JsonDocument result = JsonDocument.Parse(words.Results);
                json.WritePropertyName("result");
                result.RootElement.WriteTo(json);
            }
            else
            {
                json.WriteStrings("messages", words.Messages.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(line.ToArray());
    }
}
