using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

/// <summary>The words of finished markup in the language of its readers: texts between tags, and attributes that are read aloud or shown.</summary>
internal static partial class MarkupWords
{
    /// <summary>The markup with its words looked up; the same markup where readers read English.</summary>
    public static string Read(string markup)
    {
        if (!ReadersWords.AreOthers)
        {
            return markup;
        }

        StringBuilder read = new(markup.Length);
        int at = 0;
        foreach (Capture words in Captures(markup))
        {
            read.Append(markup, at, words.Index - at).Append(SvgMarkup.Escaped(ReadersWords.Read(SvgMarkup.Plain(words.Value))));
            at = words.Index + words.Length;
        }

        return read.Append(markup, at, markup.Length - at).ToString().Replace("<html lang=\"en\">", $"<html lang=\"{ReadersWords.Language}\">", StringComparison.Ordinal);
    }

    /// <summary>What scripts say, with {1}, {2}, … where something is set in: every <c>said("…"</c>, in the order in which they stand.</summary>
    public static IEnumerable<string> OfScript(string script) => Said().Matches(script).Select(m => m.Groups["words"].Value.Replace("\\\"", "\"", StringComparison.Ordinal)).Distinct(StringComparer.Ordinal);

    /// <summary>Where words stand in markup, in order.</summary>
    internal static IEnumerable<Capture> Captures(string markup) => Words().Matches(markup).Select(m => m.Groups["words"]).Where(g => g.Success && g.Value.Any(char.IsLetter));

    // Styles and scripts, comments and code are passed over whole; then an attribute inside a tag, or the text from a tag's end to the next tag.
    [GeneratedRegex(@"<(?<skip>style|script|code)\b[^>]*>.*?</\k<skip>>|(?:aria-label|aria-valuetext|aria-description|alt|title|placeholder)=""(?<words>[^""]*)""|(?<=>|^)\s*(?<words>[^<>\s](?:[^<>]*[^<>\s])?)\s*(?=<|$)", RegexOptions.CultureInvariant | RegexOptions.Singleline, 5000)]
    private static partial Regex Words();

    [GeneratedRegex(@"\bsaid\(""(?<words>(?:[^""\\]|\\.)*)""", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Said();
}
