using WheelDraft.Geometry;

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

    /// <summary>The tightest gap along the motion, over every off-period and while parked: between the nose and the edges that end the
    /// window; with lands between a nose and a land or two lands. Null where there never is one: lands with both wipers on bare carrier.</summary>
    public required OpenGap? Along { get; init; }

    /// <summary>The gap sideways, least over the travel; with lands between the patches of the two wipers.</summary>
    /// <remarks>The worn patch counts, its corners included, at the limit of its side play.</remarks>
    public required OpenGap Sideways { get; init; }

    /// <summary>Whether the gap sideways has less to spare beyond what it must keep than that along the motion.</summary>
    public bool SidewaysDecides => Along is null || Sideways.ToSpareMm <= Along.ToSpareMm;

    /// <summary>The gap that decides: of the two the one with the least to spare at the worst tolerance.</summary>
    public OpenGap Deciding => SidewaysDecides ? Sideways : Along!;

    /// <summary>What the deciding gap must keep along the face, mm; null when nothing is asked.</summary>
    public double? RequiredMm => Deciding.RequiredMm;

    /// <summary>Speed at which the contact opens, mm/s.</summary>
    public required double OpeningMmPerS { get; init; }

    /// <summary>The off-periods, in order of the breaks that begin them.</summary>
    public required IReadOnlyList<OpenPeriod> Periods { get; init; }

    /// <summary>The gap while the wheel stands, parked or held by an input; null when the output is closed wherever it can, or has no
    /// voltage across it there.</summary>
    public ParkedGap? Parked { get; init; }

    /// <summary>The deciding gap, nominal, mm.</summary>
    public double NominalMm => Deciding.NominalMm;

    /// <summary>The deciding gap at the worst tolerance, mm.</summary>
    public double WorstMm => Deciding.WorstMm;

    /// <summary>Programme angle at which the deciding gap is found, rad in [0, 2π).</summary>
    public double AtRad => Angles.InTurn(Deciding.AtRad);

    /// <summary>How the requirements of both gaps came about and what there is of both, in words; empty when nothing is asked.</summary>
    public required IReadOnlyList<string> Steps { get; init; }

    /// <summary>The rule that the deciding requirement comes from: the clearance where the section of a round nose asks for more in plan
    /// than the rules do along the face; null when nothing is asked.</summary>
    public Requirement? DecidingRule => Requirement is not PairRequirement asked
        ? null
        : RequiredMm > asked.Creepage!.RequiredMm || asked.Clearance.RequiredMm > asked.Creepage.RequiredMm ? asked.Clearance : asked.Creepage;
}

/// <summary>A gap of an open contact and what it must keep, both in plan along the face.</summary>
/// <remarks>The distance in plan of the two points is the nominal gap for every nose: a round nose stands off the face, so that
/// through the air its section is further from the copper than the points show, and <paramref name="RequiredMm"/> is the plan
/// distance at which that section has the clearance. The corners of a window are taken sharp: its fillets lie beyond the deciding gap.</remarks>
/// <param name="RequiredMm">What it must keep, mm; null when nothing is asked.</param>
/// <param name="NominalMm">As drawn, mm.</param>
/// <param name="WorstMm">At the worst tolerance and with the contact worn, mm, at least 0.</param>
/// <param name="AtRad">Programme angle at which it is found.</param>
public sealed record OpenGap(double? RequiredMm, double NominalMm, double WorstMm, double AtRad)
{
    /// <summary>What it has at worst beyond what it must keep, mm; negative when it misses.</summary>
    public double ToSpareMm => WorstMm - (RequiredMm ?? 0);

    /// <summary>Where it ends on the copper, in the housing at that programme angle; with lands, between the two patches, on that of the
    /// second wiper.</summary>
    public required Point OnCopper { get; init; }

    /// <summary>Where it ends on the nose, in the housing at that programme angle; with lands, between two lands, on the next one.</summary>
    public required Point OnNose { get; init; }

    /// <summary>With lands: the conductors that it leads over, in order, its parts below X counted as nothing; empty for a gap in one piece.
    /// The two points are then the ends of the chain.</summary>
    public IReadOnlyList<string> Over { get; init; } = [];
}

/// <summary>One off-period.</summary>
/// <param name="BreakRad">Programme angle of the break.</param>
/// <param name="MakeRad">Programme angle of the next make; after the break, so it may pass a whole turn.</param>
/// <param name="GreatestMm">Greatest gap reached, least over the travel, mm.</param>
/// <param name="WorstGreatestMm">The same at the worst tolerance, mm.</param>
/// <param name="GreatestAtRad">Programme angle of it.</param>
/// <param name="ReachedAfterRad">Angle after the break, as drawn, at which every gap has what it must keep at the worst tolerance; null when
/// never or not asked.</param>
public sealed record OpenPeriod(double BreakRad, double MakeRad, double GreatestMm, double WorstGreatestMm, double GreatestAtRad, double? ReachedAfterRad)
{
    /// <summary>The gap along the motion where the greatest gap is reached; null when there is none, see <see cref="OpenContact.Along"/>.</summary>
    public required OpenGap? Along { get; init; }
}

/// <summary>The least gap over everywhere that the wheel can stand with voltage across the contact.</summary>
/// <param name="FromRad">Programme angle at which the stretch with that gap begins.</param>
/// <param name="ToRad">Where it ends.</param>
/// <param name="LeastMm">The gap as drawn where <paramref name="WorstMm"/> is found, mm; 0 when the contact may still be closed there.</param>
/// <param name="WorstMm">The least gap over the stretch at the worst tolerance, mm: not above the true one, see <see cref="LeastOverStretch"/>.</param>
/// <param name="AtRad">Programme angle of it.</param>
public sealed record ParkedGap(double FromRad, double ToRad, double LeastMm, double WorstMm, double AtRad)
{
    /// <summary>Whether the wheel can stand anywhere.</summary>
    public bool IsWholeTurn => ToRad - FromRad >= Angles.TurnRad;

    /// <summary>How the wheel comes to stand there, in words.</summary>
    public string Why { get; init; } = "";

    /// <summary>The tightest gap along the motion over the stretch; null when there is none, see <see cref="OpenContact.Along"/>.</summary>
    public required OpenGap? Along { get; init; }
}
