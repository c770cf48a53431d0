using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>The eleven measuring examples of IEC 60664-1:2020, 6.8 (Figures 4 to 14; 6.2 in edition 2), named in words because the order of
/// two of them differs between product standards. X is that of pollution degree 3, 1.5 mm (6.8, same values in TI SLUP419, Table 7).</summary>
/// <remarks>All are endless cross-sections in the standard: here everything is 100 mm and more long, conductors face each other at x = ±5.
/// Grooves, ribs and joints go through the same calls as a parameter file's. Lengths follow from the rule stated with each figure.</remarks>
public sealed class MeasuringExamplesTests
{
    private const double XMm = 1.5;
    private const double CloseMm = 1e-6;

    [Fact]
    public void Groove_NarrowerThanX_IsCrossedStraight()
    {
        // Figure 4: parallel- or converging-sided groove of any depth, width below X: clearance and creepage straight across.
        InsulatingSurface s = Surface(slots: [Groove(0, XMm - 0.01, 8)]);
        Assert.Equal(10, Creepage(s), CloseMm);
        Assert.Equal(10, Clearance(s), CloseMm);
    }

    [Theory]
    [InlineData(XMm)]
    [InlineData(4)]
    public void Groove_ParallelAtLeastX_FollowsItsContour(double width)
    {
        // Figure 5: clearance is the line of sight, creepage follows the contour.
        InsulatingSurface s = Surface(slots: [Groove(0, width, 3)]);
        Assert.Equal(10 + (2 * 3), Creepage(s), CloseMm);
        Assert.Equal(10, Clearance(s), CloseMm);
    }

    [Theory]
    [InlineData(1.0, 6.408)] // worked example W33: derived, 2·√(2² + 3²)·(1 − 1/4) + 1
    [InlineData(1.5, 6.007)] // the same with X = 1.5
    public void Groove_VWiderThanX_IsLinkedAtItsBottom(double x, double contour)
    {
        // Figure 6: V groove 4 mm wide, 3 mm deep: contour, but the bottom is short-circuited by a link of X.
        InsulatingSurface s = Surface(slots: [Groove(0, 4, 3, SlotProfile.V)]);
        Assert.Equal(10 - 4 + contour, Creepage(s, x), 1e-3);
        Assert.Equal(10, Clearance(s), CloseMm);
    }

    [Fact]
    public void Rib_Moulded_CreepageFollowsItsContourAndClearanceGoesOverItsTop()
    {
        // Figure 7: rib 4 mm high, 1.2 mm thick in the middle.
        InsulatingSurface s = Surface(ribs: [Rib(0, 1.2, 4, RibJoint.Moulded)]);
        Assert.Equal(10 + (2 * 4), Creepage(s), CloseMm);
        Assert.Equal((2 * Math.Sqrt((4.4 * 4.4) + (4 * 4))) + 1.2, Clearance(s), CloseMm);
    }

    [Fact]
    public void Joint_UncementedWithGroovesBelowXOnEachSide_IsCrossedInLineOfSight()
    {
        // Figure 8 (rule from memory, title public).
        InsulatingSurface s = Surface(slots: [Groove(-0.5, 1, 2), Groove(0.5, 1, 2)]);
        Assert.Equal(10, Creepage(s), CloseMm);
        Assert.Equal(10, Clearance(s), CloseMm);
    }

    [Fact]
    public void Joint_UncementedWithGroovesOfAtLeastXOnEachSide_FollowsBothContours()
    {
        // Figure 9: a joint between two grooves, each at least X wide; the land between them is 1 mm.
        InsulatingSurface s = Surface(slots: [Groove(-1.5, 2, 2), Groove(1.5, 2, 2)]);
        Assert.Equal(10 + (2 * 2) + (2 * 2), Creepage(s), CloseMm);
        Assert.Equal(10, Clearance(s), CloseMm);
    }

    [Fact]
    public void Joint_UncementedWithOneGrooveBelowX_CrossesThatOneAndFollowsTheOther()
    {
        // Figure 10.
        InsulatingSurface s = Surface(slots: [Groove(-1, 1, 2), Groove(1.5, 2, 2)]);
        Assert.Equal(10 + (2 * 2), Creepage(s), CloseMm);
        Assert.Equal(10, Clearance(s), CloseMm);
    }

    [Fact]
    public void Barrier_OnALooseJoint_CreepageGoesThroughAndClearanceOver()
    {
        // Figure 11: through the joint is shorter than over the barrier.
        InsulatingSurface s = Surface(ribs: [Rib(0, 1.2, 4, RibJoint.Loose)]);
        Assert.Equal(10, Creepage(s), CloseMm);
        Assert.Equal((2 * Math.Sqrt((4.4 * 4.4) + (4 * 4))) + 1.2, Clearance(s), CloseMm);
    }

