namespace WheelDraft.Engineering;

// The chapter "Circuit": what is on, when, and what can never be. From the brief and the contacts' schedules it solves every
// state exactly, finds which can be reached, proves or refutes interlocks, and gives working voltages to the spacing check.
// It knows nothing of radii, strips or paper.

/// <summary>The circuit, solved in every state.</summary>
/// <remarks>Normative definitions: methods of this project, "Circuit". E is taken at the potential of an earthed neutral. A line
/// joined to another, to neutral or to earth opens a fuse, and the finding names the path: with one line every load is then off, with
/// three every load is undecided.</remarks>
public sealed class CircuitAnalysis
{
    private readonly SoundCircuit _sound;
    private readonly Lazy<CircuitNetwork> _network;
    private readonly Lazy<IReadOnlyList<StandingStretch>> _standing;
    private readonly Dictionary<(string First, string Second), double> _voltages = [];
    private readonly SourcelessNets _sourceless;
    private readonly Lazy<CircuitCurrents> _currents;

    internal CircuitAnalysis(SoundCircuit sound, CircuitVerdicts verdicts)
    {
        _sound = sound;
        CircuitModel model = sound.Model;
        _network = new(() => CircuitNetwork.Of(model));
        _sourceless = new SourcelessNets(model);
        _currents = new(() => new CurrentSearch(sound).Find());
        Inputs = [.. model.Inputs.Select(i => i.Name)];
        Loads = [.. model.Loads.Select(l => l.Name)];
        Intervals = [.. model.Turn.Intervals.Select(i => new CircuitInterval(
            i.FromRad,
            i.LengthRad,
            [.. model.Contacts.Take(model.Outputs).Where((_, c) => BitRow.Has(model.Turn.Positions[i.Position].Closed, c)).Select(c => c.Name)],
            i.Position == model.Turn.Intervals[0].Position ? 0 : sound.Motion.SecondsAhead(i.FromRad),
            BitRow.Has(sound.MayReach, i.Position)))];
        MatterTogether = sound.MatterTogether();
        States = new CircuitStateList(Intervals.Count, [.. MatterTogether.SelectMany(InputMask.Subsets).Distinct().Order()], sound.State);
        Parks = sound.Motion.Parks;
        _standing = new(() => StandingStretches.Of(sound));
        StalledIntervals = [.. sound.Motion.Stalls.Select(p => model.Turn.Positions[p].Interval).Where(i => i >= 0).Order()];
        Cycle = verdicts.Cycle.Verdict;
        CycleHistory = verdicts.Cycle.History;
        Positions = model.Turn.Positions.Count;
        Unexplored = model.Turn.UnexploredGroups;
        WorkingVoltages = verdicts.Voltages;
        Interlocks = verdicts.Interlocks;
        Faults = verdicts.Faults;
        Findings = verdicts.Findings;
        foreach (WorkingVoltage pair in WorkingVoltages)
        {
            _voltages[(pair.First, pair.Second)] = pair.VoltageV;
        }
    }

    /// <summary>The circuit as it was asked about, contacts with their angles.</summary>
    public CircuitRequest Request => _sound.Model.Request;

    /// <summary>The circuit as numbered nodes.</summary>
    public CircuitNetwork Network => _network.Value;

    /// <summary>The contacts of levers, in file order of their cams.</summary>
    internal IReadOnlyList<LeverSchedule> Levers => Request.Levers;

    /// <summary>Whether the contact of a lever is closed in an interval at an input position.</summary>
    /// <param name="lever">Index of the lever.</param>
    /// <param name="interval">Index of the interval.</param>
    /// <param name="inputs">Closed inputs, one bit each.</param>
    internal bool IsLeverClosed(int lever, int interval, int inputs)
    {
        CircuitModel model = _sound.Model;
        int contact = model.Levers[lever].Contact;
        return _sound.IsClosed(contact, inputs, BitRow.Has(model.Turn.Positions[model.Turn.Intervals[interval].Position].Closed, contact));
    }

