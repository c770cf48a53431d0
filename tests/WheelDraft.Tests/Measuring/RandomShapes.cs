using NetTopologySuite.Geometries;
using WheelDraft.Geometry;
using Point = WheelDraft.Geometry.Point;

namespace WheelDraft.Tests.Measuring;

/// <summary>Random shapes from a seed, and flattened copies of them for NetTopologySuite.</summary>
internal sealed class RandomShapes(int seed)
{
    private static readonly GeometryFactory Factory = new();
    private readonly Random _random = new(seed);

    internal double Between(double least, double most) => least + ((most - least) * _random.NextDouble());

    internal int Below(int n) => _random.Next(n);

    /// <summary>A shape with arcs and, most times, a hole.</summary>
    internal Outline WithArcs() => _random.Next(4) switch
    {
        0 => Sector(),
        1 => Ringed(),
        2 => Turned(Band.Along([new(-4, 0), new(0, 0), new(Between(0, 4), Between(2, 4))], Between(0.3, 1.2))),
        _ => Turned(new Outline(Stadium(Between(3, 9), Between(0.5, 2)), [Contour.Circle(Point.Origin, 0.3)])),
    };

    /// <summary>A straight-edged shape: a star round a centre, with a hole at times.</summary>
    internal Outline Straight()
    {
        Point centre = At(0, 22);
        int corners = 3 + _random.Next(5);
        double size = Between(0.8, 4);
        double[] radii = [.. Enumerable.Range(0, corners).Select(_ => Between(0.5 * size, size))];
        Contour outer = Contour.Polygon([.. radii.Select((r, i) => centre + Vector.Polar(r, i * Angles.TurnRad / corners))]);
        double hole = 0.2 * size;
        return corners >= 5 && _random.Next(2) == 0
            ? new Outline(outer, [Contour.Polygon(centre + new Vector(hole, 0), centre + new Vector(0, hole), centre + new Vector(-hole, 0))])
            : new Outline(outer);
    }

    /// <summary>A ring sector about the axis with a round hole.</summary>
    internal Outline Sector()
    {
        double inner = Between(3, 16), outer = inner + Between(1, 6), from = Between(0, 6), sweep = Between(0.3, 5.5);
        Arc far = new(Point.Origin, outer, from, sweep);
        Arc near = new(Point.Origin, inner, from + sweep, -sweep);
        Contour contour = new([far, new Segment(far.End, near.Start), near, new Segment(near.End, far.Start)]);
        Point middle = Point.Polar((inner + outer) / 2, from + (sweep / 2));
        return new Outline(contour, [Contour.Circle(middle, Math.Min((outer - inner) / 3, inner * Math.Sin(Math.Min(sweep, 1) / 2) / 2))]);
    }

    internal Point At(double least, double most) => Point.Polar(Between(least, most), Between(0, Angles.TurnRad));

    /// <summary>A polygon none of whose chords is further from its arc than the error.</summary>
    internal static Polygon Flat(Outline outline, double chordErrorMm) => Factory.CreatePolygon(
        Factory.CreateLinearRing(Ring(outline.Outer, chordErrorMm)),
        [.. outline.Holes.Select(h => Factory.CreateLinearRing(Ring(h, chordErrorMm)))]);

    private Outline Ringed()
    {
        Point centre = At(0, 20);
        double outer = Between(1, 8);
        return new Outline(Contour.Circle(centre, outer), [Contour.Circle(centre + Vector.Polar(outer * 0.2, Between(0, 6)), outer * 0.6)]);
    }

    private Outline Turned(Outline shape) =>
        shape.Placed(Placement.Turn(Between(0, 6)).Then(Placement.Translation(At(0, 18) - Point.Origin)));

    private static Contour Stadium(double length, double radius)
    {
        Point left = new(-length / 2, 0), right = new(length / 2, 0);
        Vector up = new(0, radius);
        return new Contour(
        [
            new Segment(left - up, right - up), new Arc(right, radius, -Math.PI / 2, Math.PI),
            new Segment(right + up, left + up), new Arc(left, radius, Math.PI / 2, Math.PI),
        ]);
    }

    private static Coordinate[] Ring(Contour contour, double chordErrorMm)
    {
        List<Coordinate> ring = [];
        foreach (Piece piece in contour.Pieces)
        {
            int steps = piece is Arc arc
                ? Math.Max(2, (int)Math.Ceiling(Math.Abs(arc.SweepRad) / (2 * Math.Acos(1 - Math.Min(1, chordErrorMm / arc.RadiusMm)))))
                : 1;
            for (int i = 0; i < steps; i++)
            {
                Point p = piece.PointAt((double)i / steps);
                ring.Add(new Coordinate(p.X, p.Y));
            }
        }

        ring.Add(ring[0].Copy());
        return [.. ring];
    }
}
