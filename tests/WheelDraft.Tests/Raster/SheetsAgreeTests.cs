using System.Collections.Concurrent;
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
        PicturedSheet pictured = DemoSheets.Of(demo, sheet, manner);
        using Picture own = pictured.Own;
        using SkiaDrawing drawing = new(pictured.Svg);
        using Picture theirs = drawing.Painted(pictured.Whole);
        PictureDifference difference = PictureDifference.Of(own, theirs);
        output.WriteLine($"{demo} {sheet} {manner}: {difference}");
        Assert.False(difference.IsSeen, $"{demo}, sheet {sheet}, {manner}, Svg.Skia: {difference}");
    }
}

/// <summary>Against Chromium, which draws the sheets of an example in one manner in one run.</summary>
public sealed class ChromiumSheetsAgreeTests(ITestOutputHelper output, ChromiumPages pages) : IClassFixture<ChromiumPages>
{
    public static TheoryData<string, string, string> Sheets => DemoSheets.Rows;

    [Theory]
    [Trait("Needs", "chromium")]
    [MemberData(nameof(Sheets), DisableDiscoveryEnumeration = true)]
    public async Task Png_OfASheet_LooksAsChromiumDrawsItsSvg(string demo, string sheet, string manner)
    {
        PicturedSheet pictured = DemoSheets.Of(demo, sheet, manner);
        using Picture own = pictured.Own;
        using Picture theirs = await pages.PictureAsync(pictured);
        PictureDifference difference = PictureDifference.Of(own, theirs);
        output.WriteLine($"{demo} {sheet} {manner}: {difference}");
        Assert.False(difference.IsSeen, $"{demo}, sheet {sheet}, {manner}, Chromium: {difference}");
    }
}

/// <summary>What Chromium draws: pictures by the dozen when the first of them is asked for, each given out once.</summary>
public sealed class ChromiumPages
{
    // The browser takes longer to start than to draw; but its picture of them all has to find room in memory.
    private const int Together = 16;

    private readonly ConcurrentDictionary<int, Lazy<Task<ConcurrentDictionary<PicturedSheet, Picture>>>> _drawn = new();

    internal async Task<Picture> PictureAsync(PicturedSheet sheet)
    {
        int dozen = DemoSheets.All.Index().First(s => s.Item == sheet).Index / Together;
        ConcurrentDictionary<PicturedSheet, Picture> pictures = await _drawn.GetOrAdd(dozen, of => new(() => DrawAsync(of))).Value;

        // Given away, so that not all pictures lie in memory until the last is compared.
        return pictures.TryRemove(sheet, out Picture? picture) ? picture : throw new InvalidOperationException($"{sheet.Sheet.Words.Name} is asked for twice.");
    }

    private static async Task<ConcurrentDictionary<PicturedSheet, Picture>> DrawAsync(int dozen)
    {
        PicturedSheet[] together = [.. DemoSheets.All.Skip(dozen * Together).Take(Together)];
        using OutsideFolder folder = new();
        IReadOnlyList<Picture> pictures = await OutsideRenderers.ChromiumAsync([.. together.Select(s => (s.Svg, s.Whole))], folder);
        return new(together.Zip(pictures).Select(p => KeyValuePair.Create(p.First, p.Second)));
    }
}
