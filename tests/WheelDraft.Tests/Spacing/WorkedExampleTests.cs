using System.Globalization;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>Published worked examples of the rules (cases/worked_examples.csv), one test a row, its source in its name.</summary>
public sealed class WorkedExampleTests
{
    private const SpacingStandard Coordination = SpacingStandard.Iec60664;
    private const SpacingStandard Appliances = SpacingStandard.Iec60335;

    /// <summary>Rows that are no look-up: the r.m.s. of mixed voltages, and paths over grooves and slots, tested where those are measured.</summary>
    private static readonly string[] NoLookUp = ["W32", "W33", "W34"];

    private static readonly Dictionary<string, Func<double[]>> Cases = new(StringComparer.Ordinal)
    {
        ["W01"] = () => [ImpulseUsed(Coordination, 230, Insulation.Basic)],
        ["W02"] = () => [ImpulseUsed(Coordination, 230, Insulation.Reinforced)],
        ["W03"] = () => Clearances(2500, 1, 2, 3).Distinct().ToArray(),
        ["W04"] = () => Clearances(4000, 1, 2, 3).Distinct().ToArray(),
        ["W05"] = () => Clearances(1500, 2, 3),
        ["W06"] = () => Clearances(500, 1, 2, 3),
        ["W07"] = () => Clearances(6000, 2),
        ["W08"] = () => Creepages(Coordination, 400, 2, MaterialGroup.I),
        ["W09"] = () => Creepages(Coordination, 400, 2, MaterialGroup.II),
        ["W10"] = () => Creepages(Coordination, 400, 2, MaterialGroup.IIIa),
        ["W11"] = () => Creepages(Coordination, 250, 2, MaterialGroup.IIIa),
        ["W12"] = () => Creepages(Coordination, 320, 2, MaterialGroup.IIIa),
        ["W13"] = () => Creepages(Coordination, 500, 2, MaterialGroup.IIIb),
        ["W14"] = () => Creepages(Coordination, 250, 3, MaterialGroup.IIIa)[..1],
        ["W15"] = () => Creepages(Coordination, 400, 3, MaterialGroup.IIIb)[..1],
        ["W22"] = () => [ImpulseUsed(Appliances, 120, Insulation.Basic)],
        ["W23"] = () => [ApplianceClearance(Insulation.Basic), ApplianceClearance(Insulation.Reinforced)],
        ["W24"] = () => [PairOfAppliance(Insulation.Reinforced)],
        ["W27"] = () => Creepages(Appliances, 400, 2, MaterialGroup.IIIa),
        ["W28"] = () => Creepages(Appliances, 250.1, 3, MaterialGroup.IIIa),
        ["W29"] = () => Creepages(Appliances, 125.1, 3, MaterialGroup.IIIa),
        ["W30"] = () => [Creepage(Appliances, 250, 3, MaterialGroup.IIIa, Insulation.Functional)],
    };

    private static readonly CaseTable Table = CaseTable.Read("worked_examples.csv");

    public static TheoryData<string, string, string> Published()
    {
        TheoryData<string, string, string> data = [];
        foreach (string[] row in Table.Rows)
        {
            string id = Table.Text(row, "id");
            if (!NoLookUp.Contains(id, StringComparer.Ordinal))
            {
                data.Add(id, Table.Text(row, "expected_value"), Table.Text(row, "source"));
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Published))]
    public void Required_PublishedExample_IsMet(string id, string expected, string source)
    {
        double[] wanted = [.. expected.Split(" / ").Select(e => double.Parse(e, CultureInfo.InvariantCulture))];
        Assert.NotEmpty(source);
        Assert.Equal(wanted, Cases[id]());
    }

    [Fact]
    public void Cases_EveryRow_IsTriedOrNamedAsNoLookUp() =>
        Assert.Equal(Table.Rows.Select(r => Table.Text(r, "id")).Order(StringComparer.Ordinal), Cases.Keys.Concat(NoLookUp).Order(StringComparer.Ordinal));

    private static double ImpulseUsed(SpacingStandard standard, double voltageV, Insulation insulation) =>
        SpacingRules.For(standard).RequiredClearance(new ClearanceQuery(new SupplyImpulse(voltageV, OvervoltageCategory.II), insulation, 2)).ImpulseV!.Value;

    private static double[] Clearances(double impulseV, params int[] degrees) =>
        [.. degrees.Select(d => SpacingRules.For(Coordination).RequiredClearance(new ClearanceQuery(new GivenImpulse(impulseV), Insulation.Basic, d)).RequiredMm)];

    private static double ApplianceClearance(Insulation insulation) =>
        SpacingRules.For(Appliances).RequiredClearance(new ClearanceQuery(new GivenImpulse(1500), insulation, 2)).RequiredMm;

    private static double[] Creepages(SpacingStandard standard, double voltageV, int degree, MaterialGroup group) =>
        [Creepage(standard, voltageV, degree, group, Insulation.Basic), Creepage(standard, voltageV, degree, group, Insulation.Reinforced)];

    private static double Creepage(SpacingStandard standard, double voltageV, int degree, MaterialGroup group, Insulation insulation) =>
        SpacingRules.For(standard).RequiredCreepage(new CreepageQuery(voltageV, insulation, degree, group)).RequiredMm;

    private static double PairOfAppliance(Insulation insulation) =>
        SpacingRules.RequiredBetween(Pairs.Of(Appliances, 120, insulation, degree: 2)).Clearance.RequiredMm;
}
