namespace WheelDraft.Engineering;

/// <summary>What rings of every construction are judged by in the same way.</summary>
internal sealed class RingJudge(RingShop shop, RingDemand ring)
{
    /// <summary>An on-period in words.</summary>
    public string Where(OnPeriod period) => ring.Periods.Count == 1
        ? $"'{ring.Name}'"
        : $"on-period {Wording.Number(period.Index + 1, 0)} of '{ring.Name}'";

    /// <summary>The first on-period whose worst case is beyond the tolerance asked for, anywhere in the travel of its wiper.</summary>
    public RingObjection? ToleranceFault(RingTrial trial)
    {
        double asked = ring.ToleranceS ?? double.PositiveInfinity;
        RingTiming timing = new(shop, ring, Deviations.Of(shop, ring), trial.RadiusMm);
        for (int i = 0; i < trial.Cuts.Count; i++)
        {
            if (timing.Exceeds(ring.Periods[i], trial.Cuts[i], asked))
            {
                int exceeds = i;
                return new("wheel.tolerance", () =>
                {
                    (double longer, double shorter) = timing.Limits(ring.Periods[exceeds], trial.Cuts[exceeds]);
                    return Words(trial, exceeds, Math.Max(longer, shorter), 0);
                });
            }
        }

        return ring.TravelMm > 0 && trial.Cuts.Count > 0 && double.IsFinite(asked) ? TravelFault(trial, asked) : null;
    }

    private RingObjection? TravelFault(RingTrial trial, double askedS)
    {
        TravelSearch search = new(shop, ring, trial.RadiusMm);
        return !search.Exceeds(trial.Cuts[0], askedS) ? null : new("wheel.tolerance", () =>
        {
            (double moved, double worst) = search.Worst(trial.Cuts[0]);
            return Words(trial, 0, worst, moved);
        });
    }

    private string Words(RingTrial trial, int index, double worstS, double movedMm)
    {
        string place = movedMm == 0 ? "" : $" with the wiper {Wording.Mm(Math.Abs(movedMm))} {(movedMm < 0 ? "inward" : "outward")} of mid travel";
        return $"{Where(ring.Periods[index])} asks for ±{Wording.Seconds(ring.ToleranceS!.Value)}; on a radius of {Wording.Mm(trial.RadiusMm)} "
            + $"the worst case is {Wording.Seconds(worstS)}{place}";
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
