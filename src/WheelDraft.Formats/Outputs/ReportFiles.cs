using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Formats.Guide;
using WheelDraft.Formats.Prose;
using WheelDraft.Formats.Report;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Outputs;

/// <summary>The report for programs, for people, and as one page with its pictures inside.</summary>
internal static class ReportFiles
{
    public static IEnumerable<OutputFile> Of(OutputTask task)
    {
        yield return task.File("report.json", () => ReportJson.Write(task.Design));

        yield return task.File(BillOfMaterials.FileName, () => Encoding.UTF8.GetBytes(BillOfMaterials.Write(task.Design)));

        // The report shows the drawings that are made with it; a report alone draws nothing.
        Dictionary<string, Sheet> sheets = task.Request.Kinds.Contains(OutputKind.Draw) ? task.Sheets.ToDictionary(s => $"{OutputFiles.DrawFolder}/{s.Words.Name}.svg", StringComparer.Ordinal) : [];
        Lazy<ProsePage> page = new(() => ReportMarkdown.Page(task.Design, new(task.Request.DespiteFindings, [.. sheets.Values.Select(s => s.Words.Name)])));
        yield return task.File("report.md", () => MarkdownWriter.Write(page.Value));
        foreach (OutputFile html in task.OrLeftOut("the report as one page", () => task.File("report.html", () => HtmlWriter.Write(page.Value, Pictures(task, sheets)))))
        {
            yield return html;
        }
    }

    // Light on white, whatever the theme of the set: the page is white, and is printed.
    private static Dictionary<string, byte[]> Pictures(OutputTask task, Dictionary<string, Sheet> sheets)
    {
        SvgOptions options = new() { Theme = Theme.Light, Text = task.Request.Text, Font = task.Font };
        KeyValuePair<string, Sheet>[] all = [.. sheets];
        return AsMade.InOrder(all.Length, Environment.ProcessorCount, i => (Name: all[i].Key, Picture: SvgWriter.Bytes(all[i].Value, options)))
            .ToDictionary(p => p.Name, p => p.Picture, StringComparer.Ordinal);
    }
}
