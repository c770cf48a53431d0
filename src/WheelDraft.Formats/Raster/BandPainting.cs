using System.Runtime.InteropServices;
using SkiaSharp;
using WheelDraft.Drawing;

namespace WheelDraft.Formats.Raster;

/// <summary>A large sheet painted band by band, to the same pixels as in one piece, in memory for a band.</summary>
/// <remarks>The canvas is that of the whole picture, so that every edge is worked out as it is there: a canvas that ended with the band would cut edges off, and its roundings are others. Only what is
/// written is confined to the band. The canvas's memory is asked for anew for each band: the system gives room for what is written and no more.</remarks>
/// <param name="sheet">The sheet.</param>
/// <param name="look">Colours, and the font for letters that the alphabet lacks.</param>
/// <param name="pixelsPerMm">Pixels a millimetre.</param>
/// <param name="info">Size and kind of the whole picture.</param>
internal sealed class BandPainting(Sheet sheet, (Theme Theme, ScriptFont? Font) look, double pixelsPerMm, SKImageInfo info)
{
    // Which rows each item of the sheet is painted on; known once it has been painted for the first time.
    private readonly (float Top, float Bottom)[] _rows = [.. Enumerable.Repeat((float.NegativeInfinity, float.PositiveInfinity), sheet.Items.Count())];

    /// <summary>Paints all bands from above, and hands on the pixels of each.</summary>
    /// <param name="rowsInBand">Rows of a band.</param>
    /// <param name="take">Is given them; they are gone afterwards.</param>
    public void Paint(int rowsInBand, PngPixels.RowsTaken take)
    {
        for (int top = 0; top < info.Height; top += rowsInBand)
        {
            Paint(top, Math.Min(info.Height, top + rowsInBand), take);
        }
    }

    private void Paint(int top, int bottom, PngPixels.RowsTaken take)
    {
        nint memory = Marshal.AllocHGlobal((nint)info.BytesSize64);
        try
        {
            using SKSurface surface = SKSurface.Create(info, memory, info.RowBytes) ?? throw new InvalidOperationException("The picture could not be made in memory.");
            using SKRegion band = Confined(top, bottom);
            SKCanvas canvas = surface.Canvas;
            canvas.ClipRegion(band);
            canvas.Clear(new SKColor(look.Theme.Paper.Red, look.Theme.Paper.Green, look.Theme.Paper.Blue));
            canvas.Scale((float)pixelsPerMm);
            new SheetPainter(canvas, look.Theme, look.Font).PaintItems(sheet, _rows, (top, bottom));
            using SKPixmap pixels = surface.PeekPixels();
            take(pixels.GetPixelSpan()[(top * info.RowBytes)..(bottom * info.RowBytes)]);
        }
        finally
        {
            Marshal.FreeHGlobal(memory);
        }
    }

    /// <summary>The band, and the first and the last pixel of the picture: an edge that leaves a clip's bounds is cut off there, and within these none is.</summary>
    private SKRegion Confined(int top, int bottom)
    {
        SKRegion band = new();
        band.SetRect(new SKRectI(0, top, info.Width, bottom));
        band.Op(new SKRectI(0, 0, 1, 1), SKRegionOperation.Union);
        band.Op(new SKRectI(info.Width - 1, info.Height - 1, info.Width, info.Height), SKRegionOperation.Union);
        return band;
    }
}
