namespace WheelDraft.Engineering;

/// <summary>Whether a claim was proved.</summary>
public enum InterlockVerdict
{
    /// <summary>Proved over every reachable state, and every single fault where asked.</summary>
    Holds,

    /// <summary>Refuted, with a history.</summary>
    Fails,

    /// <summary>Neither: a load or the motor is between drop-out and pull-in, or the tolerance bands allow too many orders.</summary>
    Undecided,
}

/// <summary>One interlock, ready to be judged on any sheet.</summary>
internal sealed class InterlockJudge
{
    private readonly CircuitModel _model;
    private readonly InterlockBrief _brief;
    private readonly ulong[] _between;
    private readonly List<int> _closedContacts = [];
    private readonly List<int> _openContacts = [];
    private readonly List<LeverContact> _trueLevers = [];
    private readonly List<LeverContact> _falseLevers = [];

    /// <summary>Looks up the names of an interlock.</summary>
    /// <exception cref="DesignRefusedException">A name that the circuit does not have.</exception>
    public InterlockJudge(CircuitModel model, int index)
    {
        _model = model;
        _brief = model.Brief.Interlocks[index];
        Loads = [.. _brief.Loads.Select(name => Find(model.Loads, name) is var l && l >= 0 ? l : throw Unknown(name, "load", index))];
        ClosedInputs = Sort(_brief.WhileClosed, _closedContacts, index);
        OpenInputs = Sort(_brief.WhileOpen, _openContacts, index);
        TrueInputs = Meanings(_brief.WhileTrue, _trueLevers, index);
        FalseInputs = Meanings(_brief.WhileFalse, _falseLevers, index);
        _between = BitRow.Empty(model.Turn.Positions.Count);
        for (int p = 0; p < model.Turn.Positions.Count; p++)
        {
            BitRow.Put(_between, p, _brief.Between is not { } arc || model.Turn.Positions[p].MayLieIn(arc, TurnPositions.SameAngleRad));
        }
    }

    /// <summary>What was claimed.</summary>
    public InterlockBrief Brief => _brief;

    /// <summary>Indices of the loads.</summary>
    public IReadOnlyList<int> Loads { get; }

    /// <summary>Contacts named as conditions.</summary>
    public IEnumerable<int> Conditions => _closedContacts.Concat(_openContacts);

    /// <summary>Inputs that decide whether its conditions are met.</summary>
    public int ConditionInputs => ClosedInputs | OpenInputs | TrueInputs | FalseInputs
        | HoldsOf(_trueLevers) | HoldsOf(_falseLevers) | HoldsOf(Conditions.Select(_model.LeverOf).OfType<LeverContact>());

    private static int HoldsOf(IEnumerable<LeverContact> levers) =>
        levers.Aggregate(0, (mask, l) => mask | (l.BlockedInput < 0 ? 0 : 1 << l.BlockedInput) | (l.LatchedInput < 0 ? 0 : 1 << l.LatchedInput));

    /// <summary>Inputs that matter to it on a sheet: to its conditions and to its loads.</summary>
    public int MatterTo(StateSheet sheet) => Loads.Aggregate(ConditionInputs, (mask, l) => mask | sheet.MatterTo(l));

    private int ClosedInputs { get; }

    private int OpenInputs { get; }

    private int TrueInputs { get; }

    private int FalseInputs { get; }

    /// <summary>Inputs whose contact alone is asked, by name: the interlock says nothing of a stuck one.</summary>
    public IReadOnlyList<string> ContactInputs =>
        [.. _model.Inputs.Where((_, i) => ((ClosedInputs | OpenInputs) >> i & 1) != 0).Select(i => i.Name), .. Conditions.Where(c => c >= _model.Outputs).Select(c => _model.Contacts[c].Name)];

    /// <summary>Whether a fault keeps the interlock from asking anything: the contact of an input that it asks is stuck the other way.</summary>
    public bool IsBlindTo(FaultCase fault) => (fault.StuckClosed & OpenInputs) != 0 || (fault.StuckOpen & ClosedInputs) != 0
        || IsStuck(fault, _openContacts, ElementMode.Joined) || IsStuck(fault, _closedContacts, ElementMode.Absent);

    private bool IsStuck(FaultCase fault, List<int> contacts, ElementMode mode) =>
        contacts.Exists(c => _model.LeverOf(c) is { } lever && fault.IsFixed(lever) && fault.Contacts[c] == mode);

    /// <summary>Whether the interlock says anything at an input position.</summary>
    /// <param name="fault">Decides what contacts really do.</param>
    /// <param name="inputs">What the inputs sense, one bit each.</param>
    public bool AppliesTo(FaultCase fault, int inputs)
    {
        int actual = fault.Actual(inputs);
        return (actual & ClosedInputs) == ClosedInputs && (actual & OpenInputs) == 0
            && (inputs & TrueInputs) == TrueInputs && (inputs & FalseInputs) == 0
            && _trueLevers.TrueForAll(l => l.Means(inputs)) && !_falseLevers.Exists(l => l.Means(inputs));
    }

