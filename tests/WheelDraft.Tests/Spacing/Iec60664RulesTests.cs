using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>IEC 60664-1 beyond the published examples: rationalised voltages, interpolation, grades, altitude, peaks.</summary>
public sealed class Iec60664RulesTests
{
    private static readonly SpacingRules Rules = SpacingRules.For(SpacingStandard.Iec60664);

    /// <summary>IEC 60664-1:2020 Tables F.3 and F.4 as in terminal block catalogues: a list, not a ceiling.</summary>
    [Theory]
    [InlineData(208, 200)]
    [InlineData(220, 250)]
    [InlineData(230, 250)]
    [InlineData(240, 250)]
    [InlineData(120, 125)]
    [InlineData(127, 125)]
    [InlineData(24, 25)]
    [InlineData(400, 400)]
    [InlineData(440, 500)]
    [InlineData(480, 500)]
    [InlineData(660, 630)]
    [InlineData(690, 630)]
    [InlineData(830, 800)]
    public void RequiredCreepage_ListedVoltage_UsesTheRationalisedRow(double nominalV, double rowV) =>
        Assert.Equal(RowOf(rowV), Creepage(nominalV, Insulation.Basic).RequiredMm);

    /// <summary>methods.md's order: a voltage in neither list goes to the next row up.</summary>
    [Theory]
    [InlineData(207, 250)]
    [InlineData(251, 320)]
    [InlineData(1100, 1250)]
    [InlineData(1500, 1600)]
    [InlineData(5, 10)]
    public void RequiredCreepage_UnlistedVoltage_UsesTheNextRowUp(double voltageV, double rowV) =>
        Assert.Equal(RowOf(rowV), Creepage(voltageV, Insulation.Basic).RequiredMm);

    /// <summary>Texts differ on 415 V (400 V in reprints of edition 2, 500 V in notes on edition 3): the larger, and it is said.</summary>
    [Fact]
    public void RequiredCreepage_415V_TakesTheLargerReadingAndSaysSo()
    {
        Requirement found = Creepage(415, Insulation.Basic);
        Assert.Equal(RowOf(500), found.RequiredMm);
        Assert.Equal(RuleConfidence.Low, found.Confidence);
        Assert.Contains(found.Steps, s => s.Contains("texts differ", StringComparison.Ordinal));
    }

    /// <summary>230 V at pollution degree 3, group III, functional: 3.68 mm between 200 V (3.2) and 250 V (4.0); arithmetic of the
    /// interpolation that TI SLUAAR5 shows. By IEC 60335-1 Table 18 it is 3.2 mm, by the rationalised voltage 4.0 mm.</summary>
    [Fact]
    public void RequiredCreepage_230VThreeReadings_AreToldApart()
    {
        Assert.Equal(3.68, Creepage(230, Insulation.Functional).RequiredMm);
        Assert.Equal(4.0, Creepage(230, Insulation.Basic).RequiredMm);
        Assert.Equal(3.2, SpacingRules.For(SpacingStandard.Iec60335).RequiredCreepage(new CreepageQuery(230, Insulation.Functional, 3, MaterialGroup.IIIa)).RequiredMm);
    }

    /// <summary>TI SLUAAR5's example, 565 V, pollution degree 2, group I: exactly 2.85 mm (printed there as 2.8); never below it here.</summary>
    [Fact]
    public void RequiredCreepage_565V_IsRoundedUpNotDown() =>
        Assert.Equal(2.85, Rules.RequiredCreepage(new CreepageQuery(565, Insulation.Functional, 2, MaterialGroup.I)).RequiredMm);

    /// <summary>A row is used as printed, and rounding up between rows never passes the row above (0.125 mm at 25 V).</summary>
    [Theory]
    [InlineData(25, 0.125)]
    [InlineData(24.9, 0.125)]
    [InlineData(21, 0.12)]
    public void RequiredCreepage_NearARowWithThreeDecimals_StaysWithinIt(double voltageV, double mm) =>
        Assert.Equal(mm, Rules.RequiredCreepage(new CreepageQuery(voltageV, Insulation.Functional, 1, MaterialGroup.I)).RequiredMm);

