using System.Globalization;
using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>A switch or load between two nodes of the network.</summary>
/// <param name="Name">Name of the output, input or load.</param>
/// <param name="A">Node of the first net.</param>
/// <param name="B">Node of the second net.</param>
internal readonly record struct NetworkElement(string Name, int A, int B);

/// <summary>The circuit of one brief as numbered nodes, contacts, inputs and loads.</summary>
/// <remarks>Nodes 0, 1 and 2 are the first line, neutral and earth; with three lines nodes 3 and 4 are the others, 120° behind each
/// other. Lines are at supply voltage, neutral and earth at zero, because the neutral is taken as earthed; E stays a net of its own, so
/// that a line that meets it is a short and a neutral that meets it is not.
/// A windowed wheel is a node apart from its feed's net, joined by the feed wiper: with that wiper open the copper still joins
/// the outputs. The drive motor is the last load.</remarks>
internal sealed class CircuitModel
{
    /// <summary>Node of the first line.</summary>
    public const int Line = 0;

    /// <summary>Node of neutral.</summary>
    public const int Neutral = 1;

    /// <summary>Node of earth.</summary>
    public const int Earth = 2;

    private readonly List<string> _nodeNets;
    private readonly int _circuitNodes;
    private readonly Dictionary<string, int> _nodeOf = new(StringComparer.Ordinal);

    /// <summary>Numbers the circuit.</summary>
    /// <exception cref="DesignRefusedException">Loads without impedance, too many inputs.</exception>
    public CircuitModel(CircuitRequest request)
    {
        Request = request;
        Brief brief = request.Brief;
        SupplyV = brief.Supply.VoltageV;
        IReadOnlyList<string> lines = brief.Supply.Lines;
        _nodeNets = [lines[0], "N", "E", .. lines.Skip(1)];
        for (int n = 0; n < _nodeNets.Count; n++)
        {
            _nodeOf[_nodeNets[n]] = n;
        }

        Lines = [Line, .. Enumerable.Range(Earth + 1, lines.Count - 1)];
        Potentials = SourcePotentials.Of(brief.Supply);
        WheelNode = brief.Feed is null ? -1 : AddWheel(brief.Feed.Net);
        Outputs = request.Contacts.Count;
        Schedules = [.. request.Contacts, .. request.Levers.Select(l => l.Free)];
        Contacts = [.. request.Contacts.Select(ContactElement), .. request.Levers.Select(l => LeverElement(brief, l))];
        Inputs = [.. brief.Inputs.Where(i => !IsLever(request, i)).Select(i => new NetworkElement(i.Name, NodeOf(i.From), NodeOf(i.To))), .. request.Levers.SelectMany(Holds)];
        Levers = [.. request.Levers.Select((l, i) => new LeverContact(l, Outputs + i, InputIndex(l.Cam + LeverContact.Blocked), InputIndex(l.Cam + LeverContact.Latched)))];
        LoadBriefs = brief.DriveMotor is { } motor ? [.. brief.Loads, motor] : brief.Loads;
        Motor = brief.DriveMotor is null ? -1 : LoadBriefs.Count - 1;
        Loads = [.. LoadBriefs.Select(l => new NetworkElement(l.Name, NodeOf(l.From), NodeOf(l.To)))];
        RatedV = [.. LoadBriefs.Select((l, i) => l.RatedV ?? LoadVoltage.Of(this, Loads[i]))];
        Impedances = [.. LoadBriefs.Select((l, i) => LoadImpedance.Of(l.Rating, RatedV[i]))];
        _circuitNodes = NodeCount;
        foreach (BridgedNets bridge in request.Bridges)
        {
            NodeOf(bridge.FirstNet);
            NodeOf(bridge.SecondNet);
        }

        Refuse();
        Turn = new TurnPositions(Schedules);
        ClosedPositions = [.. Enumerable.Range(0, Contacts.Count).Select(ClosedRow)];
    }

    /// <summary>What was asked.</summary>
    public CircuitRequest Request { get; }

    /// <summary>The brief.</summary>
    public Brief Brief => Request.Brief;

    /// <summary>Supply voltage, r.m.s.</summary>
    public double SupplyV { get; }

    /// <summary>Nodes of the lines, in phase order.</summary>
    public IReadOnlyList<int> Lines { get; }

    /// <summary>Potentials of what holds nodes, by <see cref="SourcePotentials.IndexOf"/>.</summary>
    public Complex[] Potentials { get; }

    /// <summary>Net of each node; the wheel's node carries its feed's net.</summary>
    public IReadOnlyList<string> NodeNets => _nodeNets;

    /// <summary>Number of nodes.</summary>
    public int NodeCount => _nodeNets.Count;

    /// <summary>Node of a windowed wheel's copper, or −1.</summary>
    public int WheelNode { get; }

    /// <summary>Node of the feed wiper's net, or −1.</summary>
    public int FeedNode { get; private set; } = -1;

    /// <summary>How many of the contacts are outputs of the wheel; those of levers follow.</summary>
    public int Outputs { get; }

