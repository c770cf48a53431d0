using System.Diagnostics;
using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Benchmarks;

/// <summary>All pairs of a large timer, over the whole turn and over parts of it.</summary>
/// <remarks>Promised: 200 solids (20,000 pairs) in under 1 s on one core, and at most 2.4 times as long for twice the solids.</remarks>
internal static class SpacingBenchmark
{
    private const int Nets = 20;

    /// <summary>Runs it and returns one line a figure.</summary>
    public static IReadOnlyList<string> Run()
    {
        _ = SecondsFor(50);
        double one = Enumerable.Range(0, 5).Min(_ => SecondsFor(200));
        double two = Enumerable.Range(0, 5).Min(_ => SecondsFor(400));
        double apart = Enumerable.Range(0, 3).Min(_ => SecondsFor(200, nets: 200));
        return
        [
            string.Create(CultureInfo.InvariantCulture, $"spacing, 200 solids on {Nets} nets, whole turn and part turns: {one:0.000} s (promised under 1 s)"),
            string.Create(CultureInfo.InvariantCulture, $"spacing, 400 solids on {Nets} nets: {two:0.000} s, {two / one:0.00} times (promised at most 2.4)"),
            string.Create(CultureInfo.InvariantCulture, $"spacing, 200 solids each on a net of its own, every one of 19,900 pairs reported: {apart:0.000} s"),
        ];
    }

    private static double SecondsFor(int count, int nets = Nets)
    {
        Solid[] solids = [.. Enumerable.Range(0, count).Select(i => Make(i, nets))];
        SolidGroup[] groups = [.. solids.GroupBy(s => s.Net, StringComparer.Ordinal).Select(g => new SolidGroup(g))];
        TurnRange[] open = [new(0.2, 1.1), new(2.0, 3.3), new(4, 4.05)];
        long start = Stopwatch.GetTimestamp();
        for (int i = 0; i < groups.Length; i++)
        {
            for (int j = i + 1; j < groups.Length; j++)
            {
                _ = LeastGaps.Between(groups[i], groups[j], ClearanceRibs.None);
                _ = LeastGaps.Between(groups[i], groups[j], ClearanceRibs.None, open);
            }
        }

        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    /// <summary>Lands of four edges with round corners on rings, and strip legs round the wheel, in turn; no chance in it.</summary>
    private static Solid Make(int i, int nets)
    {
        string net = string.Create(CultureInfo.InvariantCulture, $"net {i % nets}");
        double golden = i * 2.399963229728653;
        if (i % 2 == 0)
        {
            double inner = 8 + (i * 7 % 23), sweep = 0.2 + (i % 5 * 0.1);
            Arc far = new(Point.Origin, inner + 1.5, golden, sweep);
            Arc near = new(Point.Origin, inner, golden + sweep, -sweep);
            Contour contour = new([far, new Segment(far.End, near.Start), near, new Segment(near.End, far.Start)]);
            return new Solid("land", net, SolidKind.Live, true, -0.5, 0, new Outline(contour)) { Tolerance = new(0.05, 0, 0.05, 0.05) };
        }

        Point foot = Point.Polar(12 + (i * 5 % 29), golden);
        Outline leg = Band.Along([foot, foot + Vector.Polar(6 + (i % 7), golden * 3)], 2 + (i % 3));
        return new Solid("strip", net, SolidKind.Live, false, 0.5 + (i % 4), 1 + (i % 4), leg) { Tolerance = new(0, 0.1, 0, 0) };
    }
}
