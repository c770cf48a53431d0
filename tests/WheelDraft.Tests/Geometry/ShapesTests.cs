using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

/// <summary>Areas, centroids, bounds, placements and arcs by other ways.</summary>
public sealed class ShapesTests
{
    [Fact]
    public void SignedArea_Sector_IsClosedForm()
    {
        Contour sector = Generators.Sector(2, 1, 0.3, 1.2);
        Assert.Equal((9 - 4) * 1.2 / 2, sector.SignedAreaMm2, 1e-12);
        Assert.Equal(-(9 - 4) * 1.2 / 2, sector.Reversed().SignedAreaMm2, 1e-12);

        // Centroid of a ring sector: (2/3) sin(s/2)/(s/2) (R³ − r³)/(R² − r²) on its axis (from memory: tables of plane areas).
        double radius = 2 * Math.Sin(0.6) / (3 * 0.6) * (27 - 8) / (9 - 4);
        Assert.Equal(0, sector.Centroid.DistanceTo(Point.Polar(radius, 0.9)), 1e-12);
    }

    [Fact]
    public void Faces_AnyDirection_IsWhatItsAngleSays()
    {
        // Oracle: the angle itself, against the sweep. Directions all round, and close to both ends on either side.
        Generators.Arcs.Select(Gen.Double[-Math.PI, Math.PI], Gen.Int[-12, 0], Gen.Double[0.001, 1000]).Sample((arc, turn, power, far) =>
        {
            double aside = turn / Math.PI * Math.Pow(10, power);
            foreach (double rad in (double[])[turn, arc.StartRad + aside, arc.EndRad + aside, arc.StartRad, arc.EndRad])
            {
                Vector outward = Vector.Polar(far, rad);
                Assert.Equal(arc.AheadRad(outward) <= Math.Abs(arc.SweepRad), arc.Faces(outward));
            }
        });
    }

    [Fact]
    public void SignedArea_FlatArcOfLargeRadius_KeepsItsDigits()
    {
        // Sagitta 1 µm on a chord of 10 mm: area 2/3 chord × sagitta (parabola), off by (sagitta/chord)² only.
        Arc flat = Arc.FromBulge(new(0, 0), new(10, 0), 2e-7);
        Contour sliver = new([flat, new Segment(new(10, 0), new(0, 0))]);
        Assert.Equal(1, sliver.SignedAreaMm2 / (2.0 / 3 * 10 * 1e-6), 1e-6);
    }

    [Fact]
    public void About_Clockwise_RunsTheOtherWayRound()
    {
        // A quarter clockwise from the top to the right of a circle of radius 2, and the three quarters the other way: elementary geometry.
        Point centre = new(1, 1), top = new(1, 3), right = new(3, 1);
        Assert.Equal(Math.PI, Arc.About(centre, top, right, Turning.Clockwise).Length, 1e-12);
        Assert.Equal(3 * Math.PI, Arc.About(centre, top, right, Turning.Anticlockwise).Length, 1e-12);
        Assert.True(Arc.About(centre, top, right, Turning.Clockwise).PointAt(0.5).DistanceTo(centre + new Vector(Math.Sqrt(2), Math.Sqrt(2))) < 1e-12);
    }

    [Theory]
    [InlineData(0.0999)]
    [InlineData(0.06)]
    [InlineData(-0.09)]
    public void SignedArea_ArcBelowATenthOfARadian_IsTheClosedFormToElevenDigits(double sweep)
    {
        // r²(s − sin s)/2 (standard tables of plane areas), the sine by its series in 28 decimal digits.
        const double radius = 10;
        Arc arc = new(Point.Origin, radius, 0.3, sweep);
        decimal s = (decimal)sweep, term = s, sine = 0;
        for (int n = 1; n < 20; n += 2)
        {
            sine += term;
            term *= -s * s / ((n + 1) * (n + 2));
        }

        double expected = (double)((s - sine) / 2) * radius * radius;
        double area = new Contour([arc, new Segment(arc.End, arc.Start)]).SignedAreaMm2;
        Assert.Equal(1, area / expected, 3e-12);
    }

    [Fact]
    public void About_EndARoundingFromStart_IsWholeCircle()
    {
        Arc arc = Arc.About(Point.Origin, new(3, 0), new(3, 1e-15), Turning.Anticlockwise);
        Assert.Equal(Angles.TurnRad, arc.SweepRad);
        Assert.Equal(-Angles.TurnRad, Arc.About(Point.Origin, new(3, 1e-15), new(3, 0), Turning.Clockwise).SweepRad);
    }

