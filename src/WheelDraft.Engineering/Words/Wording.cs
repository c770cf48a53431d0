using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Figures with their units, as sentences show them: rounded, no exponent, no negative zero, any locale.</summary>
internal static class Wording
{
    /// <summary>A length, to the micrometre: "3.88 mm".</summary>
    public static string Mm(double lengthMm) => Number(lengthMm, 3) + " mm";

    /// <summary>A time, to the millisecond: "5.5 s".</summary>
    public static string Seconds(double timeS) => Number(timeS, 3) + " s";

    /// <summary>An angle given in radians, to a thousandth of a degree: "14°".</summary>
    public static string Degrees(double angleRad) => Number(Angles.DegFromRad(angleRad), 3) + "°";

    /// <summary>A voltage, to a tenth: "230 V".</summary>
    public static string Volts(double voltageV) => Number(voltageV, 1) + " V";

    /// <summary>A share as a percentage: "1 %".</summary>
    public static string Percent(double share) => Number(share * 100, 2) + " %";

    /// <summary>A number with exactly so many decimals; what rounds to nothing has no sign: "0.00".</summary>
    public static string Fixed(double value, int decimals)
    {
        string text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.StartsWith('-') && !text.AsSpan().ContainsAnyInRange('1', '9') ? text[1..] : text;
    }

    /// <summary>A number with at most so many decimals.</summary>
    public static string Number(double value, int decimals) =>
        (Math.Round(value, decimals) + 0.0).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
}
