using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Something drawn: a filled area, a line or a text. Nothing else exists on a sheet.</summary>
internal abstract class SheetItem : SheetNode
{
    private protected SheetItem()
    {
    }

    /// <summary>The smallest upright rectangle round it, stroke width included, mm on the paper.</summary>
    public abstract Bounds Bounds { get; }

    /// <summary>The same item at another place and size on the paper; patterns keep their lines and distances, and no line becomes narrower than the narrowest of all drawings.</summary>
    /// <param name="to">Where, without a turn.</param>
    public abstract SheetItem Placed(Placement to);
}

/// <summary>A filled area, with a pattern and an edge line if it has them.</summary>
/// <remarks>Draw the colour of the filling, then <see cref="PatternLines"/> and <see cref="PatternDots"/> in the pattern's colour,
/// then the edge. Holes are left out (even-odd and non-zero agree: holes run the other way).</remarks>
internal sealed class SheetArea : SheetItem
{
    private readonly Lazy<PatternDrawing> _pattern;

    /// <summary>One shape.</summary>
    public SheetArea(Outline shape, Fill fill, LineStyle? edge = null)
        : this([shape], fill, edge)
    {
    }

    /// <summary>Several shapes drawn as one.</summary>
    /// <exception cref="ArgumentException">There is no shape.</exception>
    public SheetArea(IReadOnlyList<Outline> shapes, Fill fill, LineStyle? edge = null)
    {
        ArgumentNullException.ThrowIfNull(shapes);
        if (shapes.Count == 0)
        {
            throw new ArgumentException("An area needs at least one shape.", nameof(shapes));
        }

        Shapes = [.. shapes];
        Fill = fill;
        Edge = edge;
        _pattern = new(() => PatternDrawing.Of(Shapes, Fill.Pattern));
    }

    /// <summary>The shapes.</summary>
    public IReadOnlyList<Outline> Shapes { get; }

    /// <summary>What the area means.</summary>
    public Fill Fill { get; }

    /// <summary>The line round it, or null.</summary>
    public LineStyle? Edge { get; }

    /// <summary>The lines of the pattern, clipped to the shapes; width <see cref="FillPattern.StrokeMm"/>, flat ends.</summary>
    public IReadOnlyList<Segment> PatternLines => _pattern.Value.Lines;

    /// <summary>The centres of the pattern's dots, diameter <see cref="FillPattern.StrokeMm"/>; every dot lies wholly inside.</summary>
    public IReadOnlyList<Point> PatternDots => _pattern.Value.Dots;

    /// <inheritdoc/>
    public override Bounds Bounds => Shapes.Select(s => s.Bounds).Aggregate((a, b) => a.With(b)).Grown((Edge?.WidthMm ?? 0) / 2);

    /// <inheritdoc/>
    public override SheetItem Placed(Placement to) => new SheetArea([.. Shapes.Select(s => s.Placed(to))], Fill, Edge?.Scaled(to.Scale));
}

/// <summary>A line along pieces: one run or several.</summary>
internal sealed class SheetLine : SheetItem
{
    private readonly Lazy<IReadOnlyList<StrokeRun>> _runs;

    /// <summary>A line along pieces; a piece that does not begin where the one before ended begins a new run.</summary>
    /// <exception cref="ArgumentException">There is no piece.</exception>
    public SheetLine(IReadOnlyList<Piece> pieces, LineStyle style)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(style);
        if (pieces.Count == 0)
        {
            throw new ArgumentException("A line needs at least one piece.", nameof(pieces));
        }

        Pieces = [.. pieces];
        Style = style;
        _runs = new(() => StrokeRun.Dashed(Pieces, Style.DashesMm()));
    }

    /// <summary>A straight line.</summary>
    public SheetLine(Point from, Point to, LineStyle style)
        : this([new Segment(from, to)], style)
    {
    }

    /// <summary>A closed line.</summary>
    public SheetLine(Contour contour, LineStyle style)
        : this(Required(contour).Pieces, style)
    {
    }

    /// <summary>The pieces, without gaps for dashes.</summary>
    public IReadOnlyList<Piece> Pieces { get; }

    /// <summary>Kind, ink and width.</summary>
    public LineStyle Style { get; }

    /// <summary>What is drawn: unbroken runs, cut into dashes and dots where the kind of line asks for it.</summary>
    /// <remarks>The dashes are geometry, so every writer draws the same ones; they are fitted so that a line begins and ends
    /// with a dash (ISO 128: lines meet in dashes), and a closed one has no seam.</remarks>
    public IReadOnlyList<StrokeRun> Runs => _runs.Value;

    /// <inheritdoc/>
    public override Bounds Bounds => Pieces.Select(p => p.Bounds).Aggregate((a, b) => a.With(b)).Grown(Style.WidthMm / 2);

    /// <inheritdoc/>
    public override SheetItem Placed(Placement to) => new SheetLine([.. Pieces.Select(p => p.Placed(to))], Style.Scaled(to.Scale));

    private static Contour Required(Contour contour)
    {
        ArgumentNullException.ThrowIfNull(contour);
        return contour;
    }
}
