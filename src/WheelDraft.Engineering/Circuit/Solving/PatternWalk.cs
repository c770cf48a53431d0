namespace WheelDraft.Engineering;

/// <summary>Finds what a floating node could be joined to for one pattern of contacts, by a walk through floating nodes.</summary>
/// <remarks>The same as <see cref="FloatingWalk"/> finds for all patterns together, in the order in which potentials are met.</remarks>
internal sealed class PatternWalk(CircuitModel model, List<NodePotential> none, IReadOnlyList<int>[] neighbours)
{
    /// <summary>Potentials of the nets that a floating node could be joined to at some positions.</summary>
    public List<NodePotential> Alternatives(List<NodePotential>[] read, NetworkSplit split, int node, ulong[] positions, int floats)
    {
        List<NodePotential> found = [];
        HashSet<int> seen = [node];
        Queue<int> open = new(seen);
        while (open.TryDequeue(out int at))
        {
            foreach (int n in neighbours[at].Concat(Members(split, at)))
            {
                if (seen.Add(n) && Visit(read[n], positions, floats, found))
                {
                    open.Enqueue(n);
                }
            }
        }

        if (found.Count == 0)
        {
            found.AddRange(model.Potentials.Distinct().Select(p => new NodePotential(p, positions, floats)));
        }

        return found;
    }

    private static IEnumerable<int> Members(NetworkSplit split, int node)
    {
        int root = split.Roots[node];
        for (int n = 0; n < split.Roots.Length; n++)
        {
            if (split.Roots[n] == root)
            {
                yield return n;
            }
        }
    }

    // Takes the potentials of a net met on the walk; true when it floats somewhere itself, so that the walk goes on through it.
    private bool Visit(List<NodePotential> met, ulong[] positions, int floats, List<NodePotential> found)
    {
        bool goesOn = ReferenceEquals(met, none);
        foreach (NodePotential potential in met)
        {
            if (!BitRow.Meet(potential.Positions, positions))
            {
                continue;
            }

            if (potential.Floats >= 0)
            {
                goesOn = true;
                continue;
            }

            ulong[] common = [.. potential.Positions.Zip(positions, (a, b) => a & b)];
            NodePotentials.Add(found, new NodePotential(potential.Volts, common, floats));
        }

        return goesOn;
    }
}
