namespace WheelDraft.Geometry;

/// <summary>Corners of contours, and rounding them with arcs tangent to both sides.</summary>
/// <remarks>Lines stay lines and arcs stay arcs; the fillet's centre is where the two sides, each moved aside by the radius,
/// meet, so the tangent points are exact to rounding (1e-12 mm; less at corners sharper than a degree).</remarks>
public static class Fillets
{
    /// <summary>The places where a contour turns, in order; tangent joints are left out.</summary>
    public static IReadOnlyList<Corner> Corners(this Contour contour)
    {
        ArgumentNullException.ThrowIfNull(contour);
        return [.. AllJoints(contour).Where(c => !c.IsSmooth)];
    }

    /// <summary>Rounds the chosen corners with one radius.</summary>
    /// <param name="contour">The contour.</param>
    /// <param name="radiusMm">Radius, mm; 0 leaves it as it is.</param>
    /// <param name="which">Which corners, with the material on the left of the travel.</param>
    /// <exception cref="FilletException">A radius does not fit.</exception>
    public static Contour Filleted(this Contour contour, double radiusMm, Corners which) =>
        contour.Filleted(c => Chosen(c, which) ? radiusMm : 0);

    /// <summary>Rounds the chosen corners of a shape, outside and in its holes, with one radius.</summary>
    /// <param name="outline">The shape.</param>
    /// <param name="radiusMm">Radius, mm; 0 leaves it as it is.</param>
    /// <param name="which">Which corners of the material.</param>
    /// <exception cref="FilletException">A radius does not fit.</exception>
    public static Outline Filleted(this Outline outline, double radiusMm, Corners which)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return new(outline.Outer.Filleted(radiusMm, which), outline.Holes.Select(h => h.Filleted(radiusMm, which)));
    }

    /// <summary>Rounds each corner with a radius of its own.</summary>
    /// <param name="contour">The contour.</param>
    /// <param name="radiusMmOf">The radius at a corner, mm; 0 leaves the corner as it is.</param>
    /// <exception cref="FilletException">A radius does not fit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A radius is negative or not finite.</exception>
    public static Contour Filleted(this Contour contour, Func<Corner, double> radiusMmOf)
    {
        ArgumentNullException.ThrowIfNull(contour);
        ArgumentNullException.ThrowIfNull(radiusMmOf);
        IReadOnlyList<Piece> pieces = contour.Pieces;
        Round?[] rounds = new Round?[pieces.Count];
        bool any = false;
        foreach (Corner corner in contour.Corners())
        {
            double radius = radiusMmOf(corner);
            if (!(radius >= 0) || !double.IsFinite(radius))
            {
                throw new ArgumentOutOfRangeException(nameof(radiusMmOf), radius, "A fillet's radius is 0 or above.");
            }

            if (radius > 0)
            {
                Piece before = pieces[(corner.Number + pieces.Count - 1) % pieces.Count];
                rounds[corner.Number] = Rounding(corner, radius, before, pieces[corner.Number]);
                any = true;
            }
        }

        return any ? Assembled(pieces, rounds) : contour;
    }

    private static bool Chosen(Corner corner, Corners which) => which switch
    {
        Geometry.Corners.Convex => corner.IsConvex,
        Geometry.Corners.ReEntrant => corner.IsReEntrant,
        _ => true,
    };

    private static IEnumerable<Corner> AllJoints(Contour contour)
    {
        for (int i = 0; i < contour.Pieces.Count; i++)
        {
            Piece before = contour.Pieces[(i + contour.Pieces.Count - 1) % contour.Pieces.Count];
            Piece after = contour.Pieces[i];
            yield return Corner.Between(before, after, i);
        }
    }

    private static Contour Assembled(IReadOnlyList<Piece> pieces, Round?[] rounds)
    {
        List<Piece> all = [];
        for (int i = 0; i < pieces.Count; i++)
        {
            Piece piece = pieces[i];
            Round? first = rounds[i];
            Round? last = rounds[(i + 1) % pieces.Count];
            double from = first?.ShareAfter ?? 0;
            double to = last?.ShareBefore ?? 1;
            double left = (to - from) * piece.Length;
            if (left < -Tolerances.ShortestPieceMm)
            {
                Round fault = first ?? last!.Value;
                throw new FilletException(fault.Arc.RadiusMm, fault.At, (from + 1 - to) * piece.Length, piece.Length);
            }

            if (first is Round round)
            {
                all.Add(round.Arc);
            }

            // What two fillets leave of a side may be nothing: they meet there.
            if (left > Tolerances.ShortestPieceMm)
            {
                all.Add(piece.Part(from, to).Between(first?.Arc.End ?? piece.Start, last?.Arc.Start ?? piece.End));
            }
        }

        return new(all);
    }

    private static Round? Rounding(Corner corner, double radius, Piece before, Piece after)
    {
        double aside = corner.TurnRad > 0 ? radius : -radius;
        Tangent? best = null;
        foreach (Point centre in MovedAside.CommonPoints(before, after, aside))
        {
            Tangent found = new(centre, MovedAside.TakenFromEnd(before, centre), MovedAside.TakenFromStart(after, centre));
            if (found.IsAhead && (best is not Tangent other || found.IsBetterThan(other, before, after)))
            {
                best = found;
            }
        }

        if (best is not Tangent tangent)
        {
            throw new FilletException(radius, corner.At);
        }

        if (!tangent.Fits(before, after))
        {
            bool first = tangent.BeforeMm > before.Length;
            throw new FilletException(radius, corner.At, first ? tangent.BeforeMm : tangent.AfterMm, first ? before.Length : after.Length);
        }

        double shareBefore = Math.Clamp(1 - (tangent.BeforeMm / before.Length), 0, 1);
        double shareAfter = Math.Clamp(tangent.AfterMm / after.Length, 0, 1);
        Point start = before.PointAt(shareBefore);
        Point end = after.PointAt(shareAfter);
        return start.DistanceTo(end) <= Tolerances.JoinMm
            ? null
            : new(corner.At, shareBefore, shareAfter, Arc.About(tangent.Centre, radius, start, end, aside > 0 ? Turning.Anticlockwise : Turning.Clockwise));
    }

    /// <summary>A circle that touches both sides, and what it takes of them.</summary>
    private readonly record struct Tangent(Point Centre, double BeforeMm, double AfterMm)
    {
        internal bool IsAhead => BeforeMm >= -Tolerances.ShortestPieceMm && AfterMm >= -Tolerances.ShortestPieceMm;

        internal bool Fits(Piece before, Piece after) =>
            BeforeMm <= before.Length + Tolerances.ShortestPieceMm && AfterMm <= after.Length + Tolerances.ShortestPieceMm;

        internal bool IsBetterThan(Tangent other, Piece before, Piece after) =>
            Fits(before, after) != other.Fits(before, after)
                ? Fits(before, after)
                : BeforeMm + AfterMm < other.BeforeMm + other.AfterMm;
    }

    private readonly record struct Round(Point At, double ShareBefore, double ShareAfter, Arc Arc);
}
