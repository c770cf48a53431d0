using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class SoundnessTests
{
    [Fact]
    public void Faults_FigureOfEight_NamesTheCrossing()
    {
        ContourFault fault = Assert.Single(Soundness.Faults([Contour.Polygon(new(0, 0), new(4, 4), new(4, 0), new(0, 4))]));
        Assert.Equal((ContourFaultKind.Meets, 0, 2), (fault.Kind, fault.FirstPiece, fault.SecondPiece));
        Assert.Equal(0, fault.At.DistanceTo(new(2, 2)), 1e-12);
        Assert.Equal("Contour 0 meets itself, pieces 0 and 2, at (2, 2).", fault.ToString());
    }

    [Fact]
    public void Faults_DuplicateCircle_Overlaps()
    {
        IReadOnlyList<ContourFault> faults = Soundness.Faults([Contour.Circle(Point.Origin, 2), new Contour([new Arc(Point.Origin, 2, 1, Angles.TurnRad)])]);
        Assert.NotEmpty(faults);
        Assert.All(faults, f => Assert.Equal(ContourFaultKind.Overlaps, f.Kind));
    }

    [Fact]
    public void Faults_Spike_Overlaps() =>
        Assert.Contains(
            Soundness.Faults([Contour.Polygon(new(0, 0), new(4, 0), new(6, 0), new(4, 0.0), new(4, 4))]),
            f => f.Kind == ContourFaultKind.Overlaps);

    [Fact]
    public void Faults_TouchingCircles_Meet() =>
        Assert.Equal(ContourFaultKind.Meets, Assert.Single(Soundness.Faults([Contour.Circle(Point.Origin, 2), Contour.Circle(new(5, 0), 3)])).Kind);

    [Fact]
    public void Faults_NeighboursThatMeetAgain_AreFound()
    {
        // An arc and its chord prolonged beyond the arc's start.
        Arc half = new(Point.Origin, 2, 0, Math.PI);
        Contour contour = new([half, new Segment(new(-2, 0), new(3, 0)), new Segment(new(3, 0), new(3, 1)), new Segment(new(3, 1), new(2, 0))]);
        Assert.Contains(Soundness.Faults([contour]), f => f.At.DistanceTo(new(2, 0)) < 1e-9);
    }

    [Fact]
    public void Faults_HolesOutsideOrInEachOther_AreNamed()
    {
        Outline odd = new(Contour.Circle(Point.Origin, 5), [Contour.Circle(new(9, 0), 1), Contour.Circle(Point.Origin, 2), Contour.Circle(Point.Origin, 1)]);
        IReadOnlyList<ContourFault> faults = Soundness.Faults(odd);
        Assert.Contains(faults, f => f.Kind == ContourFaultKind.HoleOutside && f.Second == 1);
        Assert.Contains(faults, f => f.Kind == ContourFaultKind.HoleInHole && f is { First: 2, Second: 3 });
        Assert.Equal(2, faults.Count);
    }

    /// <summary>Oracle: NetTopologySuite's simplicity, exact for polygons. On a grid of 1/1024 mm a corner that is not on
    /// another side is at least 1e-7 mm away from it, well beyond the tolerance.</summary>
    [Fact]
    public void Faults_AnyPolygon_AgreeWithNetTopologySuite() =>
        Generators.Points.Select(p => new Point(Math.Round(p.X * 1024) / 1024, Math.Round(p.Y * 1024) / 1024)).Array[3, 8]
            .Where(p => p.Zip(p.Skip(1).Append(p[0])).All(e => e.First != e.Second)).Sample(
                points =>
                {
                    Contour polygon = Contour.Polygon(points);
                    Assert.Equal(Flattened.Ring(polygon).IsSimple, Soundness.Faults([polygon]).Count == 0);
                },
                iter: Generators.Samples);

    /// <summary>Oracle: NetTopologySuite on chords: a path that crosses itself there by more than the chord error is at
    /// fault; and every fault lies on both of its pieces.</summary>
    [Fact]
    public void Faults_AnyPath_AgreeWithNetTopologySuiteWithinChordError() =>
        Generators.Stars.Sample(
            path =>
            {
                IReadOnlyList<ContourFault> faults = Soundness.Faults([path]);
                foreach (ContourFault fault in faults)
                {
                    Assert.Equal(0, Distances.Between(fault.At, path.Pieces[fault.FirstPiece]).DistanceMm, 1e-8);
                    Assert.Equal(0, Distances.Between(fault.At, path.Pieces[fault.SecondPiece]).DistanceMm, 1e-8);
                }

                if (faults.Count == 0 && !Flattened.Ring(path).IsSimple)
                {
                    double error = 2 * path.Pieces.Max(Flattened.ErrorMm);
                    Assert.True(LeastClearance(path) <= error);
                }
            },
            iter: Generators.Samples);

    /// <summary>Least distance of pieces that are not neighbours; 0 where neighbours leave each other at a grazing angle.</summary>
    private static double LeastClearance(Contour path)
    {
        double least = path.Corners().Any(c => Math.Abs(c.TurnRad) > Math.PI - 0.05) ? 0 : double.PositiveInfinity;
        for (int i = 0; i < path.Pieces.Count; i++)
        {
            for (int j = i + 2; j < path.Pieces.Count; j++)
            {
                bool neighbours = i == 0 && j == path.Pieces.Count - 1;
                least = neighbours ? least : Math.Min(least, Distances.Between(path.Pieces[i], path.Pieces[j]).DistanceMm);
            }
        }

        return least;
    }
}
