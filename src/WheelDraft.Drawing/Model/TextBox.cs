using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A rectangle at any angle on the paper.</summary>
/// <param name="Centre">Its middle.</param>
/// <param name="WidthMm">Along its own direction, mm.</param>
/// <param name="HeightMm">Across it, mm.</param>
/// <param name="TurnRad">Direction of its width, radians anticlockwise from the right.</param>
internal readonly record struct TextBox(Point Centre, double WidthMm, double HeightMm, double TurnRad)
{
    /// <summary>Upper or lower corners in turn, anticlockwise from its own lower left.</summary>
    public IReadOnlyList<Point> Corners
    {
        get
        {
            Vector along = Vector.Polar(WidthMm / 2, TurnRad);
            Vector up = Vector.Polar(HeightMm / 2, TurnRad).Left;
            return [Centre - along - up, Centre + along - up, Centre + along + up, Centre - along + up];
        }
    }

    /// <summary>The smallest upright rectangle round it.</summary>
    public Bounds Bounds => Bounds.Of([.. Corners]);

    /// <summary>The box of an upright rectangle.</summary>
    public static TextBox Of(Bounds bounds) => new(bounds.Centre, bounds.Width, bounds.Height, 0);

    /// <summary>Wider by a margin on every side.</summary>
    public TextBox Grown(double byMm) => this with { WidthMm = WidthMm + (2 * byMm), HeightMm = HeightMm + (2 * byMm) };

    /// <summary>Whether the two rectangles share more than a border.</summary>
    /// <remarks>Separating axes: two rectangles are apart exactly when their shadows on one of the four side directions are.</remarks>
    public bool Overlaps(TextBox other)
    {
        Vector own = Vector.Polar(1, TurnRad);
        Vector others = Vector.Polar(1, other.TurnRad);
        Vector apart = other.Centre - Centre;
        double cos = Math.Abs(own.Dot(others));
        double sin = Math.Abs(own.Cross(others));
        return Near(apart.Dot(own), WidthMm, (other.WidthMm * cos) + (other.HeightMm * sin))
            && Near(apart.Dot(own.Left), HeightMm, (other.WidthMm * sin) + (other.HeightMm * cos))
            && Near(apart.Dot(others), other.WidthMm, (WidthMm * cos) + (HeightMm * sin))
            && Near(apart.Dot(others.Left), other.HeightMm, (WidthMm * sin) + (HeightMm * cos));
    }

    /// <summary>Whether a straight line crosses the inside of the rectangle.</summary>
    /// <remarks>The line is cut to the two strips that the sides bound; something is left of it exactly when it crosses.</remarks>
    public bool MeetsLine(Point from, Point to)
    {
        Vector own = Vector.Polar(1, TurnRad);
        Vector start = from - Centre;
        Vector way = to - from;
        double first = 0;
        double last = 1;
        return Cut(start.Dot(own), way.Dot(own), WidthMm / 2, ref first, ref last)
            && Cut(start.Dot(own.Left), way.Dot(own.Left), HeightMm / 2, ref first, ref last);
    }

    /// <summary>Whether it lies inside an upright rectangle, border included.</summary>
    public bool IsInside(Bounds bounds) => Corners.All(bounds.Contains);

    // Touching borders do not overlap; one rounding error is not an overlap either.
    private const double TouchingMm = 1e-9;

    private static bool Near(double apartMm, double shadowMm, double otherShadowMm) =>
        Math.Abs(apartMm) < ((shadowMm + otherShadowMm) / 2) - TouchingMm;

    /// <summary>Cuts the shares of a line from first to last down to those inside a strip about zero.</summary>
    private static bool Cut(double start, double way, double halfMm, ref double first, ref double last)
    {
        double half = halfMm - TouchingMm;
        if (Math.Abs(way) < TouchingMm)
        {
            return Math.Abs(start) < half;
        }

        double enters = ((way > 0 ? -half : half) - start) / way;
        double leaves = ((way > 0 ? half : -half) - start) / way;
        first = Math.Max(first, enters);
        last = Math.Min(last, leaves);
        return first <= last;
    }
}
