using CsCheck;
using NetTopologySuite.Geometries;
using WheelDraft.Drawing;
using WheelDraft.Geometry;
using Xunit;
using Point = WheelDraft.Geometry.Point;

namespace WheelDraft.Tests.Drawing;

public sealed class SheetModelTests
{
    private static readonly Gen<TextBox> Boxes =
        from x in Gen.Double[0, 20]
        from y in Gen.Double[0, 20]
        from w in Gen.Double[0.5, 12]
        from h in Gen.Double[0.5, 4]
        from turn in Gen.OneOf(Gen.Double[-3.2, 3.2], Gen.Const(0.0), Gen.Const(Math.PI / 2), Gen.Const(Math.PI / 4))
        select new TextBox(new Point(x, y), w, h, turn);

    // Oracle: polygon intersection of NetTopologySuite.
    [Fact]
    public void Overlaps_AnyTwoBoxes_AgreesWithPolygonIntersection() =>
        Gen.Select(Boxes, Boxes).Sample(
            (a, b) =>
            {
                double shared = Polygon(a).Intersection(Polygon(b)).Area;
                Assert.Equal(a.Overlaps(b), b.Overlaps(a));
                if (shared > 1e-6)
                {
                    Assert.True(a.Overlaps(b));
                }
                else if (Polygon(a).Distance(Polygon(b)) > 1e-6)
                {
                    Assert.False(a.Overlaps(b));
                }
            },
            iter: 3000);

    [Fact]
    public void Overlaps_BoxesThatTouch_DoNotOverlap() =>
        Assert.False(new TextBox(new(0, 0), 4, 2, 0).Overlaps(new TextBox(new(4, 0), 4, 2, 0)));

    // Oracle: NetTopologySuite, a line through a polygon.
    [Fact]
    public void MeetsLine_AnyLine_AgreesWithPolygonIntersection() =>
        Gen.Select(Boxes, Gen.Double[-5, 25], Gen.Double[-5, 25]).Sample(
            (box, x, y) =>
            {
                Point from = new(10, 10);
                Point to = new(x, y);
                double inside = Polygon(box).Intersection(new LineString([new(from.X, from.Y), new(to.X, to.Y)])).Length;
                if (inside > 1e-6)
                {
                    Assert.True(box.MeetsLine(from, to));
                }
                else if (Polygon(box).Distance(new LineString([new(from.X, from.Y), new(to.X, to.Y)])) > 1e-6)
                {
                    Assert.False(box.MeetsLine(from, to));
                }
            },
            iter: 2000);

