namespace WheelDraft.Engineering;

/// <summary>One part of the network.</summary>
/// <param name="Inputs">Inputs that matter in it, one bit each.</param>
/// <param name="Nodes">Its nodes; empty for a switch or load between two held nodes.</param>
/// <param name="Loads">Its loads.</param>
/// <param name="IsLive">Whether it touches two potentials of the supply: only then can anything be on or shorted in it.</param>
internal sealed record NetworkPart(int Inputs, IReadOnlyList<int> Nodes, IReadOnlyList<int> Loads, bool IsLive);

/// <summary>Parts of the network that share nothing but nodes held at a fixed potential, under one fault and for every position of wheel and inputs.</summary>
/// <remarks>Two contacts, inputs or loads are of one part when a chain of them, open or closed, there or not, leads from one to the other through nodes that
/// nothing is sure to hold. So whatever a part's inputs do, no other part feels it, but by a fuse that opens: what joins two potentials in one part
/// takes the supply from all. What is held and what is joined here is so at every position: what an input or a contact could still open counts as open.</remarks>
internal sealed class NetworkParts
{
    private readonly CircuitModel _model;
    private readonly FaultCase _fault;
    private readonly int[] _root;
    private readonly HeldAt[] _held;
    private readonly int[] _chain;
    private readonly HeldAt[] _touches;
    private readonly int[] _partOf;
    private readonly int[] _elementPart;

    /// <summary>Finds the parts under a fault.</summary>
    public NetworkParts(CircuitModel model, FaultCase fault)
    {
        (_model, _fault) = (model, fault);
        _root = [.. Enumerable.Range(0, model.NodeCount)];
        _held = new HeldAt[model.NodeCount];
        _chain = [.. Enumerable.Range(0, model.NodeCount + Elements)];
        _touches = new HeldAt[_chain.Length];
        JoinForGood();
        Hold();
        for (int e = 0; e < Elements; e++)
        {
            Chain(e);
        }

        if (model.WheelNode >= 0)
        {
            ChainNodes(model.WheelNode, model.FeedNode);
        }

        for (int n = 0; n < model.NodeCount; n++)
        {
            MergedNodes.Join(_chain, n, _root[n]);
        }

        ChainHolds();
        _partOf = new int[model.NodeCount];
        _elementPart = new int[Elements];
        Parts = Number();
    }

    /// <summary>The parts.</summary>
    public IReadOnlyList<NetworkPart> Parts { get; }

    /// <summary>Whether a line is joined to another, to neutral or to earth whatever contacts and inputs do.</summary>
    public bool IsShortForGood => Array.Exists(_held, SourcePotentials.Clash);

    /// <summary>Part of each node; −1 for one that is held for good.</summary>
    public ReadOnlySpan<int> PartOf => _partOf;

    /// <summary>Part of each contact, then of each load, then of each input; −1 for what joins one potential to itself.</summary>
    public ReadOnlySpan<int> ElementPart => _elementPart;

    /// <summary>Merged node of each node, by what is joined for good.</summary>
    public ReadOnlySpan<int> Roots => _root;

    /// <summary>What holds a node for good.</summary>
    public HeldAt HoldOf(int node) => _held[_root[node]];

    /// <summary>Whether an element is of a part.</summary>
    public bool IsIn(int element, int part) => _elementPart[element] == part;

    private int Elements => _model.Contacts.Count + _model.Loads.Count + _model.Inputs.Count;

    private NetworkElement ElementAt(int element)
    {
        int load = element - _model.Contacts.Count;
        return load < 0 ? _model.Contacts[element] : load < _model.Loads.Count ? _model.Loads[load] : _model.Inputs[load - _model.Loads.Count];
    }

    private ElementMode ModeOf(int element)
    {
        int load = element - _model.Contacts.Count;
        if (load < 0)
        {
            // A lever's contact does what holds the lever, unless the fault keeps it as it is.
            return _model.LeverOf(element) is { } lever && !_fault.IsFixed(lever) ? ElementMode.Working : _fault.Contacts[element];
        }

        int input = load - _model.Loads.Count;
        return input < 0 ? _fault.Loads[load]
            : (_fault.StuckClosed >> input & 1) != 0 ? ElementMode.Joined
            : (_fault.StuckOpen >> input & 1) != 0 ? ElementMode.Absent
            : ElementMode.Working;
    }

