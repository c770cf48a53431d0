using WheelDraft.Geometry;

namespace WheelDraft.Tests.Measuring;

/// <summary>Shortest paths round slots the other way: Dijkstra over a dense grid of points.</summary>
/// <remarks>Steps go to all coprime neighbours within 5 columns and rows. Between the two directions that are furthest apart (11.3°)
/// a slanting way is at most 0.5 % too long. A step is looked at every third of the grid: it may cut a corner by less than that,
/// once or twice a bend; ends inside a conductor cost up to one grid width each, and going round a corner about as much.</remarks>
internal sealed class SurfaceGrid
{
    internal const double Slant = 1.005;
    internal const double CutMm = 3 * StepMm;
    internal const double CoarseMm = 5 * StepMm;
    private const double StepMm = 0.15;
    private const int Reach = 5;

    private readonly IReadOnlyList<SurfaceRegion> _regions;
    private readonly Outline _surface;
    private readonly Point _corner;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int[] _fine;
    private readonly int _fineColumns;

    internal SurfaceGrid(Outline surface, IReadOnlyList<SurfaceRegion> regions)
    {
        _surface = surface;
        _regions = regions;
        Bounds all = surface.Bounds;
        _corner = new Point(all.MinX + (StepMm / 2), all.MinY + (StepMm / 2));
        _columns = (int)(all.Width / StepMm);
        _rows = (int)(all.Height / StepMm);
        _fineColumns = (_columns * 3) + 1;
        _fine = new int[_fineColumns * ((_rows * 3) + 1)];
        for (int i = 0; i < _fine.Length; i++)
        {
            _fine[i] = SidesOf(_corner + new Vector(i % _fineColumns * StepMm / 3, i / _fineColumns * StepMm / 3));
        }
    }

    internal double Shortest(Outline from, Outline to)
    {
        double[] at = new double[_columns * _rows];
        Array.Fill(at, double.PositiveInfinity);
        PriorityQueue<int, double> open = new();
        bool[] goal = new bool[at.Length];
        for (int i = 0; i < at.Length; i++)
        {
            Point p = _corner + new Vector(i % _columns * StepMm, i / _columns * StepMm);
            goal[i] = to.Contains(p);
            if (from.Contains(p) && Sides(i % _columns * 3, i / _columns * 3) >= 0)
            {
                at[i] = 0;
                open.Enqueue(i, 0);
            }
        }

        while (open.TryDequeue(out int node, out double length))
        {
            if (goal[node])
            {
                return length;
            }

            if (length <= at[node])
            {
                Spread(node, length, at, open);
            }
        }

        return double.PositiveInfinity;
    }

    private void Spread(int node, double length, double[] at, PriorityQueue<int, double> open)
    {
        int x = node % _columns, y = node / _columns;
        for (int dx = -Reach; dx <= Reach; dx++)
        {
            for (int dy = -Reach; dy <= Reach; dy++)
            {
                int nx = x + dx, ny = y + dy;
                if (nx < 0 || ny < 0 || nx >= _columns || ny >= _rows || !Coprime(Math.Abs(dx), Math.Abs(dy)))
                {
                    continue;
                }

                double plan = StepMm * Math.Sqrt((dx * dx) + (dy * dy));
                int other = (ny * _columns) + nx;
                if (length + plan < at[other] && length + plan + Blocked(x * 3, y * 3, dx, dy) is { } there && there < at[other])
                {
                    at[other] = there;
                    open.Enqueue(other, there);
                }
            }
        }
    }

    private double Blocked(int x, int y, int dx, int dy)
    {
        int steps = 3 * Math.Max(Math.Abs(dx), Math.Abs(dy));
        for (int i = 1; i <= steps; i++)
        {
            int here = Sides(x + (int)Math.Round(3.0 * dx * i / steps), y + (int)Math.Round(3.0 * dy * i / steps));
            if (here < 0)
            {
                return double.PositiveInfinity;
            }

        }

        return 0;
    }

    private int Sides(int x, int y) => _fine[(y * _fineColumns) + x];

    private int SidesOf(Point p)
    {
        if (!_surface.Contains(p))
        {
            return -1;
        }

        for (int k = 0; k < _regions.Count; k++)
        {
            if (_regions[k].Outline.Contains(p))
            {
                return -1;
            }
        }

        return 0;
    }

    private static bool Coprime(int a, int b) => b == 0 ? a == 1 : Coprime(b, a % b);
}
