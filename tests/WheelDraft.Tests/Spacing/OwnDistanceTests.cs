using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>A distance of one's own below the rule's value needs words that say why.</summary>
public sealed class OwnDistanceTests
{
    // 230 V, category II, pollution degree 3: 1.5 mm of clearance (IEC 60664-1:2020 Tables F.1 and F.2), 3.68 mm of functional
    // creepage on group IIIa (Table F.5 between 200 V and 250 V); the cases file has both rows.
    private const double RuleClearanceMm = 1.5;

    [Fact]
    public void Of_AClearanceBelowTheTable_IsNoLongerTakenWithoutAWord()
    {
        Finding error = Assert.Single(Design.Of(With(1.0, null)).Findings, f => f.Code.StartsWith("spacing.own", StringComparison.Ordinal));
        Assert.Equal(FindingSeverity.Error, error.Severity);
        Assert.Equal("spacing.own-distance", error.Code);
        Assert.Contains("below the 1.50 mm that IEC 60664-1 asks", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OwnResponsibility_IsAWarningThatRepeatsTheWords()
    {
        Design design = Design.Of(With(1.0, "type test 17 of 2026"));
        Finding warning = Assert.Single(design.Findings, f => f.Code.StartsWith("spacing.own", StringComparison.Ordinal));
        Assert.Equal(FindingSeverity.Warning, warning.Severity);
        Assert.Contains("type test 17 of 2026", warning.Message, StringComparison.Ordinal);
        Assert.Contains(EvidenceAsked.Of(design.Brief), e => e.Contains("type test 17 of 2026", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(RuleClearanceMm)]
    [InlineData(2.0)]
    public void Of_TheRulesValueOrMore_NeedsNoWords(double ownMm) =>
        Assert.DoesNotContain(Design.Of(With(ownMm, null)).Findings, f => f.Code.StartsWith("spacing.own", StringComparison.Ordinal));

    [Fact]
    public void Of_ACreepageBelowTheTable_IsAnError()
    {
        Brief brief = Briefs.Worked();
        brief = brief with { Spacing = brief.Spacing with { CreepageMm = 3.6 } };
        Finding error = Assert.Single(Design.Of(brief).Findings, f => f.Code.StartsWith("spacing.own", StringComparison.Ordinal));
        Assert.Contains("3.68 mm", error.Message, StringComparison.Ordinal);
    }

    private static Brief With(double clearanceMm, string? words)
    {
        Brief brief = Briefs.Worked();
        return brief with { Spacing = brief.Spacing with { ClearanceMm = clearanceMm, OwnResponsibility = words } };
    }
}
