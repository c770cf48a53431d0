namespace WheelDraft.Geometry;

/// <summary>Least distances between points and pieces, with the two points where they lie.</summary>
/// <remarks>This folder measures; it neither judges nor changes shapes. Every answer is the least over a closed list of
/// candidates (ends, common normals, crossings), so nothing is sampled. Accuracy: 1e-14 times the largest coordinate or
/// radius involved, so 1e-11 mm on parts up to a metre.</remarks>
internal static class PieceDistances
{
    /// <summary>From a point to a piece.</summary>
    /// <remarks>From the centre of an arc, where all its points are equally near, to one of its ends.</remarks>
    public static Nearest Between(Point point, Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Point on = piece.NearestTo(point);
        return new(point.DistanceTo(on), point, on);
    }

    /// <summary>From one piece to another; 0, at one of the common points, where they touch or cross.</summary>
    public static Nearest Between(Piece first, Piece second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return (first, second) switch
        {
            (Segment a, Segment b) => OfSegments(a, b),
            (Segment a, Arc b) => OfSegmentAndArc(a, b),
            (Arc a, Segment b) => OfSegmentAndArc(b, a).Swapped,
            (Arc a, Arc b) => OfArcs(a, b),
            _ => throw new NotSupportedException("A piece is a segment or an arc."),
        };
    }

    private static Nearest OfSegments(Segment a, Segment b) =>
        CommonPoints.Of(a, b) is [Point at, ..] ? new(0, at, at) : FromEnds(a, b);

    private static Nearest OfSegmentAndArc(Segment a, Arc b)
    {
        if (CommonPoints.Of(a, b) is [Point at, ..])
        {
            return new(0, at, at);
        }

        // The common normal passes through the centre; it is a minimum only where the line passes outside the circle,
        // and then it beats nothing that an end point would not show.
        Nearest best = FromEnds(a, b);
        Point foot = a.NearestTo(b.Centre);
        return Better(best, foot, b.NearestTo(foot));
    }

    private static Nearest OfArcs(Arc a, Arc b)
    {
        if (CommonPoints.Of(a, b) is [Point at, ..])
        {
            return new(0, at, at);
        }

        // Common normals lie on the line of centres. Concentric arcs have one everywhere or nowhere, and then an end point shows it.
        Nearest best = FromEnds(a, b);
        Vector centres = b.Centre - a.Centre;
        if (centres.Length > 0)
        {
            Vector along = centres.Unit();
            best = OnNormal(OnNormal(best, a, along, b), a, -along, b);
        }

        return best;
    }

    private static Nearest OnNormal(Nearest best, Arc a, Vector along, Arc b)
    {
        if (!a.Faces(along))
        {
            return best;
        }

        Point on = a.Centre + (along * a.RadiusMm);
        return Better(best, on, b.NearestTo(on));
    }

    private static Nearest FromEnds(Piece a, Piece b)
    {
        Nearest best = Between(a.Start, b);
        best = Better(best, a.End, b.NearestTo(a.End));
        best = Better(best, a.NearestTo(b.Start), b.Start);
        return Better(best, a.NearestTo(b.End), b.End);
    }

    private static Nearest Better(Nearest best, Point onFirst, Point onSecond)
    {
        double distance = onFirst.DistanceTo(onSecond);
        return distance < best.DistanceMm ? new(distance, onFirst, onSecond) : best;
    }
}
