using System.Buffers.Text;
using System.Globalization;

namespace WheelDraft.Formats.BenchLog;

/// <summary>What one cell of a log says, from its bytes.</summary>
internal static class LogCells
{
    private static readonly string[] OnWords = ["on", "high", "h", "true", "closed"];
    private static readonly string[] OffWords = ["off", "low", "l", "false", "open"];
    private static readonly string[] NoWords = ["-", "--", "---", "nan", "n/a", "na", "null"];

    /// <summary>A cell without the blanks and quotes round it.</summary>
    public static ReadOnlySpan<byte> Bare(ReadOnlySpan<byte> cell)
    {
        while (cell.Length > 0 && (cell[0] is (byte)' ' or (byte)'"'))
        {
            cell = cell[1..];
        }

        while (cell.Length > 0 && (cell[^1] is (byte)' ' or (byte)'"' or (byte)'\r'))
        {
            cell = cell[..^1];
        }

        return cell;
    }

    /// <summary>Whether the cell says that there is no value.</summary>
    public static bool IsMissing(ReadOnlySpan<byte> bare) => bare.Length == 0 || IsOneOf(bare, NoWords);

    /// <summary>A number, with the given decimal mark.</summary>
    public static bool TryNumber(ReadOnlySpan<byte> bare, byte mark, out double value)
    {
        if (TryPlain(bare, mark, out value))
        {
            return true;
        }

        if (bare.Length is 0 or > 40)
        {
            return false;
        }

        Span<byte> point = stackalloc byte[40];
        bare.CopyTo(point);
        point = point[..bare.Length];
        if (mark != (byte)'.')
        {
            if (point.Contains((byte)'.'))
            {
                return false;
            }

            point.Replace(mark, (byte)'.');
        }

        if (point[0] == (byte)'+')
        {
            point = point[1..];
        }

        return Utf8Parser.TryParse(point, out value, out int used) && used == point.Length && double.IsFinite(value);
    }

    // Digits, at most one mark, a minus: what nearly every cell is, without the general parser. Up to 15 digits are exact.
    private static bool TryPlain(ReadOnlySpan<byte> bare, byte mark, out double value)
    {
        const int mostDigits = 15;
        value = 0;
        int at = bare.Length > 0 && bare[0] == (byte)'-' ? 1 : 0;
        if (bare.Length == at || bare.Length - at > mostDigits)
        {
            return false;
        }

        bool negative = at == 1;
        long digits = 0;
        int decimals = -1;
        for (; at < bare.Length; at++)
        {
            uint digit = unchecked((uint)(bare[at] - '0'));
            if (digit <= 9)
            {
                digits = (digits * 10) + digit;
                decimals += decimals >= 0 ? 1 : 0;
            }
            else if (bare[at] == mark && decimals < 0)
            {
                decimals = 0;
            }
            else
            {
                return false;
            }
        }

        double whole = decimals > 0 ? digits / Tens[decimals] : digits;
        value = negative ? -whole : whole;
        return true;
    }

    private static readonly double[] Tens = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>A time of the day or since the start, hh:mm:ss or mm:ss with or without a fraction, with or without a date before it; s.</summary>
    public static bool TryClock(ReadOnlySpan<byte> bare, out double seconds, out bool hasDate)
    {
        (seconds, hasDate) = (0, false);
        if (!bare.Contains((byte)':') || bare.Length > 40)
        {
            return false;
        }

        int date = bare.IndexOfAny((byte)' ', (byte)'T');
        if (date >= 0)
        {
            if (!DateOnly.TryParseExact(System.Text.Encoding.ASCII.GetString(bare[..date]), ["yyyy-MM-dd", "yyyy/MM/dd"], CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
            {
                return false;
            }

            hasDate = true;
            seconds = day.DayNumber * 86400.0;
            bare = bare[(date + 1)..];
            if (bare.Length > 0 && bare[^1] == (byte)'Z')
            {
                bare = bare[..^1];
            }
        }

        double sum = 0;
        int parts = 0;
        while (bare.Length > 0)
        {
            int colon = bare.IndexOf((byte)':');
            ReadOnlySpan<byte> part = colon < 0 ? bare : bare[..colon];
            bool last = colon < 0;
            if (part.Length == 0 || part[0] is (byte)'-' or (byte)'+' || !(TryNumber(part, (byte)'.', out double value) || (last && TryNumber(part, (byte)',', out value)))
                || (!last && value != Math.Floor(value)) || (parts > 0 && value >= 60) || ++parts > 3)
            {
                return false;
            }

            sum = (sum * 60) + value;
            bare = last ? [] : bare[(colon + 1)..];
        }

        seconds += sum;
        return parts >= 2;
    }

    /// <summary>A word for closed or open.</summary>
    public static bool TryState(ReadOnlySpan<byte> bare, out bool closed)
    {
        closed = IsOneOf(bare, OnWords);
        return closed || IsOneOf(bare, OffWords);
    }

    private static bool IsOneOf(ReadOnlySpan<byte> bare, string[] words)
    {
        const int longest = 8;
        if (bare.Length > longest)
        {
            return false;
        }

        foreach (string word in words)
        {
            if (word.Length == bare.Length && Same(bare, word))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Same(ReadOnlySpan<byte> bare, string word)
    {
        for (int i = 0; i < word.Length; i++)
        {
            if ((bare[i] | 0x20) != (word[i] | 0x20))
            {
                return false;
            }
        }

        return true;
    }
}
