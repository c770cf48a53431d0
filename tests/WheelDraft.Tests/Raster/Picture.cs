using System.Buffers;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using SkiaSharp;

namespace WheelDraft.Tests.Raster;

/// <summary>A rectangle of pixels, from the upper left corner of a picture.</summary>
internal readonly record struct PixelWindow(int X, int Y, int Width, int Height);

/// <summary>A decoded picture; what was transparent shows the white paper behind it.</summary>
/// <remarks>Its pixels are lent by a pool: large arrays that are thrown away make the runtime look through everything in memory, for every few of them.</remarks>
internal sealed class Picture : IDisposable
{
    private uint[] _pixels;

    private Picture(int width, int height)
    {
        Width = width;
        Height = height;
        _pixels = ArrayPool<uint>.Shared.Rent(width * height);
    }

    internal int Width { get; }

    internal int Height { get; }

    /// <summary>Row by row; red in the lowest byte, then green and blue.</summary>
    internal ReadOnlySpan<uint> Pixels => Own;

    private Span<uint> Own => _pixels.AsSpan(0, Width * Height);

    public void Dispose()
    {
        uint[] lent = Interlocked.Exchange(ref _pixels, []);
        if (lent.Length > 0)
        {
            ArrayPool<uint>.Shared.Return(lent);
        }
    }

    internal static Picture Of(byte[] png)
    {
        using SKBitmap decoded = SKBitmap.Decode(png);
        return Of(decoded, new(0, 0, decoded.Width, decoded.Height));
    }

    /// <summary>A picture as netpbm's format P6 has it: a page at 600 dpi is written and read ten times sooner than as PNG.</summary>
    internal static Picture OfPpm(byte[] ppm)
    {
        // "P6", width, height and 255, each with one blank or line end behind it.
        int at = 0;
        string[] words = [.. Enumerable.Range(0, 4).Select(_ =>
        {
            int from = at;
            at = Array.FindIndex(ppm, from, b => b is (byte)' ' or (byte)'\n') + 1;
            return Encoding.ASCII.GetString(ppm, from, at - from - 1);
        })];
        if (words is not ["P6", _, _, "255"])
        {
            throw new InvalidDataException($"No picture with colours of 8 bits: {string.Join(' ', words)}.");
        }

        Picture picture = new(int.Parse(words[1], CultureInfo.InvariantCulture), int.Parse(words[2], CultureInfo.InvariantCulture));
        Span<uint> pixels = picture.Own;
        for (int i = 0; i < pixels.Length; i++, at += 3)
        {
            pixels[i] = 0xFF000000 | ((uint)ppm[at + 2] << 16) | ((uint)ppm[at + 1] << 8) | ppm[at];
        }

        return picture;
    }

    /// <summary>A part of a decoded picture.</summary>
    internal static Picture Of(SKBitmap decoded, PixelWindow part) => Painted(part, canvas => canvas.DrawBitmap(decoded, 0, 0, SKSamplingOptions.Default));

    /// <summary>What a window shows of something painted on a canvas whose unit is one pixel.</summary>
    internal static Picture Painted(PixelWindow window, Action<SKCanvas> paint)
    {
        Picture picture = new(window.Width, window.Height);
        SKImageInfo info = new(window.Width, window.Height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        GCHandle held = GCHandle.Alloc(picture._pixels, GCHandleType.Pinned);
        try
        {
            using SKSurface surface = SKSurface.Create(info, held.AddrOfPinnedObject(), info.RowBytes);
            surface.Canvas.Clear(SKColors.White);
            surface.Canvas.Translate(-window.X, -window.Y);
            paint(surface.Canvas);
            surface.Flush();
        }
        finally
        {
            held.Free();
        }

        return picture;
    }

    internal Picture Part(PixelWindow window)
    {
        Picture part = new(window.Width, window.Height);
        for (int y = 0; y < window.Height; y++)
        {
            Pixels.Slice(((window.Y + y) * Width) + window.X, window.Width).CopyTo(part.Own[(y * window.Width)..]);
        }

        return part;
    }

    /// <summary>Whether a pixel differs from the ground (the upper left corner) by more than rounding.</summary>
    internal bool IsInked(int x, int y) => IsInked((y * Width) + x);

    /// <summary>The same by its place among all pixels.</summary>
    internal bool IsInked(int at) => _pixels[at] != _pixels[0] && Apart(_pixels[at], _pixels[0]) > 24;

    /// <summary>The greatest difference of two pixels in one of the three colours, levels of 255.</summary>
    internal static int Apart(uint one, uint other) =>
        Math.Max(Math.Abs(Level(one, 0) - Level(other, 0)), Math.Max(Math.Abs(Level(one, 8) - Level(other, 8)), Math.Abs(Level(one, 16) - Level(other, 16))));

    /// <summary>The level, of 255, of the colour that is so many bits up.</summary>
    internal static int Level(uint pixel, int bits) => (int)((pixel >> bits) & 255);
}
