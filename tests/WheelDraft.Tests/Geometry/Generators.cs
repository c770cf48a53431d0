using CsCheck;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Geometry;

/// <summary>Random points, pieces and shapes, weighted to the nasty: whole turns, zero, touching and tangent ones.</summary>
internal static class Generators
{
    /// <summary>Samples a property; the one place to trade time for certainty.</summary>
    internal const int Samples = 3000;

    /// <summary>For properties whose single case is a whole construction.</summary>
    internal const int FewSamples = 400;

    /// <summary>Coordinates on a coarse grid, so that points coincide and lines are collinear, and anywhere.</summary>
    internal static readonly Gen<double> Coordinate = Gen.Frequency(
        (3, Gen.Int[-4, 4].Select(i => (double)i)),
        (1, Gen.Int[-8, 8].Select(i => i / 2.0)),
        (2, Gen.Double[-5, 5]));

    internal static readonly Gen<Point> Points = Gen.Select(Coordinate, Coordinate, (x, y) => new Point(x, y));

    /// <summary>Angles: eighths of a turn, a hair beside them, anything.</summary>
    internal static readonly Gen<double> AngleRad = Gen.Frequency(
        (3, Gen.Int[-16, 16].Select(i => i * Math.PI / 4)),
        (1, Gen.Select(Gen.Int[-8, 8], Gen.OneOf(-1e-15, -1e-12, 1e-15, 1e-9), (i, by) => (i * Math.PI / 4) + by)),
        (3, Gen.Double[-10, 10]));

    /// <summary>Sweeps above 0 up to one whole turn, which is frequent.</summary>
    internal static readonly Gen<double> SweepRad = Gen.Frequency(
        (2, Gen.Int[1, 8].Select(i => i * Math.PI / 4)),
        (1, Gen.Const(Angles.TurnRad)),
        (1, Gen.OneOf(1e-6, 1e-3, Angles.TurnRad - 1e-9, Math.PI)),
        (3, Gen.Double[0.01, Angles.TurnRad]));

    internal static readonly Gen<double> RadiusMm = Gen.Frequency(
        (3, Gen.Int[1, 5].Select(i => (double)i)),
        (1, Gen.OneOf(0.5, Math.Sqrt(2), 1.5)),
        (2, Gen.Double[0.05, 6]));

    internal static readonly Gen<CircleArc> CircleArcs = Gen.Frequency(
        (1, Gen.Const(CircleArc.Empty)),
        (1, Gen.Const(CircleArc.Full)),
        (6, Gen.Select(AngleRad, SweepRad, CircleArc.Sweep)));

    internal static readonly Gen<Segment> Segments =
        Gen.Select(Points, Points).Where(p => p.Item1.DistanceTo(p.Item2) > 1e-3).Select(p => new Segment(p.Item1, p.Item2));

    internal static readonly Gen<Arc> Arcs = Gen.Select(
        Points, RadiusMm, AngleRad, Gen.Select(SweepRad, Gen.Bool),
        (centre, radius, start, way) => new Arc(centre, radius, start, way.Item2 ? way.Item1 : -way.Item1));

    internal static readonly Gen<Piece> Pieces = Gen.Frequency(
        (1, Segments.Select(s => (Piece)s)),
        (1, Arcs.Select(a => (Piece)a)));

    /// <summary>Turns, mirrors, shifts and a change of unit (inch and millimetre).</summary>
    internal static readonly Gen<Placement> Placements = Gen.Select(
        Gen.Bool, AngleRad, Points, Gen.OneOf(1, 25.4, 1 / 25.4),
        (mirrors, turn, shift, scale) => (mirrors ? Placement.MirrorInX : Placement.Identity)
            .Then(Placement.Scaling(scale)).Then(Placement.Turn(turn)).Then(Placement.Translation(shift - Point.Origin)));

