namespace WheelDraft.Engineering;

/// <summary>What a temporary over-voltage of the low-voltage supply asks of a clearance.</summary>
/// <remarks>U_n + 1200 V r.m.s. for up to 5 s, U_n the voltage line to neutral (IEC 60664-1:2007, 5.3.3.2.3; the time and the number of
/// the clause from memory). The distance is that of the table for steady, temporary and recurring peaks; for reinforced insulation at
/// 160 % (from memory), the next row up as everywhere. Every grade is asked alike: the texts that were read make no difference between
/// them, and to ask too much is the safe side.</remarks>
internal static class TemporaryOvervoltage
{
    private const double AboveNominalV = 1200;

    /// <summary>The larger of a clearance and what the over-voltage asks, when it counts; else a step says what it would ask.</summary>
    /// <param name="found">The clearance so far.</param>
    /// <param name="query">What is asked.</param>
    /// <param name="workings">The steps.</param>
    /// <exception cref="RuleRefusedException">It counts, but the supply's voltage is not known.</exception>
    public static ClearanceFound Count(ClearanceFound found, ClearanceQuery query, RuleWorkings workings)
    {
        bool counts = query.OverVoltages == OverVoltages.Temporary;
        if (query.Impulse is not SupplyImpulse supply)
        {
            return counts
                ? throw new RuleRefusedException("rule.over-voltages", "A temporary over-voltage follows from the voltage of the supply, and only an impulse voltage is given. Give the supply's voltage and overvoltage category instead.")
                : found;
        }

        double rmsV = supply.VoltageV + AboveNominalV;
        bool reinforced = query.Insulation == Insulation.Reinforced;
        double peakV = rmsV * Math.Sqrt(2);
        double enteredV = reinforced ? peakV * Iec60664Clearance.ReinforcedShare : peakV;
        PeakClearanceRow row = Iec60664Clearance.PeakRow(enteredV);
        string share = reinforced ? ", 160 % of it for reinforced insulation (from memory)" : "";
        string what = $"Temporary over-voltage of the supply, {RuleWords.Volts(supply.VoltageV)} + 1200 V r.m.s. for up to 5 s (IEC 60664-1:2007, 5.3.3.2.3, the clause's number and the time from memory), peak {RuleWords.Volts(Math.Round(peakV, 2))}{share}: row {RuleWords.Kilovolts(row.PeakV)}, {RuleWords.Mm(row.ClearanceMm)} ({Iec60664TableF8.Source.Citation}; on a straight line between its rows {RuleWords.Mm(Interpolated(enteredV))})";
        if (!counts)
        {
            string less = row.ClearanceMm > found.Mm ? $"; that is more than the {RuleWords.Mm(found.Mm)} given" : "";
            workings.Note($"{what}: not counted (over_voltages \"none\"){less}.");
            return found;
        }

        bool decides = row.ClearanceMm > found.Mm;
        workings.Note($"{what}: {(decides ? "it decides" : $"less than or equal to {RuleWords.Mm(found.Mm)}, which stays")}.");
        return decides ? new ClearanceFound(row.ClearanceMm, row.PeakV, Iec60664TableF8.Source, reinforced ? RuleConfidence.FromMemory : RuleConfidence.Medium) : found;
    }

    // Given beside the row, for texts that interpolate; never used.
    private static double Interpolated(double peakV)
    {
        PeakClearanceRow[] rows = Iec60664TableF8.Rows;
        int at = Math.Max(1, TableRows.FirstReaching(rows, peakV, r => r.PeakV));
        return TableRows.Between((rows[at - 1].PeakV, rows[at - 1].ClearanceMm), (rows[at].PeakV, rows[at].ClearanceMm), peakV);
    }
}
