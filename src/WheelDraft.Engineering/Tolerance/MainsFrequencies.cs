namespace WheelDraft.Engineering;

/// <summary>Limits within which a grid keeps its frequency.</summary>
/// <param name="Name">What says so, and how much of the time.</param>
/// <param name="LeastHz">Least.</param>
/// <param name="MostHz">Greatest.</param>
public sealed record MainsLimits(string Name, double LeastHz, double MostHz);

/// <summary>An on-time at the limits of a grid: everything else at its worst too.</summary>
/// <param name="LeastS">Least, s.</param>
/// <param name="MostS">Greatest, s.</param>
/// <param name="IsWithin">Whether that is within what is asked.</param>
public readonly record struct MainsTimes(double LeastS, double MostS, bool IsWithin);

/// <summary>What grids do to the times of a wheel: a slow one lengthens them.</summary>
public static class MainsFrequencies
{
    private const double EuropeHz = 50;
    private const double AmericaHz = 60;

    /// <summary>The limits that are known of grids of a nominal frequency; none of other frequencies than 50 and 60 Hz.</summary>
    public static IReadOnlyList<MainsLimits> Of(double nominalHz) => nominalHz switch
    {
        EuropeHz =>
        [
            new("EN 50160, synchronous grid, 99.5 % of a year", 49.5, 50.5),
            new("EN 50160, synchronous grid, at all times", 47, 52),
        ],
        AmericaHz => [new("North America, shift for time correction (practice)", 59.98, 60.02)],
        _ => [],
    };

    /// <summary>The other usual frequency: 60 Hz for 50 Hz and the other way round; null for any other.</summary>
    public static double? OtherHz(double nominalHz) => nominalHz is EuropeHz ? AmericaHz : nominalHz is AmericaHz ? EuropeHz : null;

    /// <summary>An on-time at the limits of a grid in place of the file's own frequency tolerance: exact, because frequency scales every time.</summary>
    public static MainsTimes Times(Brief brief, OutputBrief output, double onS, TimingLimits limits, MainsLimits grid)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(grid);
        (double nominal, double own) = (brief.Supply.FrequencyHz, brief.Supply.FrequencyToleranceShare);
        double least = (onS - limits.ShorterS) * (1 + own) * nominal / grid.MostHz;
        double most = (onS + limits.LongerS) * (1 - own) * nominal / grid.LeastHz;
        return new(least, most, !(Math.Max(onS - least, most - onS) > output.ToleranceS));
    }
}
