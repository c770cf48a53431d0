namespace WheelDraft.Engineering;

/// <summary>A distance that a rule asks, and how it came about.</summary>
/// <param name="RequiredMm">The distance, mm, without rounding, apart from noise below 1e-9 mm.</param>
/// <param name="Basis">Standard, edition and table whose row decided, or the person's own word.</param>
/// <param name="Entry">What the table was entered with, e.g. <c>250 V, PD3, IIIa</c>; empty for the person's own.</param>
/// <param name="Steps">Every step from the voltage to the distance, in order, one sentence each.</param>
public sealed record Requirement(double RequiredMm, string Basis, string Entry, IReadOnlyList<string> Steps)
{
    /// <summary>Clearances: the impulse voltage whose row was used, after the step for reinforced insulation (where
    /// IEC 60335-1 interpolates, the voltage entered), V peak; null for creepage and for a clearance of the person's own.</summary>
    public double? ImpulseV { get; init; }

    /// <summary>The public texts that the deciding table was read in; empty for the person's own.</summary>
    public string ReadIn { get; init; } = "";

    /// <summary>How well the weakest table value or rule in it is known.</summary>
    public RuleConfidence Confidence { get; init; }

    /// <summary>Whether the distance is the person's own in place of the rule's.</summary>
    public bool IsOwn { get; init; }

    /// <summary>What the rule asks where the person's own distance stands in its place, before any margin, mm;
    /// null otherwise and where the rule gives none.</summary>
    public double? RuleMm { get; init; }

    /// <summary>Basis and entry in one: <c>IEC 60664-1:2020 Table F.5, 250 V, PD3, IIIa</c>.</summary>
    public string BasisInFull => Entry.Length == 0 ? Basis : Basis + ", " + Entry;

    /// <summary>The confidence in words: high, medium, low or from memory.</summary>
    public string ConfidenceInWords => RuleWords.Confidence(Confidence);
}

/// <summary>What is asked of one pair of conductors.</summary>
/// <param name="Clearance">Through air, margin included.</param>
/// <param name="Creepage">Along the surface between them, margin included; null when they share no surface.</param>
public sealed record PairRequirement(Requirement Clearance, Requirement? Creepage);
