using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Places dimensions on a sheet, each where its text overlaps nothing; those without a place go into a table.</summary>
/// <remarks>In the order given, each takes the first of its ways of being drawn whose text is inside the limits and clear of
/// all texts and dimension lines, and whose lines cross no text. What finds no place is never dropped: it is in
/// <see cref="Unplaced"/>, for <see cref="Table"/>.</remarks>
public sealed class DimensionPen
{
    private readonly GroupPen _pen;
    private readonly List<Dimension> _unplaced = [];

    /// <summary>Places dimensions with a pen.</summary>
    public DimensionPen(GroupPen pen)
    {
        ArgumentNullException.ThrowIfNull(pen);
        _pen = pen;
    }

    /// <summary>Dimensions that found no place, in the order given.</summary>
    public IReadOnlyList<Dimension> Unplaced => _unplaced;

    /// <summary>Places a dimension.</summary>
    /// <returns>Whether it found a place on the drawing.</returns>
    public bool Add(Dimension dimension)
    {
        ArgumentNullException.ThrowIfNull(dimension);
        foreach (DimensionLayout layout in dimension.Layouts())
        {
            if (IsFree(layout))
            {
                Draw(layout);
                return true;
            }
        }

        _unplaced.Add(dimension);
        return false;
    }

    /// <summary>Places dimensions, those with the least room first where the order is of no account.</summary>
    public void Add(IEnumerable<Dimension> dimensions)
    {
        ArgumentNullException.ThrowIfNull(dimensions);
        foreach (Dimension dimension in dimensions)
        {
            Add(dimension);
        }
    }

    /// <summary>The table of the dimensions that found no place, or null.</summary>
    public SheetTable? Table() =>
        _unplaced.Count == 0
            ? null
            : new SheetTable([new("Size of"), new("Size", TextAlong.End)], [.. _unplaced.Select(d => (IReadOnlyList<string>)[d.Subject, d.Text])]);

    private bool IsFree(DimensionLayout layout) =>
        _pen.Texts.IsFree(layout.Text.Box)
        && layout.AllLines.All(p => _pen.Texts.Limits.Contains(p.Start) && _pen.Texts.Limits.Contains(p.End) && Chords(p).All(c => _pen.Texts.IsFree(c.From, c.To)));

    private void Draw(DimensionLayout layout)
    {
        if (layout.Extensions.Count > 0)
        {
            _pen.Line(layout.Extensions, LineStyle.Dimension);
        }

        _pen.Line(layout.Lines, LineStyle.Dimension);
        foreach ((Point from, Point to) in layout.AllLines.SelectMany(Chords))
        {
            _pen.Texts.TakeLine(from, to);
        }

        _pen.Add(layout.Heads).Add(layout.Text);
    }

    /// <summary>Short chords along a piece, for keeping texts clear only: what is drawn is the arc itself.</summary>
    private static IEnumerable<(Point From, Point To)> Chords(Piece piece)
    {
        const double longestMm = 2;
        int parts = piece is Arc ? (int)Math.Ceiling(piece.Length / longestMm) : 1;
        for (int i = 0; i < parts; i++)
        {
            yield return (piece.PointAt((double)i / parts), piece.PointAt((double)(i + 1) / parts));
        }
    }
}
