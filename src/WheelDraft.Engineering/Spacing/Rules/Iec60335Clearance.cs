namespace WheelDraft.Engineering;

/// <summary>Clearances by IEC 60335-1 clause 29.1.</summary>
internal static class Iec60335Clearance
{
    private static readonly string Citation = Iec60335Table16.Source.Citation;

    /// <summary>The clearance for an impulse voltage, the grade counted.</summary>
    public static ClearanceFound Find(ClearanceQuery query, RuleWorkings workings)
    {
        switch (query.Impulse)
        {
            case SupplyImpulse supply:
                double ratedV = RatedImpulse(supply, workings);
                double excessV = TableRows.Voltage((query.WorkingPeakV ?? 0) - (supply.VoltageV * Math.Sqrt(2)));
                return excessV > 0 ? ByRaisedImpulse(ratedV, excessV, query, workings) : ByRow(ratedV, query, workings);
            case GivenImpulse given:
                workings.Note($"Impulse voltage {RuleWords.Kilovolts(given.ImpulseV)}, as given.");
                return ByRow(TableRows.Voltage(given.ImpulseV), query, workings);
            default:
                throw new ArgumentException("An impulse voltage comes from a supply or is given.", nameof(query));
        }
    }

    /// <summary>Rated impulse voltage of an appliance, V peak.</summary>
    public static double RatedImpulse(SupplyImpulse supply, RuleWorkings workings)
    {
        double voltageV = TableRows.Voltage(supply.VoltageV);
        ImpulseRow[] rows = Iec60335Table15.Rows;
        int at = TableRows.FirstReaching(rows, voltageV, r => r.UpToV);
        if (at == rows.Length)
        {
            throw new RuleRefusedException(
                "rule.voltage",
                $"A rated voltage of {RuleWords.Volts(voltageV)} is above {RuleWords.Volts(rows[^1].UpToV)}, where {Iec60335Table15.Source.Citation} as kept here ends. Use IEC 60664-1.");
        }

        double impulseV = rows[at].At(supply.Category) ?? throw new RuleRefusedException(
            "rule.category",
            $"Overvoltage category {RuleWords.Category(supply.Category)} is not in {Iec60335Table15.Source.Citation}, which has I to III: no appliance stands at the origin of the installation. Give category II for an appliance, III for one in the fixed installation, or use IEC 60664-1.");
        workings.Note($"Rated voltage {RuleWords.Volts(voltageV)}, overvoltage category {RuleWords.Category(supply.Category)}: rated impulse voltage {RuleWords.Kilovolts(impulseV)} ({Iec60335Table15.Source.Citation}, row up to {RuleWords.Volts(rows[at].UpToV)}).");
        return impulseV;
    }

    private static ClearanceFound ByRow(double impulseV, ClearanceQuery query, RuleWorkings workings)
    {
        int at = RowFor(impulseV, impulseV);
        ImpulseClearanceRow row = Iec60335Table16.Rows[at];
        workings.Note($"Clearance, {RuleWords.Degree(query.PollutionDegree)}, {RuleWords.Kilovolts(impulseV)}{RowUp(row, impulseV)}: {RuleWords.Mm(row.At(query.PollutionDegree))} ({Citation}).");
        if (query.Insulation == Insulation.Reinforced)
        {
            row = StepAbove(at, impulseV);
            workings.Note($"Reinforced insulation: the next higher step, {RuleWords.Kilovolts(row.ImpulseV)}: {RuleWords.Mm(row.At(query.PollutionDegree))} ({Citation}, clause 29.1.3).");
        }
        else
        {
            workings.Note(GradeStep(query.Insulation));
        }

        return new ClearanceFound(row.At(query.PollutionDegree), row.ImpulseV, Iec60335Table16.Source, row.Confidence);
    }

    /// <summary>Clause 29.1.5: the working peak lies above the rated peak, the impulse voltage is raised by the difference and
    /// the table interpolated. For reinforced insulation each row stands one step up, so that the distance goes over
    /// without a jump into that without the rise.</summary>
    private static ClearanceFound ByRaisedImpulse(double ratedV, double excessV, ClearanceQuery query, RuleWorkings workings)
    {
        double raisedV = TableRows.Voltage(ratedV + excessV);
        ImpulseClearanceRow[] rows = Iec60335Table16.Rows;
        int upper = RowFor(raisedV, raisedV);
        bool reinforced = query.Insulation == Insulation.Reinforced;
        ImpulseClearanceRow lowerRow = reinforced ? rows[upper] : rows[upper - 1];
        ImpulseClearanceRow upperRow = reinforced ? StepAbove(upper, raisedV) : rows[upper];
        double mm = TableRows.Between(
            (rows[upper - 1].ImpulseV, lowerRow.At(query.PollutionDegree)),
            (rows[upper].ImpulseV, upperRow.At(query.PollutionDegree)),
            raisedV);
        workings.Note($"The working peak lies {RuleWords.Volts(Math.Round(excessV, 2))} above the rated peak: impulse voltage {RuleWords.Volts(Math.Round(raisedV, 2))} (clause 29.1.5).");
        workings.Note(reinforced ? "Reinforced insulation: the next higher step for both rows between which it lies (clause 29.1.3)." : GradeStep(query.Insulation));
        workings.Note($"Clearance, {RuleWords.Degree(query.PollutionDegree)}, on a straight line between {RuleWords.Mm(lowerRow.At(query.PollutionDegree))} and {RuleWords.Mm(upperRow.At(query.PollutionDegree))}, {TableRows.Rounding(mm, upperRow.At(query.PollutionDegree))}: {RuleWords.Mm(mm)} ({Citation}).");
        return new ClearanceFound(mm, raisedV, Iec60335Table16.Source, RuleConfidence.High);
    }

    private static string GradeStep(Insulation insulation) => insulation switch
    {
        Insulation.Functional => "Functional insulation: the value as it is; not waived for passing clause 19 with the gap bridged (clause 29.1.4).",
        Insulation.Supplementary => "Supplementary insulation: as basic (clause 29.1.2).",
        _ => "Basic insulation: the value as it is (clause 29.1.1).",
    };

    private static int RowFor(double enteredV, double askedV)
    {
        int at = TableRows.FirstReaching(Iec60335Table16.Rows, enteredV, r => r.ImpulseV);
        return at < Iec60335Table16.Rows.Length ? at : throw Outside(askedV, "");
    }

    private static ImpulseClearanceRow StepAbove(int at, double askedV) =>
        at + 1 < Iec60335Table16.Rows.Length ? Iec60335Table16.Rows[at + 1] : throw Outside(askedV, " with the step up for reinforced insulation");

    private static RuleRefusedException Outside(double impulseV, string why) => new(
        "rule.impulse",
        $"An impulse voltage of {RuleWords.Kilovolts(impulseV)}{why} is above {RuleWords.Kilovolts(Iec60335Table16.Rows[^1].ImpulseV)}, where {Citation} ends. Use IEC 60664-1, or limit the impulse.");

    private static string RowUp(ImpulseClearanceRow row, double enteredV)
    {
        if (row.ImpulseV == enteredV)
        {
            return "";
        }

        return enteredV < Iec60335Table16.Rows[0].ImpulseV
            ? $" (below the first row, {RuleWords.Kilovolts(row.ImpulseV)}, which is used)"
            : $" (no row of its own: the next up, {RuleWords.Kilovolts(row.ImpulseV)})";
    }
}
