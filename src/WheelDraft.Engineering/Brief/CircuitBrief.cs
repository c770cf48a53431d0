using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>An electrical load between two nets.</summary>
/// <param name="Name">Name; "motor" for the drive motor.</param>
/// <param name="From">First net.</param>
/// <param name="To">Second net.</param>
/// <param name="Rating">What it draws.</param>
/// <param name="PullInShare">Share of its rated voltage at and above which it is on.</param>
/// <param name="DropOutShare">Share of its rated voltage at and below which it is off.</param>
public sealed record LoadBrief(string Name, string From, string To, LoadRating Rating, double PullInShare, double DropOutShare)
{
    /// <summary>Voltage that its rating and its shares refer to, V; null for the supply's: line to neutral, and line to line for a
    /// load that lies between two lines.</summary>
    public double? RatedV { get; init; }

    /// <summary>Its reference designation as given; empty for the usual letter code.</summary>
    public string Designation { get; init; } = "";
}

/// <summary>What a load draws: by power, by current or as an impedance.</summary>
public abstract record LoadRating;

/// <summary>True power at rated voltage.</summary>
/// <param name="PowerW">True power, W.</param>
/// <param name="PowerFactor">Power factor, above 0, at most 1, lagging.</param>
public sealed record RatedPower(double PowerW, double PowerFactor) : LoadRating;

/// <summary>Current at rated voltage.</summary>
/// <param name="CurrentA">R.m.s. current, A.</param>
/// <param name="PowerFactor">Power factor, above 0, at most 1, lagging.</param>
public sealed record RatedCurrent(double CurrentA, double PowerFactor) : LoadRating;

/// <summary>An impedance at supply frequency.</summary>
/// <param name="ResistanceOhm">Resistance.</param>
/// <param name="ReactanceOhm">Reactance, positive inductive.</param>
public sealed record RatedImpedance(double ResistanceOhm, double ReactanceOhm) : LoadRating;

/// <summary>A sensor or switch between two nets; it starts open.</summary>
/// <param name="Name">Name.</param>
/// <param name="From">First net.</param>
/// <param name="To">Second net.</param>
/// <param name="ClosedWhen">Words for the drawings, or null.</param>
public sealed record InputBrief(string Name, string From, string To, string? ClosedWhen)
{
    /// <summary>Its reference designation as given; empty for the usual letter code.</summary>
    public string Designation { get; init; } = "";
}

/// <summary>A claim that must hold in every reachable state.</summary>
/// <param name="Name">Name.</param>
/// <param name="Claim">What is claimed.</param>
/// <param name="Loads">Of which loads.</param>
public sealed record InterlockBrief(string Name, InterlockClaim Claim, IReadOnlyList<string> Loads)
{
    /// <summary>Only while all of these contacts or inputs are really closed.</summary>
    public IReadOnlyList<string> WhileClosed { get; init; } = [];

    /// <summary>Only while all of these contacts or inputs are really open.</summary>
    public IReadOnlyList<string> WhileOpen { get; init; } = [];

    /// <summary>Only while what all of these inputs sense is true (the words of <see cref="InputBrief.ClosedWhen"/>), whatever their contacts do.</summary>
    public IReadOnlyList<string> WhileTrue { get; init; } = [];

    /// <summary>Only while what all of these inputs sense is false, whatever their contacts do.</summary>
    public IReadOnlyList<string> WhileFalse { get; init; } = [];

    /// <summary>Only in this part of the turn, programme angles; null for all of it.</summary>
    public CircleArc? Between { get; init; }

    /// <summary>Which faults it must survive.</summary>
    public FaultDepth Faults { get; init; }
}

/// <summary>What an interlock claims.</summary>
public enum InterlockClaim
{
    /// <summary>None of the loads is ever on.</summary>
    NeverOn,

    /// <summary>All of the loads are always on.</summary>
    AlwaysOn,

    /// <summary>The loads, two or more, are never all on at once.</summary>
    NeverTogether,
}

/// <summary>How many faults at once are considered.</summary>
public enum FaultDepth
{
    /// <summary>Everything works.</summary>
    None,

    /// <summary>Any one fault.</summary>
    Single,
}

/// <summary>How the tolerance draws are made.</summary>
public sealed record MonteCarloBrief
{
    /// <summary>Number of draws.</summary>
    public int Draws { get; init; } = 1_000_000;

    /// <summary>Seed.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>Distribution within the limits.</summary>
    public DrawDistribution Distribution { get; init; } = DrawDistribution.Normal;
}

/// <summary>Distribution of a drawn deviation within its limits.</summary>
public enum DrawDistribution
{
    /// <summary>Normal, limits at three standard deviations.</summary>
    Normal,

    /// <summary>Uniform between the limits.</summary>
    Uniform,
}

/// <summary>A history of inputs to play.</summary>
/// <param name="Name">Name.</param>
/// <param name="Steps">Changes in time order.</param>
/// <param name="DurationS">How long to play, s.</param>
public sealed record ScenarioBrief(string Name, IReadOnlyList<ScenarioStep> Steps, double DurationS);

/// <summary>One change of inputs.</summary>
/// <param name="AtS">When, s.</param>
/// <param name="Close">Inputs that close.</param>
/// <param name="Open">Inputs that open.</param>
public sealed record ScenarioStep(double AtS, IReadOnlyList<string> Close, IReadOnlyList<string> Open)
{
    /// <summary>Cams whose lever something gets in the way of.</summary>
    public IReadOnlyList<string> Block { get; init; } = [];

    /// <summary>Cams whose lever nothing is in the way of any more.</summary>
    public IReadOnlyList<string> Free { get; init; } = [];

    /// <summary>Cams whose lever is hooked up.</summary>
    public IReadOnlyList<string> Latch { get; init; } = [];

    /// <summary>Cams whose lever is let go.</summary>
    public IReadOnlyList<string> Unlatch { get; init; } = [];
}
