using System.Globalization;
using NetTopologySuite.Geometries;
using WheelDraft.Geometry;
using Xunit;
using Point = WheelDraft.Geometry.Point;

namespace WheelDraft.Tests.Measuring;

/// <summary>Random surfaces with ribs, grooves and slots against shortest ways over triangles in space (<see cref="MeshScene"/>).</summary>
public sealed class CreepageMeshTests
{
    /// <summary>Name of the environment variable that sets how many scenes are drawn.</summary>
    private const string Scenes = "WHEELDRAFT_CREEPAGE_SCENES";

    private const double SpacingMm = 0.2;

    [Fact]
    public void Shortest_RandomWalls_AgreesWithPointsOnTriangles()
    {
        int count = int.Parse(Environment.GetEnvironmentVariable(Scenes) ?? "12", CultureInfo.InvariantCulture);
        List<string> failures = [];
        double most = 0, least = double.PositiveInfinity;
        for (int i = 0; i < count; i++)
        {
            Scene scene = new(new RandomShapes(1000 + i));
            double exact = scene.Exact(), mesh = scene.Mesh(SpacingMm);
            if (mesh > exact * 1.01)
            {
                // Too coarse, or the exact one too short: finer points tell.
                mesh = scene.Mesh(SpacingMm / 5);
            }

            bool agrees = double.IsPositiveInfinity(exact) ? double.IsPositiveInfinity(mesh) : exact <= mesh + 1e-6 && mesh <= exact * 1.01;
            if (!agrees)
            {
                failures.Add(FormattableString.Invariant($"scene {i}: {exact}, over triangles {mesh}: {scene}"));
            }
            else if (double.IsFinite(exact) && exact > 0)
            {
                (most, least) = (Math.Max(most, mesh / exact), Math.Min(least, mesh / exact));
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{count} scenes, over triangles / exact from {least:0.0000000} to {most:0.0000000}"));
        Assert.Empty(failures);
    }

    private sealed class Scene
    {
        private static readonly GeometryFactory Factory = new();
        private readonly List<(Polygon Plan, double Level)> _plans = [];
        private readonly List<SurfaceRegion> _regions = [];
        private readonly Point _a;
        private readonly Point _b;
        private readonly Outline _surface = SurfacePathsTests.Box(-8, -6, 8, 6);

        internal Scene(RandomShapes random)
        {
            int wanted = 1 + random.Below(4);
            for (int tries = 0; tries < 60 && _regions.Count < wanted; tries++)
            {
                Add(random);
            }

            _a = new Point(random.Between(-7.5, -3), random.Between(-5, 5));
            _b = new Point(random.Between(-1, 7.5), random.Between(-5, 5));
        }

        internal double Exact() =>
            new SurfacePaths(_surface, _regions, [[UnfoldedWallsTests.Dot(_a)], [UnfoldedWallsTests.Dot(_b)]], 0).Shortest(0, 1) is { } path
                ? path.LengthMm + (path.LengthMm > 0 ? 2e-6 : 0)
                : double.PositiveInfinity;

        internal double Mesh(double spacing) =>
            new MeshScene(_plans, Flat(_surface), [_a, _b], spacing).Shortest(_a, LevelAt(_a), _b, LevelAt(_b));

        public override string ToString() => FormattableString.Invariant(
            $"{_a} to {_b}; {string.Join("; ", _regions.Select(r => $"{r.Name} {r.WallMm} {r.Outline.Outer}"))}");

        /// <summary>A straight or bent rib, groove or slot clear of the others, reaching over the surface's edge at times.</summary>
        private void Add(RandomShapes random)
        {
            Point from = new(random.Between(-7, 7), random.Between(-9, 9));
            Vector along = Vector.Polar(random.Between(2, 9), random.Between(0, 6.3));
            List<Point> path = [from, from + along];
            if (random.Below(2) == 0)
            {
                path.Add(path[1] + along.Turned(random.Between(-1.5, 1.5)));
            }

            int kind = random.Below(5);
            double wall = random.Between(0.3, 4);
            Outline band = Band.Along(path, random.Between(0.6, 2));
            Polygon plan = Flat(band);
            if (!plan.IsValid || _plans.Exists(p => p.Plan.Distance(plan) < 0.2))
            {
                return;
            }

            (double level, SurfaceRegion region) = kind switch
            {
                0 => (double.NaN, SurfaceRegion.Through("slot", band)),
                1 or 2 => (-wall, new SurfaceRegion("groove", band, wall, RegionWall.Sunk)),
                _ => (wall, new SurfaceRegion("rib", band, wall, RegionWall.Raised)),
            };
            _plans.Add((plan, level));
            _regions.Add(region);
        }

        private double LevelAt(Point p) => _plans.Where(r => r.Plan.Contains(Factory.CreatePoint(new Coordinate(p.X, p.Y)))).Sum(r => r.Level);

        // Finer chords than the code under test has: obstacles are 0.1 µm too small at most.
        private static Polygon Flat(Outline outline) => RandomShapes.Flat(outline, 0.0001);
    }
}
