namespace WheelDraft.Engineering;

/// <summary>Worst-case limits of one on-time about its nominal length: bounds over every combination of deviations at once.</summary>
/// <remarks>No deviation within its band gives more; some combination comes within a microsecond of each.</remarks>
/// <param name="LongerS">How much longer than nominal at worst, s, at least 0.</param>
/// <param name="ShorterS">How much shorter than nominal at worst, s, at least 0.</param>
/// <param name="Contributors">What each deviation does alone, in fixed order. They do not add up to the whole: they act together.</param>
public sealed record TimingLimits(double LongerS, double ShorterS, IReadOnlyList<TimingShare> Contributors)
{
    /// <summary>The greater of both, s: what a wanted tolerance is held against.</summary>
    public double WorstS => Math.Max(LongerS, ShorterS);

    /// <summary>What a deviation does alone.</summary>
    public TimingShare Of(DeviationKind kind) => Contributors.First(c => c.Kind == kind);
}

/// <summary>What one deviation alone does to an on-time.</summary>
/// <param name="Kind">Which.</param>
/// <param name="LongerS">How much longer at worst, s, at least 0.</param>
/// <param name="ShorterS">How much shorter at worst, s, at least 0.</param>
public readonly record struct TimingShare(DeviationKind Kind, double LongerS, double ShorterS)
{
    /// <summary>What reports call it.</summary>
    public string Name => Deviation.NameOf(Kind);

    /// <summary>The greater of both, s.</summary>
    public double WorstS => Math.Max(LongerS, ShorterS);
}

/// <summary>How far the two edges of an on-period may be from their nominal programme angles, and when it may start.</summary>
/// <param name="Make">The make over all deviations and, with an adjusting edge, over the whole travel.</param>
/// <param name="Break">The break likewise.</param>
/// <param name="StartMinS">Soonest start after home at mid travel, s: the supply fast; negative when before home.</param>
/// <param name="StartMaxS">Latest start after home at mid travel, s: the supply slow, the wheel lagging by the backlash.</param>
public sealed record PeriodBands(EdgeBand Make, EdgeBand Break, double StartMinS, double StartMaxS);
