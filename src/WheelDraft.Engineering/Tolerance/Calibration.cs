namespace WheelDraft.Engineering;

/// <summary>What a measured dose says: the flow, the on-time that would give the dose wanted, and how far to turn the screw.</summary>
/// <remarks>The wheel is taken as it is drawn and its screw where it is said to stand; a measured volume holds whatever the wheel departs from that, and
/// so does what is corrected by it.</remarks>
public sealed record Calibration
{
    // The whole of a travel halved so often is below a nanometre.
    private const int Halvings = 50;

    /// <summary>The on-time in which the measured volume flowed, s.</summary>
    public required double OnS { get; init; }

    /// <summary>The flow that it was measured at, litres a second.</summary>
    public required double FlowLPerS { get; init; }

    /// <summary>The dose wanted, mL.</summary>
    public required double WantedMl { get; init; }

    /// <summary>The on-time that gives it at that flow, s.</summary>
    public double CorrectedS => WantedMl / 1000 / FlowLPerS;

    /// <summary>How the screw does it; null where nothing is adjusted.</summary>
    public ScrewCorrection? Screw { get; init; }

    /// <summary>Of a dose measured on one on-period.</summary>
    /// <param name="ring">The output's ring.</param>
    /// <param name="motion">The turning.</param>
    /// <param name="period">Which of its on-periods, by start.</param>
    /// <param name="measured">What was measured, and what is wanted.</param>
    /// <exception cref="DesignRefusedException">The screw cannot stand where it is said to.</exception>
    public static Calibration Of(RingLayout ring, Motion motion, RingPeriod period, MeasuredDose measured)
    {
        ArgumentNullException.ThrowIfNull(ring);
        ArgumentNullException.ThrowIfNull(motion);
        ArgumentNullException.ThrowIfNull(period);
        ArgumentNullException.ThrowIfNull(measured);
        OnTimeOverTravel curve = new(ring, motion, period);
        double half = ring.TravelMm / 2;
        double perTurn = ring.Adjust is AdjustLayout adjust ? adjust.Asked.ScrewPitchMm * adjust.Asked.Lever : 0;
        double longer = ring.Adjust?.Asked.Longer == LongerWay.In ? -1 : 1;
        double at = longer * perTurn * measured.TurnedLonger;
        if (Math.Abs(at) > half + 1e-9 || (ring.Adjust is null && measured.TurnedLonger != 0))
        {
            throw new DesignRefusedException(
                "arguments.turned",
                ring.Adjust is null
                    ? $"'{ring.Name}' has no adjusting screw, so it cannot be turned from the middle."
                    : $"Turned {Wording.Number(measured.TurnedLonger, 3)} turns from the middle the contact of '{ring.Name}' would be beyond its travel, which is {Wording.Number(half / perTurn, 2)} turns either way.");
        }

        double onS = curve.OnS(at);
        double flow = measured.Ml / 1000 / onS;
        double corrected = measured.WantedMl / 1000 / flow;
        return new()
        {
            OnS = onS,
            FlowLPerS = flow,
            WantedMl = measured.WantedMl,
            Screw = ring.Adjust is null ? null : Corrected(curve, corrected, (at, half), (perTurn, longer)),
        };
    }

    private static ScrewCorrection Corrected(OnTimeOverTravel curve, double wantedS, (double AtMm, double HalfMm) place, (double MmPerTurn, double Longer) screw)
    {
        // From the short end to the long one.
        (double shortest, double longest) = (-screw.Longer * place.HalfMm, screw.Longer * place.HalfMm);
        (double least, double most) = (curve.OnS(shortest), curve.OnS(longest));
        double to = wantedS <= least ? shortest : wantedS >= most ? longest : Halved(curve, wantedS, shortest, longest);
        double Turns(double toMm) => (toMm - place.AtMm) * screw.Longer / screw.MmPerTurn;
        return new(Turns(to), (Turns(shortest), Turns(longest)), curve.OnS(to), (least, most));
    }

    private static double Halved(OnTimeOverTravel curve, double wantedS, double shortest, double longest)
    {
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (shortest + longest) / 2;
            (shortest, longest) = curve.OnS(middle) < wantedS ? (middle, longest) : (shortest, middle);
        }

        return (shortest + longest) / 2;
    }
}

/// <summary>A dose as it was measured.</summary>
/// <param name="Ml">What flowed in one on-period, mL.</param>
/// <param name="WantedMl">What was wanted, mL.</param>
/// <param name="TurnedLonger">How far the screw stood from the middle of its travel, turns; positive where the on-time is longer.</param>
public sealed record MeasuredDose(double Ml, double WantedMl, double TurnedLonger);

/// <summary>How far to turn a screw.</summary>
/// <param name="Turns">Turns from where it stands; positive lengthens the on-time.</param>
/// <param name="Left">Turns that are left to the short end and to the long end from where it stood.</param>
/// <param name="OnS">The on-time then, s.</param>
/// <param name="Range">On-times at the short end and at the long end, s.</param>
public sealed record ScrewCorrection(double Turns, (double Shorter, double Longer) Left, double OnS, (double ShortestS, double LongestS) Range);

/// <summary>The on-time of a ring along the travel of its wiper, by its edges.</summary>
internal sealed class OnTimeOverTravel(RingLayout ring, Motion motion, RingPeriod period)
{
    private readonly ProgrammePatch _patch = new(ring.Patch, motion.Direction);

    /// <summary>The on-time with the wiper moved outward from mid travel, s.</summary>
    public double OnS(double outMm) => ring.Adjust is null
        ? motion.SecondsFromRad(period.Wanted.SweepRad)
        : motion.SecondsFromRad(period.Break.TouchOf(_patch, ring.RadiusMm + outMm).AtRad - period.Make.TouchOf(_patch, ring.RadiusMm + outMm).AtRad);
}
