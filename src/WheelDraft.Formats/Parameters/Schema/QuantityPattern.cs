using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Parameters;

/// <summary>The form of texts as regular expressions of ECMA-262, as JSON Schema needs them: the same language as the reader's.</summary>
internal static class QuantityPattern
{
    private const string Blanks = "[ \\t\\u00A0\\u202F]*";

    private const string Number = "[+-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?";

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
        string quantity = $"{Blanks}{Number}{Blanks}(?:{string.Join('|', units)}){Blanks}";
        return shape.Words.Count == 0 ? $"^{quantity}$" : $"^(?:{string.Join('|', shape.Words)}|{quantity})$";
    }

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
