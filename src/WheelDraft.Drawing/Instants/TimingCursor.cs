using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The line down a chart that marks a moment.</summary>
internal static class TimingCursor
{
    private const double HeadMm = 2;

    /// <summary>Draws it between two heads that point at it.</summary>
    /// <param name="pen">The pen.</param>
    /// <param name="xMm">Where it stands.</param>
    /// <param name="bottomMm">Its lower end.</param>
    /// <param name="topMm">Its upper end.</param>
    /// <param name="words">Texts that it stops before and goes on behind.</param>
    public static void Draw(GroupPen pen, double xMm, double bottomMm, double topMm, IReadOnlyList<Bounds>? words = null)
    {
        double from = topMm;
        foreach (Bounds word in (words ?? []).Where(w => w.MinX <= xMm && w.MaxX >= xMm).OrderByDescending(w => w.MaxY))
        {
            Part(pen, xMm, from, word.MaxY);
            from = word.MinY;
        }

        Part(pen, xMm, from, bottomMm);
        foreach ((double y, double way) in ((double, double)[])[(topMm, 1), (bottomMm, -1)])
        {
            Point tip = new(xMm, y);
            pen.Area(new Outline(Contour.Polygon(tip, tip + new Vector(HeadMm / 2, way * HeadMm), tip + new Vector(-HeadMm / 2, way * HeadMm))), Fill.Solid(Ink.Accent));
        }
    }

    private static void Part(GroupPen pen, double xMm, double fromMm, double toMm)
    {
        if (fromMm - toMm > Tolerances.JoinMm)
        {
            pen.Line(new Point(xMm, fromMm), new Point(xMm, toMm), LineStyle.Wide(LineKind.ContinuousWide, Ink.Accent, 0.7));
        }
    }
}
