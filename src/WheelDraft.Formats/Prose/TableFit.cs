namespace WheelDraft.Formats.Prose;

/// <summary>A table made to fit: narrow tables one below the other, then what was too long for a cell as a list.</summary>
internal sealed record FittedTable(IReadOnlyList<ProseTable> Tables, ProseList? Words);

/// <summary>Makes a wide table fit a printed page: sentences leave their cells for a list below, and columns that have no room go on in a second table that
/// begins with the same first columns. Nothing is cut.</summary>
internal static class TableFit
{
    /// <summary>Characters in the widest row: an A4 page across, in letters that are still read.</summary>
    public const int MostWide = 110;

    // A cell of more is a sentence, which reads better as one.
    private const int LongestCell = 34;

    public static FittedTable Of(ProseTable table)
    {
        if (Wide(Widths(table)) <= MostWide)
        {
            return new([table], null);
        }

        int keys = Keys(table);
        if (keys == 0)
        {
            return Of(new(["No.", .. table.Head], [.. table.Rows.Select((r, i) => (IReadOnlyList<string>)[Number(i), .. r])]));
        }

        int[] widths = Widths(table);
        int[] words = [.. Enumerable.Range(keys, table.Head.Count - keys).Where(c => widths[c] > LongestCell)];
        int[] cells = [.. Enumerable.Range(keys, table.Head.Count - keys).Except(words)];
        ProseList? list = words.Length == 0 ? null : new([.. table.Rows.Select(r => Sentence(table, r, keys, words)).OfType<string>()], IsNumbered: false);
        return new(cells.Length == 0 ? [] : [.. Split(table, keys, cells)], list);
    }

    /// <summary>Characters of the widest cell of each column.</summary>
    public static int[] Widths(ProseTable table) =>
        [.. Enumerable.Range(0, table.Head.Count).Select(c => Math.Max(table.Head[c].Length, table.Rows.Max(r => r[c].Length)))];

    private static int Wide(IEnumerable<int> widths) => widths.Sum(w => w + 3) + 1;

    // As few first columns as tell every row from the others, two at most: 0 where two do not, or where they are sentences themselves.
    private static int Keys(ProseTable table)
    {
        int[] widths = Widths(table);
        for (int keys = 1; keys <= Math.Min(2, table.Head.Count); keys++)
        {
            if (widths[keys - 1] > 2 * LongestCell)
            {
                return table.Head[0] is "No." ? 1 : 0;
            }

            if (table.Rows.Select(r => string.Join('\n', r.Take(keys))).Distinct(StringComparer.Ordinal).Count() == table.Rows.Count)
            {
                return keys;
            }
        }

        return 0;
    }

    private static IEnumerable<ProseTable> Split(ProseTable table, int keys, int[] cells)
    {
        int[] widths = Widths(table);
        int room = MostWide - Wide(widths.Take(keys));
        List<int> taken = [];
        foreach (int cell in cells)
        {
            if (taken.Count > 0 && taken.Append(cell).Sum(c => widths[c] + 3) > room)
            {
                yield return Columns(table, keys, taken);
                taken = [];
            }

            taken.Add(cell);
        }

        yield return Columns(table, keys, taken);
    }

    private static ProseTable Columns(ProseTable table, int keys, List<int> taken)
    {
        int[] all = [.. Enumerable.Range(0, keys), .. taken];
        return new([.. all.Select(c => table.Head[c])], [.. table.Rows.Select(r => (IReadOnlyList<string>)[.. all.Select(c => r[c])])]);
    }

    // "**run**, what holds it there: beside the feed"; nothing where the cells are empty.
    private static string? Sentence(ProseTable table, IReadOnlyList<string> row, int keys, int[] words)
    {
        string[] said = [.. words.Where(c => row[c].Length > 0 && row[c] is not "-").Select(c => words.Length == 1 && keys + 1 == table.Head.Count ? row[c] : $"{table.Head[c]}: {row[c]}")];
        string name = string.Join(", ", Enumerable.Range(0, keys).Select(c => c == 0 ? row[c] : $"{table.Head[c]} {row[c]}").Where(k => k.Length > 0));
        return said.Length == 0 ? null : $"{(name.Contains('*', StringComparison.Ordinal) ? name : $"**{name}**")}: {string.Join("; ", said)}";
    }

    private static string Number(int index) => Engineering.Wording.Number(index + 1, 0);
}
