using WheelDraft.Drawing;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Raster;

/// <summary>The comparison of pictures is not blind: small faults on full sheets are seen.</summary>
public sealed class PictureDifferenceTests
{
    private const double MmPerPixel = 1.0 / PicturedSheet.PixelsPerMm;

    [Fact]
    public void IsSeen_ThinnestLineMovedByThreePixels_True()
    {
        (PicturedSheet sheet, SheetLine line) = First<SheetLine>(l => l.Style.WidthMm < 0.2);
        Vector aside = new(3 * MmPerPixel, 3 * MmPerPixel);
        AssertSeen(sheet, line, new SheetLine([.. line.Pieces.Select(p => p.Placed(Placement.Translation(aside)))], line.Style));
    }

    [Fact]
    public void IsSeen_LineOfAnotherColour_True()
    {
        (PicturedSheet sheet, SheetLine line) = First<SheetLine>(l => l.Style.Ink == Ink.Dimension);
        AssertSeen(sheet, line, new SheetLine(line.Pieces, LineStyle.Wide(line.Style.Kind, Ink.Error, line.Style.WidthMm)));
    }

    [Fact]
    public void IsSeen_AreaOfTheNextPaleColour_True()
    {
        (PicturedSheet sheet, SheetArea area) = First<SheetArea>(a => a.Fill == Fill.Of(FillKind.Band));
        AssertSeen(sheet, area, new SheetArea(area.Shapes, Fill.Of(FillKind.Carrier), area.Edge));
    }

    [Fact]
    public void IsSeen_LastLetterOfAnyTextMissing_True()
    {
        PicturedSheet sheet = DemoSheets.All.MaxBy(s => s.Sheet.Texts.Count())!;
        SheetText[] texts = [.. sheet.Sheet.Texts.Where(t => t.Place.Along == TextAlong.Start && t.Text.Length > 1 && char.IsAsciiLetterOrDigit(t.Text[^1]))];
        Assert.NotEmpty(texts);
        Assert.All(texts, t => AssertSeen(sheet, t, new SheetText(t.Text[..^1], t.Place, t.Style)));
    }

    [Fact]
    public void Of_TheSamePictureTwice_IsNothing()
    {
        PictureDifference difference = PictureDifference.Of(DemoSheets.All[0].Own, DemoSheets.All[0].Own);
        Assert.Equal((0, 0.0, 0), (difference.Pixels.Count, difference.Share, difference.Together));
    }

    private static (PicturedSheet Sheet, T Item) First<T>(Func<T, bool> isWanted)
        where T : SheetItem => DemoSheets.All.SelectMany(s => s.Sheet.Items.OfType<T>().Where(isWanted).Select(i => (s, i))).First();

    /// <summary>Another item in the place of one is seen.</summary>
    private static void AssertSeen(PicturedSheet sheet, SheetItem old, SheetItem other)
    {
        PixelWindow window = sheet.WindowOf([old, other]);
        Picture right = sheet.Painted(sheet.Sheet.Groups, window);
        Assert.True(PictureDifference.Of(right, sheet.Painted(SheetEdits.With(sheet.Sheet, old, other).Groups, window)).IsSeen, (old as SheetText)?.Text ?? old.ToString());
    }
}
