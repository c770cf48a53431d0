using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Places dimensions on a sheet, each where its text overlaps nothing; those without a place go into a table.</summary>
/// <remarks>In the order given, each takes the first of its ways of being drawn whose text is inside the limits and clear of
/// all texts and dimension lines, and whose lines cross no text; before these, one whose text also stands on no edge taken by
/// <see cref="TextRegistry.TakeEdges"/> and whose line crosses no other. What finds no place is never dropped: it is kept
/// for <see cref="Table"/>.</remarks>
internal sealed class DimensionPen
{
    private readonly GroupPen _pen;
    private readonly List<DimensionMark> _unplaced = [];

    /// <summary>Places dimensions with a pen.</summary>
    public DimensionPen(GroupPen pen)
    {
        ArgumentNullException.ThrowIfNull(pen);
        _pen = pen;
    }

    /// <summary>Places a dimension.</summary>
    /// <returns>Whether it found a place on the drawing.</returns>
    public bool Add(DimensionMark dimension)
    {
        ArgumentNullException.ThrowIfNull(dimension);
        DimensionLayout? chosen = null;
        foreach (DimensionLayout layout in dimension.Layouts().Where(IsFree))
        {
            bool tidy = IsTidy(layout);
            chosen = tidy ? layout : chosen ?? layout;
            if (tidy)
            {
                break;
            }
        }

        if (chosen is null)
        {
            _unplaced.Add(dimension);
            return false;
        }

        Draw(dimension, chosen);
        return true;
    }

    /// <summary>The table of the dimensions that found no place, or null.</summary>
    public SheetTable? Table() =>
        _unplaced.Count == 0
            ? null
            : new SheetTable([new("Size of"), new("Size", TextAlong.End)], [.. _unplaced.Select(d => (IReadOnlyList<string>)[d.Subject, d.Text])]);

    private bool IsFree(DimensionLayout layout) =>
        _pen.Texts.IsFree(layout.Text.Box)
        && layout.AllLines.All(p => TextRegistry.Chords(p).All(c =>
            _pen.Texts.Limits.Contains(c.From) && _pen.Texts.Limits.Contains(c.To) && !layout.Text.Box.MeetsLine(c.From, c.To) && _pen.Texts.IsFree(c.From, c.To)));

    /// <summary>Whether the text stands on no edge of the part and the dimension line crosses no other.</summary>
    private bool IsTidy(DimensionLayout layout) =>
        _pen.Texts.IsOffEdges(layout.Text.Box) && layout.Lines.All(p => TextRegistry.Chords(p).All(c => _pen.Texts.CrossesNoLine(c.From, c.To)));

    // Lines, heads and words of one dimension in one group, so that they are moved, hidden and read together.
    private void Draw(DimensionMark dimension, DimensionLayout layout)
    {
        GroupPen own = _pen.Numbered(dimension.Subject.Length > 0 ? $"{dimension.Subject}: {dimension.Text}" : dimension.Text, "dimension");
        if (layout.Extensions.Count > 0)
        {
            own.Line(layout.Extensions, LineStyle.Dimension);
        }

        own.Line(layout.Lines, LineStyle.Dimension);
        foreach ((Point from, Point to) in layout.AllLines.SelectMany(TextRegistry.Chords))
        {
            _pen.Texts.TakeLine(from, to);
        }

        own.Add(layout.Heads).Add(layout.Text);
    }
}
