using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>A potential that a node takes at some positions of the wheel.</summary>
/// <param name="Volts">Over neutral.</param>
/// <param name="Positions">Where.</param>
/// <param name="Floats">−1 for a node that something gives its potential; else the block with which it floats.</param>
internal readonly record struct NodePotential(Complex Volts, ulong[] Positions, int Floats);

/// <summary>Potentials of every node over all positions of the wheel, at one input position and under one fault.</summary>
/// <remarks>A node that nothing gives a potential takes, as alternatives, those of every net that it could be joined to by a
/// contact or an input, directly or through other such nodes; when there is none, every line and neutral.</remarks>
internal sealed class NodePotentials
{
    private readonly CircuitModel _model;
    private readonly ulong[] _everywhere;
    private readonly Dictionary<long[], SectionPotentials> _ofSection = new(PackedKeyComparer.Instance);
    private readonly Dictionary<long[], SectionPotentials> _kept = new(PackedKeyComparer.Instance);
    private readonly int[] _ownerOf;
    private readonly List<NodePotential>[] _held;
    private readonly List<NodePotential> _none = [];
    private readonly List<int>[] _switchNeighbours;
    private readonly FloatingWalk _walk;
    private readonly PatternWalk _apart;
    private readonly List<NodePotential>[] _read;
    private readonly int[] _sectionOf;
    private readonly IReadOnlyList<ulong[]>[] _patternsOf;
    private readonly IReadOnlyList<ulong[]> _noContacts;
    private readonly List<(int Floats, ulong[] Positions, List<NodePotential> Could)> _walked = [];

    /// <summary>A work space for one circuit.</summary>
    public NodePotentials(CircuitModel model)
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

