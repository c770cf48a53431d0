using System.Buffers.Binary;
using System.Text;

namespace WheelDraft.Formats.Raster;

/// <summary>The chunks of PNG files (PNG specification, third edition, 5.3).</summary>
internal static class PngChunks
{
    /// <summary>What every file begins with (5.2).</summary>
    public static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Size and kind of the pixels (IHDR, 11.2.1): eight bits a channel, red, green and blue, with alpha or without.</summary>
    public static byte[] Header(int width, int height, bool hasAlpha)
    {
        byte[] content = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(content, width);
        BinaryPrimitives.WriteInt32BigEndian(content.AsSpan(4), height);
        (content[8], content[9]) = (8, (byte)(hasAlpha ? 6 : 2));
        return Chunk("IHDR", content);
    }

    /// <summary>The resolution (pHYs, 11.3.4.3).</summary>
    public static byte[] Resolution(double dpi)
    {
        uint perMetre = (uint)Math.Round(dpi / 0.0254);
        byte[] content = new byte[9];
        BinaryPrimitives.WriteUInt32BigEndian(content, perMetre);
        BinaryPrimitives.WriteUInt32BigEndian(content.AsSpan(4), perMetre);
        content[8] = 1;
        return Chunk("pHYs", content);
    }

    /// <summary>Writes one chunk whose content is written by and by.</summary>
    /// <param name="to">Where it comes.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="write">Writes the content.</param>
    public static void Write(MemoryStream to, string kind, Action<Stream> write)
    {
        int start = (int)to.Position;
        to.Write(new byte[4]);
        to.Write(Encoding.ASCII.GetBytes(kind));
        write(to);
        int length = (int)to.Position - start - 8;
        Span<byte> chunk = to.GetBuffer().AsSpan(start, length + 8);
        BinaryPrimitives.WriteUInt32BigEndian(chunk, (uint)length);
        byte[] sum = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(sum, Crc(chunk[4..]));
        to.Write(sum);
    }

    /// <summary>One chunk: length, kind, content, check sum.</summary>
    public static byte[] Chunk(string kind, ReadOnlySpan<byte> content)
    {
        byte[] chunk = new byte[content.Length + 12];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, (uint)content.Length);
        Encoding.ASCII.GetBytes(kind, chunk.AsSpan(4));
        content.CopyTo(chunk.AsSpan(8));
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(content.Length + 8), Crc(chunk.AsSpan(4, content.Length + 4)));
        return chunk;
    }

    // The check sum of PNG chunks (annex D), by bytes: films have megabytes.
    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(n => Enumerable.Range(0, 8).Aggregate((uint)n, (crc, _) => (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320 : crc >> 1))];

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        uint crc = 0xFFFFFFFF;
        foreach (byte b in bytes)
        {
            crc = Table[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return ~crc;
    }
}
