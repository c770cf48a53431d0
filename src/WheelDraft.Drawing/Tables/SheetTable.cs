using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A column of a table.</summary>
/// <param name="Heading">Heading; broken into lines where it is long.</param>
/// <param name="Along">Texts to the left, in the middle, or figures to the right.</param>
internal sealed record TableColumn(string Heading, TextAlong Along = TextAlong.Start);

/// <summary>Rows and columns of text: columns as wide as their content where there is room, else broken into lines; no text is cut.</summary>
/// <remarks>A table longer than its area is drawn as far as it goes; the rest is drawn elsewhere, headings again.</remarks>
internal sealed class SheetTable
{
    private static readonly TextStyle Body = TextStyle.Small;
    private static readonly TextStyle Head = new(2.5, TextWeight.Heavy);
    private const double PadMm = 1.5;
    private const double LinePitchMm = 2.5 * 1.7;
    private const double RowPadMm = 1.4;

    // A sheet asks for them again and again until it is shared out.
    private readonly Dictionary<double, double> _heightsMm = [];
    private double? _leastMm;

    /// <summary>A table of columns and rows.</summary>
    /// <exception cref="ArgumentException">There is no column, or a row has another number of cells.</exception>
    public SheetTable(IReadOnlyList<TableColumn> columns, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(rows);
        if (columns.Count == 0)
        {
            throw new ArgumentException("A table needs a column.", nameof(columns));
        }

        for (int i = 0; i < rows.Count; i++)
        {
            if (rows[i].Count != columns.Count)
            {
                throw new ArgumentException(Invariant.Text($"Row {i} has {rows[i].Count} cells; the table has {columns.Count} columns."), nameof(rows));
            }
        }

        Columns = columns;
        Rows = rows;
    }

    /// <summary>A word or two for those who cannot see it.</summary>
    public string Title { get; init; } = "Table";

    /// <summary>The columns.</summary>
    public IReadOnlyList<TableColumn> Columns { get; }

    /// <summary>The rows, a cell each column.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows { get; }

    /// <summary>The width at which no cell is broken into lines and no heading into more than two, mm.</summary>
    public double NaturalWidthMm => Natural().Sum();

    /// <summary>The least width at which every word and figure stays whole, mm.</summary>
    public double LeastWidthMm => _leastMm ??= Least();

    private double Least()
    {
        double[] natural = Natural();
        double[] least = [.. Columns.Select((c, i) => Rows.Select(r => r[i]).Select(cell => (cell, Body)).Append((c.Heading, Head))
            .Max(t => ReadersWords.Read(t.Item1).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => TextFit.WidthMm(ReadersWords.AsItStands(w), t.Item2)).DefaultIfEmpty(0).Max()) + (2 * PadMm) + 0.01)];

