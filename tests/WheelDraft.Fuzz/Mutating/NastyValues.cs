using System.Globalization;

namespace WheelDraft.Fuzz;

/// <summary>Numbers, units and words that readers trip over.</summary>
internal static class NastyValues
{
    private static readonly string[] Numbers =
    [
        "0", "-0", "1", "-1", "2", "3", "7", "10", "16", "17", "45", "89.9", "90", "179.9", "180", "359.999", "360", "361", "720", "1000", "65536",
        "0.001", "0.05", "0.1", "0.25", "0.5", "0.999999999", "1e-9", "1e-300", "1e6", "1e300", "-1e300", "1e999", "5e-324", "1.7976931348623157e308",
        "99999999999999999999", "2147483647", "-2147483648", "4294967296", "9223372036854775807", "0.30000000000000004", "1_000", "0x10", "0b1", "1,5", "1.", ".5",
        "+3", "--3", "nan", "inf", "-inf", "1e", "\u00BD", "\u0663", "1/4", "1 1/2", "",
    ];

    private static readonly string[] Units =
    [
        "mm", "cm", "m", "in", "mil", "um", "\u00B5m", "ft", "s", "ms", "min", "h", "deg", "rad", "\u00B0", "turn", "turns", "V", "kV", "mV", "A", "mA", "W", "kW", "VA", "Hz", "kHz", "%",
        "N", "mN", "MPa", "GPa", "mL", "L", "mL/min", "L/h", "ohm", "K", "\u00B0C", "rpm", "kg", "", "mm mm", "bananas", "MM", "\u2009mm",
    ];

    private static readonly string[] Texts =
    [
        "", " ", "L", "N", "E", "PE", "auto", "always", "none", "a", "-", ".", "\u00E9\u0301", "\uD83D\uDE00", "\u202Eabc", "%s%n", "{0}", "<b>&amp;</b>", "]]>", "CON", "a\\tb", "a\\nb", "\\u0000", "\\uD800", "\\q",
        "..", "a.b", "name with a rather long text that goes on for a while and then some more", "'", "\\\"", "\u00A0", "\u2028", "\uFEFF", "0", "true", "1979-05-27",
    ];

    private static readonly double[] Factors = [0, -1, 1e-3, 0.01, 0.05, 0.1, 0.2, 0.5, 0.8, 0.9, 0.99, 1.001, 1.01, 1.1, 1.3, 2, 3, 5, 10, 30, 100, 1000];

    public static string Number(Chance chance) => chance.Of(Numbers);

    public static string Unit(Chance chance) => chance.Of(Units);

    public static string Text(Chance chance) => chance.Of(Texts);

    public static string Quantity(Chance chance) => Number(chance) + (chance.OneIn(8) ? "" : " ") + Unit(chance);

    /// <summary>A number near another, or far from it.</summary>
    public static string Near(string number, Chance chance)
    {
        if (chance.OneIn(6) || !double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
        {
            return Number(chance);
        }

        double changed = chance.OneIn(4) ? value + chance.Below(5) - 2 : value * chance.Of(Factors);
        return changed.ToString(chance.OneIn(10) ? "R" : "0.######", CultureInfo.InvariantCulture);
    }
}
