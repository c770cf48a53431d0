using System.IO.Compression;

namespace WheelDraft.Formats.Raster;

/// <summary>Packs the pixels of PNG files: rows as they are, without a filter, which suits flat colours with sharp lines.</summary>
internal static class PngPixels
{
    // Of the levels of zlib the quickest after which a drawing is no larger than at the usual level 6; the greatest takes fifteen times as long for an eighth less.
    private static readonly ZLibCompressionOptions Level = new() { CompressionLevel = 5 };

    private const int ChannelsInMemory = 4;

    /// <summary>Is given pixels row by row from above: red, green, blue and a fourth byte; whole rows at a time.</summary>
    public delegate void RowsTaken(ReadOnlySpan<byte> rgba);

    /// <summary>The content of the chunk IDAT (11.2.3).</summary>
    /// <param name="rgba">All pixels, row by row from above.</param>
    /// <param name="width">Pixels a row.</param>
    /// <param name="keepsAlpha">Whether the fourth byte is kept.</param>
    public static byte[] Packed(ReadOnlySpan<byte> rgba, int width, bool keepsAlpha)
    {
        using MemoryStream packed = new();
        using (ZLibStream deflate = new(packed, Level, leaveOpen: true))
        {
            Add(deflate, rgba, width, keepsAlpha);
        }

        return packed.ToArray();
    }

    /// <summary>The same without the fourth byte, of pixels that are there one band after the other, to a stream.</summary>
    /// <param name="to">Where it comes.</param>
    /// <param name="width">Pixels a row.</param>
    /// <param name="paint">Hands on the rows, band by band from above.</param>
    public static void Pack(Stream to, int width, Action<RowsTaken> paint)
    {
        using ZLibStream deflate = new(to, Level, leaveOpen: true);
        paint(rgba => Add(deflate, rgba, width, keepsAlpha: false));
    }

    private static void Add(ZLibStream deflate, ReadOnlySpan<byte> rgba, int width, bool keepsAlpha)
    {
        int channels = keepsAlpha ? ChannelsInMemory : ChannelsInMemory - 1;
        byte[] row = new byte[1 + (width * channels)];
        for (ReadOnlySpan<byte> rest = rgba; rest.Length > 0; rest = rest[(width * ChannelsInMemory)..])
        {
            Fill(row.AsSpan(1), rest[..(width * ChannelsInMemory)], channels);
            deflate.Write(row);
        }
    }

    private static void Fill(Span<byte> row, ReadOnlySpan<byte> rgba, int channels)
    {
        if (channels == ChannelsInMemory)
        {
            rgba.CopyTo(row);
            return;
        }

        for (int from = 0, to = 0; from < rgba.Length; from += ChannelsInMemory, to += channels)
        {
            row[to] = rgba[from];
            row[to + 1] = rgba[from + 1];
            row[to + 2] = rgba[from + 2];
        }
    }
}
