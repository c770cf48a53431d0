using System.Buffers;
using System.Runtime.Intrinsics;

namespace WheelDraft.Engineering;

/// <summary>What share of the variance of a figure each kind of deviation has.</summary>
/// <param name="Kind">Which.</param>
/// <param name="First">What knowing it alone would take away, share of the variance.</param>
/// <param name="FirstError">Standard error of that.</param>
/// <param name="Total">What would be left if all others were known, share of the variance.</param>
/// <param name="TotalError">Standard error of that.</param>
public readonly record struct VarianceShare(DeviationKind Kind, double First, double FirstError, double Total, double TotalError)
{
    /// <summary>What reports call it.</summary>
    public string Name => Deviation.NameOf(Kind);
}

/// <summary>Shares of variance from pairs of independent draws, one kind after the other taken from the second of a pair.</summary>
/// <remarks>First order by the estimator of Saltelli and others, "Variance based sensitivity analysis of model output", Computer Physics
/// Communications 181 (2010) 259–270, table 2 (b), with the mean taken off; total by Jansen's, "Analysis of variance designs for model output",
/// Computer Physics Communications 117 (1999) 35–43, their (f). Standard errors from the scatter of the terms.</remarks>
internal static class VarianceShares
{
    // Pairs, four at a time: standard errors below 1 % of the variance, in a few milliseconds an on-period.
    private const int Quads = 8192;

    // Their streams are none of the draws' own: blocks of draws are counted from 0.
    private const ulong FirstBlock = 1UL << 40;

    /// <summary>Shares of on-time, start and dose, by kind in the model's order; none where nothing varies.</summary>
    public static IReadOnlyList<IReadOnlyList<VarianceShare>> Of(OnTimeModel model, long seed)
    {
        int kinds = model.Kinds.Count;
        int figures = model.DoseMl > 0 ? 3 : 2; // where nothing flows the dose is nothing, whatever is drawn
        double[,,] sums = new double[3, kinds, 4];
        double[] whole = new double[3];
        DrawnTimes[] firsts = ArrayPool<DrawnTimes>.Shared.Rent(Quads);
        Vector256<double>[] mean = Means(model, seed, firsts);
        Span<Vector256<double>> first = stackalloc Vector256<double>[OnTimeModel.Variates];
        Span<Vector256<double>> second = stackalloc Vector256<double>[OnTimeModel.Variates];
        int[][] of = [.. model.Kinds.Select(k => k.Of.Select(v => (int)v).ToArray())];
        (DrawStream a, DrawStream b) = Streams(seed);
        for (int i = 0; i < Quads; i++)
        {
            model.Draw(ref a, first);
            model.Draw(ref b, second);
            (DrawnTimes ofFirst, DrawnTimes ofSecond) = (firsts[i], model.Of(second));
            for (int figure = 0; figure < figures; figure++)
            {
                (Vector256<double> one, Vector256<double> other) = (Figure(ofFirst, figure) - mean[figure], Figure(ofSecond, figure) - mean[figure]);
                whole[figure] += Vector256.Sum((one * one) + (other * other));
            }

            for (int k = 0; k < kinds; k++)
            {
                Exchange(first, second, of[k]);
                DrawnTimes ofMixed = model.Of(first);
                Exchange(first, second, of[k]);
                for (int figure = 0; figure < figures; figure++)
                {
                    Vector256<double> change = Figure(ofMixed, figure) - Figure(ofFirst, figure);
                    if (change == Vector256<double>.Zero)
                    {
                        continue; // a kind that does not act on this figure
                    }

                    Vector256<double> product = (Figure(ofSecond, figure) - mean[figure]) * change;
                    Vector256<double> square = change * change * Vector256.Create(0.5);
                    sums[figure, k, 0] += Vector256.Sum(product);
                    sums[figure, k, 1] += Vector256.Sum(product * product);
                    sums[figure, k, 2] += Vector256.Sum(square);
                    sums[figure, k, 3] += Vector256.Sum(square * square);
                }
            }
        }

        ArrayPool<DrawnTimes>.Shared.Return(firsts);
        return [.. Enumerable.Range(0, 3).Select(f => Shares(model, f, sums, whole[f] / (8.0 * Quads)))];
    }

    private static void Exchange(Span<Vector256<double>> one, Span<Vector256<double>> other, int[] at)
    {
        foreach (int i in at)
        {
            (one[i], other[i]) = (other[i], one[i]);
        }
    }

    private static IReadOnlyList<VarianceShare> Shares(OnTimeModel model, int figure, double[,,] sums, double variance)
    {
        if (!(variance > 0))
        {
            return [];
        }

        const double pairs = 4.0 * Quads;
        (double, double) Of(int kind, int at)
        {
            double mean = sums[figure, kind, at] / pairs;
            double scatter = Math.Max(0, (sums[figure, kind, at + 1] / pairs) - (mean * mean));
            return (mean / variance, Math.Sqrt(scatter / pairs) / variance);
        }

        return
        [
            .. model.Kinds.Select((k, i) =>
            {
                ((double first, double firstError), (double total, double totalError)) = (Of(i, 0), Of(i, 2));
                return new VarianceShare(k.Kind, first, firstError, total, totalError);
            }),
        ];
    }

    // The means of the figures over the first draws, which are kept.
    private static Vector256<double>[] Means(OnTimeModel model, long seed, DrawnTimes[] firsts)
    {
        Span<Vector256<double>> drawn = stackalloc Vector256<double>[OnTimeModel.Variates];
        double[] about = [model.OnS, model.StartS, model.DoseMl];
        double[] sums = new double[3];
        (DrawStream a, _) = Streams(seed);
        for (int i = 0; i < Quads; i++)
        {
            model.Draw(ref a, drawn);
            firsts[i] = model.Of(drawn);
            for (int figure = 0; figure < 3; figure++)
            {
                sums[figure] += Vector256.Sum(Figure(firsts[i], figure) - Vector256.Create(about[figure]));
            }
        }

        return [.. sums.Select((s, i) => Vector256.Create(about[i] + (s / (4.0 * Quads))))];
    }

    private static (DrawStream First, DrawStream Second) Streams(long seed) =>
        (new(unchecked((ulong)seed), FirstBlock), new(unchecked((ulong)seed), FirstBlock + 1));

    private static Vector256<double> Figure(DrawnTimes times, int figure) => figure switch
    {
        0 => times.OnS,
        1 => times.StartS,
        _ => times.DoseMl,
    };
}