        _walk = new FloatingWalk(model, _none, _switchNeighbours);
        _apart = new PatternWalk(model, _none, _switchNeighbours);
        _read = new List<NodePotential>[model.NodeCount];
        _sectionOf = new int[model.NodeCount];
        _patternsOf = new IReadOnlyList<ulong[]>[model.NodeCount];
        _noContacts = [_everywhere];
    }

    /// <summary>Potentials of each node; the same list object as long as nothing about the node has changed.</summary>
    public List<NodePotential>[] Of { get; }

    /// <summary>Whether a node floats somewhere: its list is then made anew for each input position.</summary>
    public bool Floats(int node) => !ReferenceEquals(Of[node], _read[node]);

    /// <summary>Whether some block was in resonance without resistance, and so without an answer.</summary>
    public bool HasResonance { get; private set; }

    /// <summary>Keeps what is known of sections so far; call together with <see cref="SectionSolver.KeepDetails"/>.</summary>
    public void Keep()
    {
        foreach ((long[] key, SectionPotentials own) in _ofSection)
        {
            _kept[key] = own;
        }

        _ofSection.Clear();
    }

    /// <summary>Drops what is known of sections and not kept; call together with <see cref="SectionSolver.ForgetDetails"/>.</summary>
    public void Forget() => _ofSection.Clear();

    /// <summary>Reads the potentials of one input position.</summary>
    /// <param name="split">A network just split.</param>
    /// <param name="solver">Its solver.</param>
    /// <param name="nodes">Nodes that may float and are asked for, with all that they could be joined to but held nodes.</param>
    public void Read(NetworkSplit split, SectionSolver solver, IReadOnlyList<int> nodes)
    {
        for (int n = 0; n < Of.Length; n++)
        {
            HeldAt held = split.Held[split.Roots[n]];
            Of[n] = held == HeldAt.Nothing ? _none : _held[SourcePotentials.IndexOf(held)];
        }

        // Merged node to node is one step: the members of a merged node share its list.
        Array.Fill(_sectionOf, -1);
        Array.Fill(_patternsOf, _noContacts);
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
                if (at >= 0)
                {
                    (Of[n], _sectionOf[n], _patternsOf[n]) = (own.Of[at], s, own.Patterns);
                }
            }
        }

        GiveAlternatives(split, nodes);
    }

    /// <summary>Potentials of one node with an entry for each pattern of contacts in which it floats, in the order in which its section has them.</summary>
    /// <remarks>The same potentials at the same positions as <see cref="Of"/>: for a reader who asks where something comes first.</remarks>
    /// <param name="node">The node.</param>
    /// <param name="split">The network last read.</param>
    /// <param name="solver">Its solver.</param>
    public List<NodePotential> Apart(int node, NetworkSplit split, SectionSolver solver)
    {
        if (!Floats(node))
        {
            return Of[node];
        }

        if (_sectionOf[node] < 0)
        {
            return _apart.Alternatives(_read, split, node, _everywhere, split.Roots[node]);
        }

        ReadOnlySpan<long> key = split.Section(_sectionOf[node]);
        List<NodePotential> read;
        if (split.IsFed(_sectionOf[node]))
        {
            SectionDetail detail = solver.Detail(key);
            read = Collect(detail, Array.IndexOf(detail.Nodes, split.Roots[node]), apart: true);
        }
        else
        {
            UnfedPotentials unfed = solver.Unfed(key, apart: true);
            read = unfed.Of[Array.IndexOf(unfed.Nodes, split.Roots[node])];
        }

        return [.. read.SelectMany(p => p.Floats < 0 ? [p] : _apart.Alternatives(_read, split, node, p.Positions, p.Floats))];
    }

    private SectionPotentials OfSection(NetworkSplit split, SectionSolver solver, int section)
    {
        ReadOnlySpan<long> key = split.Section(section);
        if (_kept.GetAlternateLookup<ReadOnlySpan<long>>().TryGetValue(key, out SectionPotentials? own)
            || _ofSection.GetAlternateLookup<ReadOnlySpan<long>>().TryGetValue(key, out own))
        {
            return own;
        }

        if (split.IsFed(section))
        {
            SectionDetail detail = solver.Detail(key);
            own = new SectionPotentials(detail.Nodes, [.. Enumerable.Range(0, detail.Nodes.Length).Select(n => Collect(detail, n, apart: false))], detail.Contacts.Positions);
        }
        else
        {
            UnfedPotentials unfed = solver.Unfed(key, apart: false);
            own = new SectionPotentials(unfed.Nodes, unfed.Of, unfed.Contacts.Positions);
        }

        _ofSection[key.ToArray()] = own;
        return own;
    }

    private sealed record SectionPotentials(int[] Nodes, List<NodePotential>[] Of, IReadOnlyList<ulong[]> Patterns);

    // Joined, patterns in which a node floats with the same others are one entry: there are as many patterns as the wheel has positions.
    private List<NodePotential> Collect(SectionDetail detail, int node, bool apart)
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
                NodePotential floating = new(default, positions, solved.Groups[node]);
                if (apart)
                {
                    potentials.Add(floating);
                }
                else
                {
                    Add(potentials, floating);
                }
            }
            else if (!Complex.IsFinite(volts))
            {
                HasResonance = true;
            }
            else
            {
                Add(potentials, new NodePotential(volts, positions, -1));
            }
        }

        return potentials;
    }

    // Joins positions at which the potential is the same, so that pairs meet few entries.
    internal static void Add(List<NodePotential> potentials, NodePotential next)
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

    private void GiveAlternatives(NetworkSplit split, IReadOnlyList<int> nodes)
    {
        Of.CopyTo(_read, 0);
        _walked.Clear();
        _walk.Begin(split);
        foreach (int n in nodes)
        {
            if (ReferenceEquals(_read[n], _none))
            {
                Of[n] = Could(split, n, _everywhere, split.Roots[n]);
            }
            else if (_read[n].Exists(p => p.Floats >= 0))
            {
                int node = n;
                Of[n] = [.. _read[n].SelectMany(p => p.Floats < 0 ? [p] : Could(split, node, p.Positions, p.Floats))];
            }
        }
    }

    // What a group could take is the same from each of its nodes, and walked once.
    private List<NodePotential> Could(NetworkSplit split, int node, ulong[] positions, int floats)
    {
        foreach ((int walkedFloats, ulong[] walkedPositions, List<NodePotential> could) in _walked)
        {
            if (walkedFloats == floats && walkedPositions.AsSpan().SequenceEqual(positions))
            {
                return could;
            }
        }

        List<NodePotential> found = _walk.From(_read, split, (node, positions, floats), _patternsOf[node]);
        _walked.Add((floats, positions, found));
        return found;
    }
}
