using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A formed copper strip, from its terminal end to its tip.</summary>
/// <param name="Name">Name.</param>
/// <param name="Task">What it serves.</param>
/// <param name="Material">Alloy and temper, e.g. C51000-H04.</param>
/// <param name="ThicknessMm">Thickness of the stock.</param>
/// <param name="Shape">Pieces from the terminal end to the tip.</param>
public sealed record StripBrief(string Name, StripTask Task, string Material, double ThicknessMm, IReadOnlyList<StripPiece> Shape)
{
    /// <summary>Its reference designation as given; empty for the usual letter code.</summary>
    public string Designation { get; init; } = "";

    /// <summary>Rolling direction of the stock; null for unknown, the worse is taken.</summary>
    public StripGrain? Grain { get; init; }

    /// <summary>Neutral-axis factor; null for the table's.</summary>
    public double? KFactor { get; init; }

    /// <summary>Holes at developed positions.</summary>
    public IReadOnlyList<StripHole> Holes { get; init; } = [];

    /// <summary>Held between these developed positions, mm; null when not given.</summary>
    public StripClamp? Clamp { get; init; }

    /// <summary>How far the wheel pushes the contact back, mm; only with a straight "auto".</summary>
    public double? DeflectionMm { get; init; }

    /// <summary>Direction from the tip back along the arm, from the outward radial, anticlockwise, rad.</summary>
    public double? ApproachRad { get; init; }

    /// <summary>Surface on which its underside lies between the clamps; null when not given.</summary>
    public string? SeatedOn { get; init; }

    /// <summary>What of it is left to the program; nothing once it is chosen.</summary>
    public StripChoices Left { get; init; }
}

/// <summary>What a strip serves: <see cref="ServesOutput"/>, <see cref="ServesFeed"/> or <see cref="ServesNet"/>.</summary>
public abstract record StripTask;

/// <summary>The wiper of an output.</summary>
/// <param name="Output">Name of the output.</param>
/// <param name="IsReturn">Whether it is the second wiper of a lands wheel.</param>
public sealed record ServesOutput(string Output, bool IsReturn) : StripTask;

/// <summary>The feed wiper.</summary>
public sealed record ServesFeed : StripTask;

/// <summary>A plain strip on a net.</summary>
/// <param name="Net">Net.</param>
/// <param name="Tip">Where its end is, plan.</param>
public sealed record ServesNet(string Net, Point Tip) : StripTask;

/// <summary>Rolling direction of the stock.</summary>
public enum StripGrain
{
    /// <summary>Along the strip.</summary>
    Along,

    /// <summary>Across the strip.</summary>
    Across,
}

/// <summary>A hole.</summary>
/// <param name="AtMm">Developed, from the terminal end to its centre.</param>
/// <param name="AcrossMm">From the centre line, positive to the left looking to the tip.</param>
/// <param name="DiameterMm">Diameter.</param>
public sealed record StripHole(double AtMm, double AcrossMm, double DiameterMm);

/// <summary>Where a strip is held, developed positions from the terminal end.</summary>
/// <param name="FromMm">First.</param>
/// <param name="ToMm">Second: the spring begins here.</param>
public readonly record struct StripClamp(double FromMm, double ToMm);

/// <summary>One piece of a strip's shape.</summary>
public abstract record StripPiece;

/// <summary>A quick-connect tab by IEC 61210.</summary>
/// <param name="Size">Size, e.g. 4.8x0.5.</param>
public sealed record StripTab(string Size) : StripPiece;

/// <summary>A straight.</summary>
/// <param name="LengthMm">Length; null for "auto", solved so that the deflection comes out.</param>
/// <param name="WidthMm">Width at its start; null to go on with the width before.</param>
/// <param name="WidthEndMm">Width at its end; null for the same.</param>
public sealed record StripStraight(double? LengthMm, double? WidthMm, double? WidthEndMm) : StripPiece;

/// <summary>A fold out of the plane.</summary>
/// <param name="AngleRad">Positive turns a level strip toward the wiper side, same sense all along.</param>
/// <param name="RadiusMm">Inside radius.</param>
/// <param name="IsContact">Whether the outside of this fold touches the wheel.</param>
public sealed record StripBend(double AngleRad, double RadiusMm, bool IsContact) : StripPiece;

/// <summary>A curve in the plane.</summary>
/// <param name="AngleRad">Positive anticlockwise seen from the wiper side.</param>
/// <param name="RadiusMm">Radius of the centre line.</param>
/// <param name="WidthMm">Width; null to go on with the width before.</param>
public sealed record StripSweep(double AngleRad, double RadiusMm, double? WidthMm) : StripPiece;

/// <summary>A domed rivet as contact, at the end.</summary>
/// <param name="HeightMm">From the wheel-side face to the top of its dome.</param>
/// <param name="DomeRadiusMm">Radius of the dome.</param>
/// <param name="DiameterMm">Diameter of the head.</param>
public sealed record StripRivet(double HeightMm, double DomeRadiusMm, double DiameterMm) : StripPiece;
