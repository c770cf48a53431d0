using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Boxes in a grid of square cells, to find the pairs that overlap.</summary>
/// <remarks>The cells have a size that gives about one cell a box, larger while boxes would lie in more than eight cells on
/// average. Pairs come in a fixed order.</remarks>
internal sealed class BoxGrid
{
    private const int MostCellsABox = 8;

    private readonly Bounds[] _boxes;
    private readonly Dictionary<(int X, int Y), List<int>> _cells = [];
    private readonly List<(int X, int Y)> _inOrder = [];
    private readonly Bounds _all;
    private readonly double _side;

    /// <summary>A grid of at least one box.</summary>
    internal BoxGrid(Bounds[] boxes)
    {
        _boxes = boxes;
        _all = boxes.Aggregate((a, b) => a.With(b));
        const double leastMm = 1e-6;
        _side = Math.Max(Math.Sqrt(_all.Width * _all.Height / boxes.Length), Math.Max(Math.Max(_all.Width, _all.Height) / boxes.Length, leastMm));
        while (boxes.Sum(CellsOf) > (double)MostCellsABox * boxes.Length)
        {
            _side *= 2;
        }

        for (int i = 0; i < boxes.Length; i++)
        {
            Enter(i);
        }
    }

    /// <summary>Each overlapping pair once.</summary>
    /// <param name="mayGoOn">Asked before each comparison; the search ends when it says no.</param>
    internal IEnumerable<(int First, int Second)> Pairs(Func<bool> mayGoOn)
    {
        foreach ((int X, int Y) cell in _inOrder)
        {
            List<int> there = _cells[cell];
            for (int i = 0; i < there.Count; i++)
            {
                for (int k = i + 1; k < there.Count; k++)
                {
                    if (!mayGoOn())
                    {
                        yield break;
                    }

                    if (Meets(_boxes[there[i]], _boxes[there[k]], cell))
                    {
                        yield return (there[i], there[k]);
                    }
                }
            }
        }
    }

    /// <summary>Whether two boxes overlap and the lower left corner of what they share lies in this cell and no other.</summary>
    private bool Meets(Bounds a, Bounds b, (int X, int Y) cell) =>
        a.Overlaps(b) && cell == (Column(Math.Max(a.MinX, b.MinX)), Row(Math.Max(a.MinY, b.MinY)));

    private void Enter(int box)
    {
        Bounds b = _boxes[box];
        for (int x = Column(b.MinX); x <= Column(b.MaxX); x++)
        {
            for (int y = Row(b.MinY); y <= Row(b.MaxY); y++)
            {
                if (!_cells.TryGetValue((x, y), out List<int>? there))
                {
                    _cells.Add((x, y), there = []);
                    _inOrder.Add((x, y));
                }

                there.Add(box);
            }
        }
    }

    private double CellsOf(Bounds b) => (1.0 + Column(b.MaxX) - Column(b.MinX)) * (1.0 + Row(b.MaxY) - Row(b.MinY));

    private int Column(double x) => (int)Math.Floor((x - _all.MinX) / _side);

    private int Row(double y) => (int)Math.Floor((y - _all.MinY) / _side);
}
