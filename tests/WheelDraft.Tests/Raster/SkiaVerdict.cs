using WheelDraft.Drawing;

namespace WheelDraft.Tests.Raster;

/// <summary>What Svg.Skia's reading of a sheet's SVG says of our own PNG: of the whole, of the sheet without any one of its groups, and of each group by itself.</summary>
/// <remarks>All of it in one go, because reading and cutting a file costs more than looking at it, and what was read takes too much memory to be kept.</remarks>
internal sealed class SkiaVerdict
{
    internal SkiaVerdict(PicturedSheet pictured)
    {
        using Picture own = pictured.Own;
        using SkiaDrawing drawing = new(pictured.Svg);
        using Picture theirs = drawing.Painted(pictured.Whole);
        PictureDifference difference = PictureDifference.Of(own, theirs);
        IsWholeSeen = difference.IsSeen;
        Whole = difference.ToString();
        if (pictured.Theme != Theme.Light)
        {
            return;
        }

        NotMissed = [.. pictured.Sheet.AllGroups.Except(pictured.Unseen).Where(g => !IsMissed(own, drawing, pictured, g)).Select(g => g.Id)];
        using Picture again = drawing.PaintedFromPieces(pictured.Whole);
        IsAgainSeen = PictureDifference.IsSeenBetween(own, again);
        NotAlike = [.. pictured.Sheet.AllGroups.Select(g => Alone(drawing, pictured, g)).OfType<string>()];
    }

    /// <summary>Whether the whole sheet differs.</summary>
    internal bool IsWholeSeen { get; }

    /// <summary>How much.</summary>
    internal string Whole { get; }

    /// <summary>Groups, of those that are seen at all, whose absence from the file is not noticed; of the light theme, as all below.</summary>
    internal IReadOnlyList<string> NotMissed { get; } = [];

    /// <summary>Whether the sheet differs when every group is in its place again.</summary>
    internal bool IsAgainSeen { get; }

    /// <summary>Of groups that differ by themselves, or are not missed then, which and how.</summary>
    internal IReadOnlyList<string> NotAlike { get; } = [];

    private static bool IsMissed(Picture own, SkiaDrawing drawing, PicturedSheet pictured, SheetGroup group) =>
        pictured.IsMissed(group, own.Part, w => drawing.PaintedWithout(group.Id, w));

    private static string? Alone(SkiaDrawing drawing, PicturedSheet pictured, SheetGroup group)
    {
        PixelWindow window = pictured.WindowOf(group);
        using Picture own = pictured.Painted([group], window);
        using Picture painted = drawing.PaintedAlone(group.Id, window);
        PictureDifference there = PictureDifference.Of(own, painted);
        if (there.IsSeen)
        {
            return $"group {group.Id} alone: {there}";
        }

        return pictured.IsMissed(group, w => pictured.Painted([group], w), drawing.PaintedWithoutAnyGroup) ? null : $"the group {group.Id} alone is not missed";
    }
}
