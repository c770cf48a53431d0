using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class ContainmentTests
{
    private static readonly Outline _ring = new(Contour.Circle(Point.Origin, 5), [Contour.Circle(Point.Origin, 3)]);

    [Theory]
    [InlineData(0, 0, Whereabouts.Outside)]
    [InlineData(4, 0, Whereabouts.Inside)]
    [InlineData(0, -4, Whereabouts.Inside)]
    [InlineData(3, 0, Whereabouts.OnEdge)]
    [InlineData(0, 5, Whereabouts.OnEdge)]
    [InlineData(-5, 0, Whereabouts.OnEdge)]
    [InlineData(6, 0, Whereabouts.Outside)]
    [InlineData(-6, 0, Whereabouts.Outside)]
    [InlineData(-5, 5, Whereabouts.Outside)]
    public void Locate_InRing_KnowsMaterialFromHole(double x, double y, Whereabouts expected)
    {
        Assert.Equal(expected, _ring.Locate(new(x, y)));
        Assert.Equal(expected != Whereabouts.Outside, _ring.Contains(new(x, y)));
    }

    /// <summary>The ray to the right passes exactly through corners and along an edge.</summary>
    [Fact]
    public void Winding_RayThroughCorners_CountsOnce()
    {
        Contour diamond = Contour.Polygon(new(2, 0), new(0, 2), new(-2, 0), new(0, -2));
        Assert.Equal(1, diamond.Winding(Point.Origin));
        Assert.Equal(-1, diamond.Reversed().Winding(Point.Origin));
        Assert.Equal(0, diamond.Winding(new(-3, 0)));
        Contour step = Contour.Polygon(new(0, 0), new(4, 0), new(4, 2), new(2, 2), new(2, 1), new(0, 1));
        Assert.Equal(0, step.Winding(new(-1, 1)));
        Assert.Equal(0, step.Winding(new(1, 2)));
        Assert.Equal(1, step.Winding(new(1, 0.5)));
    }

    /// <summary>Oracle: NetTopologySuite on chords; points nearer to the edge than the chord error are left out.</summary>
    [Fact]
    public void Contains_AnyOutline_AgreesWithNetTopologySuite() =>
        Gen.Select(Generators.Outlines, Generators.Points).Sample(
            (outline, p) =>
            {
                if (Distances.ToEdge(p, outline).DistanceMm > Flattened.ErrorMm(outline) + 1e-9)
                {
                    bool oracle = Flattened.Polygon(outline).Contains(Flattened.Of(p));
                    Assert.Equal(oracle, outline.Contains(p));
                    int byContours = outline.Contours.Sum(c => c.Winding(p));
                    Assert.Equal(oracle ? 1 : 0, byContours);
                    Assert.Equal(oracle ? 0 : Distances.ToEdge(p, outline).DistanceMm, Distances.Between(p, outline).DistanceMm);
                }
            },
            iter: Generators.Samples);

    /// <summary>Oracle: the pieces themselves; their points are on the edge, and a step to the left of travel is inside.</summary>
    [Fact]
    public void Locate_PointsOfPieces_AreOnEdgeWithMaterialOnTheLeft() =>
        Gen.Select(Generators.Outlines, Gen.Double[0.05, 0.95]).Sample(
            (outline, share) =>
            {
                foreach (Piece piece in outline.Pieces)
                {
                    Point on = piece.PointAt(share);
                    Assert.Equal(Whereabouts.OnEdge, outline.Locate(on));
                    Vector left = piece.TangentAt(share).Left * 1e-7;
                    if (Distances.ToEdge(on + left, outline).DistanceMm > 0.99e-7 && Distances.ToEdge(on - left, outline).DistanceMm > 0.99e-7)
                    {
                        Assert.Equal(Whereabouts.Inside, outline.Locate(on + left));
                        Assert.Equal(Whereabouts.Outside, outline.Locate(on - left));
                    }
                }
            },
            iter: Generators.FewSamples);
}
