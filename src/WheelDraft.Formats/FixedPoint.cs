using System.Globalization;

namespace WheelDraft.Formats;

/// <summary>Numbers as files want them: fixed point, rounded first, never an exponent, never a negative zero.</summary>
internal static class FixedPoint
{
    /// <summary>The number with at most the given decimals, trailing zeros and a bare point left out: <c>12.5</c>, <c>-3</c>, <c>0</c>.</summary>
    /// <param name="value">A finite number.</param>
    /// <param name="decimals">0 to 15.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    internal static string Short(double value, int decimals)
    {
        string text = Full(value, decimals);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }

    /// <summary>As <see cref="Short"/>, but always with a point and a digit after it: <c>12.5</c>, <c>-3.0</c>, <c>0.0</c>.</summary>
    internal static string Real(double value, int decimals)
    {
        string text = Short(value, decimals);
        return text.Contains('.', StringComparison.Ordinal) ? text : text + ".0";
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
