using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>What the rules do not give: a reason and a way out, never a guess.</summary>
public sealed class RuleRefusalTests
{
    private static readonly SpacingRules Coordination = SpacingRules.For(SpacingStandard.Iec60664);
    private static readonly SpacingRules Appliances = SpacingRules.For(SpacingStandard.Iec60335);

    public static TheoryData<string, string, string, Func<Requirement>> Refused { get; } = new()
    {
        { "pollution degree 4, creepage", "rule.pollution-degree", "Enclose", () => Coordination.RequiredCreepage(new CreepageQuery(230, Insulation.Basic, 4, MaterialGroup.I)) },
        { "pollution degree 4, clearance", "rule.pollution-degree", "Enclose", () => Appliances.RequiredClearance(new ClearanceQuery(new GivenImpulse(2500), Insulation.Basic, 4)) },
        { "above 30 kHz", "rule.frequency", "60664-4", () => Coordination.RequiredCreepage(new CreepageQuery(230, Insulation.Basic, 2, MaterialGroup.I) { FrequencyHz = 30_001 }) },
        { "above 30 kHz, clearance", "rule.frequency", "60664-4", () => Appliances.RequiredClearance(new ClearanceQuery(new GivenImpulse(2500), Insulation.Basic, 2) { FrequencyHz = 40_000 }) },
        { "creepage voltage above the table", "rule.voltage", "2000 V", () => Coordination.RequiredCreepage(new CreepageQuery(2001, Insulation.Functional, 2, MaterialGroup.I)) },
        { "appliance voltage above the table", "rule.voltage", "1600 V", () => Appliances.RequiredCreepage(new CreepageQuery(1601, Insulation.Functional, 2, MaterialGroup.I)) },
        { "supply voltage above the table", "rule.voltage", "1500 V", () => Coordination.RequiredClearance(new ClearanceQuery(new SupplyImpulse(1501, OvervoltageCategory.I), Insulation.Basic, 2)) },
        { "rated voltage above Table 15", "rule.voltage", "300 V", () => Appliances.RequiredClearance(new ClearanceQuery(new SupplyImpulse(301, OvervoltageCategory.II), Insulation.Basic, 2)) },
        { "impulse above Table F.2", "rule.impulse", "100 kV", () => Coordination.RequiredClearance(new ClearanceQuery(new GivenImpulse(100_001), Insulation.Basic, 2)) },
        { "160 % above Table F.2", "rule.impulse", "100 kV", () => Coordination.RequiredClearance(new ClearanceQuery(new GivenImpulse(80_000), Insulation.Reinforced, 2)) },
        { "impulse above Table 16", "rule.impulse", "10 kV", () => Appliances.RequiredClearance(new ClearanceQuery(new GivenImpulse(10_001), Insulation.Basic, 2)) },
        { "no step above Table 16", "rule.impulse", "10 kV", () => Appliances.RequiredClearance(new ClearanceQuery(new GivenImpulse(10_000), Insulation.Reinforced, 2)) },
        { "peak above Table F.8", "rule.voltage", "50 kV", () => Coordination.RequiredClearance(new ClearanceQuery(new GivenImpulse(2500), Insulation.Basic, 2) { WorkingPeakV = 50_001 }) },
        { "group IIIb, degree 3, above 630 V", "rule.group", "IIIa", () => Coordination.RequiredCreepage(new CreepageQuery(631, Insulation.Functional, 3, MaterialGroup.IIIb)) },
        { "group IIIb, degree 3, rationalised above 630 V", "rule.group", "IIIa", () => Coordination.RequiredCreepage(new CreepageQuery(720, Insulation.Basic, 3, MaterialGroup.IIIb)) },
        { "group IIIb in an appliance above 50 V", "rule.group", "IIIa", () => Appliances.RequiredCreepage(new CreepageQuery(50.1, Insulation.Functional, 2, MaterialGroup.IIIb)) },
        { "category IV in an appliance", "rule.category", "category II", () => Appliances.RequiredClearance(new ClearanceQuery(new SupplyImpulse(230, OvervoltageCategory.IV), Insulation.Basic, 2)) },
        { "above 20 km", "rule.altitude", "20000 m", () => Coordination.RequiredClearance(new ClearanceQuery(new GivenImpulse(2500), Insulation.Basic, 2) { AltitudeM = 20_001 }) },
    };

    [Theory]
    [MemberData(nameof(Refused), DisableDiscoveryEnumeration = true)]
    public void Required_OutsideTheRules_IsRefusedWithReasonAndWayOut(string what, string code, string wayOut, Func<Requirement> ask)
    {
        RuleRefusedException refusal = Assert.Throws<RuleRefusedException>(ask);
        Assert.NotEmpty(what);
        Assert.Equal(code, refusal.Code);
        Assert.Contains(wayOut, refusal.Message, StringComparison.Ordinal);
        Assert.Equal(FindingSeverity.Error, refusal.ToFinding().Severity);
    }

    /// <summary>The edges of the refusals are allowed: 30 kHz, 630 V and 50 V with group IIIb, 690 V rationalised to 630 V, 2000 V, 20 km.</summary>
    [Fact]
    public void Required_AtTheEdgeOfTheRules_IsGiven()
    {
        Assert.Equal(10.0, Coordination.RequiredCreepage(new CreepageQuery(630, Insulation.Functional, 3, MaterialGroup.IIIb)).RequiredMm);
        Assert.Equal(10.0, Coordination.RequiredCreepage(new CreepageQuery(690, Insulation.Basic, 3, MaterialGroup.IIIb)).RequiredMm);
        Assert.Equal(1.9, Appliances.RequiredCreepage(new CreepageQuery(50, Insulation.Basic, 3, MaterialGroup.IIIb)).RequiredMm);
        Assert.Equal(32.0, Coordination.RequiredCreepage(new CreepageQuery(2000, Insulation.Functional, 3, MaterialGroup.IIIa) { FrequencyHz = 30_000 }).RequiredMm);
    }

    [Theory]
    [InlineData("rule.pollution-degree", "environment.pollution_degree")]
    [InlineData("rule.category", "supply.overvoltage_category")]
    [InlineData("rule.voltage", null)]
    public void Key_Refusal_TellsWhichKeyDecides(string code, string? key) => Assert.Equal(key, new RuleRefusedException(code, "").Key);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-1)]
    [InlineData(double.PositiveInfinity)]
    public void Required_NoVoltage_Throws(double voltageV)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Coordination.RequiredCreepage(new CreepageQuery(voltageV, Insulation.Basic, 2, MaterialGroup.I)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new GivenImpulse(voltageV));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SupplyImpulse(voltageV, OvervoltageCategory.I));
    }
}
