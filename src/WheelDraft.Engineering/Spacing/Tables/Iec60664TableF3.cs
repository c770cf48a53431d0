namespace WheelDraft.Engineering;

/// <summary>Rationalised voltages of single-phase systems, two or three wires, direct or alternating.</summary>
internal static class Iec60664TableF3
{
    /// <summary>Where it was published. In edition 2 (2007) it is Table F.3a.</summary>
    public static readonly TableSource Source = TableSource.Iec60664(
        "Table F.3", "terminal block and connector catalogues; notes on edition 3");

    /// <summary>Nominal voltages and the voltage that stands for them in the creepage table, line to line.</summary>
    /// <remarks>For a three-wire system (30-60, 100-200, 110-220, 120-240, 220-440, 480-960 V) the larger number is its
    /// nominal voltage line to line; its line-to-earth column repeats what the smaller number has as a system of its own,
    /// except 480 V, which <see cref="Iec60664TableF4"/> lists at the same 500 V.</remarks>
    public static readonly RationalisedRow[] Rows =
    [
        new(12.5, [12.5]),
        new(25, [24, 25]),
        new(32, [30]),
        new(50, [42, 48, 50]),
        new(63, [60]),
        new(100, [100]),
        new(125, [110, 120]),
        new(160, [150]),
        new(200, [200]),
        new(250, [220, 240]),
        new(320, [300]),
        new(500, [440]),
        new(630, [600]),
        new(1000, [960, 1000]),
        new(1500, [1500]),
    ];
}

/// <summary>Nominal voltages that share one rationalised voltage.</summary>
/// <param name="RationalisedV">The voltage to enter the creepage table with, r.m.s.</param>
/// <param name="NominalV">The nominal voltages that it stands for.</param>
/// <param name="Confidence">How well the row is known.</param>
internal sealed record RationalisedRow(
    double RationalisedV,
    IReadOnlyList<double> NominalV,
    RuleConfidence Confidence = RuleConfidence.High);
