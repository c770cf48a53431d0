using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A rectangle at any angle on the paper.</summary>
/// <param name="Centre">Its middle.</param>
/// <param name="WidthMm">Along its own direction, mm.</param>
/// <param name="HeightMm">Across it, mm.</param>
/// <param name="TurnRad">Direction of its width, radians anticlockwise from the right.</param>
public readonly record struct TextBox(Point Centre, double WidthMm, double HeightMm, double TurnRad)
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
    public bool Overlaps(TextBox other) =>
        !SeparatedAlong(other, TurnRad) && !SeparatedAlong(other, TurnRad + (Math.PI / 2))
        && !SeparatedAlong(other, other.TurnRad) && !SeparatedAlong(other, other.TurnRad + (Math.PI / 2));

    /// <summary>Whether a straight line crosses the inside of the rectangle.</summary>
    public bool MeetsLine(Point from, Point to)
    {
        Vector along = to - from;
        return along.Length > 0
            ? Overlaps(new TextBox(from.Towards(to, 0.5), along.Length, 0, along.AngleRad))
            : Overlaps(new TextBox(from, 0, 0, 0));
    }

    /// <summary>Whether it lies inside an upright rectangle, border included.</summary>
    public bool IsInside(Bounds bounds) => Corners.All(bounds.Contains);

    private bool SeparatedAlong(TextBox other, double axisRad)
    {
        // Touching borders do not overlap; one rounding error is not an overlap either.
        const double touchingMm = 1e-9;
        Vector axis = Vector.Polar(1, axisRad);
        double apart = Math.Abs((other.Centre - Centre).Dot(axis));
        return apart >= Reach(axis) + other.Reach(axis) - touchingMm;
    }

    private double Reach(Vector axis)
    {
        Vector along = Vector.Polar(1, TurnRad);
        return ((Math.Abs(along.Dot(axis)) * WidthMm) + (Math.Abs(along.Left.Dot(axis)) * HeightMm)) / 2;
    }
}
