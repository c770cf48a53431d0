using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>A circular piece: part or all of a circle, travelled either way.</summary>
public sealed class Arc : Piece
{
    // Asked for again and again where many pieces are held against many points, and worked out by four turns of the arc's span.
    private Framed? _bounds;

    /// <summary>About a centre, from a direction, through a signed sweep.</summary>
    /// <param name="centre">Centre of the circle.</param>
    /// <param name="radiusMm">Radius, above 0.</param>
    /// <param name="startRad">Direction of the start from the centre, radians anticlockwise from x.</param>
    /// <param name="sweepRad">Angle travelled: positive anticlockwise, negative clockwise, at most one turn, not 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Radius or sweep is out of range or not finite.</exception>
    public Arc(Point centre, double radiusMm, double startRad, double sweepRad)
        : this(centre, radiusMm, startRad, sweepRad, centre + Vector.Polar(radiusMm, startRad), centre + Vector.Polar(radiusMm, startRad + sweepRad))
    {
    }

    private Arc(Point centre, double radiusMm, double startRad, double sweepRad, Point start, Point end)
    {
        if (!(radiusMm > 0) || !double.IsFinite(radiusMm))
        {
            throw new ArgumentOutOfRangeException(nameof(radiusMm), radiusMm, "An arc needs a radius above 0.");
        }

        const double roundingRad = 1e-12;
        if (!double.IsFinite(centre.X) || !double.IsFinite(centre.Y))
        {
            throw new ArgumentOutOfRangeException(nameof(centre), centre, "An arc needs a finite centre.");
        }

        if (sweepRad == 0 || !(Math.Abs(sweepRad) <= Angles.TurnRad + roundingRad) || !double.IsFinite(startRad))
        {
            throw new ArgumentOutOfRangeException(nameof(sweepRad), sweepRad, "An arc sweeps at most one turn, and not nothing.");
        }

        Centre = centre;
        RadiusMm = radiusMm;
        StartRad = startRad;
        SweepRad = Math.Clamp(sweepRad, -Angles.TurnRad, Angles.TurnRad);
        Start = start;
        End = Math.Abs(SweepRad) == Angles.TurnRad ? start : end;
    }

    /// <summary>Centre of the circle.</summary>
    public Point Centre { get; }

    /// <summary>Radius, mm.</summary>
    public double RadiusMm { get; }

    /// <summary>Direction of the start from the centre, radians.</summary>
    public double StartRad { get; }

    /// <summary>Angle travelled, radians: positive anticlockwise.</summary>
    public double SweepRad { get; }

    /// <summary>Direction of the end from the centre, radians: start + sweep.</summary>
    public double EndRad => StartRad + SweepRad;

    /// <summary>The directions covered, as a value, in either direction of travel.</summary>
    public CircleArc Span => SweepRad > 0 ? CircleArc.Sweep(StartRad, SweepRad) : CircleArc.Sweep(EndRad, -SweepRad);

    /// <inheritdoc/>
    public override Point Start { get; }

    /// <inheritdoc/>
    public override Point End { get; }

    /// <inheritdoc/>
    public override double Length => RadiusMm * Math.Abs(SweepRad);

    /// <inheritdoc/>
    public override double Bulge => Math.Tan(SweepRad / 4);

    /// <inheritdoc/>
    public override Bounds Bounds => (_bounds ??= new(Frame())).Bounds;

    internal override double CurvaturePerMm => SweepRad > 0 ? 1 / RadiusMm : -1 / RadiusMm;

    internal override double AreaTerm
    {
        get
        {
            // Green's theorem, exact: chord term of the end points plus the circular segment between chord and arc.
            double chord = (Start - Point.Origin).Cross(End - Point.Origin) / 2;
            return chord + SegmentAreaMm2;
        }
    }

    /// <summary>Signed area between chord and arc, mm².</summary>
    private double SegmentAreaMm2
    {
        get
        {
            // s − sin s loses its digits for a flat arc of large radius: below 0.1 rad the series is exact to 1e-16.
            double square = SweepRad * SweepRad;
            double excess = Math.Abs(SweepRad) > 0.1
                ? SweepRad - Math.Sin(SweepRad)
                : SweepRad * square / 6 * (1 - (square / 20 * (1 - (square / 42 * (1 - (square / 72))))));
            return RadiusMm * RadiusMm * excess / 2;
        }
    }