    [Fact]
    public void RequiredCreepage_NoiseOfASolvedCircuit_ChangesNothing()
    {
        Assert.Equal(3.68, Creepage(230.0000000002, Insulation.Functional).RequiredMm);
        Assert.Equal(RowOf(200), Creepage(208.0000000002, Insulation.Basic).RequiredMm);
    }

    [Theory]
    [InlineData(Insulation.Functional)]
    [InlineData(Insulation.Basic)]
    public void RequiredCreepage_BelowTheFirstRow_UsesItAndSaysSo(Insulation insulation)
    {
        Requirement found = Creepage(3, insulation);
        Assert.Equal(1.0, found.RequiredMm);
        Assert.Contains(found.Steps, s => s.Contains("3 V is below it", StringComparison.Ordinal));
    }

    /// <summary>Rated impulse voltages, IEC 60664-1 Table F.1 (TI SLUP419 table 4): 120 V of a split phase is in the 150 V row.</summary>
    [Theory]
    [InlineData(24, OvervoltageCategory.II, 500)]
    [InlineData(120, OvervoltageCategory.II, 1500)]
    [InlineData(230, OvervoltageCategory.III, 4000)]
    [InlineData(277, OvervoltageCategory.IV, 6000)]
    [InlineData(300, OvervoltageCategory.I, 1500)]
    [InlineData(300.1, OvervoltageCategory.I, 2500)]
    public void RequiredClearance_Supply_GivesItsRatedImpulse(double supplyV, OvervoltageCategory category, double impulseV) =>
        Assert.Equal(impulseV, Rules.RequiredClearance(new ClearanceQuery(new SupplyImpulse(supplyV, category), Insulation.Basic, 2)).ImpulseV);

    /// <summary>Reinforced: the next preferred value (TI SLUP419, AMC1411 data sheet); 160 % only of a value that is not preferred.</summary>
    [Theory]
    [InlineData(330, 500)]
    [InlineData(800, 1500)]
    [InlineData(1500, 2500)]
    [InlineData(2500, 4000)]
    [InlineData(4000, 6000)]
    [InlineData(6000, 8000)]
    [InlineData(8000, 12000)]
    [InlineData(3000, 5000)]
    [InlineData(5000, 8000)]
    [InlineData(12000, 20000)]
    public void RequiredClearance_Reinforced_StepsUp(double impulseV, double rowV) =>
        Assert.Equal(rowV, Clearance(impulseV, Insulation.Reinforced, 2).ImpulseV);

    [Fact]
    public void RequiredClearance_BetweenRows_UsesTheNextRowUp()
    {
        Requirement found = Clearance(3500, Insulation.Basic, 2);
        Assert.Equal((3.0, 4000.0), (found.RequiredMm, found.ImpulseV!.Value));
        Assert.Contains(found.Steps, s => s.Contains("no row of its own", StringComparison.Ordinal));
    }

    /// <summary>Floors of pollution degrees 2 and 3, 0.2 and 0.8 mm (TI SLUP419, Bane NOR table).</summary>
    [Fact]
    public void RequiredClearance_SmallImpulse_StaysAtTheFloorOfThePollutionDegree()
    {
        Assert.Equal(0.01, Clearance(330, Insulation.Basic, 1).RequiredMm);
        Assert.Equal(0.2, Clearance(330, Insulation.Basic, 2).RequiredMm);
        Assert.Equal(0.8, Clearance(330, Insulation.Basic, 3).RequiredMm);
    }

    /// <summary>A merged cell: one text prints 0.25 mm, the reading here is 0.2 mm, and it is worth less.</summary>
    [Fact]
    public void RequiredClearance_1KvAtDegree2_IsTheMergedCell()
    {
        Requirement found = Clearance(1000, Insulation.Basic, 2);
        Assert.Equal((0.2, RuleConfidence.Medium), (found.RequiredMm, found.Confidence));
    }

