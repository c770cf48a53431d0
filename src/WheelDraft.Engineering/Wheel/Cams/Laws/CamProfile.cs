using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>One stretch of the turn in which a lever rests, rides, is lifted or returns by one law; or falls, which takes no part of the turn.</summary>
/// <param name="FromRad">Programme angle at which it begins, unrolled from the first of the profile.</param>
/// <param name="SweepRad">How long it is; 0 for a fall.</param>
/// <param name="FromLift">Lift at its beginning, rad or mm.</param>
/// <param name="ToLift">Lift at its end.</param>
/// <param name="Law">How it goes; null for a ride and for a fall.</param>
internal sealed record CamStretch(double FromRad, double SweepRad, double FromLift, double ToLift, CamLaw? Law)
{
    /// <summary>Programme angle at which it ends, unrolled.</summary>
    public double ToRad => FromRad + SweepRad;

    /// <summary>Whether the lever falls.</summary>
    public bool Falls => Law is null && FromLift != ToLift;

    /// <summary>The lift and its derivatives by the programme angle, at an unrolled angle of the stretch.</summary>
    public MotionPoint At(double programmeRad)
    {
        if (Law is not { } law)
        {
            return new(FromLift, 0, 0, 0);
        }

        MotionPoint at = MotionLaw.At(law, Math.Clamp((programmeRad - FromRad) / SweepRad, 0, 1)).Scaled(ToLift - FromLift, SweepRad);
        return at with { Lift = FromLift + at.Lift };
    }

    /// <summary>Greatest absolute derivatives over a part of it; the lift is the greatest lift.</summary>
    public MotionPoint Most(double fromRad, double toRad)
    {
        double top = Math.Max(FromLift, ToLift);
        if (Law is not { } law)
        {
            return new(top, 0, 0, 0);
        }

        MotionPoint most = MotionLaw.Most(law, Math.Clamp((fromRad - FromRad) / SweepRad, 0, 1), Math.Clamp((toRad - FromRad) / SweepRad, 0, 1));
        return most.Scaled(Math.Abs(ToLift - FromLift), SweepRad) with { Lift = top };
    }
}

/// <summary>What a lever does over a turn, as stretches that follow each other without a gap.</summary>
/// <param name="Stretches">In turning order from the first step of the file; they add up to one turn.</param>
internal sealed record CamProfile(IReadOnlyList<CamStretch> Stretches)
{
    // Rides shorter than this are none, rad: the rounding of times and angles.
    private const double NothingRad = 1e-10;

    /// <summary>The greatest lift.</summary>
    public double TopLift => Stretches.Max(s => Math.Max(s.FromLift, s.ToLift));

    /// <summary>Programme angle at which the first stretch begins, in [0, 2π).</summary>
    public double StartRad => Stretches[0].FromRad;

    /// <summary>The profile of a brief that its rules have passed.</summary>
    public static CamProfile Of(CamBrief cam, Motion motion)
    {
        List<CamStretch> stretches = [];
        double lift = LiftAfter(cam.Profile[^1]);
        double start = Angles.InTurn(motion.RadOf(FromOf(cam.Profile[0])));
        double at = start;
        foreach (CamStep step in cam.Profile)
        {
            double from = start + Angles.InTurn(motion.RadOf(FromOf(step)) - start);
            from = from < at - NothingRad ? from + Angles.TurnRad : from;
            if (from - at > NothingRad)
            {
                stretches.Add(new(at, from - at, lift, lift, null));
                at = from;
            }

            CamStretch next = step is CamRise rise
                ? new(at, Sweep(rise, motion), lift, rise.Lift, rise.Law)
                : new(at, 0, lift, 0, null);
            stretches.Add(next);
            (at, lift) = (next.ToRad, next.ToLift);
        }

        double left = start + Angles.TurnRad - at;
        if (left > NothingRad)
        {
            stretches.Add(new(at, left, lift, lift, null));
        }

        return new(stretches);
    }

    /// <summary>The stretch of a programme angle, and that angle unrolled into it; a fall is never one.</summary>
    public (CamStretch Stretch, double AtRad) Find(double programmeRad)
    {
        double at = StartRad + Angles.InTurn(programmeRad - StartRad);
        CamStretch found = Stretches.LastOrDefault(s => !s.Falls && s.FromRad <= at) ?? Stretches.First(s => !s.Falls);
        return (found, at);
    }

    /// <summary>The stretch before one, round the turn.</summary>
    public CamStretch Before(int index) => Stretches[(index + Stretches.Count - 1) % Stretches.Count];

    private static TurnAmount FromOf(CamStep step) => step is CamRise rise ? rise.From : ((CamDrop)step).At;

    private static double LiftAfter(CamStep step) => step is CamRise rise ? rise.Lift : 0;

    private static double Sweep(CamRise rise, Motion motion) => Angles.InTurn(motion.RadOf(rise.To) - motion.RadOf(rise.From));
}
