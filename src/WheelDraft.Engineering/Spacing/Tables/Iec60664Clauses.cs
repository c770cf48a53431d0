namespace WheelDraft.Engineering;

/// <summary>Clauses of IEC 60664-1 that the steps of a requirement rest on in addition to its tables, as they are cited.</summary>
/// <remarks>Numbers are those of edition 2 (2007): its clauses were quoted in public texts, those of edition 3 (2020), which
/// restructured clauses 4 and 5, were not seen. A number that no text confirmed says so.</remarks>
internal static class Iec60664Clauses
{
    /// <summary>Preferred series of impulse voltages.</summary>
    public const string PreferredSeries = "IEC 60664-1:2007 clause 4.2.3";

    /// <summary>Reinforced clearances.</summary>
    public const string ReinforcedClearance = "IEC 60664-1:2007 clause 5.1.6";

    /// <summary>Rationalised voltages for creepage of basic insulation.</summary>
    public const string Rationalised = "IEC 60664-1:2007 clause 5.2.3, from memory";

    /// <summary>Functional creepage by working voltage, interpolated.</summary>
    public const string FunctionalCreepage = "IEC 60664-1:2007 clause 5.2.4, from memory";

    /// <summary>Twice the creepage distance for reinforced insulation.</summary>
    public const string ReinforcedCreepage = "IEC 60664-1:2007 clause 5.3.5, from memory";

    /// <summary>A creepage distance is never less than the clearance that goes with it.</summary>
    public const string NotBelowClearance = "IEC 60664-1:2007 clause 5.2, the sub-clause not known";

    /// <summary>Floating conductors split a path, each part counted from X on.</summary>
    public const string FloatingParts = "IEC 60664-1:2007 clause 5.2.2.7, from memory";

    /// <summary>How distances are measured.</summary>
    public const string Measuring = "IEC 60664-1:2007 clause 6.2, edition 3 clause 6.8";
}
