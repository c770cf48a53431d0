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
        using Picture own = pictured.Own;
        using SkiaDrawing drawing = new(pictured.Svg);
        foreach (SheetGroup group in pictured.Sheet.AllGroups.Except(pictured.Unseen))
        {
            PixelWindow window = pictured.WindowOf(group);
            using Picture there = own.Part(window);
            using Picture without = drawing.PaintedWithout(group.Id, window);
            Assert.True(PictureDifference.IsSeenBetween(there, without), $"{demo}, sheet {sheet}, {manner}: the group {group.Id} is not missed");
        }

        using Picture again = drawing.PaintedFromPieces(pictured.Whole);
        Assert.False(PictureDifference.IsSeenBetween(own, again), $"{demo}, sheet {sheet}, {manner}: with every group in its place again, something is seen.");
        output.WriteLine($"{demo} {sheet} {manner}, covered: {string.Join(' ', pictured.Unseen.Select(g => g.Id))}");
        Assert.All(pictured.Unseen, g => Assert.True(Covered.Any(c => IsOf(c, pictured, g)), $"{demo}, sheet {sheet}, {manner}: next to nothing is seen of the group {g.Id}: draw it further up, or list it with the reason."));
    }

    /// <summary>Each group by itself on the paper, so that nothing lies over it.</summary>
    [Theory]
    [MemberData(nameof(Sheets), DisableDiscoveryEnumeration = true)]
    public void Svg_OfOneGroupAlone_LooksAsItsPngAndIsNoticedWhenMissing(string demo, string sheet, string manner)
    {
        PicturedSheet pictured = DemoSheets.Of(demo, sheet, manner);
        foreach (SheetGroup group in pictured.Sheet.AllGroups)
        {
            PixelWindow window = pictured.WindowOf(group);
            using Picture own = pictured.Painted([group], window);
            using SkiaDrawing drawing = new(pictured.SvgOf(new(pictured.Sheet.Words, pictured.Sheet.Size, [group], [])));
            using Picture painted = drawing.Painted(window);
            PictureDifference there = PictureDifference.Of(own, painted);
            Assert.False(there.IsSeen, $"{demo}, sheet {sheet}, {manner}, group {group.Id} alone: {there}");
            using Picture without = drawing.PaintedWithout(group.Id, window);
            Assert.True(PictureDifference.IsSeenBetween(own, without), $"{demo}, sheet {sheet}, {manner}: the group {group.Id} alone is not missed");
        }
    }

    [Fact]
    public void Covered_EachEntry_IsNeeded() =>
        Assert.All(Covered, c => Assert.True(DemoSheets.All.Any(s => s.Theme == Theme.Light && s.Unseen.Any(g => IsOf(c, s, g))), $"{c.Sheet} {c.Role} ({c.Reason}) is seen on every sheet."));

    private static bool IsOf((string Sheet, string Role, string Reason) covered, PicturedSheet sheet, SheetGroup group) =>
        (covered.Sheet, covered.Role) == (sheet.Sheet.Words.Name, group.Name.Role);
}
