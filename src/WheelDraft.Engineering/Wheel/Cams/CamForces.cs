using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How a lever falls, and what torque its cam takes.</summary>
/// <param name="brief">The brief.</param>
/// <param name="cam">The cam.</param>
/// <param name="shape">Its shape.</param>
internal sealed class CamForces(Brief brief, CamBrief cam, CamShape shape)
{
    // N mm over g mm², and N over g, in rad/s² and mm/s²: 1e-3 N m / 1e-9 kg m², 1 N / 1e-3 kg in mm.
    private const double PerS2 = 1e6;

    // Steps of the turn at which torques are looked at before the greatest is found between its neighbours.
    private const int Looks = 1440;

    /// <summary>Time in which the lever falls free from a lift to rest, s: I y'' = −(T + k y), a quarter of a wave about −T/k.</summary>
    public double FreeS(double lift)
    {
        double inertia = cam.Inertia!.Value;
        if (cam.PressRate * lift <= 1e-9 * cam.PressAtRest)
        {
            return Math.Sqrt(2 * lift * inertia / (cam.PressAtRest * PerS2));
        }

        double share = cam.PressAtRest / (cam.PressAtRest + (cam.PressRate * lift));
        return Math.Acos(share) / Math.Sqrt(cam.PressRate * PerS2 / inertia);
    }

    /// <summary>The falls, in turning order.</summary>
    public IReadOnlyList<CamFall> Falls()
    {
        double speed = Angles.TurnRad / brief.Drive.TurnTimeS, fastest = speed * (1 + brief.Supply.FrequencyToleranceShare);
        return [.. shape.Drops.Select(d =>
        {
            double held = Angles.InTurn(d.HeldToRad), clear = held + d.ClearRad - d.HeldToRad;
            double free = FreeS(shape.Task.Profile.TopLift);
            return new CamFall(held, clear, (clear - held) / speed, free, clear + (free * fastest));
        })];
    }

    /// <summary>Where the lever would leave the cam because its press does not speed it up enough; null nowhere, or when its inertia is not known.</summary>
    public double? LeavesAtRad()
    {
        if (cam.Inertia is not double inertia)
        {
            return null;
        }

        double speed = Angles.TurnRad / brief.Drive.TurnTimeS * (1 + brief.Supply.FrequencyToleranceShare);
        foreach (int look in Enumerable.Range(0, Looks))
        {
            MotionPoint at = shape.MotionAt(look * Angles.TurnRad / Looks);
            if (-at.Acceleration * speed * speed * inertia > cam.PressAt(at.Lift) * PerS2)
            {
                return look * Angles.TurnRad / Looks;
            }
        }

        return null;
    }

    /// <summary>The torque over the turn.</summary>
    public CamTorque Torque()
    {
        (double LeastNmm, double MostNmm)?[] looks = [.. Enumerable.Range(0, Looks).Select(i => At(i * Step))];
        (double most, double mostAt) = Greatest(looks, at => at?.MostNmm ?? double.NegativeInfinity);
        (double drives, double drivesAt) = Greatest(looks, at => -(at?.LeastNmm ?? double.PositiveInfinity));
        return new(Math.Max(most, 0), mostAt, Math.Max(drives, 0), drives > 0 ? drivesAt : 0) { At = At };
    }

    /// <summary>Lift against the press, by virtual work, and the follower's friction at the contact, counted as sliding also for a roller, which is more than its pin takes.</summary>
    public (double LeastNmm, double MostNmm)? At(double programmeRad)
    {
        if (shape.PressureRad(programmeRad) is not double pressure)
        {
            return null;
        }

        MotionPoint motion = shape.MotionAt(programmeRad);
        double press = cam.PressAt(motion.Lift);
        double lift = press * motion.Velocity;
        double force = press / ForceArmMm(motion.Lift) / Math.Cos(pressure);
        double friction = force * FrictionArmMm(programmeRad);
        FrictionBand band = brief.Drive.Friction ?? new(0, 0);
        return (lift + (band.Least * friction), lift + (band.Most * friction));
    }

    // What turns a press into a force along the path of the contact: the arm, or 1 for a slide.
    private double ForceArmMm(double lift) => cam.Lever switch
    {
        SlidingLever => 1,
        SwingingLever swing when cam.RollerRadiusMm is not null => swing.ArmMm,
        SwingingLever swing => Math.Max(Reach(swing, lift) - shape.MostAsideMm(), Reach(swing, lift) / 2),
        _ => throw new NotSupportedException("A lever of no known kind."),
    };

    // From the pivot to the foot of the axis on the face.
    private double Reach(SwingingLever swing, double lift) => swing.Pivot.DistanceTo(shape.FaceAt(lift)!.Value.Foot);

    // From the axis to the line in which the contact slides.
    private double FrictionArmMm(double programmeRad)
    {
        double lift = shape.LiftAt(programmeRad);
        return shape.FaceAt(lift) is { } face ? face.Foot.RadiusMm : shape.RollerAt(lift)!.Value.RadiusMm - shape.InwardMm;
    }

    private const double Step = Angles.TurnRad / Looks;

    private (double Value, double AtRad) Greatest((double LeastNmm, double MostNmm)?[] looks, Func<(double LeastNmm, double MostNmm)?, double> of)
    {
        int best = Enumerable.Range(0, Looks).MaxBy(i => of(looks[i]));
        double low = (best - 1) * Step, high = (best + 1) * Step;
        const double golden = 0.6180339887498949;
        for (int i = 0; i < 40; i++)
        {
            double a = high - (golden * (high - low)), b = low + (golden * (high - low));
            (low, high) = of(At(a)) >= of(At(b)) ? (low, b) : (a, high);
        }

        double refined = (low + high) / 2;
        double found = of(At(refined));
        return found > of(looks[best]) ? (found, Angles.InTurn(refined)) : (of(looks[best]), best * Step);
    }
}
