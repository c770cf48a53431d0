namespace WheelDraft.Engineering;

/// <summary>Sets of small whole numbers as rows of bits: positions of the wheel, or closed contacts.</summary>
internal static class BitRow
{
    /// <summary>Words for a row of this many bits; at least one.</summary>
    public static int WordsFor(int bits) => Math.Max(1, (bits + 63) / 64);

    /// <summary>A row with no bit set.</summary>
    public static ulong[] Empty(int bits) => new ulong[WordsFor(bits)];

    /// <summary>A row with its first bits set.</summary>
    public static ulong[] Full(int bits)
    {
        ulong[] row = Empty(bits);
        for (int i = 0; i < bits; i++)
        {
            Add(row, i);
        }

        return row;
    }

    /// <summary>Whether a bit is set.</summary>
    public static bool Has(ReadOnlySpan<ulong> row, int bit) => (row[bit >> 6] >> (bit & 63) & 1) != 0;

    /// <summary>Sets a bit.</summary>
    public static void Add(Span<ulong> row, int bit) => row[bit >> 6] |= 1UL << (bit & 63);

    /// <summary>Sets or clears a bit.</summary>
    public static void Put(Span<ulong> row, int bit, bool value)
    {
        ulong one = 1UL << (bit & 63);
        row[bit >> 6] = value ? row[bit >> 6] | one : row[bit >> 6] & ~one;
    }

    /// <summary>Adds every bit of another row.</summary>
    public static void AddAll(Span<ulong> row, ReadOnlySpan<ulong> other)
    {
        for (int w = 0; w < row.Length; w++)
        {
            row[w] |= other[w];
        }
    }

    /// <summary>Whether no bit is set.</summary>
    public static bool IsEmpty(ReadOnlySpan<ulong> row) => row.IndexOfAnyExcept(0UL) < 0;

    /// <summary>Whether the two rows share a bit.</summary>
    public static bool Meet(ReadOnlySpan<ulong> a, ReadOnlySpan<ulong> b)
    {
        for (int w = 0; w < a.Length; w++)
        {
            if ((a[w] & b[w]) != 0)
            {
                return true;
            }
        }

        return false;
    }
}
