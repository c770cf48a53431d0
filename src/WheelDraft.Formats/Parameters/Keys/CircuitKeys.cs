using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Loads, inputs, motor, interlocks, tolerance draws and scenarios.</summary>
internal static class CircuitKeys
{
    private static ListShape Nets => new(new NameShape(), 2, 2);

    private static KeyDefinition[] Rating =>
    [
        Make.Optional("power", Make.Range("0.01 mW", "100 kW"), "True power at its voltage, with power_factor.", "\"7 W\""),
        Make.Optional("current", Make.Range("0.001 mA", "1000 A"), "Current at its voltage, with power_factor.", "\"30 mA\""),
        Make.Preset("power_factor", Make.Number(0.01, 1), "1.0", "Power factor, lagging, with power or current."),
        Make.Optional("resistance", Make.Range("0.001 mohm", "100000 kohm"), "Resistance, in place of power or current.", "\"470 ohm\""),
        Make.Preset("reactance", Make.Range("-100000 kohm", "100000 kohm"), "\"0 ohm\"", "Reactance at supply frequency, in series with resistance, positive inductive."),
        Make.Optional("voltage", Make.Range("1 V", "2000 V"), "Voltage that power, current, pull_in and drop_out refer to. Left out: the supply's, and line to line for a load between two lines.", "\"400 V\""),
        Make.Preset("pull_in", Make.Range("0.1 %", "200 %"), "\"80 %\"", "Share of its voltage at or above which it is on."),
        Make.Preset("drop_out", Make.Range("0 %", "200 %"), "\"20 %\"", "Share of its voltage at or below which it is off."),
    ];

    private static ExactlyOne[] RatingWays => [new([["power"], ["current"], ["resistance"]], "what it draws")];

    private static KeyDefinition Between(string of) =>
        Make.Needed("between", Nets, "how it is wired", $"The two nets of the {of}.", "[\"mist\", \"N\"]");

    /// <summary>What drawings call it besides its name.</summary>
    internal static KeyDefinition Designation(string example) =>
        Make.Optional("designation", new TextShape(12), "Reference designation on drawings; left out, the usual letter code and a number.", example);

    /// <summary>[[load]]</summary>
    public static TableDefinition Load => new("[[load]]", "An electrical load between two nets.",
    [
        Make.Needed("name", new NameShape(), "what interlocks and drawings call it", "Name; motor is the drive motor's.", "\"mist valve\""),
        Between("load"),
        Designation("\"E1\""),
        .. Rating,
    ])
    {
        Choices = RatingWays,
        Companions = [new("reactance", "resistance")],
    };

    /// <summary>[drive_motor]</summary>
    public static TableDefinition DriveMotor => new("[drive_motor]", "The drive motor as a load; its name everywhere is motor.",
    [
        Between("motor"),
        Designation("\"M1\""),
        .. Rating,
    ])
    {
        Choices = RatingWays,
        Companions = [new("reactance", "resistance")],
    };

    /// <summary>[[input]]</summary>
    public static TableDefinition Input => new("[[input]]", "A sensor or switch between two nets; it starts open.",
    [
        Make.Needed("name", new NameShape(), "what scenarios and interlocks call it", "Name.", "\"thermostat\""),
        Between("input"),
        Make.Optional("closed_when", new TextShape(200), "Words for the drawings.", "\"bed below 12 degC\""),
        Designation("\"B1\""),
    ]);

    /// <summary>[[interlock]]</summary>
    public static TableDefinition Interlock => new("[[interlock]]", "A claim that must hold in every reachable state.",
    [
        Make.Needed("name", new NameShape(), "what reports call it", "Name.", "\"no mist while the lid is open\""),
        Make.Optional("never_on", NamesOf, "Loads of which none is ever on; or always_on, or never_together.", "[\"mist valve\"]"),
        Make.Optional("always_on", NamesOf, "Loads that are all always on; or never_on, or never_together.", "[\"fan\"]"),
        Make.Optional("never_together", new ListShape(new NameShape(), 2, 1000), "Loads, two or more, that are never all on at once; or never_on, or always_on.", "[\"fill valve\", \"drain pump\"]"),
        Make.Optional("while_open", NamesOf, "Only while all of these contacts and inputs are open, faults included; of an input that is stuck this says nothing.", "[\"lid\"]"),
        Make.Optional("while_closed", NamesOf, "Only while all of these contacts and inputs are closed, faults included; of an input that is stuck this says nothing.", "[\"lid\"]"),
        Make.Optional("while_false", NamesOf, "Only while what these inputs sense is false (the words of closed_when), whatever a stuck contact says.", "[\"lid\"]"),
        Make.Optional("while_true", NamesOf, "Only while what these inputs sense is true (the words of closed_when), whatever a stuck contact says.", "[\"lid\"]"),
        Make.Optional("between", new ListShape(Make.Range("0 deg", "360 deg"), 2, 2), "Only in this part of the turn, programme angles.", "[\"90 deg\", \"120 deg\"]"),
        Make.Preset("faults", Make.Word("none", "single"), "\"none\"", "Which faults it must survive."),
    ])
    {
        Choices = [new([["never_on"], ["always_on"], ["never_together"]], "what is claimed")],
    };

    /// <summary>[monte_carlo]</summary>
    public static TableDefinition MonteCarlo => new("[monte_carlo]", "How tolerance draws are made.",
    [
        Make.Preset("draws", Make.Whole(1000, 100_000_000), "1000000", "Number of draws."),
        Make.Preset("seed", Make.Whole(0, 9_007_199_254_740_991), "1", "Seed; the same seed gives the same draws."),
        Make.Preset("distribution", Make.Word("normal", "uniform"), "\"normal\"", "normal: limits are three standard deviations; uniform between the limits."),
    ]);

    /// <summary>[[scenario]]</summary>
    public static TableDefinition Scenario => new("[[scenario]]", "A history of inputs to play.",
    [
        Make.Needed("name", new NameShape(), "what commands and files call it", "Name.", "\"one cycle\""),
        Make.Needed("steps", new ListShape(new TableShape(Step), 0, 10_000), "what changes and when", "Changes in time order.", "[ { at = \"0 s\", close = [\"thermostat\"] } ]"),
        Make.Needed("duration", Make.Range("1 ms", "10000 h"), "how long it is played", $"How long to play; a run is cut short after {Budgets.RunMoments} moments and says so.", "\"240 s\""),
    ]);

    private static ListShape NamesOf => new(new NameShape(), 1, 1000);

    private static TableDefinition Step => new("a step", "One change of inputs.",
    [
        Make.Needed("at", Make.Range("0 s", "10000 h"), "when it happens", "When.", "\"0 s\""),
        Make.Optional("close", NamesOf, "Inputs that close.", "[\"thermostat\"]"),
        Make.Optional("open", NamesOf, "Inputs that open.", "[\"thermostat\"]"),
        Make.Optional("block", NamesOf, "Cams whose lever something now gets in the way of, at their obstacle.", "[\"feeler cam\"]"),
        Make.Optional("free", NamesOf, "Cams whose lever nothing is in the way of any more.", "[\"feeler cam\"]"),
        Make.Optional("latch", NamesOf, "Cams whose lever is hooked up by hand.", "[\"feeler cam\"]"),
        Make.Optional("unlatch", NamesOf, "Cams whose lever is let go again.", "[\"feeler cam\"]"),
    ]);
}
