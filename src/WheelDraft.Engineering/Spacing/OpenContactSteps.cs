namespace WheelDraft.Engineering;

/// <summary>Says how the requirements of an open contact came about, and what there is of each gap.</summary>
internal static class OpenContactSteps
{
    /// <summary>The steps, in order; none when nothing is asked.</summary>
    public static IReadOnlyList<string> Of(OpenContact open, OpenContactRule rule, RingLayout ring) =>
        open.Requirement is PairRequirement asked ? [.. Asked(open, asked, rule, ring), .. Measured(open, ring)] : [];

    private static IEnumerable<string> Asked(OpenContact open, PairRequirement asked, OpenContactRule rule, RingLayout ring)
    {
        foreach (string step in asked.Clearance.Steps)
        {
            yield return "Clearance: " + step;
        }

        foreach (string step in asked.Creepage!.Steps)
        {
            yield return "Creepage: " + step;
        }

        yield return $"Over a flush infill both apply: the larger, {Wording.Mm(rule.RequiredMm)}.";
        if (ring.Return is ReturnWiper other)
        {
            ContactPatch more = rule.AlongMm(other.Patch) > rule.AlongMm(ring.Patch) ? other.Patch : ring.Patch;
            yield return rule.AlongWords(more) + " Between the two patches, and between two lands, the same is kept.";
        }
        else
        {
            yield return rule.AlongWords(ring.Patch);
            yield return rule.SidewaysWords(ring.Patch, open.Sideways.RequiredMm!.Value);
        }
    }

    private static IEnumerable<string> Measured(OpenContact open, RingLayout ring)
    {
        string sideways = ring.Return is null ? "sideways" : "between the two patches";
        if (open.Along is OpenGap along)
        {
            yield return Measured("along the motion", along);
            yield return Measured(sideways, open.Sideways);
            yield return $"The gap {(open.SidewaysDecides ? sideways : "along the motion")} has less to spare: it decides.";
        }
        else
        {
            yield return Measured(sideways, open.Sideways);
        }
    }

    private static string Measured(string where, OpenGap gap) =>
        $"Measured {where}{(gap.Over.Count > 0 ? $", over {string.Join(", ", gap.Over)}, parts below X counted as nothing" : "")}: {Wording.Mm(gap.NominalMm)} nominal, {Wording.Mm(gap.WorstMm)} at the worst tolerance, at {Wording.Degrees(Geometry.Angles.InTurn(gap.AtRad))} of the programme; {Wording.Mm(gap.RequiredMm!.Value)} required.";
}
