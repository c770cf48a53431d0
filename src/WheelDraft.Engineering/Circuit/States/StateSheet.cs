namespace WheelDraft.Engineering;

/// <summary>Every load in every state of the circuit under one fault: for each input position a row of wheel positions.</summary>
/// <remarks>Where a line is joined to another, to neutral or to earth a fuse is taken to open and <see cref="Short"/> says so. With one
/// line every load is off there. With three it is not known whose fuse opens first and what the other lines still feed: every load is
/// undecided.</remarks>
internal sealed class StateSheet
{
    // Most numbers of one sheet (64 MiB); two sheets and their neighbours then stay far under half a gibibyte.
    private const long MostWords = 8_000_000;

    private readonly CircuitModel _model;
    private readonly int _loads;
    private readonly int _words;
    private readonly ulong[] _on;
    private readonly ulong[] _undecided;
    private readonly ulong[] _short;

    /// <summary>An empty sheet.</summary>
    /// <exception cref="DesignRefusedException">The circuit has more states than can be kept.</exception>
    public StateSheet(CircuitModel model)
    {
        _model = model;
        _loads = model.Loads.Count;
        _words = BitRow.WordsFor(model.Turn.Positions.Count);
        long size = (long)model.InputPositions * Math.Max(1, _loads) * _words;
        if (size > MostWords)
        {
            throw new DesignRefusedException(
                "circuit.too-large",
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{model.Turn.Positions.Count} positions of the wheel, 2^{model.Inputs.Count} positions of the inputs and {_loads} loads are more states than can be proved; fewer inputs, or edges whose tolerance bands do not overlap, bring it down."),
                model.Brief.PlaceOf("input"));
        }

        _on = new ulong[size];
        _undecided = new ulong[size];
        _short = new ulong[model.InputPositions * _words];
        Fault = new FaultCase(model, new CircuitFault(CircuitFaultKind.None));
    }

    /// <summary>The fault that the sheet was last filled for.</summary>
    public FaultCase Fault { get; private set; }

    /// <summary>Words of one row.</summary>
    public int Words => _words;

    /// <summary>Positions of the wheel at which a load is on.</summary>
    public ReadOnlySpan<ulong> On(int inputs, int load) => _on.AsSpan(((inputs * _loads) + load) * _words, _words);

    /// <summary>Positions of the wheel at which a load is undecided.</summary>
    public ReadOnlySpan<ulong> Undecided(int inputs, int load) => _undecided.AsSpan(((inputs * _loads) + load) * _words, _words);

    /// <summary>Positions of the wheel at which a line is joined to another, to neutral or to earth.</summary>
    public ReadOnlySpan<ulong> Short(int inputs) => _short.AsSpan(inputs * _words, _words);

    /// <summary>State of a load at one instant.</summary>
    public LoadState StateOf(int inputs, int load, int position) =>
        BitRow.Has(On(inputs, load), position) ? LoadState.On
        : BitRow.Has(Undecided(inputs, load), position) ? LoadState.Undecided
        : LoadState.Off;

    /// <summary>Takes the states of another sheet for a fault that leaves the network as it is.</summary>
    public void Copy(StateSheet other, FaultCase fault)
    {
        Fault = fault;
        other._on.CopyTo(_on, 0);
        other._undecided.CopyTo(_undecided, 0);
        other._short.CopyTo(_short, 0);
    }

    /// <summary>Fills the sheet for a fault.</summary>
    public void Fill(FaultCase fault, NetworkSplit split, SectionSolver solver)
    {
        Fault = fault;
        Array.Clear(_on);
        Array.Clear(_undecided);
        Array.Clear(_short);
        for (int inputs = 0; inputs < _model.InputPositions; inputs++)
        {
            FillRow(inputs, split, solver);
        }
    }

    private void FillRow(int inputs, NetworkSplit split, SectionSolver solver)
    {
        Span<ulong> isShort = _short.AsSpan(inputs * _words, _words);
        int first = inputs * _loads * _words;
        if (!split.Split(Fault, inputs))
        {
            BitRow.Full(_model.Turn.Positions.Count).CopyTo(isShort);
            OpenFuse(first, isShort);
            return;
        }

        for (int s = 0; s < split.Count; s++)
        {
            if (!split.IsFed(s))
            {
                continue;
            }

            SectionStates states = solver.States(split.Section(s));
            for (int l = 0; l < states.Loads.Length; l++)
            {
                int at = first + (states.Loads[l] * _words);
                states.On.AsSpan(l * _words, _words).CopyTo(_on.AsSpan(at));
                states.Undecided.AsSpan(l * _words, _words).CopyTo(_undecided.AsSpan(at));
            }

            if (states.Short is not null)
            {
                BitRow.AddAll(isShort, states.Short);
            }
        }

        if (!BitRow.IsEmpty(isShort))
        {
            OpenFuse(first, isShort);
        }
    }

    private void OpenFuse(int first, ReadOnlySpan<ulong> isShort)
    {
        for (int i = first; i < first + (_loads * _words); i++)
        {
            ulong at = isShort[(i - first) % _words];
            _on[i] &= ~at;
            _undecided[i] = _model.Lines.Count > 1 ? _undecided[i] | at : _undecided[i] & ~at;
        }
    }
}
