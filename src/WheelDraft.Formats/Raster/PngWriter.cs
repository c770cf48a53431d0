using System.Globalization;
using SkiaSharp;
using WheelDraft.Drawing;

namespace WheelDraft.Formats.Raster;

/// <summary>How a sheet is written as PNG.</summary>
internal sealed record PngOptions
{
    /// <summary>Colours.</summary>
    public Theme Theme { get; init; } = Theme.Light;

    /// <summary>Pixels per inch, 10 to 2400.</summary>
    public double Dpi { get; init; } = 150;

    /// <summary>For letters that the stroke alphabet lacks, or null.</summary>
    public ScriptFont? Font { get; init; }

    /// <summary>A picture of more pixels than these is painted in bands, with the same bytes: 32 MiB in memory, above which memory that is given back is the system's again.</summary>
    internal long MostAtOnce { get; init; } = 8 << 20;

    /// <summary>Pixels of a band: 8 MiB in memory. What crosses the edge of two bands is painted twice.</summary>
    internal int BandPixels { get; init; } = 2 << 20;

    /// <summary>Rows of a band.</summary>
    internal int RowsInBand(int width) => Math.Max(1, BandPixels / width);
}

/// <summary>Writes a sheet as PNG: 24-bit colour, no alpha, with its resolution.</summary>
internal static class PngWriter
{
    /// <summary>The most pixels of one picture: an A3 sheet at 600 dpi has 69.6 million and takes 280 MB while it is drawn; with more, the program would not
    /// keep to half a gigabyte.</summary>
    public const long MostPixels = 70_000_000;

    /// <summary>The highest resolution in dpi, at most 2400, at which a sheet has no more pixels than a picture may.</summary>
    public static double MostDpi(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        double dpi = Math.Min(2400, 25.4 * Math.Sqrt(MostPixels / (sheet.WidthMm * sheet.HeightMm)));

        // Each side is rounded up to a whole pixel.
        while (PixelsOf(sheet, dpi) > MostPixels)
        {
            dpi = Math.Floor(dpi - 1e-9);
        }

        return dpi;
    }

    /// <summary>How many pixels a sheet has at a resolution.</summary>
    internal static long PixelsOf(Sheet sheet, double dpi) => (long)Pixels(sheet.WidthMm * dpi / 25.4) * Pixels(sheet.HeightMm * dpi / 25.4);

    /// <summary>The bytes of the file.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The resolution is out of range, or the picture would be too large.</exception>
    /// <param name="sheet">The sheet.</param>
    /// <param name="options">How it is written; as usual when null.</param>
    /// <param name="memory">Where it is painted, for several pictures one after the other; its own when null.</param>
    public static byte[] Write(Sheet sheet, PngOptions? options = null, PictureMemory? memory = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        PngOptions chosen = options ?? new();
        if (!(chosen.Dpi is >= 10 and <= 2400))
        {
            throw new ArgumentOutOfRangeException(nameof(options), chosen.Dpi, "A PNG has 10 to 2400 dpi.");
        }

        double pixelsPerMm = chosen.Dpi / 25.4;
        int width = Pixels(sheet.WidthMm * pixelsPerMm);
        int height = Pixels(sheet.HeightMm * pixelsPerMm);
        if ((long)width * height > MostPixels)
        {
            throw new ArgumentOutOfRangeException(
                nameof(options),
                string.Create(CultureInfo.InvariantCulture, $"{width} x {height} pixels are more than {MostPixels / 1_000_000} million: choose a lower resolution than {chosen.Dpi} dpi."));
        }

        MemoryStream file = memory?.File() ?? new();
        file.Write(PngChunks.Signature);
        file.Write(PngChunks.Header(width, height, hasAlpha: false));
        file.Write(PngChunks.Resolution(chosen.Dpi));
        PngChunks.Write(file, "IDAT", to => PngPixels.Pack(to, width, take => Paint(sheet, chosen, memory, take)));
        file.Write(PngChunks.Chunk("IEND", []));
        return file.ToArray();
    }

    private static void Paint(Sheet sheet, PngOptions options, PictureMemory? memory, PngPixels.RowsTaken take)
    {
        (double pixelsPerMm, (Theme, ScriptFont?) look) = (options.Dpi / 25.4, (options.Theme, options.Font));
        if (PixelsOf(sheet, options.Dpi) > options.MostAtOnce)
        {
            SKImageInfo info = InfoOf(sheet, pixelsPerMm);
            new BandPainting(sheet, look, pixelsPerMm, info).Paint(options.RowsInBand(info.Width), take);
            return;
        }

        using SKSurface surface = Painted(sheet, look, pixelsPerMm, memory);
        using SKPixmap pixels = surface.PeekPixels();
        take(pixels.GetPixelSpan());
    }

    private static SKImageInfo InfoOf(Sheet sheet, double pixelsPerMm) =>
        new(Pixels(sheet.WidthMm * pixelsPerMm), Pixels(sheet.HeightMm * pixelsPerMm), SKColorType.Rgb888x, SKAlphaType.Opaque);

    /// <summary>A sheet painted into memory.</summary>
    internal static SKSurface Painted(Sheet sheet, (Theme Theme, ScriptFont? Font) look, double pixelsPerMm, PictureMemory? memory = null)
    {
        SKImageInfo info = InfoOf(sheet, pixelsPerMm);
        SKSurface surface = (memory is null ? SKSurface.Create(info) : SKSurface.Create(info, memory.Of(info.BytesSize64), info.RowBytes)) ?? throw new InvalidOperationException("The picture could not be made in memory.");
        surface.Canvas.Clear(new SKColor(look.Theme.Paper.Red, look.Theme.Paper.Green, look.Theme.Paper.Blue));
        surface.Canvas.Scale((float)pixelsPerMm);
        new SheetPainter(surface.Canvas, look.Theme, look.Font).PaintItems(sheet);
        return surface;
    }

    /// <summary>Rounded up, a hair of rounding aside, so that the edge of the sheet is in the picture.</summary>
    private static int Pixels(double exact) => Math.Max(1, (int)Math.Ceiling(exact - 1e-6));
}
