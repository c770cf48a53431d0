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
        (double table, double all, int rows) = AllPairsSeconds();
        return
        [
            string.Create(CultureInfo.InvariantCulture, $"spacing, 200 solids on {Nets} nets, whole turn and part turns: {one:0.000} s (promised under 1 s)"),
            string.Create(CultureInfo.InvariantCulture, $"spacing, 400 solids on {Nets} nets: {two:0.000} s, {two / one:0.00} times (promised at most 2.4)"),
            string.Create(CultureInfo.InvariantCulture, $"spacing, 200 solids each on a net of its own, every one of 19,900 pairs reported: {apart:0.000} s"),
            string.Create(CultureInfo.InvariantCulture, $"spacing table and remedies of a board with 8 strips of 60 prisms, wheel, 3 ribs and 2 slots: {BoardSeconds():0.000} s"),
            string.Create(CultureInfo.InvariantCulture, $"spacing table of 200 items on {Nets} nets: {table:0.000} s; every pair of items for the report ({rows} rows): {all:0.000} s more"),
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

    /// <summary>The table alone, as a check asks for it, and what every pair of items costs a report besides.</summary>
    private static (double TableS, double AllS, int Rows) AllPairsSeconds()
    {
        Solid[] solids = [.. Enumerable.Range(0, 200).Select(i => Make(i, Nets) with { Name = string.Create(CultureInfo.InvariantCulture, $"item {i}") })];
        SpacingTask task = new(solids, [], Demands(), Turning.Clockwise);
        long start = Stopwatch.GetTimestamp();
        SpacingTable table = SpacingTable.Of(task);
        double alone = Stopwatch.GetElapsedTime(start).TotalSeconds;
        start = Stopwatch.GetTimestamp();
        int rows = table.AllPairs.Count;
        return (alone, Stopwatch.GetElapsedTime(start).TotalSeconds, rows);
    }

    internal static SpacingDemands Demands() => new(
        new SupplyBrief(230, 50, 0.01, OvervoltageCategory.II),
        new EnvironmentBrief(3, 300, false),
        new SpacingBrief(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Reinforced, null, 0, GrooveX.Full),
        (_, _) => 230);

    /// <summary>A whole table with creepage among ribs and slots, strings over ribs, and remedies.</summary>
    private static double BoardSeconds()
    {
        List<Solid> solids = [];
        Contour[] windows = [.. Enumerable.Range(0, 12).Select(i => Contour.Circle(Point.Polar(8 + i, i), 0.4))];
        solids.Add(new Solid("wheel", "L", SolidKind.Live, true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, 22), windows)) { IsWheelCopper = true, Tolerance = new(0.05, 0, 0.05, 0.05) });
        for (int i = 0; i < 8; i++)
        {
            string net = string.Create(CultureInfo.InvariantCulture, $"out {i}");
            Placement turn = Placement.Turn(i * Angles.TurnRad / 8);
            for (int k = 0; k < 60; k++)
            {
                Outline part = Band.Along([new(18 + (k * 0.2), 0), new(18.2 + (k * 0.2), 0)], 5).Placed(turn);
                double z = Math.Max(-7, 1.2 - (k * 0.2));
                solids.Add(new Solid(net + " strip", net, SolidKind.Live, false, z, z + 0.5, part) { Tolerance = new(0, 0.1, 0, 0), OnSurface = k > 42 ? "floor" : null });
            }
        }

        Point[] Spoke(double turns) => [Point.Polar(24, turns * Angles.TurnRad), Point.Polar(34, turns * Angles.TurnRad)];
        InsulatingSurface floor = new("floor", MaterialGroup.IIIa, -7, null, false)
        {
            Ribs = [.. Enumerable.Range(0, 3).Select(i => new RibBrief("floor", Spoke((i + 0.5) / 8), 4, 1.2, RibJoint.Moulded))],
            Slots = [.. Enumerable.Range(3, 2).Select(i => new SlotBrief("floor", Spoke((i + 0.5) / 8), 2, null, SlotProfile.Parallel))],
        };
        SpacingTask task = new(solids, [floor], Demands(), Turning.Clockwise);
        long start = Stopwatch.GetTimestamp();
        _ = Remedies.For(task, SpacingTable.Of(task), out _);
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
