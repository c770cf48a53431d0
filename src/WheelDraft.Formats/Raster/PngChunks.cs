using System.Buffers.Binary;
using System.Text;

namespace WheelDraft.Formats.Raster;

/// <summary>The chunks of PNG files (PNG specification, third edition, 5.3).</summary>
internal static class PngChunks
{
    /// <summary>Bytes of the signature.</summary>
    public const int SignatureBytes = 8;

    // The resolution must come before the pixels, so right after signature and header chunk (25 bytes).
    private const int AfterHeader = SignatureBytes + 25;

    /// <summary>A file with its resolution (pHYs, 11.3.4.3), which the encoder leaves out.</summary>
    public static byte[] WithResolution(byte[] png, double dpi)
    {
        uint perMetre = (uint)Math.Round(dpi / 0.0254);
        byte[] content = new byte[9];
        BinaryPrimitives.WriteUInt32BigEndian(content, perMetre);
        BinaryPrimitives.WriteUInt32BigEndian(content.AsSpan(4), perMetre);
        content[8] = 1;
        return [.. png.AsSpan(0, AfterHeader), .. Chunk("pHYs", content), .. png.AsSpan(AfterHeader)];
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

    /// <summary>The contents of all chunks of a kind, one after the other.</summary>
    public static byte[] ContentOf(byte[] png, string kind)
    {
        List<byte> content = [];
        for (int at = SignatureBytes; at < png.Length;)
        {
            int length = (int)BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at));
            if (string.Equals(Encoding.ASCII.GetString(png, at + 4, 4), kind, StringComparison.Ordinal))
            {
                content.AddRange(png.AsSpan(at + 8, length));
            }

            at += length + 12;
        }

        return [.. content];
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
