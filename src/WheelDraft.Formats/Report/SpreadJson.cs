using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>How times and doses are spread, in the report.</summary>
internal static class SpreadJson
{
    private const int ShareDecimals = 6;

    /// <summary>What stands among the figures of an on-period themselves.</summary>
    public static void Summary(JsonSheet json, FigureSpread onTime)
    {
        json.Plain("rss_s", onTime.RootSumSquare.Limit);
        json.Plain("rss_shift_s", onTime.RootSumSquare.Shift);
        json.Plain("mean_s", onTime.Mean);
        json.Plain("sigma_s", onTime.Deviation);
        Within(json, onTime);
    }

    /// <summary>The spreads of one on-period.</summary>
    public static void Write(JsonSheet json, TimingSpreads of, PeriodSpread period) => json.Object("spread", () =>
    {
        json.Whole("draws", of.DrawsMade);
        json.Objects("drawn", period.Drawn, d =>
        {
            json.Text("name", d.Name);
            json.Text("law", Word(d.Law));
        });
        json.Object("on_s", () => Figure(json, period.OnTime));
        json.Object("start_s", () => Figure(json, period.Start));
        if (period.Dose is FigureSpread dose)
        {
            json.Object("dose_ml", () => Figure(json, dose));
        }
    });

    /// <summary>The times at the limits of grids, and on the other mains frequency.</summary>
    public static void Mains(JsonSheet json, Design design, OutputBrief output, RingPeriod period)
    {
        double on = design.Motion.SecondsFromRad(period.Wanted.SweepRad);
        json.Objects("mains", MainsFrequencies.Of(design.Brief.Supply.FrequencyHz), grid =>
        {
            MainsTimes times = MainsFrequencies.Times(design.Brief, output, on, period.Limits, grid);
            json.Text("limits", grid.Name);
            json.RawList("hz", JsonSheet.Figure(grid.LeastHz, 3), JsonSheet.Figure(grid.MostHz, 3));
            json.Plain("worst_min_s", times.LeastS);
            json.Plain("worst_max_s", times.MostS);
            json.Flag("in_tolerance", times.IsWithin);
        });
        if (MainsFrequencies.OtherHz(design.Brief.Supply.FrequencyHz) is double other)
        {
            double scale = design.Brief.Supply.FrequencyHz / other;
            json.Object("other_mains", () =>
            {
                json.Plain("hz", other);
                json.Plain("from_s", design.Motion.SecondsFromRad(period.Wanted.StartRad) * scale);
                json.Plain("for_s", on * scale);
            });
        }
    }

    /// <summary>A law in words.</summary>
    public static string Word(DrawLaw law) => law switch
    {
        DrawLaw.Normal => "normal",
        DrawLaw.Uniform => "uniform",
        _ => "arcsine",
    };

    private static void Figure(JsonSheet json, FigureSpread s)
    {
        json.Plain("nominal", s.Nominal);
        json.RawList("worst", JsonSheet.Figure(s.WorstLeast, ShareDecimals), JsonSheet.Figure(s.WorstMost, ShareDecimals));
        json.Plain("rss_shift", s.RootSumSquare.Shift);
        json.Plain("rss", s.RootSumSquare.Limit);
        json.Plain("mean", s.Mean);
        json.Plain("sigma", s.Deviation);
        json.RawList("drawn", JsonSheet.Figure(s.LeastDrawn, ShareDecimals), JsonSheet.Figure(s.MostDrawn, ShareDecimals));
        json.Array("quantiles", s.Quantiles, q => json.RawValue(JsonSheet.Line([("share", JsonSheet.Figure(q.Share, ShareDecimals)), ("value", JsonSheet.Figure(q.Value, ShareDecimals))])));
        json.RawList("histogram", s.Histogram.Select(c => JsonSheet.Figure(c, 0)));
        Within(json, s);
        json.Array("shares", s.Shares, k => json.RawValue(JsonSheet.Line(
        [
            ("name", JsonSheet.Quoted(k.Name)),
            ("first", JsonSheet.Figure(k.First, 4)),
            ("first_error", JsonSheet.Figure(k.FirstError, 4)),
            ("total", JsonSheet.Figure(k.Total, 4)),
            ("total_error", JsonSheet.Figure(k.TotalError, 4)),
        ])));
    }

    private static void Within(JsonSheet json, FigureSpread s)
    {
        if (s.Within is WithinShare within)
        {
            json.Plain("p_in_tolerance", within.Share);
            json.RawList("p_interval", JsonSheet.Figure(within.Low, ShareDecimals), JsonSheet.Figure(within.High, ShareDecimals));
        }
    }
}