    [Fact]
    public void Sheet_IdTwice_IsRefused()
    {
        SheetGroup group = new(new GroupName("copper", "Copper", "copper"), []);
        ArgumentException error = Assert.Throws<ArgumentException>(() => new Sheet(new("w", "W", ""), PaperSize.A4, [group, group], []));
        Assert.Contains("'copper'", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Copper")]
    [InlineData("1st")]
    [InlineData("a b")]
    [InlineData("")]
    public void GroupName_OtherCharacters_AreRefused(string id) => Assert.Throws<ArgumentException>(() => new GroupName(id, "t", "role"));

    // Cavalieri: hatch lines at a spacing, times the spacing, come to the area; closed form of a ring.
    [Theory]
    [InlineData(0)]
    [InlineData(30)]
    [InlineData(45)]
    [InlineData(135)]
    public void PatternLines_OfARing_CoverItsAreaAndKeepInside(double angleDeg)
    {
        Outline ring = new(Contour.Circle(new(100, 60), 40), [Contour.Circle(new(103, 61), 22)]);
        PatternDrawing drawing = PatternDrawing.Of([ring], new FillPattern(PatternKind.Hatch, angleDeg, 0.5, 0.1));
        double area = Math.PI * ((40 * 40) - (22 * 22));
        Assert.Equal(1, drawing.Lines.Sum(l => l.Length) * 0.5 / area, 2e-3);
        Assert.All(drawing.Lines, l =>
        {
            Point middle = l.PointAt(0.5);
            Assert.True(middle.DistanceTo(new(100, 60)) < 40 && middle.DistanceTo(new(103, 61)) > 22);
            Assert.All((Point[])[l.Start, l.End], p => Assert.True(Math.Min(Math.Abs(p.DistanceTo(new(100, 60)) - 40), Math.Abs(p.DistanceTo(new(103, 61)) - 22)) < 1e-9));
        });
    }

    [Fact]
    public void PatternDots_OfAWindow_LieWhollyInside()
    {
        // A window across zero: arcs that start and end at any angle, both ways round.
        Outline window = new(new Contour(
        [
            new Arc(Point.Origin, 20, -0.7, 1.9), new Segment(Point.Polar(20, 1.2), Point.Polar(12, 1.2)),
            new Arc(Point.Origin, 12, 1.2, -1.9), new Segment(Point.Polar(12, -0.7), Point.Polar(20, -0.7)),
        ]));
        PatternDrawing drawing = PatternDrawing.Of([window], new FillPattern(PatternKind.Dots, 30, 1.5, 0.6));
        Assert.NotEmpty(drawing.Dots);
        Assert.All(drawing.Dots, d =>
        {
            Assert.InRange(d.RadiusMm, 12.3, 19.7);
            Assert.InRange(d.AngleRad, -0.7, 1.2);
        });
        double expected = (20 * 20 - 12 * 12) * 1.9 / 2 / (1.5 * 1.5);
        Assert.InRange(drawing.Dots.Count, expected * 0.6, expected * 1.05);
    }

    [Fact]
    public void Runs_DashedLine_BeginsAndEndsWithADash()
    {
        SheetLine line = new(new Point(0, 0), new Point(50, 0), LineStyle.Hidden);
        Assert.Equal(0, line.Runs[0].Pieces[0].Start.X, 1e-9);
        Assert.Equal(50, line.Runs[^1].Pieces[^1].End.X, 1e-9);
        Assert.True(line.Runs.Count > 10);
    }

    [Fact]
    public void Runs_DashedContour_KeepsToIt()
    {
        Contour track = new([new Segment(new(0, 0), new(30, 0)), new Arc(new(30, 5), 5, -Math.PI / 2, Math.PI), new Segment(new(30, 10), new(0, 10)), new Arc(new(0, 5), 5, Math.PI / 2, Math.PI)]);
        SheetLine line = new(track, LineStyle.Centre);
        double dash = line.Runs.Sum(r => r.LengthMm);
        Assert.Equal(25.0 / 31, dash / track.Length, 1e-9);
        Assert.All(line.Runs, r => Assert.Single(StrokeRun.Of(r.Pieces)));
    }

    [Fact]
    public void Runs_LineShorterThanAPeriod_StaysWhole() => Assert.Single(new SheetLine(new Point(0, 0), new Point(2, 0), LineStyle.Centre).Runs);

    [Fact]
    public void Runs_OfAClosedContour_IsOneClosedRun() =>
        Assert.True(Assert.Single(new SheetLine(Contour.Circle(Point.Origin, 5), LineStyle.Edge).Runs).IsClosed);

    // WCAG 2.2, 1.4.3: text needs 4.5 to 1.
    [Fact]
    public void Theme_EveryInkButGridAndPaper_IsReadOnThePaper()
    {
        foreach (Theme theme in Theme.All)
        {
            foreach (Ink ink in Enum.GetValues<Ink>().Where(i => i is not Ink.Grid and not Ink.Paper))
            {
                Assert.True(theme.Of(ink).ContrastWith(theme.Paper) >= 4.5, Invariant.Text($"{theme.Name} {ink}: {theme.Of(ink).ContrastWith(theme.Paper)}"));
            }
        }
    }

    // WCAG 2.2: black on white is 21 to 1.
    [Fact]
    public void Contrast_BlackOnWhite_Is21() => Assert.Equal(21, Rgb.Of(0).ContrastWith(Rgb.Of(0xFFFFFF)), 1e-9);

    [Fact]
    public void Pattern_OfEveryNet_IsAnother() =>
        Assert.Equal(Fill.NetLooks, Enumerable.Range(0, Fill.NetLooks).Select(n => Fill.Net(n).Pattern).Distinct().Count());

    private static Polygon Polygon(TextBox box)
    {
        Coordinate[] ring = [.. box.Corners.Append(box.Corners[0]).Select(c => new Coordinate(c.X, c.Y))];
        return new Polygon(new LinearRing(ring));
    }
}
