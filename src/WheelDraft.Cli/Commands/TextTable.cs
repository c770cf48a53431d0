namespace WheelDraft.Cli;

/// <summary>Rows of words as lines of a terminal, columns aligned.</summary>
internal static class TextTable
{
    /// <summary>The lines, indented by two; the first columns stand left, the others right.</summary>
    /// <param name="rows">The head first; all of one length.</param>
    /// <param name="leftColumns">How many columns hold words rather than figures.</param>
    public static IEnumerable<string> Lines(IReadOnlyList<string[]> rows, int leftColumns = 1)
    {
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length))];
        return rows.Select(row => ("  " + string.Join("  ", row.Select((cell, c) => c < leftColumns ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c])))).TrimEnd());
    }
}
