using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The rungs of a wiring diagram in columns from left to right, each as high as the paper allows.</summary>
/// <remarks>A net that is drawn in two columns is two bars of the same name: the reader joins them by it, as the rails.</remarks>
internal sealed class WiringColumns
{
    private readonly IReadOnlyList<double[]> _columns;

    private WiringColumns(IReadOnlyList<double[]> columns) => _columns = columns;

    /// <summary>How many columns.</summary>
    public int Count => _columns.Count;

    /// <summary>Shares out levels.</summary>
    /// <param name="levels">The levels, from above.</param>
    /// <param name="mostRungs">The most of a column, at least 1.</param>
    /// <param name="bars">The bars other than rails and wheel: a column ends where fewest of them go on, in its lower half.</param>
    public static WiringColumns Of(IReadOnlyList<double> levels, int mostRungs, IReadOnlyList<WiringBar> bars)
    {
        List<double[]> columns = [];
        int from = 0;
        while (levels.Count - from > mostRungs)
        {
            int end = Enumerable.Range(from + ((mostRungs + 1) / 2), mostRungs - ((mostRungs + 1) / 2) + 1)
                .MinBy(cut => (bars.Count(b => b.TopMm < levels[cut] && b.BottomMm > levels[cut - 1]), -cut));
            columns.Add([.. levels.Skip(from).Take(end - from)]);
            from = end;
        }

        columns.Add([.. levels.Skip(from)]);
        return new(columns);
    }

    /// <summary>The column and the rung in it of a level.</summary>
    public (int Column, int Rung) At(double level)
    {
        for (int c = 0; c < _columns.Count; c++)
        {
            int rung = Array.IndexOf(_columns[c], level);
            if (rung >= 0)
            {
                return (c, rung);
            }
        }

        throw new ArgumentException("No rung lies on this level.", nameof(level));
    }

    /// <summary>The parts of a stretch of levels, a part a column: its first and last rung there.</summary>
    public IEnumerable<(int Column, int First, int Last)> Parts(double topLevel, double bottomLevel)
    {
        (int from, int first) = At(topLevel);
        (int to, int last) = At(bottomLevel);
        for (int c = from; c <= to; c++)
        {
            yield return (c, c == from ? first : 0, c == to ? last : _columns[c].Length - 1);
        }
    }

    /// <summary>The levels of every column.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Levels => _columns;
}

/// <summary>From the layout's millimetres to the paper's.</summary>
/// <param name="TopLeft">The first rung of the first column at the layout's x = 0, on the paper.</param>
/// <param name="DropsMm">From the first rung of a column down to each of its rungs, column by column.</param>
/// <param name="ColumnMm">From column to column.</param>
/// <param name="Columns">The columns.</param>
internal sealed record WiringPlace(Point TopLeft, IReadOnlyList<IReadOnlyList<double>> DropsMm, double ColumnMm, WiringColumns Columns)
{
    /// <summary>A point of the layout.</summary>
    public Point Of(double xMm, double level)
    {
        (int column, int rung) = Columns.At(level);
        return On(xMm, column, rung);
    }

    /// <summary>A point on a rung of a column.</summary>
    public Point On(double xMm, int column, int rung) => TopLeft + new Vector(xMm + (column * ColumnMm), -DropsMm[column][rung]);

    /// <summary>The parts of a bar, a part a column, from above.</summary>
    public IEnumerable<(Point Top, Point Bottom)> Parts(WiringBar bar) =>
        Columns.Parts(bar.TopMm, bar.BottomMm).Select(p => (On(bar.XMm, p.Column, p.First), On(bar.XMm, p.Column, p.Last)));
}
