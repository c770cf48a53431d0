using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A geometrical tolerance frame and the sign of a datum (ISO 1101 and ISO 5459, proportions from memory).</summary>
internal static class ToleranceFrame
{
    /// <summary>Height of a frame, mm: twice the lettering.</summary>
    public const double HeightMm = 5;

    private const double SignMm = 6;
    private const double PadMm = 1.4;
    private static readonly LineStyle Line = LineStyle.Dimension;

    /// <summary>Circular run-out: the slanting arrow, the tolerance, the datum; its middle left at a point, a leader from there to the surface.</summary>
    /// <param name="pen">The pen.</param>
    /// <param name="left">Middle of its left side.</param>
    /// <param name="words">The tolerance with its datum's letter.</param>
    /// <param name="leader">From the frame's left side to the surface: the arrow's tip is the last point.</param>
    public static void RunOut(GroupPen pen, Point left, (string Tolerance, string Datum) words, params IReadOnlyList<Point> leader)
    {
        double x = left.X;
        Cell(pen, ref x, left.Y, SignMm);
        Point foot = new(left.X + 1.7, left.Y - 1.6);
        Point tip = new(left.X + 4.4, left.Y + 1.6);
        Vector back = (foot - tip).Unit() * 1.5;
        pen.Line(foot, tip, Line).Area(new Outline(Contour.Polygon(tip, tip + back + (back.Left * 0.3), tip + back - (back.Left * 0.3)).Travelled(Turning.Anticlockwise)), Fill.Solid(Ink.Dimension));
        foreach (string word in (string[])[words.Tolerance, words.Datum])
        {
            double from = x;
            Cell(pen, ref x, left.Y, FieldMm(word));
            pen.Text(word, new(new((from + x) / 2, left.Y), TextAlong.Middle, TextAcross.Middle), DimensionForm.TextStyle);
        }

        pen.Texts.Block(new Bounds(left.X, left.Y - (HeightMm / 2), x, left.Y + (HeightMm / 2)));
        Point[] way = [left, .. leader];
        pen.Polyline(Line, way).Add(DimensionForm.Head(way[^1], way[^1] - way[^2]));
        for (int i = 0; i + 1 < way.Length; i++)
        {
            pen.Texts.TakeLine(way[i], way[i + 1]);
        }
    }

    /// <summary>A datum's letter in its square, joined to a filled triangle that stands on a feature or its dimension line.</summary>
    /// <param name="pen">The pen.</param>
    /// <param name="foot">Where the triangle stands.</param>
    /// <param name="up">The unit direction from there to the letter.</param>
    /// <param name="letter">The letter.</param>
    public static void Datum(GroupPen pen, Point foot, Vector up, string letter)
    {
        const double highMm = 2.2;
        const double stemMm = 2;
        Point tip = foot + (up * highMm);
        pen.Area(new Outline(Contour.Polygon(foot + (up.Left * 1.25), tip, foot - (up.Left * 1.25)).Travelled(Turning.Anticlockwise)), Fill.Solid(Ink.Dimension));
        Point stem = tip + (up * stemMm);
        Point centre = stem + (up * (HeightMm / 2));
        Bounds box = new(centre.X - (HeightMm / 2), centre.Y - (HeightMm / 2), centre.X + (HeightMm / 2), centre.Y + (HeightMm / 2));
        pen.Line(tip, stem, Line).Line(Contour.Rectangle(new(box.MinX, box.MinY), new(box.MaxX, box.MaxY)), Line);
        pen.Text(letter, new(centre, TextAlong.Middle, TextAcross.Middle), DimensionForm.TextStyle);
        pen.Texts.Block(box);
    }

    private static double FieldMm(string word) => Math.Max(HeightMm, DimensionForm.TextWidthMm(word) + (2 * PadMm));

    private static void Cell(GroupPen pen, ref double x, double y, double widthMm)
    {
        pen.Line(Contour.Rectangle(new(x, y - (HeightMm / 2)), new(x + widthMm, y + (HeightMm / 2))), Line);
        x += widthMm;
    }
}
