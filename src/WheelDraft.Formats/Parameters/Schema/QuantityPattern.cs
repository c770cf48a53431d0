using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Parameters;

/// <summary>The form of texts as regular expressions of ECMA-262, as JSON Schema needs them: the same language as the reader's.</summary>
internal static class QuantityPattern
{
    private const string Blanks = "[ \\t\\u00A0\\u202F]*";

    private const string Unsigned = "(?:(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?|(?:[0-9]+(?:-|[ \\t\\u00A0\\u202F]+))?[0-9]+/0*[1-9][0-9]*)";

    private const string Number = "[+-]?" + Unsigned;

    /// <summary>A text with something in it and no characters that cannot be seen.</summary>
    public static string PlainText { get; } = $"^(?=.*\\S)[^{UnseenCharacters.InClass}]+$";

    /// <summary>Text on one line, or none at all.</summary>
    public static string TextOrNone { get; } = $"^[^{UnseenCharacters.InClass}]*$";

    /// <summary>A name: the same without path separators, and without a space at either end.</summary>
    public static string Name { get; } = $"^(?!\\s)(?!.*\\s$)[^{UnseenCharacters.InClass}/\\\\]+$";

    /// <summary>The form of a quantity, or of the words that may stand for it.</summary>
    public static string Of(QuantityShape shape)
    {
        IEnumerable<string> units = Unit.All.Where(u => shape.Dimensions.Contains(u.Dimension)).Select(u => Escaped(u.Symbol));
        IEnumerable<string> sums = QuantityParts.Chains.Where(c => shape.Dimensions.Contains(Unit.Find(c[0])!.Dimension)).SelectMany(Sums);
        string quantity = string.Join('|', sums.Prepend($"{Blanks}{Number}{Blanks}(?:{string.Join('|', units)}){Blanks}"));
        return shape.Words.Count == 0 ? $"^(?:{quantity})$" : $"^(?:{string.Join('|', shape.Words)}|{quantity})$";
    }

    // From each unit but the last on, with any of those after it.
    private static IEnumerable<string> Sums(IReadOnlyList<string> chain) => Enumerable.Range(0, chain.Count - 1).Select(i =>
        $"{Blanks}{Unsigned}{Blanks}{Escaped(chain[i])}{Blanks}" + string.Concat(chain.Skip(i + 1).Select(u => $"(?:{Unsigned}{Blanks}{Escaped(u)}{Blanks})?")));

    /// <summary>A unit with all but plain letters written as escapes, so that the schema reads the same in any editor.</summary>
    private static string Escaped(string symbol)
    {
        StringBuilder text = new();
        foreach (char c in symbol)
        {
            text.Append(char.IsAscii(c) ? c.ToString() : string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}"));
        }

        return text.ToString();
    }
}
