namespace WheelDraft.Engineering;

/// <summary>Every load in every state of the circuit under one fault: for each position of the inputs that matter to it a row of wheel positions.</summary>
/// <remarks>Each part of the network is solved for its own inputs alone (<see cref="NetworkParts"/>). Where a line is joined to another, to neutral or to earth a
/// fuse is taken to open and <see cref="Short"/> says so. With one line every load is off there. With three it is not known whose fuse opens first and what the
/// other lines still feed: every load is undecided. So inputs that can open a fuse matter to every load.</remarks>
internal sealed class StateSheet
{
    // Most numbers of one sheet (64 MiB); two sheets and their neighbours then stay far under half a gibibyte.
    private const long MostWords = 8_000_000;

    private readonly CircuitModel _model;
    private readonly int _mostTogether;
    private readonly int _words;
    private readonly int[] _matters;
    private readonly ulong[][] _on;
    private readonly ulong[][] _undecided;
    private ulong[] _short = [];
    private long _taken;

    /// <summary>An empty sheet.</summary>
    /// <param name="model">The circuit.</param>
    /// <param name="mostTogether">States of one part beyond which it is asked, position by position, what matters to each of its loads.</param>
    public StateSheet(CircuitModel model, int mostTogether = Budgets.CircuitStates)
    {
        (_model, _mostTogether) = (model, mostTogether);
        _words = BitRow.WordsFor(model.Turn.Positions.Count);
        _matters = new int[model.Loads.Count];
        _on = [.. model.Loads.Select(_ => Array.Empty<ulong>())];
        _undecided = [.. model.Loads.Select(_ => Array.Empty<ulong>())];
        Fault = new FaultCase(model, new CircuitFault(CircuitFaultKind.None));
    }

    /// <summary>The fault that the sheet was last filled for.</summary>
    public FaultCase Fault { get; private set; }

    /// <summary>Words of one row.</summary>
    public int Words => _words;

    /// <summary>Inputs that may open a fuse, one bit each; all others leave <see cref="Short"/> as it is.</summary>
    public int MatterToShort { get; private set; }

    /// <summary>Inputs that may matter to the motor and to the fuses: no other changes how the wheel moves.</summary>
    public int MatterToMotion => MatterToShort | (_model.Motor < 0 ? 0 : _matters[_model.Motor]);

    /// <summary>Inputs that may matter to a load, one bit each: all others leave it as it is.</summary>
    public int MatterTo(int load) => _matters[load];

    /// <summary>Positions of the wheel at which a load is on.</summary>
    public ReadOnlySpan<ulong> On(int inputs, int load) => Row(_on[load], inputs, _matters[load]);

    /// <summary>Positions of the wheel at which a load is undecided.</summary>
    public ReadOnlySpan<ulong> Undecided(int inputs, int load) => Row(_undecided[load], inputs, _matters[load]);

    /// <summary>Positions of the wheel at which a line is joined to another, to neutral or to earth.</summary>
    public ReadOnlySpan<ulong> Short(int inputs) => Row(_short, inputs, MatterToShort);

    /// <summary>State of a load at one instant.</summary>
    public LoadState StateOf(int inputs, int load, int position) =>
        BitRow.Has(On(inputs, load), position) ? LoadState.On
        : BitRow.Has(Undecided(inputs, load), position) ? LoadState.Undecided
        : LoadState.Off;

    /// <summary>Takes the states of another sheet for a fault that leaves the network as it is.</summary>
    public void Copy(StateSheet other, FaultCase fault)
    {
        Fault = fault;
        MatterToShort = other.MatterToShort;
        _short = [.. other._short];
        for (int l = 0; l < _on.Length; l++)
        {
            Give(l, other._matters[l], [.. other._on[l]], [.. other._undecided[l]]);
        }
    }

    /// <summary>Fills the sheet for a fault.</summary>
    /// <exception cref="DesignRefusedException">More inputs matter together than can be proved.</exception>
    public void Fill(FaultCase fault, NetworkSplit split, SectionSolver solver)
    {
        Fault = fault;
        MatterToShort = 0;
        _short = new ulong[_words];
        NetworkParts parts = new(_model, fault);
        HashSet<int> live = [.. parts.Parts.Where(p => p.IsLive && !parts.IsShortForGood).SelectMany(p => p.Loads)];
        foreach (int l in Enumerable.Range(0, _on.Length).Where(l => !live.Contains(l)))
        {
            Give(l, 0, Cleared(_on[l], _words), Cleared(_undecided[l], _words));
        }

        if (parts.IsShortForGood)
        {
            _short = BitRow.Full(_model.Turn.Positions.Count);
        }
        else
        {
            FillParts(parts, split, solver);
        }

        if (!BitRow.IsEmpty(_short))
        {
            OpenFuses();
        }
    }

    private ReadOnlySpan<ulong> Row(ulong[] rows, int inputs, int matters) => rows.AsSpan(InputMask.Index(inputs, matters) * _words, _words);

    private void Give(int load, int matters, ulong[] on, ulong[] undecided) => (_matters[load], _on[load], _undecided[load]) = (matters, on, undecided);

    // Rows of the last fault are taken again where they fit: most faults leave the parts as they were.
    private static ulong[] Cleared(ulong[] rows, int size)
    {
        if (rows.Length != size)
        {
            return new ulong[size];
        }

        Array.Clear(rows);
        return rows;
    }

