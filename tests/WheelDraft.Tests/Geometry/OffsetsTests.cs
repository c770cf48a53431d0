using CsCheck;
using NetTopologySuite.Operation.Buffer;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class OffsetsTests
{
    private static readonly Gen<double> _distances = Gen.Frequency(
        (2, Gen.OneOf(0.05, 0.1, 0.25, 0.5, 1)),
        (1, Gen.Double[0.01, 1.5])).SelectMany(d => Gen.Bool.Select(out_ => out_ ? d : -d));

    [Fact]
    public void Of_RectangleOutward_HasRoundCorners()
    {
        OffsetResult grown = Offsets.Of(new(Contour.Rectangle(new(0, 0), new(5, 3))), 0.5);
        Assert.Empty(grown.Changes);
        Assert.Equal(8, grown.Faithful.Outer.Pieces.Count);
        Assert.Equal(15 + (16 * 0.5) + (Math.PI * 0.25), grown.Faithful.AreaMm2, 1e-12);
    }

    [Fact]
    public void Of_RectangleInward_IsRectangleWithSharpCorners()
    {
        OffsetResult shrunk = Offsets.Of(new(Contour.Rectangle(new(0, 0), new(5, 3))), -0.5);
        Assert.Equal(8, shrunk.Outlines[0].AreaMm2, 1e-12);
        Assert.Equal(4, shrunk.Outlines[0].Outer.Pieces.Count);
        Assert.Equal(4, shrunk.Changes.Count(c => c.Kind == OffsetChangeKind.CornerRounded));
        Assert.Throws<InvalidOperationException>(() => shrunk.Faithful);
    }

    [Fact]
    public void Of_Circles_StayWholeCirclesOfOnePiece()
    {
        Outline ring = new(Contour.Circle(new(1, 2), 5), [Contour.Circle(new(1, 2), 3)]);
        Outline grown = Offsets.Of(ring, 0.25).Faithful;
        Assert.Equal(5.25, Assert.IsType<Arc>(Assert.Single(grown.Outer.Pieces)).RadiusMm);
        Assert.Equal(2.75, Assert.IsType<Arc>(Assert.Single(grown.Holes[0].Pieces)).RadiusMm);
        Outline shrunk = Offsets.Of(ring, -0.25).Faithful;
        Assert.Equal(Math.PI * ((4.75 * 4.75) - (3.25 * 3.25)), shrunk.AreaMm2, 1e-12);
    }

    [Fact]
    public void Of_HoleSmallerThanTheDistance_IsReportedAsVanished()
    {
        Outline plate = new(Contour.Rectangle(new(-5, -5), new(5, 5)), [Contour.Circle(new(1, 1), 0.5), Contour.Circle(new(-2, 0), 1)]);
        OffsetResult grown = Offsets.Of(plate, 0.5 + 1e-6);
        OffsetChange lost = Assert.Single(grown.Changes);
        Assert.Equal((OffsetChangeKind.ContourVanished, 1), (lost.Kind, lost.Contour));
        Assert.Single(grown.Outlines[0].Holes);
    }

    [Fact]
    public void Of_ShapeSmallerThanTheDistance_Vanishes()
    {
        OffsetResult shrunk = Offsets.Of(new(Contour.Circle(Point.Origin, 0.5)), -0.5);
        Assert.Empty(shrunk.Outlines);
        Assert.Equal(OffsetChangeKind.ContourVanished, Assert.Single(shrunk.Changes).Kind);
    }

    [Fact]
    public void Of_Dumbbell_FallsApart()
    {
        Contour dumbbell = Contour.Polygon(
            new(-5, -2), new(-1, -2), new(-1, -0.3), new(1, -0.3), new(1, -2), new(5, -2),
            new(5, 2), new(1, 2), new(1, 0.3), new(-1, 0.3), new(-1, 2), new(-5, 2));
        OffsetResult shrunk = Offsets.Of(new(dumbbell), -0.5);
        Assert.Equal(2, shrunk.Outlines.Count);

        // Squares of 3, each with a bump towards the neck between arcs of radius 0.5 about the neck's corners at ±0.3.
        double bump = 2 * (0.15 - 0.06 - (0.125 * Math.Asin(0.6)));
        Assert.All(shrunk.Outlines, o => Assert.Equal(9 + bump, o.AreaMm2, 1e-12));
        Assert.Contains(shrunk.Changes, c => c.Kind == OffsetChangeKind.ContourSplit);
    }

    [Fact]
    public void Of_TwoHolesNearerThanTheDistance_Join()
    {
        Outline plate = new(Contour.Rectangle(new(-9, -9), new(9, 9)), [Contour.Circle(new(-2, 0), 1.5), Contour.Circle(new(2, 0), 1.5)]);
        OffsetResult shrunk = Offsets.Of(plate, -0.6);
        Assert.Single(shrunk.Outlines[0].Holes);
        Assert.Equal(2, shrunk.Changes.Count(c => c.Kind == OffsetChangeKind.ContoursJoined));
    }

    [Fact]
    public void Of_HolesThatJustTouch_StayTwo()
    {
        Outline plate = new(Contour.Circle(Point.Origin, 9), [Contour.Circle(new(-2, 0), 1.5), Contour.Circle(new(2, 0), 1.5)]);
        OffsetResult shrunk = Offsets.Of(plate, -0.5);
        Assert.Equal(2, shrunk.Outlines[0].Holes.Count);
        Assert.Empty(shrunk.Changes);
    }

    /// <summary>The middle of the hole's only piece is where the hole touches its outline.</summary>
    [Fact]
    public void Of_HoleThatJustTouchesTheOutside_StaysItsHole()
    {
        Outline disc = new(Contour.Circle(new(-1, 2), 4), [new Contour([new Arc(new(1.4, 2), 0.6, Math.PI, -Angles.TurnRad)])]);
        Outline shrunk = Assert.Single(Offsets.Of(disc, -0.5).Outlines);
        Assert.Equal(Math.PI * ((3.5 * 3.5) - (1.1 * 1.1)), shrunk.AreaMm2, 1e-9);
    }

    [Fact]
    public void Of_SlotOfExactlyTwiceTheDistance_CloseWithoutSliver()
    {
        Contour comb = Contour.Polygon(new(0, 0), new(7, 0), new(7, 5), new(4, 5), new(4, 1), new(3, 1), new(3, 5), new(0, 5));
        OffsetResult grown = Offsets.Of(new(comb), 0.5);
        Outline only = Assert.Single(grown.Outlines);
        Assert.Empty(only.Holes);
        Assert.Contains(grown.Changes, c => c.Kind == OffsetChangeKind.PieceVanished);

        // The plate without its slot, grown, less what stays open between the rounded corners above the slot.
        Assert.Equal(35 + 12 + (Math.PI / 4) - (0.5 - (Math.PI / 8)), only.AreaMm2, 1e-9);
    }

    [Fact]
    public void Of_FilletsOfExactlyTheDistance_ShrinkToCornersAndComeBack()
    {
        Contour window = Generators.Sector(10, 2, 0.2, 0.8).Filleted(0.2, Corners.Convex);
        Outline wheel = new(Contour.Circle(Point.Origin, 20), [window, Contour.Circle(Point.Origin, 3)]);
        Outline grown = Offsets.Of(wheel, 0.2).Faithful;
        Assert.Equal(4, grown.Holes.Single(h => h.Pieces.Count > 1).Pieces.Count);
        AssertSame(wheel, Offsets.Of(grown, -0.2).Outlines[0]);
    }

    /// <summary>Oracle: the definition, by the distance of points from the source: grown is what lies within the distance of
    /// the material, shrunk what lies at least the distance inside it.</summary>
    [Fact]
    public void Of_AnyOutline_HoldsExactlyThePointsOfItsDefinition() =>
        Gen.Select(Generators.Outlines, _distances, Generators.Points.Array[20]).Sample(
            (outline, distance, points) =>
            {
                OffsetResult result = Offsets.Of(outline, distance);
                foreach (Point p in points)
                {
                    double depth = outline.Contains(p) ? -Distances.ToEdge(p, outline).DistanceMm : Distances.ToEdge(p, outline).DistanceMm;
                    if (Math.Abs(depth - distance) > 1e-7)
                    {
                        Assert.Equal(depth < distance, result.Outlines.Any(o => o.Contains(p)));
                    }
                }
            },
            iter: Generators.FewSamples * 2);

    /// <summary>Oracle: the definition; every point of the new edge is the distance away from the old one.</summary>
    [Fact]
    public void Of_AnyOutline_EdgeKeepsTheDistance() =>
        Gen.Select(Generators.Outlines, _distances).Sample(
            (outline, distance) =>
            {
                foreach (Piece piece in Offsets.Of(outline, distance).Outlines.SelectMany(o => o.Pieces))
                {
                    for (int i = 0; i <= 4; i++)
                    {
                        Point on = piece.PointAt(i / 4.0);
                        Assert.Equal(Math.Abs(distance), Distances.ToEdge(on, outline).DistanceMm, 2e-7);
                        Assert.Equal(distance < 0, outline.Contains(on));
                    }
                }
            },
            iter: Generators.FewSamples * 2);

    /// <summary>Oracle: NetTopologySuite's buffer of the shape on chords; its area is off by at most edge length times chord
    /// error, of the source and of the buffer's own round joins, which leave out points nearer than a twentieth of the distance.</summary>
    [Fact]
    public void Of_AnyOutline_HasTheAreaOfNetTopologySuitesBuffer() =>
        Gen.Select(Generators.Outlines, _distances).Sample(
            (outline, distance) =>
            {
                const int quarter = 90;
                NetTopologySuite.Geometries.Geometry oracle = Flattened.Polygon(outline)
                    .Buffer(distance, new BufferParameters(quarter) { SimplifyFactor = 1e-6 });
                OffsetResult result = Offsets.Of(outline, distance);
                double chord = Flattened.ErrorMm(outline) + (Math.Abs(distance) * (1 - Math.Cos(Math.PI / 4 / quarter))) + (2e-4 * Math.Abs(distance));
                double length = result.Outlines.SelectMany(o => o.Pieces).Sum(p => p.Length);
                double holes = outline.Pieces.Sum(p => p.Length);
                double error = ((length + holes) * chord) + 1e-4;
                Assert.InRange(result.Outlines.Sum(o => o.AreaMm2), oracle.Area - error, oracle.Area + error);
            },
            iter: Generators.FewSamples);

    /// <summary>Oracle: the source itself; moved there and back it is the same where nothing changed.</summary>
    [Fact]
    public void Of_ThereAndBack_IsTheSource() =>
        Gen.Select(Generators.Outlines, Gen.OneOf(0.02, 0.05), Gen.Bool, Gen.OneOf(1, 1.5)).Sample(
            (outline, distance, grows, rounder) =>
            {
                Outline source;
                try
                {
                    source = outline.Filleted(distance * rounder, grows ? Corners.ReEntrant : Corners.Convex);
                }
                catch (FilletException)
                {
                    return;
                }

                if (Soundness.Faults(source).Count > 0)
                {
                    return;
                }

                OffsetResult there = Offsets.Of(source, grows ? distance : -distance);
                if (there.Changes.Count == 0)
                {
                    AssertSame(source, Offsets.Of(there.Faithful, grows ? -distance : distance).Outlines.Single());
                }
                else
                {
                    Assert.DoesNotContain(there.Changes, c => c.Kind == OffsetChangeKind.CornerRounded);
                }
            },
            iter: Generators.FewSamples * 2);

    /// <summary>Oracle: the same shape turned, mirrored or in another unit (metamorphic).</summary>
    [Fact]
    public void Of_Placed_IsPlacedResult() =>
        Gen.Select(Generators.Outlines, _distances, Generators.Placements).Sample(
            (outline, distance, placement) =>
            {
                OffsetResult plain = Offsets.Of(outline, distance);
                OffsetResult placed = Offsets.Of(outline.Placed(placement), distance * placement.Scale);
                double area = plain.Outlines.Sum(o => o.AreaMm2);
                Assert.Equal(area, placed.Outlines.Sum(o => o.AreaMm2) / (placement.Scale * placement.Scale), 1e-5);
            },
            iter: Generators.FewSamples);

    private static void AssertSame(Outline expected, Outline actual)
    {
        Assert.Equal(expected.Holes.Count, actual.Holes.Count);
        Assert.Equal(expected.Pieces.Count(), actual.Pieces.Count());
        Assert.Equal(expected.AreaMm2, actual.AreaMm2, 1e-7);
        foreach (Piece piece in expected.Pieces)
        {
            for (int i = 0; i <= 4; i++)
            {
                Assert.Equal(0, Distances.ToEdge(piece.PointAt(i / 4.0), actual).DistanceMm, 1e-8);
            }
        }
    }
}