        // Wide columns give way first, all to one width: the longest word of all is what it may come down to.
        double cap = least.Max();
        return natural.Sum(n => Math.Min(n, cap));
    }

    /// <summary>Height of the whole table at a width, mm.</summary>
    public double HeightMm(double widthMm)
    {
        double[] widths = Widths(widthMm);
        return RowHeight(Headings, widths, Head) + Rows.Sum(r => RowHeight(r, widths, Body));
    }

    /// <summary>Draws rows from one on, as many as the area's height takes, from its upper left corner.</summary>
    /// <param name="pen">The pen.</param>
    /// <param name="area">The area; the table takes its natural width if that is less.</param>
    /// <param name="firstRow">The row to begin with, from 0.</param>
    /// <returns>The area drawn and the row to go on with: the number of rows when all are drawn.</returns>
    public (Bounds Drawn, int NextRow) Draw(GroupPen pen, Bounds area, int firstRow = 0)
    {
        ArgumentNullException.ThrowIfNull(pen);
        double[] widths = Widths(area.Width);
        double headHeight = RowHeight(Headings, widths, Head);
        int end = firstRow;
        double bottom = area.MaxY - headHeight;
        while (end < Rows.Count && bottom - RowHeight(Rows[end], widths, Body) >= area.MinY)
        {
            bottom -= RowHeight(Rows[end], widths, Body);
            end++;
        }

        Bounds all = new(area.MinX, bottom, area.MinX + widths.Sum(), area.MaxY);
        if (headHeight > area.Height || (end == firstRow && Rows.Count > firstRow))
        {
            return (new Bounds(area.MinX, area.MaxY, area.MinX, area.MaxY), firstRow);
        }

        pen.Box(new Bounds(all.MinX, area.MaxY - headHeight, all.MaxX, area.MaxY), Fill.Of(FillKind.Band));
        double y = area.MaxY;
        y = DrawRow(pen, Headings, widths, new RowFrame(all, y, Head));
        for (int i = firstRow; i < end; i++)
        {
            pen.Line(new Point(all.MinX, y), new Point(all.MaxX, y), LineStyle.Grid);
            y = DrawRow(pen, Rows[i], widths, new RowFrame(all, y, Body));
        }

        DrawRules(pen, all, widths);
        return (all, end);
    }

    /// <summary>Draws the table in as many columns of tables side by side as the area takes.</summary>
    /// <returns>The row to go on with on another sheet: the number of rows when all are drawn.</returns>
    public int DrawSideBySide(GroupPen pen, Bounds area, int firstRow = 0)
    {
        double width = Math.Min(NaturalWidthMm, area.Width);
        int row = firstRow;
        for (double x = area.MinX; row < Rows.Count && x + width <= area.MaxX + 1e-9; x += width + SideGapMm)
        {
            (_, int next) = Draw(pen, new Bounds(x, area.MinY, x + width, area.MaxY), row);
            if (next == row)
            {
                break;
            }

            row = next;
        }

        return row;
    }

    /// <summary>The least height at which <see cref="DrawSideBySide"/> draws all rows in a width, mm.</summary>
    public double SideBySideHeightMm(double widthMm)
    {
        if (!_heightsMm.TryGetValue(widthMm, out double height))
        {
            height = SideBySide(widthMm);
            _heightsMm.Add(widthMm, height);
        }

        return height;
    }

    private double SideBySide(double widthMm)
    {
        double width = Math.Min(NaturalWidthMm, widthMm);
        double[] widths = Widths(width);
        double head = RowHeight(Headings, widths, Head);
        double[] rows = [.. Rows.Select(r => RowHeight(r, widths, Body))];
        int columns = Math.Max(1, (int)Math.Floor(((widthMm + SideGapMm) / (width + SideGapMm)) + 1e-9));
        double height = rows.Sum() / columns;
        while (ColumnsAt(rows, height) > columns)
        {
            height += LinePitchMm / 4;
        }

        // A hair, so that rounding of the rows' sum does not cost a row when it is drawn.
        return head + height + 1e-6;
    }

    // Between tables side by side.
    private const double SideGapMm = 6;

    private static int ColumnsAt(double[] rows, double heightMm)
    {
        int columns = 1;
        double used = 0;
        foreach (double row in rows)
        {
            if (row > heightMm)
            {
                return int.MaxValue;
            }

            (columns, used) = used + row > heightMm + 1e-9 ? (columns + 1, row) : (columns, used + row);
        }

        return columns;
    }

    private readonly record struct RowFrame(Bounds Table, double Top, TextStyle Style);

    private string[] Headings => [.. Columns.Select(c => c.Heading)];

    private double DrawRow(GroupPen pen, IReadOnlyList<string> cells, double[] widths, RowFrame frame)
    {
        double x = frame.Table.MinX;
        for (int i = 0; i < cells.Count; i++)
        {
            double at = Columns[i].Along switch
            {
                TextAlong.End => x + widths[i] - PadMm,
                TextAlong.Middle => x + (widths[i] / 2),
                _ => x + PadMm,
            };
            IReadOnlyList<string> lines = CellLines(cells[i], widths[i], frame.Style);
            for (int k = 0; k < lines.Count; k++)
            {
                double baseline = frame.Top - RowPadMm - frame.Style.HeightMm - (k * LinePitchMm);
                pen.Text(lines[k], new(new(at, baseline), Columns[i].Along), frame.Style);
            }

            x += widths[i];
        }

        return frame.Top - RowHeight(cells, widths, frame.Style);
    }

    private static void DrawRules(GroupPen pen, Bounds all, double[] widths)
    {
        double x = all.MinX;
        foreach (double width in widths[..^1])
        {
            x += width;
            pen.Line(new Point(x, all.MinY), new Point(x, all.MaxY), LineStyle.Grid);
        }

        pen.Line(Contour.Rectangle(new(all.MinX, all.MinY), new(all.MaxX, all.MaxY)), LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Frame, 0.35));
    }

    private static double RowHeight(IReadOnlyList<string> cells, double[] widths, TextStyle style)
    {
        int lines = Math.Max(1, cells.Select((c, i) => CellLines(c, widths[i], style).Count).Max());
        return style.HeightMm + ((lines - 1) * LinePitchMm) + (2 * RowPadMm);
    }

    private static IReadOnlyList<string> CellLines(string cell, double widthMm, TextStyle style) =>
        string.IsNullOrWhiteSpace(cell) ? [] : TextFit.Wrap(cell, widthMm - (2 * PadMm), style);

    private double[] Natural() => _natural ??= Measured();

    // Measuring every cell is what a table costs, and sheets ask for its width on every size of paper that they try.
    private double[]? _natural;

    private double[] Measured() =>
        [.. Columns.Select((c, i) => Math.Max(HeadingMm(c.Heading), Rows.Count == 0 ? 0 : Rows.Max(r => TextFit.WidthMm(r[i], Body))) + (2 * PadMm) + 0.01)];

    /// <summary>The least width at which a heading takes at most two lines, mm.</summary>
    private static double HeadingMm(string heading)
    {
        string[] words = ReadersWords.Read(heading).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        double least = TextFit.WidthMm(heading, Head);
        for (int i = 1; i < words.Length; i++)
        {
            least = Math.Min(least, Math.Max(WidthMm(words[..i]), WidthMm(words[i..])));
        }

        return least;

        static double WidthMm(string[] line) => TextFit.WidthMm(ReadersWords.AsItStands(string.Join(' ', line)), Head);
    }

    /// <summary>Natural widths, or all capped at the one width that makes the sum fit: wide columns give way first.</summary>
    private double[] Widths(double availableMm)
    {
        double[] natural = Natural();
        if (natural.Sum() <= availableMm)
        {
            return natural;
        }

        double cap = availableMm / natural.Length;
        for (int round = 0; round < natural.Length; round++)
        {
            double[] narrow = [.. natural.Where(w => w <= cap)];
            cap = narrow.Length == natural.Length ? cap : (availableMm - narrow.Sum()) / (natural.Length - narrow.Length);
        }

        return [.. natural.Select(w => Math.Min(w, cap))];
    }
}
