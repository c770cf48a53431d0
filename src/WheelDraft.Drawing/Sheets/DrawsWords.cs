using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The draws of on-times in figures and words.</summary>
internal static class DrawsWords
{
    /// <summary>On-periods with their draws, in the order of the file.</summary>
    public static IReadOnlyList<(string Name, FigureSpread OnTime)> All(Design design) =>
    [
        .. from output in design.Spreads.All
           from period in output.Periods
           select (output.Periods.Count > 1 ? Invariant.Text($"{output.Output} {period.Index + 1}") : output.Output, period.OnTime),
    ];

    /// <summary>Every on-period: worst case, root of the sum of squares, quantiles, share within what is asked.</summary>
    public static SheetTable Table(Design design) => new(
        [
            new("Output"),
            new("On s", TextAlong.End),
            new("Worst case s", TextAlong.End),
            new("RSS s", TextAlong.End),
            new("0.135 to 99.865 % s", TextAlong.End),
            new("Asked ± s", TextAlong.End),
            new("Within, of 95 % confidence", TextAlong.End),
        ],
        [.. All(design).Select(a => Row(a.Name, a.OnTime))]);

    private static IReadOnlyList<string> Row(string name, FigureSpread s) =>
    [
        name,
        Wording.Number(s.Nominal, 3),
        $"{Wording.Number(s.WorstLeast, 3)} to {Wording.Number(s.WorstMost, 3)}",
        $"{Wording.Number(s.Nominal + s.RootSumSquare.Shift - s.RootSumSquare.Limit, 3)} to {Wording.Number(s.Nominal + s.RootSumSquare.Shift + s.RootSumSquare.Limit, 3)}",
        $"{Wording.Number(s.Quantiles[0].Value, 3)} to {Wording.Number(s.Quantiles[^1].Value, 3)}",
        s.Asked is double asked ? Wording.Number(asked, 3) : "–",
        s.Within is WithinShare within ? $"{Share(within.Low)} to {Share(within.High)}" : "–",
    ];

    // Never rounded up: what is not quite all must not read as all.
    private static string Share(double share) => $"{Wording.Number(Math.Floor(share * 1e6) / 1e4, 4)} %";

    /// <summary>How the pictures are read, and what is not in them.</summary>
    public static IReadOnlyList<string> Notes(Design design)
    {
        MonteCarloBrief asked = design.Brief.MonteCarlo;
        return
        [
            $"{Wording.Number(design.Spreads.DrawsMade, 0)} draws of each on-time from seed {Wording.Number(asked.Seed, 0)}, at mid travel, with the edges and patches of the worst case. A picture is as wide as the worst case, or as what is asked where that is more; its height is that of its own fullest bin.",
            "Whiskers, from above: root of the sum of squares (3σ); what 99.73 % of the draws keep to. The long stroke is the nominal on-time, the short one the median.",
            "Draws tell what is likely if every part keeps to its law; limits are judged by the worst case.",
            .. Friction(design),
        ];
    }

    /// <summary>What friction adds to all limits and draws; none where no arm is wound up.</summary>
    public static IReadOnlyList<string> Friction(Design design) => design.FrictionShifts.Count == 0 ? [] :
    [
        "Friction winds the strips up and is in none of these figures, it comes on top: "
            + string.Join("; ", design.FrictionShifts.Select(s => $"'{design.Brief.Outputs[s.Output].Name}' makes and breaks {Wording.Number(s.LaterMinS, 3)} to {Wording.Number(s.LaterMaxS, 3)} s later, its on-time is up to {Wording.Number(s.OnTimeS, 3)} s longer or shorter"))
            + ".",
    ];

    /// <summary>The sheet in sentences.</summary>
    public static string Description(Design design) =>
        "Histograms of on-times drawn at random, each over its worst case. "
        + string.Join(" ", All(design).Select(a => $"{a.Name}: nominal {Wording.Seconds(a.OnTime.Nominal)}, worst case {Wording.Number(a.OnTime.WorstLeast, 3)} to {Wording.Number(a.OnTime.WorstMost, 3)} s, 99.73 % of the draws {Wording.Number(a.OnTime.Quantiles[0].Value, 3)} to {Wording.Number(a.OnTime.Quantiles[^1].Value, 3)} s."));
}
