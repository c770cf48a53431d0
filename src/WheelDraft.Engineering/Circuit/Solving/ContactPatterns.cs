namespace WheelDraft.Engineering;

/// <summary>The different ways in which a few contacts are closed over the turn, and where.</summary>
internal sealed class ContactPatterns
{
    private ContactPatterns(int[] patternAt, List<bool[]> closed, List<ulong[]> positions)
    {
        PatternAt = patternAt;
        Closed = closed;
        Positions = positions;
    }

    /// <summary>Index of the pattern at each position.</summary>
    public int[] PatternAt { get; }

    /// <summary>For each pattern, which of the contacts are closed, in the order given.</summary>
    public IReadOnlyList<bool[]> Closed { get; }

    /// <summary>For each pattern, the positions that have it.</summary>
    public IReadOnlyList<ulong[]> Positions { get; }

    /// <summary>The patterns of some contacts.</summary>
    public static ContactPatterns Of(IReadOnlyList<TurnPosition> turn, ReadOnlySpan<int> contacts)
    {
        int[] patternAt = new int[turn.Count];
        List<bool[]> closed = [];
        List<ulong[]> positions = [];
        Dictionary<long[], int> known = new(PackedKeyComparer.Instance);
        for (int p = 0; p < turn.Count; p++)
        {
            long[] key = new long[(contacts.Length + 63) / 64];
            for (int i = 0; i < contacts.Length; i++)
            {
                key[i >> 6] |= BitRow.Has(turn[p].Closed, contacts[i]) ? 1L << (i & 63) : 0;
            }

            if (!known.TryGetValue(key, out int pattern))
            {
                pattern = closed.Count;
                known[key] = pattern;
                closed.Add(Unpacked(key, contacts.Length));
                positions.Add(BitRow.Empty(turn.Count));
            }

            patternAt[p] = pattern;
            BitRow.Add(positions[pattern], p);
        }

        return new ContactPatterns(patternAt, closed, positions);
    }

    private static bool[] Unpacked(long[] key, int count)
    {
        bool[] closed = new bool[count];
        for (int i = 0; i < count; i++)
        {
            closed[i] = (key[i >> 6] >> (i & 63) & 1) != 0;
        }

        return closed;
    }
}
