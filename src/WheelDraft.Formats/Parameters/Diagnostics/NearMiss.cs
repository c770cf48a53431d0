namespace WheelDraft.Formats.Parameters;

/// <summary>Finds the known word that a mistyped one was probably meant to be.</summary>
internal static class NearMiss
{
    /// <summary>The nearest of some known words, or null when none is near.</summary>
    /// <remarks>Near is the same apart from case, or with few changes: a letter left out, put in, replaced, or two neighbours exchanged; one change in a word of
    /// three or four letters, two up to eight, three beyond. Of equally near words the first wins.</remarks>
    /// <param name="written">The word as written.</param>
    /// <param name="known">The words that would be right.</param>
    public static string? Of(string written, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(written);
        ArgumentNullException.ThrowIfNull(known);
        string? best = null;

        // A word of one or two letters is near to too much: there only the case may differ.
        int bestChanges = 1 + (written.Length switch { < 3 => 0, < 5 => 1, < 9 => 2, _ => 3 });
        foreach (string word in known)
        {
            int changes = string.Equals(word, written, StringComparison.OrdinalIgnoreCase) ? 0 : Changes(Fold(written), Fold(word));
            if (changes < bestChanges)
            {
                (best, bestChanges) = (word, changes);
            }
        }

        return best;
    }

    /// <summary>Hyphens, spaces and underscores are taken for the same, and so is case.</summary>
    private static string Fold(string word) => word.ToLowerInvariant().Replace('-', '_').Replace(' ', '_');

    /// <summary>Optimal string alignment distance (restricted Damerau–Levenshtein).</summary>
    private static int Changes(string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > 8 || a.Length > 100)
        {
            return int.MaxValue;
        }

        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                d[i, j] = i == 0 || j == 0 ? i + j : Cheapest(a, b, d, (i, j));
            }
        }

        return d[a.Length, b.Length];
    }

    private static int Cheapest(string a, string b, int[,] d, (int I, int J) at)
    {
        (int i, int j) = at;
        int cost = a[i - 1] == b[j - 1] ? 0 : 1;
        int least = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + cost);
        bool exchanged = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
        return exchanged ? Math.Min(least, d[i - 2, j - 2] + 1) : least;
    }
}
