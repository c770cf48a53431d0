using System.Globalization;
using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Dxf;

public class DxfWriterTests
{
    /// <summary>A ring of copper from radius 20 to 30 with a window over 60° and a round hole, and lines to scribe and fold.</summary>
    internal static CutDrawing Sample(DrawingUnit unit = DrawingUnit.Millimetre) =>
        new(
            unit,
            CutDrawing.ContoursOf(new Outline(
                Contour.Circle(Point.Origin, 30),
                [Sector(20, 25, 0, Math.PI / 3), Sector(20, 25, Math.PI / 2, 1.4 * Math.PI), Contour.Circle(new(0, 0), 3)])),
            [
                new(CutLayer.Mark, [new Arc(new(5, 0), 1, 0, Math.PI)]),
                new(CutLayer.Mark, [new Segment(new(7, 0), new(8, 0)), new Arc(new(8, 1), 1, -Math.PI / 2, Math.PI / 2)]),
                new(CutLayer.Mark, [new Arc(new(10, 0), 1, 0, 2 * Math.PI)]),
                new(CutLayer.Fold, [new Segment(new(0, 5), new(2, 5))]),
            ],
            [new(new(0, -40), 2.5, "Ø 60 ± 0.1, 50 %% ^")]);

    internal static Contour Sector(double innerMm, double outerMm, double fromRad, double sweepRad)
    {
        Point a = Point.Polar(outerMm, fromRad);
        Point b = Point.Polar(outerMm, fromRad + sweepRad);
        Point c = Point.Polar(innerMm, fromRad + sweepRad);
        Point d = Point.Polar(innerMm, fromRad);
        return new(
        [
            Arc.About(Point.Origin, a, b, Turning.Anticlockwise),
            new Segment(b, c),
            Arc.About(Point.Origin, c, d, Turning.Clockwise),
            new Segment(d, a),
        ]);
    }

    [Theory]
    [InlineData(DxfVersion.R2000)]
    [InlineData(DxfVersion.R12)]
    public void Write_Sample_GivesTheEntitiesInTheirOrder(DxfVersion version)
    {
        PlainDxf read = new(DxfWriter.Write(Sample(), version));
        string polyline = version == DxfVersion.R12 ? "POLYLINE" : "LWPOLYLINE";
        Assert.Equal(
            [
                ("ARC", "MARK"), (polyline, "MARK"), ("CIRCLE", "MARK"), ("LINE", "FOLD"),
                (polyline, "WINDOW"), (polyline, "WINDOW"), ("CIRCLE", "WINDOW"), ("CIRCLE", "OUTLINE"), ("TEXT", "NOTE"),
            ],
            read.Records.Select(r => (r.Kind, r.Layer)));
        Assert.Equal(version == DxfVersion.R12 ? 3 : 0, read.Closers);
        Assert.Equal([false, true, true], read.Records.Where(r => string.Equals(r.Kind, polyline, StringComparison.Ordinal)).Select(r => r.IsClosed));
    }

    [Theory]
    [InlineData(DxfVersion.R2000)]
    [InlineData(DxfVersion.R12)]
    public void Write_RingSector_HasTheBulgesOfTheirAngles(DxfVersion version)
    {
        PlainDxf read = new(DxfWriter.Write(Sample(), version));
        PlainDxf.Record window = read.Records.First(r => r.Layer is "WINDOW");

        // Bulge = tan(angle / 4): tan 15° for 60° (definition of the format; the window of a shape runs clockwise).
        Assert.Equal([Math.Tan(Math.PI / 12), -Math.Tan(Math.PI / 12)], window.Corners().Select(c => c.Bulge).Where(b => b != 0).Order().Reverse(), Near);
        Assert.Equal(4, window.Corners().Count);
        Assert.Equal(-(25 * 25 - 20 * 20) * Math.PI / 6, window.Area(), 7);
    }

