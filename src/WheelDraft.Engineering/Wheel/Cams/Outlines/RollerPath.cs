using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Where the axis of a roller is in the housing, by the lift of its lever.</summary>
internal abstract class RollerPath
{
    /// <summary>The axis at a lift.</summary>
    public abstract Point At(double lift);

    /// <summary>First derivative of the place by the lift.</summary>
    public abstract Vector Along(double lift);

    /// <summary>Second derivative; the third is less than its length times <see cref="BendPerLift"/>.</summary>
    public abstract Vector Bend(double lift);

    /// <summary>Length of the derivatives by the lift: 1 for a slide, the arm for a swinging lever.</summary>
    public abstract double Reach { get; }

    /// <summary>How the next higher derivative compares: 0 for a slide, 1 for a swinging lever.</summary>
    public abstract double BendPerLift { get; }

    /// <summary>The path of a lever that rests with its roller on a circle about the axis.</summary>
    /// <param name="lever">The lever.</param>
    /// <param name="restMm">From the wheel's axis to that of the roller at rest.</param>
    /// <returns>Null when the lever does not reach that circle.</returns>
    public static RollerPath? Of(LeverBrief lever, double restMm) => lever switch
    {
        SwingingLever swinging => SwingingPath.Of(swinging, restMm),
        SlidingLever sliding => Math.Abs(sliding.OffsetMm) < restMm ? new SlidingPath(sliding, restMm) : null,
        _ => throw new NotSupportedException("A lever of no known kind."),
    };
}

/// <summary>A straight path that may pass beside the axis.</summary>
internal sealed class SlidingPath(SlidingLever lever, double restMm) : RollerPath
{
    private readonly Vector _along = Vector.Polar(1, lever.DirectionRad);
    private readonly Point _rest = Point.Origin
        - (Vector.Polar(1, lever.DirectionRad).Left * lever.OffsetMm)
        + (Vector.Polar(1, lever.DirectionRad) * Math.Sqrt((restMm * restMm) - (lever.OffsetMm * lever.OffsetMm)));

    /// <inheritdoc/>
    public override double Reach => 1;

    /// <inheritdoc/>
    public override double BendPerLift => 0;

    /// <inheritdoc/>
    public override Point At(double lift) => _rest + (_along * lift);

    /// <inheritdoc/>
    public override Vector Along(double lift) => _along;

    /// <inheritdoc/>
    public override Vector Bend(double lift) => default;
}

/// <summary>The circle of an arm about its pivot.</summary>
internal sealed class SwingingPath : RollerPath
{
    private readonly SwingingLever _lever;
    private readonly double _restRad;

    private SwingingPath(SwingingLever lever, double restRad) => (_lever, _restRad) = (lever, restRad);

    /// <summary>The pivot.</summary>
    public Point Pivot => _lever.Pivot;

    /// <inheritdoc/>
    public override double Reach => _lever.ArmMm;

    /// <inheritdoc/>
    public override double BendPerLift => 1;

    private double Sense => _lever.Lifts == Turning.Anticlockwise ? 1 : -1;

    // Two directions of the arm bring its end on the circle; lifting in the given sense leads away from the axis from one of them.
    public static SwingingPath? Of(SwingingLever lever, double restMm)
    {
        double centre = lever.Pivot.RadiusMm;
        double cos = ((centre * centre) + (lever.ArmMm * lever.ArmMm) - (restMm * restMm)) / (2 * centre * lever.ArmMm);
        if (!(Math.Abs(cos) < 1))
        {
            return null;
        }

        double inward = lever.Pivot.AngleRad + Math.PI;
        double sense = lever.Lifts == Turning.Anticlockwise ? 1 : -1;
        return new(lever, inward + (sense * Math.Acos(cos)));
    }

    /// <inheritdoc/>
    public override Point At(double lift) => _lever.Pivot + Arm(lift);

    /// <inheritdoc/>
    public override Vector Along(double lift) => Arm(lift).Left * Sense;

    /// <inheritdoc/>
    public override Vector Bend(double lift) => -Arm(lift);

    private Vector Arm(double lift) => Vector.Polar(_lever.ArmMm, _restRad + (Sense * lift));
}
