namespace WheelDraft.Engineering;

/// <summary>The largest r.m.s. voltage between two nets over every reachable state.</summary>
/// <param name="First">One net, first in ordinal order.</param>
/// <param name="Second">The other net.</param>
/// <param name="VoltageV">The voltage.</param>
/// <param name="Where">The state that decides it, in words.</param>
public sealed record WorkingVoltage(string First, string Second, double VoltageV, string Where);

/// <summary>Finds the largest voltage between every two nets.</summary>
/// <remarks>Two nets of one part are compared in every state of that part; two of different parts by all that each can take, because their inputs move apart.</remarks>
internal sealed class WorkingVoltageSearch
{
    private readonly CircuitModel _model;
    private readonly NetworkSplit _split;
    private readonly SectionSolver _solver;
    private readonly NodePotentials _now;
    private readonly LargestVoltages _largest;
    private readonly List<NodePotential>?[] _apart;
    private ulong[] _soundReach = [];
    private PartPotentials[]? _sound;
    private NetworkParts? _soundParts;

    /// <summary>A search over one circuit.</summary>
    public WorkingVoltageSearch(CircuitModel model, NetworkSplit split, SectionSolver solver)
    {
        (_model, _split, _solver) = (model, split, solver);
        _now = new NodePotentials(model);
        _apart = new List<NodePotential>?[model.NodeCount];
        _largest = new LargestVoltages(model);
    }

    /// <summary>Whether some block was in resonance without resistance.</summary>
    public bool HasResonance => _now.HasResonance;

    /// <summary>Counts the reachable states without fault; to be called first.</summary>
    public void CountSound(FaultCase none, ulong[] reach)
    {
        _soundReach = reach;
        (_soundParts, _sound) = Count(none, reach);
        _solver.KeepDetails();
        _now.Keep();
    }

    /// <summary>Counts the reachable states under a fault.</summary>
    public void CountFaulty(FaultCase fault, ulong[] reach)
    {
        Count(fault, reach);
        _solver.ForgetDetails();
        _now.Forget();
    }

    /// <summary>The voltages of every pair of nets, in ordinal order.</summary>
    public IReadOnlyList<WorkingVoltage> Result() => _largest.Result();

    private (NetworkParts Parts, PartPotentials[]? Of) Count(FaultCase fault, ulong[] reach)
    {
        NetworkParts parts = new(_model, fault);
        PartPotentials[] all = [.. parts.Parts.Select(p => new PartPotentials(p, _model.Potentials))];
        if (parts.IsShortForGood || !FindBases(fault, parts, all))
        {
            return (parts, null);
        }

        PartPotentials[]? known = reach.AsSpan().SequenceEqual(_soundReach) && IsCutAsSound(parts) ? _sound : null;
        int open = all.Sum(p => p.Base);
        bool hasPairs = all.Count(p => p.Part.Nodes.Count > 0) > 1;
        int[] held = [.. Enumerable.Range(0, _model.NodeCount).Where(n => parts.PartOf[n] < 0)];
        if (known is null)
        {
            CountHeld(fault, reach, held, open);
        }

        for (int p = 0; p < all.Length; p++)
        {
            if (known is not null && !Touches(fault, parts, p))
            {
                all[p] = known[p];
            }
            else if (all[p].Part.Nodes.Count > 0)
            {
                CountPart((fault, parts, p), all[p], known?[p], new Around(reach, held, open - all[p].Base, hasPairs));
            }
        }

        if (hasPairs)
        {
            new PartPairs(_model, _largest, (node, inputs) => ApartAt(fault, parts, node, inputs)).Count(fault, reach, all, known);
        }

        return (parts, all);
    }

    /// <summary>What lies around a part.</summary>
    /// <param name="Reach">Positions that may be reached.</param>
    /// <param name="Held">Nodes held for good.</param>
    /// <param name="Inputs">Positions of the other parts' inputs.</param>
    /// <param name="HasOthers">Whether any other part has nets to compare with.</param>
    private sealed record Around(ulong[] Reach, int[] Held, int Inputs, bool HasOthers);

    // A state in which a line is shorted counts for no pair: each part needs a position of its inputs without.
    private bool FindBases(FaultCase fault, NetworkParts parts, PartPotentials[] all)
    {
        for (int p = 0; p < all.Length; p++)
        {
            InputBudget.Ask(_model, all[p].Part.Inputs, fault.Fault);
            int part = p;
            all[p].Base = InputMask.Subsets(all[p].Part.Inputs).Cast<int?>().FirstOrDefault(u => _split.Split(fault, u!.Value, parts, part)) ?? -1;
            if (all[p].Base < 0)
            {
                return false;
            }
        }

        return true;
    }

