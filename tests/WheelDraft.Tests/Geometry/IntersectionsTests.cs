using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class IntersectionsTests
{
    [Fact]
    public void Of_CrossingSegments_GivesPointAndShares()
    {
        Meeting meeting = Intersections.Of(new Segment(new(0, 0), new(4, 0)), new Segment(new(1, -1), new(1, 3)));
        CommonPoint only = Assert.Single(meeting.Points);
        Assert.Equal(new CommonPoint(new(1, 0), 0.25, 0.25), only);
        Assert.Empty(meeting.Stretches);
    }

    [Fact]
    public void Of_CollinearSegments_GivesStretchWithBothShares()
    {
        Meeting meeting = Intersections.Of(new Segment(new(0, 0), new(4, 0)), new Segment(new(6, 0), new(1, 0)));
        CommonStretch only = Assert.Single(meeting.Stretches);
        Assert.Empty(meeting.Points);
        Assert.False(only.SameWay);
        Assert.Equal(new CommonPoint(new(1, 0), 0.25, 1), only.From);
        Assert.Equal(0.4, only.To.ShareOnSecond, 1e-15);
    }

    [Fact]
    public void Of_CollinearSegmentsEndToEnd_GivesOnePoint()
    {
        Meeting meeting = Intersections.Of(new Segment(new(0, 0), new(4, 0)), new Segment(new(4, 0), new(9, 0)));
        Assert.Empty(meeting.Stretches);
        Assert.Equal(new Point(4, 0), Assert.Single(meeting.Points).At);
    }

    [Fact]
    public void Of_TangentLine_GivesOnePoint()
    {
        Arc circle = new(new(0.1, 0.2), 3.3, 0.7, Angles.TurnRad);
        Segment tangent = new(new(-5, 0.2 + 3.3), new(5, 0.2 + 3.3));
        CommonPoint only = Assert.Single(Intersections.Of(tangent, circle).Points);
        Assert.Equal(0, only.At.DistanceTo(new(0.1, 3.5)), 1e-12);
    }

    [Fact]
    public void Of_TangentCircles_GivesOnePointOutsideAndInside()
    {
        Arc circle = new(Point.Origin, 3, 1, Angles.TurnRad);
        Assert.Single(Intersections.Of(circle, new Arc(new(5, 0), 2, 1, Angles.TurnRad)).Points);
        Assert.Single(Intersections.Of(circle, new Arc(new(1, 0), 2, 1, -Angles.TurnRad)).Points);
    }

    [Fact]
    public void Of_IdenticalCircles_GivesStretchesThatCoverTheTurn()
    {
        Arc first = new(Point.Origin, 3, 1, Angles.TurnRad);
        Meeting meeting = Intersections.Of(first, new Arc(Point.Origin, 3, 2, -Angles.TurnRad));
        Assert.Empty(meeting.Points);
        Assert.All(meeting.Stretches, s => Assert.False(s.SameWay));
        Assert.Equal(1, meeting.Stretches.Sum(s => s.To.ShareOnFirst - s.From.ShareOnFirst), 1e-12);
        Assert.Equal(1, meeting.Stretches.Sum(s => s.From.ShareOnSecond - s.To.ShareOnSecond), 1e-12);
    }

    [Fact]
    public void Of_CircleTouchedAtItsStart_GivesOnePoint()
    {
        Arc circle = new(Point.Origin, 2, 0, Angles.TurnRad);
        Segment touching = new(new(2, 0), new(5, 0));
        Assert.Single(Intersections.Of(circle, touching).Points);
        Assert.Single(Intersections.Of(touching, circle).Points);
    }

    // Found by sampling: an arc short of a whole turn by 1e-9 rad gave the touch at its seam twice, 1.5e-9 mm apart, but only as
    // the first of the two.
    [Theory]
    [InlineData(1e-9)]
    [InlineData(6e-8)]
    public void Of_TangentCirclesTouchingAtASeamWithAHairOfGap_GiveOnePointInEitherOrder(double gapRad)
    {
        Arc plain = new(new(0.5, 4), 1, -Angles.TurnRad, 5);
        Arc withSeam = new(new(0, 4), 1.5, 0, gapRad - Angles.TurnRad);
        Point touch = new(1.5, 4);
        Assert.Equal(0, Assert.Single(Intersections.Of(plain, withSeam).Points).At.DistanceTo(touch), Tolerances.JoinMm);
        Assert.Equal(0, Assert.Single(Intersections.Of(withSeam, plain).Points).At.DistanceTo(touch), Tolerances.JoinMm);
    }

    // Found by sampling: the seam of the circle, where the stretch begins, was given as a point besides.
    [Fact]
    public void Of_CircleAndCocircularArcFromItsSeam_GivesTheStretchAndNoPoint()
    {
        Arc circle = new(new(2, 4), 1.5, 1, -Angles.TurnRad);
        Arc part = new(new(2, 4), 1.5, 1, -4);
        Assert.Empty(Intersections.Of(circle, part).Points);
        Assert.Empty(Intersections.Of(part, circle).Points);
        Assert.Single(Intersections.Of(circle, part).Stretches);
    }

    // Found by sampling: where the line itself begins on the circle's seam, the crossing was given at both ends of the circle.
    [Fact]
    public void Of_LineFromTheSeamOfACircle_GivesItOnce()
    {
        Arc circle = new(new(-4, 0), 4, -3.6e-16, Angles.TurnRad);
        Segment line = new(new(0, -1.396e-13), new(-3.5, 2));
        Assert.Single(Intersections.Of(line, circle).Points);
        Assert.Single(Intersections.Of(circle, line).Points);
    }

    [Fact]
    public void Of_TangentCirclesTouchingInAGapThatIsOne_GiveBothEnds()
    {
        Arc plain = new(new(0.5, 4), 1, -Angles.TurnRad, 5);
        Arc gapped = new(new(0, 4), 1.5, 0, 1e-6 - Angles.TurnRad);
        Assert.Equal(2, Intersections.Of(plain, gapped).Points.Count);
        Assert.Equal(2, Intersections.Of(gapped, plain).Points.Count);
    }

    [Fact]
    public void Of_CocircularArcsAcrossZero_GivesTheirCommonArc()
    {
        Arc first = new(Point.Origin, 4, -1, 2);
        Arc second = new(Point.Origin, 4, 6, 3);
        CommonStretch only = Assert.Single(Intersections.Of(first, second).Stretches);
        Assert.Equal((6 - Angles.TurnRad + 1) / 2, only.From.ShareOnFirst, 1e-12);
        Assert.Equal((1 + Angles.TurnRad - 6) / 3, only.To.ShareOnSecond, 1e-12);
    }

    /// <summary>Oracle: the least distance, found another way: they meet exactly where it is within the tolerance.</summary>
    [Fact]
    public void Of_AnyPieces_MeetExactlyWhereDistanceIsWithinTolerance() =>
        Gen.Select(Generators.Pieces, Generators.Pieces).Sample(
            (a, b) =>
            {
                double distance = Distances.Between(a, b).DistanceMm;
                if (distance is < 0.9e-9 or > 1.1e-9)
                {
                    Assert.Equal(distance < 1e-9, !Intersections.Of(a, b).IsNone);
                }
            },
            iter: Generators.Samples);

    /// <summary>Oracle: the shares themselves; each common point is where both pieces say it is.</summary>
    [Fact]
    public void Of_AnyPieces_PointsLieOnBothAtTheirShares() =>
        Gen.Select(Generators.Pieces, Generators.Pieces).Sample(
            (a, b) =>
            {
                Meeting meeting = Intersections.Of(a, b);
                foreach (CommonPoint p in meeting.Points.Concat(meeting.Stretches.SelectMany(s => new[] { s.From, s.To })))
                {
                    Assert.Equal(0, p.At.DistanceTo(a.PointAt(p.ShareOnFirst)), 3e-9);
                    Assert.Equal(0, p.At.DistanceTo(b.PointAt(p.ShareOnSecond)), 3e-9);
                }

                foreach (CommonStretch s in meeting.Stretches)
                {
                    for (int i = 0; i <= 10; i++)
                    {
                        Point onFirst = a.PointAt(s.From.ShareOnFirst + ((s.To.ShareOnFirst - s.From.ShareOnFirst) * i / 10));
                        Point onSecond = b.PointAt(s.From.ShareOnSecond + ((s.To.ShareOnSecond - s.From.ShareOnSecond) * i / 10));
                        Assert.Equal(0, onFirst.DistanceTo(onSecond), 3e-9);
                    }
                }
            },
            iter: Generators.Samples);

    /// <summary>Oracle: brute force; every change of side along the first piece, against the second's whole line or circle
    /// within its reach, is one of the common points.</summary>
    [Fact]
    public void Of_AnyPieces_NoCrossingIsMissed() =>
        Gen.Select(Generators.Pieces, Generators.Pieces).Sample(
            (a, b) =>
            {
                Meeting meeting = Intersections.Of(a, b);
                const int steps = 400;
                for (int i = 0; i < steps; i++)
                {
                    double from = (double)i / steps;
                    double to = (i + 1.0) / steps;
                    if (Side(b, a.PointAt(from)) * Side(b, a.PointAt(to)) < -1e-12)
                    {
                        Point at = Bisected(a, b, from, to);
                        bool within = at.DistanceTo(b.NearestTo(at)) < 1e-10;
                        bool known = meeting.Points.Any(p => p.At.DistanceTo(at) < 1e-4)
                            || meeting.Stretches.Any(s => s.From.At.DistanceTo(at) < 1e-4 || s.To.At.DistanceTo(at) < 1e-4);
                        Assert.True(!within || known);
                    }
                }
            },
            iter: Generators.FewSamples);

    /// <summary>Oracle: itself with the pieces exchanged (consistency).</summary>
    [Fact]
    public void Of_Exchanged_GivesTheSamePlaces() =>
        Gen.Select(Generators.Pieces, Generators.Pieces).Sample(
            (a, b) =>
            {
                Meeting there = Intersections.Of(a, b);
                Meeting back = Intersections.Of(b, a);

                Assert.Equal(there.Points.Count, back.Points.Count);
                foreach (CommonPoint p in there.Points)
                {
                    Assert.Contains(back.Points, q => q.At.DistanceTo(p.At) < 1e-6);
                }

                foreach (CommonPoint q in back.Points)
                {
                    Assert.Contains(there.Points, p => p.At.DistanceTo(q.At) < 1e-6);
                }

                Assert.Equal(
                    there.Stretches.Sum(s => s.To.ShareOnFirst - s.From.ShareOnFirst) * a.Length,
                    back.Stretches.Sum(s => s.To.ShareOnFirst - s.From.ShareOnFirst) * b.Length,
                    1e-7);
            },
            iter: Generators.Samples);

    private static double Side(Piece piece, Point p) => piece switch
    {
        Segment s => s.Direction.Cross(p - s.Start),
        Arc arc => p.DistanceTo(arc.Centre) - arc.RadiusMm,
        _ => throw new NotSupportedException(),
    };

    private static Point Bisected(Piece a, Piece b, double from, double to)
    {
        double sign = Math.Sign(Side(b, a.PointAt(from)));
        for (int i = 0; i < 60; i++)
        {
            double middle = (from + to) / 2;
            (from, to) = Math.Sign(Side(b, a.PointAt(middle))) == sign ? (middle, to) : (from, middle);
        }

        return a.PointAt((from + to) / 2);
    }
}
