using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

public sealed class TautStringTests
{
    private const string SlowScenes = "WHEELDRAFT_STRING_SCENES";

    [Fact]
    public void Pull_NothingInTheWay_IsStraight()
    {
        PulledString s = Pull(new(-5, 0, 0), new(5, 0, 3), [Rib(new(0, 4), new(0, 9), 1, 4)]);
        Assert.Equal(Math.Sqrt(100 + 9), s.LengthMm, 1e-8);
        Assert.Equal(2, s.Bends.Count);
    }

    [Fact]
    public void Pull_LongLowWall_GoesOverItsTop()
    {
        PulledString s = Pull(new(-5, 0, 0), new(5, 0, 0), [Rib(new(0, -50), new(0, 50), 1.2, 4)]);
        Assert.Equal((2 * Math.Sqrt((4.4 * 4.4) + 16)) + 1.2, s.LengthMm, 1e-6);
    }

    [Fact]
    public void Pull_HighShortWall_GoesRoundItsEnd()
    {
        PulledString s = Pull(new(-5, 0, 0), new(5, 0, 2), [Rib(new(0, -8), new(0, 3), 1.2, 40)]);
        double plan = (2 * Math.Sqrt((4.4 * 4.4) + 9)) + 1.2;
        Assert.Equal(Math.Sqrt((plan * plan) + 4), s.LengthMm, 1e-6);
    }

    [Fact]
    public void Pull_EndsFarApartAlongALongWall_UnfoldsOverIt()
    {
        // Turned into one plane about both upper edges the way is straight: √((4.4² + 4²)·2 … + 1.2)² + 12²).
        PulledString s = Pull(new(-5, -6, 0), new(5, 6, 0), [Rib(new(0, -50), new(0, 50), 1.2, 4)]);
        double across = (2 * Math.Sqrt((4.4 * 4.4) + 16)) + 1.2;
        Assert.Equal(Math.Sqrt((across * across) + 144), s.LengthMm, 1e-6);
    }

    [Fact]
    public void Pull_OneConductorAboveTheTop_BendsOverOneEdgeOnly()
    {
        PulledString s = Pull(new(-5, 0, 0), new(0.6, 0, 4.5), [Rib(new(0, -50), new(0, 50), 1.2, 4)]);
        Assert.Equal(Math.Sqrt((4.4 * 4.4) + 16) + Math.Sqrt((1.2 * 1.2) + 0.25), s.LengthMm, 1e-6);
    }

    [Fact]
    public void Pull_TwoWalls_GoesOverBoth()
    {
        PulledString s = Pull(new(-5, 0, 0), new(5, 0, 0), [Rib(new(-2, -50), new(-2, 50), 1, 4), Rib(new(2, -50), new(2, 50), 1, 2)]);

        // Over the first (higher) wall, straight down past the second's upper edge at x = 2.5: the line from (−1.5, 4) to (5, 0) is at 2.154 at x = 1.5, 1.538 at 2.5.
        double expected = Math.Sqrt((2.5 * 2.5) + 16) + 1 + Math.Sqrt((4 * 4) + 4) + Math.Sqrt((2.5 * 2.5) + 4);
        Assert.Equal(expected, s.LengthMm, 1e-6);
    }

    [Fact]
    public void Pull_RandomWalls_AgreesWithSubdividedEdges()
    {
        // Oracle: shortest way over a graph of points along all edges (C. H. Papadimitriou, Information Processing Letters 20, 1985):
        // never shorter than the true one, and too long by at most the spacing of the points at each of at most four bends.
        RandomShapes random = new(31);
        for (int i = 0; i < 12; i++)
        {
            RibBox rib = Rib(random.At(0, 4), random.At(4, 7), random.Between(0.5, 1.5), random.Between(1, 6));
            SpacePoint a = new(-9, random.Between(-3, 3), random.Between(0, 3)), b = new(9, random.Between(-3, 3), random.Between(0, 3));
            double exact = Pull(a, b, [rib]).LengthMm;
            (double graph, double spacing) = EdgeGraph.Shortest(a, b, rib);
            Assert.InRange(exact, graph - (4 * spacing), graph + 1e-9);
        }
    }

