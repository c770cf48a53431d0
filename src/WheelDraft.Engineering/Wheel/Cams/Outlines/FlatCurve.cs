using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The straight face of a flat follower in the housing: its distance from the axis and the direction of its normal, by the lift.</summary>
internal abstract class FlatFace
{
    /// <summary>Distance of the axis from the face, mm, above 0.</summary>
    public abstract double DistanceMm(double lift);

    /// <summary>Direction of the normal from the axis to the face, housing angle.</summary>
    public abstract double NormalRad(double lift);

    /// <summary>The support of the cam and its derivatives by programme angle: distance h and direction θ of the normal in the wheel's frame.</summary>
    public abstract (MotionPoint Distance, MotionPoint Direction) Support(MotionPoint lift, double sigma);

    /// <summary>The face of a lever that rests on a circle about the axis; null when it does not reach it.</summary>
    public static FlatFace? Of(LeverBrief lever, double restMm) => lever switch
    {
        SlidingLever sliding => new SlidingFace(sliding, restMm),
        SwingingLever swinging => restMm < swinging.Pivot.RadiusMm ? new SwingingFace(swinging, restMm) : null,
        _ => throw new NotSupportedException("A lever of no known kind."),
    };
}

/// <summary>A face square to its slide.</summary>
internal sealed class SlidingFace(SlidingLever lever, double restMm) : FlatFace
{
    /// <inheritdoc/>
    public override double DistanceMm(double lift) => restMm + lift;

    /// <inheritdoc/>
    public override double NormalRad(double lift) => lever.DirectionRad;

    /// <inheritdoc/>
    public override (MotionPoint Distance, MotionPoint Direction) Support(MotionPoint lift, double sigma) =>
        (lift with { Lift = restMm + lift.Lift }, new(lever.DirectionRad, -sigma, 0, 0));
}

/// <summary>A face along an arm, through its pivot.</summary>
internal sealed class SwingingFace(SwingingLever lever, double restMm) : FlatFace
{
    /// <summary>Angle between arm and the line of centres at rest.</summary>
    public double RestRad { get; } = Math.Asin(restMm / lever.Pivot.RadiusMm);

    /// <summary>Distance of the pivot from the axis, mm.</summary>
    public double CentreMm => lever.Pivot.RadiusMm;

    private double Sense => lever.Lifts == Turning.Anticlockwise ? 1 : -1;

    /// <inheritdoc/>
    public override double DistanceMm(double lift) => lever.Pivot.RadiusMm * Math.Sin(RestRad + lift);

    /// <inheritdoc/>
    public override double NormalRad(double lift) => lever.Pivot.AngleRad - (Sense * ((Math.PI / 2) - RestRad - lift));

    /// <inheritdoc/>
    public override (MotionPoint Distance, MotionPoint Direction) Support(MotionPoint lift, double sigma)
    {
        double centre = lever.Pivot.RadiusMm;
        (double sin, double cos) = Math.SinCos(RestRad + lift.Lift);
        double v = lift.Velocity, a = lift.Acceleration, j = lift.Jerk;
        MotionPoint distance = new(
            centre * sin,
            centre * cos * v,
            centre * ((cos * a) - (sin * v * v)),
            centre * ((cos * j) - (3 * sin * v * a) - (cos * v * v * v)));
        return (distance, new(NormalRad(lift.Lift), (Sense * v) - sigma, Sense * a, Sense * j));
    }
}

/// <summary>The outline under a flat follower, by its support function: x = h n + h_θ n⊥, radius of curvature h + h_θθ.</summary>
internal sealed class FlatCurve(FlatFace face, CamStretch stretch, double sigma) : CamCurve(stretch, sigma)
{
    /// <inheritdoc/>
    public override CurvePoint At(double programmeRad)
    {
        (MotionPoint h, MotionPoint q) = face.Support(Stretch.At(programmeRad), Sigma);
        double theta = q.Lift - (Sigma * programmeRad);
        double first = h.Velocity / q.Velocity;
        double radius = h.Lift + Second(h, q);
        Vector normal = Vector.Polar(1, theta);
        return new(Point.Origin + (normal * h.Lift) + (normal.Left * first), normal.Left * -Sigma, Math.Abs(radius * q.Velocity), 1 / radius);
    }

    /// <inheritdoc/>
    public override double Sharpness(double programmeRad)
    {
        (MotionPoint h, MotionPoint q) = face.Support(Stretch.At(programmeRad), Sigma);
        return -(h.Lift + Second(h, q));
    }

    /// <summary>How far the contact lies from the foot of the axis on the face, along it, mm.</summary>
    public double AsideMm(double programmeRad)
    {
        (MotionPoint h, MotionPoint q) = face.Support(Stretch.At(programmeRad), Sigma);
        return Math.Abs(h.Velocity / q.Velocity);
    }

    /// <inheritdoc/>
    public override CurveBounds Over(double fromRad, double toRad)
    {
        double half = (toRad - fromRad) / 2;
        MotionPoint most = Stretch.Most(fromRad, toRad);
        (MotionPoint h, MotionPoint q) = face.Support(Stretch.At(fromRad + half), Sigma);
        MotionPoint mostH = MostDistance(most);
        double leastTurn = Math.Abs(q.Velocity) - (Math.Abs(q.Acceleration) * half) - (most.Jerk * half * half);
        if (!(leastTurn > 0))
        {
            return new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);
        }

        // d/dψ of h + h_θθ, every term by its greatest size; direction's derivatives are those of the lift for a swinging lever, none for a slide.
        double w = face is SwingingFace ? 1 : 0;
        double a = w * most.Acceleration, j = w * most.Jerk;
        double first = (mostH.Acceleration / leastTurn) + (mostH.Velocity * a / (leastTurn * leastTurn));
        double second = (mostH.Jerk / leastTurn) + (2 * mostH.Acceleration * a / (leastTurn * leastTurn)) + (mostH.Velocity * j / (leastTurn * leastTurn)) + (2 * mostH.Velocity * a * a / (leastTurn * leastTurn * leastTurn));
        double change = mostH.Velocity + (second / leastTurn) + (first * a / (leastTurn * leastTurn));
        double radius = h.Lift + Second(h, q);
        double least = radius - (change * half);
        double turn = Math.Abs(q.Velocity) + (a * half) + (j * half * half);
        return new((radius + (change * half)) * turn, least > 0 ? change / (least * least) : double.PositiveInfinity, change);
    }

    private MotionPoint MostDistance(MotionPoint most)
    {
        if (face is not SwingingFace)
        {
            return most;
        }

        // Of D sin η: |cos| and |sin| at most 1; D is the distance of the pivot, which is the distance of the face where η is a right angle.
        double centre = ((SwingingFace)face).CentreMm;
        double v = most.Velocity, a = most.Acceleration;
        return new(centre, centre * v, centre * (a + (v * v)), centre * (most.Jerk + (3 * v * a) + (v * v * v)));
    }

    private static double Second(MotionPoint h, MotionPoint q) =>
        ((h.Acceleration / q.Velocity) - (h.Velocity * q.Acceleration / (q.Velocity * q.Velocity))) / q.Velocity;
}
