namespace WheelDraft.Geometry;

/// <summary>A similarity of the plane: an optional mirror, a scale, a turn and a shift, in this order.</summary>
/// <remarks>Lines stay lines and arcs stay arcs. Start from <see cref="Identity"/> or one of the makers.</remarks>
public sealed record Placement
{
    private readonly double _cos;
    private readonly double _sin;

    private Placement(bool mirrors, double scale, double turnRad, Vector shift)
    {
        Mirrors = mirrors;
        Scale = scale;
        TurnRad = turnRad;
        Shift = shift;
        (_sin, _cos) = Math.SinCos(turnRad);
    }

    /// <summary>Everything stays where it is.</summary>
    public static Placement Identity { get; } = new(false, 1, 0, default);

    /// <summary>Mirror in the x axis (y changes sign).</summary>
    public static Placement MirrorInX { get; } = new(true, 1, 0, default);

    /// <summary>Whether left and right change places.</summary>
    public bool Mirrors { get; }

    /// <summary>Factor on lengths, above 0.</summary>
    public double Scale { get; }

    /// <summary>Turn, radians anticlockwise.</summary>
    public double TurnRad { get; }

    /// <summary>Shift, mm.</summary>
    public Vector Shift { get; }

    /// <summary>A turn about the origin, anticlockwise.</summary>
    public static Placement Turn(double angleRad) => new(false, 1, angleRad, default);

    /// <summary>A turn about a point, anticlockwise.</summary>
    public static Placement Turn(double angleRad, Point about) =>
        Translation(Point.Origin - about).Then(Turn(angleRad)).Then(Translation(about - Point.Origin));

    /// <summary>A shift.</summary>
    public static Placement Translation(Vector by) => new(false, 1, 0, by);

    /// <summary>A change of size about the origin.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not above 0 and finite.</exception>
    public static Placement Scaling(double factor) =>
        factor > 0 && double.IsFinite(factor)
            ? new(false, factor, 0, default)
            : throw new ArgumentOutOfRangeException(nameof(factor), factor, "A scale is above 0.");

    /// <summary>Where a point goes.</summary>
    public Point Of(Point p) => Point.Origin + Of(p - Point.Origin) + Shift;

    /// <summary>Where a direction goes (without the shift).</summary>
    public Vector Of(Vector v)
    {
        double y = Mirrors ? -v.Y : v.Y;
        return new Vector((v.X * _cos) - (y * _sin), (v.X * _sin) + (y * _cos)) * Scale;
    }

    /// <summary>The direction angle that an angle becomes, radians.</summary>
    public double Of(double angleRad) => (Mirrors ? -angleRad : angleRad) + TurnRad;

    /// <summary>This placement, then another.</summary>
    public Placement Then(Placement next) =>
        new(Mirrors != next.Mirrors,
            Scale * next.Scale,
            (next.Mirrors ? -TurnRad : TurnRad) + next.TurnRad,
            next.Of(Shift) + next.Shift);
}
