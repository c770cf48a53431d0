namespace WheelDraft.Engineering;

/// <summary>How far the figures of a strip may lie from the drawn ones: over the whole box of <see cref="PressingLimits"/> at once.</summary>
/// <param name="LeastForceN">Smallest force on copper: worn, over travel; 0 when the contact may leave the copper.</param>
/// <param name="MostForceN">Largest force on copper: new, over travel.</param>
/// <param name="MostStressMpa">Largest stress.</param>
public sealed record StripBand(double LeastForceN, double MostForceN, double MostStressMpa)
{
    /// <summary>The smallest deflection that is left when worn, mm; not above 0 when the contact may leave the copper.</summary>
    public required double LeastDeflectionMm { get; init; }

    /// <summary>How friction winds up the nose; null when no friction is given.</summary>
    public WindUp? WindUp { get; init; }

    /// <summary>Why some strip within the limits cannot work at all; null when all can.</summary>
    public string? Fails { get; init; }
}
