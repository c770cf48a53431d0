using System.Text;

namespace WheelDraft.Formats.Languages;

/// <summary>Every phrase that the program may say on sheets, page, report and build texts, with {1}, {2}, … for what is set in.</summary>
internal static class EnglishPhrases
{
    private static readonly Lazy<IReadOnlyList<string>> List = new(() => [.. Embedded.Text("english.txt").Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(FromLine)]);

    /// <summary>All of them, in ordinal order.</summary>
    public static IReadOnlyList<string> All => List.Value;

    private static string FromLine(string line)
    {
        StringBuilder phrase = new(line.Length);
        for (int i = 0; i < line.Length; i++)
        {
            phrase.Append(line[i] == '\\' && i + 1 < line.Length ? (line[++i] == 'n' ? '\n' : line[i]) : line[i]);
        }

        return phrase.ToString();
    }
}

/// <summary>The files of this folder that are part of the program.</summary>
internal static class Embedded
{
    /// <summary>A file's text, lines ending in a line feed.</summary>
    public static string Text(string name)
    {
        using Stream stream = typeof(Embedded).Assembly.GetManifestResourceStream("Languages." + name) ?? throw new ArgumentException($"There is no file '{name}'.", nameof(name));
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    }
}
