using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>Words and figures of a comparison, for the sheet and for the terminal.</summary>
internal static class CompareWords
{
    /// <summary>Head of the table.</summary>
    public static readonly string[] Head = ["what", "wanted s", "measured s", "spread s", "n", "uncertainty s", "least s", "most s", "verdict"];

    /// <summary>An on-period's name: the output's, and which, where it has several.</summary>
    public static string NameOf(Design design, ComparedPeriod period) => design.Programme.Outputs[period.Output].Periods.Count > 1
        ? Invariant.Text($"{design.Brief.Outputs[period.Output].Name} {period.Period + 1}")
        : design.Brief.Outputs[period.Output].Name;

    /// <summary>The table's rows.</summary>
    public static IReadOnlyList<string[]> Rows(Design design, BenchComparison comparison) =>
    [
        .. comparison.Periods.SelectMany(p => new[] { Row($"{NameOf(design, p)}, start", p.Start), Row($"{NameOf(design, p)}, on", p.On) }),
        Row("turn time", comparison.TurnTime),
    ];

    /// <summary>The table of the sheet.</summary>
    public static SheetTable Table(Design design, BenchComparison comparison) => new(
        [.. Head.Select((h, i) => new TableColumn(i is 0 or 8 ? h : h.Replace(" s", ", s", StringComparison.Ordinal), i is 0 or 8 ? TextAlong.Start : TextAlong.End))],
        Rows(design, comparison));

    /// <summary>A verdict in a word.</summary>
    public static string Of(BenchVerdict verdict) => verdict switch
    {
        BenchVerdict.Meets => "meets",
        BenchVerdict.Undecided => "undecided",
        _ => "MISSES",
    };

    /// <summary>A departure beside its mark.</summary>
    public static string Departure(BenchFigure figure, bool isBeyond)
    {
        double off = figure.Measured.MeanS - figure.WantedS;
        return Invariant.Text($"{(off >= 0 ? "+" : "−")}{Wording.Fixed(Math.Abs(off), 2)} s{(isBeyond ? ", off the scale" : "")}{(figure.Verdict == BenchVerdict.Meets ? "" : $": {Of(figure.Verdict)}")}");
    }

    /// <summary>What is wrong, what to turn, what was left out.</summary>
    public static IReadOnlyList<string> Notes(Design design, BenchComparison comparison)
    {
        List<string> notes = [.. comparison.Missing, .. comparison.Faults.Select(f => f.Words)];
        if (comparison.Faults.Count == 0 && comparison.Missing.Count == 0)
        {
            notes.Add("Nothing stands out beyond what is ordinary.");
        }

        notes.AddRange(comparison.Screws.Where(s => s.Turns > Math.Max(0.02, 2 * s.UncertaintyTurns)).Select(s => ScrewWords(design, s)));
        if (!comparison.Faults.Any(f => f.Kind == BenchFaultKind.WheelShifted))
        {
            notes.Add("Starts are counted from where most edges fit: whether the whole wheel sits turned on its shaft a log does not show unless it says when the wheel is at home.");
        }

        notes.AddRange(comparison.Left);
        return [.. notes.Select(n => char.ToUpperInvariant(n[0]) + n[1..].TrimEnd('.') + ".")];
    }

    /// <summary>Which way and how far to turn a screw.</summary>
    public static string ScrewWords(Design design, ScrewTurns screw)
    {
        AdjustBrief adjust = design.Brief.Outputs[screw.Output].Adjust!;
        string reach = screw.IsWithin ? "" : "; that is more than is left from the middle of its travel, so the edge itself is off, or the screw was not in the middle";
        return Invariant.Text($"'{design.Brief.Outputs[screw.Output].Name}': turn the {adjust.Screw} screw by {Wording.Fixed(screw.Turns, 2)} turns (uncertainty {Wording.Fixed(screw.UncertaintyTurns, 2)}) so that its wiper moves {(screw.MovesIn ? "in, towards the shaft" : "out, towards the rim")}{reach}");
    }

    /// <summary>The sheet in sentences.</summary>
    public static string Description(Design design, BenchComparison comparison) =>
        $"Measured against wanted: {string.Join("; ", Rows(design, comparison).Select(r => $"{r[0]} {r[2]} s, wanted {r[1]} s, {r[8]}"))}.";

    private static string[] Row(string name, BenchFigure figure) =>
    [
        name, Wording.Fixed(figure.WantedS, 2), Wording.Fixed(figure.Measured.MeanS, 2), Wording.Fixed(figure.Measured.SpreadS, 3), Wording.Number(figure.Measured.Count, 0),
        Wording.Fixed(figure.Measured.UncertaintyS, 3), Wording.Fixed(figure.LeastS, 2), Wording.Fixed(figure.MostS, 2), Of(figure.Verdict),
    ];
}
