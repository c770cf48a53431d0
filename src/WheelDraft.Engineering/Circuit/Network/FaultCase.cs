namespace WheelDraft.Engineering;

/// <summary>What a fault does to a switch or load.</summary>
internal enum ElementMode : byte
{
    /// <summary>It works.</summary>
    Working,

    /// <summary>It joins its nets for good.</summary>
    Joined,

    /// <summary>It is not there.</summary>
    Absent,
}

/// <summary>How the wheel moves under a fault.</summary>
internal enum WheelMotion
{
    /// <summary>Forward while its motor is on.</summary>
    Forward,

    /// <summary>Not at all.</summary>
    Stalled,

    /// <summary>Backward while its motor is on.</summary>
    Backward,

    /// <summary>Forward, after a jump to anywhere.</summary>
    Slipped,
}

/// <summary>A fault as changes to the numbered network.</summary>
internal sealed class FaultCase
{
    private readonly CircuitModel _model;
    private readonly bool[] _fixed;

    /// <summary>The fault applied to a circuit.</summary>
    public FaultCase(CircuitModel model, CircuitFault fault)
    {
        Fault = fault;
        Contacts = new ElementMode[model.Contacts.Count];
        for (int c = 0; c < Contacts.Length; c++)
        {
            Contacts[c] = model.Schedules[c].IsAlways ? ElementMode.Joined
                : model.Schedules[c].Periods.Count == 0 ? ElementMode.Absent
                : ElementMode.Working;
        }

        Loads = new ElementMode[model.Loads.Count];
        _model = model;
        _fixed = new bool[model.Levers.Count];
        Apply(model);
    }

    /// <summary>The fault.</summary>
    public CircuitFault Fault { get; }

    /// <summary>State of each contact.</summary>
    public ElementMode[] Contacts { get; }

    /// <summary>State of each load.</summary>
    public ElementMode[] Loads { get; }

    /// <summary>Inputs that are closed whatever they sense.</summary>
    public int StuckClosed { get; private set; }

    /// <summary>Inputs that are open whatever they sense.</summary>
    public int StuckOpen { get; private set; }

    /// <summary>Whether the feed wiper is open.</summary>
    public bool FeedOpen { get; private set; }

    /// <summary>Whether the supply's neutral is open.</summary>
    public bool NeutralOpen { get; private set; }

    /// <summary>Node of the line whose fuse is open, or −1.</summary>
    public int OpenLine { get; private set; } = -1;

    /// <summary>First node of a pair that the fault joins, or −1.</summary>
    public int JoinA { get; private set; } = -1;

    /// <summary>Second node of the pair.</summary>
    public int JoinB { get; private set; } = -1;

    /// <summary>How the wheel moves.</summary>
    public WheelMotion Motion { get; private set; }

    /// <summary>Whether the network itself is as without fault.</summary>
    public bool IsMechanical => Fault.Kind is CircuitFaultKind.None or CircuitFaultKind.MotorStalled or CircuitFaultKind.MotorReversed
        or CircuitFaultKind.SupplyLost or CircuitFaultKind.WheelSlipped;

    /// <summary>State of a contact at an input position: that of a lever's depends on what holds the lever.</summary>
    public ElementMode ModeAt(int contact, int inputs)
    {
        if (_model.LeverOf(contact) is not { } lever || IsFixed(lever))
        {
            return Contacts[contact];
        }

        return lever.Hold(inputs) switch
        {
            LeverHold.Open => ElementMode.Absent,
            LeverHold.Closed => ElementMode.Joined,
            _ => Contacts[contact],
        };
    }

    /// <summary>Whether a lever's contact is as the fault keeps it, whatever cam, obstacle and latch do.</summary>
    public bool IsFixed(LeverContact lever) => _fixed[lever.Contact - _model.Outputs];

    private void Fix(LeverContact lever, bool closed)
    {
        _fixed[lever.Contact - _model.Outputs] = true;
        Contacts[lever.Contact] = closed ? ElementMode.Joined : ElementMode.Absent;
    }

    /// <summary>The inputs that are really closed when the sensors say so.</summary>
    public int Actual(int inputs) => (inputs | StuckClosed) & ~StuckOpen;

    private static int IndexOf(IReadOnlyList<NetworkElement> elements, string name)
    {
        for (int i = 0; i < elements.Count; i++)
        {
            if (string.Equals(elements[i].Name, name, StringComparison.Ordinal))
            {
                return i;
            }
        }

        throw new ArgumentException($"The circuit has no '{name}'.", nameof(name));
    }

    private void Apply(CircuitModel model)
    {
        string subject = Fault.Subject;
        switch (Fault.Kind)
        {
            case CircuitFaultKind.InputStuckClosed or CircuitFaultKind.InputStuckOpen when model.Levers.FirstOrDefault(l => string.Equals(l.Schedule.Input, subject, StringComparison.Ordinal)) is { } contact:
                Fix(contact, Fault.Kind == CircuitFaultKind.InputStuckClosed);
                break;
            case CircuitFaultKind.LeverStuckUp or CircuitFaultKind.LeverStuckDown:
                LeverContact stuck = model.Levers.First(l => string.Equals(l.Schedule.Cam, subject, StringComparison.Ordinal));
                Fix(stuck, Fault.Kind == CircuitFaultKind.LeverStuckUp ? stuck.Schedule.ClosedAtTop : stuck.Schedule.ClosedAtRest);
                break;
            case CircuitFaultKind.CamSlippedClosed or CircuitFaultKind.CamSlippedOpen:
                Fix(model.Levers.First(l => string.Equals(l.Schedule.Cam, subject, StringComparison.Ordinal)), Fault.Kind == CircuitFaultKind.CamSlippedClosed);
                Motion = WheelMotion.Slipped;
                break;
            case CircuitFaultKind.InputStuckClosed:
                StuckClosed = 1 << IndexOf(model.Inputs, subject);
                break;
            case CircuitFaultKind.InputStuckOpen:
                StuckOpen = 1 << IndexOf(model.Inputs, subject);
                break;
            case CircuitFaultKind.ContactWelded:
                Contacts[IndexOf(model.Contacts, subject)] = ElementMode.Joined;
                break;
            case CircuitFaultKind.ContactNeverMade:
                Contacts[IndexOf(model.Contacts, subject)] = ElementMode.Absent;
                break;
            case CircuitFaultKind.LoadOpen:
                Loads[IndexOf(model.Loads, subject)] = ElementMode.Absent;
                break;
            case CircuitFaultKind.LoadShorted:
                Loads[IndexOf(model.Loads, subject)] = ElementMode.Joined;
                break;
            case CircuitFaultKind.FeedOpen:
                FeedOpen = true;
                break;
            case CircuitFaultKind.NeutralOpen:
                NeutralOpen = true;
                break;
            case CircuitFaultKind.LineOpen:
                OpenLine = model.FindNode(subject);
                break;
            case CircuitFaultKind.NetEarthed:
                (JoinA, JoinB) = (model.FindNode(subject), CircuitModel.Earth);
                break;
            case CircuitFaultKind.NetsBridged:
                (JoinA, JoinB) = (model.FindNode(subject), model.FindNode(Fault.Other));
                break;
            default:
                Motion = Fault.Kind switch
                {
                    CircuitFaultKind.MotorStalled => WheelMotion.Stalled,
                    CircuitFaultKind.MotorReversed => WheelMotion.Backward,
                    CircuitFaultKind.WheelSlipped => WheelMotion.Slipped,
                    _ => WheelMotion.Forward,
                };
                break;
        }
    }
}
