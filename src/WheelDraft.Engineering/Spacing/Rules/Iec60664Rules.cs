namespace WheelDraft.Engineering;

/// <summary>The rules of IEC 60664-1, insulation coordination for equipment in low-voltage systems.</summary>
internal sealed class Iec60664Rules : SpacingRules
{
    private Iec60664Rules()
    {
    }

    /// <summary>The only one.</summary>
    public static Iec60664Rules Instance { get; } = new();

    /// <inheritdoc/>
    public override SpacingStandard Standard => SpacingStandard.Iec60664;

    /// <inheritdoc/>
    public override Requirement RequiredClearance(ClearanceQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        CheckDegree(query.PollutionDegree);
        CheckFrequency(query.FrequencyHz);
        RuleWorkings workings = new();
        double impulseV = Iec60664Clearance.Impulse(query.Impulse, workings);
        ClearanceFound byImpulse = Iec60664Clearance.ByImpulse(impulseV, query, workings);
        ClearanceFound deciding = Larger(byImpulse, ByPeak(query, workings), workings);
        deciding = TemporaryOvervoltage.Count(deciding, query, workings);
        workings.Trust(deciding.Confidence);
        double mm = AtAltitude(deciding.Mm, query.AltitudeM, workings);
        string entry = $"{RuleWords.Kilovolts(deciding.RowV)}, {RuleWords.Degree(query.PollutionDegree)}";
        return new Requirement(mm, deciding.Source.Citation, entry, workings.Steps) { ReadIn = deciding.Source.ReadIn, ImpulseV = byImpulse.RowV, Confidence = workings.Confidence };
    }

    /// <inheritdoc/>
    public override Requirement RequiredCreepage(CreepageQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        CheckDegree(query.PollutionDegree);
        CheckFrequency(query.FrequencyHz);
        CheckVoltage(query.VoltageV, "The voltage across the path");
        RuleWorkings workings = new();
        double voltageV = TableRows.Voltage(query.VoltageV);
        return query.Insulation == Insulation.Functional
            ? Functional(voltageV, query, workings)
            : Rationalised(voltageV, query, workings);
    }

    /// <inheritdoc/>
    internal override Requirement WithWear(Requirement clearance, SupplyImpulse supply)
    {
        RuleWorkings workings = RuleWorkings.After(clearance);
        workings.Note("IEC 60664-1 has no wear addition.");
        return clearance with { Steps = workings.Steps };
    }

    private static ClearanceFound? ByPeak(ClearanceQuery query, RuleWorkings workings)
    {
        double? peakV = query.WorkingPeakV ?? (query.Impulse is SupplyImpulse supply ? supply.VoltageV * Math.Sqrt(2) : null);
        if (peakV is null)
        {
            workings.Note("Steady-state peak: not known, not considered.");
            return null;
        }

        CheckVoltage(peakV.Value, "The peak voltage");
        return Iec60664Clearance.ByPeak(peakV.Value, query.Insulation, workings);
    }

    private static ClearanceFound Larger(ClearanceFound byImpulse, ClearanceFound? byPeak, RuleWorkings workings)
    {
        if (byPeak is null)
        {
            return byImpulse;
        }

        bool peakDecides = byPeak.Value.Mm > byImpulse.Mm;
        workings.Note(peakDecides
            ? $"The steady-state peak decides: {RuleWords.Mm(byPeak.Value.Mm)}."
            : $"The impulse voltage decides: {RuleWords.Mm(byImpulse.Mm)}.");
        return peakDecides ? byPeak.Value : byImpulse;
    }

    private static Requirement Functional(double voltageV, CreepageQuery query, RuleWorkings workings)
    {
        CheckGroup(voltageV, query);
        CreepageRow[] rows = Iec60664TableF5.Rows;
        int at = RowFor(voltageV);
        double upperMm = rows[at].At(query.PollutionDegree, query.Group);
        string column = $"{RuleWords.Degree(query.PollutionDegree)}, {RuleWords.Group(query.Group)}";
        string head = $"Functional insulation ({Iec60664Clauses.FunctionalCreepage}), working voltage {RuleWords.Volts(voltageV)}, {column}: ";
        if (at == 0 || rows[at].VoltageV == voltageV)
        {
            workings.Note(head + $"row {RuleWords.Volts(rows[at].VoltageV)}{BelowFirst(voltageV)}, {RuleWords.Mm(upperMm)} ({Iec60664TableF5.Source.Citation}).");
            return Creepage(upperMm, $"{RuleWords.Volts(rows[at].VoltageV)}, {column}", workings);
        }

        double lowerMm = rows[at - 1].At(query.PollutionDegree, query.Group);
        double mm = TableRows.Between((rows[at - 1].VoltageV, lowerMm), (rows[at].VoltageV, upperMm), voltageV);
        workings.Note(head + $"on a straight line between {RuleWords.Volts(rows[at - 1].VoltageV)} ({RuleWords.Mm(lowerMm)}) and {RuleWords.Volts(rows[at].VoltageV)} ({RuleWords.Mm(upperMm)}), {TableRows.Rounding(mm, upperMm)}, {RuleWords.Mm(mm)} ({Iec60664TableF5.Source.Citation}).");
        return Creepage(mm, $"{RuleWords.Volts(voltageV)}, {column}", workings);
    }