    /// <summary>What holds a lever at an input position, in a word: free, blocked or latched.</summary>
    /// <param name="lever">Index of the lever.</param>
    /// <param name="inputs">Closed inputs, one bit each.</param>
    internal string LeverStands(int lever, int inputs)
    {
        LeverContact contact = _sound.Model.Levers[lever];
        bool Has(int input) => input >= 0 && (inputs >> input & 1) != 0;
        return Has(contact.LatchedInput) ? "latched" : Has(contact.BlockedInput) ? "blocked" : "free";
    }

    /// <summary>Whether an input of <see cref="Inputs"/> says what holds a lever, and joins no nets.</summary>
    internal bool IsHold(int input) => _sound.Model.IsHold(input);

    /// <summary>Names of what is free to change, inputs and what holds levers; input i is bit i of an input position.</summary>
    public IReadOnlyList<string> Inputs { get; }

    /// <summary>Names of the loads in file order, the drive motor last.</summary>
    public IReadOnlyList<string> Loads { get; }

    /// <summary>The turn's intervals in turning order; the first one contains home.</summary>
    public IReadOnlyList<CircuitInterval> Intervals { get; }

    /// <summary>Sets of inputs that matter together, one bit each: all of them where their positions are few enough to list, else those of each part of the circuit by
    /// themselves, because no load feels an input of another part.</summary>
    internal IReadOnlyList<int> MatterTogether { get; }

    /// <summary>All inputs, one bit each.</summary>
    internal int AllInputs => _sound.Model.AllInputs;

    /// <summary>Every interval with every position of the inputs that matter together (all others open), reachable or not; each entry is made when it is asked for.</summary>
    /// <remarks>With few inputs these are all of their positions; with many, each position of each part's inputs, which is every state of every load.</remarks>
    public IReadOnlyList<CircuitState> States { get; }

    /// <summary>Where the wheel parks because a contact of its own takes the motor's supply, by angle; elsewhere inputs may stop it, see <see cref="Standing"/>.</summary>
    public IReadOnlyList<ParkedPosition> Parks { get; }

    /// <summary>Intervals in which the wheel may come to rest and no input can start it again.</summary>
    public IReadOnlyList<int> StalledIntervals { get; }

    /// <summary>Every stretch of the turn at which the wheel can come to stand, by angle.</summary>
    public IReadOnlyList<StandingStretch> Standing => _standing.Value;

    /// <summary>Whether the wheel reaches home from every reachable state, whatever the inputs do.</summary>
    public CycleVerdict Cycle { get; }

    /// <summary>How it comes to stand before home, in words from home on; empty when a cycle always completes.</summary>
    public IReadOnlyList<string> CycleHistory { get; }

    /// <summary>Whether it is certain that a cycle always completes.</summary>
    public bool CycleCompletes => Cycle == CycleVerdict.Yes;

    /// <summary>Number of wheel positions explored, with the orders that only tolerances bring about.</summary>
    public int Positions { get; }

    /// <summary>Groups of edges too large to follow in every order, in words; nothing is called proved then.</summary>
    public IReadOnlyList<string> Unexplored { get; }

    /// <summary>The working voltage of every pair of the circuit's nets, in ordinal order.</summary>
    public IReadOnlyList<WorkingVoltage> WorkingVoltages { get; }

    /// <summary>What contacts carry and break at the upper end of the supply voltage, the largest over every reachable state without fault.</summary>
    public CircuitCurrents Currents => _currents.Value;

    /// <summary>The verdict on each interlock, in file order.</summary>
    public IReadOnlyList<InterlockResult> Interlocks { get; }

    /// <summary>The fault table, in a fixed order.</summary>
    public IReadOnlyList<FaultEffect> Faults { get; }

    /// <summary>Findings about the circuit.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Analyses a circuit.</summary>
    /// <exception cref="DesignRefusedException">A circuit that cannot be proved or has loads without impedance, with the reasons.</exception>
    public static CircuitAnalysis Of(CircuitRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        SoundCircuit sound = new(new CircuitModel(request));
        return new CircuitAnalysis(sound, CircuitVerdicts.On(sound));
    }

