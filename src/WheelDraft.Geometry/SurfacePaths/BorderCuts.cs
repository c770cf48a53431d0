namespace WheelDraft.Geometry;

/// <summary>Where a leg meets borders, and on which side of them it runs.</summary>
/// <remarks>Cuts may be too many (a touch, a shared end) but never too few: between two cuts a leg keeps to one side.</remarks>
internal static class BorderCuts
{
    /// <summary>Adds the shares of a leg at which it meets a piece.</summary>
    internal static void Add(Piece leg, Piece border, List<double> shares)
    {
        switch (leg, border)
        {
            case (Segment a, Segment b):
                AddLines(a, b, shares);
                break;
            case (Segment a, Arc b):
                foreach (double along in LineOnCircle(a.Start, a.Direction, b.Centre, b.RadiusMm))
                {
                    if (IsOnSpan(b, a.Start + (a.Direction * along)))
                    {
                        Keep(along / a.Length, a.Length, shares);
                    }
                }

                break;
            case (Arc a, Segment b):
                foreach (double along in LineOnCircle(b.Start, b.Direction, a.Centre, a.RadiusMm))
                {
                    if (along >= -Tolerances.TouchMm && along <= b.Length + Tolerances.TouchMm)
                    {
                        KeepOnArc(a, b.Start + (b.Direction * along), shares);
                    }
                }

                break;
            case (Arc a, Arc b):
                foreach (Point p in CircleOnCircle(a, b))
                {
                    if (IsOnSpan(b, p))
                    {
                        KeepOnArc(a, p, shares);
                    }
                }

                break;
            default:
                throw new NotSupportedException("A piece is a segment or an arc.");
        }
    }

    /// <summary>The nearest point of a piece to a point.</summary>
    internal static Point NearestOn(Piece piece, Point p)
    {
        if (piece is Segment s)
        {
            double along = Math.Clamp((p - s.Start).Dot(s.Direction), 0, s.Length);
            return s.PointAt(along / s.Length);
        }

        var arc = (Arc)piece;
        Vector out_ = p - arc.Centre;
        if (out_.Length == 0)
        {
            return arc.Start;
        }

        double ahead = Ahead(arc, out_.AngleRad);
        return ahead <= Math.Abs(arc.SweepRad)
            ? arc.Centre + (out_ * (arc.RadiusMm / out_.Length))
            : p.DistanceTo(arc.Start) <= p.DistanceTo(arc.End) ? arc.Start : arc.End;
    }

    /// <summary>How far along an arc a direction lies, radians from its start the way it runs, in [0, 2π).</summary>
    internal static double Ahead(Arc arc, double directionRad) =>
        Angles.InTurn(arc.SweepRad > 0 ? directionRad - arc.StartRad : arc.StartRad - directionRad);

    /// <summary>Whether a point on an arc's circle lies on the arc, its ends included.</summary>
    internal static bool IsOnSpan(Arc arc, Point p)
    {
        double ahead = Ahead(arc, (p - arc.Centre).AngleRad);
        double slack = Tolerances.TouchMm / arc.RadiusMm;
        return ahead <= Math.Abs(arc.SweepRad) + slack || ahead >= Angles.TurnRad - slack;
    }

    /// <summary>Which side of an outline a point lies on.</summary>
    internal static Side SideOf(Outline outline, Point p)
    {
        if (!outline.Bounds.Grown(SurfaceTolerances.OnBorderMm).Contains(p))
        {
            return Side.Outside;
        }

        double turns = 0;
        foreach (Contour contour in outline.Contours)
        {
            foreach (Piece piece in contour.Pieces)
            {
                if (NearestOn(piece, p).DistanceTo(p) <= SurfaceTolerances.OnBorderMm)
                {
                    return Side.Border;
                }

                turns += AngleSeen(piece, p);
            }
        }

        return Math.Abs(turns) > Math.PI ? Side.Inside : Side.Outside;
    }

