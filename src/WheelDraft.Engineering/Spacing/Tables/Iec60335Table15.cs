namespace WheelDraft.Engineering;

/// <summary>Rated impulse voltage by rated voltage of the appliance and overvoltage category.</summary>
internal static class Iec60335Table15
{
    /// <summary>Where it was published.</summary>
    public static readonly TableSource Source = TableSource.Iec60335("Table 15");

    /// <summary>The row for a rated voltage up to and including the first number; V peak for categories I to III, no IV.</summary>
    public static readonly ImpulseRow[] Rows =
    [
        new(50, 330, 500, 800, null),
        new(150, 800, 1500, 2500, null),
        new(300, 1500, 2500, 4000, null),
    ];
}
