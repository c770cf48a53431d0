namespace WheelDraft.Engineering;

// The folder "Tables": the published tables of distances and voltages as data, one file a table, and nothing else.
// A row is copied as printed; what a rule does with it (grade, interpolation, refusal) lives in "Rules".

/// <summary>Where a table of the rules was published, and how well it is known.</summary>
/// <param name="Standard">The standard, e.g. IEC 60664-1.</param>
/// <param name="Edition">What follows the standard's name in a citation: a year, or an edition.</param>
/// <param name="Table">The table's own name; editions number the same table differently, so the two go together.</param>
/// <param name="ReadIn">The public texts that the values were read in.</param>
internal sealed record TableSource(string Standard, string Edition, string Table, string ReadIn)
{
    /// <summary>Confidence of a row that says nothing else.</summary>
    public RuleConfidence Confidence { get; init; } = RuleConfidence.High;

    /// <summary>Standard, edition and table: <c>IEC 60664-1:2020 Table F.2</c>.</summary>
    public string Citation => Standard + Edition + " " + Table;

    /// <summary>A table of IEC 60664-1, edition 3 of 2020.</summary>
    /// <remarks>Most values were read in catalogues and application notes that reprint edition 2 (2007), under its table
    /// numbers; notes on edition 3 carry the same values under the numbers given here.</remarks>
    public static TableSource Iec60664(string table, string readIn) => new("IEC 60664-1", ":2020", table, readIn);

    /// <summary>A table of IEC 60335-1 in edition 4, which IS 302-1:2008 took over; later editions may differ.</summary>
    public static TableSource Iec60335(string table) =>
        new("IEC 60335-1", " ed. 4", table, "quotations of IS 302-1:2008, which took edition 4 over; later editions may differ");
}
