using WheelDraft.Drawing;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Pdf;

/// <summary>How a true-size drawing is shared out over printable pages that overlap.</summary>
/// <remarks>Every point of the drawing lies in the window of at least one page; columns run from the left, rows from the bottom.</remarks>
internal sealed class TilePlan
{
    /// <summary>Width of the strip that two neighbouring pages share, mm: enough to glue them and to see both marks.</summary>
    internal const double OverlapMm = 10;

    private readonly Bounds _window;
    private readonly Point _lowerLeft;

    /// <summary>A plan for a drawing.</summary>
    /// <param name="part">The drawing, at true size.</param>
    /// <param name="window">Where a page shows it, mm on the page; larger than the overlap both ways.</param>
    internal TilePlan(Sheet part, Bounds window)
    {
        _window = window;
        Columns = Count(part.WidthMm, window.Width);
        Rows = Count(part.HeightMm, window.Height);

        // What the windows cover beyond the drawing is shared equally by both sides.
        _lowerLeft = new(
            (part.WidthMm - Covered(Columns, window.Width)) / 2,
            (part.HeightMm - Covered(Rows, window.Height)) / 2);
    }

    /// <summary>Pages side by side.</summary>
    internal int Columns { get; }

    /// <summary>Pages one above the other.</summary>
    internal int Rows { get; }

    /// <summary>The pages: rows from the bottom, in each the columns from the left.</summary>
    internal IEnumerable<Tile> Tiles =>
        from row in Enumerable.Range(0, Rows)
        from column in Enumerable.Range(0, Columns)
        select new Tile(column, row, ShiftOf(column, row));

    /// <summary>The letter of the join between a page and its right neighbour, or its upper one: each join of the plan its own.</summary>
    internal string Join(Tile tile, bool toTheRight)
    {
        int beside = Rows * (Columns - 1);
        int number = toTheRight ? (tile.Row * (Columns - 1)) + tile.Column : beside + (tile.Row * Columns) + tile.Column;
        string letter = ((char)('A' + (number % 26))).ToString();
        return number < 26 ? letter : letter + FixedPoint.Short(1 + (number / 26), 0);
    }

    private Vector ShiftOf(int column, int row)
    {
        Point corner = new(_lowerLeft.X + (column * (_window.Width - OverlapMm)), _lowerLeft.Y + (row * (_window.Height - OverlapMm)));
        return new Point(_window.MinX, _window.MinY) - corner;
    }

    private static int Count(double lengthMm, double windowMm) =>
        lengthMm <= windowMm ? 1 : (int)Math.Ceiling((lengthMm - OverlapMm) / (windowMm - OverlapMm) - 1e-9);

    private static double Covered(int count, double windowMm) => (count * (windowMm - OverlapMm)) + OverlapMm;
}

/// <summary>One page of a plan.</summary>
/// <param name="Column">From 0, from the left.</param>
/// <param name="Row">From 0, from the bottom.</param>
/// <param name="Shift">From a point of the drawing to its place on the page, mm.</param>
internal readonly record struct Tile(int Column, int Row, Vector Shift);
