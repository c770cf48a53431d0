using Xunit;

namespace WheelDraft.Tests.Raster;

// Every sheet of every example: our own PNG against other projects' renderers of our SVG. No difference comes near the bound,
// so there is no list of exceptions. A class a renderer: they run side by side.

/// <summary>Against librsvg.</summary>
public sealed class RsvgSheetsAgreeTests(ITestOutputHelper output) : IDisposable
{
    private readonly OutsideFolder _folder = new();

    public static TheoryData<string, string, string> Sheets => DemoSheets.Rows;

    public void Dispose() => _folder.Dispose();

    [Theory]
    [Trait("Needs", "rsvg-convert")]
    [MemberData(nameof(Sheets), DisableDiscoveryEnumeration = true)]
    public async Task Png_OfASheet_LooksAsRsvgDrawsItsSvg(string demo, string sheet, string manner)
    {
        PicturedSheet pictured = DemoSheets.Of(demo, sheet, manner);
        using Picture own = pictured.Own;
        using Picture theirs = await OutsideRenderers.RsvgAsync(pictured.Svg, pictured.Whole, _folder);
        PictureDifference difference = PictureDifference.Of(own, theirs);
        output.WriteLine($"{demo} {sheet} {manner}: {difference}");
        Assert.False(difference.IsSeen, $"{demo}, sheet {sheet}, {manner}, rsvg-convert: {difference}");
    }
}

/// <summary>Against Svg.Skia.</summary>
public sealed class SvgSkiaSheetsAgreeTests(ITestOutputHelper output)
{
    public static TheoryData<string, string, string> Sheets => DemoSheets.Rows;

    [Theory]
    [MemberData(nameof(Sheets), DisableDiscoveryEnumeration = true)]
    public void Png_OfASheet_LooksAsSvgSkiaDrawsItsSvg(string demo, string sheet, string manner)
    {
        SkiaVerdict verdict = DemoSheets.Of(demo, sheet, manner).Skia;
        output.WriteLine($"{demo} {sheet} {manner}: {verdict.Whole}");
        Assert.False(verdict.IsWholeSeen, $"{demo}, sheet {sheet}, {manner}, Svg.Skia: {verdict.Whole}");
    }
}

/// <summary>Against Chromium.</summary>
public sealed class ChromiumSheetsAgreeTests(ITestOutputHelper output, OutsideBrowser browser)
{
    public static TheoryData<string, string, string> Sheets => DemoSheets.Rows;

    [Theory]
    [Trait("Needs", "chromium")]
    [MemberData(nameof(Sheets), DisableDiscoveryEnumeration = true)]
    public async Task Png_OfASheet_LooksAsChromiumDrawsItsSvg(string demo, string sheet, string manner)
    {
        PicturedSheet pictured = DemoSheets.Of(demo, sheet, manner);
        using Picture own = pictured.Own;
        using Picture theirs = await OutsideRenderers.ChromiumAsync(pictured.Svg, pictured.Whole, browser);
        PictureDifference difference = PictureDifference.Of(own, theirs);
        output.WriteLine($"{demo} {sheet} {manner}: {difference}");
        Assert.False(difference.IsSeen, $"{demo}, sheet {sheet}, {manner}, Chromium: {difference}");
    }
}