    /// <summary>The contacts of levers.</summary>
    public IReadOnlyList<LeverContact> Levers { get; }

    /// <summary>The lever whose contact has an index, or null for an output's.</summary>
    public LeverContact? LeverOf(int contact) => contact < Outputs ? null : Levers[contact - Outputs];

    /// <summary>A change of an input in words: "thermostat closes", "feeler cam: something gets in the lever's way".</summary>
    public string Change(int input, bool closes) => HoldOf(input) switch
    {
        (LeverContact lever, true) => $"{lever.Schedule.Cam}: the lever is {(closes ? "hooked up" : "let go")}",
        (LeverContact lever, false) => $"{lever.Schedule.Cam}: {(closes ? "something gets in the lever's way" : "nothing is in the lever's way any more")}",
        _ => $"{Inputs[input].Name} {(closes ? "closes" : "opens")}",
    };

    /// <summary>How an input stands, in words: "thermostat closed", "feeler cam not blocked".</summary>
    public string Standing(int input, bool closed) => HoldOf(input) switch
    {
        (LeverContact lever, bool latch) => $"{lever.Schedule.Cam}{(closed ? "" : " not")}{(latch ? LeverContact.Latched : LeverContact.Blocked)}",
        _ => $"{Inputs[input].Name} {(closed ? "closed" : "open")}",
    };

    /// <summary>What an input can do to a motor, in words: "'thermostat' can open", "the lever of 'feeler cam' can be blocked".</summary>
    public string Possibility(int input, bool closes) => HoldOf(input) switch
    {
        (LeverContact lever, bool latch) => $"the lever of '{lever.Schedule.Cam}' can be {(closes, latch) switch { (true, true) => "latched", (false, true) => "unlatched", (true, false) => "blocked", _ => "unblocked" }}",
        _ => $"'{Inputs[input].Name}' can {(closes ? "close" : "open")}",
    };

    /// <summary>Whether an input says what holds a lever, and joins no nets.</summary>
    public bool IsHold(int input) => HoldOf(input) is not null;

    private (LeverContact Lever, bool IsLatch)? HoldOf(int input)
    {
        foreach (LeverContact lever in Levers)
        {
            if (lever.BlockedInput == input || lever.LatchedInput == input)
            {
                return (lever, lever.LatchedInput == input);
            }
        }

        return null;
    }

    /// <summary>The contacts' schedules, by contact index.</summary>
    public IReadOnlyList<ContactSchedule> Schedules { get; }

    /// <summary>The contacts.</summary>
    public IReadOnlyList<NetworkElement> Contacts { get; }

    /// <summary>What is free to change at any time: the inputs but those that are contacts of levers, then what can hold each lever.</summary>
    public IReadOnlyList<NetworkElement> Inputs { get; }

    /// <summary>The loads, the drive motor last.</summary>
    public IReadOnlyList<NetworkElement> Loads { get; }

    /// <summary>What was asked of each load.</summary>
    public IReadOnlyList<LoadBrief> LoadBriefs { get; }

    /// <summary>Voltage that each load is rated for, V.</summary>
    public IReadOnlyList<double> RatedV { get; }

    /// <summary>Impedance of each load, ohm.</summary>
    public IReadOnlyList<Complex> Impedances { get; }

    /// <summary>Index of the drive motor among the loads, or −1.</summary>
    public int Motor { get; }

    /// <summary>Positions of the wheel.</summary>
    public TurnPositions Turn { get; }

    /// <summary>For each contact, the positions at which it is closed without fault.</summary>
    public IReadOnlyList<ulong[]> ClosedPositions { get; }

    /// <summary>Nets of the supply, the feed, outputs, loads, inputs and the motor; not those that only a bridge names.</summary>
    public IEnumerable<string> CircuitNets => _nodeNets.Take(_circuitNodes);

    /// <summary>Whether anything draws a current.</summary>
    public bool HasLoads => Loads.Count > 0;

    /// <summary>Whether the file says anything of what the nets carry: a load, an input or the motor.</summary>
    public bool HasCircuit => Loads.Count > 0 || Inputs.Count > 0;

    /// <summary>Nodes of feed, outputs, loads, inputs and motor to which no line leads in any position of contacts and inputs, loads
    /// counted as connections; empty for a file without a circuit.</summary>
    /// <remarks>A way ends at neutral and earth: what hangs on them alone is fed by nothing, and what it carries is not known.</remarks>
    public IReadOnlyList<int> Unsourced()
    {
        HashSet<int> led = [.. Lines];
        Queue<int> open = new(Lines);
        while (open.TryDequeue(out int at))
        {
            IEnumerable<int> next = SwitchedTo(at).Concat(Loads.Where(l => l.A == at || l.B == at).Select(l => l.A == at ? l.B : l.A));
            foreach (int node in next.Where(n => n is not (Neutral or Earth) && led.Add(n)))
            {
                open.Enqueue(node);
            }
        }

        return HasCircuit ? [.. Enumerable.Range(0, _circuitNodes).Where(n => n is not (Neutral or Earth) && n != WheelNode && !led.Contains(n))] : [];
    }

