using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>The answer to a question for one rule, asked without a parameter file.</summary>
/// <remarks>The table's distance: no wear addition, no margin, creepage not raised to a clearance. A step says so.</remarks>
/// <param name="Quantity">Clearance or creepage, in lower case.</param>
/// <param name="Requirement">The distance and its steps.</param>
internal sealed record RuleAnswer(string Quantity, Requirement Requirement)
{
    private const string Scope = "The table's distance: no wear addition, no margin, a creepage distance not raised to the clearance.";

    /// <summary>Asks for a clearance.</summary>
    /// <exception cref="RuleRefusedException">The rules give none.</exception>
    public static RuleAnswer OfClearance(SpacingStandard standard, ClearanceQuery query) =>
        Of("clearance", SpacingRules.For(standard).RequiredClearance(query));

    /// <summary>Asks for a creepage distance.</summary>
    /// <exception cref="RuleRefusedException">The rules give none.</exception>
    public static RuleAnswer OfCreepage(SpacingStandard standard, CreepageQuery query) =>
        Of("creepage", SpacingRules.For(standard).RequiredCreepage(query));

    /// <summary>The answer for a person to read, a line each.</summary>
    public IReadOnlyList<string> Lines()
    {
        List<string> lines =
        [
            $"Required {Quantity}: {RuleWords.Mm(Requirement.RequiredMm)}",
            $"  basis       {Requirement.BasisInFull}",
            $"  read in     {Requirement.ReadIn}",
            $"  confidence  {Requirement.ConfidenceInWords}",
        ];
        lines.AddRange(Requirement.Steps.Select((step, i) => $"  {(i + 1).ToString(CultureInfo.InvariantCulture),2}. {step}"));
        lines.Add("A drafting aid, no certificate: check it against the standard itself.");
        return lines;
    }

    private static RuleAnswer Of(string quantity, Requirement requirement) =>
        new(quantity, requirement with { Steps = [.. requirement.Steps, Scope] });
}
