using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Filled faces of three or four corners: SOLID, TRACE, 3DFACE.</summary>
internal static class FaceReader
{
    /// <summary>SOLID and TRACE: the third corner lies opposite the second, so the way round is 1, 2, 4, 3.</summary>
    internal static AreaShape Filled(DxfRecord record, Placement frame)
    {
        (Point first, Point second, Point third, Point fourth) = Corners(record);
        return Of(record, frame, [first, second, fourth, third]);
    }

    /// <summary>3DFACE: corners in order, in the drawing's own frame.</summary>
    internal static AreaShape Face(DxfRecord record)
    {
        (Point first, Point second, Point third, Point fourth) = Corners(record);
        return Of(record, Placement.Identity, [first, second, third, fourth]);
    }

    private static (Point, Point, Point, Point) Corners(DxfRecord record)
    {
        double z = record.Number(30, 0);
        EntityReader.Level(record, z, record.Number(31, z));
        EntityReader.Level(record, z, record.Number(32, z));
        EntityReader.Level(record, z, record.Number(33, z));
        Point third = record.Point(12);
        return (record.Point(10), record.Point(11), third, new(record.Number(13, third.X), record.Number(23, third.Y)));
    }

    private static AreaShape Of(DxfRecord record, Placement frame, Point[] round)
    {
        List<AreaRegion> regions = Loops.Simple(round) ? [.. Region(record, frame, round)]
            : [.. Region(record, frame, round[0], round[1], Crossing(round)), .. Region(record, frame, round[2], round[3], Crossing(round))];
        return regions.Count > 0 ? new(record.Layer, record.Source, frame, regions) : throw record.Fault("its corners lie on one line, so it fills nothing");
    }

    private static IEnumerable<AreaRegion> Region(DxfRecord record, Placement frame, params Point[] corners) =>
        Loops.Polygon(corners) is { } loop ? [Loops.Region(record, frame, loop)] : [];

    /// <summary>Where two opposite sides of a quadrangle cross: it is drawn as two triangles that meet there.</summary>
    /// <remarks>Turned so that the sides from the second to the third corner and from the fourth to the first cross.</remarks>
    private static Point Crossing(Point[] round)
    {
        if (Loops.Meet(round[1], round[2], round[3], round[0]) is Point there)
        {
            return there;
        }

        // The other two sides cross: count from the next corner.
        (round[0], round[1], round[2], round[3]) = (round[1], round[2], round[3], round[0]);
        return Loops.Meet(round[1], round[2], round[3], round[0]) ?? round[0];
    }
}

/// <summary>Small closed loops made of corners.</summary>
internal static class Loops
{
    // Below this an area is a line, in square units of the file.
    private const double LeastArea = 1e-14;

    /// <summary>The polygon through corners, repeated ones left out; null when it encloses nothing.</summary>
    internal static IReadOnlyList<Piece>? Polygon(params IReadOnlyList<Point> corners)
    {
        List<Point> apart = [];
        foreach (Point corner in corners)
        {
            if (apart.Count == 0 || apart[^1] != corner)
            {
                apart.Add(corner);
            }
        }

        while (apart.Count > 1 && apart[0] == apart[^1])
        {
            apart.RemoveAt(apart.Count - 1);
        }

        return apart.Count >= 3 && Math.Abs(TwiceArea(apart)) > LeastArea
            ? [.. apart.Select((p, i) => new Segment(p, apart[(i + 1) % apart.Count]))]
            : null;
    }

    internal static AreaRegion Region(DxfRecord record, Placement frame, IReadOnlyList<Piece> loop) =>
        new([[new ExactShape(record.Layer, record.Source, frame, loop, true)]]);

    /// <summary>Whether no two opposite sides of a quadrangle cross.</summary>
    internal static bool Simple(Point[] round) =>
        Meet(round[0], round[1], round[2], round[3]) is null && Meet(round[1], round[2], round[3], round[0]) is null;

    /// <summary>Where two segments cross inside of both; null when they do not.</summary>
    internal static Point? Meet(Point a, Point b, Point c, Point d)
    {
        double across = (b - a).Cross(d - c);
        double onFirst = (c - a).Cross(d - c) / across;
        double onSecond = (c - a).Cross(b - a) / across;
        return across != 0 && onFirst > 0 && onFirst < 1 && onSecond > 0 && onSecond < 1 ? a.Towards(b, onFirst) : null;
    }

    /// <summary>The convex hull, anticlockwise (A. M. Andrew, Another efficient algorithm for convex hulls in two dimensions, 1979).</summary>
    internal static IReadOnlyList<Point> Hull(IEnumerable<Point> points)
    {
        Point[] sorted = [.. points.Distinct().OrderBy(p => p.X).ThenBy(p => p.Y)];
        List<Point> hull = [];
        foreach (Point[] way in (Point[][])[sorted, [.. sorted.Reverse()]])
        {
            int begin = hull.Count;
            foreach (Point p in way)
            {
                while (hull.Count >= begin + 2 && (hull[^1] - hull[^2]).Cross(p - hull[^2]) <= 0)
                {
                    hull.RemoveAt(hull.Count - 1);
                }

                hull.Add(p);
            }

            hull.RemoveAt(hull.Count - 1);
        }

        return hull;
    }

    private static double TwiceArea(List<Point> corners) =>
        corners.Select((p, i) => (p - corners[0]).Cross(corners[(i + 1) % corners.Count] - corners[0])).Sum();
}
