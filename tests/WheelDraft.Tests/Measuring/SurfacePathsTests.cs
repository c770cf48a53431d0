using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

public sealed class SurfacePathsTests
{
    private const double CloseMm = 1e-6;

    [Fact]
    public void Shortest_PadsBesideAClosedSlot_GoesRoundItsEnd()
    {
        // Worked example W34 (derived; a published figure of 8.627 mm for it starts from the middle of the pad edge and is too long):
        // pads 0.6 mm tall face each other across 7.25 mm at y = 4.445, slot 6.0 × 11.2 mm centred on the origin.
        SurfacePaths paths = new(null, [SurfaceRegion.Through("slot", Box(-3, -5.6, 3, 5.6))],
            [[new(Box(-5, 4.145, -3.625, 4.745), 0)], [new(Box(3.625, 4.145, 5, 4.745), 0)]], 1.5);
        double expected = 6 + (2 * Math.Sqrt((0.625 * 0.625) + (0.855 * 0.855)));
        Assert.Equal(expected, paths.Shortest(0, 1)!.LengthMm, CloseMm);
        Assert.Equal(8.118, paths.Shortest(0, 1)!.LengthMm, 1e-3);
        Assert.Equal(3, paths.Shortest(0, 1)!.Legs.Count);
    }

    [Fact]
    public void Shortest_RoundSlotEnd_RunsAlongTheArc()
    {
        // Two point-like pads left and right of a disc of radius 2 at distance 4 from its centre: two tangents and an arc between.
        Outline disc = new(Contour.Circle(Point.Origin, 2));
        SurfacePaths paths = new(null, [SurfaceRegion.Through("hole", disc)],
            [[new(Box(-5, -1e-7, -4, 1e-7), 0)], [new(Box(4, -1e-7, 5, 1e-7), 0)]], 1.5);
        double tangent = Math.Sqrt(16 - 4);
        double arc = 2 * (Math.PI - (2 * Math.Acos(0.5)));
        Assert.Equal((2 * tangent) + arc, paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Shortest_CornerOfASlotThenARoundHole_RunsFromTheCornerToTheTangent(int way)
    {
        // From (−10, 0) round the corner (−6, 2) of a slot, over its end and on to a hole of radius 3 about (3, 0), along it and to (10, 0); and mirrored.
        // The corner lies √85 from the middle of the hole, the other end 7: two tangents, and between them what they leave of the half turn.
        SurfaceRegion slot = SurfaceRegion.Through("slot", way > 0 ? Box(-6, -60, -4, 2) : Box(4, -60, 6, 2));
        SurfaceRegion hole = SurfaceRegion.Through("hole", new Outline(Contour.Circle(new(3 * way, 0), 3)));
        double length = UnfoldedWallsTests.Over([slot, hole], new(-10 * way, 0), new(10 * way, 0));
        double arc = 3 * (Math.PI - Math.Atan(2.0 / 9) - Math.Acos(3 / Math.Sqrt(85)) - Math.Acos(3.0 / 7));
        Assert.Equal(Math.Sqrt(20) + Math.Sqrt(85 - 9) + arc + Math.Sqrt(49 - 9), length, CloseMm);
    }

    [Fact]
    public void Shortest_TwoRoundHoles_RunsAlongTheirCommonTangent()
    {
        // Holes of radius 3 in line: over both, 10 along the tangent that leaves them on one side. √40 from either end, 7 from a middle.
        double outer = UnfoldedWallsTests.Over([Hole(-5, 0), Hole(5, 0)], new(-12, 0), new(12, 0));
        Assert.Equal((2 * Math.Sqrt(40)) + 10 + (6 * ((Math.PI / 2) - Math.Acos(3.0 / 7))), outer, CloseMm);

        // One below and one above: over the first and under the second, along the tangent that crosses between them, through the origin, √29 from a middle.
        double arc = Math.PI - Math.Atan(2.0 / 7) - Math.Atan(2.0 / 5) - Math.Acos(3 / Math.Sqrt(53)) - Math.Acos(3 / Math.Sqrt(29));
        double inner = UnfoldedWallsTests.Over([Hole(-5, -2), Hole(5, 2)], new(-12, 0), new(12, 0));
        Assert.Equal(2 * (Math.Sqrt(53 - 9) + Math.Sqrt(29 - 9) + (3 * arc)), inner, CloseMm);

        static SurfaceRegion Hole(double x, double y) => SurfaceRegion.Through("hole", new Outline(Contour.Circle(new(x, y), 3)));
    }

    [Fact]
    public void Shortest_LongSlotBetweenNearPads_GoesAllTheWayRoundItsEnd()
    {
        // 4 mm apart, and 200 mm of slot between; a rib far off makes the search one over walls. Round the nearer end, 90 mm away.
        SurfaceRegion slot = SurfaceRegion.Through("slot", Box(-1, -110, 1, 90)), rib = new("rib", Box(300, -5, 301, 5), 3, RegionWall.Raised);
        Assert.Equal((2 * Math.Sqrt(1 + (90 * 90))) + 2, UnfoldedWallsTests.Over([slot, rib], new(-2, 0), new(2, 0)), CloseMm);
    }

    [Fact]
    public void Shortest_LongRibBetween_ClimbsIt()
    {
        SurfacePaths paths = new(null, [new("rib", Box(-0.5, -50, 0.5, 50), 4, RegionWall.Raised)],
            [[new(Box(-10, -2, -4, 2), 0)], [new(Box(4, -2, 10, 2), 0)]], 1.5);
        SurfacePath path = paths.Shortest(0, 1)!;
        Assert.Equal(8 + 8, path.LengthMm, CloseMm);
        Assert.Equal(2, path.Legs.Single().Crossed.Count);
    }

    [Fact]
    public void Shortest_ShortRibBetween_GoesRoundIt()
    {
        SurfacePaths paths = new(null, [new("rib", Box(-0.5, -3, 0.5, 3), 40, RegionWall.Raised)],
            [[new(Box(-10, -2, -4, 2), 0)], [new(Box(4, -2, 10, 2), 0)]], 1.5);
        double expected = 1 + (2 * Math.Sqrt((3.5 * 3.5) + 1));
        Assert.Equal(expected, paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    [Fact]
    public void Shortest_SurfaceWithANotch_GoesRoundTheNotch()
    {
        Outline surface = new(Contour.Polygon(new(-10, -5), new(-1, -5), new(-1, 3), new(1, 3), new(1, -5), new(10, -5), new(10, 6), new(-10, 6)));
        SurfacePaths paths = new(surface, [], [[new(Box(-6, -2, -3, 0), 0)], [new(Box(3, -2, 6, 0), 0)]], 1);
        Assert.Equal(2 + (2 * Math.Sqrt(4 + 9)), paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    [Fact]
    public void Shortest_TwoPiecesOfSurface_HasNoPath()
    {
        SurfacePaths paths = new(new Outline(Contour.Circle(Point.Origin, 20)), [SurfaceRegion.Through("gap", Box(-1, -30, 1, 30))],
            [[new(Box(-6, -2, -3, 0), 0)], [new(Box(3, -2, 6, 0), 0)]], 1);
        Assert.Null(paths.Shortest(0, 1));
    }

    [Fact]
    public void Shortest_ConductorOverhangingASlot_StartsWhereItsEdgeMeetsTheSlot()
    {
        // The pad covers x from −6 to 0.5 over a slot from x = −1 to 1: it reaches the near bank at (−1, ±2) and the slot's end at y = 8.
        SurfacePaths paths = new(null, [SurfaceRegion.Through("slot", Box(-1, -8, 1, 8))],
            [[new(Box(-6, -2, 0.5, 2), 0)], [new(Box(3, -2, 6, 2), 0)]], 1);
        Assert.Equal(6 + 2 + Math.Sqrt(4 + 36), paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    [Fact]
    public void Shortest_TouchingConductors_IsNothing()
    {
        SurfacePaths paths = new(null, [], [[new(Box(0, 0, 1, 1), 0)], [new(Box(1, 0, 2, 1), 0)], [new(Box(0.2, 0.2, 0.4, 0.4), 0)]], 1);
        Assert.Equal(0, paths.Shortest(0, 1)!.LengthMm);
        Assert.Equal(0, paths.Shortest(0, 2)!.LengthMm);
        Assert.Equal(0.6, paths.Shortest(2, 1)!.LengthMm, CloseMm);
    }

    [Fact]
    public void Shortest_CrossableAndImpassableTogether_TakesTheCheaper()
    {
        // Over the rib costs 2 × 1; round the slot that lengthens the barrier costs more.
        SurfacePaths paths = new(null,
            [SurfaceRegion.Through("slot", Box(-0.5, 0, 0.5, 30)), new("rib", Box(-0.5, -30, 0.5, 0), 1, RegionWall.Raised)],
            [[new(Box(-10, 1, -4, 5), 0)], [new(Box(4, 1, 10, 5), 0)]], 0.2);
        double expected = (2 * Math.Sqrt((3.5 * 3.5) + 1)) + 1 + 2;
        Assert.Equal(expected, paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    [Fact]
    public void TwoRibsEndToEndLeaveNoWayBetweenThem()
    {
        // They meet at y = 1, opposite both conductors: the seam is no passage.
        SurfacePaths paths = new(null,
            [new("rib 1", Box(-0.5, -30, 0.5, 1), 3, RegionWall.Raised), new("rib 2", Box(-0.5, 1, 0.5, 30), 3, RegionWall.Raised)],
            [[new(Box(-10, -2, -4, 2), 0)], [new(Box(4, -2, 10, 2), 0)]], 1.5);
        Assert.Equal(8 + 6, paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    [Fact]
    public void RibUpToTheEdgeOfItsSurfaceIsNotSlippedPastAlongTheEdge()
    {
        SurfacePaths paths = new(Box(-12, -5, 12, 5), [new("rib", Box(-0.5, -5, 0.5, 5), 3, RegionWall.Raised)],
            [[new(Box(-10, -2, -4, 2), 0)], [new(Box(4, -2, 10, 2), 0)]], 1.5);
        Assert.Equal(8 + 6, paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    [Fact]
    public void Shortest_ConductorNearARib_BridgesOntoIt()
    {
        // Copper strip 0.5 mm thick 0.9 mm from a rib 4 mm high, X = 1.5: the link reaches √(1.5² − 0.9²) = 1.2 above the strip's upper edge.
        SurfacePaths paths = new(null, [new("rib", Box(-0.5, -50, 0.5, 50), 4, RegionWall.Raised)],
            [[new(Box(-6, -2, -1.4, 2), 0.5)], [new(Box(4, -2, 10, 2), 0)]], 1.5);
        SurfacePath path = paths.Shortest(0, 1)!;
        Assert.Equal(1.5 + (4 - 0.5 - 1.2) + 1 + 4 + 3.5, path.LengthMm, CloseMm);
        Assert.True(path.Legs.Single().Crossed[0].Bridged);
    }

    [Fact]
    public void Shortest_UprightStripBesideALowerRib_GainsNothingFromIt()
    {
        SurfacePaths paths = new(null, [new("rib", Box(-0.5, -50, 0.5, 50), 4, RegionWall.Raised)],
            [[new(Box(-6, -2, -1.4, 2), 7)], [new(Box(4, -2, 10, 2), 0)]], 1.5);
        Assert.Equal(0.9 + 1 + 4 + 3.5, paths.Shortest(0, 1)!.LengthMm, CloseMm);
    }

    internal static Outline Box(double x0, double y0, double x1, double y1) =>
        new(Contour.Polygon(new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)));
}