    /// <summary>The circuit in one interval at one input position.</summary>
    /// <param name="interval">Index of the interval.</param>
    /// <param name="inputs">Closed inputs, one bit each.</param>
    public CircuitState State(int interval, int inputs) => _sound.State(interval, inputs);

    /// <summary>The truth table: how a load behaves in an interval, whatever the inputs do.</summary>
    /// <param name="interval">Index of the interval.</param>
    /// <param name="load">Index of the load.</param>
    public TruthEntry Truth(int interval, int load) => _sound.Truth(interval, load);

    /// <summary>Working voltage between two nets at nominal supply, zero for one net.</summary>
    /// <remarks>A net that the circuit does not know and that only live parts and plain strips have may be at any potential of the supply,
    /// so it counts at the highest of its voltages. Any other, such as a touchable part, counts as E does, and not below supply voltage.</remarks>
    /// <param name="firstNet">One net.</param>
    /// <param name="secondNet">The other net.</param>
    public double WorkingVoltageV(string firstNet, string secondNet)
    {
        return string.Equals(firstNet, secondNet, StringComparison.Ordinal) ? 0 : Known(firstNet, secondNet) ?? WithUnknownV(firstNet, secondNet);
    }

    private double? Known(string firstNet, string secondNet) =>
        _voltages.TryGetValue(string.CompareOrdinal(firstNet, secondNet) < 0 ? (firstNet, secondNet) : (secondNet, firstNet), out double volts) ? volts : null;

    private double WithUnknownV(string firstNet, string secondNet)
    {
        CircuitModel model = _sound.Model;
        bool anywhere = !model.HasLoads || _sourceless.Has(firstNet) || _sourceless.Has(secondNet);
        IEnumerable<string> sources = anywhere ? [.. model.Lines.Select(l => model.NodeNets[l]), model.NodeNets[CircuitModel.Earth]] : [model.NodeNets[CircuitModel.Earth]];
        double solved = sources.Max(s => Math.Max(Known(firstNet, s) ?? 0, Known(secondNet, s) ?? 0));
        return Math.Max(solved, anywhere ? model.Brief.Supply.HighestV : model.SupplyV);
    }

    /// <summary>The turn as stretches over which something stays the same: neighbouring intervals joined, through home too.</summary>
    /// <param name="of">The value of an interval, by its index.</param>
    /// <returns>In turning order; one whole turn when it never changes.</returns>
    public IReadOnlyList<TurnStretch<T>> Stretches<T>(Func<int, T> of)
    {
        ArgumentNullException.ThrowIfNull(of);
        T[] values = [.. Enumerable.Range(0, Intervals.Count).Select(of)];
        bool Same(int a, int b) => EqualityComparer<T>.Default.Equals(values[a % values.Length], values[b % values.Length]);
        int first = Enumerable.Range(0, values.Length).FirstOrDefault(i => !Same(i, i + values.Length - 1), -1);
        if (first < 0)
        {
            return [new(values[0], 0, Geometry.Angles.TurnRad)];
        }

        List<TurnStretch<T>> stretches = [];
        for (int done = 0; done < values.Length;)
        {
            int at = first + done;
            int run = Enumerable.Range(1, values.Length - done).First(n => done + n == values.Length || !Same(at + n, at));
            double sweep = Enumerable.Range(at, run).Sum(i => Intervals[i % values.Length].LengthRad);
            stretches.Add(new(values[at % values.Length], Geometry.Angles.InTurn(Intervals[at % values.Length].FromRad), sweep));
            done += run;
        }

        return stretches;
    }

    /// <summary>How everything stands while the wheel passes an angle.</summary>
    /// <param name="programmeRad">Programme angle; any.</param>
    /// <param name="inputs">Closed inputs, one bit each.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer inputs.</exception>
    public CircuitMoment At(double programmeRad, int inputs = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(inputs);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(inputs, _sound.Model.InputPositions);
        return CircuitMoment.Of(_sound, programmeRad, inputs);
    }

    /// <summary>Plays a scenario over time, on this circuit.</summary>
    public ScenarioRun Play(ScenarioBrief scenario) => ScenarioRun.Of(_sound, scenario);
}
