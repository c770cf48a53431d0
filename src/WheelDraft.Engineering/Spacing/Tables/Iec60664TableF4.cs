namespace WheelDraft.Engineering;

/// <summary>Rationalised voltages of three-phase systems, three or four wires, alternating.</summary>
/// <remarks>Not a ceiling: 208 V stands at 200 V, 660 and 690 V at 630 V. Where 415 V stands is disputed: catalogues that
/// reprint edition 2 have it with 380 and 400 V at 400 V, notes on edition 3 with 440 V at 500 V. The larger is used.</remarks>
internal static class Iec60664TableF4
{
    /// <summary>Where it was published. In edition 2 (2007) it is Table F.3b; F.4 is the creepage table there.</summary>
    public static readonly TableSource Source = TableSource.Iec60664(
        "Table F.4", "terminal block and connector catalogues; notes on edition 3");

    /// <summary>Nominal voltages and the voltage that stands for them in the creepage table, line to line.</summary>
    public static readonly RationalisedRow[] Rows =
    [
        new(63, [60]),
        new(125, [110, 120, 127]),
        new(160, [150]),
        new(200, [200, 208]),
        new(250, [220, 230, 240]),
        new(320, [300]),
        new(400, [380, 400]),
        new(500, [415], RuleConfidence.Low),
        new(500, [440, 480, 500]),
        new(630, [575, 600, 660, 690]),
        new(800, [720, 830]),
        new(1000, [960, 1000]),
    ];
}