    [Fact]
    public void Pull_OrdersThatWaitAndLooksAhead_GivesWhatPlainTighteningOfAllOfThemGives()
    {
        // Oracle: the same search with every order tightened at once, a round at a time. Every third scene on whole millimetres, where ways are equally long.
        RandomShapes random = new(37);
        int bent = 0, whole = 0;
        int scenes = int.TryParse(Environment.GetEnvironmentVariable(SlowScenes), CultureInfo.InvariantCulture, out int asked) ? asked : 40;
        for (int i = 0; i < scenes; i++)
        {
            double Place(double mm) => i % 3 == 0 ? Math.Round(mm) : mm;
            Point At(double least, double most) => new(Place(random.Between(-5, 5)), Place(random.Between(least, most)));
            RibBox[] ribs = [.. Enumerable.Range(0, 1 + random.Below(2)).Select(_ => Rib(At(-6, -1), At(1, 6), Place(random.Between(0.6, 1.5)), Place(random.Between(1, 6))))];
            StringEnd a = new(SurfacePathsTests.Box(-10, Place(random.Between(-4, 0)), -8, 2), 0, Place(random.Between(0, 3)));
            StringEnd b = new(new Outline(Contour.Circle(new(9, Place(random.Between(-3, 3))), 1)), random.Below(2), 2);
            double reach = random.Below(3) == 0 ? random.Between(16, 22) : double.PositiveInfinity;
            PulledString waits = new TautString(a, b, ribs).Pull(reach), eager = new EagerString(a, b, ribs).Pull(reach);
            Assert.Equal(waits.LengthMm, LengthOf(waits.Bends), 1e-9);
            bent += waits.Bends.Count > 2 ? 1 : 0;

            // One that was cut short is a lower bound only, and which one depends on how many orders were tried.
            if (!IsBlocked(eager.Bends, ribs) && !IsBlocked(waits.Bends, ribs))
            {
                Assert.Equal(eager.LengthMm, waits.LengthMm, 1e-8);
                whole++;
            }
        }

        Assert.True(bent > 0.4 * scenes);
        Assert.True(whole > 0.7 * scenes);
    }

    [Fact]
    public void Pull_ConductorAgainstARib_IsNotHeldWhereItTouches()
    {
        // The conductor stands against the first rib, lower than it, level with it or higher: where the string begins and its first bend can then be one place.
        RandomShapes random = new(59);
        int whole = 0;
        for (int i = 0; i < 12; i++)
        {
            RibBox[] ribs = [Rib(new(2, -4), new(2, random.Between(1, 4)), 1, 3), Rib(new(random.Between(3, 5), -5), new(random.Between(4, 6), random.Between(2, 6)), 0.8, random.Between(1, 5))];
            StringEnd a = new(SurfacePathsTests.Box(0.5, random.Between(-4, 0), 1.5, random.Between(0.5, 3)), 0, 2 + (i % 3)), b = new(new Outline(Contour.Circle(new(9, random.Between(-3, 3)), 1)), 0, 1);
            PulledString waits = new TautString(a, b, ribs).Pull(), eager = new EagerString(a, b, ribs).Pull();
            if (!IsBlocked(eager.Bends, ribs) && !IsBlocked(waits.Bends, ribs))
            {
                Assert.Equal(eager.LengthMm, waits.LengthMm, 1e-8);
                whole++;
            }
        }

        Assert.True(whole > 6, FormattableString.Invariant($"{whole} of 12 were not cut short"));
    }

