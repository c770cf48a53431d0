using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>The shape along a centre line with a width: a wall, a slot, a wire.</summary>
public static class Band
{
    /// <summary>The band, square at its ends and round on the outside of its bends.</summary>
    /// <remarks>Nothing reaches beyond the ends of the centre line, and a bend is rounded as a cutter of that width leaves it: of the shapes
    /// that a centre line and a width can mean this is the least, so a path round it is never taken too long.</remarks>
    /// <param name="path">Centre line, at least two points; neighbours differ.</param>
    /// <param name="widthMm">Width, above 0.</param>
    /// <exception cref="ArgumentException">Too few points, or a stretch is too short for the bend at its end: the message says which.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The width is not above 0.</exception>
    public static Outline Along(IReadOnlyList<Point> path, double widthMm)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (!(widthMm > 0) || !double.IsFinite(widthMm))
        {
            throw new ArgumentOutOfRangeException(nameof(widthMm), widthMm, "A band needs a width above 0.");
        }

        if (path.Count < 2)
        {
            throw new ArgumentException("A centre line needs at least two points.", nameof(path));
        }

        List<Piece> pieces = Side(path, widthMm / 2);
        List<Piece> back = Side([.. path.Reverse()], widthMm / 2);
        Piece end = new Segment(pieces[^1].End, back[0].Start);
        Piece start = new Segment(back[^1].End, pieces[0].Start);
        return new Outline(new Contour([.. pieces, end, .. back, start]));
    }

    /// <summary>The right-hand side of the band, in the direction of the path.</summary>
    private static List<Piece> Side(IReadOnlyList<Point> path, double halfMm)
    {
        List<Piece> pieces = [];
        Point from = path[0] - (Direction(path, 0).Left * halfMm);
        for (int i = 0; i + 1 < path.Count; i++)
        {
            Vector here = Direction(path, i);
            Point to = path[i + 1] - (here.Left * halfMm);
            Vector next = i + 2 < path.Count ? Direction(path, i + 1) : here;
            double turn = Math.Atan2(here.Cross(next), here.Dot(next));
            bool bends = Math.Abs(turn) > 1e-9;
            if (bends && turn < 0)
            {
                // The inside of the bend: the two sides meet before the corner.
                to -= here * (halfMm * Math.Tan(-turn / 2));
            }

            if (!((to - from).Dot(here) > Tolerances.ShortestPieceMm))
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The stretch from ({path[i].X}, {path[i].Y}) to ({path[i + 1].X}, {path[i + 1].Y}) mm is too short for a width of {2 * halfMm} mm and the bend at its end; make it longer or the bend blunter."), nameof(path));
            }

            pieces.Add(new Segment(from, to));
            from = to;
            if (bends && turn > 0)
            {
                Point after = path[i + 1] - (next.Left * halfMm);
                pieces.Add(Arc.About(path[i + 1], to, after, Turning.Anticlockwise));
                from = after;
            }
            else if (bends)
            {
                from = to;
            }
        }

        return pieces;
    }

    private static Vector Direction(IReadOnlyList<Point> path, int i) => (path[i + 1] - path[i]).Unit();
}
