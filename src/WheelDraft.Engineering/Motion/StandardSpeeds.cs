namespace WheelDraft.Engineering;

/// <summary>Output speeds in which small geared synchronous motors are usually sold (common practice, no source).</summary>
internal static class StandardSpeeds
{
    // Revolutions a minute at 60 Hz. The same gear train turns slower at 50 Hz, as the frequency does.
    private const double SeriesHz = 60;

    // Speeds within this share of each other are one: the rounding of a division, far below any frequency tolerance.
    private const double SameShare = 1e-9;

    private static readonly double[] SeriesRpm =
    [
        1.0 / 1440, 1.0 / 720, 1.0 / 60, 1.0 / 15, 1.0 / 10, 1.0 / 6, 1.0 / 5, 1.0 / 4, 1.0 / 3, 1.0 / 2, 1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 30, 60,
    ];

    /// <summary>The usual speed for a turn time: the one that turns the wheel without a gear, else the next faster one.</summary>
    /// <param name="turnTimeS">One turn of the wheel, s, above 0.</param>
    /// <param name="frequencyHz">Frequency of the supply, Hz, above 0.</param>
    /// <returns>Null when the wheel turns faster than any.</returns>
    public static MotorSpeed? For(double turnTimeS, double frequencyHz)
    {
        double wheel = 60 / turnTimeS;
        foreach (double rpm in SeriesRpm.Select(s => s * frequencyHz / SeriesHz))
        {
            if (rpm >= wheel * (1 - SameShare))
            {
                double down = rpm / wheel;
                return new(rpm, Math.Abs(down - 1) <= SameShare ? 1 : down);
            }
        }

        return null;
    }
}

/// <summary>A speed at which a motor is sold.</summary>
/// <param name="Rpm">Of its output shaft, revolutions a minute at the supply's frequency.</param>
/// <param name="GearDown">Turns of it for one of the wheel; 1 when none is needed.</param>
internal readonly record struct MotorSpeed(double Rpm, double GearDown);
