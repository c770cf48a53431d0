using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>The text of a file that is written in TOML.</summary>
internal static class FileText
{
    /// <summary>The text of UTF-8 bytes, without a byte order mark; null, with the reason told, where they are too many or none.</summary>
    /// <param name="bytes">All bytes of the file, at most <see cref="Budgets.ParameterFileBytes"/>.</param>
    /// <param name="what">What the file should be, with its article: "a parameter file".</param>
    /// <param name="diagnostics">Told what is wrong.</param>
    public static string? Of(ReadOnlySpan<byte> bytes, string what, DiagnosticList diagnostics)
    {
        if (bytes.Length > Budgets.ParameterFileBytes)
        {
            diagnostics.Add(new TextPlace(1, 1), $"the file is larger than {Budgets.ParameterFileBytes / (1024 * 1024)} MiB", $"{what} is much smaller; is it the right file?");
            return null;
        }

        ReadOnlySpan<byte> text = bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[3..] : bytes;
        if (FirstBadByte(text) is TextPlace bad)
        {
            diagnostics.Add(bad, "the file is not UTF-8 from here on", "save it as UTF-8 (an editor calls this an encoding)");
            return null;
        }

        return Encoding.UTF8.GetString(text);
    }

    /// <summary>A text as a basic string of TOML, in its quotation marks.</summary>
    public static string Quoted(string text)
    {
        StringBuilder quoted = new StringBuilder().Append('"');
        foreach (char c in text)
        {
            quoted.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\t' => "\\t",
                < ' ' or '\u007f' => $"\\u{(int)c:X4}",
                _ => c.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>Place of the first byte that is not UTF-8, or null.</summary>
    private static TextPlace? FirstBadByte(ReadOnlySpan<byte> bytes)
    {
        (int line, int column) = (1, 1);
        for (ReadOnlySpan<byte> rest = bytes; rest.Length > 0;)
        {
            if (Rune.DecodeFromUtf8(rest, out Rune rune, out int length) != System.Buffers.OperationStatus.Done)
            {
                return new TextPlace(line, column);
            }

            (line, column) = rune.Value == '\n' ? (line + 1, 1) : (line, column + 1);
            rest = rest[length..];
        }

        return null;
    }
}
