namespace WheelDraft.Geometry;

/// <summary>Lays shapes on sheets so that none comes nearer to another, or to the edge, than a gap.</summary>
/// <remarks>Bottom-left filling after B. Baker, E. Coffman and R. Rivest, "Orthogonal packings in two dimensions" (1980), on exact outlines: each
/// shape is grown by half the gap, and every cell of a fine grid that the grown shape touches counts as its own, so that a place that is free in
/// the grid is free in truth. Sequences are sorted in several ways, both ways across the sheet, then changed two by two for as long as the work
/// allows, the best kept. Work is counted and not timed: the same shapes always come out the same. What is inside a hole of a shape is not used.</remarks>
public static class Nesting
{
    // Cells along the longer side of a sheet: a shape loses up to one of them on each side.
    private const int CellsAlong = 2000;
    private const double LeastCellMm = 0.05;

    /// <summary>Looks at rows of the grid after which no further sequence is begun: a second or two.</summary>
    public const long UsualWork = 60_000_000;

    /// <summary>Nests.</summary>
    /// <param name="items">What there is to lay.</param>
    /// <param name="stock">The sheets, all alike.</param>
    /// <param name="work">After how much work no further sequence is begun; the first is always finished.</param>
    /// <param name="progress">Told the share of the work that is done, 0 to 1.</param>
    /// <exception cref="ArgumentException">An item fits on no sheet in any of its turns.</exception>
    public static NestResult Of(IReadOnlyList<NestItem> items, NestStock stock, long work = UsualWork, Action<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(stock);
        double cell = Math.Max(LeastCellMm, Math.Max(stock.WidthMm, stock.HeightMm) / CellsAlong);
        NestShape[][] shapes = [.. items.Select(i => i.TurnsRad.Select(t => NestShape.Of(i.Shape, t, stock.GapMm, cell)).ToArray())];
        for (int i = 0; i < items.Count; i++)
        {
            if (!shapes[i].Any(s => s.Columns <= NestGrid.Cells(stock.WidthMm - stock.GapMm, cell) && s.Rows <= NestGrid.Cells(stock.HeightMm - stock.GapMm, cell)))
            {
                throw new ArgumentException($"Item {items[i].Name} fits on no sheet.", nameof(items));
            }
        }

        NestTrial best = new NestSearch(items, shapes, stock, cell).Best(work, progress);
        return new(
            [.. best.Sheets.Select(s => new NestedSheet([.. s]))],
            items.Sum(i => i.Count * i.Shape.Outer.SignedAreaMm2),
            LeastSheets(items, stock));
    }

    /// <summary>Fewer sheets than this are impossible: shapes grown by half the gap do not overlap, and lie in the sheet less half a gap all round.</summary>
    private static int LeastSheets(IReadOnlyList<NestItem> items, NestStock stock)
    {
        double grown = items.Sum(i => i.Count * NestShape.Grown(i.Shape, stock.GapMm).SignedAreaMm2);
        double room = (stock.WidthMm - stock.GapMm) * (stock.HeightMm - stock.GapMm);

        // What rounding may add to an area must not ask for a sheet more.
        return (int)Math.Ceiling((grown / room) - 1e-9);
    }
}

/// <summary>A shape to lay on sheets.</summary>
/// <param name="Name">What it is, for messages.</param>
/// <param name="Shape">The shape.</param>
/// <param name="Count">How many of it, at least one.</param>
/// <param name="TurnsRad">How it may be turned, radians anticlockwise, at least one; it is never turned over.</param>
public sealed record NestItem(string Name, Outline Shape, int Count, IReadOnlyList<double> TurnsRad);

/// <summary>Sheets to lay shapes on, their lower left corner at the origin.</summary>
/// <param name="WidthMm">Along x, mm.</param>
/// <param name="HeightMm">Along y, mm.</param>
/// <param name="GapMm">Least distance between shapes, and to the edge, mm.</param>
public sealed record NestStock(double WidthMm, double HeightMm, double GapMm);

/// <summary>Shapes laid on sheets.</summary>
/// <param name="Sheets">The sheets that are used.</param>
/// <param name="AreaMm2">Area inside the outer contours of all shapes, mm².</param>
/// <param name="LeastSheets">Fewer sheets than this are impossible.</param>
public sealed record NestResult(IReadOnlyList<NestedSheet> Sheets, double AreaMm2, int LeastSheets);

/// <summary>What lies on one sheet.</summary>
/// <param name="Items">The shapes, in the order in which they were laid.</param>
public sealed record NestedSheet(IReadOnlyList<NestedItem> Items);

/// <summary>A shape in its place.</summary>
/// <param name="Item">Which of the items.</param>
/// <param name="Place">From the item's own place to that on the sheet.</param>
public readonly record struct NestedItem(int Item, Placement Place);
