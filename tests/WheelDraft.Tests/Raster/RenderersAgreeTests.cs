using System.Globalization;
using WheelDraft.Drawing;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Svg;
using WheelDraft.Tests.Svg;
using Xunit;

namespace WheelDraft.Tests.Raster;

/// <summary>Our own PNG against other projects' renderers of our SVG, strokes for texts in both.</summary>
public sealed class RenderersAgreeTests : IDisposable
{
    private const double Dpi = 127;
    private readonly OutsideFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [Trait("Needs", "rsvg-convert")]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("print")]
    public async Task Png_AgainstRsvg_DiffersInUnderOnePercentOfItsInk(string theme)
    {
        Theme colours = Theme.Named(theme)!;
        Picture own = Own(SampleSheets.Card, colours);
        Assert.InRange(own.DifferenceFrom(await OutsideRenderers.RsvgAsync(Svg(SampleSheets.Card, colours), own, _folder)), 0, 0.01);
    }

    [Fact]
    [Trait("Needs", "chromium")]
    public async Task Png_AgainstChromium_DiffersInUnderOnePercentOfItsInk()
    {
        Picture own = Own(SampleSheets.Card, Theme.Light);
        Assert.InRange(own.DifferenceFrom(await OutsideRenderers.ChromiumAsync(Svg(SampleSheets.Card, Theme.Light), own, _folder)), 0, 0.01);
    }

    [Fact]
    public void Png_AgainstSvgSkia_DiffersInUnderOnePercentOfItsInk()
    {
        Picture own = Own(SampleSheets.Card, Theme.Light);
        Assert.InRange(own.DifferenceFrom(OutsideRenderers.SvgSkia(Svg(SampleSheets.Card, Theme.Light), own)), 0, 0.01);
    }

    [Theory]
    [Trait("Needs", "rsvg-convert")]
    [InlineData("copper")]
    [InlineData("patches")]
    [InlineData("lines")]
    [InlineData("texts")]
    public async Task Png_AgainstRsvgWithoutOneGroup_IsNoticed(string id)
    {
        Picture own = Own(SampleSheets.Card, Theme.Light);
        string svg = Svg(OutsideRenderers.Without(SampleSheets.Card, id), Theme.Light);
        Assert.True(own.DifferenceFrom(await OutsideRenderers.RsvgAsync(svg, own, _folder)) > 0.01, string.Create(CultureInfo.InvariantCulture, $"group {id} was not missed"));
    }

    private static Picture Own(Sheet sheet, Theme theme) => Picture.Of(PngWriter.Write(sheet, new() { Theme = theme, Dpi = Dpi }));

    private static string Svg(Sheet sheet, Theme theme) => SvgWriter.Write(sheet, new() { Theme = theme, Text = SvgText.Strokes });
}
