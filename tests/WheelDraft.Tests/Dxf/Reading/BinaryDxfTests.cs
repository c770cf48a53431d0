using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using WheelDraft.Formats.Dxf.Reading;
using Xunit;

namespace WheelDraft.Tests.Dxf.Reading;

/// <summary>Binary files are written here by the format owner's description: sentinel, little-endian codes, values by the range of their code.</summary>
public class BinaryDxfTests
{
    private const string Entities = "0 LWPOLYLINE|5 2F|100 AcDbEntity|8 Ø1|90 2|70 1|43 0|10 0.1|20 -2.000000000000001|42 1|10 1e-3|20 2|1071 -70000|0 CIRCLE|8 B|10 5|20 6|40 0.3333333333333333|290 1|310 00FF";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Read_BinaryFile_IsTheSameDrawingAsItsText(bool wideCodes)
    {
        byte[] text = HandWritten.File(Entities);
        ReadDrawing expected = DxfReader.Read(text);
        ReadDrawing read = DxfReader.Read(Binary(Encoding.Latin1.GetString(text), wideCodes));
        Assert.Equal(expected.Layers.Select(l => l.Name), read.Layers.Select(l => l.Name), StringComparer.Ordinal);
        Assert.Equal(expected.Layers.SelectMany(l => l.Contours).Select(c => c.Contour.ToString()), read.Layers.SelectMany(l => l.Contours).Select(c => c.Contour.ToString()), StringComparer.Ordinal);
        Assert.Equal("2F", read.Layers[0].Contours[0].Source.Handle);
    }

    private static byte[] Binary(string text, bool wideCodes)
    {
        List<byte> bytes = [.. "AutoCAD Binary DXF\r\n\u001a\0"u8];
        string[] lines = text.Split('\n');
        byte[] number = new byte[8];
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            int code = int.Parse(lines[i], NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture);
            BinaryPrimitives.WriteInt16LittleEndian(number, (short)code);
            bytes.AddRange(wideCodes ? number[..2] : code < 255 ? [(byte)code] : [255, number[0], number[1]]);
            string value = lines[i + 1];
            switch (code)
            {
                case 10 or 20 or 40 or 42 or 43:
                    BinaryPrimitives.WriteDoubleLittleEndian(number, double.Parse(value, CultureInfo.InvariantCulture));
                    bytes.AddRange(number);
                    break;
                case 70:
                    BinaryPrimitives.WriteInt16LittleEndian(number, short.Parse(value, CultureInfo.InvariantCulture));
                    bytes.AddRange(number[..2]);
                    break;
                case 90 or 1071:
                    BinaryPrimitives.WriteInt32LittleEndian(number, int.Parse(value, CultureInfo.InvariantCulture));
                    bytes.AddRange(number[..4]);
                    break;
                case 290:
                    bytes.Add(byte.Parse(value, CultureInfo.InvariantCulture));
                    break;
                case 310:
                    byte[] chunk = Convert.FromHexString(value);
                    bytes.Add((byte)chunk.Length);
                    bytes.AddRange(chunk);
                    break;
                default:
                    bytes.AddRange(Encoding.Latin1.GetBytes(value + "\0"));
                    break;
            }
        }

        return [.. bytes];
    }
}
