using SkiaSharp;
using WheelDraft.Drawing;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Raster;

/// <summary>A sheet of an example in the colours of a theme, with its own picture and its SVG at the same size.</summary>
/// <remarks>Texts are strokes in both: live text is drawn with a font of the machine, so no two machines need agree on it.</remarks>
internal sealed class PicturedSheet
{
    /// <summary>127 dpi: sheets of A sizes then have a whole number of pixels, and no renderer has to round their size.</summary>
    internal const int PixelsPerMm = 5;

    // One is nearly always enough.
    private const int PartsTried = 2;

    private const double Dpi = PixelsPerMm * 25.4;

    private readonly Lazy<PackedPicture> _own;
    private readonly Lazy<string> _svg;
    private readonly Lazy<IReadOnlyList<SheetGroup>> _unseen;
    private readonly Lazy<SkiaVerdict> _skia;

    internal PicturedSheet(string demo, Sheet sheet, Theme theme)
    {
        Demo = demo;
        Sheet = sheet;
        Theme = theme;
        Manner = theme.Name;
        _own = new(WriteAndRead);
        _svg = new(() => SvgOf(Sheet));
        _unseen = new(FindUnseen);
        _skia = new(() => new(this));
    }

    internal string Demo { get; }

    internal Sheet Sheet { get; }

    internal Theme Theme { get; }

    /// <summary>The theme's name, and what else is not as usual.</summary>
    internal string Manner { get; init; }

    /// <summary>Our own PNG; the file is written and read once, and what it shows kept packed so that not all pictures lie in memory.</summary>
    internal Picture Own => _own.Value.Unpacked();

    internal string Svg => _svg.Value;

    /// <summary>The whole picture.</summary>
    internal PixelWindow Whole => new(0, 0, (int)Math.Ceiling((Sheet.WidthMm * PixelsPerMm) - 1e-6), (int)Math.Ceiling((Sheet.HeightMm * PixelsPerMm) - 1e-6));

    /// <summary>Groups whose absence is not seen in our own picture either: others lie over them.</summary>
    internal IReadOnlyList<SheetGroup> Unseen => _unseen.Value;

    /// <summary>What Svg.Skia says to it.</summary>
    internal SkiaVerdict Skia => _skia.Value;

    /// <summary>The file of another sheet of this size, as wide as the picture has pixels of 1/96 in.</summary>
    internal string SvgOf(Sheet other) =>
        SvgWriter.Write(other, new() { Theme = Theme, Text = SvgText.Strokes, WidthMm = other.WidthMm * PixelsPerMm * 25.4 / 96 });

    /// <summary>What our own painter, that of the PNG, draws of groups in a window.</summary>
    internal Picture Painted(IReadOnlyList<SheetGroup> groups, PixelWindow window)
    {
        Bounds seen = new Bounds(window.X, window.Y, window.X + window.Width, window.Y + window.Height).Grown(1);
        SheetItem[] items = [.. groups.SelectMany(g => g.Items).Where(i => PixelsOf(i.Bounds).Overlaps(seen))];
        Sheet part = new(Sheet.Words, Sheet.Size, [new(new("part", "Part", "part"), items)], []);
        return Picture.Painted(window, canvas =>
        {
            canvas.Clear(new SKColor(Theme.Paper.Red, Theme.Paper.Green, Theme.Paper.Blue));
            canvas.Scale(PixelsPerMm);
            new SheetPainter(canvas, Theme).PaintItems(part);
        });
    }

    /// <summary>Whether a picture without a group differs from one with it.</summary>
    /// <remarks>Small parts are looked at first, one item in each: what is seen in one of them is seen.</remarks>
    internal bool IsMissed(SheetGroup group, Func<PixelWindow, Picture> with, Func<PixelWindow, Picture> without)
    {
        PixelWindow[] items = [.. group.Items.Select(i => WindowOf([i])).OrderBy(w => w.Width * w.Height).Take(PartsTried)];
        if (items.Any(i => IsCrowded(i, with, without)))
        {
            return true;
        }

        PixelWindow window = WindowOf(group);
        using Picture there = with(window);
        using Picture gone = without(window);
        return PictureDifference.IsSeenBetween(there, gone);
    }

    /// <summary>The squares of the comparison that a group touches.</summary>
    internal PixelWindow WindowOf(SheetGroup group) =>
        group.Items.Any() ? WindowOf(group.Items) : throw new InvalidDataException($"The group {group.Id} of sheet {Sheet.Words.Name} is empty.");

    /// <summary>The squares of the comparison that items touch.</summary>
    internal PixelWindow WindowOf(IEnumerable<SheetItem> items)
    {
        const int square = PictureDifference.SquarePixels;
        Bounds all = PixelsOf(items.Select(i => i.Bounds).Aggregate((a, b) => a.With(b))).Grown(2);
        int left = Math.Max(0, (int)all.MinX / square * square);
        int top = Math.Max(0, (int)all.MinY / square * square);
        int right = Math.Min(Whole.Width, ((int)all.MaxX / square * square) + square);
        int bottom = Math.Min(Whole.Height, ((int)all.MaxY / square * square) + square);
        return new(left, top, right - left, bottom - top);
    }

    private PackedPicture WriteAndRead()
    {
        using Picture read = Picture.Of(PngWriter.Write(Sheet, new() { Theme = Theme, Dpi = Dpi }));
        return new(read);
    }

    private IReadOnlyList<SheetGroup> FindUnseen()
    {
        using Picture own = Own;
        return [.. Sheet.AllGroups.Where(g => !IsSeen(own, g))];
    }

    private bool IsSeen(Picture own, SheetGroup group)
    {
        IReadOnlyList<SheetGroup> others = SheetEdits.Without(Sheet, group.Id).Groups;
        return IsMissed(group, own.Part, w => Painted(others, w));
    }

    private bool IsCrowded(PixelWindow part, Func<PixelWindow, Picture> with, Func<PixelWindow, Picture> without)
    {
        // Seen with a border of what lies about it.
        int left = Math.Max(0, part.X - PictureDifference.SurroundingPixels);
        int top = Math.Max(0, part.Y - PictureDifference.SurroundingPixels);
        PixelWindow about = new(
            left,
            top,
            Math.Min(Whole.Width, part.X + part.Width + PictureDifference.SurroundingPixels) - left,
            Math.Min(Whole.Height, part.Y + part.Height + PictureDifference.SurroundingPixels) - top);
        using Picture there = with(about);
        using Picture gone = without(about);
        return PictureDifference.IsCrowded(there, gone, new(part.X - left, part.Y - top, part.Width, part.Height));
    }

    private Bounds PixelsOf(Bounds onPaper) =>
        new(onPaper.MinX * PixelsPerMm, (Sheet.HeightMm - onPaper.MaxY) * PixelsPerMm, onPaper.MaxX * PixelsPerMm, (Sheet.HeightMm - onPaper.MinY) * PixelsPerMm);
}
