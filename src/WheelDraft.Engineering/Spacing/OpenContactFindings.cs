namespace WheelDraft.Engineering;

/// <summary>What misses about an open contact.</summary>
internal static class OpenContactFindings
{
    public static IEnumerable<Finding> Of(Brief brief, OpenContact open)
    {
        int index = Enumerable.Range(0, brief.Outputs.Count).First(i => string.Equals(brief.Outputs[i].Name, open.Output, StringComparison.Ordinal));
        TextPlace where = brief.PlaceOf(FormattableString.Invariant($"output[{index}]"));
        if (open.RequiredMm is not double required)
        {
            yield return Finding.Note(
                "spacing.open-contact",
                $"No separation is asked of the open contact of '{open.Output}': its gap ({Wording.Mm(open.Periods.Min(p => p.GreatestMm))} at the widest, {Wording.Mm(open.WorstMm)} in the worst case) is a micro-interruption unless tested, never a means of isolation.",
                where);
            yield break;
        }

        if (Verdicts.On(open.WorstMm, required) == SpacingVerdict.Misses)
        {
            yield return Finding.Error(
                "spacing.open-contact",
                $"The open contact of '{open.Output}' has {Wording.Mm(open.WorstMm)} {Where(brief, open)} at worst at {Wording.Degrees(open.AtRad)} of the programme{Standing(open)}, {Wording.Mm(required)} are required ({open.DecidingRule!.BasisInFull}, with margin). "
                    + (Standing(open).Length > 0 ? "An off-time that keeps further from there, a longer one" : "A longer off-time") + ", a larger ring, a shorter or less worn contact, or open_contact = \"none\" where a mere contact gap is enough, would do.",
                where);
        }
    }

    private static string Standing(OpenContact open) =>
        open.Parked is ParkedGap parked && ReferenceEquals(parked.Along, open.Deciding)
            ? $", {parked.Why}: the wheel can stand there"
            : "";

    private static string Where(Brief brief, OpenContact open) =>
        !open.SidewaysDecides ? open.Deciding.Over is { Count: > 0 } over ? $"over {string.Join(", ", over)}" : "along the motion" : brief.Wheel.Construction == WheelConstruction.Lands ? "between its two patches" : "sideways";
}
