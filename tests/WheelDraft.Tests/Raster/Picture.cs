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
        using SKCodec codec = SKCodec.Create(new MemoryStream(png)) ?? throw new InvalidDataException("No picture.");
        bool isOpaque = codec.Info.AlphaType is SKAlphaType.Opaque;
        SKImageInfo info = new(codec.Info.Width, codec.Info.Height, SKColorType.Rgba8888, isOpaque ? SKAlphaType.Opaque : SKAlphaType.Premul);
        Picture picture = new(info.Width, info.Height);
        picture.Held(address =>
        {
            SKCodecResult result = codec.GetPixels(info, address);
            _ = result is SKCodecResult.Success ? result : throw new InvalidDataException($"The picture is not whole: {result}.");
        });
        if (!isOpaque)
        {
            picture.LayOnWhite();
        }

        return picture;
    }

    /// <summary>A picture whose pixels are written row by row, red in the lowest byte.</summary>
    internal static Picture Filled(int width, int height, Action<Span<uint>> fill)
    {
        Picture picture = new(width, height);
        fill(picture.Own);
        return picture;
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

    /// <summary>What a window shows of something painted on a canvas whose unit is one pixel.</summary>
    internal static Picture Painted(PixelWindow window, Action<SKCanvas> paint)
    {
        Picture picture = new(window.Width, window.Height);
        SKImageInfo info = new(window.Width, window.Height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        picture.Held(address =>
        {
            using SKSurface surface = SKSurface.Create(info, address, info.RowBytes);
            surface.Canvas.Clear(SKColors.White);
            surface.Canvas.Translate(-window.X, -window.Y);
            paint(surface.Canvas);
            surface.Flush();
        });
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

    /// <summary>The pixels stay where they are while something writes to their address.</summary>
    private void Held(Action<nint> write)
    {
        GCHandle held = GCHandle.Alloc(_pixels, GCHandleType.Pinned);
        try
        {
            write(held.AddrOfPinnedObject());
        }
        finally
        {
            held.Free();
        }
    }

    /// <summary>Colours are multiplied by their share of the pixel; the paper has the rest.</summary>
    private void LayOnWhite()
    {
        foreach (ref uint pixel in Own)
        {
            uint rest = 255 - (pixel >> 24);
            pixel = rest == 0 ? pixel : 0xFF000000 | ((pixel & 0x00FFFFFF) + (rest * 0x010101));
        }
    }
}
