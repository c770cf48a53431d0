using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Prose;

/// <summary>Writes a page as Markdown, its tables aligned and narrow enough for a printed page.</summary>
internal static class MarkdownWriter
{
    /// <summary>The bytes of the page.</summary>
    public static byte[] Write(ProsePage page)
    {
        StringBuilder text = new();
        foreach (ProseBlock block in page.Blocks)
        {
            if (text.Length > 0)
            {
                text.Append('\n');
            }

            Add(text, block, page);
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void Add(StringBuilder text, ProseBlock block, ProsePage page)
    {
        switch (block)
        {
            case ProseHeading heading:
                text.Append('#', heading.Level).Append(' ').Append(Escaped(heading.Words)).Append('\n');
                break;
            case ProseParagraph paragraph:
                text.Append(Escaped(paragraph.Words)).Append('\n');
                break;
            case ProsePicture picture:
                text.Append("![").Append(Escaped(picture.Caption)).Append("](").Append(picture.File).Append(")\n");
                break;
            case ProseList list:
                Items(text, list with { Items = [.. list.Items.Select(Escaped)] });
                break;
            case ProseTable table:
                Table(text, table);
                break;
            case ProseContents:
                foreach (ProseAnchor anchor in ProseAnchor.Of(page))
                {
                    text.Append("- [").Append(Escaped(anchor.Words)).Append("](#").Append(anchor.Id).Append(")\n");
                }

                break;
            default:
                throw new NotSupportedException($"A block of kind {block.GetType().Name}.");
        }
    }

    private static void Table(StringBuilder text, ProseTable table)
    {
        FittedTable fitted = TableFit.Of(table with { Head = [.. table.Head.Select(Cell)], Rows = [.. table.Rows.Select(r => (IReadOnlyList<string>)[.. r.Select(Cell)])] });
        for (int i = 0; i < fitted.Tables.Count; i++)
        {
            text.Append(i > 0 ? "\n" : "");
            Rows(text, fitted.Tables[i]);
        }

        if (fitted.Words is ProseList words)
        {
            text.Append(fitted.Tables.Count > 0 ? "\n" : "");
            Items(text, words);
        }
    }

    private static void Rows(StringBuilder text, ProseTable table)
    {
        IReadOnlyList<string>[] all = [table.Head, .. table.Rows];
        int[] widths = TableFit.Widths(table);
        for (int i = 0; i < all.Length; i++)
        {
            text.Append("| ").Append(string.Join(" | ", all[i].Select((cell, c) => cell.PadRight(widths[c])))).Append(" |\n");
            if (i == 0)
            {
                text.Append('|').Append(string.Join("|", widths.Select(w => new string('-', w + 2)))).Append("|\n");
            }
        }
    }

    // Escaped already, whether as words or as cells.
    private static void Items(StringBuilder text, ProseList list)
    {
        foreach ((string item, int i) in list.Items.Select((t, i) => (t, i)))
        {
            text.Append(list.IsNumbered ? $"{Wording.Number(i + 1, 0)}. " : "- ").Append(item).Append('\n');
        }
    }

    /// <summary>Words as a cell: never a new column.</summary>
    private static string Cell(string words) => Escaped(words).Replace("\\|", "\\\\|", StringComparison.Ordinal).Replace("|", "\\|", StringComparison.Ordinal);

    /// <summary>What looks like a tag or a link is words too.</summary>
    private static string Escaped(string words) =>
        words.Replace("<", "&lt;", StringComparison.Ordinal).Replace("](", "]\\(", StringComparison.Ordinal);
}
