using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>From measured copper to on-periods: the inverse of what the layout does, by the same edges and patches.</summary>
/// <remarks>Copper begins after the make and ends before the break, by how far the patch reaches on that radius; so an on-period is longer
/// than its copper by both. A wheel that is laid out for these on-periods has the measured copper again.</remarks>
internal static class MeasuredCopper
{
    // Copper or a gap narrower than this is none, rad: far above rounding, far below anything that could be cut.
    private const double NothingRad = 1e-9;

    /// <summary>The brief with on-periods in the place of measured copper; the same brief where none was measured.</summary>
    /// <exception cref="DesignRefusedException">A gap is narrower than the patch, so that the contact never opens there; or a strip and its output contradict each other.</exception>
    public static Brief Resolved(Brief brief)
    {
        if (brief.Outputs.All(o => o.Measured is null))
        {
            return brief;
        }

        IReadOnlyList<ContactPatch> patches = WiperContacts.Of(new StripSprings(brief)).Outputs;
        List<Finding> reasons = [];
        OutputBrief[] outputs = [.. brief.Outputs.Select((o, i) => o.Measured is null ? o : o with { On = new(Periods(brief, i, patches[i].OverStep(brief.Carrier.StepMm), reasons)) })];
        return reasons.Count == 0 ? brief with { Outputs = outputs } : throw new DesignRefusedException(reasons);
    }

    /// <summary>How far off measuring makes the times.</summary>
    public static IEnumerable<Finding> Findings(Brief brief, Motion motion)
    {
        for (int i = 0; i < brief.Outputs.Count; i++)
        {
            if (brief.Outputs[i] is not { Measured: MeasuredCopperBrief measured } output)
            {
                continue;
            }

            double edge = motion.SecondsFromRad(measured.ReadToRad);
            bool coarse = output.ToleranceS is double tolerance && 2 * edge > tolerance;
            string on = string.Join(", ", output.On.Periods!.Select(p => $"from {Wording.Seconds(motion.SecondsFromRad(((StartAt)p.Start).From.Value))} for {Wording.Seconds(motion.SecondsFromRad(((LastsFor)p.Extent).Amount.Value))}"));
            string words = $"The on-times of '{output.Name}' follow from its measured copper and its patch: {on}. Each edge was measured to ±{Wording.Degrees(measured.ReadToRad)}{(measured.GivenRad is null ? " (assumed)" : "")}, "
                + $"so what the old wheel did may start {Wording.Seconds(edge)} sooner or later and last {Wording.Seconds(2 * edge)} more or less";
            TextPlace where = brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"output[{i}].copper"));
            yield return coarse
                ? Finding.Warning("wheel.measured", $"{words}, more than the tolerance of ±{Wording.Seconds(output.ToleranceS!.Value)}. Measure finer, or time the old wheel on the bench.", where)
                : Finding.Note("wheel.measured", $"{words}.", where);
        }
    }

    private static IReadOnlyList<OnPeriodBrief> Periods(Brief brief, int index, ContactPatch patch, List<Finding> reasons)
    {
        OutputBrief output = brief.Outputs[index];
        ProgrammePatch programme = new(patch, brief.Drive.Direction);
        double radius = output.RadiusMm ?? throw new ArgumentException("Measured copper goes with a ring radius.", nameof(brief));
        double station = output.StationRad ?? throw new ArgumentException("Measured copper goes with a station.", nameof(brief));
        (double make, double off) = (programme.ReachRad(EdgeEnd.Make, radius), programme.ReachRad(EdgeEnd.Break, radius));
        Motion motion = Motion.Of(brief);
        IReadOnlyList<CircleArc> arcs = output.Measured!.Arcs;
        Check(brief, index, arcs, make + off, reasons);

        // Turning clockwise the wiper passes wheel angles as they grow, so copper begins where its arc does; else where that ends.
        return
        [
            .. arcs.Select(a => new OnPeriodBrief(
                new StartAt(TurnAmount.Radians(Angles.InTurn((motion.Sigma * (station - (motion.Sigma < 0 ? a.StartRad : a.EndRad))) - make))),
                new LastsFor(TurnAmount.Radians(a.SweepRad + make + off)))),
        ];
    }

    private static void Check(Brief brief, int index, IReadOnlyList<CircleArc> arcs, double patchRad, List<Finding> reasons)
    {
        OutputBrief output = brief.Outputs[index];
        int[] order = [.. Enumerable.Range(0, arcs.Count).OrderBy(i => arcs[i].StartRad)];
        for (int k = 0; k < order.Length; k++)
        {
            (CircleArc one, CircleArc next) = (arcs[order[k]], arcs[order[(k + 1) % order.Length]]);
            double gap = (k + 1 == order.Length ? Angles.TurnRad : 0) + next.StartRad - one.StartRad - one.SweepRad;
            if (gap <= patchRad + NothingRad)
            {
                string which = order.Length == 1 ? "The gap" : string.Create(CultureInfo.InvariantCulture, $"The gap between stretches {order[k] + 1} and {order[(k + 1) % order.Length] + 1} of copper");
                reasons.Add(Finding.Error(
                    "wheel.measured",
                    gap <= 0
                        ? $"Stretches of copper of '{output.Name}' overlap by {Wording.Degrees(-gap)}: write them as one, and from and to anticlockwise."
                        : $"{which} of '{output.Name}' is {Wording.Degrees(gap)} wide, and its contact patch reaches over {Wording.Degrees(patchRad)} on a radius of {Wording.Mm(output.RadiusMm!.Value)}: the contact never opens there. Measure it again, or the patch; or write the stretches as one.",
                    brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"output[{index}].copper[{order[(k + 1) % order.Length]}]"))));
            }
        }
    }
}
