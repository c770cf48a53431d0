using System.Globalization;

namespace WheelDraft.Formats.Parameters;

/// <summary>The written form of quantities: where the number ends, and what is wrong with one.</summary>
internal static class QuantityText
{
    /// <summary>Blanks that may stand round a quantity and before its unit: space, tab, and the no-break spaces that typesetting puts there.</summary>
    public static readonly char[] Blanks = [' ', '\t', '\u00A0', '\u202F'];

    /// <summary>Length of the number at the start: sign, digits, one point, an exponent only if a digit follows its e; 0 when there is none.</summary>
    public static int NumberLength(string text)
    {
        int at = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        int whole = Digits(text, at);
        int end = at + whole;
        int part = 0;
        if (end < text.Length && text[end] == '.')
        {
            part = Digits(text, end + 1);
            end += 1 + part;
        }

        return whole + part == 0 ? 0 : end + ExponentLength(text, end);
    }

    /// <summary>What is wrong with a quantity and what would be right, or null when it is well formed and of a wanted dimension.</summary>
    public static string? Fault(string text, string number, string unit, IReadOnlyList<Dimension> wanted)
    {
        string right = DimensionWords.RightForm(wanted);
        if (text.Contains(',', StringComparison.Ordinal))
        {
            return $"\"{text}\" has a comma; numbers take a decimal point and no thousands separators, e.g. {WithoutComma(text)}";
        }

        if (number.Length == 0)
        {
            return text.Length == 0 ? $"the text is empty; {right}" : $"\"{text}\" does not start with a number; {right}";
        }

        if (unit.Length == 0)
        {
            return $"\"{text}\" has no unit; {right}";
        }

        if (char.IsAsciiDigit(unit[0]) || unit[0] is '.' or '_' or '\'')
        {
            return $"\"{text}\" has a number in more than one piece; write the digits together with one decimal point at most, e.g. {DimensionWords.Example(wanted)}";
        }

        Unit? known = Unit.Find(unit);
        return known is null ? Unknown(text, unit, wanted)
            : wanted.Contains(known.Dimension) ? null
            : $"\"{text}\" is {Words.A(DimensionWords.Of(known.Dimension).Name)}; {right}";
    }

    /// <summary>The right form of a bare number: itself with the usual unit.</summary>
    public static string WithUnit(string number, IReadOnlyList<Dimension> wanted) => $"\"{number} {DimensionWords.UsualUnit(wanted[0])}\"";

    private static string Unknown(string text, string unit, IReadOnlyList<Dimension> wanted)
    {
        string? near = Unit.NearMissOf(unit, wanted);
        string units = DimensionWords.UnitList(wanted);
        return near is null
            ? $"\"{text}\" has the unknown unit \"{unit}\"; {DimensionWords.ANames(wanted)} is in {units}"
            : $"\"{text}\" has the unknown unit \"{unit}\"; did you mean \"{near}\"? {Words.Capital(DimensionWords.ANames(wanted))} is in {units}";
    }

    private static string WithoutComma(string text)
    {
        int comma = text.IndexOf(',', StringComparison.Ordinal);
        bool thousands = Digits(text, comma + 1) == 3 || text.IndexOf(',', comma + 1) >= 0 || text.Contains('.', StringComparison.Ordinal);
        string plain = text.Replace(",", "", StringComparison.Ordinal);
        string point = text.Replace(',', '.');
        return !thousands ? $"\"{point}\""
            : text.AsSpan().Count(',') == 1 && !text.Contains('.', StringComparison.Ordinal) ? $"\"{plain}\" or \"{point}\""
            : $"\"{plain}\"";
    }

    private static int Digits(string text, int from)
    {
        int at = from;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return at - from;
    }

    private static int ExponentLength(string text, int from)
    {
        if (from >= text.Length || text[from] is not ('e' or 'E'))
        {
            return 0;
        }

        int sign = from + 1 < text.Length && text[from + 1] is '+' or '-' ? 1 : 0;
        int digits = Digits(text, from + 1 + sign);
        return digits == 0 ? 0 : 1 + sign + digits;
    }

    /// <summary>A number for a message: plain decimal, no more digits than it has.</summary>
    public static string Plain(decimal value) => value.ToString("0.############", CultureInfo.InvariantCulture);
}
