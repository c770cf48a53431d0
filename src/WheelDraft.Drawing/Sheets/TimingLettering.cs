namespace WheelDraft.Drawing;

/// <summary>How the timing chart writes names and conditions.</summary>
/// <param name="NamesMm">Width of the column of names.</param>
/// <param name="NameStyle">Style of the names: one for all.</param>
/// <param name="Conditions">Conditions that find no room on their bars, by letter.</param>
internal sealed record TimingLettering(double NamesMm, TextStyle NameStyle, IReadOnlyList<(string Letter, string Condition)> Conditions)
{
    // Names on one line of large letters take at most this, mm; longer ones are written small on two lines.
    private const double LargeMm = 34;
    private const double StepMm = 2;

    /// <summary>Chooses the names' column: no word is broken as long as the column stays below a limit.</summary>
    public static TimingLettering Of(IReadOnlyList<string> names, double mostMm)
    {
        double oneLine = names.Max(n => TextFit.WidthMm(n, TextStyle.Label));
        if (oneLine <= LargeMm)
        {
            return new(oneLine + 0.1, TextStyle.Label, []);
        }

        string[] words = [.. names.SelectMany(n => n.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))];
        double width = Math.Min(mostMm, words.Max(w => TextFit.WidthMm(w, TextStyle.Small)) + 0.1);
        while (width < mostMm && names.Any(n => TextFit.Wrap(n, width, TextStyle.Small).Count > 2))
        {
            width = Math.Min(mostMm, width + StepMm);
        }

        return new(width, TextStyle.Small, []);
    }

    /// <summary>Lines that the longest name takes.</summary>
    public int LinesOf(IReadOnlyList<string> names) => names.Max(n => TextFit.Wrap(n, NamesMm, NameStyle).Count);

    /// <summary>The same with letters for conditions.</summary>
    public TimingLettering With(IEnumerable<string> conditions) =>
        this with { Conditions = [.. conditions.Distinct(StringComparer.Ordinal).Select((c, i) => (Letter(i), c))] };

    /// <summary>The letter of a condition, or null.</summary>
    public string? LetterOf(string condition) =>
        Conditions.Where(c => string.Equals(c.Condition, condition, StringComparison.Ordinal)).Select(c => c.Letter).FirstOrDefault();

    private static string Letter(int number)
    {
        string letter = ((char)('a' + (number % 26))).ToString();
        return number < 26 ? letter : letter + DrawingNumbers.Trimmed(number / 26, 0);
    }
}