    private bool IsCutAsSound(NetworkParts parts) => _sound is not null && _soundParts is not null
        && parts.PartOf.SequenceEqual(_soundParts.PartOf)
        && parts.Parts.Select(p => p.Inputs).SequenceEqual(_soundParts.Parts.Select(p => p.Inputs));

    // An open load is felt in its own part alone; of other faults that is not asked.
    private bool Touches(FaultCase fault, NetworkParts parts, int part) => fault.Fault.Kind != CircuitFaultKind.LoadOpen
        || Enumerable.Range(0, _model.Loads.Count).Any(l => fault.Loads[l] == ElementMode.Absent && parts.ElementPart[_model.Contacts.Count + l] == part);

    private void CountHeld(FaultCase fault, ulong[] reach, int[] held, int inputs)
    {
        _split.Split(fault, inputs);
        _now.Read(_split, _solver, []);
        foreach (int a in held)
        {
            foreach (int b in held.Where(b => b > a))
            {
                _largest.Raise((a, b), (fault, inputs), reach, (_now.Of[a], _now.Of[b]));
            }
        }
    }

    private void CountPart((FaultCase Fault, NetworkParts Parts, int Number) of, PartPotentials part, PartPotentials? known, Around around)
    {
        IReadOnlyList<int> nodes = part.Part.Nodes;
        int[] all = [.. nodes.Concat(around.Held).Order()];
        bool isSound = of.Fault.Fault.Kind == CircuitFaultKind.None;
        part.Lists = new List<NodePotential>?[]?[isSound ? InputMask.Positions(part.Part.Inputs) : 0];
        int at = -1;
        foreach (int inputs in InputMask.Subsets(part.Part.Inputs))
        {
            at++;
            if (!_split.Split(of.Fault, inputs, of.Parts, of.Number))
            {
                continue;
            }

            _now.Read(_split, _solver, nodes);
            Array.Clear(_apart);
            CountPairs(all, Same(nodes, known?.Lists[at], around.Held), (of.Fault, inputs | around.Inputs), around.Reach);
            List<NodePotential>?[] here = new List<NodePotential>?[nodes.Count];
            for (int n = 0; n < here.Length; n++)
            {
                // What floats is never met again as the same list: not kept.
                here[n] = _now.Floats(nodes[n]) ? null : _now.Of[nodes[n]];
                part.IsChanged[n] |= here[n] is null || !ReferenceEquals(here[n], known?.Lists[at]?[n]);
                if (around.HasOthers)
                {
                    part.Take(n, inputs, _now.Of[nodes[n]]);
                }
            }

            if (isSound)
            {
                part.Lists[at] = here;
            }
        }
    }

    private HashSet<int> Same(IReadOnlyList<int> nodes, List<NodePotential>?[]? known, int[] held)
    {
        HashSet<int> same = [.. held];
        for (int n = 0; known is not null && n < nodes.Count; n++)
        {
            if (ReferenceEquals(known[n], _now.Of[nodes[n]]))
            {
                same.Add(nodes[n]);
            }
        }

        return same;
    }

    // Pairs in which neither net's potentials differ from those without fault were counted there; held nets never differ, and theirs are counted by themselves.
    private void CountPairs(int[] nodes, HashSet<int> same, (FaultCase Fault, int Inputs) state, ulong[] reach)
    {
        for (int i = 0; i < nodes.Length; i++)
        {
            for (int j = i + 1; j < nodes.Length; j++)
            {
                if (!(same.Contains(nodes[i]) && same.Contains(nodes[j])))
                {
                    CountPair((nodes[i], nodes[j]), state, reach);
                }
            }
        }
    }

    // Which of several positions is told depends on the order of what floats: it is looked up apart, once a pair is known to rise.
    private void CountPair((int A, int B) pair, (FaultCase Fault, int Inputs) state, ulong[] reach)
    {
        if (!_now.Floats(pair.A) && !_now.Floats(pair.B))
        {
            _largest.Raise(pair, state, reach, (_now.Of[pair.A], _now.Of[pair.B]));
        }
        else if (_largest.Rises(pair, reach, (_now.Of[pair.A], _now.Of[pair.B])))
        {
            _largest.Raise(pair, state, reach, (Apart(pair.A), Apart(pair.B)));
        }
    }

    private List<NodePotential> Apart(int node) => _apart[node] ??= _now.Apart(node, _split, _solver);

    private List<NodePotential> ApartAt(FaultCase fault, NetworkParts parts, int node, int inputs)
    {
        int part = parts.PartOf[node];
        _split.Split(fault, inputs & parts.Parts[part].Inputs, parts, part);
        _now.Read(_split, _solver, parts.Parts[part].Nodes);
        return _now.Apart(node, _split, _solver);
    }
}
