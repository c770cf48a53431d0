using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>Creepage from one surface to another that is nearer than X, 1.5 mm at pollution degree 3 (IEC 60664-1:2020, 6.8): lengths by hand.</summary>
public sealed class JoinedSurfacesTests
{
    private const double CloseMm = 1e-9;

    [Theory]
    [InlineData(1.4, 0, true)]
    [InlineData(1.6, 0, false)]
    [InlineData(1.6, 0.06, true)]
    public void Creepage_BetweenSurfacesSideBySide_CrossesAGapBelowXStraight(double gapMm, double faceMm, bool isOne)
    {
        InsulatingSurface left = new("left", MaterialGroup.II, 0, SurfacePathsTests.Box(-20, -20, 0, 20), false) { FaceMm = faceMm };
        InsulatingSurface right = new("right", MaterialGroup.IIIa, 0, SurfacePathsTests.Box(gapMm, -20, 20, 20), false) { FaceMm = faceMm };
        Solid[] pads = [Pad("L", -8, -6, 0, "left"), Pad("mist", 6, 8, 0, "right")];
        SpacingRow? row = Creepage(pads, left, right);
        Assert.Equal(isOne, row is not null);
        if (row is not null)
        {
            // Whatever it crosses, the worse of both materials counts.
            Assert.Equal((12.0, MaterialGroup.IIIa), (Math.Round(row.NominalMm, 9), row.Path!.Surface.Group));
        }
    }

    [Theory]
    [InlineData(4, true)]
    [InlineData(3, false)]
    public void Creepage_BetweenALedgeAndTheFloorBelow_CrossesWhatIsBelowXUnderItsBody(double bodyMm, bool isOne)
    {
        // Level 5: its underside is 1 or 2 mm above the floor.
        InsulatingSurface ledge = new("ledge", MaterialGroup.IIIa, 5, SurfacePathsTests.Box(-20, -20, 2, 20), false) { BodyMm = bodyMm };
        InsulatingSurface floor = new("floor", MaterialGroup.IIIa, 0, SurfacePathsTests.Box(0, -20, 20, 20), false) { BodyMm = 2 };
        Solid[] pads = [Pad("L", -8, -6, 5, "ledge"), Pad("mist", 6, 8, 0, "floor")];
        foreach (InsulatingSurface[] surfaces in new InsulatingSurface[][] { [ledge, floor], [floor, ledge] })
        {
            SpacingRow? row = Creepage(pads, surfaces);
            Assert.Equal(isOne, row is not null);
            Assert.Equal(12, row?.NominalMm ?? 12, CloseMm);
        }
    }

    [Fact]
    public void Creepage_OnACarrierOverAFloor_IsAsDrawnBetweenWhatTurnsAndSweptToWhatStands()
    {
        // Two lands opposite each other turn together and stay 20 mm apart, though each comes everywhere on the floor below. From what they sweep,
        // as far as their corners at √(12² + 1²), to a pad on the floor at 20 mm it is the difference.
        InsulatingSurface carrier = new("carrier", MaterialGroup.IIIa, 0, new Outline(Contour.Circle(Point.Origin, 15)), true) { BodyMm = 3 };
        InsulatingSurface floor = new("floor", MaterialGroup.IIIa, -4, null, false);
        Solid[] solids = [Land("L", 10, 12), Land("mist", -12, -10), Pad("N", 20, 22, -4, "floor")];
        IReadOnlyList<SpacingRow> rows = SpacingTable.Of(new(solids, [carrier, floor], SpacingTableTests.Demands(), Turning.Clockwise)).Rows;
        SpacingRow lands = rows.Single(r => r is { Kind: SpacingKind.Creepage, Nets: { First: "L", Second: "mist" } });
        Assert.Equal((20.0, "carrier"), (Math.Round(lands.NominalMm, 9), lands.Path!.Surface.Name));
        Assert.Equal(20 - Math.Sqrt(145), rows.Single(r => r is { Kind: SpacingKind.Creepage, Nets: { First: "L", Second: "N" } }).NominalMm, CloseMm);
    }

    private static SpacingRow? Creepage(Solid[] solids, params InsulatingSurface[] surfaces) =>
        SpacingTable.Of(new(solids, surfaces, SpacingTableTests.Demands(), Turning.Clockwise)).Rows.SingleOrDefault(r => r.Kind == SpacingKind.Creepage);

    private static Solid Pad(string net, double fromX, double toX, double levelMm, string surface) =>
        new(net + " pad", net, SolidKind.Live, false, levelMm, levelMm, SurfacePathsTests.Box(fromX, -2, toX, 2)) { OnSurface = surface };

    private static Solid Land(string net, double fromX, double toX) =>
        new(net + " land", net, SolidKind.Live, true, -0.5, 0, SurfacePathsTests.Box(fromX, -1, toX, 1)) { OnSurface = "carrier" };
}
