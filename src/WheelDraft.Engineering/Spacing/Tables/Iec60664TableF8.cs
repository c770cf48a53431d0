namespace WheelDraft.Engineering;

/// <summary>Clearance by steady-state peak, temporary overvoltage or recurring peak, inhomogeneous field (case A).</summary>
internal static class Iec60664TableF8
{
    /// <summary>Where it was published. In edition 2 (2007) it is Table F.7a.</summary>
    public static readonly TableSource Source = TableSource.Iec60664(
        "Table F.8", "notes on edition 3; four rows also in TI SLUP419");

    /// <summary>Rows in rising order: V peak, mm.</summary>
    public static readonly PeakClearanceRow[] Rows =
    [
        new(40, 0.001),
        new(60, 0.002),
        new(100, 0.003),
        new(120, 0.004),
        new(150, 0.005),
        new(200, 0.006),
        new(250, 0.008),
        new(330, 0.01),
        new(400, 0.02),
        new(500, 0.04),
        new(600, 0.06),
        new(800, 0.13),
        new(1000, 0.26),
        new(1200, 0.42),
        new(1500, 0.76),
        new(2000, 1.27),
        new(2500, 1.8),
        new(3000, 2.4),
        new(4000, 3.8),
        new(5000, 5.7),
        new(6000, 7.9),
        new(8000, 11),
        new(10000, 15.2),
        new(12000, 19),
        new(15000, 25),
        new(20000, 34),
        new(25000, 44),
        new(30000, 55),
        new(40000, 77),
        new(50000, 100),
    ];
}

/// <summary>Clearance for one peak voltage.</summary>
/// <param name="PeakV">Peak voltage, V.</param>
/// <param name="ClearanceMm">Clearance, mm.</param>
internal readonly record struct PeakClearanceRow(double PeakV, double ClearanceMm);
