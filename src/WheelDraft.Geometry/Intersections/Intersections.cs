namespace WheelDraft.Geometry;

/// <summary>Where pieces meet: crossings, touches and common stretches distinguished.</summary>
/// <remarks>This folder finds meetings of pieces and of contours; what they mean is the caller's business.
/// Pieces within the tolerance of each other meet: an end that lies on the other piece, a line tangent to an arc. Common
/// points are exact to 1e-12 mm for crossings at an angle α, divided by α for shallow ones.</remarks>
public static class Intersections
{
    /// <summary>Where two pieces meet.</summary>
    /// <param name="first">First piece.</param>
    /// <param name="second">Second piece.</param>
    /// <param name="toleranceMm">How near counts as touching, mm, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not above 0 and finite.</exception>
    public static Meeting Of(Piece first, Piece second, double toleranceMm = Tolerances.TouchMm)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (!(toleranceMm > 0) || !double.IsFinite(toleranceMm))
        {
            throw new ArgumentOutOfRangeException(nameof(toleranceMm), toleranceMm, "A tolerance is above 0.");
        }

        if (AreApart(first, second, toleranceMm) || !first.Bounds.Grown(toleranceMm).Overlaps(second.Bounds))
        {
            return Meeting.None;
        }

        List<Candidate> candidates = Ends(first, second, toleranceMm);
        foreach (Point at in Inner(first, second, toleranceMm))
        {
            candidates.Add(new(new(at, first.ShareNearest(at), second.ShareNearest(at)), false));
        }

