using System.Globalization;

namespace WheelDraft.Formats.Parameters;

/// <summary>Metric screws and their coarse pitch by ISO 261.</summary>
internal static class Screws
{
    // ISO 261, coarse series, as reproduced in thread tables of the trade.
    private static (string Name, double PitchMm)[] All =>
        [("M2", 0.4), ("M2.5", 0.45), ("M3", 0.5), ("M3.5", 0.6), ("M4", 0.7), ("M5", 0.8), ("M6", 1.0)];

    /// <summary>The names.</summary>
    public static IEnumerable<string> Names => All.Select(s => s.Name);

    /// <summary>The pitch of a screw of the list.</summary>
    public static double PitchMm(string name) => All.First(s => string.Equals(s.Name, name, StringComparison.Ordinal)).PitchMm;

    /// <summary>The thread's diameter of a screw of the list, mm.</summary>
    public static double DiameterMm(string name) => double.Parse(name.AsSpan(1), CultureInfo.InvariantCulture);
}
