using System.Text.Encodings.Web;
using System.Text.Json;

namespace WheelDraft.Cli;

/// <summary>How JSON is written everywhere: the same bytes on every machine.</summary>
internal static class JsonForm
{
    /// <summary>Indented by two, LF, and only what JSON itself asks for escaped, since nothing is set into a page.</summary>
    public static JsonWriterOptions Options => new() { Indented = true, IndentSize = 2, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}
