namespace WheelDraft.Engineering;

/// <summary>What a test house would apply to verify a clearance.</summary>
/// <param name="RatedV">The impulse voltage that the clearance was dimensioned for, V peak.</param>
/// <param name="AtSeaLevelV">Test voltage at sea level, V peak, 1.2/50 µs.</param>
/// <param name="At200MetresV">The same at 200 m above the sea.</param>
/// <param name="At500MetresV">The same at 500 m above the sea.</param>
/// <param name="Source">The table.</param>
internal sealed record ImpulseTest(double RatedV, double AtSeaLevelV, double At200MetresV, double At500MetresV, string Source)
{
    /// <summary>The tests of a design, by rising voltage, each once.</summary>
    /// <remarks>Where an impulse voltage has no row of its own the next row up stands for it, the harder test.</remarks>
    public static IReadOnlyList<ImpulseTest> Of(IEnumerable<Requirement> clearances)
    {
        ArgumentNullException.ThrowIfNull(clearances);
        ImpulseTestRow[] rows = Iec60664TableF6.Rows;
        return
        [
            .. clearances
                .Select(c => c.ImpulseV)
                .OfType<double>()
                .Select(v => TableRows.FirstReaching(rows, v, r => r.RatedV))
                .Where(at => at < rows.Length)
                .Distinct()
                .Order()
                .Select(at => new ImpulseTest(rows[at].RatedV, rows[at].AtSeaLevelV, rows[at].At200MetresV, rows[at].At500MetresV, Iec60664TableF6.Source.Citation)),
        ];
    }
}
