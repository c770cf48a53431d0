using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A place, displacement or direction in space, in millimetres: x and y as in the plane of the copper face, z toward the wiper side.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Up on the drawing.</param>
/// <param name="Z">Toward the wiper side; 0 on the copper face.</param>
public readonly record struct SpaceVector(double X, double Y, double Z)
{
    /// <summary>Toward the wiper side, length 1.</summary>
    public static SpaceVector Upward => new(0, 0, 1);

    /// <summary>Its place on the drawing.</summary>
    public Point Plan => new(X, Y);

    /// <summary>Length, mm.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>The same direction with length 1.</summary>
    /// <remarks>A method, as in the plane: a property of its own type would make the printed form of the record endless.</remarks>
    public SpaceVector Unit() => this / Length;

    /// <summary>Sum.</summary>
    public static SpaceVector operator +(SpaceVector a, SpaceVector b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    public static SpaceVector operator -(SpaceVector a, SpaceVector b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite.</summary>
    public static SpaceVector operator -(SpaceVector a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Scaled.</summary>
    public static SpaceVector operator *(SpaceVector a, double by) => new(a.X * by, a.Y * by, a.Z * by);

    /// <summary>Scaled down.</summary>
    public static SpaceVector operator /(SpaceVector a, double by) => new(a.X / by, a.Y / by, a.Z / by);

    /// <summary>A direction in the plane of the copper face.</summary>
    /// <param name="angleRad">Radians anticlockwise from x.</param>
    public static SpaceVector Level(double angleRad) => new(Math.Cos(angleRad), Math.Sin(angleRad), 0);

    /// <summary>Scalar product.</summary>
    public double Dot(SpaceVector o) => (X * o.X) + (Y * o.Y) + (Z * o.Z);

    /// <summary>Vector product.</summary>
    public SpaceVector Cross(SpaceVector o) => new((Y * o.Z) - (Z * o.Y), (Z * o.X) - (X * o.Z), (X * o.Y) - (Y * o.X));
}

/// <summary>A place on the middle surface of a strip, and how the strip lies there.</summary>
/// <param name="Origin">On the centre line, midway between the faces.</param>
/// <param name="Along">Toward the tip, length 1.</param>
/// <param name="Up">Out of the face that is the wiper side of a level strip, length 1.</param>
public readonly record struct StripFrame(SpaceVector Origin, SpaceVector Along, SpaceVector Up)
{
    /// <summary>Across the strip, to the left looking to the tip, length 1.</summary>
    public SpaceVector Left => Up.Cross(Along);

    /// <summary>The point a distance along, to the left and up from here, mm.</summary>
    public SpaceVector At(double alongMm, double leftMm, double upMm) =>
        Origin + (Along * alongMm) + (Left * leftMm) + (Up * upMm);
}

/// <summary>A turn about the axis of the wheel, then a shift.</summary>
/// <param name="TurnRad">Turn, radians anticlockwise.</param>
/// <param name="Shift">Shift, mm.</param>
public readonly record struct SpacePlacement(double TurnRad, SpaceVector Shift)
{
    /// <summary>Where a direction goes.</summary>
    public SpaceVector Turned(SpaceVector v)
    {
        (double sin, double cos) = Math.SinCos(TurnRad);
        return new((v.X * cos) - (v.Y * sin), (v.X * sin) + (v.Y * cos), v.Z);
    }

    /// <summary>Where a place goes.</summary>
    public SpaceVector Of(SpaceVector place) => Turned(place) + Shift;

    /// <summary>Where a frame goes.</summary>
    public StripFrame Of(StripFrame frame) => new(Of(frame.Origin), Turned(frame.Along), Turned(frame.Up));
}
