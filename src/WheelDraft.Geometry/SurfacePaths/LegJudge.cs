namespace WheelDraft.Geometry;

/// <summary>Whether a leg runs on the surface all the way.</summary>
internal sealed class LegJudge(IReadOnlyList<SurfaceBorder> borders)
{
    /// <summary>Whether a leg may run; one along a border may where there is surface on either side of it.</summary>
    /// <param name="leg">Straight or round.</param>
    internal bool IsFree(Piece leg)
    {
        bool runsAlong = false;
        bool isFree = IsFree(leg, SurfaceTolerances.OnBorderMm, ref runsAlong);
        return runsAlong
            ? ((double[])[SurfaceTolerances.BesideMm, -SurfaceTolerances.BesideMm]).Any(off => Beside(leg, off) is { } beside && IsFree(beside, SurfaceTolerances.PassedMm, ref runsAlong))
            : isFree;
    }

    private bool IsFree(Piece track, double leastMm, ref bool runsAlong)
    {
        Bounds bounds = track.Bounds;
        bool isFree = true;
        foreach (SurfaceBorder border in borders)
        {
            if (border.BlocksOutside || border.Region.Outline.Bounds.Grown(SurfaceTolerances.OnBorderMm).Overlaps(bounds))
            {
                isFree &= border.Stretches(track, bounds, leastMm, ref runsAlong).All(s => s.Inside == border.BlocksOutside);
            }
        }

        return isFree;
    }

    /// <summary>The leg moved a hair to its left (or right), to see on which side of a border it runs.</summary>
    private static Piece? Beside(Piece leg, double leftMm)
    {
        if (leg is Segment s)
        {
            Vector off = s.Direction.Left * leftMm;
            return new Segment(s.Start + off, s.End + off);
        }

        var arc = (Arc)leg;
        double radius = arc.RadiusMm - (Math.Sign(arc.SweepRad) * leftMm);
        return radius > 0 ? new Arc(arc.Centre, radius, arc.StartRad, arc.SweepRad) : null;
    }
}
