namespace WheelDraft.Engineering;

/// <summary>What is asked of every open contact, with the steps that led there.</summary>
/// <param name="Outputs">One entry an output, in file order; null where no separation is asked.</param>
internal sealed record OpenContactRequirements(IReadOnlyList<PairRequirement?> Outputs)
{
    /// <summary>Asks the rules for every output.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="workingV">Working voltage between an output's wiper and the wheel's copper, V, by output index.</param>
    /// <exception cref="DesignRefusedException">The rules give no distance for one of them.</exception>
    internal static OpenContactRequirements Of(Brief brief, Func<int, double> workingV)
    {
        List<Finding> reasons = [];
        List<PairRequirement?> all = [];
        for (int i = 0; i < brief.Outputs.Count; i++)
        {
            if (brief.Outputs[i].OverOpenContact is not Insulation grade)
            {
                all.Add(null);
                continue;
            }

            try
            {
                all.Add(SpacingRules.RequiredBetween(new PairQuery(brief.Supply, brief.Environment, brief.Spacing, grade)
                {
                    WorkingVoltageV = workingV(i),
                    Group = brief.Carrier.Group,
                }));
            }
            catch (RuleRefusedException refusal)
            {
                reasons.Add(refusal.ToFinding(brief.PlaceOf(refusal.Key ?? FormattableString.Invariant($"output[{i}]"))));
                all.Add(null);
            }
        }

        // One reason that stops all outputs alike is reported once.
        return reasons.Count == 0 ? new(all) : throw new DesignRefusedException([.. reasons.DistinctBy(r => (r.Code, r.Message))]);
    }

    /// <summary>The distances that the wheel is set out with.</summary>
    internal IReadOnlyList<OpenContactRule> Distances =>
        [.. Outputs.Select(OpenContactRule.Of)];
}
