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
                    + Ways(open, required),
                where);
        }
    }

    // The gap where the wheel stands grows with the ring's radius and what is lost of it does not: beyond so many times its size nobody makes a ring.
    private const double MostTimesLarger = 3;

    private static string Ways(OpenContact open, double requiredMm)
    {
        const string otherwise = "or open_contact = \"none\" where a mere contact gap is enough, would do.";
        if (!StandsThere(open))
        {
            return $"A longer off-time, a larger ring, a shorter or less worn contact, {otherwise}";
        }

        double times = (requiredMm + open.NominalMm - open.WorstMm) / open.NominalMm;
        return times <= MostTimesLarger
            ? $"An off-time that keeps further from there, a longer one, a ring {Wording.Number(Math.Ceiling(times * 10) / 10, 1)} times as large, a shorter or less worn contact, {otherwise}"
            : $"No ring size cures that, because the wheel stands where this contact has hardly opened: times that keep its edges further from there, another contact or input that stops the motor elsewhere, {otherwise}";
    }

    private static bool StandsThere(OpenContact open) => open.Parked is ParkedGap parked && ReferenceEquals(parked.Along, open.Deciding);

    private static string Standing(OpenContact open) => StandsThere(open) ? $", {open.Parked!.Why}: the wheel can stand there" : "";

    private static string Where(Brief brief, OpenContact open) =>
        !open.SidewaysDecides ? open.Deciding.Over is { Count: > 0 } over ? $"over {string.Join(", ", over)}" : "along the motion" : brief.Wheel.Construction == WheelConstruction.Lands ? "between its two patches" : "sideways";
}
