using WheelDraft.Drawing;
using WheelDraft.Formats.Guide;

namespace WheelDraft.Formats.Outputs;

/// <summary>The guide to building a design, as a page for the screen and as pages to print.</summary>
internal static class GuideFiles
{
    /// <summary>The page for the screen, beside the report.</summary>
    public const string Page = "build.md";

    public static IEnumerable<OutputFile> Of(OutputTask task)
    {
        // Worked out inside, so that a guide that cannot be costs nothing but itself.
        Lazy<BuildingGuide> guide = new(() => BuildGuide.Of(task.Design));
        return task.OrLeftOut("the building guide", () => task.File(Page, () => GuideMarkdown.Write(guide.Value)))
            .Concat(task.OrLeftOut("the building guide to print", () => task.File("print/build.pdf", () => GuidePages.Write(guide.Value, task.Sheets, TemplateSheets.PaperOf(task.Design), (task.Design.Brief, task.Font)))));
    }
}
