using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>Potentials in a section that does not lie between two potentials of the supply: no current flows, so connection alone decides.</summary>
/// <remarks>A node joined by closed contacts and loads to what is held takes that potential; the others float in groups. The same
/// answer as solving every pattern, without solving any.</remarks>
internal sealed class UnfedSection(SectionShape shape, ContactPatterns contacts, Complex[] sources)
{
    private const int Own = SourcePotentials.Count;

    private readonly int[] _joined = new int[shape.OwnNodes.Length + Own];

    /// <summary>Potentials of each own node over all positions.</summary>
    /// <param name="apart">Whether a node that floats has an entry for each pattern of contacts, not one for each group.</param>
    public List<NodePotential>[] Read(bool apart)
    {
        int own = shape.OwnNodes.Length;
        ulong[]?[,] at = new ulong[own, own + Own][];
        List<NodePotential>[] potentials = [.. Enumerable.Range(0, own).Select(_ => new List<NodePotential>())];
        for (int p = 0; p < contacts.Closed.Count; p++)
        {
            ulong[] positions = contacts.Positions[p];
            Join(contacts.Closed[p]);
            for (int n = 0; n < own; n++)
            {
                int root = Find(n + Own);
                if (apart && root >= Own)
                {
                    potentials[n].Add(new NodePotential(default, positions, shape.OwnNodes[root - Own]));
                }
                else
                {
                    ref ulong[]? row = ref at[n, root];
                    row ??= new ulong[positions.Length];
                    BitRow.AddAll(row, positions);
                }
            }
        }

        for (int n = 0; n < own; n++)
        {
            AddGroups(potentials[n], at, n);
            for (int s = 0; s < Own; s++)
            {
                AddHeld(potentials[n], at[n, s], sources[s]);
            }
        }

        return potentials;
    }

    private void AddGroups(List<NodePotential> potentials, ulong[]?[,] at, int node)
    {
        for (int g = 0; g < shape.OwnNodes.Length; g++)
        {
            if (at[node, g + Own] is { } positions)
            {
                potentials.Add(new NodePotential(default, positions, shape.OwnNodes[g]));
            }
        }
    }

    private static void AddHeld(List<NodePotential> potentials, ulong[]? positions, Complex volts)
    {
        if (positions is not null)
        {
            potentials.Add(new NodePotential(volts, positions, -1));
        }
    }

    private void Join(bool[] closed)
    {
        for (int n = 0; n < _joined.Length; n++)
        {
            _joined[n] = n;
        }

        for (int e = 0; e < shape.Ends.Length; e++)
        {
            if (e >= closed.Length || closed[e])
            {
                int a = Find(shape.Ends[e].A);
                int b = Find(shape.Ends[e].B);
                _joined[Math.Max(a, b)] = Math.Min(a, b);
            }
        }
    }

    private int Find(int node)
    {
        while (_joined[node] != node)
        {
            _joined[node] = _joined[_joined[node]];
            node = _joined[node];
        }

        return node;
    }
}
