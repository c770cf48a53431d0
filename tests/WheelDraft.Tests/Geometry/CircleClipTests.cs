using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class CircleClipTests
{
    // Oracle: points of the plane, asked of the shape and of the circle.
    [Fact]
    public void Inside_RandomRings_HoldsThePointsOfBoth()
    {
        Gen<Outline> rings = Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[0.6, 3], Gen.Double[0.1, 0.9], Gen.Int[3, 7])
            .Select((x, y, r, share, corners) =>
            {
                Point[] star = [.. Enumerable.Range(0, 2 * corners).Select(i => new Point(x, y) + Vector.Polar(i % 2 == 0 ? r : r * 0.55, (i * Math.PI / corners) + x))];
                return new Outline(Contour.Polygon(star), [Contour.Circle(new(x, y), r * share * 0.45)]);
            });
        Gen.Select(rings, Gen.Double[0.4, 2.5]).Sample(
            (ring, radius) =>
            {
                IReadOnlyList<Outline> clipped = CircleClip.Inside(ring, Point.Origin, radius);
                for (double x = -radius; x <= radius; x += radius / 9.3)
                {
                    for (double y = -radius; y <= radius; y += radius / 9.3)
                    {
                        Point p = new(x, y);
                        bool isClear = Distances.ToEdge(p, ring).DistanceMm > 1e-6 && Math.Abs(p.DistanceTo(Point.Origin) - radius) > 1e-6;
                        bool expected = p.DistanceTo(Point.Origin) < radius && ring.Contains(p);
                        Assert.True(!isClear || clipped.Any(c => c.Contains(p)) == expected, $"{p}");
                    }
                }
            },
            iter: 400);
    }

    [Theory]
    [InlineData(5, 0.5, 1)]
    [InlineData(0.5, 5, 1)]
    [InlineData(3, 2, 0)]
    public void Inside_CirclesAboutOneAnother_IsTheSmallerOrNothing(double ownMm, double clipMm, int shapes)
    {
        Outline own = shapes == 0 ? new(Contour.Circle(new(9, 0), ownMm)) : new(Contour.Circle(Point.Origin, ownMm));
        IReadOnlyList<Outline> clipped = CircleClip.Inside(own, Point.Origin, clipMm);
        Assert.Equal(shapes, clipped.Count);
        Assert.All(clipped, c => Assert.Equal(Math.PI * Math.Min(ownMm, clipMm) * Math.Min(ownMm, clipMm), c.AreaMm2, 1e-9));
    }

    [Fact]
    public void Inside_EdgesThatTouchTheCircle_KeepTheirArea()
    {
        // A square about the circle, and a circle that touches it from within.
        Assert.Equal(Math.PI, Assert.Single(CircleClip.Inside(new Outline(Contour.Rectangle(new(-1, -1), new(1, 1))), Point.Origin, 1)).AreaMm2, 1e-6);
        Assert.Equal(Math.PI / 4, Assert.Single(CircleClip.Inside(new Outline(Contour.Circle(new(0.5, 0), 0.5)), Point.Origin, 1)).AreaMm2, 1e-6);
    }
}
