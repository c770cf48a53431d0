using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>Puts a Markdown page together: headings, paragraphs, lists and tables with their columns aligned.</summary>
/// <param name="unit">The unit in which lengths are read: sentences come in mm and are turned into it here.</param>
internal sealed class MarkdownPage(ReadersUnit unit)
{
    private readonly StringBuilder _text = new();

    /// <summary>A length as a bare number, for a column whose head says mm.</summary>
    public string Mm(double lengthMm) => unit.Number(lengthMm);

    public MarkdownPage Heading(int level, string words)
    {
        Gap();
        _text.Append('#', level).Append(' ').Append(Line(words)).Append('\n');
        return this;
    }

    public MarkdownPage Paragraph(string words)
    {
        Gap();
        _text.Append(Line(words)).Append('\n');
        return this;
    }

    /// <summary>A picture of the same set, by its place beside the page.</summary>
    public MarkdownPage Picture(string caption, string file)
    {
        Gap();
        _text.Append("![").Append(Line(caption)).Append("](").Append(file).Append(")\n");
        return this;
    }

    public MarkdownPage List(IEnumerable<string> items) => Items(items, _ => "- ");

    public MarkdownPage Numbered(IEnumerable<string> items) => Items(items, i => $"{Wording.Number(i + 1, 0)}. ");

    /// <summary>A table; the first row is its head. Empty tables are left out.</summary>
    public MarkdownPage Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        List<IReadOnlyList<string>> all = [head.Select(Cell).ToList(), .. rows.Select(r => (IReadOnlyList<string>)[.. r.Select(Cell)])];
        if (all.Count == 1)
        {
            return this;
        }

        Gap();
        int[] widths = [.. Enumerable.Range(0, head.Count).Select(c => all.Max(r => r[c].Length))];
        for (int i = 0; i < all.Count; i++)
        {
            _text.Append("| ").Append(string.Join(" | ", all[i].Select((cell, c) => cell.PadRight(widths[c])))).Append(" |\n");
            if (i == 0)
            {
                _text.Append('|').Append(string.Join("|", widths.Select(w => new string('-', w + 2)))).Append("|\n");
            }
        }

        return this;
    }

    public byte[] Finish() => Encoding.UTF8.GetBytes(_text.ToString());

    /// <summary>A name from a file as it stands in a table or a sentence: never a new column or line.</summary>
    private string Cell(string text) => Line(text).Replace("\\|", "\\\\|", StringComparison.Ordinal).Replace("|", "\\|", StringComparison.Ordinal);

    /// <summary>Words on one line; what looks like a tag or a link is words too, since these pages hold none.</summary>
    private string Line(string text) =>
        unit.Words(text).Replace("<", "&lt;", StringComparison.Ordinal).Replace("](", "]\\(", StringComparison.Ordinal).ReplaceLineEndings(" ");

    private MarkdownPage Items(IEnumerable<string> items, Func<int, string> mark)
    {
        Gap();
        foreach ((string item, int i) in items.Select((t, i) => (t, i)))
        {
            _text.Append(mark(i)).Append(Line(item)).Append('\n');
        }

        return this;
    }

    private void Gap()
    {
        if (_text.Length > 0)
        {
            _text.Append('\n');
        }
    }
}
