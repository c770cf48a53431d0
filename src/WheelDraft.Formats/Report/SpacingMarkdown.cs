using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>Spacing rows for people.</summary>
internal static class SpacingMarkdown
{
    public static void Write(MarkdownPage page, Design design) => page.Heading(2, "Spacing");
}
