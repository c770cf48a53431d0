using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

// The folder "Moments": how a drawing shows one instant of the turn. Every state is shown in a word and by a kind of line or
// pattern as well as in colour; nothing is solved here that the circuit of the design has not solved.

/// <summary>A moment of a design in the looks and words of drawings.</summary>
internal sealed class MomentView
{
    private readonly Design _design;
    private readonly CircuitNetwork _network;

    /// <summary>How a design's drawings show a moment.</summary>
    public MomentView(Design design, CircuitMoment moment)
    {
        (_design, Moment) = (design, moment);
        _network = design.Circuit.Network;
    }

    /// <summary>The moment.</summary>
    public CircuitMoment Moment { get; }

    /// <summary>Time in the turn, s.</summary>
    public double TimeS => _design.Motion.SecondsFromRad(Moment.AngleRad);

    /// <summary>Whether what moves is drawn as it stands at home, for films that move it themselves; states are those of the moment all the same.</summary>
    public bool IsUnmoved { get; init; }

    /// <summary>From the wheel to the housing, as drawn.</summary>
    public Placement Wheel => IsUnmoved ? Placement.Turn(0) : _design.Motion.WheelAt(Moment.AngleRad);

    /// <summary>Where the cursor of a chart is drawn, s from home.</summary>
    public double CursorS => IsUnmoved ? 0 : TimeS;

    /// <summary>Whether the fuse is open.</summary>
    public bool IsShort => Moment.State.IsShort;

    /// <summary>The time, with as many decimals as a turn needs: "83.5 s".</summary>
    public string Time => $"{DrawingNumbers.Fixed(TimeS, _design.Motion.TurnTimeS < 100 ? 2 : 1)} s";

    /// <summary>The programme angle: "167.0°".</summary>
    public string Angle => $"{DrawingNumbers.Fixed(Math.Min(359.9, Angles.DegFromRad(Moment.AngleRad)), 1)}°";

    /// <summary>Time, angle and inputs in a sentence.</summary>
    public string Sentence
    {
        get
        {
            string[] closed = [.. _network.Inputs.Where((_, i) => Moment.Inputs[i]).Select(i => i.Name)];
            string inputs = _network.Inputs.Count == 0 ? ""
                : closed.Length == 0 ? ", every input open"
                : $", closed: {string.Join(", ", closed)}";
            string fuse = IsShort ? " Line meets neutral or earth: the fuse is open." : "";
            return $"Drawn {Time} after home, at {Angle}{inputs}.{fuse}";
        }
    }

    /// <summary>Whether the contact of an output is made.</summary>
    public bool IsMade(string output) => Moment.Contacts[_network.ContactOf(output)];

    /// <summary>Whether an input is closed.</summary>
    public bool IsClosed(string input) => _network.LeverOf(input) is { } lever ? Moment.Contacts[lever.Contact] : Moment.Inputs[_network.InputOf(input)];

    /// <summary>Where the lever of a cam is: on the cam, or held higher.</summary>
    public double PlaceOf(CamLayout cam)
    {
        (bool blocked, bool latched) = HoldsOn(cam);
        return cam.PlaceAt(Moment.AngleRad, blocked, latched);
    }

    /// <summary>What holds the lever of a cam.</summary>
    public (bool Blocked, bool Latched) HoldsOn(CamLayout cam) => (Holds(cam.Brief.Name + LeverContact.Blocked), Holds(cam.Brief.Name + LeverContact.Latched));

    private bool Holds(string hold) => _network.Inputs.Any(i => string.Equals(i.Name, hold, StringComparison.Ordinal)) && Moment.Inputs[_network.InputOf(hold)];

    /// <summary>State of a load.</summary>
    public LoadState Load(string load) => Moment.State.Loads[_network.LoadOf(load)];

    /// <summary>State of a load and the voltage over it: "on, 230 V".</summary>
    public string LoadWords(string load)
    {
        double volts = Moment.State.VoltsV[_network.LoadOf(load)];
        return double.IsNaN(volts) ? Word(Load(load)) : $"{Word(Load(load))}, {Wording.Volts(Math.Round(volts, 1))}";
    }

    /// <summary>How a net stands; one that the circuit does not know is joined to nothing.</summary>
    public NetState Net(string net) => Node(_network.NodeOf(net));

    /// <summary>How the copper of a windowed wheel stands.</summary>
    public NetState WheelCopper => Node(_network.WheelNode);

    /// <summary>How a land stands: as the wipers that stand on it.</summary>
    /// <param name="ring">Its ring.</param>
    /// <param name="land">Its place among the ring's lands.</param>
    public NetState Land(RingLayout ring, int land)
    {
        LandState state = ring.Lands[land].StateAt(Moment.AngleRad);
        NetState[] on = [.. ring.Wipers.Where(w => state == LandState.OnBoth || state == (w.IsReturn ? LandState.OnReturn : LandState.OnWiper)).Select(w => Net(w.Net))];
        return on.Contains(NetState.Live) ? NetState.Live : on.Contains(NetState.AtZero) ? NetState.AtZero : NetState.Unjoined;
    }

    /// <summary>A state in a word.</summary>
    public string Word(NetState state) => IsShort ? "fuse open" : state switch
    {
        NetState.Live => "live",
        NetState.AtZero => "at zero",
        _ => "not joined",
    };

    /// <summary>A state in a word.</summary>
    public static string Word(LoadState state) => state switch
    {
        LoadState.On => "on",
        LoadState.Off => "off",
        _ => "undecided",
    };

    /// <summary>The filling of what stands so.</summary>
    public static Fill FillOf(NetState state) => Fill.Of(state switch
    {
        NetState.Live => FillKind.Live,
        NetState.AtZero => FillKind.AtZero,
        _ => FillKind.Unjoined,
    });

    /// <summary>The filling of a lamp or load.</summary>
    public static Fill FillOf(LoadState state) => Fill.Of(state switch
    {
        LoadState.On => FillKind.Lit,
        LoadState.Off => FillKind.Paper,
        _ => FillKind.Warning,
    });

    /// <summary>A conductor of a diagram: live ones are heavy, those joined to nothing are dashed.</summary>
    /// <param name="state">How it stands.</param>
    /// <param name="plain">The line when at zero.</param>
    public static LineStyle WireOf(NetState state, LineStyle plain) => state switch
    {
        NetState.Live => LineStyle.Wide(LineKind.ContinuousWide, Ink.Live, Math.Max(1, plain.WidthMm * 1.4)),
        NetState.AtZero => plain,
        _ => LineStyle.Wide(LineKind.DashedNarrow, Ink.Outline, plain.WidthMm),
    };

    /// <summary>What fillings mean, for legends.</summary>
    public static IReadOnlyList<LegendEntry> Legend { get; } =
    [
        new("live", FillOf(NetState.Live), LineStyle.Thin),
        new("at zero", FillOf(NetState.AtZero), LineStyle.Thin),
        new("joined to neither line nor neutral", FillOf(NetState.Unjoined), LineStyle.Thin),
    ];

    private NetState Node(int node) => node < 0 ? NetState.Unjoined : Moment.NetAt(node, _network.SupplyV);
}
