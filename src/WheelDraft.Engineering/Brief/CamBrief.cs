using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A disc cam on the wheel's shaft, and the lever that it lifts.</summary>
/// <remarks>A lift is an angle in rad of a swinging lever and a length in mm of a sliding one, from rest; so are the places of contact, obstacle and latch.
/// The cam sits on the shaft as the wheel does: its angles are wheel angles.</remarks>
public sealed record CamBrief
{
    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Radius of the roller, mm; null for a flat follower.</summary>
    public double? RollerRadiusMm { get; init; }

    /// <summary>How the lever moves.</summary>
    public required LeverBrief Lever { get; init; }

    /// <summary>From the axis to the cam's face at rest, mm; null to be found.</summary>
    public double? BaseRadiusMm { get; init; }

    /// <summary>What the lever does, in order round the turn.</summary>
    public required IReadOnlyList<CamStep> Profile { get; init; }

    /// <summary>The greatest pressure angle that is allowed, rad.</summary>
    public required double PressureAngleRad { get; init; }

    /// <summary>Thickness, mm.</summary>
    public required double ThicknessMm { get; init; }

    /// <summary>What it is made of, in words.</summary>
    public required string Material { get; init; }

    /// <summary>Net of a cam that conducts; null for one that insulates.</summary>
    public string? Net { get; init; }

    /// <summary>Lower face, height over the copper face, mm.</summary>
    public required double LowerMm { get; init; }

    /// <summary>Upper face, mm, above the lower.</summary>
    public required double UpperMm { get; init; }

    /// <summary>Its bore; null for the wheel's.</summary>
    public BoreBrief? Bore { get; init; }

    /// <summary>Its cut edge, normal to itself, plus and minus, mm; null for the tolerance of the process.</summary>
    public double? CutToleranceMm { get; init; }

    /// <summary>Press at rest, back to rest: N mm on a swinging lever, N on a sliding one; above 0.</summary>
    public required double PressAtRest { get; init; }

    /// <summary>How much the press grows with the lift: N mm/rad or N/mm; at least 0.</summary>
    public double PressRate { get; init; }

    /// <summary>Of the lever: g mm² about its pivot, or g; null when not given.</summary>
    public double? Inertia { get; init; }

    /// <summary>What the lever is as a body; null when the file does not say: then it is taken to insulate.</summary>
    public LeverBodyBrief? Body { get; init; }

    /// <summary>Lift at which a stop ends the lever's way, at least its latch and its greatest lift; null when not given.</summary>
    public double? Stop { get; init; }

    /// <summary>The lever's contact; null when it has none.</summary>
    public LeverContactBrief? Contact { get; init; }

    /// <summary>Lift at which the lever stays when something is in its way; null when nothing ever is.</summary>
    public double? Obstacle { get; init; }

    /// <summary>Lift at which it can be hooked up, beyond the greatest lift; null when it cannot.</summary>
    public double? Latch { get; init; }

    /// <summary>Whether a lift is an angle.</summary>
    public bool Swings => Lever is SwingingLever;

    /// <summary>The press at a lift, N mm or N.</summary>
    internal double PressAt(double lift) => PressAtRest + (PressRate * lift);
}

/// <summary>How a lever moves: <see cref="SwingingLever"/> or <see cref="SlidingLever"/>.</summary>
public abstract record LeverBrief;

/// <summary>A lever that swings about a pivot.</summary>
/// <param name="Pivot">The pivot in plan.</param>
/// <param name="ArmMm">From the pivot to the roller's axis; of a flat follower how far its face reaches.</param>
/// <param name="Lifts">Sense in which it turns when it is lifted, seen from the wiper side.</param>
public sealed record SwingingLever(Point Pivot, double ArmMm, Turning Lifts) : LeverBrief;

/// <summary>A lever that slides.</summary>
/// <param name="OffsetMm">How far its path passes the axis on its right, looking along the lift.</param>
/// <param name="DirectionRad">Direction of the lift.</param>
public sealed record SlidingLever(double OffsetMm, double DirectionRad) : LeverBrief;

/// <summary>What a lever is as a body, with its roller.</summary>
/// <param name="Net">Net of a lever that conducts; null for one that insulates.</param>
/// <param name="WidthMm">Width of the arm or bar in plan, mm.</param>
/// <param name="LowerMm">Its lower face, height over the copper face, mm.</param>
/// <param name="UpperMm">Its upper face, mm, above the lower.</param>
/// <param name="TailMm">How far it goes on behind: a swinging one beyond its pivot, a sliding one behind its roller or face, mm.</param>
public sealed record LeverBodyBrief(string? Net, double WidthMm, double LowerMm, double UpperMm, double TailMm);

/// <summary>One step of a profile: <see cref="CamRise"/> or <see cref="CamDrop"/>.</summary>
public abstract record CamStep;

/// <summary>A rise or a return by a law.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends; may lie beyond home.</param>
/// <param name="Lift">Lift reached at its end, rad or mm from rest.</param>
/// <param name="Law">How it goes.</param>
public sealed record CamRise(TurnAmount From, TurnAmount To, double Lift, CamLaw Law) : CamStep;

/// <summary>A sharp fall to rest.</summary>
/// <param name="At">Up to where the lever is held.</param>
public sealed record CamDrop(TurnAmount At) : CamStep;

/// <summary>How a rise or a return goes.</summary>
public enum CamLaw
{
    /// <summary>At one speed: strikes at both ends.</summary>
    Uniform,

    /// <summary>Simple harmonic: acceleration jumps at both ends.</summary>
    Harmonic,

    /// <summary>Cycloidal.</summary>
    Cycloidal,

    /// <summary>Modified trapezoidal acceleration.</summary>
    ModifiedTrapezoid,

    /// <summary>Modified sine acceleration.</summary>
    ModifiedSine,

    /// <summary>The polynomial with powers 3, 4 and 5.</summary>
    Polynomial345,

    /// <summary>The polynomial with powers 4 to 7.</summary>
    Polynomial4567,
}

/// <summary>The contact that a lever works.</summary>
/// <param name="Input">The input that it is.</param>
/// <param name="Place">Lift at which it changes, rad or mm.</param>
/// <param name="ClosedBelow">Whether it is closed below that place; else above.</param>
/// <param name="Tolerance">How far from there it may close or open, plus and minus, rad or mm.</param>
public sealed record LeverContactBrief(string Input, double Place, bool ClosedBelow, double Tolerance)
{
    /// <summary>Whether it is closed with the lever at a lift, its place being exact.</summary>
    internal bool IsClosedAt(double lift) => ClosedBelow ? lift < Place : lift > Place;
}
