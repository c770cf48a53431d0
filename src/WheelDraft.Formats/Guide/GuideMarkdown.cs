using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;

namespace WheelDraft.Formats.Guide;

/// <summary>The building guide as Markdown, its pictures those of the folder draw.</summary>
internal static class GuideMarkdown
{
    /// <summary>The bytes of the page.</summary>
    public static byte[] Write(BuildingGuide guide)
    {
        // The guide's lengths are those of the drawing sheets, in their unit already.
        ProsePage page = new(ReadersUnit.Millimetres);
        page.Heading(1, guide.Title).Paragraph(guide.Caution);
        foreach (GuideChapter chapter in guide.Chapters)
        {
            page.Heading(2, chapter.Heading);
            foreach (GuideBlock block in chapter.Blocks)
            {
                Add(page, block);
            }
        }

        return MarkdownWriter.Write(page);
    }

    private static void Add(ProsePage page, GuideBlock block)
    {
        switch (block)
        {
            case GuideWords words:
                page.Paragraph(words.Words);
                break;
            case GuideList list:
                _ = list.IsNumbered ? page.Numbered(list.Items) : page.List(list.Items);
                break;
            case GuideCautions cautions:
                page.List(cautions.Items.Select(c => $"**Caution.** {c}"));
                break;
            case GuideTable table:
                page.Paragraph($"{table.Title}:").Table([.. table.Columns.Select(c => c.Heading)], table.Rows);
                break;
            case GuidePicture picture:
                page.Picture(picture.Caption, $"draw/{picture.Sheet}.svg");
                break;
            default:
                throw new NotSupportedException($"A block of kind {block.GetType().Name}.");
        }
    }
}
