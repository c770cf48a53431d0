using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>A directed piece of a path: a straight <see cref="Segment"/> or a circular <see cref="Arc"/>, nothing else.</summary>
public abstract class Piece
{
    private protected Piece()
    {
    }

    /// <summary>Where it starts.</summary>
    public abstract Point Start { get; }

    /// <summary>Where it ends.</summary>
    public abstract Point End { get; }

    /// <summary>Length along it, mm.</summary>
    public abstract double Length { get; }

    /// <summary>The smallest upright rectangle round it, exact.</summary>
    public abstract Bounds Bounds { get; }

    /// <summary>The point at a share of the length: 0 at the start, 1 at the end.</summary>
    public abstract Point PointAt(double share);

    /// <summary>The direction of travel there, length 1.</summary>
    public abstract Vector TangentAt(double share);

    /// <summary>The same piece, travelled the other way.</summary>
    public abstract Piece Reversed();

    /// <summary>The piece moved, turned, scaled or mirrored.</summary>
    public abstract Piece Placed(Placement placement);

    /// <summary>Its share of the area round the origin, mm²: the sum over a closed contour is the signed area.</summary>
    internal abstract double AreaTerm { get; }

    /// <summary>Its share of the first moments (∫x dA, ∫y dA) of the closed contour, mm³.</summary>
    internal abstract Vector MomentTerm { get; }

    /// <summary>The bulge of drawing formats: tan of a quarter of the angle turned; 0 for a straight piece.</summary>
    public abstract double Bulge { get; }

    /// <summary>Signed curvature, 1/mm: positive when it bends to the left.</summary>
    internal abstract double CurvaturePerMm { get; }

    /// <summary>The part between two shares of the length, 0 ≤ <paramref name="from"/> &lt; <paramref name="to"/> ≤ 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The shares are out of order or range.</exception>
    public Piece Part(double from, double to)
    {
        if (!(from >= 0) || !(to <= 1) || !(from < to))
        {
            throw new ArgumentOutOfRangeException(nameof(from), from, string.Create(CultureInfo.InvariantCulture, $"A part runs forward between shares 0 and 1; asked for {from} to {to}."));
        }

        return from == 0 && to == 1 ? this : PartBetween(from, to);
    }

    /// <summary>The share whose point lies nearest, in [0, 1].</summary>
    public abstract double ShareNearest(Point p);

    /// <summary>The point of the piece that lies nearest.</summary>
    internal abstract Point NearestTo(Point p);

    /// <summary>The same piece with ends moved by no more than <see cref="Tolerances.JoinMm"/>, so that neighbours join exactly.</summary>
    internal abstract Piece Between(Point start, Point end);

    private protected abstract Piece PartBetween(double from, double to);
}

/// <summary>A straight piece.</summary>
public sealed class Segment : Piece
{
    /// <summary>From one point to another.</summary>
    /// <exception cref="ArgumentException">A coordinate is not finite, or the two points coincide.</exception>
    public Segment(Point start, Point end)
    {
        double length = start.DistanceTo(end);
        if (!(length > 0) || !double.IsFinite(length))
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A segment needs two different points; found {start} and {end}."), nameof(end));
        }

        Start = start;
        End = end;
        Length = length;
    }

    /// <inheritdoc/>
    public override Point Start { get; }

    /// <inheritdoc/>
    public override Point End { get; }

    /// <inheritdoc/>
    public override double Length { get; }

    /// <inheritdoc/>
    public override Bounds Bounds => Bounds.Of(Start, End);

    /// <inheritdoc/>
    public override double Bulge => 0;

    /// <summary>Direction from start to end, length 1.</summary>
    public Vector Direction => (End - Start) / Length;

    internal override double CurvaturePerMm => 0;

    internal override double AreaTerm => (Start - Point.Origin).Cross(End - Point.Origin) / 2;

    internal override Vector MomentTerm
    {
        get
        {
            double cross = (Start - Point.Origin).Cross(End - Point.Origin);
            return new Vector(Start.X + End.X, Start.Y + End.Y) * (cross / 6);
        }
    }

    /// <inheritdoc/>
    public override Point PointAt(double share) => share == 1 ? End : Start.Towards(End, share);

    /// <inheritdoc/>
    public override Vector TangentAt(double share) => Direction;

    /// <inheritdoc/>
    public override double ShareNearest(Point p)
    {
        Vector along = End - Start;
        return Math.Clamp((p - Start).Dot(along) / along.Dot(along), 0, 1);
    }

    /// <inheritdoc/>
    public override Piece Reversed() => new Segment(End, Start);

    /// <inheritdoc/>
    public override Piece Placed(Placement placement) => new Segment(placement.Of(Start), placement.Of(End));

    internal override Point NearestTo(Point p) => PointAt(ShareNearest(p));

    internal override Piece Between(Point start, Point end) => new Segment(start, end);

    private protected override Piece PartBetween(double from, double to) => new Segment(PointAt(from), PointAt(to));

    /// <summary>Both ends, as in messages.</summary>
    public override string ToString() => $"line from {Start} to {End}";
}
