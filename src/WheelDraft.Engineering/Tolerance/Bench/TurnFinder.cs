namespace WheelDraft.Engineering;

/// <summary>Finds the turn time of a log: the least time after which every contact does the same again.</summary>
/// <remarks>Every distance between two makes of one contact is tried. It scores by the share of spells that come again after it, as long as they were,
/// within what a drifting supply and the rows allow. Spells that come later still are put down to a wheel that stood.</remarks>
internal static class TurnFinder
{
    // By so much of itself a turn may differ from another of the same log: a supply that strays by ±0.5 %, and a little more.
    private const double DriftShare = 0.012;

    // Not more makes of a contact, and not more makes ahead, than this are tried: a few turns hold every distance that there is.
    private const int MostMakes = 60;
    private const int MostAhead = 24;
    private const int MostSpells = 2000;

    // Twice a turn that seems to be one has to repeat about as well.
    private const double AsGood = 0.06;

    // Below this share nothing repeats: a wheel that stood in most turns, or a log of something else.
    private const double LeastShare = 0.35;

    /// <summary>Turn times that may be it, s, the likeliest first; empty when nothing repeats. Only a walk through the whole log can tell which is.</summary>
    public static IReadOnlyList<double> TurnTimesS(BenchRecord record)
    {
        // A long time may repeat by chance, tried on the few spells for which the log is long enough; twice a turn repeats too, on fewer. So what
        // counts is the share that came again, and of how much of the log that is said.
        const int most = 8;
        const double sameShare = 0.01;
        int spells = record.Contacts.Sum(c => c.Spells.Count);
        List<double> likely = [];
        foreach (TurnMatch match in Candidates(record).Select(t => Score(record, t)).Where(m => m.Share >= LeastShare).OrderByDescending(m => m.Share * Math.Sqrt(m.Count / (double)spells)))
        {
            double turn = Whole(record, match);
            if (likely.TrueForAll(l => Math.Abs(l - turn) > sameShare * turn))
            {
                likely.Add(turn);
            }

            if (likely.Count == most)
            {
                break;
            }
        }

        return likely;
    }

    // Two nearly equal halves look like a turn each until the whole turn fits far better.
    private static double Whole(BenchRecord record, TurnMatch match)
    {
        const int mostParts = 4;
        for (int times = 2; times <= mostParts && match.RmsS > 2 * record.SlackS; times++)
        {
            TurnMatch whole = Score(record, times * match.MeanS);
            if (whole.Count >= 2 && whole.Share >= match.Share - AsGood && whole.RmsS < match.RmsS / 4)
            {
                return whole.MeanS;
            }
        }

        return match.MeanS;
    }

    private static List<double> Candidates(BenchRecord record)
    {
        List<double> all = [];
        foreach (LoggedContact contact in record.Contacts)
        {
            ContactSpell[] spells = [.. contact.Spells.Where(s => s.IsWhole).Take(MostMakes)];
            for (int i = 0; i < spells.Length; i++)
            {
                for (int j = i + 1; j < spells.Length && j <= i + MostAhead; j++)
                {
                    if (Alike(spells[i], spells[j], record))
                    {
                        all.Add(spells[j].Make.AtS - spells[i].Make.AtS);
                    }
                }
            }
        }

        const double sameShare = 0.002;
        all.Sort();
        List<double> few = [];
        foreach (double one in all)
        {
            if (few.Count == 0 || one > few[^1] * (1 + sameShare))
            {
                few.Add(one);
            }
        }

        return few;
    }

    private static bool Alike(ContactSpell one, ContactSpell two, BenchRecord record) => Math.Abs(one.OnS - two.OnS) <= (DriftShare * one.OnS) + record.SlackS;

    private static TurnMatch Score(BenchRecord record, double turnS)
    {
        double within = (DriftShare * turnS) + record.SlackS;
        int tested = 0;
        List<double> found = [];
        double onSquares = 0;
        foreach (LoggedContact contact in record.Contacts)
        {
            IReadOnlyList<ContactSpell> spells = contact.Spells;
            int at = 0;
            for (int i = 0; i < spells.Count && i < MostSpells; i++)
            {
                if (!spells[i].IsWhole || spells[i].Make.AtS + turnS + within + spells[i].OnS > record.ToS)
                {
                    continue;
                }

                tested++;
                double wanted = spells[i].Make.AtS + turnS;
                at = Math.Max(at, i + 1);
                while (at < spells.Count && spells[at].Make.AtS < wanted - within)
                {
                    at++;
                }

                int next = Nearest(spells, at, wanted, within, s => Alike(spells[i], s, record));
                if (next >= 0)
                {
                    found.Add(spells[next].Make.AtS - spells[i].Make.AtS);
                    onSquares += (spells[next].OnS - spells[i].OnS) * (spells[next].OnS - spells[i].OnS);
                }
            }
        }

        if (found.Count == 0)
        {
            return new(0, 0, 0, turnS);
        }

        double mean = found.Average();
        double squares = found.Sum(f => (f - mean) * (f - mean)) + onSquares;
        return new(found.Count / (double)tested, found.Count, Math.Sqrt(squares / found.Count), mean);
    }

    private static int Nearest(IReadOnlyList<ContactSpell> spells, int from, double wantedS, double withinS, Func<ContactSpell, bool> fits)
    {
        int best = -1;
        for (int i = from; i < spells.Count && spells[i].Make.AtS <= wantedS + withinS; i++)
        {
            if (spells[i].IsWhole && fits(spells[i]) && (best < 0 || Math.Abs(spells[i].Make.AtS - wantedS) < Math.Abs(spells[best].Make.AtS - wantedS)))
            {
                best = i;
            }
        }

        return best;
    }

    /// <summary>How well a turn time fits.</summary>
    /// <param name="Share">Of the spells that could come again, how many did.</param>
    /// <param name="Count">How many did.</param>
    /// <param name="RmsS">How unlike they are, s.</param>
    /// <param name="MeanS">Mean time until they came again, s.</param>
    private readonly record struct TurnMatch(double Share, int Count, double RmsS, double MeanS);
}
