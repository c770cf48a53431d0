using SkiaSharp;

namespace WheelDraft.Tests.Raster;

/// <summary>A decoded picture, and how two of them are compared.</summary>
internal sealed class Picture
{
    private readonly byte[] _rgb;

    private Picture(int width, int height, byte[] rgb)
    {
        Width = width;
        Height = height;
        _rgb = rgb;
    }

    internal int Width { get; }

    internal int Height { get; }

    internal static Picture Of(byte[] png)
    {
        using SKBitmap decoded = SKBitmap.Decode(png);
        byte[] rgb = new byte[decoded.Width * decoded.Height * 3];
        SKColor[] pixels = decoded.Pixels;
        for (int i = 0; i < pixels.Length; i++)
        {
            // What is transparent shows the white paper behind it.
            int alpha = pixels[i].Alpha;
            rgb[3 * i] = (byte)(((pixels[i].Red * alpha) + (255 * (255 - alpha))) / 255);
            rgb[(3 * i) + 1] = (byte)(((pixels[i].Green * alpha) + (255 * (255 - alpha))) / 255);
            rgb[(3 * i) + 2] = (byte)(((pixels[i].Blue * alpha) + (255 * (255 - alpha))) / 255);
        }

        return new(decoded.Width, decoded.Height, rgb);
    }

    /// <summary>Whether a pixel differs from the ground (the upper left corner) by more than rounding.</summary>
    internal bool IsInked(int x, int y) => Apart(x, y, _rgb, 0) > 24;

    /// <summary>How many pixels differ, as a share of those inked in either picture, widened by one pixel.</summary>
    /// <remarks>A pixel differs when nothing within one pixel of it in the other picture looks like it, both ways: renderers
    /// may round edges to different pixels, and may shade them differently, but may not leave out, add or move anything.</remarks>
    internal double DifferenceFrom(Picture other)
    {
        if (Width != other.Width || Height != other.Height)
        {
            return 1;
        }

        bool[] own = Ink();
        bool[] theirs = other.Ink();
        long inked = 0;
        long different = 0;
        for (int y = 0; y < Height; y++)
        {
            for (int x = 0; x < Width; x++)
            {
                if (Any(own, x, y) || Any(theirs, x, y))
                {
                    inked++;
                    different += Lacks(x, y, other) || other.Lacks(x, y, this) ? 1 : 0;
                }
            }
        }

        return inked == 0 ? 0 : different / (double)inked;
    }

    /// <summary>Whether no neighbour in the other picture comes near this pixel.</summary>
    private bool Lacks(int x, int y, Picture other)
    {
        // Edge pixels are shades between two colours: half of a full step counts as alike, a whole line missing does not.
        const int alike = 96;
        for (int ny = Math.Max(0, y - 1); ny <= Math.Min(Height - 1, y + 1); ny++)
        {
            for (int nx = Math.Max(0, x - 1); nx <= Math.Min(Width - 1, x + 1); nx++)
            {
                if (Apart(x, y, other._rgb, 3 * ((ny * Width) + nx)) <= alike)
                {
                    return false;
                }
            }
        }

        return true;
    }

    private bool[] Ink()
    {
        bool[] ink = new bool[Width * Height];
        for (int i = 0; i < ink.Length; i++)
        {
            ink[i] = IsInked(i % Width, i / Width);
        }

        return ink;
    }

    private bool Any(bool[] ink, int x, int y)
    {
        for (int ny = Math.Max(0, y - 1); ny <= Math.Min(Height - 1, y + 1); ny++)
        {
            for (int nx = Math.Max(0, x - 1); nx <= Math.Min(Width - 1, x + 1); nx++)
            {
                if (ink[(ny * Width) + nx])
                {
                    return true;
                }
            }
        }

        return false;
    }

    private int Apart(int x, int y, byte[] rgb, int at)
    {
        int own = 3 * ((y * Width) + x);
        return Math.Max(Math.Abs(_rgb[own] - rgb[at]), Math.Max(Math.Abs(_rgb[own + 1] - rgb[at + 1]), Math.Abs(_rgb[own + 2] - rgb[at + 2])));
    }
}
