namespace WheelDraft.Geometry;

/// <summary>Whole lines and circles moved aside: where a circle's centre lies that touches two of them.</summary>
internal static class MovedAside
{
    /// <summary>Where two pieces, prolonged and moved to their left by a signed distance, cross.</summary>
    internal static List<Point> CommonPoints(Piece first, Piece second, double leftMm) => (first, second) switch
    {
        (Segment a, Segment b) => OfLines(a, b, leftMm),
        (Segment a, Arc b) => OfLineAndCircle(a, b, leftMm),
        (Arc a, Segment b) => OfLineAndCircle(b, a, leftMm),
        (Arc a, Arc b) => OfCircles(a.Centre, RadiusMm(a, leftMm), b.Centre, RadiusMm(b, leftMm)),
        _ => throw new NotSupportedException("A piece is a segment or an arc."),
    };

    /// <summary>How much of a piece lies after the point where a circle about <paramref name="centre"/> touches it, mm.</summary>
    /// <remarks>Below 0 when it touches beyond the end; an arc is followed back for up to a whole turn instead.</remarks>
    internal static double TakenFromEnd(Piece piece, Point centre) => TakenFromStart(piece.Reversed(), centre);

    /// <summary>How much of a piece lies before the point where a circle about <paramref name="centre"/> touches it, mm.</summary>
    internal static double TakenFromStart(Piece piece, Point centre)
    {
        if (piece is Segment segment)
        {
            return (centre - segment.Start).Dot(segment.Direction);
        }

        Arc arc = (Arc)piece;
        double ahead = arc.AheadRad(centre - arc.Centre) * arc.RadiusMm;
        double behind = (Angles.TurnRad * arc.RadiusMm) - ahead;
        return behind < Tolerances.ShortestPieceMm ? -behind : ahead;
    }

    private static double RadiusMm(Arc arc, double leftMm) => arc.SweepRad > 0 ? arc.RadiusMm - leftMm : arc.RadiusMm + leftMm;

    private static List<Point> OfLines(Segment a, Segment b, double leftMm)
    {
        Point first = a.Start + (a.Direction.Left * leftMm);
        Point second = b.Start + (b.Direction.Left * leftMm);
        double cross = a.Direction.Cross(b.Direction);
        return cross == 0 ? [] : [first + (a.Direction * ((second - first).Cross(b.Direction) / cross))];
    }

    private static List<Point> OfLineAndCircle(Segment a, Arc b, double leftMm)
    {
        Point start = a.Start + (a.Direction.Left * leftMm);
        double radius = RadiusMm(b, leftMm);
        double height = Math.Abs((b.Centre - start).Cross(a.Direction));
        if (!(radius > 0) || height > radius + Tolerances.TouchMm)
        {
            return [];
        }

        Point foot = start + (a.Direction * (b.Centre - start).Dot(a.Direction));
        Vector half = a.Direction * Math.Sqrt(Math.Max(0, (radius - height) * (radius + height)));
        return [foot - half, foot + half];
    }

    private static List<Point> OfCircles(Point first, double firstRadius, Point second, double secondRadius)
    {
        Vector centres = second - first;
        double apart = centres.Length;
        if (!(apart > 0) || !(firstRadius > 0) || !(secondRadius > 0)
            || apart > firstRadius + secondRadius + Tolerances.TouchMm
            || apart < Math.Abs(firstRadius - secondRadius) - Tolerances.TouchMm)
        {
            return [];
        }

        double along = ((apart * apart) + ((firstRadius - secondRadius) * (firstRadius + secondRadius))) / (2 * apart);
        double half = Math.Sqrt(Math.Max(0, (firstRadius - along) * (firstRadius + along)));
        Vector unit = centres / apart;
        Point foot = first + (unit * along);
        return [foot + (unit.Left * half), foot - (unit.Left * half)];
    }
}
