using NetTopologySuite.Geometries;
using NetTopologySuite.Triangulate.Polygon;
using Point = WheelDraft.Geometry.Point;

namespace WheelDraft.Tests.Measuring;

/// <summary>A surface with walls as triangles in space, and the shortest way over it by points on their edges.</summary>
/// <remarks>Oracle of another kind: levels are triangulated by NetTopologySuite's constrained Delaunay triangulation, walls stand upright between
/// them, and the way is found by Dijkstra's method over points on all edges and all vertices (M. Lanthier, A. Maheshwari and J.-R. Sack, Approximating
/// shortest paths on weighted polyhedral surfaces, Algorithmica 30, 2001). Every way over points lies on the surface, so its length is never below the
/// true one: an exact length above it is wrong, whatever the spacing. From above it is bounded by the test's 1 %: points are at most
/// <c>spacing</c> apart, so each edge that a true way crosses adds at most a spacing, and far less where it is crossed at a slant that a point lies near to.</remarks>
internal sealed class MeshScene
{
    private readonly List<(double X, double Y, double Z)> _points = [];
    private readonly Dictionary<(long, long, long), int> _at = [];
    private readonly List<List<int>> _faces = [];
    private readonly double _spacing;

    internal MeshScene(IReadOnlyList<(Polygon Plan, double Level)> regions, Polygon surface, IReadOnlyList<Point> places, double spacing)
    {
        _spacing = spacing;
        List<(Polygon Triangle, double Level)> floor = [];
        NetTopologySuite.Geometries.Geometry rest = surface;
        foreach ((Polygon plan, double level) in regions)
        {
            rest = rest.Difference(plan);
            if (!double.IsNaN(level))
            {
                AddTriangles(surface.Intersection(plan), level, floor);
            }
        }

        AddTriangles(rest, 0, floor);
        AddFloor(floor);
        AddWalls(floor);
        for (int i = 0; i < floor.Count; i++)
        {
            foreach (Point p in places)
            {
                if (floor[i].Triangle.Covers(surface.Factory.CreatePoint(new Coordinate(p.X, p.Y))))
                {
                    _faces[i].Add(PointAt(p.X, p.Y, floor[i].Level));
                }
            }
        }
    }

    private static void AddTriangles(NetTopologySuite.Geometries.Geometry shape, double level, List<(Polygon Triangle, double Level)> floor)
    {
        if (shape.Area > 0)
        {
            floor.AddRange(((GeometryCollection)new ConstrainedDelaunayTriangulator(shape).GetResult()).Geometries.Select(t => ((Polygon)t, level)));
        }
    }

    internal double Shortest(Point from, double fromLevel, Point to, double toLevel)
    {
        Dictionary<int, List<int>> facesAt = [];
        for (int f = 0; f < _faces.Count; f++)
        {
            foreach (int p in _faces[f])
            {
                (facesAt.TryGetValue(p, out List<int>? faces) ? faces : facesAt[p] = []).Add(f);
            }
        }

        int start = PointAt(from.X, from.Y, fromLevel), end = PointAt(to.X, to.Y, toLevel);
        double[] at = new double[_points.Count];
        Array.Fill(at, double.PositiveInfinity);
        at[start] = 0;
        PriorityQueue<int, double> open = new();
        open.Enqueue(start, 0);
        while (open.TryDequeue(out int p, out double _))
        {
            if (p == end)
            {
                return at[p];
            }

            foreach (int other in facesAt.GetValueOrDefault(p, []).SelectMany(f => _faces[f]))
            {
                double length = at[p] + Distance(p, other);
                if (length < at[other])
                {
                    at[other] = length;
                    open.Enqueue(other, length + Distance(other, end));
                }
            }
        }

        return double.PositiveInfinity;
    }

    private void AddFloor(List<(Polygon Triangle, double Level)> floor)
    {
        foreach ((Polygon triangle, double level) in floor)
        {
            Coordinate[] c = triangle.Coordinates;
            List<int> face = [];
            for (int i = 0; i < 3; i++)
            {
                Along(face, (c[i].X, c[i].Y, level), (c[i + 1].X, c[i + 1].Y, level));
            }

            _faces.Add([.. face.Distinct()]);
        }
    }

    /// <summary>Where two triangles share an edge at different levels, a wall of two triangles.</summary>
    private void AddWalls(List<(Polygon Triangle, double Level)> floor)
    {
        Dictionary<(int, int), (double Level, Coordinate A, Coordinate B)> edges = [];
        foreach ((Polygon triangle, double level) in floor)
        {
            Coordinate[] c = triangle.Coordinates;
            for (int i = 0; i < 3; i++)
            {
                int a = PointAt(c[i].X, c[i].Y, 0), b = PointAt(c[i + 1].X, c[i + 1].Y, 0);
                (int, int) key = (Math.Min(a, b), Math.Max(a, b));
                if (!edges.TryGetValue(key, out var other))
                {
                    edges.Add(key, (level, c[i], c[i + 1]));
                }
                else if (Math.Abs(other.Level - level) > 1e-9)
                {
                    AddWall(c[i], c[i + 1], level, other.Level);
                }
            }
        }
    }

    private void AddWall(Coordinate a, Coordinate b, double low, double high)
    {
        // Upright edges have points everywhere; walls side by side meet in them.
        List<int> face = [];
        Along(face, (a.X, a.Y, low), (b.X, b.Y, low));
        Along(face, (a.X, a.Y, high), (b.X, b.Y, high));
        Along(face, (a.X, a.Y, low), (a.X, a.Y, high));
        Along(face, (b.X, b.Y, low), (b.X, b.Y, high));
        _faces.Add([.. face.Distinct()]);
    }

    private void Along(List<int> face, (double X, double Y, double Z) a, (double X, double Y, double Z) b)
    {
        // The same points from either end: counted from the lesser one.
        if (a.CompareTo(b) > 0)
        {
            (a, b) = (b, a);
        }

        double length = Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)) + ((a.Z - b.Z) * (a.Z - b.Z)));
        int n = Math.Max(1, (int)Math.Ceiling(length / _spacing));
        for (int i = 0; i <= n; i++)
        {
            double t = (double)i / n;
            face.Add(PointAt(a.X + ((b.X - a.X) * t), a.Y + ((b.Y - a.Y) * t), a.Z + ((b.Z - a.Z) * t)));
        }
    }

    private int PointAt(double x, double y, double z)
    {
        (long, long, long) key = ((long)Math.Round(x * 1e7), (long)Math.Round(y * 1e7), (long)Math.Round(z * 1e7));
        if (!_at.TryGetValue(key, out int index))
        {
            _at.Add(key, index = _points.Count);
            _points.Add((x, y, z));
        }

        return index;
    }

    private double Distance(int a, int b)
    {
        (double ax, double ay, double az) = _points[a];
        (double bx, double by, double bz) = _points[b];
        return Math.Sqrt(((ax - bx) * (ax - bx)) + ((ay - by) * (ay - by)) + ((az - bz) * (az - bz)));
    }
}