    internal override Vector MomentTerm
    {
        get
        {
            // Triangle origin–start–end plus the circular segment, whose centroid lies on its axis
            // at 4 r sin³(s/2) / (3 (s − sin s)) from the centre (standard tables of plane areas).
            double cross = (Start - Point.Origin).Cross(End - Point.Origin);
            Vector triangle = new Vector(Start.X + End.X, Start.Y + End.Y) * (cross / 6);
            double half = Math.Sin(SweepRad / 2);
            double axial = 2 * RadiusMm * RadiusMm * RadiusMm * half * half * half / 3;
            Vector axis = Vector.Polar(1, StartRad + (SweepRad / 2));
            return triangle + ((Centre - Point.Origin) * SegmentAreaMm2) + (axis * axial);
        }
    }

    /// <summary>The arc of drawing formats: between two points with a bulge (tan of a quarter of the angle turned).</summary>
    /// <param name="start">Start point.</param>
    /// <param name="end">End point, another than the start.</param>
    /// <param name="bulge">Positive anticlockwise, 1 for half a circle; not 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bulge is 0 or not finite.</exception>
    /// <exception cref="ArgumentException">The two points coincide.</exception>
    public static Arc FromBulge(Point start, Point end, double bulge)
    {
        if (bulge == 0 || !double.IsFinite(bulge))
        {
            throw new ArgumentOutOfRangeException(nameof(bulge), bulge, "An arc has a bulge other than 0.");
        }

        Vector chord = end - start;
        if (!(chord.Length > 0))
        {
            throw new ArgumentException("An arc with a bulge needs two different points.", nameof(end));
        }

        double sweep = 4 * Math.Atan(bulge);
        Point centre = start.Towards(end, 0.5) + (chord.Left * ((1 - (bulge * bulge)) / (4 * bulge)));
        double radius = chord.Length * (1 + (bulge * bulge)) / (4 * Math.Abs(bulge));
        return new Arc(centre, radius, (start - centre).AngleRad, sweep, start, end);
    }

    /// <summary>The arc about a centre between two points that lie on one circle round it.</summary>
    /// <param name="centre">Centre.</param>
    /// <param name="start">Start point.</param>
    /// <param name="end">End point; the same as the start, within <see cref="Tolerances.ShortestPieceMm"/>, gives a whole circle.</param>
    /// <param name="turning">Which way round it runs.</param>
    /// <exception cref="ArgumentException">The two points are not equally far from the centre.</exception>
    public static Arc About(Point centre, Point start, Point end, Turning turning)
    {
        double radius = start.DistanceTo(centre);
        if (Math.Abs(radius - end.DistanceTo(centre)) > Tolerances.JoinMm)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Start and end lie {radius} and {end.DistanceTo(centre)} mm from the centre."), nameof(end));
        }

