using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The step of a cam over which its lever falls.</summary>
/// <remarks>Up to its angle the follower rides at full lift; there its contact is the corner of the step. A roller then rolls over the corner and sinks as the wheel
/// turns on, until the corner has passed it and nothing holds it any more; a flat face tips over the corner. The face is the nearest that this follower clears: the
/// trace of the roller as it sinks straight down, and the roller's own round at its foot.</remarks>
/// <param name="HeldToRad">Programme angle up to which it is held, unrolled.</param>
/// <param name="ClearRad">Programme angle at which the corner has passed it.</param>
/// <param name="FromLift">Lift from which it falls free there; 0 when it has sunk to rest on the corner.</param>
/// <param name="Corner">The corner of the step, wheel frame.</param>
/// <param name="Pieces">The face, from the corner to the base circle.</param>
/// <param name="LiftAt">The lift between both angles, resting on the corner, by unrolled programme angle.</param>
internal sealed record DropFace(double HeldToRad, double ClearRad, double FromLift, Point Corner, IReadOnlyList<Piece> Pieces, Func<double, double> LiftAt);

/// <summary>Makes the faces of steps.</summary>
internal static class DropFaces
{
    // Lifts at which the rolling over a corner is looked at to find its last place; the place itself is then found by its tangent.
    private const int Looks = 400;

    /// <summary>The face of a step below a roller.</summary>
    public static DropFace UnderRoller(RollerPath path, (double RollerMm, double Sigma) with, CamStretch fall)
    {
        (double roller, double sigma) = with;
        double held = fall.FromRad, top = fall.FromLift;
        Point Placed(double lift, double programmeRad) => Placement.Turn(-sigma * programmeRad).Of(path.At(lift));
        Point high = Placed(top, held);
        Point corner = high - ((high - Point.Origin).Unit() * roller);

        // The programme angle at which a roller at a lift touches the corner from behind: cosine theorem in axis, roller and corner.
        double? Touches(double lift)
        {
            Point at = path.At(lift);
            double cos = ((at.RadiusMm * at.RadiusMm) + (corner.RadiusMm * corner.RadiusMm) - (roller * roller)) / (2 * at.RadiusMm * corner.RadiusMm);
            return cos > 1 + Rounding ? null : held + Angles.Signed((sigma * (at.AngleRad - corner.AngleRad)) + Math.Acos(Math.Min(cos, 1)) - held);
        }

        double Tangent(double lift) => Touches(lift) is double at
            ? (Placed(lift, at) - corner).Dot(Placement.Turn(-sigma * at).Of(path.Along(lift)))
            : -1;
        int last = Enumerable.Range(0, Looks + 1).MaxBy(i => Touches(top * i / Looks) ?? double.NegativeInfinity);
        double from = last == 0 ? 0 : RootFinding.Within(Tangent, top * Math.Max(last - 1, 0) / Looks, top * Math.Min(last + 1, Looks) / Looks) ?? (top * last / Looks);
        double clear = Touches(from)!.Value;
        Point low = Placed(0, clear);
        List<Piece> pieces = [];
        Point foot = corner;
        if (from > 0)
        {
            foot = path is SwingingPath swing ? AddRound(pieces, corner, Placement.Turn(-sigma * clear).Of(swing.Pivot), low) : AddStraight(pieces, corner, Placed(from, clear), low);
        }

        Point rest = low - ((low - Point.Origin).Unit() * roller);
        pieces.Add(Arc.About(low, foot, rest, sigma > 0 ? Turning.Anticlockwise : Turning.Clockwise));
        return new(held, clear, from, corner, pieces, at => RootFinding.Within(lift => (Touches(lift) ?? double.PositiveInfinity) - at, from, top) ?? (at <= held ? top : from));
    }

    private const double Rounding = 1e-12;

    private static Point AddRound(List<Piece> pieces, Point corner, Point pivot, Point low)
    {
        double radius = corner.DistanceTo(pivot);
        Point foot = pivot + ((low - pivot).Unit() * radius);
        double way = (corner - pivot).Cross(foot - pivot);
        if (corner.DistanceTo(foot) > Tolerances.ShortestPieceMm)
        {
            pieces.Add(Arc.About(pivot, corner, foot, way > 0 ? Turning.Anticlockwise : Turning.Clockwise));
        }

        return foot;
    }

    private static Point AddStraight(List<Piece> pieces, Point corner, Point high, Point low)
    {
        Point foot = corner + (low - high);
        if (corner.DistanceTo(foot) > Tolerances.ShortestPieceMm)
        {
            pieces.Add(new Segment(corner, foot));
        }

        return foot;
    }

    /// <summary>The face of a step below a flat follower: the line from the corner that touches the base circle.</summary>
    public static DropFace UnderFlat(FlatFace face, double sigma, CamStretch fall)
    {
        double held = fall.FromRad, top = fall.FromLift, rest = face.DistanceMm(0);
        Point corner = Point.Polar(face.DistanceMm(top), face.NormalRad(top) - (sigma * held));
        double footRad = corner.AngleRad - (sigma * Math.Acos(rest / corner.RadiusMm));
        double clear = held + Angles.InTurn((sigma * (face.NormalRad(0) - footRad)) - held);
        double Above(double lift, double at) => face.DistanceMm(lift) - (corner - Point.Origin).Dot(Vector.Polar(1, face.NormalRad(lift) - (sigma * at)));
        return new(held, clear, 0, corner, [new Segment(corner, Point.Polar(rest, footRad))], at => RootFinding.Within(lift => Above(lift, at), 0, top) ?? (at <= held ? top : 0));
    }
}
