namespace WheelDraft.Engineering;

/// <summary>The whole order of steps for one pair of conductors.</summary>
/// <remarks>Base value, grade and altitude by the rule set; then a creepage distance is raised to the clearance; then the wear
/// addition; then the margin. A distance of the person's own takes the place of everything but the margin.</remarks>
internal sealed class PairRules
{
    private readonly PairQuery _query;
    private readonly SpacingRules _rules;
    private readonly SupplyImpulse _supply;
    private readonly double _workingV;
    private readonly string _voltageStep;

    /// <summary>For a pair.</summary>
    public PairRules(PairQuery query)
    {
        _query = query;
        _rules = SpacingRules.For(query.Spacing.Standard);
        _supply = new SupplyImpulse(query.Supply.VoltageV, query.Supply.Category);
        if (!double.IsFinite(query.WorkingVoltageV) || query.WorkingVoltageV < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(query), query.WorkingVoltageV, "A working voltage is a number not below 0.");
        }

        // Both sides of the comparison are at the microvolt: a solved 230.0000000001 V is the supply's 230 V.
        double solvedV = TableRows.Voltage(query.WorkingVoltageV);
        bool raised = query.Insulation != Insulation.Functional && solvedV < query.Supply.VoltageV;
        _workingV = raised ? query.Supply.VoltageV : solvedV;
        _voltageStep = $"Working voltage between the two {RuleWords.Volts(solvedV)} r.m.s." +
            (raised ? $", for {RuleWords.Grade(query.Insulation)} insulation never below the supply's {RuleWords.Volts(_workingV)}." : "");
    }

    /// <summary>What is asked of the pair.</summary>
    public PairRequirement Required()
    {
        SpacingRules.CheckDegree(_query.Environment.PollutionDegree);
        Requirement beforeWear = _query.Spacing.ClearanceMm is { } ownMm
            ? Own("clearance", ownMm, () => _rules.WithWear(ClearanceByRule(), _supply))
            : ClearanceByRule();
        Requirement clearance = WithMargin(beforeWear.IsOwn ? beforeWear : _rules.WithWear(beforeWear, _supply));
        return new PairRequirement(clearance, _query.Group is { } group ? Creepage(group, beforeWear) : null);
    }

    private Requirement Creepage(MaterialGroup group, Requirement clearance) =>
        WithMargin(_query.Spacing.CreepageMm is { } ownMm
            ? Own("creepage", ownMm, () => Raised(CreepageByRule(group), clearance))
            : Raised(CreepageByRule(group), clearance));

    private Requirement ClearanceByRule() => AfterVoltage(_rules.RequiredClearance(
        new ClearanceQuery(_supply, _query.Insulation, _query.Environment.PollutionDegree)
        {
            AltitudeM = _query.Environment.AltitudeM,
            WorkingPeakV = _workingV * Math.Sqrt(2),
            OverVoltages = _query.Supply.OverVoltages,
            FrequencyHz = _query.Supply.FrequencyHz,
        }));

    private Requirement CreepageByRule(MaterialGroup group) => AfterVoltage(_rules.RequiredCreepage(
        new CreepageQuery(_workingV, _query.Insulation, _query.Environment.PollutionDegree, group)
        {
            FrequencyHz = _query.Supply.FrequencyHz,
        }));

    private Requirement AfterVoltage(Requirement requirement) =>
        requirement with { Steps = [_voltageStep, .. requirement.Steps] };

    private string NotBelow => _rules.Standard == SpacingStandard.Iec60664 ? Iec60664Clauses.NotBelowClearance : "IEC 60335-1 annex L";

    private Requirement Raised(Requirement creepage, Requirement clearance)
    {
        RuleWorkings workings = RuleWorkings.After(creepage);
        if (creepage.RequiredMm >= clearance.RequiredMm)
        {
            workings.Note($"Never less than the clearance ({NotBelow}): {RuleWords.Mm(clearance.RequiredMm)}, so it stays.");
            return creepage with { Steps = workings.Steps };
        }

        workings.Trust(clearance.Confidence);
        workings.Note($"Never less than the clearance ({NotBelow}): raised to {RuleWords.Mm(clearance.RequiredMm)} ({clearance.BasisInFull}).");
        return creepage with
        {
            RequiredMm = clearance.RequiredMm,
            Entry = $"{creepage.Entry}; raised to the clearance ({clearance.BasisInFull})",
            Steps = workings.Steps,
            Confidence = workings.Confidence,
        };
    }

    private static Requirement Own(string key, double ownMm, Func<Requirement> byRule)
    {
        string head = $"{RuleWords.Mm(ownMm)}: the user's own ([spacing] {key}), in place of ";
        string basis = $"the user's own ([spacing] {key})";
        try
        {
            Requirement rule = byRule();
            string less = ownMm < rule.RequiredMm ? "; it is less than the rule asks" : "";
            return new Requirement(ownMm, basis, "", [$"{head}{RuleWords.Mm(rule.RequiredMm)} by {rule.BasisInFull}{less}."])
            {
                IsOwn = true,
                RuleMm = rule.RequiredMm,
            };
        }
        catch (RuleRefusedException refusal)
        {
            return new Requirement(ownMm, basis, "", [$"{head}a rule that gives none: {refusal.Message}"]) { IsOwn = true };
        }
    }

    private Requirement WithMargin(Requirement requirement)
    {
        RuleWorkings workings = RuleWorkings.After(requirement);
        double marginMm = _query.Spacing.MarginMm;
        double mm = TableRows.Noiseless(requirement.RequiredMm + marginMm);
        workings.Note(marginMm == 0
            ? $"No margin on top ([spacing] margin): {RuleWords.Mm(mm)}."
            : $"Margin {RuleWords.Mm(marginMm)} on top ([spacing] margin): {RuleWords.Mm(mm)}.");
        return requirement with { RequiredMm = mm, Steps = workings.Steps };
    }
}
