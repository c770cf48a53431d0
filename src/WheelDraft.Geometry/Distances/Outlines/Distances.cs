namespace WheelDraft.Geometry;

/// <summary>Least distances between points, pieces and outlines, with the two points where they lie.</summary>
/// <remarks>Every answer is the least over a closed list of candidates (ends, common normals, crossings), so nothing is sampled.
/// Accuracy: 1e-14 times the largest coordinate or radius involved, so 1e-11 mm on parts up to a metre.</remarks>
public static class Distances
{
    /// <summary>From a point to a piece.</summary>
    /// <remarks>From the centre of an arc, where all its points are equally near, to one of its ends.</remarks>
    public static Nearest Between(Point point, Piece piece) => PieceDistances.Between(point, piece);

    /// <summary>Between two pieces; 0 where they touch or cross.</summary>
    public static Nearest Between(Piece first, Piece second) => PieceDistances.Between(first, second);

    /// <summary>Between two filled shapes; 0 where they touch, overlap or one lies in the other's material.</summary>
    /// <remarks>A shape in a hole of the other one is as far away as the edge of the hole. Costs about n log n the first
    /// time a shape is asked, less after; the accuracy is that of pieces.</remarks>
    public static Nearest Between(Outline first, Outline second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);

        // Edges that do not meet: either shape lies whole in the other's material or they have nothing in common.
        if (first.Bounds.Overlaps(second.Bounds))
        {
            Point ofFirst = first.Outer.Pieces[0].Start;
            Point ofSecond = second.Outer.Pieces[0].Start;
            if (second.Edges().Winding(ofFirst) > 0)
            {
                return new(0, ofFirst, ofFirst);
            }

            if (first.Edges().Winding(ofSecond) > 0)
            {
                return new(0, ofSecond, ofSecond);
            }
        }

        return first.Edges().Nearest(second.Edges());
    }

    /// <summary>From a point to a filled shape; 0 where it contains the point.</summary>
    public static Nearest Between(Point point, Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return outline.Edges().Winding(point) > 0 ? new(0, point, point) : outline.Edges().Nearest(point);
    }

    /// <summary>From a point to the edge of a shape, whether the point lies inside or outside.</summary>
    public static Nearest ToEdge(Point point, Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return outline.Edges().Nearest(point);
    }

    /// <summary>Least and greatest distance of a piece from a point; exactly the radius for an arc about it.</summary>
    public static RadialInterval Radii(Piece piece, Point about)
    {
        ArgumentNullException.ThrowIfNull(piece);
        if (piece is Arc arc && arc.Centre == about)
        {
            return new(arc.RadiusMm, arc.RadiusMm, arc.Start, arc.Start);
        }

        Point least = piece.NearestTo(about);
        Point greatest = FarthestFrom(about, piece);
        return new(about.DistanceTo(least), about.DistanceTo(greatest), least, greatest);
    }

    /// <summary>Least and greatest distance of a filled shape from a point; the least is 0 where it contains the point.</summary>
    public static RadialInterval Radii(Outline outline, Point about)
    {
        ArgumentNullException.ThrowIfNull(outline);
        RadialInterval all = new(double.PositiveInfinity, 0, about, about);
        foreach (Piece piece in outline.Pieces)
        {
            RadialInterval one = Radii(piece, about);
            all = one.LeastMm < all.LeastMm ? all with { LeastMm = one.LeastMm, AtLeast = one.AtLeast } : all;
            all = one.GreatestMm > all.GreatestMm ? all with { GreatestMm = one.GreatestMm, AtGreatest = one.AtGreatest } : all;
        }

        return outline.Winding(about) > 0 ? all with { LeastMm = 0, AtLeast = about } : all;
    }

    private static Point FarthestFrom(Point about, Piece piece)
    {
        Point end = about.DistanceTo(piece.End) > about.DistanceTo(piece.Start) ? piece.End : piece.Start;
        if (piece is Arc arc)
        {
            Vector outward = arc.Centre - about;
            if (outward.Length > 0 && arc.Faces(outward))
            {
                return arc.Centre + (outward.Unit() * arc.RadiusMm);
            }
        }

        return end;
    }
}
