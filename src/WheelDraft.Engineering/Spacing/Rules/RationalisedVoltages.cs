namespace WheelDraft.Engineering;

/// <summary>The voltage that stands for a nominal voltage in the creepage table of IEC 60664-1.</summary>
internal static class RationalisedVoltages
{
    /// <summary>Looks a voltage up in both lists.</summary>
    /// <param name="nominalV">Nominal voltage, V r.m.s.</param>
    /// <returns>The larger voltage where both lists have it; null where neither has.</returns>
    public static RationalisedVoltage? Of(double nominalV)
    {
        RationalisedVoltage? single = In(Iec60664TableF3.Rows, Iec60664TableF3.Source, nominalV);
        RationalisedVoltage? three = In(Iec60664TableF4.Rows, Iec60664TableF4.Source, nominalV);
        if (single is null || three is null)
        {
            return single ?? three;
        }

        return three.Value.V > single.Value.V ? three : single;
    }

    private static RationalisedVoltage? In(RationalisedRow[] rows, TableSource source, double nominalV)
    {
        foreach (RationalisedRow row in rows)
        {
            if (row.NominalV.Contains(nominalV))
            {
                return new RationalisedVoltage(row.RationalisedV, source, row.Confidence);
            }
        }

        return null;
    }
}

/// <summary>A rationalised voltage and the list that has it.</summary>
/// <param name="V">V r.m.s.</param>
/// <param name="Source">The list.</param>
/// <param name="Confidence">How well the row is known.</param>
internal readonly record struct RationalisedVoltage(double V, TableSource Source, RuleConfidence Confidence);