    /// <summary>2.5 kV reinforced at pollution degree 2 is 3.0 mm here; IEC 62368-1 would have 3.6 (TI SLUP419).</summary>
    [Fact]
    public void RequiredClearance_2500VReinforced_IsNotThatOfAnotherStandard() =>
        Assert.Equal(3.0, Clearance(2500, Insulation.Reinforced, 2).RequiredMm);

    /// <summary>Factors 1.29 at 4000 m (TI SLUAAR5) and 1.48 at 5000 m (TI SLUP419); between rows the next higher one.</summary>
    [Theory]
    [InlineData(0, 3.0)]
    [InlineData(2000, 3.0)]
    [InlineData(2000.1, 3.42)]
    [InlineData(4000, 3.87)]
    [InlineData(4001, 4.44)]
    [InlineData(5000, 4.44)]
    [InlineData(20000, 43.5)]
    public void RequiredClearance_Altitude_TakesTheNextHigherRow(double altitudeM, double mm) =>
        Assert.Equal(mm, Rules.RequiredClearance(new ClearanceQuery(new GivenImpulse(4000), Insulation.Basic, 2) { AltitudeM = altitudeM }).RequiredMm);

    /// <summary>IEC 62368-1 and Table F.8 agree on 1.8 mm for 2.5 kV (TI SLUP419); the impulse asks less here, so the peak decides.</summary>
    [Fact]
    public void RequiredClearance_HighSteadyPeak_Decides()
    {
        Requirement found = Rules.RequiredClearance(new ClearanceQuery(new GivenImpulse(2500), Insulation.Basic, 2) { WorkingPeakV = 2500 });
        Assert.Equal(1.8, found.RequiredMm);
        Assert.Equal("IEC 60664-1:2020 Table F.8, 2.5 kV, PD2", found.BasisInFull);
    }

    /// <summary>230 V needs 0.01 mm for its peak of 325 V, so the rated impulse decides (arithmetic on Table F.8).</summary>
    [Fact]
    public void RequiredClearance_MainsPeak_NeverDecides()
    {
        Requirement found = Rules.RequiredClearance(new ClearanceQuery(new SupplyImpulse(230, OvervoltageCategory.II), Insulation.Functional, 1));
        Assert.Equal("IEC 60664-1:2020 Table F.2, 2.5 kV, PD1", found.BasisInFull);
        Assert.Contains(found.Steps, s => s.Contains("325.27 V: row 0.33 kV, 0.01 mm", StringComparison.Ordinal));
    }

    [Fact]
    public void RequiredClearance_SupplementaryInsulation_IsSaidToBeFromMemory() =>
        Assert.Equal("from memory", Clearance(2500, Insulation.Supplementary, 2).ConfidenceInWords);

    /// <summary>"F.4" is creepage in edition 2 and three-phase voltages in edition 3; a citation carries both.</summary>
    [Fact]
    public void Basis_Creepage_NamesEditionAndTable() =>
        Assert.Equal("IEC 60664-1:2020 Table F.5, 250 V, PD3, IIIa", Creepage(230, Insulation.Reinforced).BasisInFull);

    private static Requirement Creepage(double voltageV, Insulation insulation) =>
        Rules.RequiredCreepage(new CreepageQuery(voltageV, insulation, 3, MaterialGroup.IIIa));

    private static Requirement Clearance(double impulseV, Insulation insulation, int degree) =>
        Rules.RequiredClearance(new ClearanceQuery(new GivenImpulse(impulseV), insulation, degree));

    /// <summary>The cell for pollution degree 3, group III, from the copy of the table, not from the data under test.</summary>
    private static double RowOf(double rowV)
    {
        CaseTable copy = CaseTable.Read("tables/f4_creepage.csv");
        return copy.Number(copy.Rows.Single(r => copy.Number(r, "rms_v") == rowV), "pd3_group_iii_mm");
    }
}
