namespace WheelDraft.Engineering;

/// <summary>A time that was measured several times.</summary>
/// <param name="MeanS">Mean, s.</param>
/// <param name="SpreadS">Standard deviation of one reading, s; 0 for a single one.</param>
/// <param name="Count">How many readings, at least 1.</param>
/// <param name="UncertaintyS">Standard uncertainty of the mean, s: the spread, or what the rows of the log leave open if that is more, over √n
/// (JCGM 100:2008, 4.2.3 and 4.3.7).</param>
internal readonly record struct MeanReading(double MeanS, double SpreadS, int Count, double UncertaintyS)
{
    /// <summary>Of readings.</summary>
    /// <param name="values">At least one, s.</param>
    /// <param name="stepS">Time between rows, s: two edges, each anywhere within a step, leave a triangle of standard deviation step/√6.</param>
    public static MeanReading Of(IReadOnlyCollection<double> values, double stepS)
    {
        double mean = values.Average();
        double spread = values.Count < 2 ? 0 : Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Count - 1));
        return new(mean, spread, values.Count, Math.Max(spread, stepS / Math.Sqrt(6)) / Math.Sqrt(values.Count));
    }
}
