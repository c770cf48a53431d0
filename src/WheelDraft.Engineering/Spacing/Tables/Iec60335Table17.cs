namespace WheelDraft.Engineering;

/// <summary>Creepage of basic and supplementary insulation by working voltage.</summary>
/// <remarks>Rows above 1000 V are less well known. Above 630 V the values lie below those of IEC 60664-1.</remarks>
internal static class Iec60335Table17
{
    /// <summary>Where it was published.</summary>
    public static readonly TableSource Source = TableSource.Iec60335("Table 17");

    /// <summary>Bands up to and including V r.m.s.; mm at PD1; PD2 I, II, III; PD3 I, II, III.</summary>
    public static readonly CreepageRow[] Rows =
    [
        new(50, 0.2, 0.6, 0.9, 1.2, 1.5, 1.7, 1.9),
        new(125, 0.3, 0.8, 1.1, 1.5, 1.9, 2.1, 2.4),
        new(250, 0.6, 1.3, 1.8, 2.5, 3.2, 3.6, 4),
        new(400, 1, 2, 2.8, 4, 5, 5.6, 6.3),
        new(500, 1.3, 2.5, 3.6, 5, 6.3, 7.1, 8),
        new(800, 1.8, 3.2, 4.5, 6.3, 8, 9, 10),
        new(1000, 2.4, 4, 5.6, 8, 10, 11, 12.5),
        new(1250, 3.2, 5, 7.1, 10, 12.5, 14, 16, RuleConfidence.Medium),
        new(1600, 4.2, 6.3, 9, 12.5, 16, 18, 20, RuleConfidence.Medium),
    ];

    /// <summary>Group IIIb is allowed up to this working voltage only (footnote 1, which column it hangs on not seen), V r.m.s.</summary>
    public const double LargestGroupIIIbV = 50;
}
