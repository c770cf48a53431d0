using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

// What is drawn, and nothing of how it is written: a sheet of paper, its groups, and items of true lines and arcs with
// meanings for styles. Coordinates are millimetres on the paper, x to the right from the left edge, y UP from the lower
// edge, as everywhere in the project; a writer whose format counts downwards flips y itself. Items are drawn in order,
// later ones on top. No clipping, no transparency, no transforms: what is here is what every writer draws.

/// <summary>A finished sheet: paper size, words for readers who cannot see it, and groups of items in drawing order.</summary>
/// <remarks>Millimetres on the paper, origin in the lower left corner, y up. Immutable.</remarks>
internal sealed class Sheet
{
    /// <summary>A sheet from its words and groups.</summary>
    /// <param name="words">Name, title and description.</param>
    /// <param name="size">Paper size.</param>
    /// <param name="groups">Groups in drawing order; every id once in the sheet, nested ones included.</param>
    /// <param name="warnings">What the drawing had to do without, for the report.</param>
    /// <exception cref="ArgumentException">An id appears twice.</exception>
    public Sheet(SheetWords words, PaperSize size, IReadOnlyList<SheetGroup> groups, IReadOnlyList<string> warnings)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(warnings);
        Words = words;
        Size = size;
        Groups = [.. groups];
        Warnings = [.. warnings];
        HashSet<string> ids = new(StringComparer.Ordinal);
        foreach (SheetGroup group in AllGroups)
        {
            if (!ids.Add(group.Id))
            {
                throw new ArgumentException($"The id '{group.Id}' appears twice on sheet '{words.Name}'.", nameof(groups));
            }
        }
    }

    /// <summary>Name, title and description.</summary>
    public SheetWords Words { get; }

    /// <summary>Paper size.</summary>
    public PaperSize Size { get; }

    /// <summary>Width of the paper, mm.</summary>
    public double WidthMm => Size.WidthMm;

    /// <summary>Height of the paper, mm.</summary>
    public double HeightMm => Size.HeightMm;

    /// <summary>The outermost groups, in drawing order.</summary>
    public IReadOnlyList<SheetGroup> Groups { get; }

    /// <summary>What the drawing had to do without (characters shown as boxes, texts made smaller), in order.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>The same content at another place and size on other paper.</summary>
    /// <param name="size">The paper.</param>
    /// <param name="to">From this paper to that, without a turn.</param>
    public Sheet On(PaperSize size, Placement to) => new(Words, size, [.. Groups.Select(g => g.Placed(to))], Warnings);

    /// <summary>All groups, nested ones after their parent.</summary>
    public IEnumerable<SheetGroup> AllGroups => Groups.SelectMany(g => g.WithNested);

    /// <summary>All items of all groups, in drawing order.</summary>
    public IEnumerable<SheetItem> Items => Groups.SelectMany(g => g.Items);
}

/// <summary>The words of a sheet.</summary>
/// <param name="Name">Short name for files and pages: wheel, timing, strip-mist.</param>
/// <param name="Title">One line: what the sheet shows; the title of the picture for screen readers.</param>
/// <param name="Description">Some sentences that stand for the picture where it cannot be seen.</param>
internal sealed record SheetWords(string Name, string Title, string Description);
