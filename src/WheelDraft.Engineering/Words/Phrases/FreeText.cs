using System.Text.RegularExpressions;

namespace WheelDraft.Engineering;

/// <summary>What in a text needs no words of another language: figures, units, names of files, what stands in quotes, the person's own names.</summary>
internal static partial class FreeText
{
    // Signs of units and of quantities, and words that are the same in print everywhere.
    private static readonly HashSet<string> Same = new(
        [
            "mm", "cm", "in", "kV", "mV", "Hz", "kHz", "ms", "min", "mA", "kA", "VA", "kVA", "var", "mΩ", "kΩ", "Ω", "MΩ", "mN", "Nm", "MPa", "GPa", "µm", "ml", "mL", "kg", "rpm", "deg", "rad", "mg",
            "DXF", "SVG", "PDF", "PNG", "CSV", "TOML", "JSON", "IEC", "ISO", "DIN", "EN", "PE", "PD", "AC", "DC", "WheelDraft", "RSS", "Table", "clause", "ed", "OUTLINE", "WINDOW", "FOLD", "MARK", "NOTE", "LEAD", "RECESS",
        ],
        StringComparer.Ordinal);

    /// <summary>Where a text of several parts is parted, the strongest sign first.</summary>
    public static IReadOnlyList<string> Signs { get; } = [". ", "; ", ": ", " · ", " (", ", ", " – ", " / ", ")", " = ", "\n"];

    /// <summary>How many letters of a text call for words.</summary>
    /// <param name="text">The text.</param>
    /// <param name="own">The person's own texts.</param>
    public static int Letters(string text, IReadOnlySet<string> own)
    {
        int letters = 0;
        foreach (Match word in Words().Matches(Quoted().Replace(text, " ")))
        {
            letters += Same.Contains(word.Value) || own.Contains(word.Value) ? 0 : word.Length;
        }

        return letters;
    }

    /// <summary>How many characters at the beginning of a text, blanks after them included, need no words: figures, what stands in quotes, the person's own names.</summary>
    public static int Before(string text, IReadOnlySet<string> own)
    {
        int at = 0;
        while (at < text.Length)
        {
            int end = own.Where(n => n.Length <= text.Length - at && string.CompareOrdinal(text, at, n, 0, n.Length) == 0 && IsEnd(text, at + n.Length)).Select(n => at + n.Length).DefaultIfEmpty(0).Max();
            if (end == 0 && Leading().Match(text, at) is { Success: true } lead && lead.Index == at)
            {
                end = at + lead.Length;
            }

            if (end == 0)
            {
                break;
            }

            at = end;
        }

        return at;
    }

    /// <summary>How many characters at the end of a text, blanks before them included, need no words.</summary>
    public static int After(string text, IReadOnlySet<string> own)
    {
        int end = text.Length;
        while (end > 0)
        {
            int start = own.Where(n => n.Length <= end && string.CompareOrdinal(text, end - n.Length, n, 0, n.Length) == 0 && (end == n.Length || !char.IsLetterOrDigit(text[end - n.Length - 1]))).Select(n => end - n.Length).DefaultIfEmpty(end).Min();
            if (start == end && Trailing().Match(text[..end]) is { Success: true } trail)
            {
                start = trail.Index;
            }

            if (start == end)
            {
                break;
            }

            end = start;
        }

        return text.Length - end;
    }

    private static bool IsEnd(string text, int at) => at >= text.Length || !char.IsLetterOrDigit(text[at]);

    /// <summary>The words of a text, each once.</summary>
    public static IEnumerable<string> WordsOf(string text) => AllWords().Matches(text).Select(m => m.Value).Distinct(StringComparer.Ordinal);

    // A figure with its unit, what stands in quotes, or signs alone.
    [GeneratedRegex(@"\G(?:'[^']*'|`[^`]*`|""[^""]*""|[-−+±]?\d[\w.,°%/·²³]*(?: (?:mm|cm|µm|in|s|ms|min|V|kV|mV|A|mA|W|VA|N|mN|K|Hz|g|mL|L|m|Ω|mΩ)(?:[²³]|\b))?|\p{L}(?!\p{L})|[^\p{L}\d'`""]+)", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Leading();

    [GeneratedRegex(@"(?:'[^']*'|`[^`]*`|""[^""]*""|(?<![\w.])[-−+±]?\d[\w.,°%/·²³]*(?: (?:mm|cm|µm|in|s|ms|min|V|kV|mV|A|mA|W|VA|N|mN|K|Hz|g|mL|L|m|Ω|mΩ)[²³]?)?|(?<!\p{L})\p{L}|\s[^\p{L}\d'`""]*|[*)\]:;,]+)$", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Trailing();

    // In quotes, as code, or with a slash, a point or an underline inside: a name, a place, a key.
    [GeneratedRegex(@"'[^']*'|`[^`]*`|""[^""]*""|\b(?:cam|strip|base|sheet)-[a-z0-9-]+\b|\w+\[\d+\][\w.\[\]]*|\w*(?:[\w-][/\\_][\w-]|\w\.\w)[\w/\\._-]*", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Quoted();

    [GeneratedRegex(@"(?<![\p{L}\d])\p{L}{2,}", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Words();

    [GeneratedRegex(@"\p{L}+", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex AllWords();
}

/// <summary>The first letter of a text, small or capital: the same phrase begins a sentence or stands within one.</summary>
internal static class FirstLetter
{
    /// <summary>The text with its first letter changed from small to capital, or back; as it is where it begins with none, or with two capitals.</summary>
    public static string Other(string text) => text.Length == 0 || !char.IsLetter(text[0]) || (text.Length > 1 && char.IsUpper(text[1]))
        ? text
        : (char.IsUpper(text[0]) ? char.ToLowerInvariant(text[0]) : char.ToUpperInvariant(text[0])) + text[1..];
}
