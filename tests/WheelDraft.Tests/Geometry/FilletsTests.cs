using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class FilletsTests
{
    // A circle that touches an arc just where it begins, by rounding a little before, takes nothing of it, and not all the turn up to there.
    [Theory]
    [InlineData(1e-12, -1e-11)]
    [InlineData(-1e-12, 1e-11)]
    [InlineData(-0.5, 5)]
    public void TakenFromStart_TouchARoundingBeforeTheArc_IsNotAWholeTurn(double beforeRad, double takenMm)
    {
        Arc arc = new(new(3, 4), 10, 0.7, 1.2);
        Assert.Equal(takenMm, MovedAside.TakenFromStart(arc, arc.Centre + Vector.Polar(6, 0.7 - beforeRad)), 1e-8);
        Assert.Equal(takenMm, MovedAside.TakenFromEnd(arc.Reversed(), arc.Centre + Vector.Polar(6, 0.7 - beforeRad)), 1e-8);
    }

    [Fact]
    public void Filleted_Rectangle_LosesFourCornersArea()
    {
        Contour rounded = Contour.Rectangle(new(0, 0), new(10, 6)).Filleted(1, Corners.All);
        Assert.Equal(8, rounded.Pieces.Count);
        Assert.Equal(60 - (4 - Math.PI), rounded.SignedAreaMm2, 1e-12);
        Assert.All(rounded.Pieces.OfType<Arc>(), a => Assert.Equal(1, a.RadiusMm, 1e-12));
    }

    [Fact]
    public void Filleted_RadiusIsHalfTheWidth_LeavesNoPieceOfLengthZero()
    {
        Contour slot = Contour.Rectangle(new(0, 0), new(10, 2)).Filleted(1, Corners.Convex);
        Assert.Equal(6, slot.Pieces.Count);
        Assert.Equal(16 + Math.PI, slot.SignedAreaMm2, 1e-12);
    }

    [Fact]
    public void Filleted_RadiusOverHalfTheWidth_IsRefusedWithNumbers()
    {
        FilletException refused = Assert.Throws<FilletException>(() => Contour.Rectangle(new(0, 0), new(10, 2)).Filleted(1.1, Corners.All));
        Assert.Equal(2.2, refused.NeededMm, 1e-12);
        Assert.Equal(2, refused.AvailableMm, 1e-12);
        Assert.Throws<FilletException>(() => Contour.Rectangle(new(0, 0), new(10, 2)).Filleted(2.1, Corners.All));
    }

    [Fact]
    public void Filleted_Window_RoundsItAsHoleByReEntrantCorners()
    {
        Outline sheet = new(Contour.Rectangle(new(-9, -9), new(9, 9)), [Generators.Sector(4, 2, 0.2, 0.8)]);
        Outline rounded = sheet.Filleted(0.3, Corners.ReEntrant);
        Assert.Equal(4, rounded.Outer.Pieces.Count);
        Assert.Equal(8, rounded.Holes[0].Pieces.Count);
        Assert.True(rounded.AreaMm2 > sheet.AreaMm2);
    }

    /// <summary>Closed form: a fillet of radius ρ between a radial line and a circle of radius R about its foot has its
    /// centre at radius R − ρ inside or R + ρ outside, asin(ρ/(R ∓ ρ)) from the line.</summary>
    [Fact]
    public void Filleted_SectorWindow_HasCentresOfClosedForm()
    {
        const double rho = 0.25;
        Contour rounded = Generators.Sector(4, 2, 0, 1).Filleted(rho, Corners.Convex);
        Arc[] fillets = [.. rounded.Pieces.OfType<Arc>().Where(a => a.RadiusMm < 1)];
        Assert.Equal(4, fillets.Length);
        double outer = Math.Asin(rho / (6 - rho));
        double inner = Math.Asin(rho / (4 + rho));
        Point[] centres = [Point.Polar(6 - rho, outer), Point.Polar(6 - rho, 1 - outer), Point.Polar(4 + rho, inner), Point.Polar(4 + rho, 1 - inner)];
        Assert.All(centres, c => Assert.Contains(fillets, f => f.Centre.DistanceTo(c) < 1e-12));
        Assert.All(rounded.Corners(), c => Assert.Fail($"A corner is left at {c.At}."));
    }

    [Fact]
    public void Filleted_ArcAndArc_IsTangentToBoth()
    {
        // A lens of two arcs of radius 5 about (∓3, 0): its tips lie at (0, ±4).
        Arc right = Arc.About(new(-3, 0), new(0, -4), new(0, 4), Turning.Anticlockwise);
        Arc left = Arc.About(new(3, 0), new(0, 4), new(0, -4), Turning.Anticlockwise);
        Contour lens = new Contour([right, left]).Filleted(0.5, Corners.All);

        // Centre where circles of radius 4.5 about (∓3, 0) meet.
        double height = Math.Sqrt((4.5 * 4.5) - 9);
        Assert.Contains(lens.Pieces.OfType<Arc>(), a => a.RadiusMm == 0.5 && a.Centre.DistanceTo(new(0, height)) < 1e-12);
        Assert.Empty(lens.Corners());
    }

    /// <summary>Straight back, the angle alone does not tell a void between two noses from a thorn: the curvatures do.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(2.2)]
    [InlineData(4.0)]
    public void Corners_CuspBetweenTwoRoundNoses_IsReEntrant(double turnRad)
    {
        // Two half discs of radius 1 side by side touch in the cusp at the origin, on a common base.
        Contour noses = new Contour([
            new Segment(new(-2, 0), new(-2, -1.5)), new Segment(new(-2, -1.5), new(2, -1.5)), new Segment(new(2, -1.5), new(2, 0)),
            new Arc(new(1, 0), 1, 0, Math.PI), new Arc(new(-1, 0), 1, 0, Math.PI)]).Placed(Placement.Turn(turnRad));
        Corner cusp = Assert.Single(noses.Corners(), c => c.At.DistanceTo(Point.Origin) < 1e-12);
        Assert.True(cusp.IsReEntrant);
        Assert.Equal(-Math.PI, cusp.TurnRad, 1e-9);
        Corner thorn = Assert.Single(noses.Reversed().Corners(), c => c.At.DistanceTo(Point.Origin) < 1e-12);
        Assert.Equal(Math.PI, thorn.TurnRad, 1e-9);

        // From the cusp straight down to the base.
        Assert.Equal(1.5, Assert.NotNull(Thickness.LeastWeb(new Outline(noses))).DistanceMm, 1e-12);
    }

    /// <summary>Oracle: what a fillet is: tangent joints, the wanted radius, at that distance from the old sides, and
    /// everything else where it was. Refused only where sides are too short or no circle touches them.</summary>
    [Fact]
    public void Filleted_AnyContour_IsTangentAndElsewhereUnchanged() =>
        Gen.Select(Generators.Contours, Gen.Double[0.01, 0.4]).Sample(
            (contour, radius) =>
            {
                Contour rounded;
                try
                {
                    rounded = contour.Filleted(radius, Corners.All);
                }
                catch (FilletException refused)
                {
                    Assert.True(refused.NeededMm > refused.AvailableMm);
                    return;
                }

                Assert.All(rounded.Corners(), c => Assert.True(Math.Abs(c.TurnRad) < 1e-5));
                Assert.Equal(contour.Corners().Count, rounded.Pieces.OfType<Arc>().Count(a => Math.Abs(a.RadiusMm - radius) < 1e-9));
                foreach (Piece piece in rounded.Pieces)
                {
                    bool isOld = contour.Pieces.Any(p => p.NearestTo(piece.PointAt(0.5)).DistanceTo(piece.PointAt(0.5)) < 1e-9);
                    Assert.True(isOld || (piece is Arc arc && Math.Abs(arc.RadiusMm - radius) < 1e-9));
                }
            },
            iter: Generators.Samples);

    /// <summary>Oracle: the same contour travelled the other way, turned or mirrored (metamorphic).</summary>
    [Fact]
    public void Filleted_ReversedOrPlaced_IsTheSameShape() =>
        Gen.Select(Generators.Contours, Generators.Placements).Sample(
            (contour, placement) =>
            {
                double? plain = Area(contour, 0.1, Corners.Convex);
                double? reversed = Area(contour.Reversed(), 0.1, Corners.ReEntrant);
                double? placed = Area(contour.Placed(placement).Travelled(contour.Turning), 0.1 * placement.Scale, Corners.Convex);
                if (plain is double area)
                {
                    Assert.Equal(-area, reversed!.Value, 1e-8);
                    Assert.Equal(area, placed!.Value / (placement.Scale * placement.Scale), 1e-7);
                }
            },
            iter: Generators.FewSamples);

    private static double? Area(Contour contour, double radius, Corners which)
    {
        try
        {
            return contour.Filleted(radius, which).SignedAreaMm2;
        }
        catch (FilletException)
        {
            return null;
        }
    }
}