    [Fact]
    public void Turn_AboutPoint_LeavesThePoint()
    {
        Point about = new(3, -7);
        Placement turn = Placement.Turn(1.234, about);
        Assert.Equal(0, turn.Of(about).DistanceTo(about), 1e-14);
        Assert.Equal(0, turn.Of(new Point(4, -7)).DistanceTo(about + Vector.Polar(1, 1.234)), 1e-14);
    }

    /// <summary>The text that a record makes by itself follows properties of its own type without end.</summary>
    [Fact]
    public void ToString_ValuesWithPropertiesOfTheirOwnType_Ends()
    {
        Assert.Equal("(1.5, -2)", new Point(1.5, -2).ToString());
        Assert.Equal("(1.5, -2)", new Vector(1.5, -2).ToString());
        Assert.Equal("from 0° through 360°", CircleArc.Full.ToString());
        Assert.Equal("1 mm from (0, 0) to (1, 0)", new Nearest(1, Point.Origin, new(1, 0)).ToString());
    }

    /// <summary>Oracle: one placement after the other.</summary>
    [Fact]
    public void Then_TwoPlacements_IsOneAfterTheOther() =>
        Gen.Select(Generators.Placements, Generators.Placements, Generators.Points, Generators.AngleRad).Sample(
            (a, b, p, angle) =>
            {
                Assert.Equal(0, a.Then(b).Of(p).DistanceTo(b.Of(a.Of(p))), 1e-10);
                Assert.Equal(0, Angles.Signed(a.Then(b).Of(angle) - b.Of(a.Of(angle))), 1e-12);
                Assert.Equal(0, (a.Of(Vector.Polar(1, angle)) - Vector.Polar(a.Scale, a.Of(angle))).Length, 1e-12);
            },
            iter: Generators.Samples);

    /// <summary>Oracle: NetTopologySuite on chords; each arc's area differs by at most its length times the chord error.</summary>
    [Fact]
    public void Area_AnyOutline_AgreesWithNetTopologySuite() =>
        Generators.Outlines.Sample(
            outline =>
            {
                NetTopologySuite.Geometries.Polygon oracle = Flattened.Polygon(outline);
                double error = outline.Pieces.Sum(p => p.Length * Flattened.ErrorMm(p)) + 1e-9;
                Assert.InRange(outline.AreaMm2, oracle.Area - error, oracle.Area + error);
                Point centroid = new(oracle.Centroid.X, oracle.Centroid.Y);
                Assert.True(outline.Centroid.DistanceTo(centroid) <= error / outline.AreaMm2 * 20);
                Assert.Equal(oracle.EnvelopeInternal.MinX, outline.Bounds.MinX, Flattened.ErrorMm(outline) + 1e-9);
                Assert.Equal(oracle.EnvelopeInternal.MaxY, outline.Bounds.MaxY, Flattened.ErrorMm(outline) + 1e-9);
                Assert.True(outline.Bounds.Grown(1e-12).Contains(outline.Outer.Pieces[0].PointAt(0.3)));
            },
            iter: Generators.FewSamples);

    /// <summary>Oracle: the same shape before (metamorphic): turned, mirrored and in another unit.</summary>
    [Fact]
    public void Placed_AnyOutline_ScalesAreaAndMovesCentroid() =>
        Gen.Select(Generators.Outlines, Generators.Placements).Sample(
            (outline, placement) =>
            {
                Outline placed = outline.Placed(placement);
                double scale = placement.Scale;
                Assert.Equal(1, placed.AreaMm2 / (outline.AreaMm2 * scale * scale), 1e-9);
                Assert.Equal(0, placed.Centroid.DistanceTo(placement.Of(outline.Centroid)), 1e-8 * scale);
            },
            iter: Generators.FewSamples);

    /// <summary>Oracle: points by share on the whole piece.</summary>
    [Fact]
    public void Part_AnyPiece_HasTheSamePoints() =>
        Gen.Select(Generators.Pieces, Gen.Double[0, 0.5], Gen.Double[0.51, 1], Gen.Double[0, 1]).Sample(
            (piece, from, to, share) =>
            {
                Piece part = piece.Part(from, to);
                Assert.Equal(0, part.PointAt(share).DistanceTo(piece.PointAt(from + ((to - from) * share))), 1e-12);
                Assert.Equal((to - from) * piece.Length, part.Length, 1e-12);
                Assert.Equal(0, piece.Reversed().PointAt(share).DistanceTo(piece.PointAt(1 - share)), 1e-12);
                Point at = piece.PointAt(share);
                Assert.Equal(0, piece.PointAt(piece.ShareNearest(at)).DistanceTo(at), 1e-12);
            },
            iter: Generators.Samples);
}
