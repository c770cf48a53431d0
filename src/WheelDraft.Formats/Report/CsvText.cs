using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Report;

/// <summary>Rows of CSV that spreadsheets read as they are meant.</summary>
internal static class CsvText
{
    /// <summary>Adds a row, ended by LF.</summary>
    public static void Row(StringBuilder csv, IEnumerable<string> fields) => csv.AppendJoin(',', fields.Select(f => Quoted(Harmless(f)))).Append('\n');

    // RFC 4180: a field with a comma, a quote or a line break is quoted, quotes doubled.
    private static string Quoted(string field) =>
        field.AsSpan().ContainsAny(",\"\r\n") ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : field;

    // A spreadsheet takes words that begin like a formula for one; an apostrophe before them says that they are words. Common practice, no source.
    private static string Harmless(string field) =>
        field.Length > 0 && "=+-@\t\r".Contains(field[0], StringComparison.Ordinal) && !double.TryParse(field, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? "'" + field : field;
}
