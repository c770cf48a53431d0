using System.Globalization;
using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Benchmarks;

/// <summary>Ten outputs with every deviation there is, a million draws each: promised in 0.5 s on two cores, and twenty times as many draws a second as
/// the same model in plain NumPy (monte-carlo.py, which runs this program and compares what comes out).</summary>
internal static class MonteCarloBenchmark
{
    private const int Outputs = 10;
    private const int Draws = 1_000_000;
    private const int Rounds = 7;

    private static readonly string[] Figures = ["on", "start"];
    private static readonly double[] Quantiles = [0.00135, 0.025, 0.5, 0.975, 0.99865];

    /// <summary>Runs it; yields a line a figure.</summary>
    public static IEnumerable<string> Run()
    {
        (TimedPeriod Period, RingPeriod Of)[] periods = Periods();
        double both = Clock.MedianMs(() => All(periods, 16).Length, 2, Rounds);
        double one = Clock.MedianMs(() => All(periods, 1).Length, 0, 3);
        double shares = Clock.MedianMs(() => periods.Sum(p => VarianceShares.Of(new(p.Period, DrawDistribution.Normal), 1)[0].Count), 1, 5);
        double each = (double)Outputs * Draws;
        yield return FormattableString.Invariant($"monte carlo: {Outputs} outputs, a million draws each: {both:0} ms on {Environment.ProcessorCount} cores (promised 500 ms), {both * 1e6 / each:0.0} ns a draw; on one core {one:0} ms, {one * 1e6 / each:0.0} ns a draw");
        yield return FormattableString.Invariant($"monte carlo: shares of the variance of those {Outputs}: {shares:0.0} ms");
    }

    /// <summary>The inputs as JSON, and what comes out, for the comparison.</summary>
    public static void WriteJson(Stream to)
    {
        (TimedPeriod Period, RingPeriod Of)[] periods = Periods();
        const int warmUps = 2;
        TimeSpan before = Environment.CpuUsage.TotalTime;
        double ms = Clock.MedianMs(() => All(periods, 16).Length, warmUps, Rounds);
        double processorS = (Environment.CpuUsage.TotalTime - before).TotalSeconds / (Rounds + warmUps);
        IReadOnlyList<DrawnSummary>[] drawn = All(periods, 16);
        using Utf8JsonWriter json = new(to, new() { Indented = true });
        json.WriteStartObject();
        json.WriteNumber("seconds", ms / 1000);
        json.WriteNumber("processor_seconds", processorS);
        json.WriteNumber("draws", Draws);
        json.WriteStartArray("periods");
        foreach (((TimedPeriod period, _), IReadOnlyList<DrawnSummary> summaries) in periods.Zip(drawn))
        {
            json.WriteStartObject();
            Inputs(json, period);
            foreach ((string name, DrawnSummary s) in Figures.Zip(summaries))
            {
                json.WriteStartObject(name);
                json.WriteNumber("mean", s.Mean);
                json.WriteNumber("deviation", s.Deviation);
                json.WriteStartArray("quantiles");
                foreach (double q in Quantiles)
                {
                    json.WriteNumberValue(s.Tally.Quantile(q, s.Draws));
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Inputs(Utf8JsonWriter json, TimedPeriod period)
    {
        (ContactPatch patch, Deviations d) = (period.MakePatch, period.Deviations);
        json.WriteBoolean("disc", patch.IsDisc);
        json.WriteBoolean("clockwise", period.Motion.Direction == Turning.Clockwise);
        foreach ((string name, double value) in new (string, double)[]
        {
            ("turn_s", period.Motion.TurnTimeS), ("start_rad", period.Wanted.StartRad), ("sweep_rad", period.Wanted.SweepRad), ("radius_mm", period.RadiusMm),
            ("half_length_mm", patch.HalfLengthMm), ("worn_half_length_mm", patch.WornHalfLengthMm), ("half_width_mm", patch.HalfWidthMm), ("angle_rad", patch.AngleRad),
            ("make_normal_rad", period.Make.NormalRad), ("make_offset_mm", period.Make.OffsetMm), ("break_normal_rad", period.Break.NormalRad), ("break_offset_mm", period.Break.OffsetMm),
            ("frequency", d.FrequencyShare), ("cut_mm", d.MakeCutMm), ("centre_mm", d.CentreMm), ("play_mm", d.SidePlayMm), ("placing_mm", d.PlacingMm), ("backlash_rad", d.BacklashRad),
        })
        {
            json.WriteNumber(name, value);
        }
    }

    private static IReadOnlyList<DrawnSummary>[] All((TimedPeriod Period, RingPeriod Of)[] periods, int workers) => [.. periods.Select(p => One(p.Period, p.Of, workers))];

    private static IReadOnlyList<DrawnSummary> One(TimedPeriod period, RingPeriod of, int workers)
    {
        OnTimeModel model = new(period, DrawDistribution.Normal);
        return new DrawRun(model, 1,
        [
            new(model.OnS, model.OnS - of.Limits.ShorterS, model.OnS + of.Limits.LongerS, 0.5),
            new(model.StartS, of.Bands.StartMinS, of.Bands.StartMaxS, null),
        ]).Of(Draws, workers);
    }

    private static (TimedPeriod Period, RingPeriod Of)[] Periods()
    {
        Brief brief = Ten();
        Motion motion = Motion.Of(brief);
        return [.. WheelBenchmark.Set(brief).Rings.Select(r => (TimedPeriod.Of(brief, motion, r, r.Periods[0]), r.Periods[0]))];
    }

    private static string Named(int number) => string.Create(CultureInfo.InvariantCulture, $"out {number}");

    // Straight and turned folds, an adjusting edge in the fifth place.
    private static Brief Ten() => new()
    {
        Title = "Ten outputs",
        Supply = new(230, 50, 0.01, OvervoltageCategory.II),
        Environment = new(3, 100, false),
        Drive = new(180, Turning.Clockwise, Angles.RadFromDeg(0.5), default),
        Spacing = new(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Basic, null, 0.1, GrooveX.Full),
        Housing = new(0, 0.2),
        Wheel = new(WheelConstruction.Windowed, 0.5, "C11000-H02", new(6, null, 0), ShaftKind.Insulating, 1) { RunOutMm = 0.1 },
        Carrier = new(MaterialGroup.I, 3, 0),
        Process = new(null, 0, 0.05, 0.3, 0.3, 0.3, 0.1),
        Feed = new("L", 0, new(0.8, 2, 0.8, 0, null), 0.1),
        Outputs =
        [
            .. Enumerable.Range(0, Outputs).Select(i => new OutputBrief(
                Named(i),
                Named(i),
                new([new OnPeriodBrief(new StartAt(TurnAmount.Seconds(10 + (12 * i))), new LastsFor(TurnAmount.Seconds(5 + (4 * i))))]),
                i % 4 == 3 ? new(0.8, 2, 1.2, 0.5, null) : new(0.4, 2, 0.8, i % 2 == 0 ? 0 : 0.2, null))
            {
                ToleranceS = 40,
                StationRad = i * Angles.TurnRad / Outputs,
                SidePlayMm = 0.1,
                Adjust = i == 4 ? new(AdjustedEdge.Off, 1, 2, LongerWay.In, "M3", 0.5, 1) : null,
            }),
        ],
    };
}
