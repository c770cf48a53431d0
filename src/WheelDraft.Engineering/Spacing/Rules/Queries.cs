namespace WheelDraft.Engineering;

/// <summary>What a clearance rule needs to know.</summary>
/// <param name="Impulse">Where the impulse voltage comes from.</param>
/// <param name="Insulation">Grade of the insulation.</param>
/// <param name="PollutionDegree">1 to 4; 4 is refused.</param>
internal sealed record ClearanceQuery(ImpulseSource Impulse, Insulation Insulation, int PollutionDegree)
{
    /// <summary>Height above sea level, m.</summary>
    public double AltitudeM { get; init; }

    /// <summary>Largest steady peak across the gap, V; null for √2 times the supply voltage, and where no supply voltage is
    /// given either, for a peak that is not considered.</summary>
    public double? WorkingPeakV { get; init; }

    /// <summary>What counts in addition to the impulse and the steady peak.</summary>
    public OverVoltages OverVoltages { get; init; }

    /// <summary>Frequency, Hz; above 30 kHz is refused.</summary>
    public double FrequencyHz { get; init; } = 50;
}

/// <summary>Where an impulse voltage comes from: <see cref="SupplyImpulse"/> or <see cref="GivenImpulse"/>.</summary>
internal abstract record ImpulseSource
{
    private protected ImpulseSource()
    {
    }

    private protected static double Positive(double v, string name) =>
        double.IsFinite(v) && v > 0 ? v : throw new ArgumentOutOfRangeException(name, v, "A voltage here is a number above 0.");
}

/// <summary>The rated impulse voltage of equipment on a supply.</summary>
/// <param name="VoltageV">R.m.s. voltage of the supply, line to neutral; above 0.</param>
/// <param name="Category">Overvoltage category.</param>
internal sealed record SupplyImpulse(double VoltageV, OvervoltageCategory Category) : ImpulseSource
{
    /// <summary>R.m.s. voltage of the supply, line to neutral, V.</summary>
    public double VoltageV { get; } = Positive(VoltageV, nameof(VoltageV));
}

/// <summary>An impulse voltage that is given as such.</summary>
/// <param name="ImpulseV">V peak; above 0.</param>
internal sealed record GivenImpulse(double ImpulseV) : ImpulseSource
{
    /// <summary>Impulse voltage, V peak.</summary>
    public double ImpulseV { get; } = Positive(ImpulseV, nameof(ImpulseV));
}

/// <summary>What a creepage rule needs to know.</summary>
/// <param name="VoltageV">Long-term r.m.s. voltage across the path, V; at least 0. By IEC 60664-1 a basic, supplementary or
/// reinforced insulation is entered with its rationalised voltage, found here.</param>
/// <param name="Insulation">Grade of the insulation.</param>
/// <param name="PollutionDegree">1 to 4; 4 is refused.</param>
/// <param name="Group">Material group of the surface.</param>
internal sealed record CreepageQuery(double VoltageV, Insulation Insulation, int PollutionDegree, MaterialGroup Group)
{
    /// <summary>Frequency, Hz; above 30 kHz is refused.</summary>
    public double FrequencyHz { get; init; } = 50;
}

/// <summary>What the requirement for one pair of conductors needs to know.</summary>
/// <param name="Supply">The supply.</param>
/// <param name="Environment">The surroundings.</param>
/// <param name="Spacing">The rule set, the margin and the person's own distances.</param>
/// <param name="Insulation">Grade of the insulation between the two.</param>
internal sealed record PairQuery(SupplyBrief Supply, EnvironmentBrief Environment, SpacingBrief Spacing, Insulation Insulation)
{
    /// <summary>Largest r.m.s. voltage between the two over every reachable state and angle, V; at least 0.</summary>
    /// <remarks>For basic and higher grades the supply voltage is used where it is higher.</remarks>
    public required double WorkingVoltageV { get; init; }

    /// <summary>Material group of the surface between them; null when they share no surface, and then no creepage is asked.</summary>
    public MaterialGroup? Group { get; init; }
}
