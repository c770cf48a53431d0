using System.Globalization;

namespace WheelDraft.Formats;

/// <summary>Numbers as files want them: fixed point, rounded first, never an exponent, never a negative zero.</summary>
internal static class FixedPoint
{
    private const double MostWhole = 1e15;

    private static readonly double[] Powers = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>The number with at most the given decimals, trailing zeros and a bare point left out: <c>12.5</c>, <c>-3</c>, <c>0</c>.</summary>
    /// <param name="value">A finite number.</param>
    /// <param name="decimals">0 to 15.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    internal static string Short(double value, int decimals)
    {
        // What Math.Round makes of the number is this whole one by a power of ten; as long as a double holds every such whole number its digits are those of the fraction.
        double whole = Math.Round(value * Powers[decimals]);
        if (Math.Abs(whole) < MostWhole)
        {
            return Digits((long)whole, decimals);
        }

        string text = Full(value, decimals);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }

    /// <summary>As <see cref="Short"/>, but always with a point and a digit after it: <c>12.5</c>, <c>-3.0</c>, <c>0.0</c>.</summary>
    internal static string Real(double value, int decimals)
    {
        string text = Short(value, decimals);
        return text.Contains('.', StringComparison.Ordinal) ? text : text + ".0";
    }

    private static string Digits(long whole, int decimals)
    {
        while (decimals > 0 && whole % 10 == 0)
        {
            (whole, decimals) = (whole / 10, decimals - 1);
        }

        // From the last digit to the first; a nought stands before the point even where nothing else does.
        Span<char> text = stackalloc char[24];
        int at = text.Length;
        long left = Math.Abs(whole);
        for (int place = 0; left > 0 || place <= decimals; place++)
        {
            if (place == decimals && place > 0)
            {
                text[--at] = '.';
            }

            text[--at] = (char)('0' + (left % 10));
            left /= 10;
        }

        if (whole < 0)
        {
            text[--at] = '-';
        }

        return new string(text[at..]);
    }

    private static string Full(double value, int decimals)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "Only finite numbers can be written to a file.");
        }

        // Adding zero turns the negative zero that rounding leaves behind into the plain one.
        double rounded = Math.Round(value, decimals) + 0.0;
        return rounded.ToString(string.Create(CultureInfo.InvariantCulture, $"F{decimals}"), CultureInfo.InvariantCulture);
    }
}
