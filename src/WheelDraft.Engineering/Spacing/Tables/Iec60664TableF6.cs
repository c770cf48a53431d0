namespace WheelDraft.Engineering;

/// <summary>Impulse test voltages by which a clearance is verified, by the altitude of the place where the test is made.</summary>
/// <remarks>A test at low altitude, in denser air, must be harder than the rated impulse voltage. For people who test a made
/// timer; nothing here is worked out from it.</remarks>
internal static class Iec60664TableF6
{
    /// <summary>Where it was published. In edition 2 (2007) it is Table F.5.</summary>
    public static readonly TableSource Source = TableSource.Iec60664("Table F.6", "notes on edition 3") with { Confidence = RuleConfidence.Medium };

    /// <summary>Rows in rising order: rated impulse V peak; test voltage, V peak, at sea level, at 200 m and at 500 m.</summary>
    public static readonly ImpulseTestRow[] Rows =
    [
        new(330, 357, 355, 350),
        new(500, 541, 537, 531),
        new(800, 934, 920, 899),
        new(1500, 1751, 1725, 1685),
        new(2500, 2920, 2874, 2808),
        new(4000, 4923, 4824, 4675),
        new(6000, 7385, 7236, 7013),
        new(8000, 9847, 9648, 9350),
        new(12000, 14770, 14471, 14025),
    ];
}

/// <summary>Test voltages for one rated impulse voltage, V peak.</summary>
/// <param name="RatedV">Rated impulse voltage.</param>
/// <param name="AtSeaLevelV">Test voltage at sea level.</param>
/// <param name="At200MetresV">Test voltage at 200 m above the sea.</param>
/// <param name="At500MetresV">Test voltage at 500 m above the sea.</param>
internal readonly record struct ImpulseTestRow(double RatedV, double AtSeaLevelV, double At200MetresV, double At500MetresV);
