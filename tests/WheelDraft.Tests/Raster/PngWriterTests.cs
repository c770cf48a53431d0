using System.Buffers.Binary;
using WheelDraft.Drawing;
using WheelDraft.Formats.Raster;
using WheelDraft.Tests.Svg;
using Xunit;

namespace WheelDraft.Tests.Raster;

public class PngWriterTests
{
    [Fact]
    public void Write_Card_HasItsSizeDepthAndResolution()
    {
        byte[] png = PngWriter.Write(SampleSheets.Card, new() { Dpi = 254 });

        // PNG specification 11.2.2: width, height, 8 bits, colour type 2 (RGB without alpha).
        Assert.Equal((1200, 900), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
        Assert.Equal((8, 2), (png[24], png[25]));

        // 11.3.4.3: pixels per metre both ways, unit 1; before the first IDAT.
        Assert.Equal("pHYs", System.Text.Encoding.ASCII.GetString(png, 37, 4));
        Assert.Equal((10000, 10000, 1), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(41)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(45)), png[49]));
    }

    [Fact]
    public void Write_Chunks_HaveTheirCheckSums()
    {
        // Oracle: the runtime's own CRC through a zip entry is the same polynomial (ISO 3309); here the well-known value
        // of the empty IEND chunk and a second, table-driven calculation.
        byte[] png = PngWriter.Write(SampleSheets.Card, new() { Dpi = 20 });
        uint[] table = [.. Enumerable.Range(0, 256).Select(i => Enumerable.Range(0, 8).Aggregate((uint)i, (c, _) => (c & 1) == 1 ? 0xEDB88320 ^ (c >> 1) : c >> 1))];
        int at = 8;
        List<string> names = [];
        while (at < png.Length)
        {
            int length = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at));
            uint crc = ~png.AsSpan(at + 4, length + 4).ToArray().Aggregate(uint.MaxValue, (c, b) => table[(c ^ b) & 255] ^ (c >> 8));
            Assert.Equal(crc, BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at + 8 + length)));
            names.Add(System.Text.Encoding.ASCII.GetString(png, at + 4, 4));
            at += length + 12;
        }

        Assert.StartsWith("IHDR pHYs ", string.Join(' ', names), StringComparison.Ordinal);
        Assert.EndsWith(" IEND", string.Join(' ', names), StringComparison.Ordinal);
    }

    [Fact]
    public void Write_Twice_GivesTheSameBytes() => Assert.Equal(PngWriter.Write(SampleSheets.Card), PngWriter.Write(SampleSheets.Card));

    [Theory]
    [InlineData(1)]
    [InlineData(37)]
    [InlineData(500)]
    public void Write_InBands_GivesTheSameBytesAsInOnePiece(int rows)
    {
        // Lines thinner and wider than a pixel, patterns, round and straight edges across many bands; one row a band for the small ones only.
        IEnumerable<Sheet> sheets = rows == 1 ? [SampleSheets.Card] : Demos.SheetsOf("propagation-bench").Prepend(SampleSheets.Card);
        foreach (Sheet sheet in sheets)
        {
            PngOptions whole = new() { Dpi = rows == 1 ? 40 : rows == 37 ? 63 : 110 };
            int width = BinaryPrimitives.ReadInt32BigEndian(PngWriter.Write(sheet, whole).AsSpan(16));
            Assert.Equal(PngWriter.Write(sheet, whole), PngWriter.Write(sheet, whole with { MostAtOnce = 0, BandPixels = rows * width }));
        }
    }

    [Fact]
    public void Write_InMemoryOfAnEarlierPicture_GivesTheSameBytes()
    {
        using PictureMemory memory = new(0);
        Sheet large = SampleSheets.Card, small = new(large.Words, PaperSize.A4, [], []);
        foreach (Sheet sheet in (Sheet[])[large, small, large])
        {
            Assert.Equal(PngWriter.Write(sheet), PngWriter.Write(sheet, null, memory));
        }
    }

    [Fact]
    public void Write_TooLargeOrOutOfRange_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PngWriter.Write(SampleSheets.Card, new() { Dpi = 9 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => PngWriter.Write(SampleSheets.Card, new() { Dpi = double.NaN }));
        Sheet large = new(SampleSheets.Card.Words, PaperSize.A0, [], []);
        ArgumentException e = Assert.Throws<ArgumentOutOfRangeException>(() => PngWriter.Write(large, new() { Dpi = 600 }));
        Assert.Contains("choose a lower resolution than 600 dpi", e.Message, StringComparison.Ordinal);
    }
}
