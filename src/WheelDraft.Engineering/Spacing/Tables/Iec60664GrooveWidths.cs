namespace WheelDraft.Engineering;

/// <summary>The least groove width X that a creepage path follows.</summary>
internal static class Iec60664GrooveWidths
{
    /// <summary>Where it was published. Edition 2 (2007) has it in clause 6.2.</summary>
    public static readonly TableSource Source = TableSource.Iec60664(
        "clause 6.8", "IS 15382-1:2003 clause 4.2 as quoted in notes; TI SLUP419 table 7; connector catalogues");

    /// <summary>X for pollution degrees 1, 2 and 3, mm.</summary>
    public static readonly double[] WidthMm = [0.25, 1.0, 1.5];

    /// <summary>Below this clearance a third of it may stand for X, mm.</summary>
    public const double ThirdBelowClearanceMm = 3;
}
