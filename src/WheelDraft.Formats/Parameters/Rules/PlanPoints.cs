using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>Points in plan from checked values, and whether corners make a plain outline.</summary>
internal static class PlanPoints
{
    /// <summary>Points nearer than this are the same, mm: a nanometre, far below anything that is made and above what contours join as one.</summary>
    private const double SameMm = 1e-6;

    /// <summary>Whether two points are the same for a drawing.</summary>
    public static bool Same(Point a, Point b) => a.DistanceTo(b) <= SameMm;

    /// <summary>The points of a list; null when it is not there or one of them is wrong.</summary>
    public static IReadOnlyList<Point>? Of(CheckedTable table, string key)
    {
        Point?[] points = [.. table.Items(key).Select(i => One(i.Items))];
        return points.Length > 0 && points.All(p => p is not null) ? [.. points.Select(p => p!.Value)] : null;
    }

    /// <summary>A single point; null when it is not there or wrong.</summary>
    public static Point? One(CheckedTable table, string key) => One(table.Items(key));

    private static Point? One(IReadOnlyList<CheckedValue> pair) =>
        pair is [{ Quantity: { } x }, { Quantity: { } y }] ? new Point(x.Value, y.Value) : null;

    /// <summary>What keeps corners from being a plain outline, or null.</summary>
    public static string? CornersFault(IReadOnlyList<Point> corners)
    {
        int count = corners.Count;
        for (int i = 0; i < count; i++)
        {
            if (Same(corners[i], corners[(i + 1) % count]))
            {
                return "the same corner stands twice in a row, or the last repeats the first";
            }
        }

        for (int i = 0; i < count; i++)
        {
            for (int j = i + 2; j < count; j++)
            {
                bool neighbours = i == 0 && j == count - 1;
                if (!neighbours && Apart((corners[i], corners[i + 1]), (corners[j], corners[(j + 1) % count])) <= SameMm)
                {
                    return "the outline crosses or touches itself";
                }
            }
        }

        return FoldsBack(corners) ? "the outline runs back over itself" : null;
    }

    /// <summary>Distance of two straight legs, 0 when they meet.</summary>
    public static double Apart((Point A, Point B) first, (Point A, Point B) second)
    {
        double side1 = (first.B - first.A).Cross(second.A - first.A);
        double side2 = (first.B - first.A).Cross(second.B - first.A);
        double side3 = (second.B - second.A).Cross(first.A - second.A);
        double side4 = (second.B - second.A).Cross(first.B - second.A);
        if (side1 * side2 < 0 && side3 * side4 < 0)
        {
            return 0;
        }

        return Math.Min(
            Math.Min(ToLeg(first.A, second), ToLeg(first.B, second)),
            Math.Min(ToLeg(second.A, first), ToLeg(second.B, first)));
    }

    private static double ToLeg(Point point, (Point A, Point B) leg)
    {
        Vector along = leg.B - leg.A;
        double share = Math.Clamp((point - leg.A).Dot(along) / along.Dot(along), 0, 1);
        return point.DistanceTo(leg.A + (along * share));
    }

    private static bool FoldsBack(IReadOnlyList<Point> corners)
    {
        for (int i = 0; i < corners.Count; i++)
        {
            Vector arrives = corners[(i + 1) % corners.Count] - corners[i];
            Vector leaves = corners[(i + 2) % corners.Count] - corners[(i + 1) % corners.Count];
            if (arrives.Cross(leaves) == 0 && arrives.Dot(leaves) < 0)
            {
                return true;
            }
        }

        return false;
    }
}
