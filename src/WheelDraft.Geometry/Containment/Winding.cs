namespace WheelDraft.Geometry;

/// <summary>How often a path goes round a point: signed crossings of the ray to the right of it.</summary>
/// <remarks>Each piece is cut where it turns back in y, and each part counts over a half-open range of y. The parts of a
/// closed path share their end values of y, so the sum is right for every point off the path, whatever the rounding; a
/// point within rounding of the path may be given to either side. After D. Sunday, "Inclusion of a Point in a Polygon"
/// (2001), carried over to arcs.</remarks>
internal static class Winding
{
    /// <summary>Signed crossings of one piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="start">Its start as its neighbour in the path sees it.</param>
    /// <param name="end">Its end as its neighbour in the path sees it.</param>
    /// <param name="p">The point.</param>
    internal static int Of(Piece piece, Point start, Point end, Point p) => piece is Arc arc
        ? OfArc(arc, start.Y, end.Y, p)
        : Passed(start.Y, end.Y, p.Y) * (IsLeft(start, end, p) ? 1 : 0);

    private static int OfArc(Arc arc, double startY, double endY, Point p)
    {
        // Directions π/2 + kπ are where the circle turns back; between k − 1 and k it runs on the right when k is even.
        double low = Math.Min(arc.StartRad, arc.EndRad);
        double high = Math.Max(arc.StartRad, arc.EndRad);
        int firstTurn = (int)Math.Floor((low / Math.PI) - 0.5) + 1;
        int lastTurn = (int)Math.Ceiling((high / Math.PI) - 0.5) - 1;
        bool ahead = arc.SweepRad > 0;
        int parts = Math.Max(0, lastTurn - firstTurn + 1) + 1;
        int winding = 0;
        double y = startY;
        for (int part = 0; part < parts; part++)
        {
            int turn = ahead ? firstTurn + part : lastTurn - part;
            double nextY = part == parts - 1 ? endY : arc.Centre.Y + (turn % 2 == 0 ? arc.RadiusMm : -arc.RadiusMm);
            int step = Passed(y, nextY, p.Y);
            if (step != 0)
            {
                bool onTheRight = (ahead ? turn : turn + 1) % 2 == 0;
                double dy = Math.Min(arc.RadiusMm, Math.Abs(p.Y - arc.Centre.Y));
                double dx = Math.Sqrt((arc.RadiusMm - dy) * (arc.RadiusMm + dy));
                winding += p.X < arc.Centre.X + (onTheRight ? dx : -dx) ? step : 0;
            }

            y = nextY;
        }

        return winding;
    }

    private static int Passed(double startY, double endY, double y) =>
        startY <= y ? (endY > y ? 1 : 0) : (endY <= y ? -1 : 0);

    private static bool IsLeft(Point start, Point end, Point p)
    {
        double side = (end - start).Cross(p - start);
        return end.Y > start.Y ? side > 0 : side < 0;
    }
}