    /// <summary>Number of positions of all inputs.</summary>
    public int InputPositions => 1 << Inputs.Count;

    /// <summary>All inputs, one bit each.</summary>
    public int AllInputs => InputPositions - 1;

    /// <summary>Node of a net; −1 when the circuit does not know it.</summary>
    public int FindNode(string net) => _nodeOf.GetValueOrDefault(net, -1);

    /// <summary>Seconds of the turn at a programme angle, nominal frequency.</summary>
    public double SecondsAt(double angleRad) => Geometry.Angles.InTurn(angleRad) / Geometry.Angles.TurnRad * Brief.Drive.TurnTimeS;

    /// <summary>Whether a node is a line, neutral or earth.</summary>
    public bool IsSource(int node) => node <= Earth || Lines.Contains(node);

    /// <summary>Nodes that a contact, an input or the feed wiper can join to a node; a contact that never closes joins nothing.</summary>
    public IEnumerable<int> SwitchedTo(int node)
    {
        IEnumerable<NetworkElement> switches = Contacts.Where((_, c) => Schedules[c].IsAlways || Schedules[c].Periods.Count > 0).Concat(Inputs);
        if (WheelNode >= 0)
        {
            switches = switches.Append(new NetworkElement("", FeedNode, WheelNode));
        }

        return switches.Where(s => s.A == node || s.B == node).Select(s => s.A == node ? s.B : s.A);
    }

    private ulong[] ClosedRow(int contact)
    {
        ulong[] row = BitRow.Empty(Turn.Positions.Count);
        for (int p = 0; p < Turn.Positions.Count; p++)
        {
            BitRow.Put(row, p, BitRow.Has(Turn.Positions[p].Closed, contact));
        }

        return row;
    }

    private int NodeOf(string net)
    {
        if (!_nodeOf.TryGetValue(net, out int node))
        {
            node = AddNode(net);
            _nodeOf[net] = node;
        }

        return node;
    }

    private int AddNode(string net)
    {
        _nodeNets.Add(net);
        return _nodeNets.Count - 1;
    }

    private int AddWheel(string feedNet)
    {
        FeedNode = NodeOf(feedNet);
        return AddNode(feedNet);
    }

    private static bool IsLever(CircuitRequest request, InputBrief input) => request.Levers.Any(l => string.Equals(l.Input, input.Name, StringComparison.Ordinal));

    private NetworkElement LeverElement(Brief brief, LeverSchedule lever)
    {
        InputBrief input = brief.Inputs.First(i => string.Equals(i.Name, lever.Input, StringComparison.Ordinal));
        return new NetworkElement(input.Name, NodeOf(input.From), NodeOf(input.To));
    }

    // Joins a node to itself: it is free to change and joins nothing.
    private static IEnumerable<NetworkElement> Holds(LeverSchedule lever)
    {
        if (lever.Blocked is not null)
        {
            yield return new(lever.Cam + LeverContact.Blocked, Earth, Earth);
        }

        if (lever.Latched is not null)
        {
            yield return new(lever.Cam + LeverContact.Latched, Earth, Earth);
        }
    }

    private int InputIndex(string name)
    {
        for (int i = 0; i < Inputs.Count; i++)
        {
            if (string.Equals(Inputs[i].Name, name, StringComparison.Ordinal))
            {
                return i;
            }
        }

        return -1;
    }

    private NetworkElement ContactElement(ContactSchedule schedule)
    {
        bool onWheel = Brief.Feed is { } feed && string.Equals(feed.Net, schedule.WheelNet, StringComparison.Ordinal);
        return new NetworkElement(schedule.Output, onWheel ? WheelNode : NodeOf(schedule.WheelNet), NodeOf(schedule.WiperNet));
    }

    private void Refuse()
    {
        List<Finding> reasons = [];
        if (Inputs.Count > Budgets.CircuitInputs)
        {
            reasons.Add(InputBudget.TooMany(Brief, string.Create(CultureInfo.InvariantCulture, $"The circuit has {Inputs.Count} inputs, of which at most {Budgets.CircuitInputs} can be proved.")));
        }

        for (int i = 0; i < Loads.Count; i++)
        {
            if (Impedances[i] == Complex.Zero || !Complex.IsFinite(Impedances[i]))
            {
                string path = i == Motor ? "drive_motor" : string.Create(CultureInfo.InvariantCulture, $"load[{i}]");
                reasons.Add(Finding.Error(
                    "circuit.load-without-impedance",
                    $"Load '{Loads[i].Name}' has an impedance of zero or infinite; a load needs a finite resistance or reactance above zero, e.g. power = \"7 W\".",
                    Brief.PlaceOf(path)));
            }
        }

        if (reasons.Count > 0)
        {
            throw new DesignRefusedException(reasons);
        }
    }
}
