using System.Diagnostics;
using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Benchmarks;

/// <summary>Creepage between all pairs of a board with ribs, grooves and slots: the table and the report's rows of every pair of items.</summary>
/// <remarks>Promised: 32 live parts among 12 walls in under 1 s of processor time, and at most the square of conductors and walls together.</remarks>
internal static class WallsBenchmark
{
    private const double WidthMm = 120;

    private const double HeightMm = 90;

    /// <summary>A scene that takes longer than this, s, ends its row: what is larger takes longer still.</summary>
    private const double MostSeconds = 60;

    /// <summary>Runs it and returns one line a figure.</summary>
    public static IEnumerable<string> Run()
    {
        // Least of several runs: compiling while it runs, which the published program does not, is over by then.
        double seconds = Enumerable.Range(0, 8).Min(_ => Seconds(32, 12, floating: false));
        yield return string.Create(CultureInfo.InvariantCulture, $"creepage, 32 live parts among 12 walls, every pair reported: {seconds:0.000} s of processor time (promised under 1 s)");
        foreach (int walls in (int[])[5, 20, 80])
        {
            foreach (string line in Row(walls))
            {
                yield return line;
            }
        }
    }

    private static IEnumerable<string> Row(int walls)
    {
        (int Count, double S)? before = null;
        foreach (int count in (int[])[10, 30, 100])
        {
            double seconds = Seconds(count, walls);
            string growth = before is not var (fewer, s) ? ""
                : string.Create(CultureInfo.InvariantCulture, $", grows with conductors to the power {Math.Log(seconds / s) / Math.Log((double)count / fewer):0.00} (promised at most 2)");
            yield return string.Create(CultureInfo.InvariantCulture, $"creepage, {count} conductors among {walls} walls: {seconds:0.000} s of processor time{growth}");
            if (seconds > MostSeconds)
            {
                yield break;
            }

            before = (count, seconds);
        }
    }

    private static double Seconds(int conductors, int walls, bool floating = true)
    {
        SpacingTask task = Board(conductors, walls, floating);
        using Process process = Process.GetCurrentProcess();
        TimeSpan start = process.TotalProcessorTime;
        _ = SpacingTable.Of(task).AllPairs.Count;
        process.Refresh();
        return (process.TotalProcessorTime - start).TotalSeconds;
    }

    /// <summary>A board with parts and walls strewn evenly, no chance in it: straight and bent ones, the more the shorter, many of them across others; every eighth part floats where any do.</summary>
    private static SpacingTask Board(int conductors, int walls, bool floating)
    {
        Outline edge = new(Contour.Polygon(new(0, 0), new(WidthMm, 0), new(WidthMm, HeightMm), new(0, HeightMm)));
        List<RibBrief> ribs = [];
        List<SlotBrief> slots = [];
        for (int i = 0; i < walls; i++)
        {
            Point middle = Strewn(i, 0.25, 7);
            Vector half = Vector.Polar(Math.Min(20, 80 / Math.Sqrt(walls)) * (0.8 + (i % 4 * 0.15)), i * 0.7);
            Point[] path = i % 2 == 0 ? [middle - half, middle, middle + half.Turned(0.8)] : [middle - half, middle + half];
            if (i % 3 == 0)
            {
                ribs.Add(new("board", path, 6 + (i % 5 * 0.5), 1.2, RibJoint.Moulded));
            }
            else
            {
                slots.Add(new("board", path, 2, i % 3 == 1 ? null : 1.5, SlotProfile.Parallel));
            }
        }

        Solid[] solids = [.. Enumerable.Range(0, conductors).Select(i => Part(i, floating && i % 8 == 7))];
        InsulatingSurface board = new("board", MaterialGroup.IIIa, 0, edge, false) { BodyMm = 3, FaceMm = 0.05, Ribs = ribs, Slots = slots };
        return new SpacingTask(solids, [board], SpacingBenchmark.Demands(), Turning.Clockwise);
    }

    private static Solid Part(int i, bool floats)
    {
        Point at = Strewn(i, 0.75, 4);
        Contour contour = i % 2 == 0 ? Contour.Circle(at, 1 + (i % 3 * 0.2)) : Contour.Polygon(at + new Vector(-1, -0.8), at + new Vector(1, -0.8), at + new Vector(1, 0.8), at + new Vector(-1, 0.8));
        return new Solid(
            string.Create(CultureInfo.InvariantCulture, $"part {i}"),
            string.Create(CultureInfo.InvariantCulture, $"net {i}"),
            floats ? SolidKind.Floating : SolidKind.Live,
            false,
            0,
            1,
            new Outline(contour))
        { OnSurface = "board", Tolerance = new(0, 0.1, 0, 0) };
    }

    /// <summary>The i-th place of a sequence that fills the board evenly (M. Roberts, The unreasonable effectiveness of quasirandom sequences, 2018).</summary>
    private static Point Strewn(int i, double from, double marginMm)
    {
        double x = (from + ((i + 1) * 0.7548776662466927)) % 1, y = (from + ((i + 1) * 0.5698402909980532)) % 1;
        return new(marginMm + (x * (WidthMm - (2 * marginMm))), marginMm + (y * (HeightMm - (2 * marginMm))));
    }
}
