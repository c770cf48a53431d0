namespace WheelDraft.Engineering;

/// <summary>Clearances by IEC 60664-1: the larger of what the impulse voltage and the steady-state peak ask.</summary>
/// <remarks>Between two rows the next row up is used. The standard would let one interpolate; the row is the safe side.</remarks>
internal static class Iec60664Clearance
{
    /// <summary>Where no preferred value is next, reinforced insulation is dimensioned for this share of the voltage.</summary>
    internal const double ReinforcedShare = 1.6;

    /// <summary>Rated impulse voltage from its source, V peak.</summary>
    public static double Impulse(ImpulseSource source, RuleWorkings workings)
    {
        switch (source)
        {
            case SupplyImpulse supply:
                return RatedImpulse(supply, workings);
            case GivenImpulse given:
                workings.Note($"Impulse voltage {RuleWords.Kilovolts(given.ImpulseV)}, as given.");
                return TableRows.Voltage(given.ImpulseV);
            default:
                throw new ArgumentException("An impulse voltage comes from a supply or is given.", nameof(source));
        }
    }

    /// <summary>The clearance for an impulse voltage, the grade counted.</summary>
    public static ClearanceFound ByImpulse(double impulseV, ClearanceQuery query, RuleWorkings workings)
    {
        ImpulseClearanceRow row = RowFor(impulseV);
        workings.Note(BaseStep(row, impulseV, query.PollutionDegree));
        switch (query.Insulation)
        {
            case Insulation.Functional:
                workings.Note($"Functional insulation: the impulse voltage is taken to stand across the gap in full; the value as it is (footnote 1 of {Iec60664TableF2.Source.Citation}).");
                return Found(row, query.PollutionDegree, RuleConfidence.High);
            case Insulation.Basic:
                workings.Note($"Basic insulation: the value as it is (footnote 1 of {Iec60664TableF2.Source.Citation}: the rated impulse voltage).");
                return Found(row, query.PollutionDegree, RuleConfidence.High);
            case Insulation.Supplementary:
                workings.Note("Supplementary insulation: as basic (from memory).");
                return Found(row, query.PollutionDegree, RuleConfidence.FromMemory);
            default:
                return Reinforced(impulseV, query.PollutionDegree, workings);
        }
    }

    /// <summary>The clearance for a steady-state peak, the grade counted.</summary>
    public static ClearanceFound ByPeak(double peakV, Insulation insulation, RuleWorkings workings)
    {
        bool reinforced = insulation == Insulation.Reinforced;
        double enteredV = TableRows.Voltage(reinforced ? peakV * ReinforcedShare : peakV);
        PeakClearanceRow row = PeakRow(enteredV);
        string share = reinforced ? $", 160 % of it for reinforced insulation (from memory) {RuleWords.Volts(Math.Round(enteredV, 2))}" : "";
        workings.Note($"Steady-state peak {RuleWords.Volts(Math.Round(peakV, 2))}{share}: row {RuleWords.Kilovolts(row.PeakV)}, {RuleWords.Mm(row.ClearanceMm)} ({Iec60664TableF8.Source.Citation}).");
        return new ClearanceFound(row.ClearanceMm, row.PeakV, Iec60664TableF8.Source, reinforced ? RuleConfidence.FromMemory : RuleConfidence.High);
    }

    /// <summary>The row of the table for peaks that reaches a voltage.</summary>
    /// <exception cref="RuleRefusedException">The table ends below it.</exception>
    internal static PeakClearanceRow PeakRow(double peakV)
    {
        double enteredV = TableRows.Voltage(peakV);
        PeakClearanceRow[] rows = Iec60664TableF8.Rows;
        int at = TableRows.FirstReaching(rows, enteredV, r => r.PeakV);
        return at < rows.Length
            ? rows[at]
            : throw new RuleRefusedException(
                "rule.voltage",
                $"A peak of {RuleWords.Kilovolts(enteredV)} is above {RuleWords.Kilovolts(rows[^1].PeakV)}, where {Iec60664TableF8.Source.Citation} ends. Lower the voltage between the two.");
    }