    [Fact]
    public void Recess_WideGapBesideScrewHead_FollowsTheContour()
    {
        // Figure 12: a screw head 1 mm high in a recess 2 mm deep, 1.6 mm from its wall; the other conductor 3.4 mm beyond the wall.
        Assert.Equal(1.6 + 2 + 3.4, FromRecess(1.6, 1, 3.4), CloseMm);
    }

    [Fact]
    public void Recess_NarrowGapBesideScrewHead_IsBridgedByALinkOfX()
    {
        // Figure 13: 0.9 mm from the wall: a link of X from the head's edge (1 mm high) meets the wall √(1.5² − 0.9²) = 1.2 mm higher,
        // above the recess's own edge (1 mm higher): straight to the edge then.
        Assert.Equal(Math.Sqrt((0.9 * 0.9) + 1) + 3.4, FromRecess(0.9, 1, 3.4), CloseMm);

        // A head flush with the floor: the link reaches 1.2 mm up the 2 mm wall, the rest is climbed.
        Assert.Equal(1.5 + (2 - 1.2) + 3.4, FromRecess(0.9, 0, 3.4), CloseMm);
    }

    [Fact]
    public void FloatingPart_InBetween_SplitsThePathIntoPartsOfAtLeastX()
    {
        // Figure 14: clearance and creepage are d + D. A part below X counts as nothing (from memory, edition 2 clause 5.2.2.7), through air too.
        InsulatingSurface s = Surface();
        (double creepage, double clearance) = AcrossFloating(s, -2, 1);
        Assert.Equal(3 + 4, creepage, CloseMm);
        Assert.Equal(3 + 4, clearance, CloseMm);
        (creepage, clearance) = AcrossFloating(s, -3.6, 1);
        Assert.Equal(4, creepage, CloseMm);
        Assert.Equal(4, clearance, CloseMm);
    }

    private static InsulatingSurface Surface(IReadOnlyList<RibBrief>? ribs = null, IReadOnlyList<SlotBrief>? slots = null) =>
        new("floor", MaterialGroup.IIIa, 0, null, false) { Ribs = ribs ?? [], Slots = slots ?? [] };

    private static SlotBrief Groove(double atX, double width, double depth, SlotProfile profile = SlotProfile.Parallel) =>
        new("floor", [new(atX, -200), new(atX, 200)], width, depth, profile);

    private static RibBrief Rib(double atX, double thickness, double height, RibJoint joint) =>
        new("floor", [new(atX, -200), new(atX, 200)], height, thickness, joint);

    private static Solid Copper(string net, double fromX, double toX, SolidKind kind = SolidKind.Live) =>
        new(net, net, kind, false, 0, 0, SurfacePathsTests.Box(fromX, -50, toX, 50)) { OnSurface = "floor" };

    private static double Creepage(InsulatingSurface surface, double x = XMm) =>
        new SurfaceCreepage(surface, [Copper("a", -9, -5), Copper("b", 5, 9)], x).Between("a", "b")!.NominalMm;

    private static double Clearance(InsulatingSurface surface) => LeastGaps.Between(
        new SolidGroup([Copper("a", -9, -5)]), new SolidGroup([Copper("b", 5, 9)]), new ClearanceRibs([.. surface.RibBoxes()]))!.NominalMm;

    private static double FromRecess(double gap, double headHeight, double beyond)
    {
        SurfaceRegion recess = new("recess", SurfacePathsTests.Box(-5, -5, 5, 5), 2, RegionWall.Sunk);
        SurfacePaths paths = new(
            null, [recess], [[new(SurfacePathsTests.Box(-3, -3, 5 - gap, 3), headHeight)], [new(SurfacePathsTests.Box(5 + beyond, -3, 12, 3), 0)]], XMm);
        return paths.Shortest(0, 1)!.LengthMm;
    }

    private static (double CreepageMm, double ClearanceMm) AcrossFloating(InsulatingSurface surface, double fromX, double toX)
    {
        Solid[] solids = [Copper("a", -9, -5), Copper("b", 5, 9), Copper("c", fromX, toX, SolidKind.Floating)];
        SpacingMeter meter = new(new SpacingTask(solids, [surface], SpacingTableTests.Demands(), Turning.Anticlockwise));
        return (meter.Creepage(surface, XMm, "a", "b")!.NominalMm, meter.Clearance("a", "b", XMm).Sum(g => g.Counts ? g.Gap.NominalMm : 0));
    }
}
