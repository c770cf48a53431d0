using System.Diagnostics;
using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Benchmarks;

/// <summary>Designs a second, as <c>vary</c> and searches work them out, on one core and on all; and a whole timer set out.</summary>
public static class SettingOutBenchmark
{
    private const int Designs = 200;

    /// <summary>Runs it; each line a figure with what is promised.</summary>
    public static IEnumerable<string> Run()
    {
        string file = Path.Combine(AppContext.BaseDirectory, "parameters", "propagation-bench.toml");
        byte[] bytes = File.ReadAllBytes(file);
        Timed(bytes, Environment.ProcessorCount);
        (double oneS, double oneCpuS) = Timed(bytes, 1);
        (double allS, _) = Timed(bytes, Environment.ProcessorCount);
        yield return string.Create(CultureInfo.InvariantCulture, $"vary: bench demo, {Designs / oneCpuS:0} designs a second a core (promised 100); {Environment.ProcessorCount} cores work out {oneS / allS:0.00} times as many (promised 1.7 for two)");

        Brief five = FiveOutputs(bytes);
        long begin = Stopwatch.GetTimestamp();
        SettledBrief settled = SettingOut.Of(five);
        yield return string.Create(CultureInfo.InvariantCulture, $"settle: {five.Outputs.Count} outputs and all their strips, usual effort, {Stopwatch.GetElapsedTime(begin).TotalSeconds:0.0} s on {Environment.ProcessorCount} cores (promised 3); {(Design.Judged(settled.Brief).Meets ? "meets" : "misses")}");
    }

    // As "vary" does it: each point read and worked out, bands of strips shared.
    private static (double WallS, double ProcessorS) Timed(byte[] bytes, int cores)
    {
        BandMemory bands = new();
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        long begin = Stopwatch.GetTimestamp();
        Parallel.For(0, Designs, new ParallelOptions { MaxDegreeOfParallelism = cores }, i =>
        {
            string value = FormattableString.Invariant($"{0.5 + (0.005 * i)} s");
            VariedPoint.Of([value], ParameterReader.Read(bytes, null, [new ValueChange("output.mist.tolerance", value)]).Brief, null, bands);
        });
        return (Stopwatch.GetElapsedTime(begin).TotalSeconds, (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds);
    }

    // The bench demo with two more outputs, everything left to the program.
    private static Brief FiveOutputs(byte[] bytes)
    {
        Brief brief = ParameterReader.Read(bytes).Brief!;
        StripChoices all = new(Shape: true, Approach: true, Deflection: true);
        OutputBrief[] outputs = [.. brief.Outputs.Select(o => o with { StationRad = null, Adjust = null }), More(brief, "fog", 20), More(brief, "lamp", 60)];
        return brief with
        {
            Wheel = brief.Wheel with { SearchesRingOrder = true },
            Feed = brief.Feed! with { StationRad = null },
            Outputs = outputs,
            StripRecipe = new([new("C51000-H04", [0.4, 0.5])], new RivetContact(new(2.2, 1.5, 2.5)), new(14, 8), new(1, 1.6), "floor") { Tab = "4.8x0.5", YieldFactor = 1.2 },
            Strips = [new("feed strip", new ServesFeed(), "", 0, []) { Left = all }, .. outputs.Select(o => new StripBrief(o.Name + " strip", new ServesOutput(o.Name, IsReturn: false), "", 0, []) { Left = all })],
        };
    }

    private static OutputBrief More(Brief brief, string name, double fromS) => brief.Outputs[1] with
    {
        Name = name,
        Net = name,
        On = new([new(new StartAt(TurnAmount.Seconds(fromS)), new LastsFor(TurnAmount.Seconds(30)))]),
        ToleranceS = 3,
        StationRad = null,
        Adjust = null,
    };
}
