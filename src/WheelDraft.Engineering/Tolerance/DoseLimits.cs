namespace WheelDraft.Engineering;

/// <summary>The dose of one on-period at mid travel: nominal, and its limits over every deviation and the flow's tolerance at once.</summary>
/// <param name="NominalMl">On-time times flow, mL.</param>
/// <param name="LeastMl">At worst, mL: the shortest on-time at the least flow.</param>
/// <param name="MostMl">At worst, mL: the longest on-time at the greatest flow.</param>
/// <param name="AskedMl">The tolerance as a volume, plus and minus, mL; null when none is asked.</param>
public readonly record struct DoseLimits(double NominalMl, double LeastMl, double MostMl, double? AskedMl)
{
    /// <summary>Of an on-period; null when nothing flows.</summary>
    /// <param name="output">Its output.</param>
    /// <param name="onS">Its nominal on-time, s.</param>
    /// <param name="limits">Its worst case.</param>
    public static DoseLimits? Of(OutputBrief output, double onS, TimingLimits limits)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(limits);
        return output.FlowLPerS is double flow
            ? new(
                onS * flow * 1000,
                (onS - limits.ShorterS) * flow * 1000 * (1 - output.FlowToleranceShare),
                (onS + limits.LongerS) * flow * 1000 * (1 + output.FlowToleranceShare),
                output.ToleranceS * flow * 1000)
            : null;
    }

    /// <summary>An error for every output whose tolerance was asked as a volume that its dose does not keep with the flow's tolerance counted.</summary>
    internal static IEnumerable<Finding> Findings(Brief brief, Motion motion, WheelLayout wheel)
    {
        foreach ((OutputBrief output, int index) in brief.Outputs.Select((o, i) => (o, i)).Where(p => p.o is { IsToleranceOfDose: true, FlowToleranceShare: > 0, ToleranceS: not null }))
        {
            IReadOnlyList<DoseLimits> doses = [.. wheel.Rings[index].Periods.Select(p => Of(output, motion.SecondsFromRad(p.Wanted.SweepRad), p.Limits)!.Value)];
            if (doses.Count > 0 && doses.MaxBy(d => d.OffMl) is DoseLimits worst && worst.OffMl > worst.AskedMl)
            {
                yield return Finding.Error(
                    "timing.dose",
                    FormattableString.Invariant($"The dose of '{output.Name}' may be off by {worst.OffMl:0.##} mL ({worst.LeastMl:0.##} to {worst.MostMl:0.##} mL about {worst.NominalMl:0.##} mL) where {worst.AskedMl:0.##} mL are allowed: {worst.NominalMl * output.FlowToleranceShare:0.##} mL of it by its flow_tolerance alone. Measure the flow once it is installed (command calibrate), and give the smaller flow_tolerance that is left; or allow more."),
                    brief.PlaceOf(FormattableString.Invariant($"output[{index}].tolerance")));
            }
        }
    }

    private double OffMl => Math.Max(NominalMl - LeastMl, MostMl - NominalMl);
}
