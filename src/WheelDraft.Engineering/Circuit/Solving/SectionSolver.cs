using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>Where each load of a section is on or undecided, over all positions of the wheel.</summary>
/// <param name="Loads">Indices of the loads.</param>
/// <param name="On">A row of positions for each load, one behind the other.</param>
/// <param name="Undecided">The same, for undecided.</param>
/// <param name="Short">Positions at which the section joins two potentials of the supply; null for nowhere.</param>
internal sealed record SectionStates(int[] Loads, ulong[] On, ulong[] Undecided, ulong[]? Short);

/// <summary>A section solved for one pattern of its contacts.</summary>
/// <param name="IsShort">Whether it joins two potentials of the supply; nothing else is then known.</param>
/// <param name="Potentials">Potential of each merged node over neutral; null where nothing gives it one.</param>
/// <param name="Volts">Voltage over each load; NaN where resonance without resistance leaves it without an answer.</param>
/// <param name="Groups">For each merged node the node that stands for its block: the same for nodes that float together.</param>
internal sealed record SectionPattern(bool IsShort, Complex?[] Potentials, double[] Volts, int[] Groups);

/// <summary>A section solved for every pattern of its contacts.</summary>
/// <param name="Nodes">Merged nodes that nothing holds, as in <see cref="NetworkSplit.Roots"/>.</param>
/// <param name="Loads">Indices of the loads.</param>
/// <param name="Contacts">Patterns of its contacts.</param>
/// <param name="Solved">One for each pattern.</param>
internal sealed record SectionDetail(int[] Nodes, int[] Loads, ContactPatterns Contacts, IReadOnlyList<SectionPattern> Solved);

/// <summary>A section through which no current flows.</summary>
/// <param name="Nodes">Merged nodes that nothing holds.</param>
/// <param name="Contacts">Patterns of its contacts.</param>
/// <param name="Of">Potentials of each of the nodes.</param>
internal sealed record UnfedPotentials(int[] Nodes, ContactPatterns Contacts, List<NodePotential>[] Of);

/// <summary>Solves sections of the network for every angle, each distinct section once.</summary>
internal sealed class SectionSolver
{
    // Voltages and thresholds come by different sums; equal ones must compare as equal. A double carries 1e-16 of the supply
    // voltage, a block of a few nodes loses a few digits: 1e-9 of the threshold is far above that and far below any rating.
    private const double ThresholdSlack = 1e-9;

    // Section states are a cache: dropped when they hold this many numbers (about 64 MiB), found again when needed.
    private const int MostCachedWords = 8_000_000;

    private readonly CircuitModel _model;
    private readonly BlockSolver _blocks;
    private readonly double[] _onAtV;
    private readonly double[] _offAtV;
    private readonly int _words;
    private readonly Dictionary<long[], SectionStates> _states = new(PackedKeyComparer.Instance);
    private readonly Dictionary<long[], SectionDetail> _details = new(PackedKeyComparer.Instance);
    private readonly Dictionary<long[], SectionDetail> _keptDetails = new(PackedKeyComparer.Instance);
    private readonly Dictionary<long[], ContactPatterns> _patterns = new(PackedKeyComparer.Instance);
    private int _cachedWords;

    /// <summary>A solver for one circuit; not for use by two threads at once.</summary>
    public SectionSolver(CircuitModel model)
    {
        _model = model;
        _blocks = new BlockSolver(model.Impedances, model.Potentials);
        _onAtV = [.. Enumerable.Range(0, model.Loads.Count).Select(l => OnAtV(model, l))];
        _offAtV = [.. Enumerable.Range(0, model.Loads.Count).Select(l => OffAtV(model, l))];
        _words = BitRow.WordsFor(model.Turn.Positions.Count);
    }

    /// <summary>Voltage at nominal supply at and above which a load is on over all of the supply's range.</summary>
    /// <remarks>Loads are impedances, so every voltage rises and falls with the supply: a load has pulled in at the lowest supply when
    /// its voltage at the nominal one is above pull-in by the same share.</remarks>
    public static double OnAtV(CircuitModel model, int load) =>
        model.LoadBriefs[load].PullInShare * model.RatedV[load] / (1 - model.Brief.Supply.VoltageToleranceShare) * (1 - ThresholdSlack);

    /// <summary>Voltage at nominal supply at and below which a load is off over all of the supply's range.</summary>
    public static double OffAtV(CircuitModel model, int load) =>
        model.LoadBriefs[load].DropOutShare * model.RatedV[load] / (1 + model.Brief.Supply.VoltageToleranceShare) * (1 + ThresholdSlack);

