using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Curves of charts with no more points than the eye can tell.</summary>
internal static class CurveThinning
{
    // On paper: a twentieth of the thinnest line.
    private const double WithinMm = 0.01;

    /// <summary>The points of a curve without those that lie on the straight line between the ones that stay, its ends always among these.</summary>
    public static IReadOnlyList<Point> Of(IReadOnlyList<Point> points)
    {
        if (points.Count < 3)
        {
            return points;
        }

        List<Point> kept = [points[0]];
        int from = 0;
        for (int to = 2; to < points.Count; to++)
        {
            if (!IsStraight(points, from, to))
            {
                from = to - 1;
                kept.Add(points[from]);
            }
        }

        kept.Add(points[^1]);
        return kept;
    }

    private static bool IsStraight(IReadOnlyList<Point> points, int from, int to)
    {
        Vector way = points[to] - points[from];
        double length = way.Length;
        for (int k = from + 1; k < to; k++)
        {
            Vector off = points[k] - points[from];
            if ((length > 0 ? Math.Abs(way.Cross(off)) / length : off.Length) > WithinMm)
            {
                return false;
            }
        }

        return true;
    }
}
