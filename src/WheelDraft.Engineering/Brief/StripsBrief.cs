using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What strips that are set out by the program are made of, and what every strip that presses has to keep.</summary>
/// <param name="AtHand">Stock that is at hand.</param>
/// <param name="Contact">What touches.</param>
/// <param name="Foot">The part that lies in the clamp.</param>
/// <param name="Force">The force of the drawn contact, least and most.</param>
/// <param name="SeatedOn">The surface that feet lie on.</param>
public sealed record StripsBrief(IReadOnlyList<StripStock> AtHand, StripContactBrief Contact, StripFoot Foot, ForceRange Force, string SeatedOn)
{
    /// <summary>The tab at the terminal end, e.g. 4.8x0.5; null for none.</summary>
    public string? Tab { get; init; }

    /// <summary>The least factor against yield; null where none is asked beyond what the rules say.</summary>
    public double? YieldFactor { get; init; }

    /// <summary>The least factor against fatigue; null where none is asked.</summary>
    public double? FatigueFactor { get; init; }

    /// <summary>Where feet and tabs stay inside; null for anywhere.</summary>
    public Outline? Room { get; init; }
}

/// <summary>Stock at hand.</summary>
/// <param name="Material">Alloy and temper.</param>
/// <param name="ThicknessesMm">Thicknesses, mm.</param>
public sealed record StripStock(string Material, IReadOnlyList<double> ThicknessesMm);

/// <summary>What touches at the end of a strip: <see cref="RivetContact"/> or <see cref="FoldContact"/>.</summary>
public abstract record StripContactBrief;

/// <summary>A domed rivet.</summary>
/// <param name="Rivet">The rivet.</param>
public sealed record RivetContact(StripRivet Rivet) : StripContactBrief;

/// <summary>A fold whose outside touches.</summary>
/// <param name="RadiusMm">Its inside radius, mm.</param>
public sealed record FoldContact(double RadiusMm) : StripContactBrief;

/// <summary>A foot.</summary>
/// <param name="LengthMm">Length, mm.</param>
/// <param name="WidthMm">Width, mm; the strip is as wide up to its arm.</param>
public sealed record StripFoot(double LengthMm, double WidthMm);

/// <summary>A range of forces.</summary>
/// <param name="LeastN">Least, N.</param>
/// <param name="MostN">Most, N.</param>
public readonly record struct ForceRange(double LeastN, double MostN);

/// <summary>What of a strip is left to the program.</summary>
/// <param name="Shape">Its whole shape, with stock, clamp and seat as far as they are not given.</param>
/// <param name="Approach">Its approach.</param>
/// <param name="Deflection">Its deflection.</param>
public readonly record struct StripChoices(bool Shape, bool Approach, bool Deflection)
{
    /// <summary>Whether anything is.</summary>
    public bool Any => Shape || Approach || Deflection;
}
