namespace WheelDraft.Engineering;

/// <summary>What inputs matter to each load of one part, looked at position by position.</summary>
/// <remarks>A part may hang together by a node that is at a fixed potential in one state and dead in the next: the copper behind a lifted feed wiper, which an
/// input feeds from behind; a feed behind an input. So inputs that touch a held node are set first, in every way, contacts stand as at each position of the wheel,
/// and only what then still hangs together, and lies between two potentials, can feel the other inputs. Closing an input never opens a short, so what holds a
/// lever, which can, must not be in the part.</remarks>
internal sealed class PartInputs
{
    // Each way in which these inputs stand is looked at for each pattern of contacts.
    private const int MostSetFirst = 8;

    private readonly CircuitModel _model;
    private readonly FaultCase _fault;
    private readonly int[] _contacts;
    private readonly int[] _inputs;
    private readonly IReadOnlyList<int> _loads;
    private readonly int[] _root;
    private readonly HeldAt[] _held;
    private readonly int[] _matters;

    /// <summary>Looks at one part.</summary>
    /// <param name="model">The circuit.</param>
    /// <param name="fault">The fault.</param>
    /// <param name="parts">Its parts.</param>
    /// <param name="number">Which one.</param>
    public PartInputs(CircuitModel model, FaultCase fault, NetworkParts parts, int number)
    {
        (_model, _fault) = (model, fault);
        NetworkPart part = parts.Parts[number];
        _loads = part.Loads;
        _contacts = [.. Enumerable.Range(0, model.Contacts.Count).Where(c => parts.IsIn(c, number) && fault.Contacts[c] != ElementMode.Absent)];
        _inputs = [.. InputMask.Members(part.Inputs)];
        _root = new int[model.NodeCount];
        _held = new HeldAt[model.NodeCount];
        _matters = new int[model.Loads.Count];
        SetFirst = _inputs.Where(i => parts.PartOf[model.Inputs[i].A] < 0 || parts.PartOf[model.Inputs[i].B] < 0).Aggregate(0, (mask, i) => mask | (1 << i));
        MatterToShort = SetFirst;
        IsKnown = InputMask.Count(SetFirst) <= MostSetFirst && !_contacts.Any(c => model.LeverOf(c) is not null) && !_inputs.Any(model.IsHold);
        if (IsKnown)
        {
            Look(parts);
        }
    }

    /// <summary>Whether it could be looked at.</summary>
    public bool IsKnown { get; }

    /// <summary>Inputs that can open a fuse within the part.</summary>
    public int MatterToShort { get; private set; }

    private int SetFirst { get; }

    /// <summary>Inputs that matter to a load, short or no short.</summary>
    public int MatterTo(int load) => SetFirst | _matters[load];

    private void Look(NetworkParts parts)
    {
        ContactPatterns patterns = ContactPatterns.Of(_model.Turn.Positions, _contacts);
        foreach (int closed in InputMask.Subsets(SetFirst))
        {
            foreach (bool[] pattern in patterns.Closed)
            {
                if (Merge(parts, closed, pattern))
                {
                    Feel(withLoads: true);
                    Feel(withLoads: false);
                }
            }
        }
    }

    // False where potentials meet: then nothing else matters.
    private bool Merge(NetworkParts parts, int closed, bool[] pattern)
    {
        parts.Roots.CopyTo(_root);
        foreach (int i in InputMask.Members(closed))
        {
            MergedNodes.Join(_root, _model.Inputs[i].A, _model.Inputs[i].B);
        }

        for (int c = 0; c < _contacts.Length; c++)
        {
            if (pattern[c] || _fault.Contacts[_contacts[c]] == ElementMode.Joined)
            {
                MergedNodes.Join(_root, _model.Contacts[_contacts[c]].A, _model.Contacts[_contacts[c]].B);
            }
        }

        Array.Clear(_held);
        for (int n = 0; n < _root.Length; n++)
        {
            _root[n] = MergedNodes.Find(_root, n);
            _held[_root[n]] |= parts.HoldOf(n);
        }

        return !Array.Exists(_held, SourcePotentials.Clash);
    }

    // With loads: what hangs together by inputs and loads feels its inputs if it lies between two potentials. Without: its inputs alone can short them.
    private void Feel(bool withLoads)
    {
        int[] free = [.. _inputs.Where(i => (SetFirst >> i & 1) == 0)];
        int[] chain = [.. Enumerable.Range(0, _root.Length + free.Length + (withLoads ? _loads.Count : 0))];
        HeldAt[] touches = new HeldAt[chain.Length];
        NetworkElement At(int link) => link < free.Length ? _model.Inputs[free[link]] : _model.Loads[_loads[link - free.Length]];
        int links = chain.Length - _root.Length;
        for (int link = 0; link < links; link++)
        {
            if (link < free.Length || _fault.Loads[_loads[link - free.Length]] != ElementMode.Absent)
            {
                Link(chain, touches, _root.Length + link, At(link));
            }
        }

        for (int link = 0; link < links; link++)
        {
            int own = MergedNodes.Find(chain, _root.Length + link);
            if (own != _root.Length + link)
            {
                touches[own] |= touches[_root.Length + link];
            }
        }

        for (int link = 0; link < links; link++)
        {
            int own = MergedNodes.Find(chain, _root.Length + link);
            if (!SourcePotentials.Clash(touches[own]))
            {
                continue;
            }

            int felt = Enumerable.Range(0, free.Length).Where(f => MergedNodes.Find(chain, _root.Length + f) == own).Aggregate(0, (mask, f) => mask | (1 << free[f]));
            if (!withLoads)
            {
                MatterToShort |= felt;
            }
            else if (link >= free.Length)
            {
                _matters[_loads[link - free.Length]] |= felt;
            }
        }
    }

    private void Link(int[] chain, HeldAt[] touches, int link, NetworkElement ends)
    {
        foreach (int node in (int[])[_root[ends.A], _root[ends.B]])
        {
            if (_held[node] == HeldAt.Nothing)
            {
                MergedNodes.Join(chain, node, link);
            }
            else
            {
                touches[link] |= _held[node];
            }
        }
    }
}
