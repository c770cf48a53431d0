using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The outline of a cam as exact lines and arcs.</summary>
/// <param name="Contour">One closed contour round the axis.</param>
/// <param name="OffMm">A bound on how far it is from the true outline, mm.</param>
/// <param name="LostMm">The most by which the follower stays below its profile where a uniform motion ends: there the outline has a corner; 0 elsewhere.</param>
internal sealed record CamOutline(Contour Contour, double OffMm, double LostMm)
{
    /// <summary>How far the arcs may be from the true outline, mm: half of the two micrometres that are promised, the rest for what is rounded on the way to a file.</summary>
    public const double FitMm = 0.001;

    /// <summary>Fits the outline of a shape that is not undercut.</summary>
    /// <returns>Null when a step does not find room before the next motion, or the outline crosses itself.</returns>
    public static CamOutline? Of(CamShape shape) => new CamOutlineFitting(shape).Fit();
}

/// <summary>Puts the pieces of a cam's outline together.</summary>
internal sealed class CamOutlineFitting(CamShape shape)
{
    // Directions nearer than this are one, rad.
    private const double SmoothRad = 1e-9;

    private readonly List<List<Piece>> _runs = [];
    private double _offMm;
    private double _lostMm;

    private double Sigma => shape.Task.Sigma;

    public CamOutline? Fit()
    {
        if (!FallsAreClear())
        {
            return null;
        }

        foreach (CamCurve curve in shape.Curves)
        {
            List<Piece>? run = curve.Stretch.Law is null ? Ride(curve) : Motion(curve);
            if (run is null)
            {
                return null;
            }

            _runs.Add(run);
        }

        for (int i = 0; i < _runs.Count; i++)
        {
            if (!Join(i))
            {
                return null;
            }
        }

        Contour contour = new(_runs.SelectMany(r => r));
        bool sound = contour.Turning == (Sigma > 0 ? Turning.Clockwise : Turning.Anticlockwise) && Soundness.Faults([contour]).Count == 0;
        return sound ? new(contour, _offMm, _lostMm) : null;
    }

    // Before a step the lever stands still, behind it it rests.
    private bool FallsAreClear()
    {
        IReadOnlyList<CamStretch> stretches = shape.Task.Profile.Stretches;
        return Enumerable.Range(0, stretches.Count).Where(i => stretches[i].Falls).All(i =>
            shape.Task.Profile.Before(i) is { } before && !(before.Law is { } law && MotionLaw.Strikes(law)) && stretches[(i + 1) % stretches.Count] is { Law: null, Falls: false });
    }

    private List<Piece>? Motion(CamCurve curve)
    {
        FittedArcs? arcs = ArcFit.Of(curve, shape.InwardMm, CamOutline.FitMm);
        _offMm = Math.Max(_offMm, arcs?.OffMm ?? 0);
        return arcs is null ? null : [.. arcs.Pieces];
    }

    // A ride behind a step begins where the follower has come down, with the face before it.
    private List<Piece>? Ride(CamCurve curve)
    {
        CamStretch stretch = curve.Stretch;
        DropFace? drop = shape.Drops.FirstOrDefault(d => Math.Abs(Angles.Signed(d.HeldToRad - stretch.FromRad)) < SmoothRad && stretch.FromLift == 0);
        double from = stretch.FromRad + (drop is null ? 0 : drop.ClearRad - drop.HeldToRad);
        return from >= stretch.ToRad ? null : [.. drop?.Pieces ?? [], shape.Ride(curve, from, stretch.ToRad)];
    }

    // Where one run ends and the next begins: the same place and direction, or the corner that a uniform motion leaves.
    private bool Join(int index)
    {
        List<Piece> before = _runs[index], after = _runs[(index + 1) % _runs.Count];
        Piece last = before[^1], first = after[0];
        double turn = Math.Atan2(last.TangentAt(1).Cross(first.TangentAt(0)), last.TangentAt(1).Dot(first.TangentAt(0)));
        bool meets = last.End.DistanceTo(first.Start) <= Tolerances.JoinMm;
        if (meets)
        {
            return true;
        }

        return shape.Task.RollerMm is double roller ? RollerCorner(before, after, (turn, roller)) : FlatCorner(before, after);
    }

    // A corner of the pitch curve: an inner one is the roller's own round, an outer one is cut off where both sides cross.
    private bool RollerCorner(List<Piece> before, List<Piece> after, (double TurnRad, double RollerMm) corner)
    {
        Point from = before[^1].End, to = after[0].Start;
        Point centre = from + (before[^1].TangentAt(1).Left * (Sigma * corner.RollerMm));
        if (corner.TurnRad * Sigma > 0)
        {
            before.Add(Arc.About(centre, from, to, Sigma > 0 ? Turning.Anticlockwise : Turning.Clockwise));
            return true;
        }

        if (!Trim(before, after))
        {
            return false;
        }

        _lostMm = Math.Max(_lostMm, centre.DistanceTo(before[^1].End) - corner.RollerMm);
        return true;
    }

    // Under a flat face the contact jumps along it: forward leaves a flat, back a corner where both sides cross.
    private bool FlatCorner(List<Piece> before, List<Piece> after)
    {
        Point from = before[^1].End, to = after[0].Start;
        if ((to - from).Dot(before[^1].TangentAt(1)) > 0)
        {
            before.Add(new Segment(from, to));
            return true;
        }

        Vector normal = before[^1].TangentAt(1).Left * Sigma;
        if (!Trim(before, after))
        {
            return false;
        }

        _lostMm = Math.Max(_lostMm, (from - before[^1].End).Dot(normal));
        return true;
    }

    private static bool Trim(List<Piece> before, List<Piece> after)
    {
        for (int b = before.Count - 1; b >= 0; b--)
        {
            for (int a = 0; a < after.Count; a++)
            {
                Meeting meeting = Intersections.Of(before[b], after[a]);
                if (meeting.Points.Count == 0)
                {
                    continue;
                }

                Point at = meeting.Points[0].At;
                Shorten(before, after, (b, a), at);
                return true;
            }
        }

        return false;
    }

    private static void Shorten(List<Piece> before, List<Piece> after, (int Before, int After) at, Point corner)
    {
        double end = before[at.Before].ShareNearest(corner), start = after[at.After].ShareNearest(corner);
        Piece? kept = end > 0 ? before[at.Before].Part(0, end) : null;
        Piece? next = start < 1 ? after[at.After].Part(start, 1) : null;
        before.RemoveRange(at.Before, before.Count - at.Before);
        after.RemoveRange(0, at.After + 1);
        before.AddRange(kept is null ? [] : [kept]);
        after.InsertRange(0, next is null ? [] : [next]);
    }
}
