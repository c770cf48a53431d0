using System.Text.RegularExpressions;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Languages;

/// <summary>Phrases that hold lengths themselves, for readers of inches.</summary>
internal static partial class InchPhrases
{
    /// <summary>A phrase and its words in inches; no words where their figures are not those of the English phrase, for then nobody can say which is which.</summary>
    /// <param name="english">The phrase, in mm.</param>
    /// <param name="words">Its words, in mm, or none.</param>
    public static (string English, string Words) Of(string english, string words)
    {
        string inches = LengthsInText.InInches(english, []);
        if (words.Length == 0)
        {
            return (inches, "");
        }

        string[] before = [.. Figures().Matches(english).Select(m => m.Value)];
        string[] after = [.. Figures().Matches(inches).Select(m => m.Value)];
        string[] own = [.. Figures().Matches(words).Select(m => m.Value)];
        bool isClear = before.Length == after.Length && own.Order(StringComparer.Ordinal).SequenceEqual(before.Order(StringComparer.Ordinal), StringComparer.Ordinal)
            && before.Zip(after).GroupBy(p => p.First, StringComparer.Ordinal).All(g => g.Select(p => p.Second).Distinct(StringComparer.Ordinal).Count() == 1);
        if (!isClear)
        {
            return (inches, "");
        }

        Dictionary<string, string> figures = before.Zip(after).DistinctBy(p => p.First, StringComparer.Ordinal).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal);
        string turned = Figures().Replace(words, m => figures[m.Value]);
        return (inches, inches.Contains("mm", StringComparison.Ordinal) ? turned : Millimetres().Replace(turned, "in"));
    }

    // Figures, not the numbers of places.
    [GeneratedRegex(@"(?<![{\d.])\d+(?:\.\d+)?(?![}\d])", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Figures();

    [GeneratedRegex(@"(?<![\p{L}\d])mm(?![\p{L}\d²³])", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Millimetres();
}
