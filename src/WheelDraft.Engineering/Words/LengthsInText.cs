using System.Globalization;
using System.Text.RegularExpressions;

namespace WheelDraft.Engineering;

/// <summary>Lengths in finished sentences, taken from millimetres into inches.</summary>
/// <remarks>The program thinks and words everything in mm; a person who draws in inches reads inches everywhere. Sentences are changed at the last
/// moment, where they leave for that person, so that no stage needs to know who reads. What counts as a length: a number, or several joined by "to",
/// "–", "×" or "and", before "mm", "mm/s" or "mm/N"; two or three bare numbers in brackets, which are coordinates; and the bare word mm. Areas
/// and what is said per mm² stay.</remarks>
internal static partial class LengthsInText
{
    private const double MmPerInch = 25.4; // exact: international yard and pound agreement, 1959

    // A ten-thousandth of an inch stands for the micrometre of metric sentences; finer ones keep a digit more than they had.
    private const int Decimals = 4;

    /// <summary>The sentence in inches.</summary>
    /// <param name="words">A sentence in mm.</param>
    /// <param name="asTheyAre">Texts of the person's own, left as they are wherever they stand.</param>
    public static string InInches(string words, IReadOnlyCollection<string> asTheyAre)
    {
        string? own = asTheyAre.Where(n => words.Contains(n, StringComparison.Ordinal)).MaxBy(n => n.Length);
        return own is null ? InInches(words) : string.Join(own, words.Split(own).Select(part => InInches(part, asTheyAre)));
    }

    /// <summary>Whether a text holds what would be taken for a length.</summary>
    public static bool AreIn(string words) => Lengths().IsMatch(words) || Places().IsMatch(words) || Unit().IsMatch(words);

    /// <summary>A length as a bare number of inches.</summary>
    public static string Inches(double lengthMm, int mmDecimals = 3) => Wording.Number(lengthMm / MmPerInch, Math.Max(Decimals, mmDecimals + 1));

    private static string InInches(string words) =>
        Unit().Replace(Places().Replace(Lengths().Replace(words, m => EachNumber(m.Groups["lengths"].Value) + " in" + m.Groups["per"].Value), m => EachNumber(m.Value)), m => m.Groups["after"].Success ? "in inches" : "in");

    private static string EachNumber(string words) => Numbers().Replace(words, m =>
    {
        int point = m.Value.IndexOf('.', StringComparison.Ordinal);
        string plain = m.Value.Replace('−', '-');
        return Inches(double.Parse(plain, CultureInfo.InvariantCulture), point < 0 ? 0 : m.Value.Length - point - 1);
    });

    [GeneratedRegex(@"(?<![\d.])(?<lengths>[-−]?\d+(?:\.\d+)?(?:(?: to | – | × | and )[-−]?\d+(?:\.\d+)?)*) mm(?![\w²³])(?!/[^sN])(?<per>/[sN])?", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Lengths();

    [GeneratedRegex(@"\(-?\d+(?:\.\d+)?(?:, -?\d+(?:\.\d+)?){1,2}\)", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Places();

    [GeneratedRegex(@"[-−]?\d+(?:\.\d+)?", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Numbers();

    [GeneratedRegex(@"(?<![\w/·])(?<after>in )?(?<![\w/·])mm(?![\w²³/])", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex Unit();
}
