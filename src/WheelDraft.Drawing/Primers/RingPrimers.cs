using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Pictures of rings, edges and times. Rings are unrolled: to the right is later.</summary>
internal static class RingPrimers
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Primer> All { get; } =
    [
        new("on-time", "The contact closes at the first touch of its patch and opens at the last: it is on for the copper and the patch together, so the copper is cut shorter by the length of the patch.", 46, OnTime),
        new("window", "The contact is open only while no part of its patch touches copper: it is off for the window less the patch, so a window is wider than the off-time by the length of the patch.", 46, Window),
        new("timing", "An on-time as drawn, and how far its make and break may lie at worst on either side. The tolerance that was asked for holds the longest and the shortest of them.", 46, Timing),
        new("adjusting", "A sloped edge: moved inward by its screw, the wiper meets the break later, moved outward sooner. The more range over the less travel, the flatter the edge.", 52, Adjusting),
        new("web", "Between two windows a web of copper is left. It carries the current to the rings further out, and has to be as wide as the process can cut.", 52, Web),
    ];

    private static void OnTime(PrimerPen pen)
    {
        pen.Box(FillKind.Copper, new(30, 18, 70, 26)).Word(50, 22, "copper")
            .Box(FillKind.Net2, new(22, 19, 30, 25)).Box(FillKind.Net2, new(70, 19, 78, 25))
            .Word(11, 22, "first touch").Word(88.5, 22, "last touch")
            .Measure(new(30, 32), new(78, 32)).Told(54, 38, "on-time = copper + patch")
            .Line(LineStyle.Dimension, new(30, 27), new(30, 34)).Line(LineStyle.Dimension, new(78, 26), new(78, 34))
            .Line(LineStyle.Dimension, new(70, 8), new(70, 18)).Line(LineStyle.Dimension, new(78, 8), new(78, 18));
        pen.Measure(new(70, 8), new(78, 8)).Word(87, 8, "patch");
    }

    private static void Window(PrimerPen pen)
    {
        pen.Box(FillKind.Copper, new(4, 18, 28, 26)).Box(FillKind.Copper, new(72, 18, 96, 26)).Word(16, 22, "copper").Word(84, 22, "copper")
            .Box(FillKind.Window, new(28, 18, 72, 26))
            .Box(FillKind.Net2, new(28, 19, 36, 25)).Box(FillKind.Net2, new(64, 19, 72, 25))
            .Measure(new(36, 32), new(72, 32)).Told(54, 38, "off-time = window − patch")
            .Line(LineStyle.Dimension, new(36, 26), new(36, 34)).Line(LineStyle.Dimension, new(72, 26), new(72, 34));
        pen.Measure(new(28, 10), new(72, 10)).Word(50, 5.5, "window").Word(50, 22, "patch")
            .Line(LineStyle.Thin, new(45.5, 22), new(36.5, 22)).Line(LineStyle.Thin, new(54.5, 22), new(63.5, 22));
    }

    private static void Timing(PrimerPen pen)
    {
        pen.Line(LineStyle.Thin, new(6, 12), new(94, 12)).Word(88, 7, "time")
            .Box(FillKind.Lit, new(30, 18, 66, 26)).Word(48, 22, "on")
            .Line(LineStyle.Of(LineKind.ContinuousWide, Ink.Whisker), new(25, 22), new(35, 22))
            .Line(LineStyle.Of(LineKind.ContinuousWide, Ink.Whisker), new(58, 22), new(74, 22));
        foreach (double x in (double[])[25, 35, 58, 74])
        {
            pen.Line(LineStyle.Of(LineKind.ContinuousWide, Ink.Whisker), new(x, 20), new(x, 24));
        }

        pen.Measure(new(25, 32), new(74, 32)).Told(50, 38, "longest at worst")
            .Word(20, 28, "make").Word(80, 28, "break")
            .Measure(new(35, 14.5), new(58, 14.5)).Told(46, 7.5, "shortest at worst");
    }

    private static void Adjusting(PrimerPen pen)
    {
        pen.Shape(FillKind.Copper, new(6, 12), new(74, 12), new(58, 32), new(6, 32)).Word(24, 22, "copper")
            .Box(FillKind.Net2, new(68, 14, 72, 17)).Box(FillKind.Net2, new(59, 27, 63, 30))
            .Arrow(new(86, 22), new(86, 14)).Arrow(new(86, 22), new(86, 30)).Word(86, 34, "out").Word(86, 10, "in")
            .Measure(new(61, 38), new(70, 38))
            .Line(LineStyle.Dimension, new(61, 30), new(61, 40)).Line(LineStyle.Dimension, new(70, 17), new(70, 40));
        pen.Told(60, 45, "moved in, it breaks later");
    }

    private static void Web(PrimerPen pen)
    {
        Point axis = new(50, -30);
        pen.Shape(FillKind.Copper, Ring(axis, 40, 78, 0.62))
            .Shape(FillKind.Window, Ring(axis, 46, 55, 0.4)).Shape(FillKind.Window, Ring(axis, 62, 71, 0.3))
            .Measure(new(50, 25), new(50, 32)).Told(62, 28.5, "web");
        pen.Word(38, 20.5, "window").Word(40, 36.5, "window").Word(50, 44.5, "copper");
    }

    // A part of a ring, the same to both sides of straight up.
    private static Contour Ring(Point axis, double innerMm, double outerMm, double halfRad)
    {
        Arc outer = new(axis, outerMm, (Math.PI / 2) + halfRad, -2 * halfRad);
        Arc inner = new(axis, innerMm, (Math.PI / 2) - halfRad, 2 * halfRad);
        return new([outer, new Segment(outer.End, inner.Start), inner, new Segment(inner.End, outer.Start)]);
    }
}
