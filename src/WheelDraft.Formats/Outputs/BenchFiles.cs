using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Guide;
using WheelDraft.Formats.Report;

namespace WheelDraft.Formats.Outputs;

/// <summary>What a made timer is proved by on the bench: the plan, an empty log, the inspector's table.</summary>
internal static class BenchFiles
{
    /// <summary>The folder.</summary>
    public const string Folder = "bench";

    public static IEnumerable<OutputFile> Of(OutputTask task)
    {
        Lazy<BuildingGuide> plan = new(() => BenchPlan.Of(task.Design));
        return task.OrLeftOut("the bench plan", () => task.File($"{Folder}/bench-plan.md", () => GuideMarkdown.Write(plan.Value)))
            .Concat(task.OrLeftOut("the bench plan to print", () => task.File($"{Folder}/bench-plan.pdf", () => GuidePages.Write(plan.Value, [], TemplateSheets.PaperOf(task.Design), (task.Design.Brief, task.Font)))))
            .Append(task.File($"{Folder}/bench-log.csv", () => EmptyLog(task.Design)))
            .Concat(task.OrLeftOut("the inspector's table", () => task.File($"{Folder}/inspection.csv", () => InspectionCsv.Write(task.Design))));
    }

    private static byte[] EmptyLog(Design design)
    {
        StringBuilder csv = new();
        CsvText.Row(csv, ["time_s", .. design.Brief.Outputs.Select(o => o.Name)]);
        return Encoding.UTF8.GetBytes(csv.ToString());
    }
}
