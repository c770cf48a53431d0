using WheelDraft.Cli;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Raster;

/// <summary>A design of folded contacts: the ladder of short prisms that its strips were drawn as left renderers 7 pixels apart in one square,
/// and one prism's edges hid a group.</summary>
public sealed class FoldedStripsPictureTests : IDisposable
{
    private readonly OutsideFolder _folder = new();

    private static readonly Lazy<PicturedSheet> Spacing = new(() => new(
        "folded-strips",
        SpacingSheet.Of(Design.Of(ParameterReader.Read(TemplateShelf.All.Single(t => t.Name is "folded-strips").Bytes()).Brief!)),
        Theme.Light));

    public void Dispose() => _folder.Dispose();

    [Fact]
    [Trait("Needs", "rsvg-convert")]
    public async Task Png_OfTheSpacingPlan_LooksAsOtherRenderersDrawItsSvg()
    {
        PicturedSheet sheet = Spacing.Value;
        PictureDifference rsvg = PictureDifference.Of(sheet.Own, await OutsideRenderers.RsvgAsync(sheet.Svg, sheet.Whole, _folder));
        Assert.False(rsvg.IsSeen, $"rsvg-convert: {rsvg}");
        PictureDifference skia = PictureDifference.Of(sheet.Own, new SkiaDrawing(sheet.Svg).Painted(sheet.Whole));
        Assert.False(skia.IsSeen, $"Svg.Skia: {skia}");
    }

    [Fact]
    public void Groups_OfTheSpacingPlan_AreAllSeen() => Assert.Empty(Spacing.Value.Unseen.Select(g => g.Id));
}
