using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>What changes of a surface with walls must do to its paths; no outside oracle needed.</summary>
public sealed class WallPropertyTests
{
    private static readonly Gen<int> Seeds = Gen.Int[0, 1_000_000];

    [Fact]
    public void Shortest_WithOneMoreRib_IsNeverShorter() => Seeds.Sample(
        seed =>
        {
            RandomShapes random = new(seed);
            // Without links: with them a rib beside a conductor is a step by which the next one is mounted, and may shorten a path.
            List<SurfaceRegion> ribs = Ribs(random, 1 + random.Below(3), 1);
            double before = Length(ribs, link: 0);
            SurfaceRegion more = Ribs(random, 1, 1)[0];
            if (ribs.Exists(r => Distances.Between(r.Outline, more.Outline).DistanceMm < 1e-3))
            {
                // Ribs that meet are no test: down the wall of the one a path may come from the top of the other by a shorter way.
                return true;
            }

            ribs.Add(more);
            return Length(ribs, link: 0) >= before - 1e-9;
        },
        iter: 40);

    [Fact]
    public void Shortest_OverHigherRibs_IsNeverShorter() => Seeds.Sample(
        seed =>
        {
            List<SurfaceRegion> low = Ribs(new RandomShapes(seed), 3, 1), high = Ribs(new RandomShapes(seed), 3, 1.3);
            return Length(high) >= Length(low) - 1e-9;
        },
        iter: 40);

    [Fact]
    public void Shortest_WithTheWholeSurfaceTurned_IsTheSame() => Seeds.Sample(
        seed =>
        {
            List<SurfaceRegion> ribs = Ribs(new RandomShapes(seed), 3, 1);
            Placement turn = Placement.Turn(1 + (seed % 5)).Then(Placement.Translation(new Vector(3, -2)));
            return Math.Abs(Length(ribs, turn) - Length(ribs)) < 1e-9 * Length(ribs);
        },
        iter: 40);

    [Fact]
    public void Shortest_OfEverythingTwiceAsLarge_IsTwiceAsLong() => Seeds.Sample(
        seed =>
        {
            List<SurfaceRegion> ribs = Ribs(new RandomShapes(seed), 3, 1);
            // Up to what the two tolerances of a corner on an edge, which do not double, are worth.
            return Math.Abs(Length(ribs, Placement.Scaling(2), 2) - (2 * Length(ribs))) < 4 * SurfaceTolerances.SameMm;
        },
        iter: 40);

    [Fact]
    public void Shortest_OverWallsFromTheOtherEnd_IsTheSamePathBackwards() => Seeds.Sample(
        seed =>
        {
            List<SurfaceRegion> ribs = Ribs(new RandomShapes(seed), 3, 1);
            SurfacePath there = Paths(ribs, Placement.Identity, 1).Shortest(0, 1)!, back = Paths(ribs, Placement.Identity, 1).Shortest(1, 0)!;
            return Math.Abs(there.LengthMm - back.LengthMm) < 1e-9
                && Math.Abs(there.LengthMm - there.Legs.Sum(l => l.LengthMm)) < 1e-9
                && there.Legs.Zip(there.Legs.Skip(1)).All(l => l.First.Piece.End.DistanceTo(l.Second.Piece.Start) < 1e-6);
        },
        iter: 40);

    [Fact]
    public void Shortest_SlopedConductorBesideARib_LinksWhereTheWholeWayIsShortest()
    {
        // Brute force over where the link leaves the conductor, where it meets the wall (a straight link of at most X from the conductor's upper edge),
        // and where the upper edge is crossed; the rest is unfolded by hand. Steps of 0.004 mm: too long by less than 0.01 mm.
        const double x = 1.5, high = 4, up = 0.5;
        Point a = new(-1.1, -1), b = new(-1.9, 2), far = new(4, 6);
        double best = double.PositiveInfinity;
        for (int i = 0; i <= 700; i++)
        {
            Point p = a.Towards(b, i / 700.0);
            double gap = -0.5 - p.X;
            for (int k = 0; gap < x && k <= 1500; k++)
            {
                double y = -1 + (0.005 * k), aside = y - p.Y;
                double reach = Math.Sqrt((x * x) - (gap * gap)), away = Math.Sqrt((aside * aside) + ((high - up) * (high - up)));
                double onto = away <= reach ? Math.Sqrt((gap * gap) + (away * away)) : x + away - reach;
                best = Math.Min(best, onto + Math.Sqrt(Math.Pow(1 + high + 3.5, 2) + Math.Pow(far.Y - y, 2)));
            }
        }

        SurfacePaths paths = new(null, [UnfoldedWallsTests.Rib("rib", -0.5, 0.5, high)],
            [[new(new Outline(Contour.Polygon(a, b, new(-5, 0))), up)], [UnfoldedWallsTests.Dot(far)]], x);
        Assert.InRange(paths.Shortest(0, 1)!.LengthMm, best - 0.01, best + 1e-6);
    }

