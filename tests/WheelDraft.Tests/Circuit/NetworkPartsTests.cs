using CsCheck;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>
/// Parts of the circuit solved by their own inputs, against the circuit whole: every position of all inputs split and solved at once, as the program did before it
/// looked for parts; and, for states and verdicts, against brute force by the tableau (<see cref="ReachOracle"/>).
/// </summary>
public sealed class NetworkPartsTests
{
    private static int Cases => Math.Max(8, StandingTests.Cases / 3);

    [Fact]
    public void Fill_RandomParts_EqualsTheWholeCircuitInEveryStateUnderEveryFault() =>
        PartedCircuits.Any.Sample(AssertSheets, iter: Cases, threads: 1);

    [Fact]
    public void Fill_RandomCircuits_EqualsTheWholeCircuitInEveryStateUnderEveryFault() =>
        ReachabilityTests.Circuits.Sample(AssertSheets, iter: Cases, threads: 1);

    public static TheoryData<string> Disguised => [.. Disguises.Keys];

    // Two parts that look independent, each with two inputs, and what ties them together after all.
    private static readonly Dictionary<string, Func<CircuitBuilder, CircuitBuilder>> Disguises = new(StringComparer.Ordinal)
    {
        ["nothing"] = c => c,
        ["common floating node"] = c => c.Ohms("over", "mid0", "common", 90).Ohms("over too", "mid1", "common", 90),
        ["common series impedance"] = c => c.Ohms("ballast", "L", "behind", 60).Input("first", "behind", "mid0").Input("second", "behind", "mid1"),
        ["load between two parts"] = c => c.Ohms("bridge", "mid0", "mid1", 40),
        ["input between two parts"] = c => c.Input("join", "mid0", "mid1"),
        ["short in one part"] = c => c.Input("short", "L", "mid0").Input("drain", "mid0", "N"),
        ["motor in one part"] = c => c.Motor("mid0", "N", 300),
        ["motor and a start from the line"] = c => c.Motor("ring1", "N", 300).Input("start", "L", "ring1"),
    };

    [Theory]
    [MemberData(nameof(Disguised))]
    public void Analyse_PartsThatLookIndependent_EqualBruteForceOverAllInputs(string tie)
    {
        CircuitBuilder circuit = new() { VoltagesUnderFaults = true };
        for (int p = 0; p < 2; p++)
        {
            circuit.Ring(Text($"ring{p}"), (20 + (90 * p), 70 + (150 * p))).Input(Text($"a{p}"), Text($"ring{p}"), Text($"mid{p}")).Ohms(Text($"base{p}"), Text($"mid{p}"), "N", 100).Input(Text($"b{p}"), Text($"mid{p}"), Text($"leg{p}")).Ohms(Text($"lamp{p}"), Text($"leg{p}"), "N", 100 + (50 * p));
        }

        Disguises[tie](circuit).Bridge("leg0", "leg1")
            .Interlock(new InterlockBrief("never both", InterlockClaim.NeverTogether, ["lamp0", "lamp1"]) { Faults = FaultDepth.Single })
            .Interlock(new InterlockBrief("lamp dark while a is open", InterlockClaim.NeverOn, ["lamp0"]) { WhileOpen = ["a0"], Faults = FaultDepth.Single })
            .Interlock(new InterlockBrief("lamp dark while the other is open", InterlockClaim.NeverOn, ["lamp1"]) { WhileFalse = ["a0"], Faults = FaultDepth.Single });
        CircuitAnalysis analysis = circuit.Analyse();
        AssertSheets(circuit);
        AssertVerdicts(circuit, analysis);
        Assert.Equal(VoltageOracle.Of(circuit.Request()), analysis.WorkingVoltages.Select(v => (v.First, v.Second, v.VoltageV, v.Where)));
    }

    // A bridge between two parts is unsafe and stays refuted, by brute force too.
    private static void AssertVerdicts(CircuitBuilder circuit, CircuitAnalysis analysis)
    {
        ReachOracle oracle = new(circuit);
        IReadOnlyList<InterlockBrief> claims = circuit.Request().Brief.Interlocks;
        for (int i = 0; i < claims.Count; i++)
        {
            InterlockVerdict worst = oracle.Verdict(claims[i], ReachOracle.NoFault);
            foreach (FaultEffect effect in analysis.Faults)
            {
                InterlockVerdict verdict = oracle.Verdict(claims[i], effect.Fault);
                Assert.True((verdict == InterlockVerdict.Fails) == effect.BreaksInterlocks.Contains(claims[i].Name, StringComparer.Ordinal), $"{claims[i].Name}, {effect.Fault.Words}: brute force {verdict}");
                worst = verdict == InterlockVerdict.Fails || worst == InterlockVerdict.Holds ? verdict : worst;
            }

            Assert.Equal(worst, analysis.Interlocks[i].Verdict);
        }
    }

    private static void AssertSheets(CircuitBuilder circuit)
    {
        CircuitModel model = new(circuit.Request());
        NetworkSplit split = new(model);
        SectionSolver solver = new(model);
        foreach (CircuitFault fault in SingleFaults.Of(model).Prepend(new CircuitFault(CircuitFaultKind.None)))
        {
            FaultCase faultCase = new(model, fault);
            StateSheet sheet = new(model);
            StateSheet byPosition = new(model, mostTogether: 0);
            sheet.Fill(faultCase, split, solver);
            byPosition.Fill(faultCase, split, solver);
            for (int inputs = 0; inputs < model.InputPositions; inputs++)
            {
                bool isSplit = split.Split(faultCase, inputs);
                AssertRow(model, sheet, inputs, isSplit ? split : null, solver);
                AssertRow(model, byPosition, inputs, isSplit ? split : null, solver);
            }
        }
    }

    // The whole circuit at one position of all inputs: no parts, nothing left out.
    private static void AssertRow(CircuitModel model, StateSheet sheet, int inputs, NetworkSplit? split, SectionSolver solver)
    {
        for (int position = 0; position < model.Turn.Positions.Count; position++)
        {
            bool isShort = split is null;
            LoadState[] states = new LoadState[model.Loads.Count];
            for (int s = 0; split is not null && s < split.Count; s++)
            {
                SectionDetail detail = solver.Detail(split.Section(s));
                SectionPattern pattern = detail.Solved[detail.Contacts.PatternAt[position]];
                isShort |= pattern.IsShort;
                for (int l = 0; l < detail.Loads.Length; l++)
                {
                    states[detail.Loads[l]] = solver.StateOf(detail.Loads[l], pattern.Volts[l]);
                }
            }

            LoadState behindFuse = model.Lines.Count > 1 ? LoadState.Undecided : LoadState.Off;
            int wrong = -1;
            for (int l = 0; l < states.Length; l++)
            {
                wrong = (isShort ? behindFuse : states[l]) == sheet.StateOf(inputs, l, position) ? wrong : l;
            }

            if (wrong >= 0 || isShort != BitRow.Has(sheet.Short(inputs), position))
            {
                Assert.Fail(Text($"{(wrong < 0 ? "short" : model.Loads[wrong].Name)} under {sheet.Fault.Fault.Words}, inputs {inputs}, position {position}"));
            }
        }
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
