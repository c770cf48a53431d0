using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>How the spread of an output's times came about, step by step.</summary>
internal static class SpreadReasons
{
    /// <summary>The steps.</summary>
    public static IEnumerable<string> Of(Design design, RingLayout ring)
    {
        MonteCarloBrief asked = design.Brief.MonteCarlo;
        OutputBrief output = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
        yield return $"{SpreadMarkdown.Count(design.Spreads.DrawsMade)} draws of each on-period from seed {Wording.Number(asked.Seed, 0)}, in blocks with a stream of numbers each, so that the same seed gives the same figures on any number of processors; the wiper at mid travel.";
        yield return $"Drawn by these laws: {SpreadMarkdown.Laws(asked.Distribution)}.";
        yield return $"Their bands: frequency ±{Wording.Percent(design.Brief.Supply.FrequencyToleranceShare)}, a cut edge ±{Wording.Mm(design.Brief.Process.ToleranceMm)}, the centre {Wording.Mm(design.Brief.Wheel.RunOutMm / 2)} off, side play ±{Wording.Mm(ring.SidePlayMm)}, "
            + $"patch {Wording.Mm(2 * ring.Patch.HalfLengthMm)} to {Wording.Mm(2 * ring.Patch.WornHalfLengthMm)} long, placing ±{Wording.Mm(design.Brief.Housing.PlacingMm)}, backlash {Wording.Degrees(design.Brief.Drive.BacklashRad)}{(output.FlowLPerS is null ? "" : $", flow ±{Wording.Percent(output.FlowToleranceShare)}")}.";
        yield return "Each draw sets edges, patch and wiper where they were drawn, and finds the first and last touch exactly as the worst case does: no sum of first-order terms, so no draw leaves the worst case. Friction of strips is in neither and comes on top.";
        foreach (PeriodSpread period in design.Spreads.Of(ring.Name).Periods)
        {
            string where = ring.Periods.Count == 1 ? "" : $"On-period {Wording.Number(ring.Periods[period.Index].Wanted.Index + 1, 0)}: ";
            foreach ((string what, FigureSpread? spread, string unit) in new[] { ("on-time", period.OnTime, "s"), ("start", period.Start, "s"), ("dose", period.Dose, "mL") })
            {
                if (spread is not null)
                {
                    yield return where + Figures(what, spread, unit);
                    yield return $"{where}of the variance of the {what}, alone and with all its effects: {Shares(spread)}.";
                }
            }
        }
    }

    private static string Figures(string what, FigureSpread s, string unit)
    {
        string Figure(double value) => $"{Wording.Number(value, 4)} {unit}";
        string within = s.Within is WithinShare share ? $"; {SpreadMarkdown.Within(share)} within ±{Figure(s.Asked!.Value)}" : "";
        return $"{what} {Figure(s.Nominal)}: at worst {Figure(s.WorstLeast)} to {Figure(s.WorstMost)}; root of the sum of squares {Figure(s.Nominal + s.RootSumSquare.Shift)} ± {Figure(s.RootSumSquare.Limit)}; "
            + $"drawn with mean {Figure(s.Mean)} and standard deviation {Figure(s.Deviation)}, from {Figure(s.LeastDrawn)} to {Figure(s.MostDrawn)}, "
            + $"{string.Join(", ", s.Quantiles.Select(q => $"{Wording.Number(q.Share * 100, 3)} % below {Figure(q.Value)}"))}{within}.";
    }

    private static string Shares(FigureSpread spread) => spread.Shares.Count == 0 ? "nothing varies" : string.Join(", ", spread.Shares.Select(s =>
        $"{s.Name} {Wording.Number(s.First * 100, 1)} % and {Wording.Number(s.Total * 100, 1)} % (±{Wording.Number(Math.Max(s.FirstError, s.TotalError) * 100, 1)} %)"));
}
