using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>IEC 60335-1 clause 29 beyond the published examples; values as IS 302-1:2008 prints them.</summary>
public sealed class Iec60335RulesTests
{
    private static readonly SpacingRules Rules = SpacingRules.For(SpacingStandard.Iec60335);

    /// <summary>Table 16: 0.5 mm from 330 V up, where IEC 60664-1 would go down to 0.01 mm; 0.8 mm at 1.5 kV and pollution degree 3.</summary>
    [Theory]
    [InlineData(330, 1, 0.5)]
    [InlineData(330, 3, 0.5)]
    [InlineData(1500, 2, 0.5)]
    [InlineData(1500, 3, 0.8)]
    [InlineData(2500, 3, 1.5)]
    [InlineData(10000, 1, 11.0)]
    public void RequiredClearance_Row_IsThatOfTable16(double impulseV, int degree, double mm) =>
        Assert.Equal(mm, Rules.RequiredClearance(new ClearanceQuery(new GivenImpulse(impulseV), Insulation.Basic, degree)).RequiredMm);

    /// <summary>A load across the 240 V of a 120/240 V split phase: 2.5 kV by the rated voltage (Table 15), 1.5 kV line to neutral
    /// by IEC 60664-1 Table F.1.</summary>
    [Fact]
    public void RequiredClearance_SplitPhase_IsEnteredByRatedVoltage()
    {
        Assert.Equal(2500, ImpulseOf(SpacingStandard.Iec60335, 240));
        Assert.Equal(1500, ImpulseOf(SpacingStandard.Iec60664, 120));
    }

    /// <summary>Table 17 and 18 are bands with their upper ends included.</summary>
    [Theory]
    [InlineData(50, Insulation.Basic, 1.9)]
    [InlineData(50.1, Insulation.Basic, 2.4)]
    [InlineData(125, Insulation.Functional, 2.2)]
    [InlineData(230, Insulation.Supplementary, 4.0)]
    [InlineData(250, Insulation.Reinforced, 8.0)]
    [InlineData(250.1, Insulation.Functional, 5.0)]
    public void RequiredCreepage_Band_IncludesItsUpperEnd(double voltageV, Insulation insulation, double mm) =>
        Assert.Equal(mm, Rules.RequiredCreepage(new CreepageQuery(voltageV, insulation, 3, MaterialGroup.IIIa)).RequiredMm);

    /// <summary>Above 630 V this standard asks less than IEC 60664-1 (10.0 against 12.5 mm at 700 V); both are given as printed.</summary>
    [Fact]
    public void RequiredCreepage_Above630V_IsLessThanThatOfIec60664()
    {
        CreepageQuery query = new(700, Insulation.Basic, 3, MaterialGroup.IIIa);
        Assert.Equal(10.0, Rules.RequiredCreepage(query).RequiredMm);
        Assert.Equal(12.5, SpacingRules.For(SpacingStandard.Iec60664).RequiredCreepage(query).RequiredMm);
    }

    /// <summary>Clause 29.1.5: 2.5 kV raised by a working peak 150 V above the rated peak is 2.65 kV; on the straight line from 1.5
    /// to 3.0 mm over 1.5 kV that is 1.65 mm.</summary>
    [Fact]
    public void RequiredClearance_WorkingPeakAboveRated_IsInterpolated()
    {
        double peakV = (230 * Math.Sqrt(2)) + 150;
        Assert.Equal(1.65, WithPeak(peakV, Insulation.Functional));
        Assert.Equal(3.25, WithPeak(peakV, Insulation.Reinforced));
    }

    [Fact]
    public void RequiredClearance_WorkingPeakAboveRatedByNoise_IsNotRaised()
    {
        double peakV = 230.0000000001 * Math.Sqrt(2);
        Assert.Equal(1.5, WithPeak(peakV, Insulation.Basic));
        Assert.Equal(3.0, WithPeak(peakV, Insulation.Reinforced));
    }

    [Fact]
    public void Basis_Appliances_NamesEditionAndTable() =>
        Assert.Equal("IEC 60335-1 ed. 4 Table 18", Rules.RequiredCreepage(new CreepageQuery(230, Insulation.Functional, 3, MaterialGroup.IIIa)).Basis);

    private static double WithPeak(double peakV, Insulation insulation) =>
        Rules.RequiredClearance(new ClearanceQuery(new SupplyImpulse(230, OvervoltageCategory.II), insulation, 3) { WorkingPeakV = peakV }).RequiredMm;

    private static double ImpulseOf(SpacingStandard standard, double voltageV) =>
        SpacingRules.For(standard).RequiredClearance(new ClearanceQuery(new SupplyImpulse(voltageV, OvervoltageCategory.II), Insulation.Basic, 2)).ImpulseV!.Value;
}
