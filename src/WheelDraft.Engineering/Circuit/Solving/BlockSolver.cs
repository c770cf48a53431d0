using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>One load of a block, between two of the block's nodes.</summary>
/// <param name="Load">Index of the load.</param>
/// <param name="A">First node: below <see cref="SourcePotentials.Count"/> one that the supply holds, from there on the block's own.</param>
/// <param name="B">Second node.</param>
internal readonly record struct BlockLoad(int Load, int A, int B)
{
    /// <summary>Load and both nodes in one number, exactly: 20 bits each, the load's in front.</summary>
    public long Packed => ((long)Load << 40) | ((long)A << 20) | (long)B;

    /// <summary>The load that a packed number stands for.</summary>
    public static BlockLoad Unpack(long packed) => new((int)(packed >> 40), (int)((packed >> 20) & 0xFFFFF), (int)(packed & 0xFFFFF));
}

/// <summary>Solves blocks of loads that hang together between potentials of the supply, each distinct one once.</summary>
/// <remarks>Complex nodal analysis: the currents that leave each node add up to zero. Blocks have a handful of nodes, so a dense
/// elimination with partial pivoting (Golub and Van Loan, Matrix Computations, 3.4) is exact except for rounding and has nothing
/// to start up, which a general library's provider has.</remarks>
internal sealed class BlockSolver(IReadOnlyList<Complex> impedances, Complex[] sources)
{
    private const int Own = SourcePotentials.Count;

    // A pivot below this share of the largest admittance of the block means that coil and capacitor cancel: resonance without
    // resistance has no finite answer. Ratings differ by less than 1e6, rounding is 1e-16 of the largest; 1e-13 lies between.
    private const double ResonancePivotShare = 1e-13;

    private readonly Complex[] _admittances = [.. impedances.Select(z => 1 / z)];
    private readonly Dictionary<long[], Complex[]?> _solved = new(PackedKeyComparer.Instance);

    /// <summary>Potentials of the block's nodes over neutral, by node number; null for resonance without resistance.</summary>
    /// <param name="block">The block's loads (<see cref="BlockLoad.Packed"/>), by rising load index, nodes numbered as first met.</param>
    public Complex[]? Solve(ReadOnlySpan<long> block)
    {
        Dictionary<long[], Complex[]?>.AlternateLookup<ReadOnlySpan<long>> lookup = _solved.GetAlternateLookup<ReadOnlySpan<long>>();
        if (!lookup.TryGetValue(block, out Complex[]? potentials))
        {
            potentials = SolveAnew(block);
            lookup[block] = potentials;
        }

        return potentials;
    }

    private Complex[]? SolveAnew(ReadOnlySpan<long> block)
    {
        int nodes = Own;
        foreach (long packed in block)
        {
            BlockLoad load = BlockLoad.Unpack(packed);
            nodes = Math.Max(nodes, Math.Max(load.A, load.B) + 1);
        }

        int n = nodes - Own;
        Complex[,] matrix = new Complex[n, n + 1];
        foreach (long packed in block)
        {
            BlockLoad load = BlockLoad.Unpack(packed);
            Complex admittance = _admittances[load.Load];
            Enter(matrix, load.A, load.B, admittance);
            Enter(matrix, load.B, load.A, admittance);
        }

        return Eliminate(matrix, n) ? Potentials(matrix, n) : null;
    }

    private void Enter(Complex[,] matrix, int at, int other, Complex admittance)
    {
        if (at < Own)
        {
            return;
        }

        int n = matrix.GetLength(0);
        matrix[at - Own, at - Own] += admittance;
        if (other >= Own)
        {
            matrix[at - Own, other - Own] -= admittance;
        }
        else
        {
            matrix[at - Own, n] += admittance * sources[other];
        }
    }

    private static bool Eliminate(Complex[,] m, int n)
    {
        double largest = 0;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                largest = Math.Max(largest, Complex.Abs(m[i, j]));
            }
        }

        for (int k = 0; k < n; k++)
        {
            int pivot = PivotRow(m, k, n);
            if (Complex.Abs(m[pivot, k]) <= ResonancePivotShare * largest)
            {
                return false;
            }

            for (int j = k; j <= n; j++)
            {
                (m[k, j], m[pivot, j]) = (m[pivot, j], m[k, j]);
            }

            for (int i = k + 1; i < n; i++)
            {
                Complex factor = m[i, k] / m[k, k];
                for (int j = k; j <= n; j++)
                {
                    m[i, j] -= factor * m[k, j];
                }
            }
        }

        return true;
    }

    private static int PivotRow(Complex[,] m, int k, int n)
    {
        int pivot = k;
        for (int i = k + 1; i < n; i++)
        {
            if (Complex.Abs(m[i, k]) > Complex.Abs(m[pivot, k]))
            {
                pivot = i;
            }
        }

        return pivot;
    }

    private Complex[] Potentials(Complex[,] m, int n)
    {
        Complex[] potentials = new Complex[n + Own];
        sources.CopyTo(potentials, 0);
        for (int i = n - 1; i >= 0; i--)
        {
            Complex sum = m[i, n];
            for (int j = i + 1; j < n; j++)
            {
                sum -= m[i, j] * potentials[j + Own];
            }

            potentials[i + Own] = sum / m[i, i];
        }

        return potentials;
    }
}

/// <summary>Compares packed keys number by number: two keys are one only when every number is the same.</summary>
internal sealed class PackedKeyComparer : IEqualityComparer<long[]>, IAlternateEqualityComparer<ReadOnlySpan<long>, long[]>
{
    /// <summary>The one comparer.</summary>
    public static PackedKeyComparer Instance { get; } = new();

    /// <inheritdoc/>
    public bool Equals(long[]? x, long[]? y) => x is null ? y is null : y is not null && x.AsSpan().SequenceEqual(y);

    /// <inheritdoc/>
    public int GetHashCode(long[] obj) => GetHashCode(obj.AsSpan());

    /// <inheritdoc/>
    public bool Equals(ReadOnlySpan<long> alternate, long[] other) => alternate.SequenceEqual(other);

    /// <inheritdoc/>
    public int GetHashCode(ReadOnlySpan<long> alternate)
    {
        // A multiply-and-fold over the numbers; collisions cost time only, since keys are then compared in full.
        ulong hash = 0x9E3779B97F4A7C15;
        foreach (long part in alternate)
        {
            unchecked
            {
                hash = (hash ^ (ulong)part) * 0xFF51AFD7ED558CCD;
                hash ^= hash >> 32;
            }
        }

        return unchecked((int)hash);
    }

    /// <inheritdoc/>
    public long[] Create(ReadOnlySpan<long> alternate) => alternate.ToArray();
}
