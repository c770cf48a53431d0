using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests;

/// <summary>Sets up circuits for tests: 230 V, 50 Hz, one turn in 360 s so that a degree is a second, feed on L.</summary>
internal sealed class CircuitBuilder
{
    private readonly List<ContactSchedule> _contacts = [];
    private readonly List<OutputBrief> _outputs = [];
    private readonly List<LoadBrief> _loads = [];
    private readonly List<InputBrief> _inputs = [];
    private readonly List<InterlockBrief> _interlocks = [];
    private readonly List<BridgedNets> _bridges = [];
    private readonly List<LeverSchedule> _levers = [];
    private LoadBrief? _motor;

    public double SupplyV { get; init; } = 230;

    public double TurnTimeS { get; init; } = 360;

    public string FeedNet { get; init; } = "L";

    public IReadOnlyList<string> Lines { get; init; } = ["L"];

    public double VoltageToleranceShare { get; init; }

    public IReadOnlyList<PartBrief> Parts { get; init; } = [];

    public bool IsLands { get; init; }

    public double CoastLeastDeg { get; init; }

    public double CoastMostDeg { get; init; }

    public double BacklashDeg { get; init; }

    public bool VoltagesUnderFaults { get; init; }

    public IReadOnlyList<LoadBrief> Loads => _motor is null ? _loads : [.. _loads, _motor];

    public IReadOnlyList<InputBrief> Inputs => _inputs;

    public IReadOnlyList<ContactSchedule> Contacts => _contacts;

    public CircuitBuilder Ring(string name, params (double FromDeg, double ToDeg)[] on) => Ring(name, name, 0, on);

    public CircuitBuilder Ring(string name, string net, double bandDeg, params (double FromDeg, double ToDeg)[] on)
    {
        EdgeBand band = new(Angles.RadFromDeg(bandDeg), Angles.RadFromDeg(bandDeg));
        return Add(new ContactSchedule(name, net, FeedNet, [.. on.Select(p => new MadePeriod(Arc(p.FromDeg, p.ToDeg), band, band))]));
    }

    public CircuitBuilder Always(string name) => Add(ContactSchedule.Exact(name, name, FeedNet, CircleArc.Full));

    public CircuitBuilder Land(string name, string net, string returnNet, params (double FromDeg, double ToDeg)[] on) =>
        Add(ContactSchedule.Exact(name, net, returnNet, [.. on.Select(p => Arc(p.FromDeg, p.ToDeg))]));

    public CircuitBuilder Add(ContactSchedule contact)
    {
        _contacts.Add(contact);
        _outputs.Add(new OutputBrief(contact.Output, contact.WiperNet, ProgrammeBrief.Always, new ContactBrief(0.4, 2, 0.4, null, null)));
        return this;
    }

    public CircuitBuilder Load(string name, string from, string to, LoadRating rating, double pullIn = 0.8, double dropOut = 0.2)
    {
        _loads.Add(new LoadBrief(name, from, to, rating, pullIn, dropOut));
        return this;
    }

    public CircuitBuilder Ohms(string name, string from, string to, double resistanceOhm, double reactanceOhm = 0) =>
        Load(name, from, to, new RatedImpedance(resistanceOhm, reactanceOhm));

    public CircuitBuilder Watts(string name, string from, string to, double powerW, double powerFactor = 1) =>
        Load(name, from, to, new RatedPower(powerW, powerFactor));

    /// <summary>Gives the last load a rated voltage of its own.</summary>
    public CircuitBuilder RateAt(double volts)
    {
        _loads[^1] = _loads[^1] with { RatedV = volts };
        return this;
    }

    public CircuitBuilder Motor(string from, string to, double powerW = 3, double powerFactor = 1)
    {
        _motor = new LoadBrief("motor", from, to, new RatedPower(powerW, powerFactor), 0.8, 0.2);
        return this;
    }

    public CircuitBuilder Input(string name, string from, string to)
    {
        _inputs.Add(new InputBrief(name, from, to, null));
        return this;
    }

    /// <summary>Makes an input the contact of a cam's lever.</summary>
    public CircuitBuilder Lever(LeverSchedule lever)
    {
        _levers.Add(lever);
        return this;
    }

    public CircuitBuilder Interlock(InterlockBrief interlock)
    {
        _interlocks.Add(interlock);
        return this;
    }

    public CircuitBuilder Bridge(string first, string second)
    {
        _bridges.Add(new BridgedNets(first, second));
        return this;
    }

    public CircuitRequest Request() => new(Brief(), _contacts) { Bridges = _bridges, Levers = _levers, VoltagesUnderFaults = VoltagesUnderFaults };

    public CircuitAnalysis Analyse() => CircuitAnalysis.Of(Request());

    public static CircleArc Arc(double fromDeg, double toDeg) =>
        CircleArc.Between(Angles.RadFromDeg(fromDeg), Angles.RadFromDeg(toDeg));

    private Brief Brief() => new()
    {
        Title = "Circuit under test",
        Supply = new SupplyBrief(SupplyV, 50, 0.01, OvervoltageCategory.II) { Lines = Lines, VoltageToleranceShare = VoltageToleranceShare },
        Parts = Parts,
        Environment = new EnvironmentBrief(3, 0, Condensation: false),
        Drive = new DriveBrief(TurnTimeS, Turning.Clockwise, Angles.RadFromDeg(BacklashDeg), new Coast(Angles.RadFromDeg(CoastLeastDeg), Angles.RadFromDeg(CoastMostDeg))),
        Spacing = new SpacingBrief(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Reinforced, null, 0, GrooveX.Full),
        Wheel = new WheelBrief(IsLands ? WheelConstruction.Lands : WheelConstruction.Windowed, 0.5, "C11000-H02", new BoreBrief(6, null, 0), ShaftKind.Insulating, 1.2),
        Carrier = new CarrierBrief(MaterialGroup.IIIa, 3, 0),
        Process = new ProcessBrief(null, 0, 0.05, 0.5, 0.5, 0.5, 0.15),
        Feed = IsLands ? null : new FeedBrief(FeedNet, 0, new ContactBrief(0.8, 3, 0.8, null, null), 0.1),
        Outputs = _outputs,
        Loads = _loads,
        Inputs = _inputs,
        DriveMotor = _motor,
        Interlocks = _interlocks,
    };
}
