namespace WheelDraft.Engineering;

/// <summary>How far one output's contact opens. A contact gap is never a means of isolation.</summary>
public sealed record OpenContact
{
    /// <summary>The output.</summary>
    public required string Output { get; init; }

    /// <summary>Net of the wiper.</summary>
    public required string WiperNet { get; init; }

    /// <summary>Net of the other side: the wheel's copper, or the second wiper of a lands wheel.</summary>
    public required string WheelNet { get; init; }

    /// <summary>What the rule asks, with its steps; null when no separation is asked (micro-interruption unless tested).</summary>
    public PairRequirement? Requirement { get; init; }

    /// <summary>Working voltage across the open contact, V.</summary>
    public required double WorkingV { get; init; }

    /// <summary>What the patch must keep along the face, in the direction of motion, mm; null when nothing is asked.</summary>
    public double? RequiredMm { get; init; }

    /// <summary>Least gap sideways, over the travel, mm; with lands the gap between the patches of the two wipers.</summary>
    public required double SidewaysMm { get; init; }

    /// <summary>The same at the worst tolerance and with the contact worn, mm.</summary>
    /// <remarks>A worn disc is larger all round; of a worn rectangle what it grows along the radius counts, see
    /// <see cref="ContactPatch.SidewaysWearMm"/>.</remarks>
    public required double WorstSidewaysMm { get; init; }

    /// <summary>Speed at which the contact opens, mm/s.</summary>
    public required double OpeningMmPerS { get; init; }

    /// <summary>The off-periods, in order of the breaks that begin them.</summary>
    public required IReadOnlyList<OpenPeriod> Periods { get; init; }

    /// <summary>The gap while the wheel is parked; null when the output is closed there.</summary>
    public ParkedGap? Parked { get; init; }

    /// <summary>The deciding gap, nominal, mm.</summary>
    public required double NominalMm { get; init; }

    /// <summary>The deciding gap at the worst tolerance, mm.</summary>
    public required double WorstMm { get; init; }

    /// <summary>Programme angle at which the deciding gap is found, rad.</summary>
    public required double AtRad { get; init; }
}

/// <summary>One off-period.</summary>
/// <param name="BreakRad">Programme angle of the break.</param>
/// <param name="MakeRad">Programme angle of the next make; after the break, so it may pass a whole turn.</param>
/// <param name="GreatestMm">Greatest gap reached, least over the travel, mm.</param>
/// <param name="WorstGreatestMm">The same at the worst tolerance, mm.</param>
/// <param name="GreatestAtRad">Programme angle of it.</param>
/// <param name="ReachedAfterRad">Angle after the break at which the required gap is reached; null when never or not asked.</param>
public sealed record OpenPeriod(double BreakRad, double MakeRad, double GreatestMm, double WorstGreatestMm, double GreatestAtRad, double? ReachedAfterRad);

/// <summary>The gap while parked.</summary>
/// <param name="FromRad">Programme angle at which the parked interval begins.</param>
/// <param name="ToRad">Where it ends.</param>
/// <param name="LeastMm">Least gap over the interval, mm; 0 when the contact may still be closed.</param>
/// <param name="WorstMm">The same at the worst tolerance, mm.</param>
/// <param name="AtRad">Programme angle of it.</param>
public sealed record ParkedGap(double FromRad, double ToRad, double LeastMm, double WorstMm, double AtRad);
