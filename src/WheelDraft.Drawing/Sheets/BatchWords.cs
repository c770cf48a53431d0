using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>Words and figures of a batch.</summary>
internal static class BatchWords
{
    /// <summary>Head of the table.</summary>
    public static readonly string[] Head = ["on-time", "mean s", "spread s", "least s", "most s", "Cp", "95 %", "Cpk", "95 %", "outside control"];

    /// <summary>An on-period's name.</summary>
    public static string NameOf(Design design, BatchFigure figure) => design.Programme.Outputs[figure.Output].Periods.Count > 1
        ? Invariant.Text($"{design.Brief.Outputs[figure.Output].Name} {figure.Period + 1}")
        : design.Brief.Outputs[figure.Output].Name;

    /// <summary>A row of the table.</summary>
    public static string[] Row(Design design, BatchFigure figure) =>
    [
        NameOf(design, figure), Wording.Fixed(figure.MeanS, 3), Wording.Fixed(figure.SpreadS, 3), Wording.Fixed(figure.LeastS, 2), Wording.Fixed(figure.MostS, 2),
        .. figure.SpreadS > 0
            ? [Wording.Fixed(figure.Cp, 2), Band(figure.CpLimits), Wording.Fixed(figure.Cpk, 2), Band(figure.CpkLimits)]
            : (string[])["–", "–", "–", "–"],
        figure.Outside.Count == 0 ? "none" : string.Join(", ", figure.Outside.Select(w => Wording.Number(w + 1, 0))),
    ];

    /// <summary>What explains the spread, and what the figures are worth.</summary>
    public static IReadOnlyList<string> Notes(Design design, BatchStudy batch) =>
    [
        .. batch.Figures.Zip(batch.Shares).Where(f => f.Second.Count > 0).Select(f => $"Spread of '{NameOf(design, f.First)}': {string.Join(", ", f.Second.Select(s => $"{Wording.Number(s.Share * 100, 0)} % {s.Cause}"))}."),
        Invariant.Text($"Capability of {batch.Figures.Select(f => f.Wheels.Count).DefaultIfEmpty().Max()} wheels: Cp by χ², Cpk by Bissell (1990); the bands are of 95 % and suppose a normal spread. Control limits: mean ± 2.66 mean moving ranges."),
    ];

    private static string Band((double Low, double High) band) => $"{Wording.Fixed(band.Low, 2)}–{Wording.Fixed(band.High, 2)}";
}
