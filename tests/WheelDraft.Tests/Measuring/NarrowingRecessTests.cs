using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>Recesses that are wider than the link in most places and narrower in some: there they are bridged (IEC 60664-1, clause on measuring,
/// assumption 2: a recess is bridged by a link of the length X in the worst place).</summary>
public sealed class NarrowingRecessTests
{
    private const double LinkMm = 1;

    // It was 37.82, down into the recess and up again: nothing led to where the ribs are near enough to be bridged.
    [Fact]
    public void Shortest_RibsThatCloseInOnEachOther_GoesToWhereTheyAreNearEnough() => Assert.True(OverRibs(0.3, 6, 12).Length < OverRibs(0.3, 6, 12).ByHand + 1e-6);

    // A way by hand is longer than none that is found: both ribs climbed, along them to where a link reaches across, and back.
    [Fact]
    public void Shortest_RibsThatCloseInOnEachOther_IsNeverLongerThanByHand()
    {
        RandomShapes random = new(19);
        int bridged = 0;
        for (int i = 0; i < 400; i++)
        {
            (double slope, double height, double at) = (random.Between(0.02, 1.2), random.Between(1, 12), random.Between(0, 30));
            (double length, double byHand) = OverRibs(slope, height, at);
            Assert.True(length < byHand + 1e-6, FormattableString.Invariant($"slope {slope}, {height} mm high, {at} mm away: {length} and by hand {byHand}"));
            bridged += length > byHand - LinkMm ? 1 : 0;
        }

        Assert.True(bridged > 100);
    }

    // It was 18.68, down the wall and to the conductor without a link.
    [Fact]
    public void Shortest_FromTheInnerCornerOfARibDownToAConductor_IsLinkedAsFromAnywhereElse()
    {
        SurfaceRegion rib = new("rib", Polygon((-2, -2), (20, -2), (20, 0), (0, 0), (0, 20), (-2, 20)), 6, RegionWall.Raised);
        double reach = Math.Sqrt((LinkMm * LinkMm) - (0.3 * 0.3)), onWall = Math.Sqrt((3 * 3) + (6 * 6)), beyond = Math.Sqrt((11 * 11) + (4 * 4));
        SurfacePath path = Path(null, [rib], Polygon((3, 0.3), (4, 0.3), (4, 1.3), (3, 1.3)), Polygon((-6, 4), (-5, 4), (-5, 5), (-6, 5)));
        Assert.Equal(LinkMm + onWall - reach + beyond, path.LengthMm, 1e-4);
        Assert.Equal(path.LengthMm, path.Legs.Sum(l => l.LengthMm), 1e-9);
    }

    // It was 49.7: a slot as narrow is crossed straight, a slit in the outline was gone round.
    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void Shortest_SlitInTheOutlineNarrowerThanTheLink_IsCrossedStraight(double ribMm)
    {
        SurfacePath path = Path(Slit(0.5), Rib(ribMm), Left, Right);
        Assert.Equal(8, path.LengthMm, 1e-9);
        Crossing crossing = Assert.Single(Assert.Single(path.Legs).Crossed);
        Assert.True(crossing is { Region: SurfaceRegion.OutlineName, Bridged: true, AddedMm: 0 });
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void Shortest_SlitInTheOutlineAsWideAsTheLink_IsGoneRound(double ribMm) =>
        Assert.Equal(LinkMm + (2 * new Point(-4, -9).DistanceTo(new Point(-LinkMm / 2, 15))), Path(Slit(LinkMm), Rib(ribMm), Left, Right).LengthMm, 1e-9);

    // It was 49.9, round the end of the notch.
    [Fact]
    public void Shortest_NotchInTheOutlineThatCloses_IsCrossedWhereItIsNearlyAsWideAsTheLink()
    {
        Outline notched = Polygon((-20, -20), (-3, -20), (0, 15), (3, -20), (20, -20), (20, 20), (-20, 20));
        Point edge = new(-LinkMm / 2, 15 - (35 * LinkMm / 6));
        double byHand = LinkMm + (2 * new Point(-4, -9).DistanceTo(edge)), length = Path(notched, [], Left, Right).LengthMm;
        Assert.True(length < byHand + 1e-9 && length > byHand - LinkMm);
    }

    // Drawn 1.6 mm wide it is gone round; with both faces 0.1 mm out it is narrower than X = 1.5 mm.
    [Fact]
    public void Creepage_SlitThatItsTolerancesCloseBelowX_IsCrossedAtItsWorstOnly()
    {
        Solid Part(string net, Outline plan) => new(net, net, SolidKind.Live, false, 0, 1, plan) { OnSurface = "floor" };
        InsulatingSurface floor = new("floor", MaterialGroup.IIIa, 0, Slit(1.6), false) { FaceMm = 0.1 };
        SpacingTask task = new([Part("A", Left), Part("B", Right)], [floor], SpacingTableTests.Demands(), Turning.Clockwise);
        CreepagePath path = Assert.Single(SpacingTable.Of(task).Rows, r => r.Kind == SpacingKind.Creepage).Path!;
        Assert.Equal(8, path.WorstMm, 1e-9);
        Assert.True(path.NominalMm > 49);
    }

    private static Outline Left => Polygon((-5, -10), (-4, -10), (-4, -9), (-5, -9));

    private static Outline Right => Polygon((4, -10), (5, -10), (5, -9), (4, -9));

    private static Outline Slit(double widthMm) =>
        Polygon((-20, -20), (-widthMm / 2, -20), (-widthMm / 2, 15), (widthMm / 2, 15), (widthMm / 2, -20), (20, -20), (20, 20), (-20, 20));

    private static SurfaceRegion[] Rib(double heightMm) =>
        heightMm == 0 ? [] : [new("rib", Polygon((-12, -10), (-11, -10), (-11, -8), (-12, -8)), heightMm, RegionWall.Raised)];

    private static Outline Polygon(params (double X, double Y)[] corners) => new(Contour.Polygon([.. corners.Select(c => new Point(c.X, c.Y))]));

    private static SurfacePath Path(Outline? surface, IReadOnlyList<SurfaceRegion> regions, Outline a, Outline b) =>
        new SurfacePaths(surface, regions, [[new Footprint(a, 0)], [new Footprint(b, 0)]], LinkMm).Shortest(0, 1)!;

    /// <summary>Two long ribs, 2 mm thick: one with its inner wall on the x axis, one that comes within half a link of it at the origin and slopes away.</summary>
    /// <returns>The path between a conductor 5 mm below the one and one 5 mm above the other, and the best of many by hand.</returns>
    private static (double Length, double ByHand) OverRibs(double slope, double heightMm, double atMm)
    {
        const double thick = 2, near = LinkMm / 2, far = 200;
        Vector along = new Vector(1, slope).Unit();
        Point apex = new(0, near);
        Point[] inner = [new(-far, near + (far * slope)), apex, apex + (along * far)];
        SurfaceRegion lower = new("lower", Polygon((-far, -thick), (far, -thick), (far, 0), (-far, 0)), heightMm, RegionWall.Raised);
        SurfaceRegion upper = new("upper", Polygon((inner[0].X, inner[0].Y), (inner[1].X, inner[1].Y), (inner[2].X, inner[2].Y), (inner[2].X, inner[2].Y + (thick * 2)), (0, near + (thick * 2)), (inner[0].X, inner[0].Y + (thick * 2))), heightMm, RegionWall.Raised);
        double wide = thick * 2 * along.X;
        Point from = new(atMm, -thick - 3), to = apex + (along * atMm) + (along.Left * (wide + 3));
        Outline a = Polygon((from.X, from.Y - 1), (from.X + 0.01, from.Y - 1), (from.X, from.Y)), b = new(Contour.Polygon(to, to + (along.Left + (along * 0.01)), to + along.Left));
        double best = double.PositiveInfinity;
        for (double on = 0; on < 8; on += 0.005)
        {
            // The link from where the lower rib is left to the nearest place of the upper one's wall.
            Point p = new(on, 0);
            double share = Math.Max(0, (p - apex).Dot(along)), leaves = share + ((atMm - share) * wide / (wide + 3 + heightMm));
            Point q = apex + (along * share);
            if (p.DistanceTo(q) <= LinkMm && leaves > thick * 2 * along.Y)
            {
                best = Math.Min(best, Over(from.X - p.X, thick + 3 + heightMm) + p.DistanceTo(q) + Over(atMm - share, wide + 3 + heightMm));
            }
        }

        return (Path(null, [lower, upper], a, b).LengthMm, best);

        static double Over(double alongMm, double acrossMm) => Math.Sqrt((alongMm * alongMm) + (acrossMm * acrossMm));
    }
}
