using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>Ways that bend where walls cross: at corners halfway up a wall, and where a rib and a groove lie across each other.</summary>
public sealed class CrossingWallsTests
{
    // It was 10.06, bending a second time at the wall's foot: no beam left that corner onto the wall beside it, on which it is halfway up.
    [Fact]
    public void Shortest_FromTheTopOfALowRibThatRunsIntoAHighOne_GoesDownTheHighOnesWall()
    {
        SurfaceRegion low = new("low", SurfacePathsTests.Box(-20, -1, 20, 1), 3, RegionWall.Raised), high = new("high", SurfacePathsTests.Box(-1, -20, 1, 20), 6, RegionWall.Raised);
        SurfacePaths paths = new(null, [low, high], [[new Footprint(SurfacePathsTests.Box(3, -0.5, 4, 0), 0)], [new Footprint(SurfacePathsTests.Box(1.2, 8, 2, 9), 0)]], 0);

        // From (3, 0) to the corner (1, 1) 3 mm up, slantwise down the wall, 0.2 mm across the floor.
        Assert.Equal(new Point(3, 0).DistanceTo(new(1, 1)) + Math.Sqrt((7 * 7) + (3.2 * 3.2)), paths.Shortest(0, 1)!.LengthMm, 1e-6);
    }

    // Of 4000 pairs 29 differed, by up to 15 %: what one search found by bends the one from the other end did not. Rounded borders are taken
    // as chords, and what is taken off for that is not the same from both ends.
    [Fact]
    public void Shortest_ConductorsListedTheOtherWayRound_IsAsLong()
    {
        List<string> failures = [];
        foreach ((int seed, WalledScene.Order order) in Enumerable.Range(0, 120).SelectMany(s => new[] { (s, WalledScene.Order.None), (s + 120, WalledScene.Order.Mirrored) }))
        {
            WalledScene scene = new(new RandomShapes(seed), order);
            SurfacePaths paths = new(scene.Surface, scene.Regions, scene.Conductors, 0), turned = new(scene.Surface, scene.Regions, [.. scene.Conductors.Reverse()], 0);
            int last = scene.Conductors.Count - 1;
            foreach ((int a, int b) in scene.Pairs)
            {
                double one = Length(paths.Shortest(a, b)), other = Length(turned.Shortest(last - a, last - b));
                if (Math.Abs(one - other) > 2e-3)
                {
                    failures.Add(FormattableString.Invariant($"seed {seed} {order}, {a} to {b}: {one} and {other}"));
                }
            }
        }

        Assert.True(failures.Count == 0, string.Join("\n", failures));
    }

    private static double Length(SurfacePath? path) => path?.LengthMm ?? -1;
}
