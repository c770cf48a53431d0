namespace WheelDraft.Engineering;

/// <summary>What rings of every construction are judged by in the same way.</summary>
internal sealed class RingJudge(RingShop shop, RingDemand ring)
{
    /// <summary>An on-period in words.</summary>
    public string Where(OnPeriod period) => ring.Periods.Count == 1
        ? $"'{ring.Name}'"
        : $"on-period {Wording.Number(period.Index + 1, 0)} of '{ring.Name}'";

    /// <summary>The first on-period whose worst case is beyond the tolerance asked for, at mid travel or at either end of it.</summary>
    /// <remarks>Between the ends the worst case is never worse than at one of them; a test walks the travel of drawn rings.</remarks>
    public (string Code, string Words)? ToleranceFault(RingTrial trial)
    {
        double asked = ring.ToleranceS ?? double.PositiveInfinity;
        Deviations deviations = Deviations.Of(shop, ring);
        double[] places = ring.TravelMm == 0 ? [0] : [0, -ring.TravelMm / 2, ring.TravelMm / 2];
        foreach (double moved in places)
        {
            RingTiming timing = new(shop, ring, deviations, trial.RadiusMm, moved);
            for (int i = 0; i < trial.Cuts.Count; i++)
            {
                if (timing.Exceeds(ring.Periods[i], trial.Cuts[i], asked))
                {
                    return ("wheel.tolerance", Words(trial, i, moved, timing));
                }
            }
        }

        return null;
    }

    private string Words(RingTrial trial, int index, double movedMm, RingTiming timing)
    {
        (double longer, double shorter) = timing.Limits(ring.Periods[index], trial.Cuts[index]);
        string place = movedMm == 0 ? "" : movedMm < 0 ? " with the wiper at the inner end of its travel" : " with the wiper at the outer end of its travel";
        return $"{Where(ring.Periods[index])} asks for ±{Wording.Seconds(ring.ToleranceS!.Value)}; on a radius of {Wording.Mm(trial.RadiusMm)} "
            + $"the worst case is {Wording.Seconds(Math.Max(longer, shorter))}{place}";
    }

    /// <summary>What each deviation does alone to the on-period that fails by its worst case; empty when none does.</summary>
    public static string Alone(RingShop shop, RingDemand ring, RingTrial trial)
    {
        if (trial.Cuts.Count == 0 || trial.Fault?.Code is not "wheel.tolerance")
        {
            return "";
        }

        RingAccount account = new(shop, ring, trial.RadiusMm);
        TimingLimits worst = ring.Periods.Select((p, i) => account.Limits(p, trial.Cuts[i])).MaxBy(l => l.WorstS)!;
        return $" ({(ring.TravelMm == 0 ? "each alone" : "each alone at mid travel")}: {string.Join(", ", worst.Contributors.Where(c => c.WorstS > 0).Select(c => $"{c.Name} {Wording.Seconds(c.WorstS)}"))})";
    }

    /// <summary>The straight distance between two radial edges at a radius; from half a turn on it is the diameter.</summary>
    public static double Chord(double radiusMm, double sweepRad) =>
        sweepRad >= Math.PI ? 2 * radiusMm : 2 * radiusMm * Math.Sin(sweepRad / 2);
}
