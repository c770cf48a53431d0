namespace WheelDraft.Geometry;

/// <summary>A shape in one turn as the cells of a grid that it, grown by half the gap, touches.</summary>
internal sealed class NestShape
{
    // Cells are widened by this share of themselves, far above rounding, so that a shape that ends on a line between cells counts in both.
    private const double EdgeShare = 1e-6;

    private readonly (int From, int To)[][] _spans;

    private NestShape(Placement turn, Point corner, (int From, int To)[][] spans)
    {
        (Turn, Corner, _spans) = (turn, corner, spans);
        Columns = spans.Max(r => r.Length == 0 ? 0 : r[^1].To);
    }

    /// <summary>The turn.</summary>
    public Placement Turn { get; }

    /// <summary>The lower left corner of its cells, in the turned shape's own place.</summary>
    public Point Corner { get; }

    /// <summary>How many columns it spans.</summary>
    public int Columns { get; }

    /// <summary>How many rows it spans.</summary>
    public int Rows => _spans.Length;

    /// <summary>The cells of a row, as half-open spans in order.</summary>
    public (int From, int To)[] this[int row] => _spans[row];

    /// <summary>The shape's outer contour grown by half the gap.</summary>
    public static Contour Grown(Outline shape, double gapMm) => gapMm > 0 ? Offsets.Of(new Outline(shape.Outer), gapMm / 2).Outlines[0].Outer : shape.Outer;

    /// <summary>A shape turned.</summary>
    public static NestShape Of(Outline shape, double turnRad, double gapMm, double cellMm)
    {
        Placement turn = Placement.Turn(turnRad);
        Contour grown = Grown(shape, gapMm).Placed(turn);
        Bounds box = grown.Bounds;
        int rows = NestGrid.CellsRoundedUp(box.Height, cellMm), columns = NestGrid.CellsRoundedUp(box.Width, cellMm);
        bool[][] touched = [.. Enumerable.Range(0, rows).Select(_ => new bool[columns])];
        foreach (Piece piece in grown.Pieces)
        {
            int parts = Math.Max(1, (int)Math.Ceiling(2 * piece.Length / cellMm));
            for (int i = 0; i < parts; i++)
            {
                Mark(touched, piece.Part((double)i / parts, i == parts - 1 ? 1 : (double)(i + 1) / parts).Bounds, box, cellMm);
            }
        }

        Outline inside = new(grown);
        return new(turn, new(box.MinX, box.MinY), [.. touched.Select((row, y) => Spans(row, x => inside.Contains(new(box.MinX + ((x + 0.5) * cellMm), box.MinY + ((y + 0.5) * cellMm)))))]);
    }

    private static void Mark(bool[][] touched, Bounds part, Bounds box, double cellMm)
    {
        int fromRow = Cell(part.MinY - box.MinY, -1), toRow = Cell(part.MaxY - box.MinY, 1);
        int fromColumn = Cell(part.MinX - box.MinX, -1), toColumn = Cell(part.MaxX - box.MinX, 1);
        for (int y = Math.Max(0, fromRow); y <= Math.Min(toRow, touched.Length - 1); y++)
        {
            for (int x = Math.Max(0, fromColumn); x <= Math.Min(toColumn, touched[y].Length - 1); x++)
            {
                touched[y][x] = true;
            }
        }

        int Cell(double atMm, int way) => (int)Math.Floor((atMm / cellMm) + (way * EdgeShare));
    }

    // Between cells that the edge touches all are inside, or none is: one of them tells.
    private static (int From, int To)[] Spans(bool[] row, Func<int, bool> isInside)
    {
        List<(int From, int To)> spans = [];
        for (int x = 0; x < row.Length;)
        {
            int end = x;
            while (end < row.Length && row[end] == row[x])
            {
                end++;
            }

            if (row[x] || isInside(x))
            {
                if (spans.Count > 0 && spans[^1].To == x)
                {
                    spans[^1] = (spans[^1].From, end);
                }
                else
                {
                    spans.Add((x, end));
                }
            }

            x = end;
        }

        return [.. spans];
    }
}

/// <summary>The cells of a sheet that are taken.</summary>
internal sealed class NestGrid(int columns, int rows)
{
    private readonly List<(int From, int To)>[] _taken = [.. Enumerable.Range(0, rows).Select(_ => new List<(int, int)>())];

    /// <summary>Whole cells in a length.</summary>
    public static int Cells(double lengthMm, double cellMm) => (int)Math.Floor((lengthMm / cellMm) + 1e-9);

    /// <summary>Cells that hold a length.</summary>
    public static int CellsRoundedUp(double lengthMm, double cellMm) => Math.Max(1, (int)Math.Ceiling((lengthMm / cellMm) - 1e-9));

    /// <summary>The free place lowest on the sheet, and there farthest to the left, not before a place; null when there is none.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="from">The place to begin at.</param>
    /// <param name="below">Rows from this on are not looked at.</param>
    /// <param name="work">Counts the rows looked at.</param>
    public (int Column, int Row)? Free(NestShape shape, (int Column, int Row) from, int below, ref long work)
    {
        int lastRow = Math.Min(rows - shape.Rows, below - 1), lastColumn = columns - shape.Columns;
        int first = 0;
        for (int y = from.Row; y <= lastRow; y++)
        {
            int x = y == from.Row ? from.Column : 0;
            int free = 0;
            for (int r = first; free < shape.Rows && x <= lastColumn; r = r + 1 == shape.Rows ? 0 : r + 1)
            {
                work++;
                int moved = Moved(shape[r], _taken[y + r], x);
                if (moved == x)
                {
                    free++;
                }
                else
                {
                    // The row that stood in the way is likely to do so again.
                    (x, free, first) = (moved, 0, r);
                    r = r == 0 ? shape.Rows - 1 : r - 1;
                }
            }

            if (x <= lastColumn)
            {
                return (x, y);
            }
        }

        return null;
    }

    /// <summary>Takes the cells of a shape.</summary>
    public void Take(NestShape shape, (int Column, int Row) at)
    {
        for (int r = 0; r < shape.Rows; r++)
        {
            foreach ((int from, int to) in shape[r])
            {
                Insert(_taken[at.Row + r], (at.Column + from, at.Column + to));
            }
        }
    }

    /// <summary>The least column from x on at which a row of a shape is free of a row of the sheet.</summary>
    private static int Moved((int From, int To)[] row, List<(int From, int To)> taken, int x)
    {
        bool again = taken.Count > 0;
        while (again)
        {
            again = false;
            foreach ((int from, int to) in row)
            {
                int at = FirstEndingAfter(taken, x + from);
                if (at < taken.Count && taken[at].From < x + to)
                {
                    x = taken[at].To - from;
                    again = true;
                }
            }
        }

        return x;
    }

    private static int FirstEndingAfter(List<(int From, int To)> taken, int x)
    {
        int low = 0, high = taken.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = taken[middle].To > x ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    private static void Insert(List<(int From, int To)> taken, (int From, int To) span)
    {
        int at = FirstEndingAfter(taken, span.From - 1);
        (int from, int to) = span;
        int end = at;
        while (end < taken.Count && taken[end].From <= to)
        {
            (from, to) = (Math.Min(from, taken[end].From), Math.Max(to, taken[end].To));
            end++;
        }

        taken.RemoveRange(at, end - at);
        taken.Insert(at, (from, to));
    }
}
