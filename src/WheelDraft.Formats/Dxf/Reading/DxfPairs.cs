using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>A group code and where its value stands in the bytes.</summary>
internal readonly record struct DxfPair(int Code, int Start, int Length, int Line);

/// <summary>The file as pairs of lines: a group code, then its value.</summary>
internal sealed class DxfPairs
{
    private readonly byte[] _bytes;
    private int _at;
    private int _line;

    internal DxfPairs(byte[] file)
    {
        byte[] bytes = BinaryDxf.Is(file) ? BinaryDxf.ToText(file) : file;
        _bytes = bytes;
        ReadOnlySpan<byte> head = bytes.AsSpan(0, Math.Min(bytes.Length, 1024));
        if (head.Trim(" \r\n\t"u8).IsEmpty)
        {
            throw new DxfReadException(null, "The file is empty: save the drawing again, or ask for it anew.");
        }

        if (head.Contains((byte)0))
        {
            throw new DxfReadException(1, "This is no drawing: neither ASCII DXF nor binary DXF, which begins with the words 'AutoCAD Binary DXF'. Save it as DXF from the program that made it.");
        }

        if (head.StartsWith("\uFEFF"u8))
        {
            _at = 3;
        }
    }

    /// <summary>Whether text beyond ASCII is UTF-8 (from R2007 on) or one byte a character.</summary>
    internal bool IsUtf8 { get; set; }

    /// <summary>The line that was read last, from 1.</summary>
    internal int Line => _line;

    /// <summary>The next pair, comments passed over; null at the end of the file.</summary>
    internal DxfPair? Next()
    {
        const int comment = 999;
        while (NextLine(out int start, out int length))
        {
            ReadOnlySpan<byte> text = _bytes.AsSpan(start, length).Trim(" \t"u8);
            if (!Utf8Parser.TryParse(text, out int code, out int used) || used != text.Length)
            {
                // Blank lines at the very end are common and harmless.
                if (text.IsEmpty && _bytes.AsSpan(_at).Trim(" \r\n\t\x1A"u8).IsEmpty)
                {
                    return null;
                }

                throw new DxfReadException(_line, $"'{Shown(text)}' is no group code: a whole number is needed here. Is this an ASCII DXF file?");
            }

            int at = _line;
            if (!NextLine(out start, out length))
            {
                throw new DxfReadException(at, "The file ends after a group code, before its value: it is cut short. Save it again, or ask for it anew.");
            }

            if (code != comment)
            {
                return new(code, start, length, at + 1);
            }
        }

        return null;
    }

    internal bool Is(DxfPair pair, ReadOnlySpan<byte> value) => _bytes.AsSpan(pair.Start, pair.Length).Trim(" \t"u8).SequenceEqual(value);

    /// <summary>The value as text, with <c>\U+nnnn</c> decoded.</summary>
    internal string Text(DxfPair pair)
    {
        ReadOnlySpan<byte> value = _bytes.AsSpan(pair.Start, pair.Length).Trim(" \t"u8);
        string text = IsUtf8 ? Encoding.UTF8.GetString(value) : Encoding.Latin1.GetString(value);
        return text.Contains("\\U+", StringComparison.Ordinal) ? Decoded(text) : text;
    }

    /// <summary>The value as a finite number.</summary>
    internal double Number(DxfPair pair)
    {
        // Above any drawing in any unit; squares and cubes of it stay finite.
        const double largest = 1e9;
        ReadOnlySpan<byte> value = _bytes.AsSpan(pair.Start, pair.Length).Trim(" \t"u8);
        if (!double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) || !double.IsFinite(number))
        {
            throw new DxfReadException(pair.Line, $"'{Shown(value)}' is no finite number (group {FixedPoint.Short(pair.Code, 0)}); write one such as 12.5, or save the drawing again.");
        }

        return Math.Abs(number) <= largest
            ? number
            : throw new DxfReadException(pair.Line, $"{Shown(value)} is beyond 1,000,000,000 (group {FixedPoint.Short(pair.Code, 0)}): no drawing is as large. Move what lies so far off nearer to the origin, or delete it.");
    }

    /// <summary>The value as a whole number.</summary>
    internal int Whole(DxfPair pair)
    {
        ReadOnlySpan<byte> value = _bytes.AsSpan(pair.Start, pair.Length).Trim(" \t"u8);
        return int.TryParse(value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number)
            ? number
            : throw new DxfReadException(pair.Line, $"'{Shown(value)}' is no whole number (group {FixedPoint.Short(pair.Code, 0)}); write one such as 1, or save the drawing again.");
    }

    private bool NextLine(out int start, out int length)
    {
        start = _at;
        length = 0;
        if (_at >= _bytes.Length)
        {
            return false;
        }

        _line++;
        int end = _bytes.AsSpan(_at).IndexOf((byte)'\n');
        int stop = end < 0 ? _bytes.Length : _at + end;
        _at = end < 0 ? _bytes.Length : stop + 1;
        length = stop > start && _bytes[stop - 1] == '\r' ? stop - 1 - start : stop - start;
        return true;
    }

    /// <summary>A value for a message: short, and nothing in it that would disturb a screen.</summary>
    private static string Shown(ReadOnlySpan<byte> value)
    {
        const int most = 40;
        StringBuilder shown = new();
        foreach (byte b in value[..Math.Min(value.Length, most)])
        {
            shown.Append(b is >= 0x20 and < 0x7F ? (char)b : '?');
        }

        return value.Length > most ? shown.Append("...").ToString() : shown.ToString();
    }

    private static string Decoded(string text)
    {
        const int length = 7;
        StringBuilder decoded = new();
        for (int i = 0; i < text.Length; i++)
        {
            bool escape = string.CompareOrdinal(text, i, "\\U+", 0, 3) == 0 && i + length <= text.Length;
            if (escape && ushort.TryParse(text.AsSpan(i + 3, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out ushort code))
            {
                decoded.Append((char)code);
                i += length - 1;
            }
            else
            {
                decoded.Append(text[i]);
            }
        }

        return decoded.ToString();
    }
}
