using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace WheelDraft.Formats.BenchLog;

/// <summary>Rows of a log that say what the one before said, a little later: passed over by comparing them in registers.</summary>
/// <remarks>A row is plain that is as long as the one before, has the same cells behind its time, and a time that differs first in a digit that has grown.
/// Rows come in groups, too: from one carry of the time to the next, ten of them where a log steps by one in its last digit. A group that repeats the
/// one before it, but for the digits from the carry upward, and these grown and alike in all its rows, has plain rows only; it is
/// compared as a whole.</remarks>
internal readonly record struct PlainRows
{
    private static readonly SearchValues<byte> OfTimes = SearchValues.Create("0123456789.,:"u8);

    // A plain row is compared in one register.
    private const int Longest = 32;

    /// <summary>Bytes of a row with its end; 0 where no row is plain.</summary>
    public int Length { get; private init; }

    // Bytes of the time, one bit each.
    private uint Time { get; init; }

    private uint Whole => uint.MaxValue >> (Longest - Length);

    /// <summary>Rows like one that was read; of length 0 where it is too long or its time holds more than digits and marks.</summary>
    /// <param name="line">The row with its end.</param>
    /// <param name="separator">What parts its cells; the time stands before the first.</param>
    public static PlainRows Like(ReadOnlySpan<byte> line, byte separator)
    {
        int cut = line.IndexOf(separator);
        return cut <= 0 || line.Length > Longest || line[^1] != (byte)'\n' || line[..cut].ContainsAnyExcept(OfTimes)
            ? default
            : new() { Length = line.Length, Time = (1u << cut) - 1 };
    }

    /// <summary>Passes over plain rows; returns where the first begins that is not plain, or too near the block's end.</summary>
    /// <param name="block">Whole lines.</param>
    /// <param name="at">Where the next row begins.</param>
    /// <param name="before">Where the row before it begins, which is like these.</param>
    public int Pass(ReadOnlySpan<byte> block, int at, int before)
    {
        int last = block.Length - Longest;
        int finest = -1; // the digit in which rows differ that follow each other without a carry
        int begun = -1; // where the group began in which the row before stands
        while (at <= last && Grown(block, at, before) is int digit and >= 0)
        {
            if (digit > finest)
            {
                (finest, begun) = (digit, -1);
            }
            else if (digit < finest)
            {
                int group = begun < 0 ? 0 : at - begun;
                int to = group > 0 ? Groups(block, at, group, finest) : at;
                begun = to > at ? to - group : at;
                if (to > at)
                {
                    (at, before) = (to, to - Length);
                    continue;
                }
            }

            before = at;
            at += Length;
        }

        return at;
    }

    // The first byte of the time that differs, where the row is plain; else below 0.
    private int Grown(ReadOnlySpan<byte> block, int at, int before)
    {
        Vector256<byte> row = Vector256.Create(block.Slice(at, Longest));
        uint lines = Vector256.Equals(row, Vector256.Create((byte)'\n')).ExtractMostSignificantBits() & Whole;
        uint differs = ~Vector256.Equals(row, Vector256.Create(block.Slice(before, Longest))).ExtractMostSignificantBits() & Whole;
        return lines == 1u << (Length - 1) ? Grown(block, (at, before), differs, Time) : -1;
    }

    // Of rows that differ in some bytes: the first of them, where all lie where they may, are digits, and the first has grown; else below 0.
    private static int Grown(ReadOnlySpan<byte> block, (int At, int Before) rows, uint differs, uint may)
    {
        if (differs == 0 || (differs & ~may) != 0)
        {
            return -1;
        }

        Vector256<byte> row = Vector256.Create(block.Slice(rows.At, Longest));
        uint digits = Vector256.LessThanOrEqual(row - Vector256.Create((byte)'0'), Vector256.Create((byte)9)).ExtractMostSignificantBits();
        int first = BitOperations.TrailingZeroCount(differs);
        return (differs & ~digits) == 0 && block[rows.At + first] > block[rows.Before + first] ? first : -1;
    }

    // Groups that repeat the one before them but for the digits before the finest; returns where the first begins that does not.
    private int Groups(ReadOnlySpan<byte> block, int at, int group, int finest)
    {
        uint carried = (1u << finest) - 1;
        while (at + group <= block.Length - Longest)
        {
            uint differs = ~Vector256.Equals(Vector256.Create(block.Slice(at, Longest)), Vector256.Create(block.Slice(at - group, Longest))).ExtractMostSignificantBits() & Whole;
            if (Grown(block, (at, at - group), differs, carried) < 0 || !DiffersAlike(block, at, group))
            {
                break;
            }

            at += group;
        }

        return at;
    }

    // Whether every row of a group differs from its own of the group before as the row before it does: so all differ as the first does.
    private bool DiffersAlike(ReadOnlySpan<byte> block, int at, int group)
    {
        ref byte now = ref MemoryMarshal.GetReference(block[at..]);
        ref byte then = ref MemoryMarshal.GetReference(block[(at - group)..]);
        int bytes = group - Length;
        Vector128<byte> odd = Vector128<byte>.Zero;
        int i = 0;
        for (; i <= bytes - Vector128<byte>.Count; i += Vector128<byte>.Count)
        {
            odd |= Odd(ref now, ref then, i);
        }

        if (i < bytes)
        {
            uint rest = (1u << (bytes - i)) - 1;
            uint alike = Vector128.Equals(Odd(ref now, ref then, i), Vector128<byte>.Zero).ExtractMostSignificantBits();
            return odd == Vector128<byte>.Zero && (~alike & rest) == 0;
        }

        return odd == Vector128<byte>.Zero;
    }

    // What differs here but not a row further on, or the other way.
    private Vector128<byte> Odd(ref byte now, ref byte then, int i)
    {
        Vector128<byte> here = Vector128.LoadUnsafe(ref now, (nuint)i) ^ Vector128.LoadUnsafe(ref then, (nuint)i);
        return here ^ Vector128.LoadUnsafe(ref now, (nuint)(i + Length)) ^ Vector128.LoadUnsafe(ref then, (nuint)(i + Length));
    }
}
