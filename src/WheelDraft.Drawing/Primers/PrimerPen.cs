using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Draws what primers have in common, in millimetres on the paper.</summary>
internal sealed class PrimerPen(GroupPen pen)
{
    // Length and half width of an arrowhead, mm.
    private const double HeadMm = 2.2;
    private const double HalfHeadMm = 0.7;

    /// <summary>What the reader should look at.</summary>
    public static LineStyle Look { get; } = LineStyle.Of(LineKind.ContinuousWide, Ink.Accent);

    /// <summary>An upright rectangle of something.</summary>
    public PrimerPen Box(FillKind kind, Bounds box)
    {
        pen.Box(box, Fill.Of(kind), LineStyle.Thin);
        return this;
    }

    /// <summary>A polygon of something.</summary>
    public PrimerPen Shape(FillKind kind, params Point[] corners) => Shape(kind, Contour.Polygon(corners));

    /// <summary>An area of something.</summary>
    public PrimerPen Shape(FillKind kind, Contour outline)
    {
        pen.Area(new Outline(outline), Fill.Of(kind), LineStyle.Thin);
        return this;
    }

    /// <summary>A line through points.</summary>
    public PrimerPen Line(LineStyle style, params Point[] points)
    {
        pen.Polyline(style, points);
        return this;
    }

    /// <summary>A line along pieces.</summary>
    public PrimerPen Along(LineStyle style, params Piece[] pieces)
    {
        pen.Line(pieces, style);
        return this;
    }

    /// <summary>A line with heads at both ends: what is measured.</summary>
    public PrimerPen Measure(Point from, Point to)
    {
        Line(Look, from, to);
        return Head(from, from - to).Head(to, to - from);
    }

    /// <summary>A line with a head at its end: a way or a force.</summary>
    public PrimerPen Arrow(Point from, Point to)
    {
        Line(Look, from, to);
        return Head(to, to - from);
    }

    /// <summary>An arrowhead.</summary>
    /// <param name="tip">Its tip.</param>
    /// <param name="along">Where it points.</param>
    public PrimerPen Head(Point tip, Vector along)
    {
        Vector back = along.Unit() * -HeadMm;
        Vector aside = new Vector(-back.Y, back.X).Unit() * HalfHeadMm;
        pen.Area(new Outline(Contour.Polygon(tip, tip + back + aside, tip + back - aside)), Fill.Solid(Ink.Accent));
        return this;
    }

    /// <summary>A word centred on a point, on a plate of paper.</summary>
    public PrimerPen Word(double x, double y, string words, Ink ink = Ink.Text)
    {
        pen.PlatedText(words, new(new(x, y), TextAlong.Middle, TextAcross.Middle), new TextStyle(2.5, TextWeight.Regular, ink));
        return this;
    }

    /// <summary>A word of the picture's message.</summary>
    public PrimerPen Told(double x, double y, string words) => Word(x, y, words, Ink.Accent);
}
