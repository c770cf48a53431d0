namespace WheelDraft.Geometry;

/// <summary>Shapes moved outwards or inwards by a distance, as a cutter's path runs beside its part.</summary>
/// <remarks>Growing gives every point within the distance of the material, shrinking every point whose whole disc is
/// material (Minkowski sum and difference with a disc). The edge of the result lies on pieces moved aside and on arcs
/// round the corners; those are cut where they meet, the parts nearer to the source than the distance or inside it
/// (by winding number) are dropped, the rest is joined again. Lines and arcs stay lines and arcs, exact to 1e-11 mm,
/// joints to <see cref="Tolerances.JoinMm"/> where edges merely graze. After X. Chen and S. McMains, "Polygon Offsetting by Computing
/// Winding Numbers" (2005), with the distance test added and carried over to arcs.</remarks>
public static class Offsets
{
    // Ten joints wide: below, the arcs round corners are no longer than a joint. A nanometre is nothing to a cutter.
    private const double LeastMm = 10 * Tolerances.JoinMm;

    /// <summary>The shape with its material grown or shrunk.</summary>
    /// <param name="outline">The shape; its contours must neither cross themselves nor each other.</param>
    /// <param name="outwardMm">How far the edge moves out of the material, mm: positive grows it (the outer contour moves
    /// outwards, holes shrink), negative shrinks it; less than 1e-6 either way leaves it as it is.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not finite.</exception>
    /// <exception cref="InvalidOperationException">The pieces do not close again: the contours cross.</exception>
    public static OffsetResult Of(Outline outline, double outwardMm)
    {
        ArgumentNullException.ThrowIfNull(outline);
        if (!double.IsFinite(outwardMm))
        {
            throw new ArgumentOutOfRangeException(nameof(outwardMm), outwardMm, "An offset is a finite distance.");
        }

        if (Math.Abs(outwardMm) < LeastMm)
        {
            return new([outline], []);
        }

        // Shrinking the material is growing the void, whose contours run the other way.
        bool grows = outwardMm > 0;
        Contour[] source = [.. outline.Contours.Select(c => grows ? c : c.Reversed())];
        double distance = Math.Abs(outwardMm);
        List<RawPiece> raw = RawPiece.Of(source, distance);
        bool IsKept(Point p) =>
            outline.Edges().Nearest(p).DistanceMm >= distance - (2 * Tolerances.TouchMm)
            && outline.Edges().Winding(p) > 0 != grows;

        List<OffsetLoop> loops = OffsetLoops.Of(raw, IsKept);
        IEnumerable<Contour> contours = loops.Select(l => grows ? l.Contour : l.Contour.Reversed());
        return new(Nested([.. contours]), OffsetChanges.Of(source, grows, distance, loops));
    }

    /// <summary>Outer contours, each with the holes that lie in it.</summary>
    private static List<Outline> Nested(IReadOnlyList<Contour> contours)
    {
        Contour[] outers = [.. contours.Where(c => c.SignedAreaMm2 > 0).OrderByDescending(c => c.SignedAreaMm2)];
        List<Contour>[] holes = [.. outers.Select(_ => new List<Contour>())];
        foreach (Contour hole in contours.Where(c => c.SignedAreaMm2 < 0))
        {
            int owner = Array.FindLastIndex(outers, o => IsIn(hole, o));
            if (owner < 0)
            {
                throw new InvalidOperationException($"An offset hole at {hole.Pieces[0].Start} lies in no outline: the contours of the source cross.");
            }

            holes[owner].Add(hole);
        }

        return [.. outers.Select((o, i) => new Outline(o, holes[i]))];
    }

    private static bool IsIn(Contour hole, Contour outer)
    {
        // A hole may touch the contour in a point, and then that point decides nothing.
        foreach (Piece piece in hole.Pieces)
        {
            foreach (double share in (ReadOnlySpan<double>)[0.5, 0.2])
            {
                Whereabouts found = outer.Locate(piece.PointAt(share), Tolerances.JoinMm);
                if (found != Whereabouts.OnEdge)
                {
                    return found == Whereabouts.Inside;
                }
            }
        }

        return false;
    }
}
