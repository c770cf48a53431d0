namespace WheelDraft.Engineering;

/// <summary>Rated impulse voltage by line-to-neutral voltage and overvoltage category.</summary>
internal static class Iec60664TableF1
{
    /// <summary>Where it was published. In edition 2 (2007) it has the same number.</summary>
    public static readonly TableSource Source = TableSource.Iec60664(
        "Table F.1", "DIN 41612 connector catalogue; TI SLUP419 table 4; notes on edition 3");

    /// <summary>The row for a line-to-neutral voltage up to and including the first number; V peak for categories I to IV.</summary>
    public static readonly ImpulseRow[] Rows =
    [
        new(50, 330, 500, 800, 1500),
        new(100, 500, 800, 1500, 2500),
        new(150, 800, 1500, 2500, 4000),
        new(300, 1500, 2500, 4000, 6000),
        new(600, 2500, 4000, 6000, 8000),
        new(1000, 4000, 6000, 8000, 12000),
        new(1250, 4000, 6000, 8000, 12000, RuleConfidence.Medium),
        new(1500, 6000, 8000, 10000, 15000, RuleConfidence.Medium),
    ];

    /// <summary>Rows above this are printed for direct voltage only, V.</summary>
    public const double LargestAlternatingV = 1000;
}

/// <summary>Rated impulse voltages for system voltages up to a limit, V peak.</summary>
/// <param name="UpToV">Upper end of the row, included.</param>
/// <param name="CategoryI">Overvoltage category I.</param>
/// <param name="CategoryII">Overvoltage category II.</param>
/// <param name="CategoryIII">Overvoltage category III.</param>
/// <param name="CategoryIV">Overvoltage category IV; null where the table has no such column.</param>
/// <param name="Confidence">How well the row is known.</param>
internal readonly record struct ImpulseRow(
    double UpToV,
    double CategoryI,
    double CategoryII,
    double CategoryIII,
    double? CategoryIV,
    RuleConfidence Confidence = RuleConfidence.High)
{
    /// <summary>The cell of a category, V peak; null where the table has none.</summary>
    public double? At(OvervoltageCategory category) => category switch
    {
        OvervoltageCategory.I => CategoryI,
        OvervoltageCategory.II => CategoryII,
        OvervoltageCategory.III => CategoryIII,
        OvervoltageCategory.IV => CategoryIV,
        _ => throw new ArgumentOutOfRangeException(nameof(category), category, "Overvoltage categories are I to IV."),
    };
}