    private void FillParts(NetworkParts parts, NetworkSplit split, SectionSolver solver)
    {
        List<(int Inputs, ulong[] Short)> shorts = [];
        _taken = 0;
        for (int p = 0; p < parts.Parts.Count; p++)
        {
            if (!parts.Parts[p].IsLive)
            {
                continue;
            }

            (int inputs, ulong[] isShort) = FillPart(new Filling(parts, p, split, solver));
            if (!BitRow.IsEmpty(isShort))
            {
                shorts.Add((inputs, isShort));
            }
        }

        JoinShorts(shorts);
    }

    private sealed record Filling(NetworkParts Parts, int Number, NetworkSplit Split, SectionSolver Solver)
    {
        public NetworkPart Part => Parts.Parts[Number];
    }

    // A part whose inputs are too many together is filled load by load, as far as it is known what matters to each.
    private (int Inputs, ulong[] Short) FillPart(Filling filling)
    {
        NetworkPart part = filling.Part;
        PartInputs? known = (long)_model.Turn.Intervals.Count << InputMask.Count(part.Inputs) > _mostTogether ? new PartInputs(_model, Fault, filling.Parts, filling.Number) : null;
        if (known is not { IsKnown: true })
        {
            return (part.Inputs, FillLoads(filling, part.Inputs, [.. part.Loads]));
        }

        foreach (IGrouping<int, int> alike in part.Loads.GroupBy(known.MatterTo))
        {
            FillLoads(filling, alike.Key, [.. alike]);
        }

        return (known.MatterToShort, FillLoads(filling, known.MatterToShort, []));
    }

    private void Afford(int inputs, int rows)
    {
        InputBudget.Ask(_model, inputs, Fault.Fault);
        _taken += (long)InputMask.Positions(inputs) * rows * _words;
        if (_taken > MostWords)
        {
            throw new DesignRefusedException(
                "circuit.too-large",
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{_model.Turn.Positions.Count} positions of the wheel, 2^{InputMask.Count(inputs)} positions of the inputs and {_on.Length} loads are more states than can be proved; fewer inputs, or edges whose tolerance bands do not overlap, bring it down."),
                _model.Brief.PlaceOf("input"));
        }
    }

    // Rows of some loads of a part over the inputs that matter to them; gives where the part is shorted.
    private ulong[] FillLoads(Filling filling, int matters, HashSet<int> loads)
    {
        Afford(matters, Math.Max(1, loads.Count));
        int size = InputMask.Positions(matters) * _words;
        foreach (int load in loads)
        {
            Give(load, matters, Cleared(_on[load], size), Cleared(_undecided[load], size));
        }

        ulong[] isShort = new ulong[size];
        int row = 0;
        foreach (int inputs in InputMask.Subsets(matters))
        {
            if (filling.Split.Split(Fault, inputs, filling.Parts, filling.Number))
            {
                FillRow(filling, loads, isShort.AsSpan(row, _words), row);
            }
            else
            {
                BitRow.Full(_model.Turn.Positions.Count).CopyTo(isShort.AsSpan(row));
            }

            row += _words;
        }

        return isShort;
    }

    private void FillRow(Filling filling, HashSet<int> loads, Span<ulong> isShort, int row)
    {
        for (int s = 0; s < filling.Split.Count; s++)
        {
            if (!filling.Split.IsFed(s))
            {
                continue;
            }

            SectionStates states = filling.Solver.States(filling.Split.Section(s));
            for (int l = 0; l < states.Loads.Length; l++)
            {
                if (loads.Contains(states.Loads[l]))
                {
                    states.On.AsSpan(l * _words, _words).CopyTo(_on[states.Loads[l]].AsSpan(row));
                    states.Undecided.AsSpan(l * _words, _words).CopyTo(_undecided[states.Loads[l]].AsSpan(row));
                }
            }

            if (states.Short is not null)
            {
                BitRow.AddAll(isShort, states.Short);
            }
        }
    }

    private void JoinShorts(List<(int Inputs, ulong[] Short)> shorts)
    {
        foreach ((int inputs, _) in shorts)
        {
            MatterToShort |= inputs;
        }

        InputBudget.Ask(_model, MatterToShort, Fault.Fault);
        _short = new ulong[InputMask.Positions(MatterToShort) * _words];
        int row = 0;
        foreach (int inputs in InputMask.Subsets(MatterToShort))
        {
            foreach ((int matters, ulong[] isShort) in shorts)
            {
                BitRow.AddAll(_short.AsSpan(row, _words), Row(isShort, inputs, matters));
            }

            row += _words;
        }
    }

    // Behind an open fuse a load is off, or undecided where other lines may still feed it, and so depends on what opens the fuse.
    private void OpenFuses()
    {
        bool isOneLine = _model.Lines.Count == 1;
        for (int l = 0; l < _on.Length; l++)
        {
            if (isOneLine && BitRow.IsEmpty(_on[l]) && BitRow.IsEmpty(_undecided[l]))
            {
                Give(l, 0, new ulong[_words], new ulong[_words]);
                continue;
            }

            int matters = _matters[l] | MatterToShort;
            InputBudget.Ask(_model, matters, Fault.Fault);
            int size = InputMask.Positions(matters) * _words;
            ulong[] on = new ulong[size];
            ulong[] undecided = new ulong[size];
            int row = 0;
            foreach (int inputs in InputMask.Subsets(matters))
            {
                ReadOnlySpan<ulong> isShort = Short(inputs);
                ReadOnlySpan<ulong> wasOn = On(inputs, l);
                ReadOnlySpan<ulong> wasUndecided = Undecided(inputs, l);
                for (int w = 0; w < _words; w++)
                {
                    on[row + w] = wasOn[w] & ~isShort[w];
                    undecided[row + w] = isOneLine ? wasUndecided[w] & ~isShort[w] : wasUndecided[w] | isShort[w];
                }

                row += _words;
            }

            Give(l, matters, on, undecided);
        }
    }
}