    [Fact]
    public void Write_ArcOverHalfATurn_IsSplitIntoEqualParts()
    {
        Contour keyhole = new([new Arc(Point.Origin, 10, 0.5, 5), new Segment(Point.Polar(10, 5.5), Point.Polar(10, 0.5))]);
        PlainDxf.Record cut = new PlainDxf(DxfWriter.Write(CutDrawings.Of(DrawingUnit.Millimetre, new Outline(keyhole)), DxfVersion.R2000)).Records.Single();
        Assert.Equal(3, cut.Corners().Count);
        Assert.Equal([Math.Tan(2.5 / 4), Math.Tan(2.5 / 4), 0], cut.Corners().Select(c => c.Bulge), Near);
    }

    [Fact]
    public void Write_CircleInParts_IsOneCircle()
    {
        Contour halves = new([new Arc(new(1, 2), 4, 1, Math.PI), new Arc(new(1, 2), 4, 1 + Math.PI, Math.PI)]);
        PlainDxf.Record cut = new PlainDxf(DxfWriter.Write(CutDrawings.Of(DrawingUnit.Millimetre, new Outline(halves)), DxfVersion.R2000)).Records.Single();
        Assert.Equal(("CIRCLE", 1.0, 2.0, 4.0), (cut.Kind, cut.Number(10), cut.Number(20), cut.Number(40)));
    }

    [Theory]
    [InlineData(DrawingUnit.Millimetre, "4", "1", 30)]
    [InlineData(DrawingUnit.Inch, "1", "0", 30 / 25.4)]
    public void Write_Unit_SetsHeaderAndScale(DrawingUnit unit, string insUnits, string measurement, double radius)
    {
        PlainDxf read = new(DxfWriter.Write(Sample(unit), DxfVersion.R2000));
        Assert.Equal((insUnits, measurement), (read.Header("$INSUNITS"), read.Header("$MEASUREMENT")));
        Assert.Equal(radius, read.Records.Single(r => r.Layer is "OUTLINE").Number(40), 10);
        Assert.Equal(-radius, double.Parse(read.Header("$EXTMIN"), CultureInfo.InvariantCulture), 9);
    }

    [Theory]
    [InlineData(DxfVersion.R2000)]
    [InlineData(DxfVersion.R12)]
    public void Write_AnyDrawing_IsPlainAsciiWithoutExponentOrNegativeZero(DxfVersion version)
    {
        CutDrawing tiny = new(
            DrawingUnit.Millimetre,
            [new(CutLayer.Outline, Contour.Polygon(new(-1e-14, -1e-14), new(1e5, 1e-12), new(3, 4)))],
            notes: [new(new(-0.0, 0), 2, "µ → 😀 \n^%%d")]);
        string text = DxfWriter.Write(tiny, version);
        Assert.All(text, c => Assert.InRange(c, '\n', '~'));
        PlainDxf read = new(text);
        Assert.DoesNotContain(read.Pairs, p => p.Code is >= 10 and <= 59 && (p.Value.Contains('E', StringComparison.OrdinalIgnoreCase) || p.Value is "-0.0" or "-0"));
        Assert.Equal(@"\U+00B5 \U+2192 \U+25A1  \U+005E%\U+0025d", read.Records.Last().Codes.Last(c => c.Code == 1).Value);
    }

    [Fact]
    public void Write_Twice_GivesTheSameText() =>
        Assert.Equal(DxfWriter.Write(Sample(), DxfVersion.R2000), DxfWriter.Write(Sample(), DxfVersion.R2000));

