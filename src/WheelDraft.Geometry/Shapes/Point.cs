using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>A place in the plane, in millimetres: x to the right, y up.</summary>
/// <remarks>A point is not a vector: the difference of two points is a <see cref="Vector"/>, and points do not add.</remarks>
/// <param name="X">To the right, mm.</param>
/// <param name="Y">Up, mm.</param>
public readonly record struct Point(double X, double Y)
{
    /// <summary>The origin: the axis of the wheel in every drawing of this project.</summary>
    public static Point Origin => default;

    /// <summary>Distance from the origin, mm.</summary>
    public double RadiusMm => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>Direction from the origin, radians anticlockwise from x, in (−π, π]; 0 at the origin.</summary>
    public double AngleRad => Math.Atan2(Y, X);

    /// <summary>The point at a radius and angle about the origin.</summary>
    /// <param name="radiusMm">Radius, mm.</param>
    /// <param name="angleRad">Angle, radians anticlockwise from x.</param>
    public static Point Polar(double radiusMm, double angleRad) =>
        new(radiusMm * Math.Cos(angleRad), radiusMm * Math.Sin(angleRad));

    /// <summary>The vector from <paramref name="to"/> to <paramref name="from"/>.</summary>
    public static Vector operator -(Point from, Point to) => new(from.X - to.X, from.Y - to.Y);

    /// <summary>The point moved by a vector.</summary>
    public static Point operator +(Point point, Vector by) => new(point.X + by.X, point.Y + by.Y);

    /// <summary>The point moved against a vector.</summary>
    public static Point operator -(Point point, Vector by) => new(point.X - by.X, point.Y - by.Y);

    /// <summary>Both coordinates in brackets, as in messages: (12.4, 33.1).</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({X}, {Y})");

    /// <summary>Distance to another point, mm.</summary>
    public double DistanceTo(Point other) => (this - other).Length;

    /// <summary>The point a share of the way to another: 0 here, 1 there.</summary>
    public Point Towards(Point other, double share) => this + ((other - this) * share);
}

/// <summary>A displacement or direction in the plane, in millimetres.</summary>
/// <param name="X">To the right, mm.</param>
/// <param name="Y">Up, mm.</param>
public readonly record struct Vector(double X, double Y)
{
    /// <summary>Length, mm.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>Direction, radians anticlockwise from x, in (−π, π].</summary>
    public double AngleRad => Math.Atan2(Y, X);

    /// <summary>This vector turned a quarter anticlockwise.</summary>
    public Vector Left => new(-Y, X);

    /// <summary>The vector of a length in a direction.</summary>
    public static Vector Polar(double lengthMm, double angleRad) =>
        new(lengthMm * Math.Cos(angleRad), lengthMm * Math.Sin(angleRad));

    /// <summary>Sum.</summary>
    public static Vector operator +(Vector a, Vector b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Difference.</summary>
    public static Vector operator -(Vector a, Vector b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The opposite vector.</summary>
    public static Vector operator -(Vector a) => new(-a.X, -a.Y);

    /// <summary>Scaled.</summary>
    public static Vector operator *(Vector a, double by) => new(a.X * by, a.Y * by);

    /// <summary>Scaled down.</summary>
    public static Vector operator /(Vector a, double by) => new(a.X / by, a.Y / by);

    /// <summary>Both components in brackets.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({X}, {Y})");

    /// <summary>Scalar product, mm².</summary>
    public double Dot(Vector other) => (X * other.X) + (Y * other.Y);

    /// <summary>Vector product (its component out of the plane), mm²; positive when <paramref name="other"/> lies to the left.</summary>
    public double Cross(Vector other) => (X * other.Y) - (Y * other.X);

    /// <summary>The vector of length 1 in this direction.</summary>
    /// <exception cref="InvalidOperationException">The vector has no length, so no direction.</exception>
    public Vector Unit()
    {
        double length = Length;
        return length > 0 ? this / length : throw new InvalidOperationException("A vector of length 0 has no direction.");
    }

    /// <summary>Turned anticlockwise by an angle.</summary>
    public Vector Turned(double angleRad)
    {
        (double sin, double cos) = Math.SinCos(angleRad);
        return new((X * cos) - (Y * sin), (X * sin) + (Y * cos));
    }
}
