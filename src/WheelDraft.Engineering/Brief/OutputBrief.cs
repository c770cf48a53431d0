using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>One output: a ring, its wiper and its programme.</summary>
/// <param name="Name">Name.</param>
/// <param name="Net">Net of its wiper.</param>
/// <param name="On">When it is on.</param>
/// <param name="Contact">Its contact.</param>
public sealed record OutputBrief(string Name, string Net, ProgrammeBrief On, ContactBrief Contact)
{
    /// <summary>Wanted limit on the on-time, plus and minus about nominal, s; null only when always on.</summary>
    public double? ToleranceS { get; init; }

    /// <summary>Where its wiper touches, housing angle, rad; null for auto.</summary>
    public double? StationRad { get; init; }

    /// <summary>Ring radius, mm; null for auto.</summary>
    public double? RadiusMm { get; init; }

    /// <summary>Radial play of the wiper, plus and minus, mm.</summary>
    public double SidePlayMm { get; init; }

    /// <summary>The rule for its open contact, already with the default of the spacing table.</summary>
    public Insulation? OverOpenContact { get; init; }

    /// <summary>Flow while on, litres per second; null when nothing flows.</summary>
    public double? FlowLPerS { get; init; }

    /// <summary>Tolerance of the flow, plus and minus, share of it; 0 when not given.</summary>
    public double FlowToleranceShare { get; init; }

    /// <summary>Whether the tolerance was asked for as a volume: then the dose is held against it, its flow's tolerance counted.</summary>
    public bool IsToleranceOfDose { get; init; }

    /// <summary>The adjusting edge; null for none.</summary>
    public AdjustBrief? Adjust { get; init; }

    /// <summary>The copper of its ring as measured on an old wheel, from which its on-periods follow; null when they are given as times.</summary>
    public MeasuredCopperBrief? Measured { get; init; }

    /// <summary>Lands wheel: station of the second wiper, housing angle, rad.</summary>
    public double? ReturnStationRad { get; init; }

    /// <summary>Lands wheel: net of the second wiper.</summary>
    public string? ReturnNet { get; init; }
}

/// <summary>The copper of one ring as measured on an old wheel.</summary>
/// <param name="Arcs">Its stretches on the ring radius in file order, wheel angles, anticlockwise.</param>
public sealed record MeasuredCopperBrief(IReadOnlyList<CircleArc> Arcs)
{
    /// <summary>How exactly an edge is usually read with a protractor, plus and minus, rad: half a degree (common practice, no source).</summary>
    public static double UsualRad { get; } = Angles.RadFromDeg(0.5);

    /// <summary>How exactly each edge was measured, plus and minus, rad; null when the file does not say.</summary>
    public double? GivenRad { get; init; }

    /// <summary>How exactly each edge was measured, plus and minus, rad.</summary>
    public double ReadToRad => GivenRad ?? UsualRad;
}

/// <summary>When an output is on.</summary>
/// <param name="Periods">The on-periods in file order; null for always.</param>
public sealed record ProgrammeBrief(IReadOnlyList<OnPeriodBrief>? Periods)
{
    /// <summary>On all the turn.</summary>
    public static ProgrammeBrief Always { get; } = new((IReadOnlyList<OnPeriodBrief>?)null);
}

/// <summary>One on-period as asked for: a start and an extent.</summary>
/// <param name="Start">Where it starts.</param>
/// <param name="Extent">How long it lasts.</param>
public sealed record OnPeriodBrief(StartBrief Start, ExtentBrief Extent);

/// <summary>Where an on-period starts: <see cref="StartAt"/> or <see cref="StartAfter"/>.</summary>
public abstract record StartBrief;

/// <summary>Starts at a place in the turn.</summary>
/// <param name="From">After home.</param>
public sealed record StartAt(TurnAmount From) : StartBrief;

/// <summary>Starts when the last-listed on-period of another output ends, and a gap later.</summary>
/// <param name="Output">Name of the other output.</param>
/// <param name="Gap">Wait after it; zero when not given.</param>
public sealed record StartAfter(string Output, TurnAmount Gap) : StartBrief;

/// <summary>How long an on-period lasts: <see cref="LastsFor"/>, <see cref="LastsTo"/> or <see cref="LastsForVolume"/>.</summary>
public abstract record ExtentBrief;

/// <summary>For a time or an angle.</summary>
public sealed record LastsFor(TurnAmount Amount) : ExtentBrief;

/// <summary>To a place in the turn.</summary>
public sealed record LastsTo(TurnAmount To) : ExtentBrief;

/// <summary>Until a volume has flowed.</summary>
/// <param name="Litres">Volume.</param>
public sealed record LastsForVolume(double Litres) : ExtentBrief;

/// <summary>A part of the turn, as a time at the nominal frequency or as an angle.</summary>
/// <param name="Value">In seconds or radians.</param>
/// <param name="IsAngle">Whether the value is an angle.</param>
public readonly record struct TurnAmount(double Value, bool IsAngle)
{
    /// <summary>A time at nominal frequency.</summary>
    public static TurnAmount Seconds(double seconds) => new(seconds, IsAngle: false);

    /// <summary>An angle.</summary>
    public static TurnAmount Radians(double radians) => new(radians, IsAngle: true);
}

/// <summary>An adjusting edge: a sloped end of the copper, met by a wiper that a screw moves along the radius.</summary>
/// <param name="Edge">Which end is sloped.</param>
/// <param name="RangeS">Change of on-time between the two ends of travel, s.</param>
/// <param name="TravelMm">Travel of the wiper along the radius, mm.</param>
/// <param name="Longer">Which way lengthens the on-time.</param>
/// <param name="Screw">Name of the screw, e.g. M3.</param>
/// <param name="ScrewPitchMm">Its pitch by ISO 261, coarse.</param>
/// <param name="Lever">Wiper travel per screw travel.</param>
public sealed record AdjustBrief(AdjustedEdge Edge, double RangeS, double TravelMm, LongerWay Longer, string Screw, double ScrewPitchMm, double Lever)
{
    /// <summary>Where the screw meets its strip, and how long it is; null when not given: then it is no solid.</summary>
    public ScrewPlace? Place { get; init; }
}

/// <summary>Where an adjusting screw is, and what holds it.</summary>
/// <param name="AtMm">Developed position on the strip at which it pushes the edge.</param>
/// <param name="LengthMm">From the strip to the far end of its head.</param>
public sealed record ScrewPlace(double AtMm, double LengthMm)
{
    /// <summary>The lugs or plates that hold it, the nearest to the strip first; none when not given: then none is measured.</summary>
    public IReadOnlyList<ScrewLug> Lugs { get; init; } = [];
}

/// <summary>A lug or plate across an adjusting screw: a stretch of the screw's axis, from the strip at mid travel.</summary>
/// <param name="FromMm">Its face toward the strip.</param>
/// <param name="ToMm">Its face toward the head.</param>
public readonly record struct ScrewLug(double FromMm, double ToMm);

/// <summary>The end of an on-period that is sloped.</summary>
public enum AdjustedEdge
{
    /// <summary>Where the contact makes.</summary>
    On,

    /// <summary>Where the contact breaks.</summary>
    Off,
}

/// <summary>The way along the radius that lengthens the on-time.</summary>
public enum LongerWay
{
    /// <summary>Towards the shaft.</summary>
    In,

    /// <summary>Towards the rim.</summary>
    Out,
}
