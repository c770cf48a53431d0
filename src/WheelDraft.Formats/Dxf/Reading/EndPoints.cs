using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Numbers the end points of pieces so that ends within a tolerance share a number.</summary>
/// <remarks>A grid of cells as large as the tolerance; numbered points lie further apart than it, so a cell holds few.</remarks>
internal sealed class EndPoints
{
    private readonly Dictionary<(long X, long Y), List<int>> _cells = [];
    private readonly List<Point> _points = [];
    private readonly double _toleranceMm;

    internal EndPoints(double toleranceMm) => _toleranceMm = toleranceMm;

    internal Point At(int number) => _points[number];

    /// <summary>The number of the point, a new one when no numbered point is near.</summary>
    internal int NumberOf(Point point)
    {
        (long x, long y) = Cell(point);
        int nearest = -1;
        double least = _toleranceMm;
        for (long cx = x - 1; cx <= x + 1; cx++)
        {
            for (long cy = y - 1; cy <= y + 1; cy++)
            {
                foreach (int number in _cells.GetValueOrDefault((cx, cy)) ?? [])
                {
                    double distance = _points[number].DistanceTo(point);
                    if (distance <= least)
                    {
                        (nearest, least) = (number, distance);
                    }
                }
            }
        }

        return nearest >= 0 ? nearest : Add(point, (x, y));
    }

    private int Add(Point point, (long X, long Y) cell)
    {
        if (!_cells.TryGetValue(cell, out List<int>? inCell))
        {
            _cells.Add(cell, inCell = []);
        }

        inCell.Add(_points.Count);
        _points.Add(point);
        return _points.Count - 1;
    }

    private (long X, long Y) Cell(Point p) => ((long)Math.Floor(p.X / _toleranceMm), (long)Math.Floor(p.Y / _toleranceMm));
}
