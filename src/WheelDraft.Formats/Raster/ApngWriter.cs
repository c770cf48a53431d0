using System.Buffers.Binary;
using System.Runtime.InteropServices;
using SkiaSharp;
using WheelDraft.Drawing;

namespace WheelDraft.Formats.Raster;

/// <summary>Writes a film as an animated PNG (PNG specification, third edition, 11.3.6): a picture that moves wherever pictures are shown, and the first moment where it does not.</summary>
/// <remarks>Of each picture only the rectangle that differs from the one before is kept, and in it what is the same is transparent, which packs to next to nothing.</remarks>
internal static class ApngWriter
{
    // Delays are in thousandths of a second.
    private const int PerS = 1000;

    /// <summary>The bytes of the file.</summary>
    /// <param name="reel">The film.</param>
    /// <param name="widthPx">Its width, pixels; the height follows.</param>
    /// <param name="look">Colours, and the font for letters that the alphabet lacks.</param>
    public static byte[] Write(MomentReel reel, int widthPx, (Theme Theme, ScriptFont? Font) look)
    {
        double pixelsPerMm = widthPx / reel.Size.WidthMm;
        List<FilmPart> pictures = [];
        uint[] before = [];
        foreach (int[] some in Enumerable.Range(0, reel.Frames.Count).Chunk(Environment.ProcessorCount))
        {
            SKSurface[] surfaces = new SKSurface[some.Length];
            try
            {
                Parallel.For(0, some.Length, i => surfaces[i] = PngWriter.Painted(reel.Picture(some[i]), look, pixelsPerMm));
                for (int i = 0; i < some.Length; i++)
                {
                    using SKPixmap pixels = surfaces[i].PeekPixels();
                    uint[] now = MemoryMarshal.Cast<byte, uint>(pixels.GetPixelSpan()).ToArray();
                    Add(pictures, (before, now, pixels.Width), reel.Frames[some[i]].ForS);
                    before = now;
                }
            }
            finally
            {
                foreach (SKSurface? surface in surfaces)
                {
                    surface?.Dispose();
                }
            }
        }

        return File(pictures);
    }

    private sealed record FilmPart(byte[] Data, SKRectI Place, double ForS);

    private static void Add(List<FilmPart> pictures, (uint[] Before, uint[] Now, int Width) pixels, double forS)
    {
        SKRectI place = pixels.Before.Length == 0 ? new SKRectI(0, 0, pixels.Width, pixels.Now.Length / pixels.Width) : Difference(pixels);
        if (place.IsEmpty)
        {
            // Nothing has changed: the picture before is shown longer.
            pictures[^1] = pictures[^1] with { ForS = pictures[^1].ForS + forS };
            return;
        }

        uint[] part = new uint[place.Width * place.Height];
        for (int y = 0; y < place.Height; y++)
        {
            int from = ((place.Top + y) * pixels.Width) + place.Left;
            for (int x = 0; x < place.Width; x++)
            {
                bool isSame = pixels.Before.Length > 0 && pixels.Before[from + x] == pixels.Now[from + x];
                part[(y * place.Width) + x] = isSame ? 0 : pixels.Now[from + x] | Opaque;
            }
        }

        pictures.Add(new(PngPixels.Packed(MemoryMarshal.AsBytes(part.AsSpan()), place.Width, keepsAlpha: true), place, forS));
    }

    // The fourth byte of a pixel in memory, red first; machines that count the other way are not among those that this runs on.
    private const uint Opaque = 0xFF000000;

    /// <summary>The smallest rectangle that holds every pixel that differs; empty where none does.</summary>
    private static SKRectI Difference((uint[] Before, uint[] Now, int Width) pixels)
    {
        int rows = pixels.Now.Length / pixels.Width;
        (int left, int right, int top, int bottom) = (pixels.Width, 0, rows, 0);
        for (int y = 0; y < rows; y++)
        {
            ReadOnlySpan<uint> was = pixels.Before.AsSpan(y * pixels.Width, pixels.Width);
            ReadOnlySpan<uint> row = pixels.Now.AsSpan(y * pixels.Width, pixels.Width);
            int same = was.CommonPrefixLength(row);
            if (same == row.Length)
            {
                continue;
            }

            int last = row.Length - 1;
            while (was[last] == row[last])
            {
                last--;
            }

            (left, right, top, bottom) = (Math.Min(left, same), Math.Max(right, last + 1), Math.Min(top, y), y + 1);
        }

        return bottom == 0 ? SKRectI.Empty : new SKRectI(left, top, right, bottom);
    }

    private static byte[] File(List<FilmPart> pictures)
    {
        List<byte> file = [.. PngChunks.Signature, .. PngChunks.Header(pictures[0].Place.Width, pictures[0].Place.Height, hasAlpha: true)];
        byte[] control = new byte[8];
        BinaryPrimitives.WriteUInt32BigEndian(control, (uint)pictures.Count);
        file.AddRange(PngChunks.Chunk("acTL", control)); // number of plays 0: again and again
        uint sequence = 0;
        double atS = 0;
        foreach (FilmPart picture in pictures)
        {
            // From when to when, each rounded, so that delays do not drift.
            int fromMs = (int)Math.Round(atS * PerS);
            atS += picture.ForS;
            file.AddRange(PngChunks.Chunk("fcTL", FrameControl(sequence++, picture.Place, (int)Math.Round(atS * PerS) - fromMs)));
            byte[] data = picture.Data;
            if (ReferenceEquals(picture, pictures[0]))
            {
                file.AddRange(PngChunks.Chunk("IDAT", data));
                continue;
            }

            byte[] numbered = new byte[data.Length + 4];
            BinaryPrimitives.WriteUInt32BigEndian(numbered, sequence++);
            data.CopyTo(numbered, 4);
            file.AddRange(PngChunks.Chunk("fdAT", numbered));
        }

        file.AddRange(PngChunks.Chunk("IEND", []));
        return [.. file];
    }

    /// <summary>Number, size, place and delay of a picture; it is laid over what is there, and stays.</summary>
    private static byte[] FrameControl(uint sequence, SKRectI place, int delayMs)
    {
        byte[] control = new byte[26];
        uint[] numbers = [sequence, (uint)place.Width, (uint)place.Height, (uint)place.Left, (uint)place.Top];
        for (int i = 0; i < numbers.Length; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(control.AsSpan(4 * i), numbers[i]);
        }

        BinaryPrimitives.WriteUInt16BigEndian(control.AsSpan(20), (ushort)Math.Clamp(delayMs, 1, ushort.MaxValue));
        BinaryPrimitives.WriteUInt16BigEndian(control.AsSpan(22), PerS);
        control[25] = BlendOver;
        return control;
    }

    private const byte BlendOver = 1;
}
