using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>The whole order of steps for a pair; expected values are arithmetic on published rows, stated at each test.</summary>
public sealed class PairRequirementTests
{
    /// <summary>2.5 kV: 1.5 mm; 200 and 250 V: 3.2 and 4.0 mm, so 3.68 mm at 230 V; 0.2 mm margin on both.</summary>
    [Fact]
    public void RequiredBetween_OpenContactAtMains_IsRuleAndMargin()
    {
        PairRequirement found = SpacingRules.RequiredBetween(Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Functional, 3).Margin(0.2));
        Assert.Equal(1.7, found.Clearance.RequiredMm);
        Assert.Equal(3.88, found.Creepage!.RequiredMm);
        Assert.Equal("IEC 60664-1:2020 Table F.5, 230 V, PD3, IIIa", found.Creepage.BasisInFull);
        Assert.EndsWith("Margin 0.20 mm on top ([spacing] margin): 3.88 mm.", found.Creepage.Steps[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void RequiredBetween_NoSharedSurface_AsksNoCreepage() =>
        Assert.Null(SpacingRules.RequiredBetween(Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Basic, 3) with { Group = null }).Creepage);

    /// <summary>Basic and higher grades: at least the supply voltage (230 V, rationalised 250 V: 4.0 mm), functional as solved
    /// (50 V: 1.9 mm). Both clearances by the supply's 2.5 kV.</summary>
    [Fact]
    public void RequiredBetween_LowWorkingVoltage_CountsForFunctionalOnly()
    {
        PairRequirement basic = SpacingRules.RequiredBetween(Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Basic, 3) with { WorkingVoltageV = 50 });
        PairRequirement functional = SpacingRules.RequiredBetween(Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Functional, 3) with { WorkingVoltageV = 50 });
        Assert.Equal((1.5, 4.0), (basic.Clearance.RequiredMm, basic.Creepage!.RequiredMm));
        Assert.Equal((1.5, 1.9), (functional.Clearance.RequiredMm, functional.Creepage!.RequiredMm));
        Assert.Contains("never below the supply's 230 V", basic.Creepage.Steps[0], StringComparison.Ordinal);
    }

    /// <summary>Order: 1.5 mm at 2.5 kV, times 1.48 at 5000 m is 2.22 mm; creepage 1.9 mm at 50 V is raised to 2.22 mm, not to
    /// 2.22 mm and margin; then 0.1 mm margin on each. A creepage distance itself is never multiplied.</summary>
    [Fact]
    public void RequiredBetween_CreepageBelowClearance_IsRaisedToTheClearanceAtAltitude()
    {
        PairQuery pair = Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Functional, 3).Altitude(5000).Margin(0.1) with { WorkingVoltageV = 50 };
        PairRequirement found = SpacingRules.RequiredBetween(pair);
        Assert.Equal((2.32, 2.32), (found.Clearance.RequiredMm, found.Creepage!.RequiredMm));
        Assert.Contains("raised to the clearance (IEC 60664-1:2020 Table F.2, 2.5 kV, PD3)", found.Creepage.BasisInFull, StringComparison.Ordinal);
        Assert.Equal(4.0, SpacingRules.RequiredBetween(pair with { Insulation = Insulation.Basic }).Creepage!.RequiredMm - 0.1, 1e-12);
    }

    /// <summary>IEC 60335-1 clause 29.1 adds 0.5 mm from 1.5 kV on: 120 V category II (1.5 kV) yes, category I (0.8 kV) no.</summary>
    [Fact]
    public void RequiredBetween_Appliance_AddsForWearFrom1500V()
    {
        PairQuery pair = Pairs.Of(SpacingStandard.Iec60335, 120, Insulation.Basic, 2);
        Assert.Equal(1.0, SpacingRules.RequiredBetween(pair).Clearance.RequiredMm);
        Assert.Equal(0.5, SpacingRules.RequiredBetween(pair.In(OvervoltageCategory.I)).Clearance.RequiredMm);
        Assert.Equal(1.5, SpacingRules.RequiredBetween(Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Basic, 2)).Clearance.RequiredMm);
    }

    /// <summary>The wear addition comes after altitude (1.5 × 1.14 + 0.5 = 2.21 mm) and creepage is raised to the clearance before it.</summary>
    [Fact]
    public void RequiredBetween_ApplianceAtAltitude_AddsWearAfterTheFactor()
    {
        PairQuery pair = Pairs.Of(SpacingStandard.Iec60335, 230, Insulation.Functional, 1).Altitude(3000);
        PairRequirement found = SpacingRules.RequiredBetween(pair);
        Assert.Equal((2.21, 1.71), (found.Clearance.RequiredMm, found.Creepage!.RequiredMm));
    }

    [Fact]
    public void RequiredBetween_OwnDistances_StandInPlaceOfTheRuleAndAreSaidToBe()
    {
        PairQuery pair = Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Basic, 3).Own(clearanceMm: 3.0, creepageMm: 3.5).Margin(0.2);
        PairRequirement found = SpacingRules.RequiredBetween(pair);
        Assert.Equal((3.2, 3.7), (found.Clearance.RequiredMm, found.Creepage!.RequiredMm));
        Assert.Equal("the user's own ([spacing] clearance)", found.Clearance.BasisInFull);
        Assert.Equal((true, 1.5), (found.Clearance.IsOwn, found.Clearance.RuleMm!.Value));
        Assert.Equal((true, 4.0), (found.Creepage.IsOwn, found.Creepage.RuleMm!.Value));
        Assert.Contains("it is less than the rule asks", found.Creepage.Steps[0], StringComparison.Ordinal);
    }

    /// <summary>A creepage distance by rule is never less than the clearance, whoever set that.</summary>
    [Fact]
    public void RequiredBetween_OwnClearanceAboveTheCreepage_RaisesIt() =>
        Assert.Equal(6.0, SpacingRules.RequiredBetween(Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Basic, 3).Own(clearanceMm: 6)).Creepage!.RequiredMm);

    [Fact]
    public void RequiredBetween_OwnDistanceWhereTheRuleRefuses_IsTaken()
    {
        PairQuery pair = Pairs.Of(SpacingStandard.Iec60335, 230, Insulation.Basic, 2).In(OvervoltageCategory.IV);
        Assert.Throws<RuleRefusedException>(() => SpacingRules.RequiredBetween(pair));
        Requirement own = SpacingRules.RequiredBetween(pair.Own(clearanceMm: 6)).Clearance;
        Assert.Equal((6.0, null), (own.RequiredMm, own.RuleMm));
        Assert.Contains("category IV", own.Steps[0], StringComparison.Ordinal);
    }

    [Fact]
    public void RequiredBetween_PollutionDegree4_IsRefusedEvenWithOwnDistances() =>
        Assert.Throws<RuleRefusedException>(() => SpacingRules.RequiredBetween(Pairs.Of(SpacingStandard.Iec60664, 230, Insulation.Basic, 4).Own(6, 6)));

    [Fact]
    public void RequiredBetween_SameQuestion_GivesTheSameSteps()
    {
        PairQuery pair = Pairs.Of(SpacingStandard.Iec60335, 230, Insulation.Reinforced, 3).Altitude(2500).Margin(0.1);
        Assert.Equal(SpacingRules.RequiredBetween(pair).Clearance.Steps, SpacingRules.RequiredBetween(pair).Clearance.Steps);
    }
}
