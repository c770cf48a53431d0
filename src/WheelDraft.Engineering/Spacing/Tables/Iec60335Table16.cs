namespace WheelDraft.Engineering;

/// <summary>Clearance by rated impulse voltage.</summary>
internal static class Iec60335Table16
{
    /// <summary>Where it was published.</summary>
    public static readonly TableSource Source = TableSource.Iec60335("Table 16");

    /// <summary>Rows in rising order: V peak; mm at pollution degrees 1, 2, 3. Every row is a step of the series.</summary>
    public static readonly ImpulseClearanceRow[] Rows =
    [
        new(330, 0.5, 0.5, 0.5, Preferred: true),
        new(500, 0.5, 0.5, 0.5, Preferred: true),
        new(800, 0.5, 0.5, 0.5, Preferred: true),
        new(1500, 0.5, 0.5, 0.8, Preferred: true),
        new(2500, 1.5, 1.5, 1.5, Preferred: true),
        new(4000, 3, 3, 3, Preferred: true),
        new(6000, 5.5, 5.5, 5.5, Preferred: true),
        new(8000, 8, 8, 8, Preferred: true),
        new(10000, 11, 11, 11, Preferred: true),
    ];

    /// <summary>What clause 29.1 adds where wear, distortion, movement or assembly can change a distance, mm.</summary>
    public const double WearAdditionMm = 0.5;

    /// <summary>The addition is asked from this rated impulse voltage on, V peak.</summary>
    public const double WearAdditionFromV = 1500;
}
