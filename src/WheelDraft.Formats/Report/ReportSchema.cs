using System.Reflection;
using System.Text;

namespace WheelDraft.Formats.Report;

/// <summary>The JSON Schema (draft 2020-12) of report.json, format 1, as it stands in report.schema.json.</summary>
internal static class ReportSchema
{
    /// <summary>The schema as indented JSON with LF line ends and a last LF.</summary>
    public static string Text()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("report.schema.json")
            ?? throw new InvalidOperationException("The schema of the report is not in the program.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return Encoding.UTF8.GetString(bytes);
    }
}