    private void JoinForGood()
    {
        if (_model.WheelNode >= 0 && !_fault.FeedOpen)
        {
            MergedNodes.Join(_root, _model.WheelNode, _model.FeedNode);
        }

        if (_fault.JoinA >= 0)
        {
            MergedNodes.Join(_root, _fault.JoinA, _fault.JoinB);
        }

        for (int e = 0; e < Elements; e++)
        {
            if (ModeOf(e) == ElementMode.Joined)
            {
                MergedNodes.Join(_root, ElementAt(e).A, ElementAt(e).B);
            }
        }

        for (int n = 0; n < _root.Length; n++)
        {
            _root[n] = MergedNodes.Find(_root, n);
        }
    }

    private void Hold()
    {
        for (int phase = 0; phase < _model.Lines.Count; phase++)
        {
            if (_model.Lines[phase] != _fault.OpenLine)
            {
                _held[_root[_model.Lines[phase]]] |= SourcePotentials.HeldBy(phase);
            }
        }

        _held[_root[CircuitModel.Earth]] |= HeldAt.Zero;
        if (!_fault.NeutralOpen)
        {
            _held[_root[CircuitModel.Neutral]] |= HeldAt.Zero;
        }
    }

    // An element is a link of its own, so that one between two held nodes has a part too.
    private void Chain(int element)
    {
        NetworkElement ends = ElementAt(element);
        bool isThere = ModeOf(element) != ElementMode.Absent;
        foreach (int node in (int[])[_root[ends.A], _root[ends.B]])
        {
            if (_held[node] == HeldAt.Nothing)
            {
                MergedNodes.Join(_chain, node, _model.NodeCount + element);
            }
            else if (isThere)
            {
                _touches[_model.NodeCount + element] |= _held[node];
            }
        }
    }

    private void ChainNodes(int a, int b)
    {
        if (_held[_root[a]] == HeldAt.Nothing && _held[_root[b]] == HeldAt.Nothing)
        {
            MergedNodes.Join(_chain, _root[a], _root[b]);
        }
    }

    // What holds a lever belongs to the lever's contact.
    private void ChainHolds()
    {
        int firstInput = _model.NodeCount + _model.Contacts.Count + _model.Loads.Count;
        foreach (LeverContact lever in _model.Levers)
        {
            foreach (int hold in ((int[])[lever.BlockedInput, lever.LatchedInput]).Where(h => h >= 0))
            {
                MergedNodes.Join(_chain, _model.NodeCount + lever.Contact, firstInput + hold);
            }
        }
    }

    private List<NetworkPart> Number()
    {
        Dictionary<int, int> number = [];
        int PartAt(int link)
        {
            int chain = MergedNodes.Find(_chain, link);
            return number.TryGetValue(chain, out int known) ? known : number[chain] = number.Count;
        }

        for (int n = 0; n < _partOf.Length; n++)
        {
            _partOf[n] = _held[_root[n]] == HeldAt.Nothing ? PartAt(n) : -1;
        }

        for (int e = 0; e < Elements; e++)
        {
            NetworkElement ends = ElementAt(e);
            HeldAt first = _held[_root[ends.A]];
            bool isIdle = first != HeldAt.Nothing && first == _held[_root[ends.B]] && !IsHold(e);
            _elementPart[e] = isIdle ? -1 : PartAt(_model.NodeCount + e);
        }

        return [.. Enumerable.Range(0, number.Count).Select(PartOfNumber)];
    }

    private bool IsHold(int element) => element - _model.Contacts.Count - _model.Loads.Count is var input && input >= 0 && _model.IsHold(input);

    private NetworkPart PartOfNumber(int part)
    {
        int inputs = 0;
        HeldAt touches = HeldAt.Nothing;
        List<int> loads = [];
        for (int e = 0; e < Elements; e++)
        {
            if (_elementPart[e] != part)
            {
                continue;
            }

            touches |= _touches[_model.NodeCount + e];
            int load = e - _model.Contacts.Count;
            int input = load - _model.Loads.Count;
            inputs |= input >= 0 && ModeOf(e) == ElementMode.Working ? 1 << input : 0;
            if (load >= 0 && input < 0)
            {
                loads.Add(load);
            }
        }

        return new NetworkPart(inputs, [.. Enumerable.Range(0, _partOf.Length).Where(n => _partOf[n] == part)], loads, SourcePotentials.Clash(touches));
    }
}
