namespace WheelDraft.Engineering;

/// <summary>Potentials that a node can be held at, as bits.</summary>
[Flags]
internal enum HeldAt : byte
{
    /// <summary>None: the node's potential follows from the loads.</summary>
    Nothing = 0,

    /// <summary>The first line.</summary>
    Line = 1,

    /// <summary>Zero: neutral or earth.</summary>
    Zero = 2,

    /// <summary>The second line of three.</summary>
    SecondLine = 4,

    /// <summary>The third line of three.</summary>
    ThirdLine = 8,
}

/// <summary>One contact or load of a section, with the merged nodes at its ends, packed into one number.</summary>
/// <param name="Element">Contacts by index, then loads.</param>
/// <param name="A">First merged node, the least of its members.</param>
/// <param name="HeldA">What holds the first.</param>
/// <param name="B">Second merged node.</param>
/// <param name="HeldB">What holds the second.</param>
internal readonly record struct SectionEnd(int Element, int A, HeldAt HeldA, int B, HeldAt HeldB)
{
    /// <summary>18 bits of element, 18 and 4 of each end.</summary>
    public long Packed => ((long)Element << 44) | ((long)A << 26) | ((long)HeldA << 22) | ((long)B << 4) | (long)HeldB;

    /// <summary>What a packed number stands for.</summary>
    public static SectionEnd Unpack(long packed) => new(
        (int)(packed >> 44),
        (int)((packed >> 26) & 0x3FFFF),
        (HeldAt)((packed >> 22) & 15),
        (int)((packed >> 4) & 0x3FFFF),
        (HeldAt)(packed & 15));
}

/// <summary>Splits the network, at one position of the inputs and under one fault, into sections that cannot feel each other.</summary>
/// <remarks>Nodes joined by closed inputs (and by what the fault joins) are merged by union–find. Nodes held at a potential
/// split the rest: two contacts or loads are of one section when a chain of contacts, open or closed, and loads leads from one
/// to the other through nodes that nothing holds. So a section is the same object of study at every angle, and alike sections
/// under different inputs and faults are recognised by their packed ends.</remarks>
internal sealed class NetworkSplit
{
    private readonly CircuitModel _model;
    private readonly int[] _root;
    private readonly int[] _chain;
    private readonly HeldAt[] _held;
    private readonly int[] _bucketOf;
    private readonly long[] _packed;
    private readonly int[] _elementBucket;
    private readonly long[] _sorted;
    private readonly int[] _bucketStart;
    private readonly HeldAt[] _bucketHeld;
    private readonly ElementMode[] _contacts;
    private NetworkParts? _parts;
    private int _part;
    private int _elements;

    /// <summary>A work space for one circuit.</summary>
    public NetworkSplit(CircuitModel model)
    {
        _model = model;
        int elements = model.Contacts.Count + model.Loads.Count;
        _root = new int[model.NodeCount];
        _chain = new int[model.NodeCount];
        _held = new HeldAt[model.NodeCount];
        _bucketOf = new int[model.NodeCount];
        _contacts = new ElementMode[model.Contacts.Count];
        _packed = new long[elements];
        _elementBucket = new int[elements];
        _sorted = new long[elements];
        _bucketStart = new int[elements + 2];
        _bucketHeld = new HeldAt[elements + 1];
    }

    /// <summary>Merged node of each node, after a split: the least of its members.</summary>
    public ReadOnlySpan<int> Roots => _root;

    /// <summary>What holds each merged node.</summary>
    public ReadOnlySpan<HeldAt> Held => _held;

    /// <summary>Number of sections.</summary>
    public int Count { get; private set; }

    /// <summary>Packed ends of a section's contacts and loads, by rising element.</summary>
    public ReadOnlySpan<long> Section(int index) => _sorted.AsSpan(_bucketStart[index].._bucketStart[index + 1]);

    /// <summary>Whether a section lies between two potentials of the supply, so that anything can flow or be shorted in it.</summary>
    public bool IsFed(int index) => SourcePotentials.Clash(_bucketHeld[index]);

    /// <summary>Splits one part by itself, as if nothing else were there; false when a line is joined in it to another, to neutral or to earth whatever the contacts do.</summary>
    public bool Split(FaultCase fault, int inputs, NetworkParts parts, int part)
    {
        (_parts, _part) = (parts, part);
        bool isSplit = SplitScope(fault, inputs);
        _parts = null;
        return isSplit;
    }

    /// <summary>Splits; false when a line is joined to another, to neutral or to earth whatever the contacts do.</summary>
    public bool Split(FaultCase fault, int inputs) => SplitScope(fault, inputs);

    private bool IsInScope(int element) => _parts is null || _parts.ElementPart[element] == _part;

