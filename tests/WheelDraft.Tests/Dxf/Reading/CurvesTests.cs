using System.Globalization;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Dxf.Reading;

public class CurvesTests
{
    private const string Ellipse = "0 ELLIPSE|5 E1|8 A|10 5|20 1|30 0|11 4|21 3|31 0|40 0.5|41 0|42 6.283185307179586|";
    private const string Spline = "0 SPLINE|5 E2|8 A|70 8|71 3|72 8|73 4|40 0|40 0|40 0|40 0|40 1|40 1|40 1|40 1|10 0|20 0|30 0|10 1|20 3|30 0|10 4|20 -3|30 0|10 6|20 1|30 0|";

    [Fact]
    public void Read_CurvesWithoutTolerance_AreRefusedByNameAndLine()
    {
        DxfReadException e = Assert.Throws<DxfReadException>(() => HandWritten.Read(Ellipse + Spline));
        Assert.Contains("line 26: ELLIPSE (handle E1) on layer A: it is no line and no arc: give a chord tolerance", e.Message, StringComparison.Ordinal);
        Assert.Contains("SPLINE (handle E2) on layer A: it is no line and no arc", e.Message, StringComparison.Ordinal);
        Assert.Equal(2, e.Reasons.Count);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.001)]
    public void Read_Ellipse_KeepsItsChordsWithinTheTolerance(double chordMm)
    {
        // Oracle: in the frame of its axes, a point of the ellipse (x/5)² + (y/2.5)² = 1.
        ReadDrawing drawing = HandWritten.Read(Ellipse, options: new() { ChordMm = chordMm });
        Contour contour = drawing.Layers.Single().Contours.Single().Contour;
        Assert.Equal(Math.PI * 5 * 2.5, contour.SignedAreaMm2, chordMm * 25);
        Placement toAxes = Placement.Translation(new(-5, -1)).Then(Placement.Turn(-Math.Atan2(3, 4)));
        foreach (Piece piece in contour.Pieces)
        {
            Point corner = toAxes.Of(piece.Start);
            Assert.Equal(1, Math.Pow(corner.X / 5, 2) + Math.Pow(corner.Y / 2.5, 2), 1e-12);

            // The middle of a chord lies inside; outwards along its normal the ellipse is met within the tolerance.
            Point beyond = toAxes.Of(piece.PointAt(0.5) - (piece.TangentAt(0.5).Left * chordMm));
            Assert.True(Math.Pow(beyond.X / 5, 2) + Math.Pow(beyond.Y / 2.5, 2) >= 1);
        }

        Assert.Equal("drawing.chords", HandWritten.Codes(drawing));
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("210 0|220 0|230 -1|", -1)]
    public void Read_PartOfAnEllipse_TurnsAsItsAxisSays(string frame, double side)
    {
        ReadDrawing drawing = HandWritten.Read("0 ELLIPSE|8 A|10 0|20 0|11 2|21 0|40 0.5|41 0|42 1.5707963267948966|" + frame, options: new() { ChordMm = 0.01 });
        IReadOnlyList<Piece> pieces = drawing.Layers.Single().OpenPaths.Single().Pieces;
        Point[] ends = [pieces[0].Start, pieces[^1].End];
        Assert.Contains(ends, p => p.DistanceTo(new(2, 0)) < 1e-12);
        Assert.Contains(ends, p => p.DistanceTo(new(0, side)) < 1e-12);
    }

    [Fact]
    public void Read_CubicSpline_KeepsWithinTheToleranceOfTheCurve()
    {
        // Oracle: the same curve by Bernstein polynomials at many parameters; both ways, curve to chords and corners to curve.
        const double chordMm = 0.002;
        IReadOnlyList<Piece> pieces = HandWritten.Read(Spline, options: new() { ChordMm = chordMm }).Layers.Single().OpenPaths.Single().Pieces;
        Point[] curve = [.. Enumerable.Range(0, 20001).Select(i => Cubic(i / 20000.0))];
        foreach (Point p in curve.Where((_, i) => i % 50 == 0))
        {
            Assert.True(pieces.Min(q => Distances.Between(p, q).DistanceMm) <= chordMm);
        }

        Assert.All(pieces, q => Assert.True(curve.Min(p => p.DistanceTo(q.Start)) < 1e-3));
        Assert.InRange(pieces.Count, 10, 400);
    }

    [Fact]
    public void Read_RationalSplineOfACircle_KeepsToTheCircle()
    {
        // Nine control points with weights 1 and √½ give the whole circle (Piegl and Tiller, "The NURBS Book", section 7.5).
        string half = (1 / Math.Sqrt(2)).ToString("R", CultureInfo.InvariantCulture);
        string knots = string.Concat("000112233444".Select(k => $"40 {k}|"));
        string weights = string.Concat(Enumerable.Range(0, 9).Select(i => i % 2 == 0 ? "41 1|" : $"41 {half}|"));
        (int X, int Y)[] corners = [(1, 0), (1, 1), (0, 1), (-1, 1), (-1, 0), (-1, -1), (0, -1), (1, -1), (1, 0)];
        string points = string.Concat(corners.Select(c => string.Create(CultureInfo.InvariantCulture, $"10 {c.X * 20}|20 {c.Y * 20}|30 0|")));
        ReadDrawing drawing = HandWritten.Read("0 SPLINE|8 A|70 12|71 2|" + knots + weights + points, options: new() { ChordMm = 0.01 });
        Contour circle = drawing.Layers.Single().Contours.Single().Contour;
        Assert.All(circle.Pieces, p => Assert.Equal(20, p.Start.RadiusMm, 1e-9));
        Assert.All(circle.Pieces, p => Assert.InRange(p.PointAt(0.5).RadiusMm, 20 - 0.01, 20));
    }

    [Theory]
    [InlineData("0 SPLINE|8 A|70 1|71 3|11 0|21 0|11 1|21 1", "fit points only")]
    [InlineData("0 SPLINE|8 A|71 3|40 0|10 0|20 0|30 0", "do not belong together")]
    [InlineData("0 SPLINE|8 A|71 1|40 0|40 0|40 2|40 1|10 0|20 0|10 1|20 0", "must not fall")]
    [InlineData("0 SPLINE|8 A|71 1|40 0|40 0|40 1|40 1|41 1|41 -1|10 0|20 0|10 1|20 0", "a weight above 0")]
    [InlineData("0 SPLINE|8 A|71 1|40 0|40 0|40 1|40 1|10 0|20 0|30 0|10 1|20 0|30 5", "it climbs")]
    [InlineData("0 ELLIPSE|8 A|10 0|20 0|11 0|21 0|40 0.5", "half axes")]
    [InlineData("0 ELLIPSE|8 A|10 0|20 0|11 1|21 0|40 1.5", "half axes")]
    [InlineData("0 ELLIPSE|8 A|10 0|20 0|11 9e8|21 0|40 0.5", "500,000 pieces")]
    public void Read_CurveThatIsNone_IsRefused(string entity, string why) =>
        Assert.Contains(why, Assert.Throws<DxfReadException>(() => HandWritten.Read(entity, options: new() { ChordMm = 1e-6 })).Message, StringComparison.Ordinal);

    private static Point Cubic(double t)
    {
        (double X, double Y)[] c = [(0, 0), (1, 3), (4, -3), (6, 1)];
        double[] b = [Math.Pow(1 - t, 3), 3 * t * Math.Pow(1 - t, 2), 3 * t * t * (1 - t), t * t * t];
        return new(c.Select((p, i) => p.X * b[i]).Sum(), c.Select((p, i) => p.Y * b[i]).Sum());
    }
}
