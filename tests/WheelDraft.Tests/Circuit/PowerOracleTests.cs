using System.Globalization;
using CsCheck;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Voltages and contact currents of random circuits, one line and three, against the sparse tableau of <see cref="TableauSolver"/>.</summary>
public sealed class PowerOracleTests(ITestOutputHelper output)
{
    /// <summary>Name of the environment variable that sets how many circuits are drawn; run once with 300: 2,658 states and 775 wipers agreed.</summary>
    private const string Circuits = "WHEELDRAFT_POWER_CIRCUITS";

    private static readonly string[] OneLine = ["L1", "N", "E", "a", "b", "c", "d"];
    private static readonly string[] ThreeLines = ["L1", "L2", "L3", "N", "E", "a", "b", "c", "d"];

    private static readonly Gen<CircuitBuilder> Drawn =
        from isThree in Gen.Bool
        from isLands in Gen.Bool
        from edges in Gen.Shuffle(Enumerable.Range(1, 35).Select(i => i * 10).ToArray(), 6)
        from rings in Gen.Select(Gen.Int[0, 8], Gen.Int[0, 8]).Array[1, 3]
        from loads in Gen.Select(Gen.Int[0, 8], Gen.Int[0, 8], Gen.Int[1, 6], Gen.Int[-1, 2]).Array[1, 6]
        from inputs in Gen.Select(Gen.Int[3, 8], Gen.Int[0, 8]).Array[0, 2]
        from hasMotor in Gen.Bool
        select Build(isThree, isLands, edges, rings, loads, inputs, hasMotor);

    [Fact]
    public void Analysis_RandomCircuitOfOneOrThreeLines_EqualsTheTableau()
    {
        int circuits = int.TryParse(Environment.GetEnvironmentVariable(Circuits), CultureInfo.InvariantCulture, out int asked) ? asked : 100;
        (int states, int compared, int shared, int shorts) = (0, 0, 0, 0);
        Drawn.Sample(circuit =>
        {
            CircuitAnalysis analysis = circuit.Analyse();
            ReachOracle reach = new(circuit);
            Dictionary<string, (double Carried, double Broken)> most = new(StringComparer.Ordinal);
            foreach (CircuitState state in analysis.States)
            {
                double angle = reach.MiddleRad(state.Interval);
                double[]? volts = TableauSolver.LoadVolts(circuit, angle, state.Inputs, ReachOracle.NoFault);
                Assert.Equal(volts is null, state.IsShort);
                states++;
                shorts += state.IsShort ? 1 : 0;
                if (volts is null)
                {
                    continue;
                }

                for (int l = 0; l < volts.Length; l++)
                {
                    Assert.Equal(volts[l], state.VoltsV[l], 1e-6);
                }

                if (state.IsReachable)
                {
                    AddCurrents(most, circuit, reach, state);
                }
            }

            for (int c = 0; c < circuit.Contacts.Count; c++)
            {
                Compare(most.GetValueOrDefault(circuit.Contacts[c].Output), analysis.Currents.Contacts[c]);
            }

            if (analysis.Currents.Feed is { } feed)
            {
                Compare(most.GetValueOrDefault("(feed)"), feed);
            }
        }, iter: circuits, threads: 1);
        output.WriteLine(FormattableString.Invariant($"{circuits} circuits, {states} states, {shorts} of them shorted; {compared} wipers' currents equal, {shared} bounded."));
        Assert.True(compared > circuits && shared > 0 && shorts > 0);

        void Compare((double Carried, double Broken) oracle, ContactCurrent found)
        {
            // Whatever way currents divide, never less than the tableau's; where nothing lies side by side exactly that.
            Assert.True(found.CarriedA >= oracle.Carried - 1e-7, $"carries {found.CarriedA}, the tableau {oracle.Carried}");
            Assert.True(found.BrokenA >= oracle.Broken - 1e-7, $"breaks {found.BrokenA}, the tableau {oracle.Broken}");
            if (found.IsShared)
            {
                shared++;
                return;
            }

            compared++;
            Assert.Equal(oracle.Carried, found.CarriedA, 1e-7);
        }
    }

    private static void AddCurrents(Dictionary<string, (double Carried, double Broken)> most, CircuitBuilder circuit, ReachOracle reach, CircuitState state)
    {
        IReadOnlyDictionary<string, double> amperes = TableauSolver.ContactAmperes(circuit, reach.MiddleRad(state.Interval), state.Inputs)!;
        double next = reach.MiddleRad((state.Interval + 1) % reach.Intervals);
        foreach ((string name, double ampere) in amperes)
        {
            ContactSchedule? contact = circuit.Contacts.FirstOrDefault(c => string.Equals(c.Output, name, StringComparison.Ordinal));
            bool breaks = contact is not null && state.Motor is not LoadState.Off
                && contact.Periods.Any(p => p.Closed.Contains(reach.MiddleRad(state.Interval))) && !contact.Periods.Any(p => p.Closed.Contains(next));
            (double carried, double broken) = most.GetValueOrDefault(name);
            most[name] = (Math.Max(carried, ampere), breaks ? Math.Max(broken, ampere) : broken);
        }
    }

    private static CircuitBuilder Build(
        bool isThree, bool isLands, int[] edges, (int Net, int Return)[] rings, (int From, int To, int Size, int Coil)[] loads, (int From, int To)[] inputs, bool hasMotor)
    {
        string[] nets = isThree ? ThreeLines : OneLine;
        string Net(int n) => nets[n % nets.Length];
        CircuitBuilder circuit = new() { Lines = isThree ? ["L1", "L2", "L3"] : ["L1"], FeedNet = "L1", IsLands = isLands };
        for (int r = 0; r < rings.Length; r++)
        {
            string name = $"ring{(char)('a' + r)}";
            (double, double) on = (edges[2 * r], edges[(2 * r) + 1]);
            _ = isLands ? circuit.Land(name, Net(rings[r].Net), Net(rings[r].Return), on) : circuit.Ring(name, Net(rings[r].Net), 0, on);
        }

        for (int l = 0; l < loads.Length; l++)
        {
            circuit.Load($"load{(char)('a' + l)}", Net(loads[l].From), Net(loads[l].To), new RatedImpedance(40 * loads[l].Size, 35 * loads[l].Coil)).RateAt(230);
        }

        for (int i = 0; i < inputs.Length; i++)
        {
            circuit.Input($"input{(char)('a' + i)}", Net(inputs[i].From), Net(inputs[i].To));
        }

        return hasMotor ? circuit.Motor("L1", "N", 300) : circuit;
    }
}
