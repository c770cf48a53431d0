using System.Runtime.Intrinsics;

namespace WheelDraft.Engineering;

/// <summary>Many draws of one on-period, over all processors; what comes out depends on seed and number alone.</summary>
/// <remarks>Draws are made in blocks, each with a stream of its own; whole numbers are added up per processor, sums of fractions per block and
/// then in the order of blocks.</remarks>
internal sealed class DrawRun
{
    // Draws of a block, which have a stream of their own.
    private const int Block = 1024;

    // Draws worked out before they are counted: three figures of them stay in the nearest cache beside the counts.
    private const int Share = 128;

    // As many as may share the work: more than there are processors does no harm, who comes late finds nothing to do.
    private const int MostWorkers = 16;

    private readonly OnTimeModel _model;
    private readonly ulong _seed;
    private readonly DrawnFigure[] _figures;

    /// <param name="model">The on-period.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="figures">What is tallied: on-time, start, and a dose where something flows.</param>
    public DrawRun(OnTimeModel model, long seed, IReadOnlyList<DrawnFigure> figures) => (_model, _seed, _figures) = (model, unchecked((ulong)seed), [.. figures]);

    /// <summary>Told now and then which share is drawn; and what ends the drawing.</summary>
    public (Action<double>? Progress, CancellationToken Stop) Attend { get; init; }

    /// <summary>A number of draws rounded up to whole blocks.</summary>
    public static long Whole(int draws) => (draws + (long)Block - 1) / Block * Block;

    /// <summary>Makes the draws: so many, rounded up to whole blocks.</summary>
    /// <param name="draws">How many at least.</param>
    /// <param name="workers">Among how many the work is shared.</param>
    public IReadOnlyList<DrawnSummary> Of(int draws, int workers = MostWorkers)
    {
        int blocks = (int)(Whole(draws) / Block);
        int among = Math.Clamp(workers, 1, blocks);
        (double Sum, double Squares)[][] sums = [.. _figures.Select(_ => new (double, double)[blocks])];
        Tally[][] tallies = new Tally[among][];
        int taken = -1;
        Parallel.For(0, among, new ParallelOptions { MaxDegreeOfParallelism = among, CancellationToken = Attend.Stop }, worker => tallies[worker] = Work(ref taken, sums, worker == 0 ? Attend.Progress : null));
        Attend.Progress?.Invoke(1);
        return [.. _figures.Select((f, i) => Summary(f, [.. tallies.Where(t => t.Length > 0).Select(t => t[i])], sums[i]))];
    }

    // Whichever processor is free takes the next block.
    private Tally[] Work(ref int taken, (double Sum, double Squares)[][] sums, Action<double>? progress)
    {
        int blocks = sums[0].Length;
        int block = Interlocked.Increment(ref taken);
        if (block >= blocks)
        {
            return [];
        }

        Tally[] tallies = [.. _figures.Select(f => new Tally(f.Least, f.Most, f.Nominal, f.Tolerance))];
        Vector256<double>[][] drawn = [new Vector256<double>[Share / 4], new Vector256<double>[Share / 4], new Vector256<double>[Share / 4]];
        for (; block < blocks; block = Interlocked.Increment(ref taken))
        {
            Attend.Stop.ThrowIfCancellationRequested();
            progress?.Invoke((double)block / blocks);
            DrawStream stream = new(_seed, (ulong)block);
            for (int share = 0; share < Block / Share; share++)
            {
                Fill(ref stream, drawn);
                for (int i = 0; i < tallies.Length; i++)
                {
                    (double sum, double squares) = tallies[i].Add(drawn[i]);
                    sums[i][block] = (sums[i][block].Sum + sum, sums[i][block].Squares + squares);
                }
            }
        }

        return tallies;
    }

    private void Fill(ref DrawStream stream, Vector256<double>[][] drawn)
    {
        Span<Vector256<double>> variates = stackalloc Vector256<double>[OnTimeModel.Variates];
        variates.Clear();
        (Vector256<double>[] on, Vector256<double>[] start, Vector256<double>[] dose) = (drawn[0], drawn[1], drawn[2]);
        for (int i = 0; i < on.Length; i++)
        {
            _model.Draw(ref stream, variates);
            (on[i], start[i], dose[i]) = _model.Of(variates);
        }
    }

    private static DrawnSummary Summary(DrawnFigure figure, Tally[] tallies, (double Sum, double Squares)[] sums)
    {
        Tally all = tallies[0];
        foreach (Tally more in tallies.Skip(1))
        {
            all.Add(more);
        }

        long draws = (long)sums.Length * Block;
        double mean = sums.Sum(s => s.Sum) / draws;
        double variance = Math.Max(0, (sums.Sum(s => s.Squares) / draws) - (mean * mean)) * draws / (draws - 1);
        return new(draws, figure.Nominal + mean, Math.Sqrt(variance), all);
    }
}

/// <summary>A figure that is drawn: its nominal value, its worst case, and what is allowed of it.</summary>
/// <param name="Nominal">As drawn on paper.</param>
/// <param name="Least">Worst case, least.</param>
/// <param name="Most">Worst case, most.</param>
/// <param name="Tolerance">Plus and minus about nominal; null when nothing is asked.</param>
internal readonly record struct DrawnFigure(double Nominal, double Least, double Most, double? Tolerance);

/// <summary>All draws of one figure.</summary>
/// <param name="Draws">How many.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">Their standard deviation.</param>
/// <param name="Tally">Their counts.</param>
internal sealed record DrawnSummary(long Draws, double Mean, double Deviation, Tally Tally);