    private static double RatedImpulse(SupplyImpulse supply, RuleWorkings workings)
    {
        double voltageV = TableRows.Voltage(supply.VoltageV);
        ImpulseRow[] rows = Iec60664TableF1.Rows;
        int at = TableRows.FirstReaching(rows, voltageV, r => r.UpToV);
        if (at == rows.Length)
        {
            throw new RuleRefusedException(
                "rule.voltage",
                $"A supply of {RuleWords.Volts(voltageV)} line to neutral is above {RuleWords.Volts(rows[^1].UpToV)}, where {Iec60664TableF1.Source.Citation} ends. It is no low-voltage supply; its own rules apply.");
        }

        double impulseV = rows[at].At(supply.Category)!.Value;
        workings.Trust(rows[at].Confidence);
        string direct = voltageV > Iec60664TableF1.LargestAlternatingV ? "; the row is printed for direct voltage only" : "";
        workings.Note($"Supply {RuleWords.Volts(voltageV)} line to neutral, overvoltage category {RuleWords.Category(supply.Category)}: rated impulse voltage {RuleWords.Kilovolts(impulseV)} ({Iec60664TableF1.Source.Citation}, row up to {RuleWords.Volts(rows[at].UpToV)}{direct}).");
        return impulseV;
    }

    private static ClearanceFound Reinforced(double impulseV, int degree, RuleWorkings workings)
    {
        double? nextV = NextPreferred(impulseV);
        double enteredV = nextV ?? TableRows.Voltage(impulseV * ReinforcedShare);
        ImpulseClearanceRow row = RowFor(enteredV);
        string how = nextV is not null
            ? $"the next value of the preferred series ({Iec60664Clauses.PreferredSeries}), {RuleWords.Kilovolts(enteredV)}"
            : $"160 % of {RuleWords.Kilovolts(impulseV)}, {WhyShare(impulseV)}, {RuleWords.Kilovolts(enteredV)}{RowUp(row, enteredV)}";
        workings.Note($"Reinforced insulation ({Iec60664Clauses.ReinforcedClearance}): {how}: {RuleWords.Mm(row.At(degree))} ({Iec60664TableF2.Source.Citation}).");
        return Found(row, degree, nextV is not null ? RuleConfidence.High : RuleConfidence.Medium);
    }

    private static string WhyShare(double impulseV) =>
        IsPreferred(impulseV) ? "the last of the preferred values" : "which is no preferred value";

    private static bool IsPreferred(double impulseV) =>
        Array.Exists(Iec60664TableF2.Rows, r => r.Preferred && r.ImpulseV == impulseV);

    private static double? NextPreferred(double impulseV)
    {
        if (!IsPreferred(impulseV))
        {
            return null;
        }

        ImpulseClearanceRow next = Array.Find(Iec60664TableF2.Rows, r => r.Preferred && r.ImpulseV > impulseV);
        return next.ImpulseV > 0 ? next.ImpulseV : null;
    }

    private static ImpulseClearanceRow RowFor(double impulseV)
    {
        ImpulseClearanceRow[] rows = Iec60664TableF2.Rows;
        int at = TableRows.FirstReaching(rows, impulseV, r => r.ImpulseV);
        return at < rows.Length
            ? rows[at]
            : throw new RuleRefusedException(
                "rule.impulse",
                $"An impulse voltage of {RuleWords.Kilovolts(impulseV)} is above {RuleWords.Kilovolts(rows[^1].ImpulseV)}, where {Iec60664TableF2.Source.Citation} ends. Limit the impulse, or dimension by test.");
    }

    private static ClearanceFound Found(ImpulseClearanceRow row, int degree, RuleConfidence confidence) =>
        new(row.At(degree), row.ImpulseV, Iec60664TableF2.Source, (RuleConfidence)Math.Max((int)row.Confidence, (int)confidence));

    private static string BaseStep(ImpulseClearanceRow row, double impulseV, int degree) =>
        $"Clearance, inhomogeneous field, {RuleWords.Degree(degree)}, {RuleWords.Kilovolts(impulseV)}{RowUp(row, impulseV)}: {RuleWords.Mm(row.At(degree))} ({Iec60664TableF2.Source.Citation}).";

    private static string RowUp(ImpulseClearanceRow row, double enteredV)
    {
        if (row.ImpulseV == enteredV)
        {
            return "";
        }

        return enteredV < Iec60664TableF2.Rows[0].ImpulseV
            ? $" (below the first row, {RuleWords.Kilovolts(row.ImpulseV)}, which is used)"
            : $" (no row of its own: the next up, {RuleWords.Kilovolts(row.ImpulseV)})";
    }
}

/// <summary>A clearance as one table gives it.</summary>
/// <param name="Mm">Clearance, mm.</param>
/// <param name="RowV">Voltage of the row, V peak.</param>
/// <param name="Source">The table.</param>
/// <param name="Confidence">How well it is known.</param>
internal readonly record struct ClearanceFound(double Mm, double RowV, TableSource Source, RuleConfidence Confidence);
