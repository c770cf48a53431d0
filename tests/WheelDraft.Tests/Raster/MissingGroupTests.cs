using WheelDraft.Drawing;
using Xunit;

namespace WheelDraft.Tests.Raster;

/// <summary>Leaving any one group out of the SVG of a sheet is noticed by the comparison that finds nothing when all is there.</summary>
public sealed class MissingGroupTests(ITestOutputHelper output)
{
    /// <summary>Groups of which next to nothing shows on a whole sheet, so that the picture is the same without them.</summary>
    private static readonly (string Sheet, string Role, string Reason)[] Covered =
    [
    ];

    public static TheoryData<string, string, string> Sheets => DemoSheets.LightRows;

    [Theory]
    [MemberData(nameof(Sheets), DisableDiscoveryEnumeration = true)]
    public void Svg_WithoutOneGroup_IsNoticed(string demo, string sheet, string manner)
    {
        PicturedSheet pictured = DemoSheets.Of(demo, sheet, manner);
        Assert.All(pictured.Skia.NotMissed, id => Assert.Fail($"{demo}, sheet {sheet}, {manner}: the group {id} is not missed"));
        Assert.False(pictured.Skia.IsAgainSeen, $"{demo}, sheet {sheet}, {manner}: with every group in its place again, something is seen.");
        output.WriteLine($"{demo} {sheet} {manner}, covered: {string.Join(' ', pictured.Unseen.Select(g => g.Id))}");
        Assert.All(pictured.Unseen, g => Assert.True(Covered.Any(c => IsOf(c, pictured, g)), $"{demo}, sheet {sheet}, {manner}: next to nothing is seen of the group {g.Id}: draw it further up, or list it with the reason."));
    }

    /// <summary>Each group by itself on the paper, so that nothing lies over it.</summary>
    [Theory]
    [MemberData(nameof(Sheets), DisableDiscoveryEnumeration = true)]
    public void Svg_OfOneGroupAlone_LooksAsItsPngAndIsNoticedWhenMissing(string demo, string sheet, string manner) =>
        Assert.All(DemoSheets.Of(demo, sheet, manner).Skia.NotAlike, trouble => Assert.Fail($"{demo}, sheet {sheet}, {manner}, {trouble}"));

    [Fact]
    public void Covered_EachEntry_IsNeeded() =>
        Assert.All(Covered, c => Assert.True(DemoSheets.All.Any(s => s.Theme == Theme.Light && s.Unseen.Any(g => IsOf(c, s, g))), $"{c.Sheet} {c.Role} ({c.Reason}) is seen on every sheet."));

    private static bool IsOf((string Sheet, string Role, string Reason) covered, PicturedSheet sheet, SheetGroup group) =>
        (covered.Sheet, covered.Role) == (sheet.Sheet.Words.Name, group.Name.Role);
}
