using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;

namespace WheelDraft.Formats.Report;

/// <summary>How times and doses are spread, for people.</summary>
internal static class SpreadMarkdown
{
    // Kinds with less of the variance than this are not worth a word.
    private const double LeastTold = 0.005;

    /// <summary>The chapter; none where every output is always on.</summary>
    public static void Write(ProsePage page, Design design)
    {
        if (design.Wheel.Rings.All(r => r.IsWhole))
        {
            return;
        }

        MonteCarloBrief asked = design.Brief.MonteCarlo;
        page.Heading(3, "How times are spread")
            .Paragraph($"{Count(design.Spreads.DrawsMade)} draws of each on-period from seed {Wording.Number(asked.Seed, 0)}, with the edges and patches of the worst case, at mid travel. Drawn: {Laws(asked.Distribution)}. "
                + "RSS is the root of the sum of squares: three standard deviations of independent contributors, each by its own law, about nominal and what wear and backlash shift on average. In tolerance: the share of draws, and what it is at least with 97.5 % confidence (Wilson). Friction of strips comes on top.")
            .Table(["Output", "What", "RSS", "Mean ± 3σ", "95 % of draws", "In tolerance"], Rows(design))
            .Paragraph("What the variance of each on-time comes from (total effects, Jansen 1999; their sum passes 100 % where deviations act on each other):")
            .Table(["Output", "From, s", "Shares of the variance"], design.Wheel.Rings.Zip(design.Spreads.All).SelectMany(r => r.Second.Periods.Select(p => (IReadOnlyList<string>)
            [
                r.First.Name, S(p.Start.Nominal), Shares(p.OnTime),
            ])));
        Mains(page, design);
    }

    /// <summary>A count of draws in words, thousands apart.</summary>
    public static string Count(long draws) => draws.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The laws in words.</summary>
    public static string Laws(DrawDistribution asked) =>
        $"frequency, cut edges, side play, placing, backlash and flow {(asked == DrawDistribution.Normal ? "normal, their limits at three standard deviations and none beyond" : "uniform between their limits")}; "
        + "the centre off by all of half the run-out in a direction drawn uniformly, so arcsine along any one; wear uniform from new to worn";

    /// <summary>The largest shares first.</summary>
    public static string Shares(FigureSpread spread) => spread.Shares.Count == 0 ? "nothing varies"
        : string.Join(", ", spread.Shares.Where(s => s.Total >= LeastTold).OrderByDescending(s => s.Total).Select(s => $"{s.Name} {Wording.Number(s.Total * 100, 0)} %"));

    /// <summary>A share within a tolerance in words.</summary>
    public static string Within(WithinShare within) => $"{Percent(within.Share)} (at least {Percent(within.Low)})";

    // Never rounded up: what is not quite all must not read as all.
    private static string Percent(double share) => Wording.Number(Math.Floor(share * 1e6) / 1e4, 4) + " %";

    private static IEnumerable<IReadOnlyList<string>> Rows(Design design)
    {
        foreach (OutputSpread output in design.Spreads.All)
        {
            foreach (PeriodSpread period in output.Periods)
            {
                yield return Row(output.Output, $"start {S(period.Start.Nominal)} s", period.Start, 3);
                yield return Row(output.Output, $"on {S(period.OnTime.Nominal)} s", period.OnTime, 3);
                if (period.Dose is FigureSpread dose)
                {
                    yield return Row(output.Output, $"dose {Wording.Number(dose.Nominal, 2)} mL", dose, 2);
                }
            }
        }
    }

    private static IReadOnlyList<string> Row(string output, string what, FigureSpread s, int decimals)
    {
        string Figure(double value) => Wording.Number(value, decimals);
        return
        [
            output,
            what,
            $"{Figure(s.Nominal + s.RootSumSquare.Shift)} ± {Figure(s.RootSumSquare.Limit)}",
            $"{Figure(s.Mean)} ± {Figure(3 * s.Deviation)}",
            $"{Figure(s.Quantiles[1].Value)} – {Figure(s.Quantiles[^2].Value)}",
            s.Within is WithinShare within ? $"± {Figure(s.Asked!.Value)}: {Within(within)}" : "",
        ];
    }

    private static string S(double seconds) => Wording.Number(seconds, 3);

    private static void Mains(ProsePage page, Design design)
    {
        double nominal = design.Brief.Supply.FrequencyHz;
        IReadOnlyList<MainsLimits> grids = MainsFrequencies.Of(nominal);
        if (MainsFrequencies.OtherHz(nominal) is not double other)
        {
            return;
        }

        double scale = nominal / other;
        page.Heading(3, "Other mains frequencies")
            .Paragraph($"Every time goes with the frequency: a slow grid lengthens it. On-times at worst with the grid's limits in place of frequency_tolerance, {string.Join(", ", grids.Select(g => $"{g.Name}: {Wording.Number(g.LeastHz, 2)} to {Wording.Number(g.MostHz, 2)} Hz"))}; * is beyond the tolerance asked. "
                + $"On {Wording.Number(other, 0)} Hz the same motor and gear turn the wheel in {S(design.Motion.TurnTimeS * scale)} s, and every time, and with it every dose, is {Wording.Number(scale, 4)} of what it is here; whether the motor may run on it is for its maker to say.")
            .Table(["Output", "From, s", "For, s", .. grids.Select(g => $"{Wording.Number(g.LeastHz, 2)} – {Wording.Number(g.MostHz, 2)} Hz, s"), $"On {Wording.Number(other, 0)} Hz, s"], design.Wheel.Rings.SelectMany((r, i) => r.Periods.Select(p =>
            {
                double on = design.Motion.SecondsFromRad(p.Wanted.SweepRad);
                return (IReadOnlyList<string>)
                [
                    r.Name,
                    S(design.Motion.SecondsFromRad(p.Wanted.StartRad)),
                    S(on),
                    .. grids.Select(g => Cell(MainsFrequencies.Times(design.Brief, design.Brief.Outputs[i], on, p.Limits, g))),
                    S(on * scale),
                ];
            })));
    }

    private static string Cell(MainsTimes times) => $"{S(times.LeastS)} – {S(times.MostS)}{(times.IsWithin ? "" : " *")}";
}
