namespace WheelDraft.Engineering;

/// <summary>One row of a creepage table, mm by pollution degree and material group.</summary>
/// <remarks>Groups IIIa and IIIb share a column in every edition; pollution degree 1 asks the same of all groups.</remarks>
/// <param name="VoltageV">R.m.s. voltage of the row, or the upper end (included) of its band.</param>
/// <param name="Degree1">Pollution degree 1, all groups.</param>
/// <param name="Degree2I">Pollution degree 2, group I.</param>
/// <param name="Degree2II">Pollution degree 2, group II.</param>
/// <param name="Degree2III">Pollution degree 2, groups IIIa and IIIb.</param>
/// <param name="Degree3I">Pollution degree 3, group I.</param>
/// <param name="Degree3II">Pollution degree 3, group II.</param>
/// <param name="Degree3III">Pollution degree 3, groups IIIa and IIIb.</param>
/// <param name="Confidence">How well the row is known.</param>
internal readonly record struct CreepageRow(
    double VoltageV,
    double Degree1,
    double Degree2I,
    double Degree2II,
    double Degree2III,
    double Degree3I,
    double Degree3II,
    double Degree3III,
    RuleConfidence Confidence = RuleConfidence.High)
{
    /// <summary>The cell for a pollution degree of 1 to 3 and a material group, mm.</summary>
    public double At(int degree, MaterialGroup group) => (degree, group) switch
    {
        (1, _) => Degree1,
        (2, MaterialGroup.I) => Degree2I,
        (2, MaterialGroup.II) => Degree2II,
        (2, _) => Degree2III,
        (3, MaterialGroup.I) => Degree3I,
        (3, MaterialGroup.II) => Degree3II,
        (3, _) => Degree3III,
        _ => throw new ArgumentOutOfRangeException(nameof(degree), degree, "Creepage tables know pollution degrees 1 to 3."),
    };
}
