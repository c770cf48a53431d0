using System.Runtime.Intrinsics;

namespace WheelDraft.Engineering;

/// <summary>Limits of a figure by the root of the sum of squares.</summary>
/// <param name="Shift">How far the middle of the limits lies above nominal: half of what one-sided deviations (wear, backlash) do.</param>
/// <param name="Limit">Plus and minus about that: three standard deviations.</param>
public readonly record struct RootSumSquare(double Shift, double Limit)
{
    /// <summary>Of independent contributors, each with a standard deviation of its own.</summary>
    public static RootSumSquare Of(IEnumerable<(double Shift, double Deviation)> contributors)
    {
        ArgumentNullException.ThrowIfNull(contributors);
        (double shift, double squares) = (0, 0);
        foreach ((double Shift, double Deviation) c in contributors)
        {
            shift += c.Shift;
            squares += c.Deviation * c.Deviation;
        }

        return new(shift, 3 * Math.Sqrt(squares));
    }

    /// <summary>The standard deviation of a contributor that goes plus and minus an amount, by its law.</summary>
    public static double DeviationOf(DrawLaw law, double plusMinus) => plusMinus * law switch
    {
        DrawLaw.Normal => 1 / 3.0,
        DrawLaw.Uniform => 1 / Math.Sqrt(3),
        _ => 1 / Math.Sqrt(2),
    };

    /// <summary>Of on-time, start and dose of a model: what each number does alone from end to end of its band, halved.</summary>
    internal static IReadOnlyList<RootSumSquare> Of(OnTimeModel model)
    {
        (double On, double Start, double Dose) At(Variate variate, double share)
        {
            Span<Vector256<double>> drawn = stackalloc Vector256<double>[OnTimeModel.Variates];
            drawn.Clear();
            drawn[(int)variate] = Vector256.Create(share);
            DrawnTimes times = model.Of(drawn);
            return (times.OnS[0], times.StartS[0], times.DoseMl[0]);
        }

        List<(double Shift, double Deviation)>[] all = [[], [], []];
        foreach (DrawnKind kind in model.Kinds)
        {
            foreach (Variate variate in kind.Of)
            {
                (double On, double Start, double Dose) low = At(variate, kind.IsOneSided ? 0 : -1);
                (double On, double Start, double Dose) high = At(variate, 1);
                double[] halves = [(high.On - low.On) / 2, (high.Start - low.Start) / 2, (high.Dose - low.Dose) / 2];
                for (int i = 0; i < all.Length; i++)
                {
                    all[i].Add((kind.IsOneSided ? halves[i] : 0, DeviationOf(kind.Law, halves[i])));
                }
            }
        }

        return [.. all.Select(Of)];
    }
}
