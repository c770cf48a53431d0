using System.Globalization;
using System.Runtime.Intrinsics;

namespace WheelDraft.Tests.Raster;

/// <summary>How two pictures of one size differ: as a share of their ink, and where most of it lies together.</summary>
/// <remarks>
/// Renderers round edges to different pixels and shade them differently, but they may not leave out, add, move or recolour
/// anything. So a pixel counts as different when its colour lies outside the colours within one pixel of it in the other picture,
/// in either direction, by more than a slack: a few levels, and a third of the contrast within two pixels. On plain ground that
/// is a few levels, so the palest filling is missed when it is not there.
/// The share alone would not see a small thing missing on a large sheet; so no square of 25 pixels (5 mm at 127 dpi) may
/// hold more than a few different pixels either.
/// </remarks>
internal sealed class PictureDifference
{
    /// <summary>Of the pixels inked in either picture, widened by one pixel.</summary>
    internal const double MostShare = 0.01;

    // Measured on all sheets of all examples in three renderers: 0. The smallest letter missing is 8, an r of 1.8 mm.
    private const int MostTogether = 5;

    internal const int SquarePixels = 25;

    /// <summary>How far about a pixel is looked.</summary>
    internal const int SurroundingPixels = 2;

    // Levels of 255. Colours are given as numbers, so plain areas are equal but for rounding; the palest step drawn has 10.
    private const int Rounding = 4;

    // On a pixel that a line covers in part renderers disagree by up to a quarter of the step between line and ground: each
    // reckons the covered share in its own way, and librsvg draws arcs as chords within a tenth of a pixel.
    private const int EdgePart = 3;

    private static readonly int[] Colours = [0, 8, 16];

    private readonly Picture _one;
    private readonly Picture _other;
    private readonly Lazy<double> _share;

    private PictureDifference(Picture one, Picture other)
    {
        if ((one.Width, one.Height) != (other.Width, other.Height))
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Pictures of {one.Width} by {one.Height} and of {other.Width} by {other.Height} pixels are not compared."), nameof(other));
        }

