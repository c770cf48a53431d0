using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace WheelDraft.Engineering;

/// <summary>What was drawn of one figure, counted in fine bins over its worst case: whole numbers, so that tallies add up alike in any order.</summary>
/// <param name="least">Worst case, least.</param>
/// <param name="most">Worst case, most.</param>
/// <param name="nominal">As drawn.</param>
/// <param name="tolerance">Plus and minus about nominal; none counts nothing.</param>
internal sealed class Tally(double least, double most, double nominal, double? tolerance)
{
    /// <summary>Bins over the worst case: a quantile is known to one of them, some thousandth of a standard deviation.</summary>
    public const int Bins = 8192;

    // Whole numbers of 32 bits: a file asks for far fewer draws, and twice as many of them stay in the nearest cache.
    private readonly int[] _counts = new int[Bins];
    private readonly double _perUnit = most > least ? Bins / (most - least) : 0;

    /// <summary>How many lie within the tolerance.</summary>
    public long Within { get; private set; }

    /// <summary>The least drawn.</summary>
    public double Least { get; private set; } = double.PositiveInfinity;

    /// <summary>The greatest drawn.</summary>
    public double Most { get; private set; } = double.NegativeInfinity;

    /// <summary>Counts values; returns their sum and the sum of their squares, both about nominal.</summary>
    public (double Sum, double Squares) Add(ReadOnlySpan<Vector256<double>> values)
    {
        (Vector256<double> sum, Vector256<double> squares) = (Vector256<double>.Zero, Vector256<double>.Zero);
        (Vector256<double> low, Vector256<double> high) = (values[0], values[0]);
        Vector256<long> within = Vector256<long>.Zero;
        Vector256<double> allowed = Vector256.Create(tolerance ?? double.PositiveInfinity);
        (Vector256<double> perUnit, Vector256<double> fromLeast) = (Vector256.Create(_perUnit), Vector256.Create((nominal - least) * _perUnit));
        foreach (Vector256<double> value in values)
        {
            Vector256<double> off = value - Vector256.Create(nominal);
            sum += off;
            squares += off * off;
            (low, high) = (Vector256.MinNative(low, value), Vector256.MaxNative(high, value));
            within -= Vector256.LessThanOrEqual(Vector256.Abs(off), allowed).AsInt64();
            Vector256<double> bin = (off * perUnit) + fromLeast;
            Count(Vector256.MinNative(Vector256.Create(Bins - 1.0), Vector256.MaxNative(Vector256<double>.Zero, bin)));
        }

        Within += Vector256.Sum(within);
        for (int lane = 0; lane < 4; lane++)
        {
            (Least, Most) = (Math.Min(Least, low[lane]), Math.Max(Most, high[lane]));
        }

        return (Vector256.Sum(sum), Vector256.Sum(squares));
    }

    // A number below 2⁵² with 2⁵² added has its whole part in its lowest bits, rounded; half less makes that a rounding down.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Count(Vector256<double> bin)
    {
        Vector256<ulong> whole = (Vector256.MaxNative(Vector256<double>.Zero, bin - Vector256.Create(0.5)) + Vector256.Create((double)(1UL << 52))).AsUInt64() & Vector256.Create(Bins - 1UL);
        unchecked
        {
            _counts[(int)whole[0]]++;
            _counts[(int)whole[1]]++;
            _counts[(int)whole[2]]++;
            _counts[(int)whole[3]]++;
        }
    }

    /// <summary>Takes in what another tally of the same figure counted.</summary>
    public void Add(Tally other)
    {
        for (int i = 0; i < Bins; i++)
        {
            _counts[i] += other._counts[i];
        }

        Within += other.Within;
        (Least, Most) = (Math.Min(Least, other.Least), Math.Max(Most, other.Most));
    }

    /// <summary>The value below which a share of all lies, by a straight line within its bin.</summary>
    public double Quantile(double share, long draws)
    {
        double wanted = share * draws;
        long below = 0;
        for (int i = 0; i < Bins; i++)
        {
            if (below + _counts[i] >= wanted && _counts[i] > 0)
            {
                double at = least + ((i + ((wanted - below) / _counts[i])) * (most - least) / Bins);
                return Math.Clamp(at, Least, Most);
            }

            below += _counts[i];
        }

        return Most;
    }

    /// <summary>Counts in wider bins over the worst case.</summary>
    public IReadOnlyList<long> Histogram(int bins) =>
        [.. Enumerable.Range(0, bins).Select(b => Enumerable.Range(b * (Bins / bins), Bins / bins).Sum(i => (long)_counts[i]))];
}
