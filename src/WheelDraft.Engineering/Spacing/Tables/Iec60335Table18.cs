namespace WheelDraft.Engineering;

/// <summary>Creepage of functional insulation by working voltage.</summary>
/// <remarks>Above 500 V the values are those of <see cref="Iec60335Table17"/>. Rows above 1000 V are less well known.</remarks>
internal static class Iec60335Table18
{
    /// <summary>Where it was published.</summary>
    public static readonly TableSource Source = TableSource.Iec60335("Table 18");

    /// <summary>Bands up to and including V r.m.s.; mm at PD1; PD2 I, II, III; PD3 I, II, III.</summary>
    public static readonly CreepageRow[] Rows =
    [
        new(50, 0.2, 0.6, 0.8, 1.1, 1.4, 1.6, 1.8),
        new(125, 0.3, 0.7, 1, 1.4, 1.8, 2, 2.2),
        new(250, 0.4, 1, 1.4, 2, 2.5, 2.8, 3.2),
        new(400, 0.8, 1.6, 2.2, 3.2, 4, 4.5, 5),
        new(500, 1, 2, 2.8, 4, 5, 5.6, 6.3),
        new(800, 1.8, 3.2, 4.5, 6.3, 8, 9, 10),
        new(1000, 2.4, 4, 5.6, 8, 10, 11, 12.5),
        new(1250, 3.2, 5, 7.1, 10, 12.5, 14, 16, RuleConfidence.Medium),
        new(1600, 4.2, 6.3, 9, 12.5, 16, 18, 20, RuleConfidence.Medium),
    ];
}
