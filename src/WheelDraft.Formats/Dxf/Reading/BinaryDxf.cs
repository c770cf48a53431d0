using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Binary DXF as the ASCII text of the same pairs, so that one reader takes in both.</summary>
/// <remarks>Types of values by group code as in the format owner's reference. R12 has codes of one byte (255: two more bytes follow), later
/// versions of two. Numbers are written so that they read back the same. Line numbers are those of the text: twice the number of the pair.</remarks>
internal static class BinaryDxf
{
    private static ReadOnlySpan<byte> Sentinel => "AutoCAD Binary DXF\r\n\u001a\0"u8;

    internal static bool Is(ReadOnlySpan<byte> file) => file.StartsWith(Sentinel);

    /// <summary>The file as text.</summary>
    /// <exception cref="DxfReadException">It is cut short, or a group has no known type.</exception>
    internal static byte[] ToText(ReadOnlySpan<byte> file)
    {
        using MemoryStream text = new(2 * file.Length);
        int at = Sentinel.Length;

        // The first pair is group 0 with SECTION: its code is followed by another zero byte where codes have two.
        bool wide = file.Length > at + 1 && file[at + 1] == 0;
        int line = 1;
        while (at < file.Length)
        {
            int code = Code(file, ref at, wide, line);
            byte[] value = Value(file, ref at, code, line);
            text.Write(Encoding.ASCII.GetBytes(code.ToString(CultureInfo.InvariantCulture)));
            text.WriteByte((byte)'\n');
            text.Write(value);
            text.WriteByte((byte)'\n');
            line += 2;
            if (code == 0 && value.AsSpan().SequenceEqual("EOF"u8))
            {
                break;
            }
        }

        return text.ToArray();
    }

    private static int Code(ReadOnlySpan<byte> file, ref int at, bool wide, int line)
    {
        if (wide)
        {
            return BinaryPrimitives.ReadInt16LittleEndian(Take(file, ref at, 2, line));
        }

        byte code = Take(file, ref at, 1, line)[0];
        return code == 255 ? BinaryPrimitives.ReadInt16LittleEndian(Take(file, ref at, 2, line)) : code;
    }

    private static byte[] Value(ReadOnlySpan<byte> file, ref int at, int code, int line)
    {
        switch (code)
        {
            case (>= 10 and <= 59) or (>= 110 and <= 149) or (>= 210 and <= 239) or (>= 460 and <= 469) or (>= 1010 and <= 1059):
                return Text(BinaryPrimitives.ReadDoubleLittleEndian(Take(file, ref at, 8, line)));
            case (>= 60 and <= 79) or (>= 170 and <= 179) or (>= 270 and <= 289) or (>= 370 and <= 389) or (>= 400 and <= 409) or (>= 1060 and <= 1070):
                return Text(BinaryPrimitives.ReadInt16LittleEndian(Take(file, ref at, 2, line)));
            case (>= 90 and <= 99) or (>= 420 and <= 429) or (>= 440 and <= 459) or 1071:
                return Text(BinaryPrimitives.ReadInt32LittleEndian(Take(file, ref at, 4, line)));
            case >= 160 and <= 169:
                return Text(BinaryPrimitives.ReadInt64LittleEndian(Take(file, ref at, 8, line)));
            case >= 290 and <= 299:
                return Text(Take(file, ref at, 1, line)[0]);
            case (>= 310 and <= 319) or 1004:
                int length = Take(file, ref at, 1, line)[0];
                return Encoding.ASCII.GetBytes(Convert.ToHexString(Take(file, ref at, length, line)));
            case (>= 0 and <= 9) or (>= 100 and <= 109) or (>= 300 and <= 309) or (>= 320 and <= 369) or (>= 390 and <= 399)
                or (>= 410 and <= 419) or (>= 430 and <= 439) or (>= 470 and <= 481) or (>= 999 and <= 1009):
                return Words(file, ref at, line);
            default:
                throw new DxfReadException(line, $"Group {FixedPoint.Short(code, 0)} is none of the format: the binary file is damaged. Save it again, or as ASCII DXF.");
        }
    }

    /// <summary>A text up to its zero byte, on one line.</summary>
    private static byte[] Words(ReadOnlySpan<byte> file, ref int at, int line)
    {
        int length = file[at..].IndexOf((byte)0);
        byte[] words = length < 0 ? throw CutShort(line) : file.Slice(at, length).ToArray();
        at += length + 1;
        words.AsSpan().Replace((byte)'\n', (byte)' ');
        words.AsSpan().Replace((byte)'\r', (byte)' ');
        return words;
    }

    private static ReadOnlySpan<byte> Take(ReadOnlySpan<byte> file, ref int at, int count, int line)
    {
        if (at + count > file.Length)
        {
            throw CutShort(line);
        }

        at += count;
        return file.Slice(at - count, count);
    }

    private static byte[] Text<T>(T number)
        where T : IFormattable => Encoding.ASCII.GetBytes(number.ToString(number is double ? "R" : null, CultureInfo.InvariantCulture));

    private static DxfReadException CutShort(int line) => new(line, "The binary file ends inside a pair: it is cut short.");
}