    /// <summary>Where a section's loads are on or undecided.</summary>
    /// <param name="section">Packed ends, as <see cref="NetworkSplit.Section"/> gives them.</param>
    public SectionStates States(ReadOnlySpan<long> section)
    {
        Dictionary<long[], SectionStates>.AlternateLookup<ReadOnlySpan<long>> lookup = _states.GetAlternateLookup<ReadOnlySpan<long>>();
        if (!lookup.TryGetValue(section, out SectionStates? states))
        {
            if (_cachedWords > MostCachedWords)
            {
                _states.Clear();
                _cachedWords = 0;
            }

            states = SolveStates(new SectionShape(section, _model.Contacts.Count));
            _cachedWords += section.Length + states.On.Length + states.Undecided.Length;
            lookup[section] = states;
        }

        return states;
    }

    /// <summary>Potentials of the own nodes of a section that is not fed.</summary>
    /// <param name="section">Packed ends, as <see cref="NetworkSplit.Section"/> gives them.</param>
    /// <param name="apart">Whether a node that floats has an entry for each pattern of contacts, not one for each group.</param>
    public UnfedPotentials Unfed(ReadOnlySpan<long> section, bool apart)
    {
        SectionShape shape = new(section, _model.Contacts.Count);
        ContactPatterns patterns = PatternsOf(shape.Contacts);
        return new UnfedPotentials(shape.OwnNodes, patterns, new UnfedSection(shape, patterns, _model.Potentials).Read(apart));
    }

    /// <summary>A section with potentials and voltages.</summary>
    /// <param name="section">Packed ends, as <see cref="NetworkSplit.Section"/> gives them.</param>
    public SectionDetail Detail(ReadOnlySpan<long> section)
    {
        Dictionary<long[], SectionDetail>.AlternateLookup<ReadOnlySpan<long>> lookup = _details.GetAlternateLookup<ReadOnlySpan<long>>();
        if (!_keptDetails.GetAlternateLookup<ReadOnlySpan<long>>().TryGetValue(section, out SectionDetail? detail)
            && !lookup.TryGetValue(section, out detail))
        {
            SectionShape shape = new(section, _model.Contacts.Count);
            ContactPatterns patterns = PatternsOf(shape.Contacts);
            PatternSolver solver = new(shape, _blocks, _model.Potentials);
            List<SectionPattern> solved = [];
            foreach (bool[] closed in patterns.Closed)
            {
                solver.Solve(closed);
                solved.Add(solver.Keep());
            }

            detail = new SectionDetail(shape.OwnNodes, shape.Loads, patterns, solved);
            lookup[section] = detail;
        }

        return detail;
    }

    /// <summary>Keeps the details solved so far: those of the sound circuit are met under nearly every fault.</summary>
    public void KeepDetails()
    {
        foreach ((long[] key, SectionDetail detail) in _details)
        {
            _keptDetails[key] = detail;
        }

        _details.Clear();
    }

    /// <summary>Drops details solved and not kept; those of another fault are rarely met again.</summary>
    public void ForgetDetails() => _details.Clear();

    /// <summary>How a load takes a voltage.</summary>
    public LoadState StateOf(int load, double volts) =>
        volts >= _onAtV[load] ? LoadState.On : volts <= _offAtV[load] ? LoadState.Off : LoadState.Undecided;

    private ContactPatterns PatternsOf(int[] contacts)
    {
        long[] key = [.. contacts.Select(c => (long)c)];
        if (!_patterns.TryGetValue(key, out ContactPatterns? patterns))
        {
            patterns = ContactPatterns.Of(_model.Turn.Positions, contacts);
            _patterns[key] = patterns;
        }

        return patterns;
    }

    private SectionStates SolveStates(SectionShape shape)
    {
        int loads = shape.Loads.Length;
        ulong[] on = new ulong[loads * _words];
        ulong[] undecided = new ulong[loads * _words];
        ulong[]? isShort = null;
        ContactPatterns patterns = PatternsOf(shape.Contacts);
        PatternSolver solver = new(shape, _blocks, _model.Potentials);
        for (int p = 0; p < patterns.Closed.Count; p++)
        {
            ulong[] positions = patterns.Positions[p];
            if (!solver.Solve(patterns.Closed[p]))
            {
                isShort ??= new ulong[_words];
                BitRow.AddAll(isShort, positions);
                continue;
            }

            for (int l = 0; l < loads; l++)
            {
                LoadState state = StateOf(shape.Loads[l], solver.Volts[l]);
                if (state != LoadState.Off)
                {
                    BitRow.AddAll((state == LoadState.On ? on : undecided).AsSpan(l * _words, _words), positions);
                }
            }
        }

        return new SectionStates(shape.Loads, on, undecided, isShort);
    }
}
