namespace WheelDraft.Engineering;

// The chapter "Materials": copper and spring alloys as data, every value with its source. Nothing here computes a design.
// API: MaterialTable.All, MaterialTable.Find("C51000-H04") → MaterialSearch { Found, NearMisses, Message }.

/// <summary>One value of a material, with where it comes from.</summary>
/// <param name="Value">The value, in the unit that the property names.</param>
/// <param name="Source">Where it was published, or how it was worked out.</param>
/// <param name="FromMemory">Whether no text was seen: the value is recalled, and should be checked before it is relied on.</param>
public sealed record MaterialValue(double Value, string Source, bool FromMemory = false)
{
    /// <summary>The source, with a word of warning where the value is from memory.</summary>
    public string SourceInWords => FromMemory ? "from memory: " + Source : Source;
}

/// <summary>A copper alloy in one temper, as strip.</summary>
/// <remarks>Where sources give a range, the value on the safe side stands: the least strength, the greatest resistivity.</remarks>
/// <param name="Designation">UNS number and temper, e.g. C51000-H04.</param>
/// <param name="Trade">What the trade calls it, e.g. phosphor bronze CuSn5, hard.</param>
public sealed record Material(string Designation, string Trade)
{
    /// <summary>UNS number, e.g. C51000.</summary>
    public string Alloy => Designation[..Designation.IndexOf('-', StringComparison.Ordinal)];

    /// <summary>Temper by ASTM B601, e.g. H04.</summary>
    public string Temper => Designation[(Designation.IndexOf('-', StringComparison.Ordinal) + 1)..];

    /// <summary>Resistivity at 20 °C, nΩ·m.</summary>
    public required MaterialValue ResistivityNanoOhmM { get; init; }

    /// <summary>Young's modulus, GPa.</summary>
    public required MaterialValue ModulusGpa { get; init; }

    /// <summary>Poisson's ratio.</summary>
    public required MaterialValue PoissonRatio { get; init; }

    /// <summary>Density, g/cm³.</summary>
    public required MaterialValue DensityGPerCm3 { get; init; }

    /// <summary>Yield strength at 0.2 % set, MPa.</summary>
    public required MaterialValue YieldMpa { get; init; }

    /// <summary>Tensile strength, MPa: the least of the range.</summary>
    public required MaterialValue TensileMpa { get; init; }

    /// <summary>Fatigue strength in reversed bending, MPa; null when no value is known for this temper.</summary>
    public MaterialValue? FatigueMpa { get; init; }

    /// <summary>Contact hardness, MPa.</summary>
    public required MaterialValue HardnessMpa { get; init; }

    /// <summary>Contact voltage at which the spot softens, V; null when none is known.</summary>
    public MaterialValue? SofteningV { get; init; }

    /// <summary>Least inside bend radius over thickness, bend axis across the rolling direction (good way); null when none is known.</summary>
    public MaterialValue? LeastRadiusGoodWay { get; init; }

    /// <summary>Least inside bend radius over thickness, bend axis along the rolling direction (bad way); null when none is known.</summary>
    public MaterialValue? LeastRadiusBadWay { get; init; }

    /// <summary>Neutral-axis factor K of tight bends in this temper.</summary>
    public required MaterialValue TightBendK { get; init; }

    /// <summary>Temperature above which it loses force in time, °C; null when none is known.</summary>
    public MaterialValue? RelaxesAboveC { get; init; }

    /// <summary>What a person who works it must know; null when nothing.</summary>
    public string? Caution { get; init; }

    /// <summary>Shear modulus, GPa: E / (2 (1 + ν)).</summary>
    public double ShearModulusGpa => ModulusGpa.Value / (2 * (1 + PoissonRatio.Value));
}
