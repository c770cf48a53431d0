using CsCheck;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Random small circuits against the brute-force oracle (<see cref="ReachOracle"/>) and the tableau.</summary>
public sealed class ReachabilityTests
{
    private static readonly string[] Nets = ["L", "N", "a", "b", "c"];

    // Edges lie at whole tens of degrees; none of these adds up to a place on one.
    private static readonly (double Least, double Most)[] CoastsDeg = [(0, 0), (0, 0.5), (2.5, 4.5), (0, 13.5), (11.5, 14.5), (0.5, 0.5)];

    /// <summary>Random circuits of up to three contacts, four loads and two inputs, without coast and backlash.</summary>
    internal static readonly Gen<CircuitBuilder> Circuits = Draws.Select(d => Build(d, withCoast: false));

    /// <summary>The same with coast and backlash.</summary>
    internal static readonly Gen<CircuitBuilder> CoastingCircuits = Draws.Select(d => Build(d, withCoast: true));

    private static Gen<Draw> Draws =>
        from isLands in Gen.Int[0, 4]
        from feed in Gen.Int[0, 3]
        from edges in Gen.Shuffle(Enumerable.Range(1, 35).Select(i => i * 10).ToArray(), 6)
        from rings in Gen.Int[1, 3]
        from ringNets in Gen.Int[1, 4].Array[3]
        from returns in Gen.Int[0, 4].Array[3]
        from loads in Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4], Gen.Int[0, 2], Gen.Bool).Array[1, 4]
        from inputs in Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4]).Array[0, 2]
        from motor in Gen.Int[0, 5]
        from bridge in Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4])
        from claim in Gen.Select(Gen.Int[0, 2], Gen.Int[0, 3].Array[2], Gen.Int[0, 3].Array[2], Gen.Int[0, 3].Array[2])
        from coast in Gen.Int[0, CoastsDeg.Length - 1]
        from backlash in Gen.Int[0, 2]
        select new Draw(isLands == 0, feed, edges, rings, ringNets, returns, loads, inputs, motor, bridge, claim, coast, backlash / 2.0);

    [Fact]
    public void Analysis_RandomCircuit_EqualsBruteForce()
    {
        Circuits.Sample(
            circuit =>
            {
                CircuitAnalysis analysis = circuit.Analyse();
                ReachOracle oracle = new(circuit);
                Assert.Equal(oracle.Intervals, analysis.Intervals.Count);
                HashSet<int> reached = oracle.Reached(ReachOracle.NoFault, possible: true);
                for (int i = 0; i < analysis.Intervals.Count; i++)
                {
                    Assert.Equal(reached.Contains(i), analysis.Intervals[i].IsReachable);
                }

                foreach (CircuitState state in analysis.States)
                {
                    Assert.Equal(oracle.Loads(ReachOracle.NoFault, state.Interval, state.Inputs), state.Loads);
                }

                CompareInterlocks(circuit, analysis, oracle);
            },
            iter: Math.Max(150, StandingTests.Cases),
            threads: 1);
    }

    private static void CompareInterlocks(CircuitBuilder circuit, CircuitAnalysis analysis, ReachOracle oracle)
    {
        InterlockBrief interlock = circuit.Request().Brief.Interlocks[0];
        InterlockVerdict worst = oracle.Verdict(interlock, ReachOracle.NoFault);
        foreach (FaultEffect effect in analysis.Faults)
        {
            InterlockVerdict verdict = oracle.Verdict(interlock, effect.Fault);
            Assert.True((verdict == InterlockVerdict.Fails) == (effect.BreaksInterlocks.Count > 0), $"{effect.Fault.Words}: oracle {verdict}");
            worst = verdict == InterlockVerdict.Fails || worst == InterlockVerdict.Holds ? verdict : worst;
        }

        Assert.Equal(worst, analysis.Interlocks[0].Verdict);
        Assert.Equal(worst == InterlockVerdict.Holds, analysis.Interlocks[0].History.Count == 0);
    }

    private static CircuitBuilder Build(Draw draw, bool withCoast)
    {
        CircuitBuilder circuit = new()
        {
            IsLands = draw.IsLands,
            FeedNet = draw.Feed == 0 ? "a" : "L",
            CoastLeastDeg = withCoast ? CoastsDeg[draw.Coast].Least : 0,
            CoastMostDeg = withCoast ? CoastsDeg[draw.Coast].Most : 0,
            BacklashDeg = withCoast ? draw.BacklashDeg : 0,
        };
        for (int r = 0; r < draw.Rings; r++)
        {
            string name = $"ring{(char)('a' + r)}";
            (double, double) on = (draw.Edges[2 * r], draw.Edges[(2 * r) + 1]);
            _ = draw.IsLands
                ? circuit.Land(name, Nets[draw.RingNets[r]], Nets[draw.Returns[r]], on)
                : circuit.Ring(name, Nets[draw.RingNets[r]], 0, on);
        }

        for (int l = 0; l < draw.Loads.Length; l++)
        {
            (int from, int to, int size, bool coil) = draw.Loads[l];
            circuit.Ohms($"load{(char)('a' + l)}", Nets[from], Nets[to], 50 * (1 + (size * 4)), coil ? 60 : 0);
        }

        for (int i = 0; i < draw.Inputs.Length; i++)
        {
            circuit.Input($"input{(char)('a' + i)}", Nets[draw.Inputs[i].From], Nets[draw.Inputs[i].To]);
        }

        if (draw.Motor > 0)
        {
            circuit.Motor(Nets[draw.Motor - 1], "N", 300);
        }

        return circuit.Bridge(Nets[draw.Bridge.A], Nets[draw.Bridge.B]).Interlock(Claim(circuit, draw));
    }

    private static InterlockBrief Claim(CircuitBuilder circuit, Draw draw)
    {
        (int claim, int[] loads, int[] conditions, int[] kinds) = draw.Claim;
        string[] inputs = [.. circuit.Inputs.Select(i => i.Name)];
        string[] contacts = [.. inputs, .. circuit.Contacts.Select(c => c.Output)];
        string[] Named(int kind) => [.. Enumerable.Range(0, 2)
            .Where(c => kinds[c] == kind && conditions[c] < (kind < 2 ? contacts : inputs).Length)
            .Select(c => contacts[conditions[c]])];
        string[] names = [.. loads.Select(l => circuit.Loads[l % circuit.Loads.Count].Name).Distinct(StringComparer.Ordinal)];
        return new InterlockBrief("claim", (InterlockClaim)claim, names)
        {
            WhileClosed = Named(0),
            WhileOpen = Named(1),
            WhileTrue = Named(2),
            WhileFalse = Named(3),
            Faults = FaultDepth.Single,
        };
    }

    private sealed record Draw(
        bool IsLands,
        int Feed,
        int[] Edges,
        int Rings,
        int[] RingNets,
        int[] Returns,
        (int From, int To, int Size, bool Coil)[] Loads,
        (int From, int To)[] Inputs,
        int Motor,
        (int A, int B) Bridge,
        (int Claim, int[] Loads, int[] Conditions, int[] Kinds) Claim,
        int Coast,
        double BacklashDeg);
}
