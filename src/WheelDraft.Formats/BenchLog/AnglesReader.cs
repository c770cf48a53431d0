using System.Globalization;
using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.BenchLog;

/// <summary>A stretch of copper, or of the turn, as a table of angles gives it.</summary>
/// <param name="Output">The output.</param>
/// <param name="OnDeg">Where it begins, degrees.</param>
/// <param name="OffDeg">Where it ends, degrees.</param>
internal sealed record MeasuredStretch(string Output, double OnDeg, double OffDeg)
{
    /// <summary>Other measures of the row by their column: <c>radius_mm</c>, <c>station_deg</c>, <c>contact_length_mm</c>, <c>contact_width_mm</c>.</summary>
    public IReadOnlyDictionary<string, double> Also { get; init; } = new Dictionary<string, double>(StringComparer.Ordinal);
}

/// <summary>Reads the protractor table of an old wheel: <c>output,on_deg,off_deg</c> and, where measured, radius, station and patch.</summary>
internal static class AnglesReader
{
    /// <summary>Columns that may stand beside the three.</summary>
    public static readonly string[] MayHave = ["radius_mm", "station_deg", "contact_length_mm", "contact_width_mm"];

    /// <summary>Whether a file is such a table and no log.</summary>
    public static bool IsTable(ReadOnlySpan<byte> beginning)
    {
        int end = beginning.IndexOf((byte)'\n');
        string first = Encoding.UTF8.GetString(end < 0 ? beginning : beginning[..end]);
        return first.Contains("on_deg", StringComparison.OrdinalIgnoreCase) && first.Contains("off_deg", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The rows.</summary>
    /// <exception cref="DesignRefusedException">What is wrong, all of it, each with its line.</exception>
    public static IReadOnlyList<MeasuredStretch> Read(ReadOnlySpan<byte> bytes)
    {
        string[] lines = [.. Encoding.UTF8.GetString(bytes).TrimStart('\ufeff').Split('\n').Select(l => l.TrimEnd('\r'))];
        char separator = "\t;,".First(s => s == ',' || lines[0].Contains(s, StringComparison.Ordinal));
        string[] head = [.. LogLayout.Cells(lines[0], separator).Select(h => h.ToLowerInvariant())];
        List<Finding> faults = [];
        foreach (string odd in head.Where(h => h is not ("output" or "on_deg" or "off_deg") && !MayHave.Contains(h, StringComparer.Ordinal)))
        {
            faults.Add(Finding.Error("log.header", $"the column '{odd}' is not known; a table of angles has output, on_deg, off_deg and may have {string.Join(", ", MayHave)}", new TextPlace(1, Array.IndexOf(head, odd) + 1)));
        }

        if (!head.Contains("output", StringComparer.Ordinal))
        {
            faults.Add(Finding.Error("log.header", "the table lacks the column 'output'", new TextPlace(1, 1)));
        }

        List<MeasuredStretch> rows = [];
        for (int i = 1; i < lines.Length && head.Contains("output", StringComparer.Ordinal); i++)
        {
            string[] cells = LogLayout.Cells(lines[i], separator);
            if (cells.Any(c => c.Length > 0) && Row(head, cells, (i + 1, separator), faults) is MeasuredStretch row)
            {
                rows.Add(row);
            }
        }

        if (faults.Count == 0 && rows.Count == 0)
        {
            faults.Add(Finding.Error("log.empty", "the table has no rows; one reads e.g. mist,41,65", new TextPlace(1, 1)));
        }

        return faults.Count == 0 ? rows : throw new DesignRefusedException(faults);
    }

    private static MeasuredStretch? Row(string[] head, string[] cells, (int Line, char Separator) at, List<Finding> faults)
    {
        string name = "";
        Dictionary<string, double> numbers = new(StringComparer.Ordinal);
        for (int i = 0; i < head.Length; i++)
        {
            string cell = i < cells.Length ? cells[i] : "";
            if (head[i] is "output")
            {
                name = cell;
            }
            else if (cell.Length > 0)
            {
                if (double.TryParse(at.Separator == ',' ? cell : cell.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) && Math.Abs(value) <= 1000)
                {
                    numbers[head[i]] = value;
                }
                else
                {
                    faults.Add(Finding.Error("log.cell", $"'{cell}' in column '{head[i]}' is no number, or beyond 1000", new TextPlace(at.Line, i + 1)));
                }
            }
        }

        bool whole = name.Length > 0 && numbers.ContainsKey("on_deg") && numbers.ContainsKey("off_deg");
        if (!whole)
        {
            faults.Add(Finding.Error("log.cell", "a row needs a name, on_deg and off_deg", new TextPlace(at.Line, 1)));
        }

        return whole ? new(name, numbers["on_deg"], numbers["off_deg"]) { Also = numbers } : null;
    }
}