    /// <summary>Two bends in the corner that their edges share once held each other there, and strings came out up to 0.07 mm too long, this one by 0.006 mm.</summary>
    [Fact]
    public void Pull_BendsThatMeetInACorner_AreNotHeldThere()
    {
        RibBox[] ribs =
        [
            new("low", new(2.7295, -4.4957), new(3.3821, 1.8408), 1.1348, 0, 3.4366),
            new("high", new(1.6087, -4.3862), new(3.8113, 5.0977), 1.3913, 0, 5.1342),
        ];
        StringEnd a = new(SurfacePathsTests.Box(-10, -3.0642, -8, 2), 0, 0.8653), b = new(new Outline(Contour.Circle(new(9, -1.6759), 1)), 1, 2);

        // Another string, to four digits: it leaves the low rib's upper face over its far edge. Whatever is free is no shorter than the shortest.
        SpacePoint[] free =
        [
            new(-8, -3.0642, 0.8653), new(2.2863, -4.5436, 3.3830), new(2.4957, -4.4716, 3.4366), new(3.3378, -4.1272, 3.4366), new(8.0823, -2.0731, 2),
        ];
        Assert.False(IsBlocked(free, [.. ribs.Select(r => r with { ThicknessMm = r.ThicknessMm - 1e-3, TopMm = r.TopMm - 1e-3 })]));
        Assert.InRange(new TautString(a, b, ribs).Pull().LengthMm, 17.1, LengthOf(free) + 1e-3);
    }

    [Fact]
    public void IsTight_TwoBendsInACorner_IsWhatTryingSmallStepsSays()
    {
        // Oracle: steps of a tenth of a micrometre in 400 directions; what gains next to nothing is left out.
        RandomShapes random = new(53);
        (int tight, int held) = (0, 0);
        for (int i = 0; i < 2000; i++)
        {
            SpacePoint corner = Any(), before = Any(), behind = Any(), firstEnd = Any(), secondEnd = Any();
            StringEdge first = new(corner, firstEnd), second = random.Below(2) == 0 ? new(corner, secondEnd) : new(secondEnd, corner);
            double step = 1e-4, length = before.DistanceTo(corner) + corner.DistanceTo(behind), least = double.PositiveInfinity;
            for (int k = 0; k <= 400; k++)
            {
                double x = Math.Cos(k / 400.0 * Math.PI / 2) * step, y = Math.Sin(k / 400.0 * Math.PI / 2) * step;
                SpacePoint p = corner.Towards(firstEnd, x / corner.DistanceTo(firstEnd)), q = corner.Towards(secondEnd, y / corner.DistanceTo(secondEnd));
                least = Math.Min(least, before.DistanceTo(p) + p.DistanceTo(q) + q.DistanceTo(behind) - length);
            }

            if (Math.Abs(least) > 1e-3 * step)
            {
                Assert.Equal(least > 0, HeldPair.IsTight((before, corner, behind), first, second));
                (tight, held) = least > 0 ? (tight + 1, held) : (tight, held + 1);
            }
        }

        Assert.True(tight > 100 && held > 100, FormattableString.Invariant($"{tight} and {held}"));

        SpacePoint Any() => new(random.Between(-5, 5), random.Between(-5, 5), random.Between(-5, 5));
    }

    [Fact]
    public void Between_WheelTurningBehindARib_PullsOverEverythingItSweeps()
    {
        // A fixed strip 8 mm outside a disc's edge, a long wall half way: as for two fixed bodies, and the same for part of the turn.
        Solid wheel = new("wheel", "L", SolidKind.Live, true, -7, -6.5, new Outline(Contour.Circle(Point.Origin, 10), [Contour.Circle(Point.Origin, 2)]));
        Solid strip = new("strip", "N", SolidKind.Live, false, -7, -6.5, SurfacePathsTests.Box(18, -1, 20, 1));
        ClearanceRibs ribs = new([new RibBox("rib", new(14, -60), new(14, 60), 1, -7, -4.5)]);
        double over = (2 * Math.Sqrt((3.5 * 3.5) + 4)) + 1;
        Assert.Equal(over, LeastGaps.Between(new SolidGroup([wheel]), new SolidGroup([strip]), ribs)!.NominalMm, 1e-6);
        SolidGap part = LeastGaps.Between(new SolidGroup([wheel]), new SolidGroup([strip]), ribs, [new TurnRange(0, 1)])!;
        Assert.Equal(over, part.NominalMm, 1e-6);
        Assert.InRange(part.Bounds!.Value.UpperMm - part.Bounds.Value.LowerMm, 0, 1e-3);
    }

