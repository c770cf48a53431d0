namespace WheelDraft.Engineering;

/// <summary>Altitude correction of clearances.</summary>
/// <remarks>Each factor is 80 kPa over the row's air pressure, to the digits printed.</remarks>
internal static class Iec60664TableA2
{
    /// <summary>Where it was published. In edition 2 (2007) it has the same number.</summary>
    public static readonly TableSource Source = TableSource.Iec60664(
        "Table A.2", "technical section of a terminal block catalogue; TI SLUAAR5; TI SLUP419");

    /// <summary>Rows in rising order: m above sea level, kPa, factor on the clearance.</summary>
    public static readonly AltitudeRow[] Rows =
    [
        new(2000, 80, 1),
        new(3000, 70, 1.14),
        new(4000, 62, 1.29),
        new(5000, 54, 1.48),
        new(6000, 47, 1.7),
        new(7000, 41, 1.95),
        new(8000, 35.5, 2.25),
        new(9000, 30.5, 2.62),
        new(10000, 26.5, 3.02),
        new(15000, 12, 6.67),
        new(20000, 5.5, 14.5),
    ];
}

/// <summary>Altitude factor of clearances.</summary>
/// <param name="AltitudeM">Altitude up to which the factor serves, m.</param>
/// <param name="PressureKpa">Air pressure there, kPa.</param>
/// <param name="Factor">Factor on the clearance.</param>
internal readonly record struct AltitudeRow(double AltitudeM, double PressureKpa, double Factor);
