using WheelDraft.Drawing;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Svg;

/// <summary>Sheets that use every kind of item, for the tests of the writers.</summary>
internal static class SampleSheets
{
    /// <summary>A card of 120 by 90 mm: areas with and without patterns and holes, every kind of line, texts at angles.</summary>
    internal static Sheet Card { get; } = new(
        new SheetWords("card", "Sample card <1> & \"more\"", "A disc, patches & texts."),
        new PaperSize("card", 120, 90),
        [
            new SheetGroup(
                new GroupName("copper", "Copper", "part") { Description = "A disc with a hole & a window." },
                [
                    new SheetArea(
                        new Outline(Contour.Circle(new(35, 50), 25), [Contour.Circle(new(35, 50), 5), Dxf.DxfWriterTests.Sector(10, 18, 0.3, 2).Placed(Placement.Translation(new(35, 50)))]),
                        Fill.Of(FillKind.Copper),
                        LineStyle.Edge),
                    new SheetGroup(new GroupName("patches", "Patches", "nets"), [.. Enumerable.Range(0, 8).Select(Patch)]),
                ]),
            new SheetGroup(
                new GroupName("lines", "Lines", "lines"),
                [
                    .. Enum.GetValues<LineKind>().Select((kind, i) => (SheetNode)new SheetLine(new Point(5, 5 + (i * 2)), new Point(60, 5 + (i * 2)), LineStyle.Of(kind, Ink.Outline))),
                    new SheetLine([new Arc(new(35, 50), 28, 0, 5)], LineStyle.Centre),
                    new SheetLine([new Arc(new(35, 50), 30, -1, -3.1)], LineStyle.Dimension),
                    new SheetLine(Contour.Circle(new(35, 50), 32), LineStyle.Hidden),
                    new SheetArea(new Outline(Contour.Polygon(new(64, 5), new(70, 4), new(70, 6))), Fill.Solid(Ink.Dimension)),
                ]),
            new SheetGroup(
                new GroupName("texts", "Texts", "texts"),
                [
                    new SheetText("Ring 1 <mist> & co", new(new(72, 80)), TextStyle.Label),
                    new SheetText("2.5 mm", new(new(80, 10), TextAlong.Middle, TextAcross.Middle, Math.PI / 2), TextStyle.Small),
                    new SheetText("Ø 50 ± 0.1", new(new(115, 20), TextAlong.End, TextAcross.Top), TextStyle.Label),
                    new SheetText("two  blanks", new(new(75, 30), TextAlong.Start, TextAcross.Baseline, -0.3), TextStyle.Caption),
                ]),
        ],
        []);

    private static SheetArea Patch(int number)
    {
        Point corner = new(75 + (number % 4 * 10), 60 - (number / 4 * 12));
        return new SheetArea(new Outline(Contour.Rectangle(corner, corner + new Vector(9, 10))), Fill.Net(number), number % 2 == 0 ? LineStyle.Thin : LineStyle.Hidden);
    }
}