    /// <summary>Whether its conditions are all met at some of the positions.</summary>
    public bool AppliesIn(StateSheet sheet, ulong[] reach)
    {
        ulong[] row = new ulong[sheet.Words];
        foreach (int inputs in InputMask.Subsets(ConditionInputs))
        {
            if (AppliesTo(sheet.Fault, inputs))
            {
                reach.CopyTo(row, 0);
                Restrict(sheet.Fault, inputs, row);
                if (!BitRow.IsEmpty(row))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Positions at which the claim is broken, or may be.</summary>
    /// <param name="sheet">The states.</param>
    /// <param name="inputs">The input position.</param>
    /// <param name="broken">Positions at which it is broken, out.</param>
    /// <param name="unsure">Positions at which a load is undecided, out.</param>
    public void Mark(StateSheet sheet, int inputs, Span<ulong> broken, Span<ulong> unsure)
    {
        broken.Clear();
        unsure.Clear();
        if (!AppliesTo(sheet.Fault, inputs))
        {
            return;
        }

        if (_brief.Claim == InterlockClaim.NeverTogether)
        {
            MarkTogether(sheet, inputs, broken, unsure);
        }
        else
        {
            MarkEach(sheet, inputs, broken, unsure);
        }

        Restrict(sheet.Fault, inputs, broken);
        Restrict(sheet.Fault, inputs, unsure);
    }

    private void MarkEach(StateSheet sheet, int inputs, Span<ulong> broken, Span<ulong> unsure)
    {
        foreach (int load in Loads)
        {
            ReadOnlySpan<ulong> on = sheet.On(inputs, load);
            ReadOnlySpan<ulong> undecided = sheet.Undecided(inputs, load);
            for (int w = 0; w < broken.Length; w++)
            {
                broken[w] |= _brief.Claim == InterlockClaim.NeverOn ? on[w] : ~(on[w] | undecided[w]);
                unsure[w] |= undecided[w];
            }
        }
    }

    // Broken where every load is on; unsure where none is off for certain and not every one is on for certain.
    private void MarkTogether(StateSheet sheet, int inputs, Span<ulong> broken, Span<ulong> unsure)
    {
        broken.Fill(ulong.MaxValue);
        unsure.Fill(ulong.MaxValue);
        foreach (int load in Loads)
        {
            ReadOnlySpan<ulong> on = sheet.On(inputs, load);
            ReadOnlySpan<ulong> undecided = sheet.Undecided(inputs, load);
            for (int w = 0; w < broken.Length; w++)
            {
                broken[w] &= on[w];
                unsure[w] &= on[w] | undecided[w];
            }
        }

        for (int w = 0; w < broken.Length; w++)
        {
            unsure[w] &= ~broken[w];
        }
    }

    private static int Find(IReadOnlyList<NetworkElement> elements, string name)
    {
        for (int i = 0; i < elements.Count; i++)
        {
            if (string.Equals(elements[i].Name, name, StringComparison.Ordinal))
            {
                return i;
            }
        }

        return -1;
    }

    private int Sort(IReadOnlyList<string> names, List<int> contacts, int index)
    {
        int inputs = 0;
        foreach (string name in names)
        {
            int input = Find(_model.Inputs, name);
            int contact = Find(_model.Contacts, name);
            if (input >= 0)
            {
                inputs |= 1 << input;
            }
            else
            {
                contacts.Add(contact >= 0 ? contact : throw Unknown(name, "input or output", index));
            }
        }

        return inputs;
    }

    private int Meanings(IReadOnlyList<string> names, List<LeverContact> levers, int index)
    {
        int inputs = 0;
        foreach (string name in names)
        {
            if (_model.Levers.FirstOrDefault(l => string.Equals(l.Schedule.Input, name, StringComparison.Ordinal)) is { } lever)
            {
                levers.Add(lever);
            }
            else
            {
                inputs |= Find(_model.Inputs, name) is var input && input >= 0 ? 1 << input : throw Unknown(name, "input", index);
            }
        }

        return inputs;
    }

    private DesignRefusedException Unknown(string name, string kind, int index) => new(
        "circuit.unknown-name",
        $"Interlock '{_brief.Name}' names '{name}', but there is no {kind} of that name.",
        _model.Brief.PlaceOf(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"interlock[{index}]")));

    private void Restrict(FaultCase fault, int inputs, Span<ulong> row)
    {
        for (int w = 0; w < row.Length; w++)
        {
            row[w] &= _between[w];
        }

        foreach (int contact in _closedContacts)
        {
            RestrictTo((contact, fault.ModeAt(contact, inputs)), closed: true, row);
        }

        foreach (int contact in _openContacts)
        {
            RestrictTo((contact, fault.ModeAt(contact, inputs)), closed: false, row);
        }
    }

    // Keeps the positions at which a contact really is closed, or really is open.
    private void RestrictTo((int Index, ElementMode Mode) contact, bool closed, Span<ulong> row)
    {
        if (contact.Mode == ElementMode.Working)
        {
            ReadOnlySpan<ulong> made = _model.ClosedPositions[contact.Index];
            for (int w = 0; w < row.Length; w++)
            {
                row[w] &= closed ? made[w] : ~made[w];
            }
        }
        else if (closed != (contact.Mode == ElementMode.Joined))
        {
            row.Clear();
        }
    }
}