        return candidates.Count == 0 ? Meeting.None : Sorted(first, second, candidates, toleranceMm);
    }

    /// <summary>Whole lines and circles that do not meet: the cheap answer for most pairs whose bounds overlap.</summary>
    private static bool AreApart(Piece first, Piece second, double tolerance)
    {
        // End points of an arc may lie off its circle by as much as contours may gape.
        double slack = tolerance + (2 * Tolerances.JoinMm);
        if (first is Arc a && second is Arc b)
        {
            double apart = a.Centre.DistanceTo(b.Centre);
            return apart > a.RadiusMm + b.RadiusMm + slack || apart < Math.Abs(a.RadiusMm - b.RadiusMm) - slack;
        }

        (Piece straight, Piece other) = first is Segment ? (first, second) : (second, first);
        if (straight is Segment line && other is Arc arc)
        {
            double reach = arc.RadiusMm - slack;
            return Math.Abs((arc.Centre - line.Start).Cross(line.Direction)) > arc.RadiusMm + slack
                || (line.Start.DistanceTo(arc.Centre) < reach && line.End.DistanceTo(arc.Centre) < reach);
        }

        return false;
    }

    private static List<Candidate> Ends(Piece first, Piece second, double tolerance)
    {
        List<Candidate> ends = [];
        Of(first.Start, 0, second, true);
        Of(first.End, 1, second, true);
        Of(second.Start, 0, first, false);
        Of(second.End, 1, first, false);
        return ends;

        void Of(Point end, double share, Piece other, bool ofFirst)
        {
            double otherShare = other.ShareNearest(end);
            if (end.DistanceTo(other.PointAt(otherShare)) <= tolerance)
            {
                ends.Add(new(ofFirst ? new(end, share, otherShare) : new(end, otherShare, share), true));
            }
        }
    }

    private static List<Point> Inner(Piece first, Piece second, double tolerance) => (first, second) switch
    {
        (Segment a, Segment b) => CommonPoints.Of(a, b),
        (Segment a, Arc b) => Inner(a, b, tolerance),
        (Arc a, Segment b) => Inner(b, a, tolerance),
        (Arc a, Arc b) => Inner(a, b, tolerance),
        _ => throw new NotSupportedException("A piece is a segment or an arc."),
    };

    private static List<Point> Inner(Segment a, Arc b, double tolerance)
    {
        double height = Math.Abs((b.Centre - a.Start).Cross(a.Direction));
        if (Math.Abs(height - b.RadiusMm) > tolerance)
        {
            return CommonPoints.Of(a, b);
        }

        // Tangent: one touch at the foot, not two crossings that rounding may or may not find.
        double along = (b.Centre - a.Start).Dot(a.Direction);
        Point foot = a.Start + (a.Direction * along);
        return along >= 0 && along <= a.Length && b.Faces(foot - b.Centre) ? [foot] : [];
    }

    private static List<Point> Inner(Arc a, Arc b, double tolerance)
    {
        Vector centres = b.Centre - a.Centre;
        double apart = centres.Length;
        double unlike = a.RadiusMm - b.RadiusMm;
        if (apart + Math.Abs(unlike) <= tolerance)
        {
            return [];
        }

        bool outside = Math.Abs(apart - a.RadiusMm - b.RadiusMm) <= tolerance;
        bool inside = Math.Abs(apart - Math.Abs(unlike)) <= tolerance;
        if (!(apart > 0) || !(outside || inside))
        {
            return CommonPoints.Of(a, b);
        }

        Vector along = centres / apart;
        Point touch = outside || unlike > 0
            ? a.Centre + (along * a.RadiusMm)
            : b.Centre - (along * b.RadiusMm);
        return a.Faces(touch - a.Centre) && b.Faces(touch - b.Centre) ? [touch] : [];
    }

    private static Meeting Sorted(Piece first, Piece second, List<Candidate> candidates, double tolerance)
    {
        candidates = [.. candidates.OrderBy(c => c.Common.ShareOnFirst).ThenBy(c => c.IsEnd ? 0 : 1)];
        List<CommonPoint> points = [];
        List<CommonStretch> stretches = [];
        Candidate last = candidates[0];
        bool inStretch = false;
        foreach (Candidate next in candidates.Skip(1))
        {
            Point middle = first.PointAt((last.Common.ShareOnFirst + next.Common.ShareOnFirst) / 2);
            bool onePlace = AreOne(first, second, (last.Common, next.Common), tolerance);
            bool together = onePlace || middle.DistanceTo(second.NearestTo(middle)) <= tolerance;
            if (together && (onePlace || !last.IsEnd || !next.IsEnd))
            {
                last = last.IsEnd ? last : next;
                continue;
            }

            if (together)
            {
                stretches.Add(StretchOf(first, second, last.Common, next.Common));
            }
            else if (!inStretch)
            {
                points.Add(last.Common);
            }

            inStretch = together;
            last = next;
        }

        if (!inStretch)
        {
            points.Add(last.Common);
        }

        return OnceAtSeams(first, second, new(points, stretches));
    }

    /// <summary>The meeting without points that repeat a place from the other end of a closed piece.</summary>
    /// <remarks>The start of a whole circle is its end as well, and that of an arc which closes except for a gap that counts as none
    /// (<see cref="Tolerances.JoinMm"/>) is so too: what touches there touches once, and where a stretch ends there is no point
    /// as well. The first along the first piece stays.</remarks>
    private static Meeting OnceAtSeams(Piece first, Piece second, Meeting all)
    {
        List<CommonPoint> known = [.. all.Stretches.SelectMany(s => new[] { s.From, s.To })];
        List<CommonPoint> once = [];
        foreach (CommonPoint next in all.Points)
        {
            if (!known.Exists(p => AreSeam(p, next, Math.Max(AlongFirst(first, p, next), AlongSecond(second, p, next)))))
            {
                known.Add(next);
                once.Add(next);
            }
        }

        return all with { Points = once };
    }

    /// <summary>Whether two points are one place to which a piece comes twice: its two ends meet there.</summary>
    private static bool AreSeam(CommonPoint a, CommonPoint b, double alongMm) =>
        alongMm > 2 * Tolerances.JoinMm && a.At.DistanceTo(b.At) <= Tolerances.JoinMm;

    private static double AlongFirst(Piece first, CommonPoint a, CommonPoint b) => Math.Abs(b.ShareOnFirst - a.ShareOnFirst) * first.Length;

    private static double AlongSecond(Piece second, CommonPoint a, CommonPoint b) => Math.Abs(b.ShareOnSecond - a.ShareOnSecond) * second.Length;

    /// <summary>Whether two neighbours along the first piece are one place: within twice the tolerance along either piece, so that
    /// rounding does not give a stretch in one order of the pieces and a point in the other; or at the seam of the second.</summary>
    private static bool AreOne(Piece first, Piece second, (CommonPoint Last, CommonPoint Next) pair, double tolerance)
    {
        double onFirst = AlongFirst(first, pair.Last, pair.Next);
        double onSecond = AlongSecond(second, pair.Last, pair.Next);
        return onFirst <= 2 * tolerance
            || (onFirst <= Tolerances.JoinMm && (onSecond <= 2 * tolerance || AreSeam(pair.Last, pair.Next, onSecond)));
    }

    private static CommonStretch StretchOf(Piece first, Piece second, CommonPoint begin, CommonPoint finish)
    {
        double middle = (begin.ShareOnFirst + finish.ShareOnFirst) / 2;
        double other = second.ShareNearest(first.PointAt(middle));
        bool sameWay = first.TangentAt(middle).Dot(second.TangentAt(other)) > 0;

        // The point where a whole circle starts is its end as well: take the share on the right side of the middle.
        double before = begin.ShareOnSecond;
        double after = finish.ShareOnSecond;
        if (sameWay)
        {
            before = before > other ? 0 : before;
            after = after < other ? 1 : after;
        }
        else
        {
            before = before < other ? 1 : before;
            after = after > other ? 0 : after;
        }

        return new(begin with { ShareOnSecond = before }, finish with { ShareOnSecond = after });
    }

    private readonly record struct Candidate(CommonPoint Common, bool IsEnd);
}
