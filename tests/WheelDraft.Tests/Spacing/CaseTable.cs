using System.Globalization;

namespace WheelDraft.Tests.Spacing;

/// <summary>A table of cases: a header of names, then rows of plain cells without quotes.</summary>
internal sealed class CaseTable
{
    private readonly string[] _names;

    private CaseTable(string[] names, IReadOnlyList<string[]> rows) => (_names, Rows) = (names, rows);

    public IReadOnlyList<string[]> Rows { get; }

    public static CaseTable Read(string name)
    {
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "cases", name));
        return new CaseTable(lines[0].Split(','), [.. lines.Skip(1).Select(l => l.Split(','))]);
    }

    public string Text(string[] row, string column) => row[Array.IndexOf(_names, column)];

    /// <summary>The number in the first of the columns that the table has.</summary>
    public double Number(string[] row, params string[] columns) => Number(Text(row, columns.First(_names.Contains)));

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