        _one = one;
        _other = other;
        Pixels = [.. Different(one, other)];
        _share = new(() => Pixels.Count == 0 ? 0 : Pixels.Count / (double)Ink());
        (Together, Square) = Densest();
    }

    /// <summary>The different pixels, row by row.</summary>
    internal IReadOnlyList<int> Pixels { get; }

    /// <summary>Their share of the pixels inked in either picture, widened by one pixel.</summary>
    internal double Share => _share.Value;

    /// <summary>The most of them in one square.</summary>
    internal int Together { get; }

    /// <summary>That square.</summary>
    internal PixelWindow Square { get; }

    /// <summary>Whether the pictures show something different.</summary>
    internal bool IsSeen => Together > MostTogether || Share > MostShare;

    internal static PictureDifference Of(Picture one, Picture other) => new(one, other);

    /// <summary>Whether two pictures show something different; quicker where they do, for it looks no further.</summary>
    internal static bool IsSeenBetween(Picture one, Picture other) =>
        IsCrowded(one, other, new(0, 0, one.Width, one.Height)) || Of(one, other).IsSeen;

    /// <summary>Whether one square of a part, which begins at a border of squares, holds more different pixels than two equal pictures may. What lies about the
    /// part counts as surroundings of its pixels, as it does in the comparison of the wholes.</summary>
    internal static bool IsCrowded(Picture one, Picture other, PixelWindow part)
    {
        Dictionary<(int X, int Y), int> squares = [];
        foreach (int at in Different(one, other))
        {
            (int x, int y) = ((at % one.Width) - part.X, (at / one.Width) - part.Y);
            if (x < 0 || y < 0 || x >= part.Width || y >= part.Height)
            {
                continue;
            }

            (int, int) square = (x / SquarePixels, y / SquarePixels);
            int together = squares.GetValueOrDefault(square) + 1;
            if (together > MostTogether)
            {
                return true;
            }

            squares[square] = together;
        }

        return false;
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Pixels.Count} pixels differ, {Share:P4} of the ink (at most {MostShare:P0}), {Together} of them together (at most {MostTogether}) at {Square.X}, {Square.Y}");

    private static IEnumerable<int> Different(Picture one, Picture other)
    {
        for (int at = NextUnequal(one, other, 0); at < one.Pixels.Length; at = NextUnequal(one, other, at + 1))
        {
            if (Picture.Apart(one.Pixels[at], other.Pixels[at]) > Rounding && IsOutside(one, other, at))
            {
                yield return at;
            }
        }
    }

    private static int NextUnequal(Picture one, Picture other, int from) => from + one.Pixels[from..].CommonPrefixLength(other.Pixels[from..]);

    /// <summary>Whether a colour leaves the range of its surroundings in the other picture, this way or that, by more than the slack.</summary>
    private static bool IsOutside(Picture one, Picture other, int at)
    {
        LevelRange nearOne = Around(one, at, 1);
        LevelRange nearOther = Around(other, at, 1);
        LevelRange? about = null;
        foreach (int bits in Colours)
        {
            int excess = Math.Max(nearOther.Excess(one.Pixels[at], bits), nearOne.Excess(other.Pixels[at], bits));
            if (excess > Rounding)
            {
                // Within two pixels: between two lines side by side all is dark, and the ground is that far off.
                about ??= Around(one, at, SurroundingPixels).With(Around(other, at, SurroundingPixels));
                if (excess > Rounding + (about.Value.Contrast(bits) / EdgePart))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>The least and the greatest level of each colour within so many pixels.</summary>
    private static LevelRange Around(Picture picture, int at, int reach)
    {
        Vector128<byte> low = Vector128<byte>.AllBitsSet;
        Vector128<byte> high = Vector128<byte>.Zero;
        Neighbours near = Neighbours.Of(picture, at, reach);
        for (int row = near.Top; row <= near.Bottom; row += picture.Width)
        {
            foreach (uint pixel in picture.Pixels.Slice(row + near.Left, near.Count))
            {
                Vector128<byte> levels = Vector128.CreateScalarUnsafe(pixel).AsByte();
                low = Vector128.Min(low, levels);
                high = Vector128.Max(high, levels);
            }
        }

        return new(low.AsUInt32().ToScalar(), high.AsUInt32().ToScalar());
    }

    private int Ink()
    {
        bool[] ink = new bool[_one.Pixels.Length];
        for (int at = 0; at < ink.Length; at++)
        {
            if (_one.IsInked(at) || _other.IsInked(at))
            {
                Neighbours near = Neighbours.Of(_one, at, 1);
                for (int row = near.Top; row <= near.Bottom; row += _one.Width)
                {
                    ink.AsSpan(row + near.Left, near.Count).Fill(true);
                }
            }
        }

        // What differs is ink, be it paler than what else counts as such.
        return ink.AsSpan().Count(true) + Pixels.Count(p => !ink[p]);
    }

    private static (int X, int Y) SquareOf(Picture picture, int at) => (at % picture.Width / SquarePixels, at / picture.Width / SquarePixels);

    private (int Together, PixelWindow Square) Densest()
    {
        (int X, int Y, int Count) densest = Pixels
            .CountBy(p => SquareOf(_one, p))
            .Select(s => (s.Key.X, s.Key.Y, s.Value))
            .DefaultIfEmpty()
            .MaxBy(s => s.Item3);
        return (densest.Count, new(densest.X * SquarePixels, densest.Y * SquarePixels, SquarePixels, SquarePixels));
    }

    /// <summary>A pixel of the least level of each colour, and one of the greatest.</summary>
    private readonly record struct LevelRange(uint Low, uint High)
    {
        internal int Contrast(int bits) => Picture.Level(High, bits) - Picture.Level(Low, bits);

        internal int Excess(uint pixel, int bits) => Math.Max(Picture.Level(Low, bits) - Picture.Level(pixel, bits), Picture.Level(pixel, bits) - Picture.Level(High, bits));

        internal LevelRange With(LevelRange other)
        {
            Vector128<byte> low = Vector128.Min(Vector128.CreateScalar(Low).AsByte(), Vector128.CreateScalar(other.Low).AsByte());
            Vector128<byte> high = Vector128.Max(Vector128.CreateScalar(High).AsByte(), Vector128.CreateScalar(other.High).AsByte());
            return new(low.AsUInt32().ToScalar(), high.AsUInt32().ToScalar());
        }
    }

    /// <summary>A pixel with those about it: starts of rows, and what of each.</summary>
    private readonly record struct Neighbours(int Top, int Bottom, int Left, int Count)
    {
        internal static Neighbours Of(Picture picture, int at, int reach)
        {
            int width = picture.Width;
            int x = at % width;
            int y = at / width;
            int left = Math.Max(x - reach, 0);
            return new(Math.Max(y - reach, 0) * width, Math.Min(y + reach, picture.Height - 1) * width, left, Math.Min(x + reach + 1, width) - left);
        }
    }
}
