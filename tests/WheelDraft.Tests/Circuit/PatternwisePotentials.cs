using System.Numerics;
using WheelDraft.Engineering;

namespace WheelDraft.Tests;

/// <summary>
/// The oracle for nets that float: each pattern of contacts is an entry of its own and walked by itself, as the program did before it joined them.
/// Nothing is kept from one input position to the next.
/// </summary>
internal sealed class PatternwisePotentials
{
    private readonly CircuitModel _model;
    private readonly ulong[] _everywhere;
    private readonly Dictionary<long[], SectionPotentials> _ofSection = new(PackedKeyComparer.Instance);
    private readonly int[] _ownerOf;
    private readonly List<NodePotential>[] _held;
    private readonly List<NodePotential> _none = [];
    private readonly List<int>[] _switchNeighbours;

    /// <summary>A work space for one circuit.</summary>
    public PatternwisePotentials(CircuitModel model)
    {
        _model = model;
        _everywhere = BitRow.Full(model.Turn.Positions.Count);
        _held = [.. model.Potentials.Select(p => new List<NodePotential> { new(p, _everywhere, -1) })];
        Of = new List<NodePotential>[model.NodeCount];
        _ownerOf = new int[model.NodeCount];
        _switchNeighbours = [.. Enumerable.Range(0, model.NodeCount).Select(_ => new List<int>())];
        foreach (NetworkElement joined in model.Contacts.Concat(model.Inputs).Concat(model.Loads))
        {
            _switchNeighbours[joined.A].Add(joined.B);
            _switchNeighbours[joined.B].Add(joined.A);
        }

        if (model.WheelNode >= 0)
        {
            _switchNeighbours[model.WheelNode].Add(model.FeedNode);
            _switchNeighbours[model.FeedNode].Add(model.WheelNode);
        }
    }

    /// <summary>Potentials of each node; the same list object as long as nothing about the node has changed.</summary>
    public List<NodePotential>[] Of { get; }

    /// <summary>Reads the potentials of one input position.</summary>
    /// <param name="split">A network just split.</param>
    /// <param name="solver">Its solver.</param>
    public void Read(NetworkSplit split, SectionSolver solver)
    {
        for (int n = 0; n < Of.Length; n++)
        {
            HeldAt held = split.Held[split.Roots[n]];
            Of[n] = held == HeldAt.Nothing ? _none : _held[SourcePotentials.IndexOf(held)];
        }

        // Merged node to node is one step: the members of a merged node share its list.
        for (int s = 0; s < split.Count; s++)
        {
            SectionPotentials own = OfSection(split, solver, s);
            Array.Fill(_ownerOf, -1);
            for (int k = 0; k < own.Nodes.Length; k++)
            {
                _ownerOf[own.Nodes[k]] = k;
            }

            for (int n = 0; n < Of.Length; n++)
            {
                int at = _ownerOf[split.Roots[n]];
                Of[n] = at >= 0 ? own.Of[at] : Of[n];
            }
        }

        GiveAlternatives(split);
    }

    private SectionPotentials OfSection(NetworkSplit split, SectionSolver solver, int section)
    {
        ReadOnlySpan<long> key = split.Section(section);
        if (_ofSection.GetAlternateLookup<ReadOnlySpan<long>>().TryGetValue(key, out SectionPotentials? own))
        {
            return own;
        }

        if (split.IsFed(section))
        {
            SectionDetail detail = solver.Detail(key);
            own = new SectionPotentials(detail.Nodes, [.. Enumerable.Range(0, detail.Nodes.Length).Select(n => Collect(detail, n))]);
        }
        else
        {
            UnfedPotentials unfed = solver.Unfed(key, apart: true);
            own = new SectionPotentials(unfed.Nodes, unfed.Of);
        }

        _ofSection[key.ToArray()] = own;
        return own;
    }

    private sealed record SectionPotentials(int[] Nodes, List<NodePotential>[] Of);

    private static List<NodePotential> Collect(SectionDetail detail, int node)
    {
        List<NodePotential> potentials = [];
        for (int p = 0; p < detail.Solved.Count; p++)
        {
            SectionPattern solved = detail.Solved[p];
            if (solved.IsShort)
            {
                continue;
            }

            ulong[] positions = detail.Contacts.Positions[p];
            if (solved.Potentials[node] is not { } volts)
            {
                potentials.Add(new NodePotential(default, positions, solved.Groups[node]));
            }
            else if (Complex.IsFinite(volts))
            {
                Add(potentials, new NodePotential(volts, positions, -1));
            }
        }

        return potentials;
    }

    // Joins positions at which the potential is the same, so that pairs meet few entries.
    private static void Add(List<NodePotential> potentials, NodePotential next)
    {
        int same = potentials.FindIndex(p => p.Floats == next.Floats && p.Volts == next.Volts);
        if (same < 0)
        {
            potentials.Add(next);
            return;
        }

        ulong[] positions = (ulong[])potentials[same].Positions.Clone();
        BitRow.AddAll(positions, next.Positions);
        potentials[same] = next with { Positions = positions };
    }

    private void GiveAlternatives(NetworkSplit split)
    {
        List<NodePotential>[] read = [.. Of];
        for (int n = 0; n < Of.Length; n++)
        {
            if (ReferenceEquals(read[n], _none))
            {
                Of[n] = Alternatives(read, split, n, _everywhere, split.Roots[n]);
            }
            else if (read[n].Exists(p => p.Floats >= 0))
            {
                int node = n;
                Of[n] = [.. read[n].SelectMany(p => p.Floats < 0 ? [p] : Alternatives(read, split, node, p.Positions, p.Floats))];
            }
        }
    }

    // Potentials of the nets that a floating node could be joined to at some positions, by a walk through floating nodes.
    private List<NodePotential> Alternatives(List<NodePotential>[] read, NetworkSplit split, int node, ulong[] positions, int floats)
    {
        List<NodePotential> found = [];
        HashSet<int> seen = [node];
        Queue<int> open = new(seen);
        while (open.TryDequeue(out int at))
        {
            foreach (int n in _switchNeighbours[at].Concat(Members(split, at)))
            {
                if (seen.Add(n) && Visit(read[n], positions, floats, found))
                {
                    open.Enqueue(n);
                }
            }
        }

        if (found.Count == 0)
        {
            found.AddRange(_model.Potentials.Distinct().Select(p => new NodePotential(p, positions, floats)));
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
        bool goesOn = ReferenceEquals(met, _none);
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
            Add(found, new NodePotential(potential.Volts, common, floats));
        }

        return goesOn;
    }
}
