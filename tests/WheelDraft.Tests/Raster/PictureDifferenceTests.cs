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

    /// <summary>A missing group is looked for in small parts first: what none of them shows is looked for in the whole, and what lies under another is found nowhere.</summary>
    [Fact]
    public void IsMissed_GroupUnderAnother_IsNotAndAllOthersAre()
    {
        Sheet card = Svg.SampleSheets.Card;
        SheetGroup under = new(new("under", "Under", "lines"), [new SheetLine(new Point(10, 84), new Point(20, 84), LineStyle.Centre), new SheetLine(new Point(4, 84), new Point(60, 84), LineStyle.Centre)]);
        SheetGroup partly = new(new("partly", "Partly under", "lines"), [new SheetLine(new Point(30, 86), new Point(32, 86), LineStyle.Centre), new SheetLine(new Point(30, 88), new Point(33, 88), LineStyle.Centre), new SheetLine(new Point(30, 87), new Point(110, 87), LineStyle.Centre)]);
        SheetGroup over = new(new("over", "Over both", "cover"), [new SheetArea(new Outline(Contour.Rectangle(new(2, 82), new(62, 89))), Fill.Of(FillKind.Carrier))]);
        PicturedSheet pictured = new("sample", new Sheet(card.Words, card.Size, [under, partly, over, .. card.Groups], []), Theme.Light);
        Assert.Equal(["under"], pictured.Unseen.Select(g => g.Id), StringComparer.Ordinal);
        Assert.Empty(pictured.Skia.NotMissed);
        Assert.False(pictured.Skia.IsAgainSeen);
        Assert.Empty(pictured.Skia.NotAlike);
        using Picture own = pictured.Own;
        foreach (SheetGroup group in pictured.Sheet.AllGroups)
        {
            PixelWindow window = pictured.WindowOf(group);
            using Picture there = own.Part(window);
            using Picture without = pictured.Painted(SheetEdits.Without(pictured.Sheet, group.Id).Groups, window);
            Assert.Equal(pictured.Unseen.Contains(group), !PictureDifference.IsSeenBetween(there, without));
        }
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
