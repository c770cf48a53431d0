using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>Finds what nets that float together could be joined to, for all patterns of contacts in one walk.</summary>
/// <remarks>The walk goes from merged node to merged node over contacts, inputs and loads, open or closed, and carries the positions of the wheel for which
/// it has come there: it ends at nodes with a potential and goes on through those that float. Where the section of a node met is cut at other
/// edges, a whole pattern of the walk's own section goes on if the node floats at any position of it: as if each pattern were walked by itself.</remarks>
internal sealed class FloatingWalk(CircuitModel model, List<NodePotential> none, IReadOnlyList<int>[] neighbours)
{
    private readonly ulong[]?[] _met = new ulong[]?[model.NodeCount];
    private readonly Queue<(int Root, ulong[] Positions)> _open = new();
    private readonly List<(Complex Volts, ulong[] Positions)> _found = [];
    private readonly List<int>[] _members = [.. Enumerable.Range(0, model.NodeCount).Select(_ => new List<int>())];

    /// <summary>Takes the merged nodes of a network just split.</summary>
    public void Begin(NetworkSplit split)
    {
        ReadOnlySpan<int> roots = split.Roots;
        foreach (List<int> members in _members)
        {
            members.Clear();
        }

        for (int n = 0; n < roots.Length; n++)
        {
            _members[roots[n]].Add(n);
        }
    }

    /// <summary>The potentials that a group could take.</summary>
    /// <param name="read">What is known of each node before anything floating is given a potential.</param>
    /// <param name="split">The network.</param>
    /// <param name="group">A node of the group, with positions and the group's number.</param>
    /// <param name="patterns">Positions of each pattern of the contacts of its section.</param>
    public List<NodePotential> From(List<NodePotential>[] read, NetworkSplit split, (int Node, ulong[] Positions, int Floats) group, IReadOnlyList<ulong[]> patterns)
    {
        ulong[][] own = [.. patterns.Where(p => BitRow.Meet(p, group.Positions))];
        Array.Clear(_met);
        _found.Clear();
        _met[split.Roots[group.Node]] = (ulong[])group.Positions.Clone();
        _open.Enqueue((split.Roots[group.Node], group.Positions));
        while (_open.TryDequeue(out (int Root, ulong[] Positions) at))
        {
            foreach (int member in _members[at.Root])
            {
                foreach (int next in neighbours[member])
                {
                    Meet(read[next], split.Roots[next], at.Positions, own);
                }
            }
        }

        List<NodePotential> found = [.. _found.Select(f => new NodePotential(f.Volts, f.Positions, group.Floats))];
        AddDefaults(found, own, group.Floats);
        return found;
    }

    // Takes the potentials of a node met, and goes on where it floats itself.
    private void Meet(List<NodePotential> read, int root, ulong[] positions, ulong[][] own)
    {
        if (Fresh(root, positions) is not { } fresh)
        {
            return;
        }

        if (ReferenceEquals(read, none))
        {
            _open.Enqueue((root, fresh));
            return;
        }

        ulong[]? on = null;
        foreach (NodePotential potential in read)
        {
            if (!BitRow.Meet(potential.Positions, fresh))
            {
                continue;
            }

            if (potential.Floats >= 0)
            {
                on ??= new ulong[fresh.Length];
                AddWhole(on, fresh, potential.Positions, own);
            }
            else
            {
                AddFound(potential, fresh);
            }
        }

        if (on is not null)
        {
            _open.Enqueue((root, on));
        }
    }

    // The positions for which the walk has not been at a node before; it has from now on.
    private ulong[]? Fresh(int root, ulong[] positions)
    {
        ref ulong[]? met = ref _met[root];
        met ??= new ulong[positions.Length];
        ulong[]? fresh = null;
        for (int w = 0; w < positions.Length; w++)
        {
            ulong left = positions[w] & ~met[w];
            if (left != 0)
            {
                fresh ??= new ulong[positions.Length];
                fresh[w] = left;
                met[w] |= left;
            }
        }

        return fresh;
    }

    private static void AddWhole(ulong[] on, ulong[] fresh, ulong[] floating, ulong[][] own)
    {
        foreach (ulong[] pattern in own)
        {
            if (BitRow.Meet(pattern, fresh) && BitRow.Meet(pattern, floating))
            {
                BitRow.AddAll(on, pattern);
            }
        }
    }

    private void AddFound(NodePotential potential, ulong[] positions)
    {
        int same = _found.FindIndex(f => f.Volts == potential.Volts);
        if (same < 0)
        {
            same = _found.Count;
            _found.Add((potential.Volts, new ulong[positions.Length]));
        }

        for (int w = 0; w < positions.Length; w++)
        {
            _found[same].Positions[w] |= potential.Positions[w] & positions[w];
        }
    }

    // Patterns for which nothing was found may be at any potential of the supply.
    private void AddDefaults(List<NodePotential> found, ulong[][] own, int floats)
    {
        ulong[]? without = null;
        foreach (ulong[] pattern in own.Where(p => !found.Exists(f => BitRow.Meet(f.Positions, p))))
        {
            BitRow.AddAll(without ??= new ulong[pattern.Length], pattern);
        }

        if (without is not null)
        {
            found.AddRange(model.Potentials.Distinct().Select(p => new NodePotential(p, without, floats)));
        }
    }
}
