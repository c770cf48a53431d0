namespace WheelDraft.Geometry;

/// <summary>A common normal of two features through the region, or a stretch of equal ones.</summary>
/// <param name="WidthMm">Distance of the two along it, mm.</param>
/// <param name="First">The first feature, which gives the direction of the normal at a middle.</param>
/// <param name="Middle">The point midway; one of them where there is a stretch.</param>
/// <param name="Normal">Direction from the first to the second feature there; not used where there is a stretch on an arc.</param>
/// <param name="Midway">The points midway along a stretch; nothing for a single normal.</param>
internal sealed record Facing(double WidthMm, Feature First, Point Middle, Vector Normal, Piece? Midway)
{
    // Below this two features touch, mm; the checks of contours report that.
    private const double LeastMm = Tolerances.TouchMm;

    // Lines that leave each other by less are parallel: on a side of a metre that is a micrometre.
    private const double ParallelRad = 1e-9;

    /// <summary>The two ends of the normal through a middle.</summary>
    internal Nearest At(Point middle)
    {
        Vector normal = Normal;
        if (Midway is Arc)
        {
            Vector outward = (middle - First.Centre).Unit();

            // Seen from the first feature's centre the middle lies before or beyond it.
            double radius = First.RadiusMm - (First.Inward * WidthMm / 2);
            normal = (radius >= 0 ? outward : -outward) * -First.Inward;
        }

        return new(WidthMm, middle - (normal * (WidthMm / 2)), middle + (normal * (WidthMm / 2)));
    }

    /// <summary>All common normals of two features.</summary>
    internal static IEnumerable<Facing> Between(Feature a, Feature b) => (a.Line, b.Line) switch
    {
        (Segment first, Segment second) => Only(OfLines(a, first, second)),
        (Segment line, null) => Only(OfLineAndRound(a, line, b)),
        (null, Segment line) => Only(OfLineAndRound(b, line, a)),
        _ => OfRounds(a, b),
    };

    private static IEnumerable<Facing> Only(Facing? facing) => facing is null ? [] : [facing];

    private static Facing? OfLines(Feature feature, Segment a, Segment b)
    {
        Vector along = a.Direction;
        if (Math.Abs(along.Cross(b.Direction)) > ParallelRad || along.Dot(b.Direction) > 0)
        {
            return null;
        }

        double from = Math.Max(0, (b.End - a.Start).Dot(along));
        double to = Math.Min(a.Length, (b.Start - a.Start).Dot(along));
        if (to < from - Tolerances.TouchMm)
        {
            return null;
        }

        Vector normal = along.Left;
        double width = Math.Min(Height(from), Height(to));
        Point begin = a.Start + (along * from) + (normal * (width / 2));
        Point end = a.Start + (along * to) + (normal * (width / 2));
        return width <= LeastMm ? null
            : new(width, feature, begin.Towards(end, 0.5), normal, to - from > Tolerances.TouchMm ? new Segment(begin, end) : null);

        double Height(double at)
        {
            Point foot = a.Start + (along * at);
            return (b.Start.Towards(b.End, Math.Clamp((foot - b.Start).Dot(b.Direction) / b.Length, 0, 1)) - foot).Dot(normal);
        }
    }

    private static Facing? OfLineAndRound(Feature feature, Segment line, Feature round)
    {
        Vector normal = line.Direction.Left;
        double along = (round.Centre - line.Start).Dot(line.Direction);
        double width = (round.Centre - line.Start).Dot(normal) + (round.Inward * round.RadiusMm);
        if (width <= LeastMm || along < -Tolerances.TouchMm || along > line.Length + Tolerances.TouchMm || !round.Faces(normal * round.Inward))
        {
            return null;
        }

        return new(width, feature, line.Start + (line.Direction * along) + (normal * (width / 2)), normal, null);
    }

    private static IEnumerable<Facing> OfRounds(Feature a, Feature b)
    {
        Vector centres = b.Centre - a.Centre;
        double apart = centres.Length;
        return apart <= Tolerances.TouchMm
            ? OfConcentric(a, b)
            : Only(OfRounds(a, b, centres / apart, apart)).Concat(Only(OfRounds(a, b, centres / -apart, -apart)));
    }

    /// <summary>The normal that leaves the first circle at <paramref name="outward"/> from its centre, along the line of centres.</summary>
    private static Facing? OfRounds(Feature a, Feature b, Vector outward, double apart)
    {
        // The normal runs along −Inward·outward at the first end and against that of the other feature at its end.
        double width = (a.Inward * a.RadiusMm) + (b.Inward * b.RadiusMm) - (a.Inward * apart);
        if (width <= LeastMm || !a.Faces(outward) || !b.Faces(outward * (-a.Inward * b.Inward)))
        {
            return null;
        }

        Vector normal = outward * -a.Inward;
        return new(width, a, a.Centre + (outward * a.RadiusMm) + (normal * (width / 2)), normal, null);
    }

    private static IEnumerable<Facing> OfConcentric(Feature a, Feature b)
    {
        double width = (a.Inward * a.RadiusMm) + (b.Inward * b.RadiusMm);
        CircleArc opposite = a.Inward == b.Inward ? b.Span.Turned(Math.PI) : b.Span;
        if (width <= LeastMm)
        {
            yield break;
        }

        double radius = a.RadiusMm - (a.Inward * width / 2);
        foreach (CircleArc stretch in a.Span.Intersect(opposite))
        {
            Vector outward = Vector.Polar(1, stretch.MiddleRad);
            bool isArc = Math.Abs(radius) * stretch.SweepRad > Tolerances.TouchMm;
            double start = radius >= 0 ? stretch.StartRad : stretch.StartRad + Math.PI;
            Arc? midway = isArc ? new Arc(a.Centre, Math.Abs(radius), start, stretch.SweepRad) : null;
            yield return new(width, a, a.Centre + (outward * radius), outward * -a.Inward, midway);
        }
    }
}
