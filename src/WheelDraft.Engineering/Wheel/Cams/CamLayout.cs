using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A cam set out.</summary>
/// <remarks>Its outline lies in the wheel's frame, as the wheel does at programme angle 0: both turn as one, so that a wheel that is put on its shaft wrong and a cam that
/// is are the same mistake.</remarks>
internal sealed record CamLayout
{
    /// <summary>What was asked.</summary>
    public required CamBrief Brief { get; init; }

    /// <summary>Its place in the file, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>The outline with its bore, exact lines and arcs.</summary>
    public required Outline Outline { get; init; }

    /// <summary>From the axis to the cam's face at rest, mm: given, or the least that serves.</summary>
    public required double BaseRadiusMm { get; init; }

    /// <summary>A bound on how far the outline is from the true one, mm.</summary>
    public required double OffMm { get; init; }

    /// <summary>The greatest pressure angle, rad; 0 under a flat face.</summary>
    public required double MostPressureRad { get; init; }

    /// <summary>Where it is, programme angle in [0, 2π).</summary>
    public required double MostPressureAtRad { get; init; }

    /// <summary>The least convex radius of the roller's pitch curve, or of the outline under a flat face, mm; infinite where there is none.</summary>
    public required double LeastRadiusMm { get; init; }

    /// <summary>Where it is, programme angle in [0, 2π).</summary>
    public required double LeastRadiusAtRad { get; init; }

    /// <summary>The steps that the lever falls over, in turning order.</summary>
    public required IReadOnlyList<CamFall> Falls { get; init; }

    /// <summary>The torque that it takes.</summary>
    public required CamTorque Torque { get; init; }

    /// <summary>The lever's contact as the circuit sees it; null when it has none.</summary>
    public LeverSchedule? Contact { get; init; }

    /// <summary>What is to be known of it.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The shape behind it.</summary>
    public required CamShape Shape { get; init; }

    /// <summary>The greatest lift, rad or mm.</summary>
    public double TopLift => Shape.Task.Profile.TopLift;

    /// <summary>The farthest that the outline reaches from the axis, mm.</summary>
    public double OuterRadiusMm => Distances.Radii(Outline, Point.Origin).GreatestMm;

    /// <summary>The farthest that the outline reaches from the axis in a direction, mm.</summary>
    /// <param name="wheelRad">Wheel angle.</param>
    public double RadiusAtMm(double wheelRad)
    {
        Segment ray = new(Point.Origin, Point.Polar(Outline.Bounds.MaxX - Outline.Bounds.MinX + Outline.Bounds.MaxY - Outline.Bounds.MinY, wheelRad));
        return Outline.Outer.Pieces.SelectMany(p => Intersections.Of(ray, p).Points).Select(p => p.At.RadiusMm).DefaultIfEmpty(0).Max();
    }

    /// <summary>The lift of the lever at a programme angle, resting on the cam, rad or mm.</summary>
    public double LiftAt(double programmeRad) => Shape.LiftAt(programmeRad);

    /// <summary>Where the lever is at a programme angle: on the cam, or held higher by an obstacle or its latch.</summary>
    /// <param name="programmeRad">Programme angle.</param>
    /// <param name="blocked">Whether something is in its way.</param>
    /// <param name="latched">Whether it is hooked up.</param>
    public double PlaceAt(double programmeRad, bool blocked, bool latched) =>
        Math.Max(LiftAt(programmeRad), Math.Max(blocked ? Brief.Obstacle ?? 0 : 0, latched ? Brief.Latch ?? 0 : 0));

    /// <summary>A lift in words: an angle of the lever or a length of the slide.</summary>
    internal string LiftWords(double lift) => Brief.Swings ? Wording.Degrees(lift) : Wording.Mm(lift);
}

/// <summary>How a lever falls over a step.</summary>
/// <param name="HeldToRad">Programme angle up to which it is held, in [0, 2π).</param>
/// <param name="ClearRad">Programme angle at which the step's corner has passed it, past 2π where that runs across home.</param>
/// <param name="StepS">The time that this takes at the nominal speed: the face runs away under it, s.</param>
/// <param name="FreeS">The time in which it would fall free from full lift to rest, s.</param>
/// <param name="RestByRad">Programme angle by which it is at rest, at the latest, supply frequency at its highest.</param>
internal sealed record CamFall(double HeldToRad, double ClearRad, double StepS, double FreeS, double RestByRad);

/// <summary>The torque that a cam takes from the shaft.</summary>
/// <param name="MostNmm">The greatest, N mm, friction at its most.</param>
/// <param name="MostAtRad">Where it is, programme angle in [0, 2π).</param>
/// <param name="DrivesNmm">The greatest with which the lever drives the wheel on, N mm, friction at its least; 0 where it never does.</param>
/// <param name="DrivesAtRad">Where it does.</param>
internal sealed record CamTorque(double MostNmm, double MostAtRad, double DrivesNmm, double DrivesAtRad)
{
    /// <summary>Least and greatest torque at a programme angle, N mm; null over a step, where the lever drives.</summary>
    public required Func<double, (double LeastNmm, double MostNmm)?> At { get; init; }
}