    /// <summary>The signed angle under which a piece is seen from a point off it: summed over a closed path it counts windings.</summary>
    private static double AngleSeen(Piece piece, Point p)
    {
        Vector a = piece.Start - p;
        Vector b = piece.End - p;
        double chord = Math.Atan2(a.Cross(b), a.Dot(b));
        if (piece is not Arc arc || p.DistanceTo(arc.Centre) >= arc.RadiusMm)
        {
            return chord;
        }

        // Between chord and arc the arc is seen the other way round: one turn more or less.
        double side = (arc.End - arc.Start).Cross(p - arc.Start);
        bool whole = Math.Abs(arc.SweepRad) == Angles.TurnRad;
        return arc.SweepRad > 0
            ? chord + (whole || side < 0 ? Angles.TurnRad : 0)
            : chord - (whole || side > 0 ? Angles.TurnRad : 0);
    }

    private static void AddLines(Segment a, Segment b, List<double> shares)
    {
        double cross = a.Direction.Cross(b.Direction);
        if (Math.Abs(cross) < 1e-12)
        {
            // Parallel: only along one line do they meet, and then from end to end of the shorter.
            if (Math.Abs(a.Direction.Cross(b.Start - a.Start)) <= SurfaceTolerances.OnBorderMm)
            {
                Keep((b.Start - a.Start).Dot(a.Direction) / a.Length, a.Length, shares);
                Keep((b.End - a.Start).Dot(a.Direction) / a.Length, a.Length, shares);
            }

            return;
        }

        Vector between = b.Start - a.Start;
        double onB = between.Cross(a.Direction) / cross;
        if (onB >= -Tolerances.TouchMm && onB <= b.Length + Tolerances.TouchMm)
        {
            Keep(between.Cross(b.Direction) / cross / a.Length, a.Length, shares);
        }
    }

    private static void Keep(double share, double lengthMm, List<double> shares)
    {
        double slack = Tolerances.TouchMm / lengthMm;
        if (share >= -slack && share <= 1 + slack)
        {
            shares.Add(Math.Clamp(share, 0, 1));
        }
    }

    private static void KeepOnArc(Arc arc, Point p, List<double> shares)
    {
        if (IsOnSpan(arc, p))
        {
            shares.Add(Math.Clamp(Ahead(arc, (p - arc.Centre).AngleRad) / Math.Abs(arc.SweepRad), 0, 1));
        }
    }

    private static IEnumerable<double> LineOnCircle(Point start, Vector direction, Point centre, double radiusMm)
    {
        Vector to = centre - start;
        double middle = to.Dot(direction);
        double off = direction.Cross(to);
        double half2 = (radiusMm * radiusMm) - (off * off);
        if (half2 < -2 * radiusMm * Tolerances.TouchMm)
        {
            yield break;
        }

        double half = Math.Sqrt(Math.Max(0, half2));
        yield return middle - half;
        yield return middle + half;
    }

    private static IEnumerable<Point> CircleOnCircle(Arc a, Arc b)
    {
        Vector between = b.Centre - a.Centre;
        double d = between.Length;
        if (d <= SurfaceTolerances.OnBorderMm)
        {
            // One circle, or two that never meet: what they share runs from end to end.
            if (Math.Abs(a.RadiusMm - b.RadiusMm) <= SurfaceTolerances.OnBorderMm)
            {
                yield return b.Start;
                yield return b.End;
            }

            yield break;
        }

        double along = ((d * d) + (a.RadiusMm * a.RadiusMm) - (b.RadiusMm * b.RadiusMm)) / (2 * d);
        double off2 = (a.RadiusMm * a.RadiusMm) - (along * along);
        if (off2 < -2 * a.RadiusMm * Tolerances.TouchMm)
        {
            yield break;
        }

        double off = Math.Sqrt(Math.Max(0, off2));
        Vector unit = between / d;
        yield return a.Centre + (unit * along) + (unit.Left * off);
        yield return a.Centre + (unit * along) - (unit.Left * off);
    }
}

/// <summary>Where a point lies to an outline.</summary>
internal enum Side
{
    /// <summary>Off the material.</summary>
    Outside,

    /// <summary>On the border, within its tolerance.</summary>
    Border,

    /// <summary>In the material.</summary>
    Inside,
}
