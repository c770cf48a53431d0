using WheelDraft.Engineering;

namespace WheelDraft.Formats.Prose;

// The folder "Prose": pages of words, tables and pictures as blocks in no format, and their writers. What a page says is the business of who makes it
// (reports, guides); how headings, wide tables and pictures look is the writers'. No figure is worked out here.

/// <summary>A piece of a page. Words may hold **strong** words and `code`; all else in them is words.</summary>
internal abstract record ProseBlock;

/// <summary>A heading.</summary>
/// <param name="Level">1 for the page's title, 2 for its parts, 3 below them.</param>
/// <param name="Words">Its words.</param>
internal sealed record ProseHeading(int Level, string Words) : ProseBlock;

/// <summary>A paragraph.</summary>
internal sealed record ProseParagraph(string Words) : ProseBlock;

/// <summary>A list.</summary>
internal sealed record ProseList(IReadOnlyList<string> Items, bool IsNumbered) : ProseBlock;

/// <summary>A table with a row at least; every row has a cell for each column.</summary>
internal sealed record ProseTable(IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyList<string>> Rows) : ProseBlock;

/// <summary>A picture of the same set.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="File">Its place beside the page.</param>
internal sealed record ProsePicture(string Caption, string File) : ProseBlock;

/// <summary>The list of all parts of the page, which the writer fills in.</summary>
internal sealed record ProseContents : ProseBlock;

/// <summary>Puts a page together.</summary>
/// <param name="unit">The unit in which lengths are read: sentences come in mm and are turned into it here.</param>
internal sealed class ProsePage(ReadersUnit unit)
{
    private readonly List<ProseBlock> _blocks = [];

    /// <summary>The blocks so far.</summary>
    public IReadOnlyList<ProseBlock> Blocks => _blocks;

    /// <summary>A length as a bare number, for a column whose head says mm.</summary>
    public string Mm(double lengthMm) => unit.Number(lengthMm);

    public ProsePage Heading(int level, string words) => Add(new ProseHeading(level, Line(words)));

    public ProsePage Paragraph(string words) => Add(new ProseParagraph(Line(words)));

    public ProsePage Picture(string caption, string file) => Add(new ProsePicture(Line(caption), file));

    public ProsePage Contents() => Add(new ProseContents());

    public ProsePage List(IEnumerable<string> items) => Add(new ProseList([.. items.Select(Line)], IsNumbered: false));

    public ProsePage Numbered(IEnumerable<string> items) => Add(new ProseList([.. items.Select(Line)], IsNumbered: true));

    /// <summary>A table; the first row is its head. Empty tables are left out.</summary>
    public ProsePage Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        IReadOnlyList<IReadOnlyList<string>> all = [.. rows.Select(r => (IReadOnlyList<string>)[.. r.Select(Line)])];
        return all.Count == 0 ? this : Add(new ProseTable([.. head.Select(Line)], all));
    }

    private ProsePage Add(ProseBlock block)
    {
        _blocks.Add(block);
        return this;
    }

    private string Line(string words) => ReadersWords.Read(unit.Words(words).ReplaceLineEndings(" "));
}
