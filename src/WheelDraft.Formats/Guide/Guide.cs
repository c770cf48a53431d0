using WheelDraft.Drawing;

namespace WheelDraft.Formats.Guide;

// The folder "Guide": how a timer is built from what one run writes: what to buy, in which order to work, how to adjust and test it. BuildGuide says
// it once, as chapters of blocks; GuideMarkdown and GuidePages show it. Every figure comes from the design; a step that does not apply is absent.

/// <summary>A guide as chapters, in no format.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Caution">The caution under it, in one line.</param>
/// <param name="Chapters">The chapters in the order of the work.</param>
internal sealed record BuildingGuide(string Title, string Caution, IReadOnlyList<GuideChapter> Chapters);

/// <summary>A chapter.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Blocks">What it holds, at least one block.</param>
internal sealed record GuideChapter(string Heading, IReadOnlyList<GuideBlock> Blocks);

/// <summary>A piece of a chapter.</summary>
internal abstract record GuideBlock;

/// <summary>A paragraph.</summary>
internal sealed record GuideWords(string Words) : GuideBlock;

/// <summary>A list, numbered where the order counts.</summary>
internal sealed record GuideList(IReadOnlyList<string> Items, bool IsNumbered = false) : GuideBlock;

/// <summary>Cautions.</summary>
internal sealed record GuideCautions(IReadOnlyList<string> Items) : GuideBlock;

/// <summary>A table under a line of words.</summary>
internal sealed record GuideTable(string Title, IReadOnlyList<TableColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows) : GuideBlock;

/// <summary>A drawing of the set.</summary>
/// <param name="Sheet">Name of the sheet.</param>
/// <param name="Caption">What it shows.</param>
internal sealed record GuidePicture(string Sheet, string Caption) : GuideBlock;
