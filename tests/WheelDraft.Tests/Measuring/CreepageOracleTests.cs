using CsCheck;
using NetTopologySuite.Geometries;
using WheelDraft.Geometry;
using Xunit;
using Point = WheelDraft.Geometry.Point;

namespace WheelDraft.Tests.Measuring;

public sealed class CreepageOracleTests
{
    [Fact]
    public void Shortest_RoundOneConvexObstacle_IsHalfTheConvexHull()
    {
        // Oracle: NetTopologySuite's convex hull. Round one convex obstacle the shortest way between two points is the shorter side of the
        // hull of obstacle and points. Chord error 1e-6 mm.
        RandomShapes random = new(5);
        for (int i = 0; i < 300; i++)
        {
            Outline obstacle = i % 2 == 0
                ? new Outline(Contour.Circle(random.At(0, 2), random.Between(1, 4)))
                : Band.Along([random.At(3, 5), random.At(0, 2)], random.Between(0.5, 3));
            Point a = random.At(7, 10), b = random.At(7, 10);
            if (a.DistanceTo(b) < 1)
            {
                continue;
            }

            SurfacePaths paths = new(null, [SurfaceRegion.Through("obstacle", obstacle)], [Pad(a), Pad(b)], 1);
            Assert.Equal(HullWay(obstacle, a, b), paths.Shortest(0, 1)!.LengthMm, 1e-4);
        }
    }

    [Fact]
    public void Shortest_AmongManySlots_AgreesWithADenseGrid()
    {
        // Oracle: Dijkstra over a grid with 80 directions; see SurfaceGrid for its error bound. Walls: CreepageMeshTests.
        RandomShapes random = new(17);
        List<string> failures = [];
        for (int i = 0; i < 12; i++)
        {
            List<SurfaceRegion> regions = [];
            for (int k = 0; k < 4; k++)
            {
                Outline shape = Band.Along([random.At(0, 5), random.At(0, 5)], random.Between(0.8, 1.5));
                regions.Add(SurfaceRegion.Through(FormattableString.Invariant($"slot {k}"), shape));
            }

            Outline left = SurfacePathsTests.Box(-8, -1, -6, random.Between(0, 3)), right = new(Contour.Circle(new Point(7, random.Between(-2, 2)), 1));
            Outline surface = SurfacePathsTests.Box(-8.5, -5.5, 8.5, 5.5);
            double exact = new SurfacePaths(surface, regions, [[new(left, 0)], [new(right, 0)]], 0).Shortest(0, 1)?.LengthMm ?? double.PositiveInfinity;
            double grid = new SurfaceGrid(surface, regions).Shortest(left, right);
            bool agrees = double.IsPositiveInfinity(exact)
                ? double.IsPositiveInfinity(grid)
                : exact <= grid + SurfaceGrid.CutMm && grid <= (exact * SurfaceGrid.Slant) + SurfaceGrid.CoarseMm;
            if (!agrees)
            {
                failures.Add(FormattableString.Invariant($"case {i}: exact {exact}, grid {grid}"));
            }
        }

        Assert.Empty(failures);
    }

    [Fact]
    public void Shortest_WithOneMoreSlot_IsNeverShorter() =>
        Gen.Select(Gen.Int[0, 100000], Gen.Int[1, 3]).Sample(
            (seed, slots) =>
            {
                // Metamorphic: no outside oracle needed.
                RandomShapes random = new(seed);
                List<SurfaceRegion> regions = [.. Enumerable.Range(0, slots).Select(k => SurfaceRegion.Through(FormattableString.Invariant($"slot {k}"), Slot(random)))];
                IReadOnlyList<Footprint> a = [new(SurfacePathsTests.Box(-9, -1, -7, 1), 0)], b = [new(SurfacePathsTests.Box(7, -1, 9, 1), 0)];
                double before = new SurfacePaths(null, regions, [a, b], 1).Shortest(0, 1)!.LengthMm;
                regions.Add(SurfaceRegion.Through("one more", Slot(random)));
                return new SurfacePaths(null, regions, [a, b], 1).Shortest(0, 1)!.LengthMm >= before - 1e-9;
            },
            iter: 150);

    [Fact]
    public void Shortest_WithMoreCopper_IsNeverLonger() =>
        Gen.Select(Gen.Int[0, 100000], Gen.Double[0, 2]).Sample(
            (seed, more) =>
            {
                RandomShapes random = new(seed);
                SurfaceRegion[] regions = [SurfaceRegion.Through("slot", Slot(random)), new("rib", Slot(random), 2, RegionWall.Raised)];
                IReadOnlyList<Footprint> b = [new(SurfacePathsTests.Box(7, -1, 9, 1), 0)];
                double Length(double grown) => new SurfacePaths(
                    null, regions, [[new(SurfacePathsTests.Box(-9 - grown, -1 - grown, -7 + grown, 1 + grown), 0)], b], 0).Shortest(0, 1)!.LengthMm;
                return Length(more) <= Length(0) + 1e-9;
            },
            iter: 150);

    [Fact]
    public void Shortest_FromTheOtherEnd_IsTheSamePathBackwards()
    {
        RandomShapes random = new(23);
        for (int i = 0; i < 60; i++)
        {
            SurfaceRegion[] regions = [SurfaceRegion.Through("slot", Slot(random)), new("rib", Slot(random), 2, RegionWall.Raised), new("groove", Slot(random), 1, RegionWall.Sunk)];
            IReadOnlyList<Footprint> a = [new(SurfacePathsTests.Box(-9, -1, -7, 1), 0.5)], b = [new(SurfacePathsTests.Box(7, -1, 9, 1), 1)];
            double there = new SurfacePaths(null, regions, [a, b], 1).Shortest(0, 1)!.LengthMm;
            SurfacePath back = new SurfacePaths(null, regions, [b, a], 1).Shortest(0, 1)!;
            Assert.Equal(there, back.LengthMm, 1e-6);
            Assert.Equal(back.LengthMm, back.Legs.Sum(l => l.LengthMm), 1e-9);
        }
    }

    private static Outline Slot(RandomShapes random) => Band.Along([random.At(0, 6), random.At(0, 6)], random.Between(0.2, 2));

    private static IReadOnlyList<Footprint> Pad(Point p) => [new(new Outline(Contour.Circle(p, 1e-6)), 0)];

    private static double HullWay(Outline obstacle, Point a, Point b)
    {
        Polygon flat = RandomShapes.Flat(obstacle, 1e-6);
        LineString direct = new([new(a.X, a.Y), new(b.X, b.Y)]);
        if (!flat.Buffer(-1e-6).Intersects(direct))
        {
            return direct.Length;
        }

        Coordinate[] hull = flat.Union(direct).ConvexHull().Coordinates;
        int from = Array.FindIndex(hull, c => c.Equals2D(direct[0], 1e-12)), to = Array.FindIndex(hull, c => c.Equals2D(direct[1], 1e-12));
        double one = 0;
        for (int i = Math.Min(from, to); i < Math.Max(from, to); i++)
        {
            one += hull[i].Distance(hull[i + 1]);
        }

        double whole = Enumerable.Range(0, hull.Length - 1).Sum(i => hull[i].Distance(hull[i + 1]));
        return Math.Min(one, whole - one);
    }
}
