using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class OutlineDistancesTests
{
    private static readonly Outline _ring = new(Contour.Circle(Point.Origin, 5), [Contour.Circle(Point.Origin, 3)]);

    [Fact]
    public void Between_ShapeInHole_IsGapToTheHolesEdge() =>
        Assert.Equal(1.5, Distances.Between(_ring, new Outline(Contour.Circle(new(0.5, 0), 1))).DistanceMm, 1e-13);

    [Fact]
    public void Between_ShapeInMaterial_IsZero()
    {
        Outline inside = new(Contour.Circle(new(4, 0), 0.5));
        Assert.Equal(0, Distances.Between(_ring, inside).DistanceMm);
        Nearest swapped = Distances.Between(inside, _ring);
        Assert.Equal(0, swapped.DistanceMm);
        Assert.True(_ring.Contains(swapped.OnFirst));
    }

    [Fact]
    public void Radii_OfRingAndOfDisc_KnowTheHole()
    {
        RadialInterval ring = Distances.Radii(_ring, Point.Origin);
        Assert.Equal((3, 5), (ring.LeastMm, ring.GreatestMm));
        RadialInterval disc = Distances.Radii(new Outline(Contour.Circle(new(1, 0), 2)), Point.Origin);
        Assert.Equal((0, 3), (disc.LeastMm, disc.GreatestMm));
        Assert.Equal(0, disc.AtGreatest.DistanceTo(new(3, 0)), 1e-15);
        Assert.Equal(2, disc.GapMm(new RadialInterval(5, 6, default, default)));
    }

    /// <summary>Oracle: NetTopologySuite on chords, chord error of both shapes counted.</summary>
    [Fact]
    public void Between_AnyOutlines_AgreesWithNetTopologySuite() =>
        Gen.Select(Generators.Outlines, Generators.Outlines, Generators.Points).Sample(
            (a, b, by) =>
            {
                b = b.Placed(Placement.Translation((by - Point.Origin) * 2));
                double error = Flattened.ErrorMm(a) + Flattened.ErrorMm(b) + 1e-9;
                double oracle = Flattened.Polygon(a).Distance(Flattened.Polygon(b));
                Nearest nearest = Distances.Between(a, b);
                Assert.InRange(nearest.DistanceMm, oracle - error, oracle + error);
                Assert.True(a.Locate(nearest.OnFirst, 1e-7) != Whereabouts.Outside);
                Assert.True(b.Locate(nearest.OnSecond, 1e-7) != Whereabouts.Outside);
            },
            iter: Generators.FewSamples);

    /// <summary>Oracle: brute force over all pairs of pieces, without the tree.</summary>
    [Fact]
    public void Between_EdgesApart_IsTheLeastOverAllPairs() =>
        Gen.Select(Generators.Outlines, Generators.Outlines, Generators.Points).Sample(
            (a, b, by) =>
            {
                b = b.Placed(Placement.Translation((by - Point.Origin) * 2));
                double distance = Distances.Between(a, b).DistanceMm;
                double pairs = a.Pieces.SelectMany(p => b.Pieces, (p, q) => Distances.Between(p, q).DistanceMm).Min();
                Assert.True(distance == 0 || Math.Abs(distance - pairs) < 1e-12);
                Assert.True(distance <= pairs + 1e-12);
            },
            iter: Generators.FewSamples);

    /// <summary>Oracle: brute force; sampled radii lie in the interval, and the interval's ends are points of the shape.</summary>
    [Fact]
    public void Radii_AnyOutline_HoldAllPoints() =>
        Gen.Select(Generators.Outlines, Generators.Points).Sample(
            (outline, about) =>
            {
                RadialInterval radii = Distances.Radii(outline, about);
                Assert.Equal(radii.LeastMm, about.DistanceTo(radii.AtLeast), 1e-12);
                Assert.Equal(radii.GreatestMm, about.DistanceTo(radii.AtGreatest), 1e-12);
                Assert.True(outline.Contains(radii.AtLeast) && outline.Contains(radii.AtGreatest));
                foreach (Piece piece in outline.Pieces)
                {
                    for (int i = 0; i <= 20; i++)
                    {
                        Assert.InRange(about.DistanceTo(piece.PointAt(i / 20.0)), radii.LeastMm - 1e-12, radii.GreatestMm + 1e-12);
                    }
                }
            },
            iter: Generators.FewSamples);
}
