using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>The make-up of a section in local numbers: its contacts, its loads and the merged nodes they join.</summary>
internal sealed class SectionShape
{
    /// <summary>Reads a section's packed ends.</summary>
    /// <param name="section">Contacts and loads by rising element.</param>
    /// <param name="contactCount">Number of contacts of the circuit: elements from there on are loads.</param>
    public SectionShape(ReadOnlySpan<long> section, int contactCount)
    {
        List<int> contacts = [];
        List<int> loads = [];
        List<int> nodes = [];
        Ends = new (int A, int B)[section.Length];
        for (int i = 0; i < section.Length; i++)
        {
            SectionEnd end = SectionEnd.Unpack(section[i]);
            (end.Element < contactCount ? contacts : loads).Add(end.Element < contactCount ? end.Element : end.Element - contactCount);
            Ends[i] = (Local(nodes, end.A, end.HeldA), Local(nodes, end.B, end.HeldB));
        }

        Contacts = [.. contacts];
        Loads = [.. loads];
        OwnNodes = [.. nodes];
    }

    /// <summary>Indices of the contacts.</summary>
    public int[] Contacts { get; }

    /// <summary>Indices of the loads.</summary>
    public int[] Loads { get; }

    /// <summary>Merged nodes that nothing holds; local node k + <see cref="SourcePotentials.Count"/> is the k-th, those before are the supply's.</summary>
    public int[] OwnNodes { get; }

    /// <summary>Local nodes at the ends of each contact, then of each load.</summary>
    public (int A, int B)[] Ends { get; }

    private static int Local(List<int> nodes, int node, HeldAt held)
    {
        if (held != HeldAt.Nothing)
        {
            return SourcePotentials.IndexOf(held);
        }

        int at = nodes.IndexOf(node);
        if (at < 0)
        {
            at = nodes.Count;
            nodes.Add(node);
        }

        return at + SourcePotentials.Count;
    }
}

/// <summary>Solves one section for one pattern of closed contacts.</summary>
/// <remarks>Closed contacts merge nodes; loads then chain the merged nodes that nothing holds into blocks; a block between two
/// potentials or more is solved by its nodes' currents, one at a single potential takes it with no current, one at none
/// floats.</remarks>
internal sealed class PatternSolver(SectionShape shape, BlockSolver blocks, Complex[] sources)
{
    private const int Own = SourcePotentials.Count;

    private readonly int _nodes = shape.OwnNodes.Length + Own;
    private readonly int[] _merged = new int[shape.OwnNodes.Length + Own];
    private readonly int[] _chain = new int[shape.OwnNodes.Length + Own];
    private readonly HeldAt[] _touches = new HeldAt[shape.OwnNodes.Length + Own];
    private readonly int[] _blockNode = new int[shape.OwnNodes.Length + Own];
    private readonly Complex?[] _potentials = new Complex?[shape.OwnNodes.Length + Own];
    private readonly long[] _block = new long[shape.Loads.Length];
    private readonly List<int> _numbered = [];
    private bool _isShort;

    /// <summary>Voltage over each load, in the order of <see cref="SectionShape.Loads"/>; NaN for resonance without resistance.</summary>
    public double[] Volts { get; } = new double[shape.Loads.Length];

    /// <summary>Solves; false when the closed contacts join two potentials of the supply.</summary>
    /// <param name="closed">Which contacts are closed.</param>
    public bool Solve(bool[] closed)
    {
        for (int n = 0; n < _nodes; n++)
        {
            _merged[n] = n;
            _chain[n] = n;
            _touches[n] = HeldAt.Nothing;
            _potentials[n] = null;
        }

        Array.Clear(Volts);
        MergeClosed(closed);
        _isShort = false;
        for (int n = 0; n < Own; n++)
        {
            _isShort |= _merged[n] != n;
            _potentials[n] = sources[n];
        }

        if (_isShort)
        {
            return false;
        }

        ChainBlocks();
        SolveBlocks();
        for (int l = 0; l < Volts.Length; l++)
        {
            (int a, int b) = LoadEnds(l);
            Volts[l] = a == b || _potentials[a] is not { } atA || _potentials[b] is not { } atB ? 0 : Complex.Abs(atA - atB);
        }

        return true;
    }

    /// <summary>The solution just found, to keep.</summary>
    public SectionPattern Keep()
    {
        int own = _nodes - Own;
        Complex?[] potentials = new Complex?[own];
        int[] groups = new int[own];
        for (int n = 0; n < own; n++)
        {
            potentials[n] = _isShort ? null : _potentials[_merged[n + Own]];
            int block = MergedNodes.Find(_chain, _merged[n + Own]);
            groups[n] = block < Own ? -1 : shape.OwnNodes[block - Own];
        }

        return new SectionPattern(_isShort, potentials, (double[])Volts.Clone(), groups);
    }

    private (int A, int B) LoadEnds(int load)
    {
        (int a, int b) = shape.Ends[shape.Contacts.Length + load];
        return (_merged[a], _merged[b]);
    }

    private void MergeClosed(bool[] closed)
    {
        for (int c = 0; c < closed.Length; c++)
        {
            if (closed[c])
            {
                MergedNodes.Join(_merged, shape.Ends[c].A, shape.Ends[c].B);
            }
        }

        for (int n = 0; n < _nodes; n++)
        {
            _merged[n] = MergedNodes.Find(_merged, n);
        }
    }

    private void ChainBlocks()
    {
        for (int l = 0; l < Volts.Length; l++)
        {
            (int a, int b) = LoadEnds(l);
            if (a >= Own && b >= Own)
            {
                MergedNodes.Join(_chain, a, b);
            }
        }

        for (int l = 0; l < Volts.Length; l++)
        {
            (int a, int b) = LoadEnds(l);
            Touch(a, b);
            Touch(b, a);
        }
    }

    private void Touch(int node, int held)
    {
        if (node >= Own && held < Own)
        {
            _touches[MergedNodes.Find(_chain, node)] |= (HeldAt)(1 << held);
        }
    }

    private void SolveBlocks()
    {
        for (int n = Own; n < _nodes; n++)
        {
            if (_merged[n] == n && _chain[n] == n && SourcePotentials.Clash(_touches[n]))
            {
                SolveBlock(n);
            }
        }

        for (int n = Own; n < _nodes; n++)
        {
            HeldAt touches = _touches[MergedNodes.Find(_chain, n)];
            if (_merged[n] == n && touches != HeldAt.Nothing && !SourcePotentials.Clash(touches))
            {
                _potentials[n] = sources[SourcePotentials.IndexOf(touches)];
            }
        }
    }

    private void SolveBlock(int block)
    {
        _numbered.Clear();
        Array.Clear(_blockNode);
        int count = 0;
        for (int l = 0; l < Volts.Length; l++)
        {
            (int a, int b) = LoadEnds(l);
            if (a != b && MergedNodes.Find(_chain, a >= Own ? a : b) == block)
            {
                _block[count++] = new BlockLoad(shape.Loads[l], Number(a), Number(b)).Packed;
            }
        }

        Complex[]? solved = blocks.Solve(_block.AsSpan(0, count));
        foreach (int node in _numbered)
        {
            _potentials[node] = solved is null ? new Complex(double.NaN, double.NaN) : solved[_blockNode[node]];
        }
    }

    private int Number(int node)
    {
        if (node < Own)
        {
            return node;
        }

        if (_blockNode[node] == 0)
        {
            _numbered.Add(node);
            _blockNode[node] = _numbered.Count - 1 + Own;
        }

        return _blockNode[node];
    }
}
