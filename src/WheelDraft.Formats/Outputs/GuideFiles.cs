using WheelDraft.Formats.Guide;

namespace WheelDraft.Formats.Outputs;

/// <summary>The guide to building a design, as a page for the screen and as pages to print.</summary>
internal static class GuideFiles
{
    /// <summary>The page for the screen, beside the report.</summary>
    public const string Page = "build.md";

    public static IEnumerable<OutputFile> Of(OutputTask task)
    {
        BuildingGuide guide = BuildGuide.Of(task.Design);
        return task.OrLeftOut("the building guide", () => new(Page, GuideMarkdown.Write(guide)))
            .Concat(task.OrLeftOut("the building guide to print", () => new("print/build.pdf", GuidePages.Write(guide, task.Sheets, DesignTemplate.PaperOf(task.Design), task.Design.Brief.InputMark))));
    }
}
