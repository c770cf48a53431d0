using System.Globalization;
using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Benchmarks;

/// <summary>How work grows with the size of a timer, in processor time: between every two sizes the power of the size that it grows with.</summary>
internal static class SizesBenchmark
{
    private const int Rounds = 3;

    /// <summary>Runs it; each line a figure with what is promised.</summary>
    public static IEnumerable<string> Run()
    {
        yield return Line("on-periods, 40 rings", "2,000 in 1.5 s", [250, 500, 1000, 2000], n => WheelBenchmark.Large(40, n), b => Design.Judged(b));
        yield return Line("on-periods, 4 rings", "2,000 in 1.5 s", [250, 500, 1000, 2000], n => WheelBenchmark.Large(4, n), b => Design.Judged(b));
        yield return Line("strips, a whole design", "at most n²", [10, 20, 40, 100], WithStrips, b => Design.Judged(b));
        yield return Line("strips too near, with what would cure it", "at most n²", [10, 20, 40], WithStrips, b => Design.Of(b));
        yield return Line("wiring diagram, rings", "at most n²", [25, 50, 100, 200], n => new DesignStages(WheelBenchmark.Large(n, n)).ExactCircuit(), c => WiringLayout.Of(c.Request, ColumnMm));
    }

    private const double ColumnMm = 180;

    private static string Line<TGiven, TMade>(string what, string promise, int[] sizes, Func<int, TGiven> given, Func<TGiven, TMade> work)
    {
        List<(int Size, double Ms)> times = [];
        foreach (int size in sizes)
        {
            TGiven of = given(size);
            times.Add((size, Clock.LeastProcessorMs(() => work(of), Rounds)));
        }

        IEnumerable<string> figures = times.Select((t, i) => i == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{t.Size} in {t.Ms:0.0} ms")
            : string.Create(CultureInfo.InvariantCulture, $"{t.Size} in {t.Ms:0.0} ms (n^{Math.Log(t.Ms / times[i - 1].Ms) / Math.Log((double)t.Size / times[i - 1].Size):0.0})"));
        return $"sizes: {what}: {string.Join(", ", figures)} (promised {promise})";
    }

    // So many outputs, each with its ring and its strip, and the feed's strip: strips all round, most of them too near to each other.
    private static Brief WithStrips(int count)
    {
        Brief large = WheelBenchmark.Large(count - 1, count - 1);
        ContactBrief dome = new(0.4, null, 0.8, null, null);
        StripBrief Strip(int i) => StripBenchmarks.Wiper(i) with { Task = i == 0 ? new ServesFeed() : new ServesOutput(large.Outputs[i - 1].Name, IsReturn: false) };
        return large with
        {
            Feed = large.Feed! with { StationRad = Math.PI / count, Contact = dome },
            Outputs = [.. large.Outputs.Select(o => o with { Contact = dome })],
            Surfaces = [new("floor", MaterialGroup.IIIa, -7, null)],
            Strips = [.. Enumerable.Range(0, count).Select(Strip)],
        };
    }
}
