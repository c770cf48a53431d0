using System.Globalization;
using CsCheck;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Nets that float together are walked once for all patterns of contacts; the oracle walks each pattern by itself.</summary>
public sealed class FloatingGroupsTests
{
    private static int Cases => Math.Max(8, StandingTests.Cases / 3);

    [Fact]
    public void WorkingVoltages_RandomParts_EqualThoseOfEveryStateByItself() =>
        PartedCircuits.Any.Sample(c => AssertSame(c.Request(), c.Analyse()), iter: Cases, threads: 1);

    [Fact]
    public void WorkingVoltages_RandomCircuits_EqualThoseOfEveryStateByItself() =>
        ReachabilityTests.CoastingCircuits.Sample(c => AssertSame(c.Request(), c.Analyse()), iter: Cases, threads: 1);

    // Where and by how much: the same potentials at the same positions, entry by entry.
    [Fact]
    public void Potentials_RandomParts_EqualThosePatternByPattern() => PartedCircuits.Any.Sample(
        circuit =>
        {
            CircuitModel model = new(circuit.Request());
            foreach (CircuitFault fault in SingleFaults.Of(model).Prepend(new CircuitFault(CircuitFaultKind.None)))
            {
                AssertSamePotentials(model, new FaultCase(model, fault));
            }
        },
        iter: Cases,
        threads: 1);

    private static void AssertSamePotentials(CircuitModel model, FaultCase fault)
    {
        NetworkSplit split = new(model);
        SectionSolver solver = new(model);
        NodePotentials joined = new(model);
        PatternwisePotentials apart = new(model);
        for (int inputs = 0; inputs < model.InputPositions; inputs++)
        {
            if (!split.Split(fault, inputs))
            {
                continue;
            }

            joined.Read(split, solver, [.. Enumerable.Range(0, model.NodeCount)]);
            apart.Read(split, solver);
            for (int n = 0; n < model.NodeCount; n++)
            {
                Assert.Equal(Listed(model, apart.Of[n]), Listed(model, joined.Of[n]));
                Assert.Equal(apart.Of[n].Select(p => (p.Volts, p.Floats)), joined.Apart(n, split, solver).Select(p => (p.Volts, p.Floats)));
            }
        }
    }

    // Each potential to the bit, with all positions at which it is possible.
    private static string[] Listed(CircuitModel model, List<NodePotential> potentials)
    {
        Dictionary<(long Real, long Imaginary, int Floats), ulong[]> listed = [];
        foreach (NodePotential potential in potentials)
        {
            (long, long, int) key = (BitConverter.DoubleToInt64Bits(potential.Volts.Real), BitConverter.DoubleToInt64Bits(potential.Volts.Imaginary), potential.Floats);
            if (!listed.TryGetValue(key, out ulong[]? positions))
            {
                listed[key] = positions = new ulong[potential.Positions.Length];
            }

            for (int word = 0; word < positions.Length; word++)
            {
                positions[word] |= potential.Positions[word];
            }
        }

        int last = model.Turn.Positions.Count % 64;
        return [.. listed.Select(l => FormattableString.Invariant($"{l.Key} at {string.Join(' ', l.Value.Select((w, i) => (i == l.Value.Length - 1 && last > 0 ? w & ((1UL << last) - 1) : w).ToString("x", CultureInfo.InvariantCulture)))}")).Order(StringComparer.Ordinal)];
    }

    private static void AssertSame(CircuitRequest request, CircuitAnalysis analysis) =>
        Assert.Equal(VoltageOracle.Of(request), analysis.WorkingVoltages.Select(v => (v.First, v.Second, v.VoltageV, v.Where)));
}
