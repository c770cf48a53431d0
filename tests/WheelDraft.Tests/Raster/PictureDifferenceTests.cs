using WheelDraft.Drawing;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Raster;

/// <summary>The comparison of pictures is not blind: small faults on the fullest sheet are seen.</summary>
public sealed class PictureDifferenceTests
{
    private const double MmPerPixel = 1.0 / PicturedSheet.PixelsPerMm;

    private static PicturedSheet Fullest => DemoSheets.All.Where(s => s.Theme == Theme.Light).MaxBy(s => s.Sheet.Items.Count())!;

    [Fact]
    public void IsSeen_ThinnestLineMovedByThreePixels_True()
    {
        SheetLine line = Fullest.Sheet.Items.OfType<SheetLine>().MinBy(l => l.Style.WidthMm)!;
        Vector aside = new(3 * MmPerPixel, 3 * MmPerPixel);
        Assert.True(WithInPlaceOf(line, new SheetLine([.. line.Pieces.Select(p => p.Placed(Placement.Translation(aside)))], line.Style)).IsSeen);
    }

    [Fact]
    public void IsSeen_LineOfAnotherColour_True()
    {
        SheetLine line = Fullest.Sheet.Items.OfType<SheetLine>().First(l => l.Style.Ink == Ink.Dimension);
        Assert.True(WithInPlaceOf(line, new SheetLine(line.Pieces, LineStyle.Wide(line.Style.Kind, Ink.Error, line.Style.WidthMm))).IsSeen);
    }

    [Fact]
    public void IsSeen_AreaOfAnotherPaleColour_True()
    {
        SheetArea area = Fullest.Sheet.Items.OfType<SheetArea>().First(a => a.Fill == Fill.Of(FillKind.Carrier));
        Assert.True(WithInPlaceOf(area, new SheetArea(area.Shapes, Fill.Of(FillKind.Band), area.Edge)).IsSeen);
    }

    [Fact]
    public void IsSeen_LastLetterMissing_True()
    {
        SheetText[] texts = [.. Fullest.Sheet.Texts.Where(t => t.Place.Along == TextAlong.Start && t.Text.Length > 1 && char.IsAsciiLetter(t.Text[^1]))];
        Assert.All(texts, t => Assert.True(WithInPlaceOf(t, new SheetText(t.Text[..^1], t.Place, t.Style)).IsSeen, t.Text));
    }

    [Fact]
    public void Of_TheSamePictureTwice_IsNothing()
    {
        PictureDifference difference = PictureDifference.Of(Fullest.Own, Fullest.Own);
        Assert.Equal((0, 0.0, 0), (difference.Pixels.Count, difference.Share, difference.Together));
    }

    private static PictureDifference WithInPlaceOf(SheetItem old, SheetItem other)
    {
        Picture own = Fullest.Own;
        return PictureDifference.Of(own, new SkiaDrawing(Fullest.SvgOf(SheetEdits.With(Fullest.Sheet, old, other))).Painted(new(0, 0, own.Width, own.Height)));
    }
}
