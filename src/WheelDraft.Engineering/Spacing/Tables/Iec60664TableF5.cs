namespace WheelDraft.Engineering;

/// <summary>Creepage by r.m.s. voltage, pollution degree and material group.</summary>
/// <remarks>The columns for printed wiring and the values allowed with a rib are left out: a contact wheel is no printed
/// board, and the rib values need a rib of stated proportions where 8 mm or more is asked.</remarks>
internal static class Iec60664TableF5
{
    /// <summary>Where it was published. In edition 2 (2007) it is Table F.4.</summary>
    public static readonly TableSource Source = TableSource.Iec60664(
        "Table F.5", "terminal block catalogue of 2015, p. 594, read row by row as Table F.4 of edition 2; TI SLUP419 table 3; notes on edition 3");

    /// <summary>Rows in rising order: V r.m.s.; mm at PD1; PD2 I, II, III; PD3 I, II, III.</summary>
    public static readonly CreepageRow[] Rows =
    [
        new(10, 0.08, 0.4, 0.4, 0.4, 1, 1, 1),
        new(12.5, 0.09, 0.42, 0.42, 0.42, 1.05, 1.05, 1.05),
        new(16, 0.1, 0.45, 0.45, 0.45, 1.1, 1.1, 1.1),
        new(20, 0.11, 0.48, 0.48, 0.48, 1.2, 1.2, 1.2),
        new(25, 0.125, 0.5, 0.5, 0.5, 1.25, 1.25, 1.25),
        new(32, 0.14, 0.53, 0.53, 0.53, 1.3, 1.3, 1.3),
        new(40, 0.16, 0.56, 0.8, 1.1, 1.4, 1.6, 1.8),
        new(50, 0.18, 0.6, 0.85, 1.2, 1.5, 1.7, 1.9),
        new(63, 0.2, 0.63, 0.9, 1.25, 1.6, 1.8, 2),
        new(80, 0.22, 0.67, 0.95, 1.3, 1.7, 1.9, 2.1),
        new(100, 0.25, 0.71, 1, 1.4, 1.8, 2, 2.2),
        new(125, 0.28, 0.75, 1.05, 1.5, 1.9, 2.1, 2.4),
        new(160, 0.32, 0.8, 1.1, 1.6, 2, 2.2, 2.5),
        new(200, 0.42, 1, 1.4, 2, 2.5, 2.8, 3.2),
        new(250, 0.56, 1.25, 1.8, 2.5, 3.2, 3.6, 4),
        new(320, 0.75, 1.6, 2.2, 3.2, 4, 4.5, 5),
        new(400, 1, 2, 2.8, 4, 5, 5.6, 6.3),
        new(500, 1.3, 2.5, 3.6, 5, 6.3, 7.1, 8),
        new(630, 1.8, 3.2, 4.5, 6.3, 8, 9, 10),
        new(800, 2.4, 4, 5.6, 8, 10, 11, 12.5),
        new(1000, 3.2, 5, 7.1, 10, 12.5, 14, 16),
        new(1250, 4.2, 6.3, 9, 12.5, 16, 18, 20),
        new(1600, 5.6, 8, 11, 16, 20, 22, 25),
        new(2000, 7.5, 10, 14, 20, 25, 28, 32),
    ];

    /// <summary>Group IIIb is not used at pollution degree 3 above this voltage (a footnote, from memory), V r.m.s.</summary>
    public const double LargestGroupIIIbDegree3V = 630;
}
