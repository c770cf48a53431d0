namespace WheelDraft.Engineering;

/// <summary>The rules of IEC 60335-1 clause 29, household and similar appliances.</summary>
/// <remarks>Creepage rows are bands: nothing is interpolated. Between two rows of the clearance table the next row up is used,
/// except where clause 29.1.5 raises the impulse voltage by a working voltage above the rated one: that rise may be a
/// fraction of a volt, and the clause lets one interpolate.</remarks>
internal sealed class Iec60335Rules : SpacingRules
{
    private Iec60335Rules()
    {
    }

    /// <summary>The only one.</summary>
    public static Iec60335Rules Instance { get; } = new();

    /// <inheritdoc/>
    public override SpacingStandard Standard => SpacingStandard.Iec60335;

    /// <inheritdoc/>
    public override Requirement RequiredClearance(ClearanceQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        CheckDegree(query.PollutionDegree);
        CheckFrequency(query.FrequencyHz);
        RuleWorkings workings = new();
        ClearanceFound found = TemporaryOvervoltage.Count(Iec60335Clearance.Find(query, workings), query, workings);
        workings.Trust(found.Confidence);
        double mm = AtAltitude(found.Mm, query.AltitudeM, workings);
        if (mm > found.Mm)
        {
            // The factor is IEC 60664-1's; that this standard sends its reader there was not read.
            workings.Trust(RuleConfidence.Medium);
        }

        string entry = $"{RuleWords.Kilovolts(found.RowV)}, {RuleWords.Degree(query.PollutionDegree)}";
        return new Requirement(mm, found.Source.Citation, entry, workings.Steps) { ReadIn = found.Source.ReadIn, ImpulseV = found.RowV, Confidence = workings.Confidence };
    }

    /// <inheritdoc/>
    public override Requirement RequiredCreepage(CreepageQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        CheckDegree(query.PollutionDegree);
        CheckFrequency(query.FrequencyHz);
        CheckVoltage(query.VoltageV, "The working voltage");
        RuleWorkings workings = new();
        double voltageV = TableRows.Voltage(query.VoltageV);
        CheckGroup(voltageV, query.Group);
        bool functional = query.Insulation == Insulation.Functional;
        TableSource source = functional ? Iec60335Table18.Source : Iec60335Table17.Source;
        CreepageRow band = BandFor(voltageV, functional ? Iec60335Table18.Rows : Iec60335Table17.Rows, source);
        workings.Trust(band.Confidence);
        double mm = band.At(query.PollutionDegree, query.Group);
        string column = $"{RuleWords.Degree(query.PollutionDegree)}, {RuleWords.Group(query.Group)}";
        workings.Note($"Creepage, working voltage {RuleWords.Volts(voltageV)}, band up to {RuleWords.Volts(band.VoltageV)}, {column}: {RuleWords.Mm(mm)} ({source.Citation}).");
        mm = Graded(mm, query.Insulation, workings);
        return new Requirement(mm, source.Citation, $"up to {RuleWords.Volts(band.VoltageV)}, {column}", workings.Steps) { ReadIn = source.ReadIn, Confidence = workings.Confidence };
    }

    /// <inheritdoc/>
    internal override Requirement WithWear(Requirement clearance, SupplyImpulse supply)
    {
        RuleWorkings workings = RuleWorkings.After(clearance);
        double ratedV = Iec60335Clearance.RatedImpulse(supply, new RuleWorkings());
        if (ratedV < Iec60335Table16.WearAdditionFromV)
        {
            workings.Note($"No wear addition: the rated impulse voltage {RuleWords.Kilovolts(ratedV)} is below {RuleWords.Kilovolts(Iec60335Table16.WearAdditionFromV)} (clause 29.1).");
            return clearance with { Steps = workings.Steps };
        }

        double mm = TableRows.Noiseless(clearance.RequiredMm + Iec60335Table16.WearAdditionMm);
        workings.Note($"Wear, movement and assembly: {RuleWords.Mm(Iec60335Table16.WearAdditionMm)} more at a rated impulse voltage of {RuleWords.Kilovolts(ratedV)} (clause 29.1): {RuleWords.Mm(mm)}.");
        return clearance with { RequiredMm = mm, Steps = workings.Steps };
    }

    private static double Graded(double mm, Insulation insulation, RuleWorkings workings)
    {
        switch (insulation)
        {
            case Insulation.Reinforced:
                double doubledMm = TableRows.Noiseless(2 * mm);
                workings.Note($"Reinforced insulation: twice, {RuleWords.Mm(doubledMm)} (clause 29.2.3).");
                return doubledMm;
            case Insulation.Supplementary:
                workings.Note("Supplementary insulation: as basic (clause 29.2.2).");
                return mm;
            case Insulation.Functional:
                workings.Note("Functional insulation: the value as it is; no reduction for passing clause 19 with the path bridged (clause 29.2.4).");
                return mm;
            default:
                workings.Note("Basic insulation: the value as it is (clause 29.2.1).");
                return mm;
        }
    }

    private static CreepageRow BandFor(double voltageV, CreepageRow[] rows, TableSource source)
    {
        int at = TableRows.FirstReaching(rows, voltageV, r => r.VoltageV);
        return at < rows.Length
            ? rows[at]
            : throw new RuleRefusedException(
                "rule.voltage",
                $"A working voltage of {RuleWords.Volts(voltageV)} is above {RuleWords.Volts(rows[^1].VoltageV)}, where {source.Citation} as kept here ends. Lower the voltage across the path.");
    }

    private static void CheckGroup(double voltageV, MaterialGroup group)
    {
        if (group == MaterialGroup.IIIb && voltageV > Iec60335Table17.LargestGroupIIIbV)
        {
            throw new RuleRefusedException(
                "rule.group",
                $"IEC 60335-1 allows material group IIIb up to a working voltage of 50 V only, and {RuleWords.Volts(voltageV)} is asked ({Iec60335Table17.Source.Citation}, footnote 1). Use a material of group IIIa or better (comparative tracking index 175 or more).");
        }
    }
}
