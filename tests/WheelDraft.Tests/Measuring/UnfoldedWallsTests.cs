using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>Paths over walls against closed forms: straight walls turned into one plane (elementary geometry, no table).</summary>
public sealed class UnfoldedWallsTests
{
    private const double CloseMm = 1e-6;

    [Fact]
    public void Shortest_RibCrossedSlantwise_IsNotThePlanWithBothWallsAdded()
    {
        // Plan 9 along and 12 across, rib 3.2 high: 15 + 6.4 if added up; unfolded √(9² + 18.4²).
        double length = Over([Rib("rib", -0.5, 0.5, 3.2)], new(-6, 0), new(6, 9));
        Assert.Equal(Math.Sqrt(81 + (18.4 * 18.4)), length, CloseMm);
    }

    [Fact]
    public void Shortest_RibCrossedSlantwiseByARibFile_IsLessThanTheRequirementItMetBefore()
    {
        // Through the same calls as a parameter file's: 15 mm of plan and 2 × 5 of wall are 20.8087, not 25.
        InsulatingSurface surface = new("floor", MaterialGroup.IIIa, 0, null, false)
        {
            Ribs = [new("floor", [new(0, -200), new(0, 200)], 5, 1.2, RibJoint.Moulded)],
        };
        Solid[] pads = [Pad("a", -4, -7), Pad("b", 4, 5.6886)];
        double plan = Math.Sqrt((8 * 8) + (12.6886 * 12.6886));
        Assert.Equal(15, plan, 1e-4);
        double expected = Math.Sqrt((18 * 18) + (12.6886 * 12.6886));
        Assert.Equal(expected, new SurfaceCreepage(surface, pads, 1.5).Between("a", "b")!.NominalMm, 1e-5);
    }

    [Fact]
    public void Shortest_TwoParallelRibsAndAGroove_IsStraightInTheUnfolding()
    {
        SurfaceRegion groove = new("groove", SurfacePathsTests.Box(1, -99, 3, 99), 1.5, RegionWall.Sunk);
        double length = Over([Rib("one", -4, -3, 2), groove, Rib("two", 4, 5.5, 0.7)], new(-7, -4), new(7, 7));
        double across = 14 + (2 * (2 + 1.5 + 0.7));
        Assert.Equal(Math.Sqrt((across * across) + 121), length, CloseMm);
    }

    [Fact]
    public void Shortest_VGrooveCrossedSlantwise_IsStraightOverFlanksAndLink()
    {
        // 4 wide, 3 deep, link 1.5: its contour 2·√(2² + 3²)·(1 − 1.5/4) + 1.5 in place of 4, unfolded.
        InsulatingSurface surface = new("floor", MaterialGroup.IIIa, 0, null, false)
        {
            Slots = [new("floor", [new(0, -200), new(0, 200)], 4, 3, SlotProfile.V)],
        };
        double across = 12 - 4 + (2 * Math.Sqrt(13) * (1 - (1.5 / 4))) + 1.5;
        Assert.Equal(Math.Sqrt((across * across) + 64), new SurfaceCreepage(surface, [Pad("a", -6, -4), Pad("b", 6, 4)], 1.5).Between("a", "b")!.NominalMm, 1e-5);
    }