    private static Requirement Rationalised(double voltageV, CreepageQuery query, RuleWorkings workings)
    {
        double enteredV = Rationalise(voltageV, workings);
        CheckGroup(enteredV, query);
        CreepageRow row = Iec60664TableF5.Rows[RowFor(enteredV)];
        double mm = row.At(query.PollutionDegree, query.Group);
        string column = $"{RuleWords.Degree(query.PollutionDegree)}, {RuleWords.Group(query.Group)}";
        workings.Note($"Creepage, row {RuleWords.Volts(row.VoltageV)}{BelowFirst(enteredV)}, {column}: {RuleWords.Mm(mm)} ({Iec60664TableF5.Source.Citation}).");
        mm = Graded(mm, query.Insulation, workings);
        return Creepage(mm, $"{RuleWords.Volts(row.VoltageV)}, {column}", workings);
    }

    private static double Rationalise(double voltageV, RuleWorkings workings)
    {
        if (RationalisedVoltages.Of(voltageV) is { } rationalised)
        {
            workings.Trust(rationalised.Confidence);
            string disputed = rationalised.Confidence == RuleConfidence.Low ? "; texts differ on this voltage, the larger value is used" : "";
            workings.Note($"Voltage {RuleWords.Volts(voltageV)}, rationalised {RuleWords.Volts(rationalised.V)} ({rationalised.Source.Citation}, {Iec60664Clauses.Rationalised}{disputed}).");
            return rationalised.V;
        }

        workings.Note($"Voltage {RuleWords.Volts(voltageV)} is in no list of rationalised voltages ({Iec60664TableF3.Source.Citation}, {Iec60664TableF4.Source.Citation}): the next row of the creepage table that reaches it is used.");
        return voltageV;
    }

    private static double Graded(double mm, Insulation insulation, RuleWorkings workings)
    {
        switch (insulation)
        {
            case Insulation.Reinforced:
                double doubledMm = TableRows.Noiseless(2 * mm);
                workings.Note($"Reinforced insulation: twice, {RuleWords.Mm(doubledMm)} ({Iec60664Clauses.ReinforcedCreepage}).");
                return doubledMm;
            case Insulation.Supplementary:
                workings.Trust(RuleConfidence.FromMemory);
                workings.Note("Supplementary insulation: as basic (from memory).");
                return mm;
            default:
                workings.Note("Basic insulation: the value as it is.");
                return mm;
        }
    }

    private static void CheckGroup(double enteredV, CreepageQuery query)
    {
        if (query.Group == MaterialGroup.IIIb && query.PollutionDegree == 3 && enteredV > Iec60664TableF5.LargestGroupIIIbDegree3V)
        {
            throw new RuleRefusedException(
                "rule.group",
                $"Material group IIIb is not to be used at pollution degree 3 above 630 V, and {RuleWords.Volts(enteredV)} is asked (a footnote of {Iec60664TableF5.Source.Citation}, from memory). Use a material of group IIIa or better (comparative tracking index 175 or more).");
        }
    }

    private static int RowFor(double voltageV)
    {
        CreepageRow[] rows = Iec60664TableF5.Rows;
        int at = TableRows.FirstReaching(rows, voltageV, r => r.VoltageV);
        return at < rows.Length
            ? at
            : throw new RuleRefusedException(
                "rule.voltage",
                $"A voltage of {RuleWords.Volts(voltageV)} is above {RuleWords.Volts(rows[^1].VoltageV)}, where {Iec60664TableF5.Source.Citation} as kept here ends. Lower the voltage across the path.");
    }

    private static string BelowFirst(double voltageV) =>
        voltageV < Iec60664TableF5.Rows[0].VoltageV ? $" (the first; {RuleWords.Volts(voltageV)} is below it)" : "";

    private static Requirement Creepage(double mm, string entry, RuleWorkings workings) =>
        new(mm, Iec60664TableF5.Source.Citation, entry, workings.Steps) { ReadIn = Iec60664TableF5.Source.ReadIn, Confidence = workings.Confidence };
}
