using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>A programme as a parameter file can hold it, learned from a log.</summary>
/// <param name="Turns">What was measured.</param>
/// <param name="Outputs">The outputs in the order of the log.</param>
/// <param name="HomeWords">Where home was put, and why, in words.</param>
internal sealed record LearnedProgramme(BenchTurns Turns, IReadOnlyList<LearnedOutput> Outputs, string HomeWords)
{
    // Times in a file, decimals of a second: a hundredth is finer than any contact repeats.
    private const int Decimals = 2;

    /// <summary>The turn time, rounded to a hundredth of a second.</summary>
    public double TurnTimeS => Math.Round(Turns.TurnTime.MeanS, Decimals);

    /// <summary>Of measured turns.</summary>
    public static LearnedProgramme Of(BenchTurns turns)
    {
        double turn = turns.TurnTime.MeanS;
        (double home, string words) = HomeOf(turns);
        return new(turns, [.. turns.Contacts.Select(c => new LearnedOutput(
            c.Name,
            [.. c.Periods.Select(p => new LearnedPeriod(Math.Round(InTurn(p.StartShare - home) * turn, Decimals), Math.Round(p.On.MeanS, Decimals), p)).OrderBy(p => p.FromS)],
            c.IsAlwaysOn))], words);
    }

    private static double InTurn(double share) => share - Math.Floor(share);

    // Nothing in a log says where home is. Behind the break at which the wheel stood is where it parks; else the middle of the longest quiet stretch is
    // as far as can be from every edge.
    private static (double Share, string Words) HomeOf(BenchTurns turns)
    {
        double[] edges = [.. turns.Contacts.SelectMany(c => c.Periods).SelectMany(p => new[] { p.StartShare, InTurn(p.StartShare + (p.On.MeanS / turns.TurnTime.MeanS)) }).Order()];
        if (turns.MotorHolders.Count == 1 && turns.Contacts.First(c => string.Equals(c.Name, turns.MotorHolders[0], StringComparison.Ordinal)) is { Periods.Count: 1 } holder)
        {
            const double behind = 1.0 / 360;
            double end = holder.Periods[0].StartShare + (holder.Periods[0].On.MeanS / turns.TurnTime.MeanS);
            double free = edges.Select(e => InTurn(e - end)).Where(d => d > 1e-6).DefaultIfEmpty(1).Min();
            return (InTurn(end + Math.Min(behind, free / 2)), $"home is put just behind the break of '{holder.Name}', where the wheel came to stand");
        }

        double best = 0, most = -1;
        bool quiet = false;
        for (int i = 0; i < edges.Length; i++)
        {
            double to = i + 1 < edges.Length ? edges[i + 1] : edges[0] + 1;
            double middle = InTurn((edges[i] + to) / 2);
            bool off = !turns.Contacts.Any(c => c.Periods.Any(p => InTurn(middle - p.StartShare) * turns.TurnTime.MeanS < p.On.MeanS));
            if ((off && !quiet) || (off == quiet && to - edges[i] > most))
            {
                (best, most, quiet) = (middle, to - edges[i], off);
            }
        }

        return (best, string.Create(CultureInfo.InvariantCulture, $"home is put in the middle of the longest stretch in which {(quiet ? "everything is off" : "nothing changes")}; the log does not say where the wheel parks"));
    }
}

/// <summary>An output as learned.</summary>
/// <param name="Name">Its column.</param>
/// <param name="Periods">On-periods by start.</param>
/// <param name="IsAlwaysOn">Whether it never opened.</param>
internal sealed record LearnedOutput(string Name, IReadOnlyList<LearnedPeriod> Periods, bool IsAlwaysOn);

/// <summary>An on-period as learned.</summary>
/// <param name="FromS">Start after home, s.</param>
/// <param name="ForS">On-time, s.</param>
/// <param name="Measured">What was measured.</param>
internal sealed record LearnedPeriod(double FromS, double ForS, BenchPeriod Measured);