    [Fact]
    public void Shortest_BentVGrooveCrossedFarFromItsBend_CountsItsFlanksAsAStraightOneDoes()
    {
        InsulatingSurface surface = new("floor", MaterialGroup.IIIa, 0, null, false)
        {
            Slots = [new("floor", [new(0, -200), new(0, 0), new(200, 0)], 4, 3, SlotProfile.V)],
        };
        double across = 12 - 4 + (2 * Math.Sqrt(13) * (1 - (1.5 / 4))) + 1.5;
        foreach ((Solid a, Solid b) in new[] { (Pad("a", -6, -100), Pad("b", 6, -100)), (Pad("a", 100, -6), Pad("b", 100, 6)) })
        {
            Assert.Equal(across, new SurfaceCreepage(surface, [a, b], 1.5).Between("a", "b")!.NominalMm, 1e-5);
        }

        // Each leg ends before its end by 4 cos²α / (2 sin α), tan α = 2 · 3/4, as a straight one does, and before the bend by what the inner side of a right angle
        // takes besides: half the width.
        double cos2 = 1 / (1 + 2.25), end = 4 * cos2 / (2 * Math.Sqrt(1 - cos2));
        Bounds[] legs = [.. surface.Regions(1.5).Select(r => r.Outline.Bounds)];
        Assert.Equal([(-200 + end, -2 - end), (2 + end, 200 - end)], [(legs[0].MinY, legs[0].MaxY), (legs[1].MinX, legs[1].MaxX)], (e, f) => Math.Abs(e.Item1 - f.Item1) + Math.Abs(e.Item2 - f.Item2) < 1e-9);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Shortest_TallConductorBesideARib_IsSparedTheWallBelowItsUpperEdgeFromEitherEnd(bool beginsAtIt)
    {
        // 2.3 mm tall, 1 mm from a rib 3.2 mm high, link 1.5: 5.5 to the rib, up 3.2, 1 over its top, then straight to the upper edge
        // of the conductor, 1 across and 0.9 down.
        Footprint[] far = [Dot(new(-6, 0))], tall = [new(new Outline(Contour.Polygon(new(1.5, -1), new(9, -1), new(9, 1), new(1.5, 1))), 2.3)];
        SurfacePaths paths = new(null, [Rib("rib", -0.5, 0.5, 3.2)], beginsAtIt ? [tall, far] : [far, tall], 1.5);
        Assert.Equal(5.5 + 3.2 + 1 + Math.Sqrt(1 + (0.9 * 0.9)), paths.Shortest(0, 1)!.LengthMm, 1e-5);
        Assert.Equal(5.5 + 3.2 + 1 + Math.Sqrt(1 + (0.9 * 0.9)), paths.Shortest(1, 0)!.LengthMm, 1e-5);
    }

    [Fact]
    public void Shortest_RibWhoseEndIsNear_IsGoneRoundItsTwoCorners()
    {
        SurfaceRegion rib = new("rib", SurfacePathsTests.Box(-0.5, -40, 0.5, 2), 9, RegionWall.Raised);
        double length = Over([rib], new(-4, 0), new(5, -1));
        Assert.Equal(Math.Sqrt((3.5 * 3.5) + 4) + 1 + Math.Sqrt((4.5 * 4.5) + 9), length, CloseMm);
    }

    [Fact]
    public void Shortest_FromATopOverTheCornerOfARib_TakesTheNearerOfTwoUnfoldings()
    {
        // From a place on the top, 1 from one side and 2 from the end, to the floor beyond the end: over the end wall, or over the side wall and
        // round the upright corner at its foot; both unfolded by hand.
        SurfaceRegion rib = new("rib", SurfacePathsTests.Box(-30, -8, 0, 8), 3, RegionWall.Raised);
        Assert.Equal(Math.Sqrt((4.5 * 4.5) + ((2 + 3 + 1) * (2 + 3 + 1))), Over([rib], new(-2, 7), new(1, 2.5)), CloseMm);
    }

    [Fact]
    public void Shortest_WalkingAlongAWallRoundItsCorner_IsFoundWithoutABend()
    {
        // Floor at (−0.05, −0.03) beside the corner (0, 0) of a rib that fills x < 0, y > 0: up the front wall, round the upright edge and up the
        // side wall to the top at (−0.01, 3). Unfolded along both walls: √(3.05² + (0.03 + 4 + 0.01)²), 6 µm shorter than by the foot of the corner.
        SurfaceRegion rib = new("rib", SurfacePathsTests.Box(-30, 0, 0, 30), 4, RegionWall.Raised);
        Assert.Equal(Math.Sqrt((3.05 * 3.05) + (4.04 * 4.04)), Over([rib], new(-0.05, -0.03), new(-0.01, 3)), CloseMm);
    }

    [Fact]
    public void Shortest_BetweenTwoRibsSlanting_CrossesEachInItsOwnDirection()
    {
        // Two ribs at an angle of 60°: the unfolding moves the far side by 2h square to each rib; the straight line between is the length.
        Outline slanting = new(Contour.Polygon(Turned(0), Turned(1), Turned(2), Turned(3)));
        double length = Over([Rib("one", -3, -2, 1.5), new("two", slanting, 2, RegionWall.Raised)], new(-6, 0), new(8, 2));
        Vector apart = new Vector(14, 2) + new Vector(3, 0) + (new Vector(Math.Cos(Math.PI / 6), Math.Sin(Math.PI / 6)) * 4);
        Assert.Equal(apart.Length, length, CloseMm);

        static Point Turned(int i) => new Point(3, 0) + new Vector(i is 0 or 3 ? -0.5 : 0.5, i < 2 ? -90 : 90).Turned(Math.PI / 6);
    }

    [Fact]
    public void Shortest_RibsAcrossEachOther_AreOneBlock()
    {
        // Two crossed ribs, as high: from quarter to opposite quarter over the crossing costs one climb and one descent.
        SurfaceRegion[] cross = [Rib("one", -0.5, 0.5, 5), new("two", SurfacePathsTests.Box(-99, -0.5, 99, 0.5), 5, RegionWall.Raised)];
        double length = Over(cross, new(-2, -2), new(2, 2));
        Assert.InRange(length, 10, Math.Sqrt(32) + 10);
    }

    [Fact]
    public void Shortest_ArcConductors_MeetTheWallSquare()
    {
        SurfacePaths paths = new(null, [Rib("rib", -0.5, 0.5, 3)],
            [[new(new Outline(Contour.Circle(new(-6, 1), 2)), 0)], [new(new Outline(Contour.Circle(new(7, -3), 1.5)), 0)]], 0);
        Assert.Equal(Math.Sqrt((19 * 19) + 16) - 3.5, paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Shortest_ConductorThatTouchesNothing_HasNoPathAndIsInNobodysWay(bool hasRib)
    {
        SurfaceRegion[] regions = hasRib ? [Rib("rib", -0.5, 0.5, 3)] : [];
        SurfacePaths paths = new(null, regions, [[Dot(new(-6, 0))], [], [Dot(new(6, 0))]], 0);
        Assert.Null(paths.Shortest(0, 1));
        Assert.Null(paths.Shortest(2, 1));
        Assert.Equal(hasRib ? 18 : 12, paths.Shortest(0, 2)!.LengthMm + 2e-6, CloseMm);
    }

    internal static SurfaceRegion Rib(string name, double fromX, double toX, double height) =>
        new(name, SurfacePathsTests.Box(fromX, -99, toX, 99), height, RegionWall.Raised);

    private static Solid Pad(string net, double x, double y) =>
        new(net, net, SolidKind.Live, false, 0, 0, new Outline(Contour.Circle(new(x, y), 1e-6))) { OnSurface = "floor" };

    internal static double Over(IReadOnlyList<SurfaceRegion> regions, Point a, Point b) =>
        new SurfacePaths(null, regions, [[Dot(a)], [Dot(b)]], 0).Shortest(0, 1)!.LengthMm + 2e-6;

    internal static Footprint Dot(Point p) => new(new Outline(Contour.Circle(p, 1e-6)), 0);
}
