using WheelDraft.Drawing;
using WheelDraft.Tests.Svg;
using Xunit;

namespace WheelDraft.Tests.Raster;

/// <summary>Our own PNG against other projects' renderers of our SVG, strokes for texts in both.</summary>
public sealed class RenderersAgreeTests(OutsideBrowser browser) : IDisposable
{
    private readonly OutsideFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [Trait("Needs", "rsvg-convert")]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("print")]
    public async Task Png_AgainstRsvg_DiffersInUnderOnePercentOfItsInk(string theme)
    {
        PicturedSheet card = Card(theme);
        AssertAlike(card, await OutsideRenderers.RsvgAsync(card.Svg, card.Whole, _folder));
    }

    [Fact]
    [Trait("Needs", "chromium")]
    public async Task Png_AgainstChromium_DiffersInUnderOnePercentOfItsInk()
    {
        PicturedSheet card = Card("light");
        AssertAlike(card, await OutsideRenderers.ChromiumAsync(card.Svg, card.Whole, browser));
    }

    [Fact]
    public void Png_AgainstSvgSkia_DiffersInUnderOnePercentOfItsInk()
    {
        PicturedSheet card = Card("light");
        AssertAlike(card, new SkiaDrawing(card.Svg).Painted(card.Whole));
    }

    [Theory]
    [Trait("Needs", "rsvg-convert")]
    [InlineData("copper")]
    [InlineData("patches")]
    [InlineData("lines")]
    [InlineData("texts")]
    public async Task Png_AgainstRsvgWithoutOneGroup_IsNoticed(string id)
    {
        PicturedSheet card = Card("light");
        string svg = card.SvgOf(SheetEdits.Without(card.Sheet, id));
        PictureDifference difference = PictureDifference.Of(card.Own, await OutsideRenderers.RsvgAsync(svg, card.Whole, _folder));
        Assert.True(difference.Share > PictureDifference.MostShare, $"group {id} was not missed: {difference}");
    }

    private static PicturedSheet Card(string theme) => new("sample", SampleSheets.Card, Theme.Named(theme)!);

    private static void AssertAlike(PicturedSheet card, Picture outside)
    {
        PictureDifference difference = PictureDifference.Of(card.Own, outside);
        Assert.False(difference.IsSeen, difference.ToString());
    }
}