    private bool SplitScope(FaultCase fault, int inputs)
    {
        for (int c = 0; c < _contacts.Length; c++)
        {
            _contacts[c] = fault.ModeAt(c, inputs);
        }

        Merge(fault, fault.Actual(inputs));
        Array.Clear(_held);
        for (int phase = 0; phase < _model.Lines.Count; phase++)
        {
            if (_model.Lines[phase] != fault.OpenLine)
            {
                _held[_root[_model.Lines[phase]]] |= SourcePotentials.HeldBy(phase);
            }
        }

        _held[_root[CircuitModel.Earth]] |= HeldAt.Zero;
        if (!fault.NeutralOpen)
        {
            _held[_root[CircuitModel.Neutral]] |= HeldAt.Zero;
        }

        Count = 0;
        if (Array.Exists(_held, SourcePotentials.Clash))
        {
            return false;
        }

        CollectElements(fault);
        Sort();
        return true;
    }

    private void Merge(FaultCase fault, int closedInputs)
    {
        for (int n = 0; n < _root.Length; n++)
        {
            _root[n] = n;
        }

        if (_model.WheelNode >= 0 && !fault.FeedOpen)
        {
            MergedNodes.Join(_root, _model.WheelNode, _model.FeedNode);
        }

        if (fault.JoinA >= 0)
        {
            MergedNodes.Join(_root, fault.JoinA, fault.JoinB);
        }

        for (int i = 0; i < _model.Inputs.Count; i++)
        {
            if ((closedInputs >> i & 1) != 0 && ((fault.StuckClosed >> i & 1) != 0 || IsInScope(_contacts.Length + _model.Loads.Count + i)))
            {
                MergedNodes.Join(_root, _model.Inputs[i].A, _model.Inputs[i].B);
            }
        }

        // What is joined for good holds nodes of every part; the contact of a lever that can still move only those of its own.
        for (int c = 0; c < _contacts.Length; c++)
        {
            bool forGood = _model.LeverOf(c) is not { } lever || fault.IsFixed(lever);
            if (_contacts[c] == ElementMode.Joined && (forGood || IsInScope(c)))
            {
                MergedNodes.Join(_root, _model.Contacts[c].A, _model.Contacts[c].B);
            }
        }

        JoinAll(_model.Loads, fault.Loads);
        for (int n = 0; n < _root.Length; n++)
        {
            _root[n] = MergedNodes.Find(_root, n);
        }
    }

    private void JoinAll(IReadOnlyList<NetworkElement> elements, ElementMode[] modes)
    {
        for (int e = 0; e < modes.Length; e++)
        {
            if (modes[e] == ElementMode.Joined)
            {
                MergedNodes.Join(_root, elements[e].A, elements[e].B);
            }
        }
    }

    private void CollectElements(FaultCase fault)
    {
        for (int n = 0; n < _chain.Length; n++)
        {
            _chain[n] = n;
            _bucketOf[n] = -1;
        }

        _elements = 0;
        Collect(_model.Contacts, _contacts, 0);
        Collect(_model.Loads, fault.Loads, _model.Contacts.Count);
    }

    private void Collect(IReadOnlyList<NetworkElement> elements, ElementMode[] modes, int first)
    {
        for (int e = 0; e < modes.Length; e++)
        {
            int a = _root[elements[e].A];
            int b = _root[elements[e].B];
            if (modes[e] != ElementMode.Working || !IsInScope(first + e) || a == b || (_held[a] == _held[b] && _held[a] != HeldAt.Nothing))
            {
                continue;
            }

            if (_held[a] == HeldAt.Nothing && _held[b] == HeldAt.Nothing)
            {
                MergedNodes.Join(_chain, a, b);
            }

            _packed[_elements++] = new SectionEnd(first + e, a, _held[a], b, _held[b]).Packed;
        }
    }

    // Counting sort by section, keeping the order of elements.
    private void Sort()
    {
        for (int i = 0; i < _elements; i++)
        {
            int bucket = BucketOf(SectionEnd.Unpack(_packed[i]));
            _elementBucket[i] = bucket;
            _bucketStart[bucket + 1]++;
        }

        for (int s = 0; s < Count; s++)
        {
            _bucketStart[s + 1] += _bucketStart[s];
        }

        for (int i = _elements - 1; i >= 0; i--)
        {
            // Filled from the back: each start ends where its section begins.
            _sorted[--_bucketStart[_elementBucket[i] + 1]] = _packed[i];
        }

        for (int s = 0; s < Count; s++)
        {
            _bucketStart[s] = _bucketStart[s + 1];
        }

        _bucketStart[Count] = _elements;
    }

    private int BucketOf(SectionEnd end)
    {
        int bucket;
        if (end.HeldA != HeldAt.Nothing && end.HeldB != HeldAt.Nothing)
        {
            bucket = OpenBucket();
        }
        else
        {
            int chain = MergedNodes.Find(_chain, end.HeldA == HeldAt.Nothing ? end.A : end.B);
            bucket = _bucketOf[chain] < 0 ? _bucketOf[chain] = OpenBucket() : _bucketOf[chain];
        }

        _bucketHeld[bucket] |= end.HeldA | end.HeldB;
        return bucket;
    }

    private int OpenBucket()
    {
        if (Count == 0)
        {
            _bucketStart[0] = 0;
        }

        _bucketHeld[Count] = HeldAt.Nothing;
        _bucketStart[Count + 1] = 0;
        return Count++;
    }
}