        return About(centre, radius, start, end, turning);
    }

    /// <summary>The same with a radius that is known better than the two points give.</summary>
    internal static Arc About(Point centre, double radius, Point start, Point end, Turning turning)
    {
        double from = (start - centre).AngleRad;
        double ahead = start.DistanceTo(end) < Tolerances.ShortestPieceMm ? 0 : Angles.InTurn((end - centre).AngleRad - from);
        double sweep = turning == Turning.Anticlockwise
            ? (ahead == 0 ? Angles.TurnRad : ahead)
            : (ahead == 0 ? -Angles.TurnRad : ahead - Angles.TurnRad);
        return new Arc(centre, radius, from, sweep, start, end);
    }

    /// <inheritdoc/>
    public override Point PointAt(double share) =>
        share == 0 ? Start : share == 1 ? End : Centre + Vector.Polar(RadiusMm, StartRad + (share * SweepRad));

    /// <inheritdoc/>
    public override Vector TangentAt(double share) =>
        Vector.Polar(1, StartRad + (share * SweepRad) + (SweepRad > 0 ? Math.PI / 2 : -Math.PI / 2));

    /// <inheritdoc/>
    public override double ShareNearest(Point p)
    {
        double ahead = AheadRad(p - Centre);
        double sweep = Math.Abs(SweepRad);
        return ahead <= sweep ? ahead / sweep : p.DistanceTo(End) < p.DistanceTo(Start) ? 1 : 0;
    }

    /// <inheritdoc/>
    public override Piece Reversed() => new Arc(Centre, RadiusMm, EndRad, -SweepRad, End, Start);

    /// <inheritdoc/>
    public override Piece Placed(Placement placement) =>
        new Arc(
            placement.Of(Centre),
            RadiusMm * placement.Scale,
            placement.Of(StartRad),
            placement.Mirrors ? -SweepRad : SweepRad,
            placement.Of(Start),
            placement.Of(End));

    /// <summary>How far along the way of travel a direction from the centre lies, in [0, 2π).</summary>
    internal double AheadRad(Vector outward) =>
        Angles.InTurn(SweepRad > 0 ? outward.AngleRad - StartRad : StartRad - outward.AngleRad);

    /// <summary>Whether the arc, both ends included, has a point in that direction from its centre.</summary>
    internal bool Faces(Vector outward)
    {
        // On which side of its ends' radii a direction lies tells it without an angle, except near an end.
        double sense = SweepRad > 0 ? 1 : -1, past = sense * (Start - Centre).Cross(outward), before = sense * outward.Cross(End - Centre);
        double near = NearEndsMm * NearEndsMm * outward.Dot(outward);
        if (past * past > near && before * before > near)
        {
            return Math.Abs(SweepRad) > Math.PI ? past > 0 || before > 0 : past > 0 && before > 0;
        }

        return AheadRad(outward) <= Math.Abs(SweepRad);
    }

    /// <summary>Nearer than this to an end's radius a direction's angle is looked at, mm along the arc: far more than joined ends stray from the arc's own.</summary>
    private double NearEndsMm => (RadiusMm / 1000) + (2 * Tolerances.JoinMm);

    /// <summary>Centre, radius, start and sweep in degrees, as in messages.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"arc about {Centre} of radius {RadiusMm} from {Angles.DegFromRad(StartRad)}° through {Angles.DegFromRad(SweepRad)}°");

    internal override Point NearestTo(Point p)
    {
        Vector outward = p - Centre;
        double distance = outward.Length;
        if (distance > 0 && Faces(outward))
        {
            return Centre + (outward * (RadiusMm / distance));
        }

        return p.DistanceTo(End) < p.DistanceTo(Start) ? End : Start;
    }

    internal override Piece Between(Point start, Point end) => new Arc(Centre, RadiusMm, StartRad, SweepRad, start, end);

    private protected override Piece PartBetween(double from, double to) =>
        new Arc(Centre, RadiusMm, StartRad + (from * SweepRad), (to - from) * SweepRad, PointAt(from), PointAt(to));

    private Bounds Frame()
    {
        Bounds all = Bounds.Of(Start, End);
        CircleArc span = Span;
        for (int quarter = 0; quarter < 4; quarter++)
        {
            if (span.Contains(quarter * Math.PI / 2))
            {
                Vector outward = quarter switch
                {
                    0 => new Vector(RadiusMm, 0),
                    1 => new Vector(0, RadiusMm),
                    2 => new Vector(-RadiusMm, 0),
                    _ => new Vector(0, -RadiusMm),
                };
                all = all.With(Bounds.Of(Centre + outward));
            }
        }

        return all;
    }

    // Behind a reference, so that two threads that ask at once see all of it or nothing.
    private sealed class Framed(Bounds bounds)
    {
        internal Bounds Bounds => bounds;
    }
}

/// <summary>A way of turning, as seen on the drawing.</summary>
public enum Turning
{
    /// <summary>From x towards y.</summary>
    Anticlockwise,

    /// <summary>From y towards x, as the hands of a clock.</summary>
    Clockwise,
}