    [Fact]
    public void Write_R2000_NumbersEveryRecordOnceAndBelowTheSeed()
    {
        PlainDxf read = new(DxfWriter.Write(Sample(), DxfVersion.R2000));
        List<int> handles = [.. read.Pairs.Where((p, i) => p.Code is 5 or 105 && read.Pairs[i - 1].Value is not "$HANDSEED")
            .Select(p => int.Parse(p.Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture))];
        Assert.Equal(handles.Count, handles.Distinct().Count());
        Assert.True(int.Parse(read.Header("$HANDSEED"), NumberStyles.HexNumber, CultureInfo.InvariantCulture) > handles.Max());
        Assert.All(
            read.Pairs.Where(p => p.Code is 330 or 340 or 350 or 390 && p.Value is not "0"),
            p => Assert.Contains(int.Parse(p.Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture), handles));
    }

    [Fact]
    public void Write_RandomSectors_KeepTheirArea()
    {
        // Oracle: area of a ring sector in closed form.
        Gen.Select(Gen.Double[1, 50], Gen.Double[0.1, 20], Gen.Double[-7, 7], Gen.Double[0.01, 6.2]).Sample(
            (inner, width, from, sweep) =>
            {
                Outline shape = new(Sector(inner, inner + width, from, sweep));
                PlainDxf.Record cut = new PlainDxf(DxfWriter.Write(CutDrawings.Of(DrawingUnit.Millimetre, shape), DxfVersion.R2000)).Records.Single();
                double expected = sweep * width * ((2 * inner) + width) / 2;
                Assert.All(cut.Corners(), c => Assert.InRange(c.Bulge, -1, 1));
                Assert.Equal(expected, cut.Area(), 1e-6);
            },
            iter: 2000);
    }

    [Fact]
    public void CutDrawing_SharedPiece_IsRefusedWithItsPlace()
    {
        Contour left = Contour.Rectangle(new(0, 0), new(1, 1));
        Contour right = Contour.Rectangle(new(1, 0), new(2, 1));
        ArgumentException e = Assert.Throws<ArgumentException>(() => CutDrawings.Of(DrawingUnit.Millimetre, new Outline(left), new Outline(right)));
        Assert.Contains("(1, 1) to (1, 0) mm is drawn twice", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CutDrawing_RepeatedMark_IsWrittenOnce()
    {
        CutPath mark = new(CutLayer.Mark, [new Segment(new(0, 0), new(1, 0))]);
        CutPath back = new(CutLayer.Mark, [new Segment(new(1, 0), new(0, 0))]);
        Assert.Single(new CutDrawing(DrawingUnit.Millimetre, [new(CutLayer.Outline, Contour.Circle(Point.Origin, 5))], [mark, back]).Paths);
    }

    [Fact]
    public void Runs_OfLettering_AreWrittenAsLinesAndArcs()
    {
        IReadOnlyList<CutPath> paths = CutDrawings.Runs(CutLayer.Mark, Lettering.Layout("HO 8.", 3.5).Pieces);
        PlainDxf read = new(DxfWriter.Write(new(DrawingUnit.Millimetre, [new(CutLayer.Outline, Contour.Circle(Point.Origin, 50))], paths), DxfVersion.R2000));
        PlainDxf.Record[] marks = [.. read.Records.Where(r => r.Layer is "MARK")];

        // H is three strokes; the dot is a circle; nothing else than lines, arcs, circles and polylines occurs.
        Assert.Equal(3, marks.Count(m => m.Kind is "LINE"));
        Assert.All(marks, m => Assert.True(m.Kind is "LINE" or "ARC" or "CIRCLE" or "LWPOLYLINE", m.Kind));
        Assert.Contains(marks, m => m.Kind is "CIRCLE");
    }

    [Fact]
    public void CutPath_OpenOnACutLayerOrBroken_IsRefused()
    {
        Segment a = new(new(0, 0), new(1, 0));
        Assert.Throws<ArgumentException>(() => new CutPath(CutLayer.Outline, [a]));
        Assert.Throws<ArgumentException>(() => new CutPath(CutLayer.Mark, [a, new Segment(new(1.1, 0), new(2, 0))]));
        Assert.Throws<ArgumentException>(() => new CutPath(CutLayer.Mark, []));
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) < 1e-14;
}
