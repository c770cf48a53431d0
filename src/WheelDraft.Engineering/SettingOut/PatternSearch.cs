namespace WheelDraft.Engineering;

/// <summary>Goes from the best of some candidates to better ones by turning one station or approach at a time, in steps that halve.</summary>
internal sealed class PatternSearch(CandidateDesigns designs, SearchRequest request)
{
    private readonly List<(Candidate Candidate, Merit Merit)> _seen = [];

    /// <summary>Designs that a search before this one worked out.</summary>
    public int Before { get; init; }

    /// <summary>Designs worked out.</summary>
    public int Designs => Before + _seen.Count;

    /// <summary>What the best is worth.</summary>
    public Merit Best { get; private set; }

    /// <summary>Whether it was stopped before its end.</summary>
    public bool WasStopped { get; private set; }

    // Work is counted in designs, never in seconds; without strips little is left that a station decides.
    private int Most => request.Effort switch { SearchEffort.Quick => 60, SearchEffort.Long => 2500, _ => designs.Slots.Any(s => s.Strip >= 0) ? 250 : 80 };

    /// <summary>The best candidate.</summary>
    public Candidate Run(IReadOnlyList<Candidate> beginnings)
    {
        (Candidate at, Merit best) = Worth(beginnings).MinBy(c => c.Merit, Merit.Order);
        Best = best;
        try
        {
            for (int step = SettingOut.Steps.FirstDeg; step >= 1 && _seen.Count < Most && !IsEnough(best);)
            {
                (Candidate next, Merit worth) = Worth(Around(at, step)).Append((Candidate: at, Merit: best)).MinBy(c => c.Merit, Merit.Order);
                if (worth.Against(best) < 0)
                {
                    (at, best) = (next, worth);
                    Best = best;
                }
                else
                {
                    step /= 2;
                }
            }
        }
        catch (OperationCanceledException) when (request.KeepsBest)
        {
            WasStopped = true;
        }

        return at;
    }

    private bool IsEnough(Merit best) => request.Effort == SearchEffort.Quick && best.Errors == 0;

    // One choice after the other, each way; what was tried before is not tried again.
    private IReadOnlyList<Candidate> Around(Candidate at, int step)
    {
        List<Candidate> all = [];
        for (int i = 0; i < designs.Slots.Count; i++)
        {
            foreach (int by in (int[])[step, -step])
            {
                // Both wipers of a land together leave the wheel as it is.
                if (designs.Slots[i].FreeStation && designs.PartnerOf(i) is int partner && partner > i && designs.Slots[partner].FreeStation)
                {
                    all.Add(at.Turned(i, by).Turned(partner, by));
                }

                if (designs.Slots[i].FreeStation)
                {
                    all.Add(at.Turned(i, by));
                }

                if (designs.Slots[i].Free.Approach)
                {
                    all.Add(at.Leaning(i, by, SettingOut.Steps.MostApproachDeg));
                }

                // Station and approach together leave the riser about where it is.
                if (designs.Slots[i].FreeStation && designs.Slots[i].Free.Approach)
                {
                    all.Add(at.Turned(i, by).Leaning(i, -designs.Sense * by, SettingOut.Steps.MostApproachDeg));
                }
            }
        }

        return [.. all.Where(c => !_seen.Any(s => s.Candidate.IsSame(c)))];
    }

    private (Candidate Candidate, Merit Merit)[] Worth(IReadOnlyList<Candidate> candidates)
    {
        Merit[] worth = new Merit[candidates.Count];
        Parallel.For(0, worth.Length, new ParallelOptions { CancellationToken = request.Stop, MaxDegreeOfParallelism = request.MostCores }, i => worth[i] = designs.Judge(candidates[i]));
        (Candidate Candidate, Merit Merit)[] judged = [.. candidates.Zip(worth)];
        _seen.AddRange(judged);
        request.Tell?.Invoke(new(Designs, Math.Min(Best.Errors, worth.Select(w => w.Errors).DefaultIfEmpty(0).Min())));
        return judged;
    }
}