    [Fact]
    public void Shortest_RibFromAFileGoneRoundItsEnd_PassesItsThickness()
    {
        // By the same calls as a parameter file: 2 mm thick, its end at y = 2, too high to climb.
        InsulatingSurface surface = new("floor", MaterialGroup.IIIa, 0, null, false)
        {
            Ribs = [new("floor", [new(0, -200), new(0, 2)], 50, 2, RibJoint.Moulded)],
        };
        Solid[] pads = [.. new[] { -4.0, 4 }.Select(x => new Solid("pad", FormattableString.Invariant($"{x}"), SolidKind.Live, false, 0, 0, new Outline(Contour.Circle(new(x, -2), 1e-6))) { OnSurface = "floor" })];
        Assert.Equal(2 + (2 * 5), new SurfaceCreepage(surface, pads, 1.5).Between("-4", "4")!.NominalMm, 1e-5);
    }

    [Fact]
    public void Shortest_RoundTheEndOfAVGroove_IsNoLongerThanOverItsFlankAndEnd()
    {
        // 4 wide, 3 deep, upright end at y = 0: from the side edge 3 before the corner to the end edge 1 from it. Flank (a right angle) and the upright end
        // (atan(2·3/4)) unfolded: √(3² + 1² + 2·3·1·sin α), 3.81 where the plan goes round in 4.
        InsulatingSurface surface = new("floor", MaterialGroup.IIIa, 0, null, false)
        {
            Slots = [new("floor", [new(0, -200), new(0, 0)], 4, 3, SlotProfile.V)],
        };
        Solid Pad(string net, double x, double y) => new(net, net, SolidKind.Live, false, 0, 0, new Outline(Contour.Circle(new(x, y), 1e-6))) { OnSurface = "floor" };
        double over = Math.Sqrt(9 + 1 + (6 * Math.Sin(Math.Atan(1.5))));
        Assert.InRange(new SurfaceCreepage(surface, [Pad("a", -2.00001, -3), Pad("b", -1, 0.00001)], 1.5).Between("a", "b")!.NominalMm, Math.Sqrt(10) - 1e-4, over + 1e-4);
    }

    private static double Length(IReadOnlyList<SurfaceRegion> regions, Placement? placed = null, double scale = 1, double link = 0.8) =>
        Paths(regions, placed ?? Placement.Identity, scale, link).Shortest(0, 1)!.LengthMm;

    private static SurfacePaths Paths(IReadOnlyList<SurfaceRegion> regions, Placement placed, double scale, double link = 0.8) => new(
        null,
        [.. regions.Select(r => new SurfaceRegion(r.Name, r.Outline.Placed(placed), r.WallMm * scale, r.Wall))],
        [[new(SurfacePathsTests.Box(-9, -1, -7, 1).Placed(placed), 0.5 * scale)], [new(new Outline(Contour.Circle(new(8, 1), 1.5)).Placed(placed), scale)]],
        link * scale);

    /// <summary>Straight and bent ribs that may cross; bands from seeds that cannot be bent so are drawn again.</summary>
    private static List<SurfaceRegion> Ribs(RandomShapes random, int count, double higher)
    {
        List<SurfaceRegion> ribs = [];
        while (ribs.Count < count)
        {
            Point from = random.At(0, 6);
            Vector along = Vector.Polar(random.Between(4, 9), random.Between(0, 6.3));
            List<Point> path = random.Below(2) == 0 ? [from, from + along] : [from, from + along, from + along + along.Turned(random.Between(-1.4, 1.4))];
            ribs.Add(new SurfaceRegion("rib", Band.Along(path, random.Between(0.5, 1.5)), random.Between(0.3, 4) * higher, RegionWall.Raised));
        }

        return ribs;
    }
}
