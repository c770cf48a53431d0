namespace WheelDraft.Geometry;

/// <summary>The smallest upright rectangle round something, mm. <c>default</c> is the origin alone.</summary>
/// <param name="MinX">Left side.</param>
/// <param name="MinY">Lower side.</param>
/// <param name="MaxX">Right side.</param>
/// <param name="MaxY">Upper side.</param>
public readonly record struct Bounds(double MinX, double MinY, double MaxX, double MaxY)
{
    /// <summary>Width, mm.</summary>
    public double Width => MaxX - MinX;

    /// <summary>Height, mm.</summary>
    public double Height => MaxY - MinY;

    /// <summary>The middle.</summary>
    public Point Centre => new((MinX + MaxX) / 2, (MinY + MaxY) / 2);

    /// <summary>The bounds of points.</summary>
    /// <exception cref="ArgumentException">There is no point.</exception>
    public static Bounds Of(params ReadOnlySpan<Point> points)
    {
        if (points.IsEmpty)
        {
            throw new ArgumentException("Bounds need at least one point.", nameof(points));
        }

        Bounds all = new(points[0].X, points[0].Y, points[0].X, points[0].Y);
        foreach (Point p in points[1..])
        {
            all = new(Math.Min(all.MinX, p.X), Math.Min(all.MinY, p.Y), Math.Max(all.MaxX, p.X), Math.Max(all.MaxY, p.Y));
        }

        return all;
    }

    /// <summary>The bounds of both.</summary>
    public Bounds With(Bounds other) =>
        new(Math.Min(MinX, other.MinX), Math.Min(MinY, other.MinY), Math.Max(MaxX, other.MaxX), Math.Max(MaxY, other.MaxY));

    /// <summary>Wider by a margin on every side.</summary>
    public Bounds Grown(double byMm) => new(MinX - byMm, MinY - byMm, MaxX + byMm, MaxY + byMm);

    /// <summary>Whether a point lies inside or on the border.</summary>
    public bool Contains(Point p) => p.X >= MinX && p.X <= MaxX && p.Y >= MinY && p.Y <= MaxY;

    /// <summary>Whether the two rectangles touch or overlap.</summary>
    public bool Overlaps(Bounds other) =>
        MinX <= other.MaxX && other.MinX <= MaxX && MinY <= other.MaxY && other.MinY <= MaxY;

    /// <summary>Gap between the two rectangles, mm; 0 when they touch or overlap. Never more than the gap of what is inside.</summary>
    public double DistanceTo(Bounds other)
    {
        double dx = Math.Max(0, Math.Max(other.MinX - MaxX, MinX - other.MaxX));
        double dy = Math.Max(0, Math.Max(other.MinY - MaxY, MinY - other.MaxY));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>Distance of a point, mm; 0 inside and on the border.</summary>
    internal double DistanceTo(Point p) => DistanceTo(new Bounds(p.X, p.Y, p.X, p.Y));
}
