namespace WheelDraft.Engineering;

/// <summary>How far the two wipers of each land stand apart, for the smallest wheel.</summary>
/// <remarks>A land is as long as its wipers are apart, so that the gap that is left on its ring, and with it the least radius that the ring can have, depends on that; nothing else of
/// the wheel's size does. A ring stands at its own least radius or right beside the ring inside it, whichever is further out: the distance that makes its own radius
/// least is therefore the best in any order and beside any others. Coarse ones are tried first, then finer ones round the best.</remarks>
/// <param name="designs">The wheel's designs.</param>
/// <param name="request">How the search is made.</param>
internal sealed class LandApart(CandidateDesigns designs, SearchRequest request)
{
    // Wipers further apart than this leave hardly any ring to their land.
    private const int MostDeg = 170;

    // Steps of the distances that are tried, degrees, and how many of the finer ones to each side.
    private static readonly int[] Steps = [6, 2, 1];
    private const int ToEachSide = 4;

    /// <summary>A candidate with the smallest wheel.</summary>
    public Candidate From(Candidate candidate)
    {
        for (int i = 0; i < designs.Slots.Count; i++)
        {
            if (designs.PartnerOf(i) is int partner && partner > i && (designs.Slots[i].FreeStation || designs.Slots[partner].FreeStation))
            {
                candidate = Best(designs.Slots[partner].FreeStation ? (partner, i) : (i, partner), candidate);
            }
        }

        return candidate;
    }

    private Candidate Best((int Moved, int Stays) pair, Candidate at)
    {
        int ring = designs.Slots[pair.Stays].Output, apart = Apart(at, pair);
        double bestMm = designs.InnermostMm(at, ring);
        foreach (int step in Steps)
        {
            int middle = apart;
            IEnumerable<int> all = step == Steps[0]
                ? Enumerable.Range(0, (2 * MostDeg / step) + 1).Select(k => -MostDeg + (k * step))
                : Enumerable.Range(-ToEachSide, (2 * ToEachSide) + 1).Select(k => middle + (k * step));

            // Of distances that do the same the one nearest to where the wipers were.
            int[] tries = [.. all.Where(d => d != 0 && Math.Abs(d) <= MostDeg).OrderBy(d => Math.Abs(d - middle)).ThenBy(d => d)];
            double[] ends = new double[tries.Length];
            Parallel.For(0, tries.Length, new ParallelOptions { CancellationToken = request.Stop, MaxDegreeOfParallelism = request.MostCores }, k =>
                ends[k] = designs.InnermostMm(At(at, pair, tries[k]), ring));
            int least = Enumerable.Range(0, tries.Length).MinBy(k => ends[k]);
            if (ends[least] < bestMm)
            {
                (bestMm, apart) = (ends[least], tries[least]);
            }
        }

        return At(at, pair, apart);
    }

    private static Candidate At(Candidate candidate, (int Moved, int Stays) pair, int apartDeg) => candidate.Turned(pair.Moved, apartDeg - Apart(candidate, pair));

    // From the one that stays to the one that is moved, whole degrees, from −180 up to 180.
    private static int Apart(Candidate at, (int Moved, int Stays) pair) => ((((at.Stations[pair.Moved] - at.Stations[pair.Stays]) % 360) + 540) % 360) - 180;
}