    [Fact]
    public void Between_OverARib_TakesTolerancesOffTheString()
    {
        // What moves an end by δ changes a taut string by no more (triangle inequality): 0.1 of a cut edge and 0.05 of side play.
        Solid strip = new("strip", "L", SolidKind.Live, false, -7, -6.5, SurfacePathsTests.Box(8, -1, 10, 1)) { Tolerance = new(0.1, 0.05, 0, 0) };
        Solid other = new("other", "N", SolidKind.Live, false, -7, -6.5, SurfacePathsTests.Box(18, -1, 20, 1));
        SolidGap gap = LeastGaps.Between(new SolidGroup([strip]), new SolidGroup([other]), new ClearanceRibs([new RibBox("rib", new(14, -60), new(14, 60), 1, -7, -4.5)]))!;
        double over = (2 * Math.Sqrt((3.5 * 3.5) + 4)) + 1;
        Assert.Equal(over, gap.NominalMm, 1e-6);
        Assert.Equal(over - 0.15, gap.WorstMm, 1e-6);
    }

    private static double LengthOf(IReadOnlyList<SpacePoint> places) => places.Zip(places.Skip(1)).Sum(leg => leg.First.DistanceTo(leg.Second));

    private static bool IsBlocked(IReadOnlyList<SpacePoint> places, RibBox[] ribs) => places.Zip(places.Skip(1)).Any(leg => ribs.Any(r => r.Blocks(leg.First, leg.Second)));

    private static PulledString Pull(SpacePoint a, SpacePoint b, IReadOnlyList<RibBox> ribs) => new TautString(End(a), End(b), ribs).Pull();

    private static StringEnd End(SpacePoint p) => new(new Outline(Contour.Circle(p.Plan, 1e-9)), p.Z, p.Z);

    private static RibBox Rib(Point from, Point to, double thickness, double height) => new("rib", from, to, thickness, 0, height);

    private static class EdgeGraph
    {
        private const int Points = 40;

        internal static (double LengthMm, double SpacingMm) Shortest(SpacePoint a, SpacePoint b, RibBox rib)
        {
            List<SpacePoint> nodes = [a, b];
            double spacing = 0;
            foreach (StringEdge edge in rib.Edges)
            {
                nodes.AddRange(Enumerable.Range(0, Points + 1).Select(i => edge.Start.Towards(edge.End, (double)i / Points)));
                spacing = Math.Max(spacing, edge.Start.DistanceTo(edge.End) / Points);
            }

            double[] at = [.. nodes.Select(_ => double.PositiveInfinity)];
            bool[] done = new bool[nodes.Count];
            at[0] = 0;
            while (true)
            {
                int next = Enumerable.Range(0, at.Length).Where(i => !done[i]).MinBy(i => at[i]);
                if (next == 1)
                {
                    return (at[1], spacing);
                }

                done[next] = true;
                for (int i = 0; i < at.Length; i++)
                {
                    double length = at[next] + nodes[next].DistanceTo(nodes[i]);
                    if (!done[i] && length < at[i] && IsFree(nodes[next], nodes[i], rib))
                    {
                        at[i] = length;
                    }
                }
            }
        }

        /// <summary>Looks at points along the line, unlike the code under test.</summary>
        private static bool IsFree(SpacePoint from, SpacePoint to, RibBox rib)
        {
            Vector along = (rib.End - rib.Start).Unit();
            double length = (rib.End - rib.Start).Length;
            for (int i = 1; i < 60; i++)
            {
                SpacePoint p = from.Towards(to, i / 60.0);
                Vector v = p.Plan - rib.Start;
                double x = v.Dot(along), y = Math.Abs(along.Cross(v));
                if (x > 1e-6 && x < length - 1e-6 && y < (rib.ThicknessMm / 2) - 1e-6 && p.Z < rib.TopMm - 1e-6)
                {
                    return false;
                }
            }

            return true;
        }
    }
}
