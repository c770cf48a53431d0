using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class DistancesTests
{
    private static readonly Arc _upperHalf = new(Point.Origin, 2, 0, Math.PI);

    [Fact]
    public void Between_PointAndSegment_IsPerpendicularOrEnd()
    {
        Segment s = new(new(0, 0), new(4, 0));
        Assert.Equal(3, Distances.Between(new Point(1, 3), s).DistanceMm);
        Assert.Equal(5, Distances.Between(new Point(7, 4), s).DistanceMm);
        Assert.Equal(new Point(4, 0), Distances.Between(new Point(7, 4), s).OnSecond);
    }

    [Fact]
    public void Between_PointAndArc_IsRadialOrEnd()
    {
        Assert.Equal(1, Distances.Between(new Point(0, 3), _upperHalf).DistanceMm, 1e-15);
        Assert.Equal(1, Distances.Between(new Point(0, 1), _upperHalf).DistanceMm, 1e-15);
        Assert.Equal(Math.Sqrt(5), Distances.Between(new Point(0, -1), _upperHalf).DistanceMm, 1e-15);
        Assert.Equal(2, Distances.Between(Point.Origin, _upperHalf).DistanceMm, 1e-15);
    }

    [Fact]
    public void Between_ConcentricArcs_IsDifferenceOfRadiiWhereTheyFace()
    {
        Arc outer = new(Point.Origin, 5, -0.5, 1);
        Arc inner = new(Point.Origin, 3, 0.25, 4);
        Assert.Equal(2, Distances.Between(outer, inner).DistanceMm, 1e-14);

        // Apart by 0.5 rad: law of cosines between the ends (closed form).
        Arc away = new(Point.Origin, 3, 1, 1);
        Assert.Equal(Math.Sqrt(25 + 9 - (30 * Math.Cos(0.5))), Distances.Between(outer, away).DistanceMm, 1e-13);
    }

    [Fact]
    public void Between_TangentLineAndArc_IsZero()
    {
        Segment touching = new(new(-3, 2), new(3, 2));
        Nearest nearest = Distances.Between(touching, _upperHalf);
        Assert.Equal(0, nearest.DistanceMm, 1e-15);
        Assert.Equal(0, nearest.OnFirst.DistanceTo(new(0, 2)), 1e-7);
    }

    [Fact]
    public void Between_SegmentInsideCircle_IsFromItsEnd()
    {
        Arc circle = new(Point.Origin, 5, 0, Angles.TurnRad);
        Assert.Equal(1, Distances.Between(new Segment(new(-3, 0), new(4, 0)), circle).DistanceMm, 1e-14);
    }

    /// <summary>Oracle: NetTopologySuite on chords, chord error of both pieces counted.</summary>
    [Fact]
    public void Between_AnyPieces_AgreesWithNetTopologySuite() =>
        Gen.Select(Generators.Pieces, Generators.Pieces).Sample(
            (a, b) =>
            {
                Nearest nearest = Distances.Between(a, b);
                double oracle = Flattened.Line(a).Distance(Flattened.Line(b));
                double error = Flattened.ErrorMm(a) + Flattened.ErrorMm(b) + 1e-9;
                Assert.InRange(nearest.DistanceMm, oracle - error, oracle + error);
                Assert.Equal(nearest.DistanceMm, nearest.OnFirst.DistanceTo(nearest.OnSecond), 1e-12);
                Assert.Equal(0, nearest.OnFirst.DistanceTo(a.NearestTo(nearest.OnFirst)), 1e-7);
                Assert.Equal(0, nearest.OnSecond.DistanceTo(b.NearestTo(nearest.OnSecond)), 1e-7);
            },
            iter: Generators.Samples);

    /// <summary>Oracle: itself with the pieces exchanged, reversed and placed elsewhere (consistency).</summary>
    [Fact]
    public void Between_ExchangedReversedOrPlaced_IsTheSame() =>
        Gen.Select(Generators.Pieces, Generators.Pieces, Generators.Placements).Sample(
            (a, b, placement) =>
            {
                double distance = Distances.Between(a, b).DistanceMm;
                Assert.Equal(distance, Distances.Between(b, a).DistanceMm, 1e-9);
                Assert.Equal(distance, Distances.Between(a.Reversed(), b).DistanceMm, 1e-9);
                Assert.Equal(distance, Distances.Between(a.Placed(placement), b.Placed(placement)).DistanceMm / placement.Scale, 1e-8);
            },
            iter: Generators.Samples);

    /// <summary>Oracle: brute force; no sampled point of the first piece comes nearer than reported.</summary>
    [Fact]
    public void Between_AnyPieces_NoSampledPointIsNearer() =>
        Gen.Select(Generators.Pieces, Generators.Pieces).Sample(
            (a, b) =>
            {
                double distance = Distances.Between(a, b).DistanceMm;
                for (int i = 0; i <= 60; i++)
                {
                    Assert.True(Distances.Between(a.PointAt(i / 60.0), b).DistanceMm >= distance - 1e-12);
                }
            },
            iter: Generators.Samples);
}
