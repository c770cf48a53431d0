namespace WheelDraft.Engineering;

/// <summary>What rings of every construction are judged by in the same way.</summary>
internal sealed class RingJudge(RingDemand ring)
{
    /// <summary>An on-period in words.</summary>
    public string Where(OnPeriod period) => ring.Periods.Count == 1
        ? $"'{ring.Name}'"
        : $"on-period {Wording.Number(period.Index + 1, 0)} of '{ring.Name}'";

    /// <summary>The first on-period whose worst case is beyond the tolerance asked for.</summary>
    public (string Code, string Words)? ToleranceFault(RingTrial trial)
    {
        double asked = ring.ToleranceS ?? double.PositiveInfinity;
        for (int i = 0; i < trial.Limits.Count; i++)
        {
            TimingLimits limits = trial.Limits[i];
            if (limits.LongerS > asked)
            {
                string parts = string.Join(", ", limits.Contributors.Where(c => c.Seconds > 0).Select(c => $"{c.Name} {Wording.Seconds(c.Seconds)}"));
                return ("wheel.tolerance", $"{Where(ring.Periods[i])} asks for ±{Wording.Seconds(asked)}; on a radius of {Wording.Mm(trial.RadiusMm)} "
                    + $"the worst case is {Wording.Seconds(limits.LongerS)} ({parts})");
            }
        }

        return null;
    }

    /// <summary>The straight distance between two radial edges at a radius; from half a turn on it is the diameter.</summary>
    public static double Chord(double radiusMm, double sweepRad) =>
        sweepRad >= Math.PI ? 2 * radiusMm : 2 * radiusMm * Math.Sin(sweepRad / 2);
}
