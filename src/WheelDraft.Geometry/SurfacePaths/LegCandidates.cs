namespace WheelDraft.Geometry;

/// <summary>The straight legs that a shortest path can have at a conductor: each is shortest among its neighbours.</summary>
internal static class LegCandidates
{
    /// <summary>Points of a conductor from which a straight leg to a fixed point can be shortest.</summary>
    internal static IEnumerable<Point> FeetFrom(SurfaceConductor conductor, Point to)
    {
        foreach (Point corner in conductor.Corners)
        {
            yield return corner;
        }

        foreach (Point foot in conductor.Pieces.SelectMany(p => FootInside(p, to)))
        {
            yield return foot;
        }
    }

    /// <summary>The points where straight legs from a point touch a circle.</summary>
    internal static IEnumerable<Point> TangentPoints(Point from, Point centre, double radiusMm)
    {
        Vector to = from - centre;
        double d = to.Length;
        if (d < radiusMm)
        {
            yield break;
        }

        double half = Math.Acos(Math.Min(1, radiusMm / d));
        yield return centre + Vector.Polar(radiusMm, to.AngleRad + half);
        yield return centre + Vector.Polar(radiusMm, to.AngleRad - half);
    }

    /// <summary>Legs from a conductor that leave it squarely and touch a circle: from foot to point of contact.</summary>
    internal static IEnumerable<(Point From, Point To)> SquareTangents(SurfaceConductor conductor, Arc arc)
    {
        foreach (Point corner in conductor.Corners)
        {
            foreach (Point touch in TangentPoints(corner, arc.Centre, arc.RadiusMm))
            {
                yield return (corner, touch);
            }
        }

        foreach (Piece piece in conductor.Pieces)
        {
            foreach ((Point, Point) leg in piece is Segment s ? FromSegment(s, arc) : FromArc((Arc)piece, arc))
            {
                yield return leg;
            }
        }
    }

    /// <summary>The points of contact of the lines that touch two circles.</summary>
    internal static IEnumerable<(Point OnFirst, Point OnSecond)> Bitangents(Arc a, Arc b)
    {
        Vector between = b.Centre - a.Centre;
        double d = between.Length;
        if (d <= SurfaceTolerances.OnBorderMm)
        {
            yield break;
        }

        foreach (int side in (int[])[1, -1])
        {
            foreach (int sense in (int[])[1, -1])
            {
                // sense 1: both circles on one side of the line; −1: the line runs between them.
                double cos = (a.RadiusMm - (sense * b.RadiusMm)) / d;
                if (Math.Abs(cos) <= 1)
                {
                    Vector normal = Vector.Polar(1, between.AngleRad + (side * Math.Acos(cos)));
                    yield return (a.Centre + (normal * a.RadiusMm), b.Centre + (normal * (sense * b.RadiusMm)));
                }
            }
        }
    }

    /// <summary>Straight legs between two conductors that can be shortest.</summary>
    /// <param name="a">The one.</param>
    /// <param name="b">The other.</param>
    /// <param name="withinMm">Legs longer than this may be left out, mm; the order of the others does not depend on it.</param>
    internal static IEnumerable<(Point From, Point To)> Direct(SurfaceConductor a, SurfaceConductor b, double withinMm)
    {
        Point[] cornersOfA = [.. a.Corners.Where(c => b.Bounds.DistanceTo(c) <= withinMm)], cornersOfB = [.. b.Corners.Where(c => a.Bounds.DistanceTo(c) <= withinMm)];
        int[] ofA = Near(a, b.Bounds, withinMm), ofB = Near(b, a.Bounds, withinMm);
        foreach (Point corner in cornersOfA)
        {
            foreach (Point other in cornersOfB)
            {
                yield return (corner, other);
            }

            foreach (Point foot in ofB.Where(i => b.PieceBounds[i].DistanceTo(corner) <= withinMm).Select(i => b.Pieces[i]).SelectMany(p => FootInside(p, corner)))
            {
                yield return (corner, foot);
            }
        }

        foreach (Point corner in cornersOfB)
        {
            foreach (Point foot in ofA.Where(i => a.PieceBounds[i].DistanceTo(corner) <= withinMm).Select(i => a.Pieces[i]).SelectMany(p => FootInside(p, corner)))
            {
                yield return (foot, corner);
            }
        }

        foreach (int p in ofA)
        {
            foreach (int q in ofB.Where(q => a.PieceBounds[p].DistanceTo(b.PieceBounds[q]) <= withinMm))
            {
                foreach ((Point, Point) leg in BetweenInsides(a.Pieces[p], b.Pieces[q]))
                {
                    yield return leg;
                }
            }
        }
    }

    private static int[] Near(SurfaceConductor conductor, Bounds place, double withinMm) =>
        [.. Enumerable.Range(0, conductor.Pieces.Count).Where(i => conductor.PieceBounds[i].DistanceTo(place) <= withinMm)];

    // The nearest point of a piece, where that is not one of its ends: those are corners.
    private static IEnumerable<Point> FootInside(Piece piece, Point from)
    {
        Point foot = BorderCuts.NearestOn(piece, from);
        return foot != piece.Start && foot != piece.End ? [foot] : [];
    }

    /// <summary>Legs square to both pieces, away from their ends.</summary>
    private static IEnumerable<(Point From, Point To)> BetweenInsides(Piece p, Piece q)
    {
        if (p is Arc a)
        {
            foreach (Point onQ in q is Arc b ? CommonNormal(a, b) : [BorderCuts.NearestOn(q, a.Centre)])
            {
                foreach (Point onP in Opposite(a, onQ))
                {
                    yield return (onP, onQ);
                }
            }
        }
        else if (q is Arc b)
        {
            Point onP = BorderCuts.NearestOn(p, b.Centre);
            foreach (Point onQ in Opposite(b, onP))
            {
                yield return (onP, onQ);
            }
        }
    }

    /// <summary>Points of the second arc on the line through both centres; for one centre, in the middle of what both cover.</summary>
    private static IEnumerable<Point> CommonNormal(Arc a, Arc b)
    {
        Vector between = a.Centre - b.Centre;
        if (between.Length > SurfaceTolerances.OnBorderMm)
        {
            return Opposite(b, a.Centre);
        }

        return a.Span.Intersect(b.Span).Select(common => b.Centre + Vector.Polar(b.RadiusMm, common.MiddleRad));
    }

    /// <summary>The points of an arc on the line through its centre and a point.</summary>
    private static IEnumerable<Point> Opposite(Arc arc, Point p)
    {
        Vector to = p - arc.Centre;
        if (to.Length > 0)
        {
            Vector radius = to * (arc.RadiusMm / to.Length);
            foreach (Point at in (Point[])[arc.Centre + radius, arc.Centre - radius])
            {
                if (BorderCuts.IsOnSpan(arc, at))
                {
                    yield return at;
                }
            }
        }
    }

    private static IEnumerable<(Point From, Point To)> FromSegment(Segment s, Arc arc)
    {
        foreach (double side in (double[])[1, -1])
        {
            Point touch = arc.Centre + (s.Direction * (side * arc.RadiusMm));
            double along = (touch - s.Start).Dot(s.Direction);
            if (along > 0 && along < s.Length)
            {
                yield return (s.Start + (s.Direction * along), touch);
            }
        }
    }

    private static IEnumerable<(Point From, Point To)> FromArc(Arc piece, Arc arc)
    {
        foreach (Point touch in TangentPoints(piece.Centre, arc.Centre, arc.RadiusMm))
        {
            foreach (Point from in Opposite(piece, touch))
            {
                yield return (from, touch);
            }
        }
    }
}
