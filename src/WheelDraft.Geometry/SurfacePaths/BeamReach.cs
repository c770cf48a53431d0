namespace WheelDraft.Geometry;

/// <summary>What a beam sees between two directions up to the one edge that lies ahead there.</summary>
/// <param name="Beam">The beam, on a level.</param>
/// <param name="Right">Right limit, length 1.</param>
/// <param name="Left">Left limit, length 1.</param>
/// <param name="Ahead">The edge; null when nothing lies ahead.</param>
internal readonly record struct BeamReach(Beam Beam, Vector Right, Vector Left, ReliefEdge? Ahead)
{
    /// <summary>Whether the edge ahead is met from its lower side.</summary>
    internal bool Climbs => Ahead is not null && (Right + Left).Dot(Ahead.Uphill) > 0;

    private Vector Onward => Climbs ? Ahead!.Uphill : -Ahead!.Uphill;

    /// <summary>The nearest point of a conductor in sight that is nearer than a limit; null when there is none.</summary>
    /// <remarks>A conductor flush with an edge is seen from the side that its material is on.</remarks>
    internal Point? Nearest(SurfaceConductor conductor, double limitMm)
    {
        Point? best = null;
        if (GapTo(conductor.Bounds) >= limitMm || IsAside(conductor.Bounds))
        {
            return best;
        }

        for (int i = 0; i < conductor.Pieces.Count; i++)
        {
            if (GapTo(conductor.PieceBounds[i]) >= limitMm || IsAside(conductor.PieceBounds[i]) || !IsOnThisSide(conductor, i))
            {
                continue;
            }

            Piece piece = conductor.Pieces[i];
            if ((piece is Segment s ? Nearest(s) : Nearest((Arc)piece)) is { } at && Beam.Source.DistanceTo(at) < limitMm)
            {
                (best, limitMm) = (at, Beam.Source.DistanceTo(at));
            }
        }

        return best;
    }

    /// <summary>Whether all of a rectangle lies outside the limits of what is seen, by more than rounding.</summary>
    private bool IsAside(Bounds bounds) =>
        Most(bounds, Beam.Source, Right.Left) < -2 * SurfaceTolerances.SameMm
        || Most(bounds, Beam.Source, -Left.Left) < -2 * SurfaceTolerances.SameMm
        || (Beam.Through is { } through && Most(bounds, through.From, Beam.Inward) < -2 * SurfaceTolerances.SameMm)
        || (Ahead is { } ahead && Most(bounds, ahead.From, -Onward) < -2 * SurfaceTolerances.SameMm);

    /// <summary>How far a rectangle reaches in a direction, seen from a place.</summary>
    private static double Most(Bounds bounds, Point from, Vector direction) =>
        (((direction.X > 0 ? bounds.MaxX : bounds.MinX) - from.X) * direction.X) + (((direction.Y > 0 ? bounds.MaxY : bounds.MinY) - from.Y) * direction.Y);

    private double GapTo(Bounds bounds)
    {
        double dx = Math.Max(0, Math.Max(bounds.MinX - Beam.Source.X, Beam.Source.X - bounds.MaxX));
        double dy = Math.Max(0, Math.Max(bounds.MinY - Beam.Source.Y, Beam.Source.Y - bounds.MaxY));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    private Point? Nearest(Segment s)
    {
        (double from, double to) = (0, 1);
        Vector a = s.Start - Beam.Source, b = s.End - Beam.Source;
        if (!Keep(Right.Cross(a), Right.Cross(b), Tolerances.TouchMm, ref from, ref to)
            || !Keep(a.Cross(Left), b.Cross(Left), Tolerances.TouchMm, ref from, ref to)
            || (Beam.Through is { } t && !Keep((s.Start - t.From).Dot(Beam.Inward), (s.End - t.From).Dot(Beam.Inward), SurfaceTolerances.SameMm, ref from, ref to))
            || (Ahead is { } e && !Keep(-(s.Start - e.From).Dot(Onward), -(s.End - e.From).Dot(Onward), SurfaceTolerances.SameMm, ref from, ref to)))
        {
            return null;
        }

        double foot = Math.Clamp((Beam.Source - s.Start).Dot(s.Direction) / s.Length, from, to);
        Point at = s.PointAt(foot);
        return (at - Beam.Source).Dot(Right + Left) >= 0 && at.DistanceTo(Beam.Source) >= Beam.FromMm - Tolerances.TouchMm ? at : null;
    }

    /// <summary>Cuts to where a linear function is not below a small SurfaceTolerances.SeenMm; a stretch of one point stays.</summary>
    private static bool Keep(double atStart, double atEnd, double slackMm, ref double from, ref double to) =>
        Beam.Narrow(atStart + slackMm, atEnd + slackMm, ref from, ref to);

    private Point? Nearest(Arc arc)
    {
        Point? best = null;
        foreach (Point at in Candidates(arc))
        {
            if (Sees(at) && (best is not { } known || Beam.Source.DistanceTo(at) < Beam.Source.DistanceTo(known)))
            {
                best = at;
            }
        }

        return best;
    }

    private List<Point> Candidates(Arc arc)
    {
        List<Point> all = [arc.Start, arc.End, BorderCuts.NearestOn(arc, Beam.Source)];
        double far = Beam.Source.DistanceTo(arc.Centre) + (2 * arc.RadiusMm) + 1;
        AddCuts(new Segment(Beam.Source, Beam.Source + (Right * far)), arc, all);
        AddCuts(new Segment(Beam.Source, Beam.Source + (Left * far)), arc, all);
        if (Beam.Through is { } through)
        {
            AddCuts(new Segment(through.From, through.To), arc, all);
        }

        if (Ahead is not null)
        {
            AddCuts(new Segment(Ahead.From, Ahead.To), arc, all);
        }

        return all;
    }

    private static void AddCuts(Segment line, Arc arc, List<Point> all)
    {
        List<double> shares = [];
        BorderCuts.Add(line, arc, shares);
        all.AddRange(shares.Select(line.PointAt));
    }

    private bool Sees(Point p)
    {
        Vector v = p - Beam.Source;
        return Right.Cross(v) >= -SurfaceTolerances.SeenMm && v.Cross(Left) >= -SurfaceTolerances.SeenMm && v.Dot(Right + Left) >= 0 && v.Length >= Beam.FromMm - SurfaceTolerances.SeenMm
            && (Beam.Through is not { } t || (p - t.From).Dot(Beam.Inward) >= -SurfaceTolerances.SameMm)
            && (Ahead is not { } e || (p - e.From).Dot(Onward) <= SurfaceTolerances.SameMm);
    }

    /// <summary>Whether a piece, or the material that it bounds, reaches to this side of the edges at both ends of the reach.</summary>
    private bool IsOnThisSide(SurfaceConductor conductor, int piece) =>
        (Beam.Through is not { } through || conductor.Reaches(piece, through, Beam.Inward))
        && (Ahead is not { } ahead || conductor.Reaches(piece, ahead, -Onward));
}
