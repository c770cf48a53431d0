namespace WheelDraft.Formats.Explaining;

/// <summary>An explanation as plain lines of a terminal.</summary>
internal static class ExplanationLines
{
    /// <summary>Characters in the longest line: what is read with ease, and fits a window of usual width.</summary>
    public const int Width = 78;

    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(Explanation explanation) =>
    [
        explanation.Code,
        explanation.Title,
        "",
        .. explanation.Meaning.SelectMany(p => Wrapped(p, "")),
        "",
        .. Part("Why it matters", explanation.Notes.Why),
        .. Part("Source", explanation.Notes.Source),
        .. Part("How to cure it", explanation.Notes.Cure),
        .. explanation.Notes.Keys.Count == 0 ? [] : Part("Keys", $"{string.Join(", ", explanation.Notes.Keys)} (wheeldraft keys KEY tells about one)"),
        "Example",
        .. explanation.Example.Lines.Select(l => l.Length == 0 ? "" : "  " + l),
        "",
        .. Part("See also", string.Join(", ", explanation.Notes.See)).SkipLast(1),
    ];

    /// <summary>Words broken into lines of at most <see cref="Width"/> characters; a word that is longer stands alone.</summary>
    /// <param name="words">The words.</param>
    /// <param name="indent">What each line begins with.</param>
    public static IEnumerable<string> Wrapped(string words, string indent)
    {
        string line = indent;
        foreach (string word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > indent.Length && line.Length + 1 + word.Length > Width)
            {
                yield return line;
                line = indent;
            }

            line += line.Length == indent.Length ? word : " " + word;
        }

        yield return line;
    }

    private static IEnumerable<string> Part(string heading, string words) => [heading, .. Wrapped(words.Replace("`", "", StringComparison.Ordinal), "  "), ""];
}