    /// <summary>Simple closed contours of lines and arcs about a centre, whole circles and wheel-like sectors among them.</summary>
    internal static readonly Gen<Contour> Contours = Gen.Frequency(
        (1, Gen.Select(Points, RadiusMm, AngleRad, (c, r, a) => new Contour([new Arc(c, r, a, Angles.TurnRad)]))),
        (1, Gen.Select(Points, Points).Where(p => Math.Abs(p.Item1.X - p.Item2.X) > 0.1 && Math.Abs(p.Item1.Y - p.Item2.Y) > 0.1)
            .Select(p => Contour.Rectangle(p.Item1, p.Item2))),
        (2, Gen.Select(Gen.Double[1, 3], Gen.Double[0.2, 2], AngleRad, Gen.Double[0.2, 6], Sector)),
        (2, Gen.Int[1, 4].Array[1, 7].Select(Steps)),
        (6, Gen.Select(Points, AngleRad, Gen.Select(RadiusMm, Gen.OneOf(0.0, 0.0, 0.2, -0.2, 0.4142, -0.3, 1)).Array[3, 9], Star)))
        .Where(IsSimple);

    /// <summary>Shapes with up to three holes.</summary>
    internal static readonly Gen<Outline> Outlines = Gen.Select(
        Contours, Gen.Select(Contours, Points, (c, at) => c.Placed(Placement.Scaling(0.2).Then(Placement.Translation((at - Point.Origin) * 0.5)))).Array[0, 3],
        WithFittingHoles);

    /// <summary>A ring sector as a window of a wheel: two concentric arcs and two radial lines.</summary>
    internal static Contour Sector(double innerMm, double widthMm, double startRad, double sweepRad)
    {
        Arc outer = new(Point.Origin, innerMm + widthMm, startRad, sweepRad);
        Arc inner = new(Point.Origin, innerMm, startRad + sweepRad, -sweepRad);
        return new([outer, new Segment(outer.End, inner.Start), inner, new Segment(inner.End, outer.Start)]);
    }

    /// <summary>Closed paths that may cross themselves.</summary>
    internal static readonly Gen<Contour> Stars =
        Gen.Select(Points, AngleRad, Gen.Select(RadiusMm, Gen.OneOf(0.0, 0.0, 0.2, -0.2, 0.4142, -0.3, 1)).Array[3, 9], Star);

    /// <summary>Chords miss where arcs cross at a hair's angle, so the exact check is asked as well.</summary>
    internal static bool IsSimple(Contour contour) => Flattened.Ring(contour).IsSimple && Soundness.Faults([contour]).Count == 0;

    /// <summary>Columns of width 1 side by side: notches and teeth of whole millimetres, which offsets by halves just close.</summary>
    private static Contour Steps(int[] heightsMm)
    {
        List<Point> corners = [new(0, 0), new(heightsMm.Length, 0)];
        for (int i = heightsMm.Length - 1; i >= 0; i--)
        {
            bool isStep = i == heightsMm.Length - 1 || heightsMm[i] != heightsMm[i + 1];
            if (isStep)
            {
                corners.Add(new(i + 1, heightsMm[i]));
            }

            if (i == 0 || heightsMm[i] != heightsMm[i - 1])
            {
                corners.Add(new(i, heightsMm[i]));
            }
        }

        return Contour.Polygon(corners);
    }

    private static Contour Star(Point centre, double fromRad, (double RadiusMm, double Bulge)[] corners)
    {
        Point At(int i) => centre + Vector.Polar(corners[i % corners.Length].RadiusMm, fromRad + (i * Angles.TurnRad / corners.Length));
        return new(corners.Select((c, i) => c.Bulge == 0
            ? (Piece)new Segment(At(i), At(i + 1))
            : Arc.FromBulge(At(i), At(i + 1), c.Bulge)));
    }

    private static Outline WithFittingHoles(Contour outer, Contour[] holes)
    {
        List<Contour> fitting = [];
        foreach (Contour hole in holes)
        {
            Outline tried = new(outer, [.. fitting, hole]);
            if (Flattened.Polygon(tried).IsValid && Soundness.Faults(tried).Count == 0 && tried.Pieces.All(p => p.Length > 0.01))
            {
                fitting.Add(hole);
            }
        }

        return new(outer, fitting);
    }
}
