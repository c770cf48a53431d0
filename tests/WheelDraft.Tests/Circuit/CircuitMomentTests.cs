using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>What stands how at an instant. Oracles: the tableau for voltages, the schedule itself for contacts.</summary>
public sealed class CircuitMomentTests
{
    private const double ToleranceV = 1e-6;

    [Fact]
    public void At_RandomCircuitAndAngle_EqualsTheTableau() =>
        Gen.Select(ReachabilityTests.Circuits, Gen.Double[0, 360], Gen.Int[0, 3]).Sample(
            (circuit, deg, mask) =>
            {
                CircuitAnalysis analysis = circuit.Analyse();
                int inputs = mask & ((1 << circuit.Inputs.Count) - 1);
                double at = Angles.RadFromDeg(deg);
                CircuitMoment moment = analysis.At(at, inputs);
                Assert.Equal(circuit.Contacts.Select(c => c.Periods.Any(p => p.Closed.Contains(at))), moment.Contacts);
                Assert.Equal(circuit.Inputs.Select((_, i) => (inputs >> i & 1) != 0), moment.Inputs);
                IReadOnlyDictionary<string, double?> nets = TableauSolver.NetVolts(circuit, at, inputs);
                CircuitNetwork network = analysis.Network;
                for (int n = 0; n < network.Nets.Count; n++)
                {
                    string net = n == network.WheelNode ? "(copper)" : network.Nets[n];
                    if (nets.TryGetValue(net, out double? volts))
                    {
                        Assert.Equal(volts is null, moment.NodesV[n] is null);
                        Assert.Equal(volts ?? 0, moment.NodesV[n] ?? 0, ToleranceV);
                    }
                }
            },
            iter: 400,
            threads: 1);

    [Fact]
    public void At_MakeAndBreakInSeconds_IsMadeFromItsMakeAndNotAtItsBreak()
    {
        // A make is part of its on-period, a break is not: asked for by the very number of seconds in the file.
        CircuitAnalysis analysis = new CircuitBuilder { TurnTimeS = 180 }.Ring("a", (30, 100)).Ohms("lamp", "a", "N", 100).Analyse();
        Assert.True(analysis.At(15.0 / 180 * Angles.TurnRad).Contacts[0]);
        Assert.False(analysis.At(14.999 / 180 * Angles.TurnRad).Contacts[0]);
        Assert.False(analysis.At(50.0 / 180 * Angles.TurnRad).Contacts[0]);
        Assert.True(analysis.At(49.999 / 180 * Angles.TurnRad).Contacts[0]);
    }

    [Fact]
    public void At_PeriodThroughHome_IsMadeAtHomeAndAWholeTurnLater()
    {
        CircuitAnalysis analysis = new CircuitBuilder().Ring("a", (350, 10)).Ohms("lamp", "a", "N", 100).Analyse();
        Assert.True(analysis.At(0).Contacts[0]);
        Assert.True(analysis.At(Angles.TurnRad).Contacts[0]);
        Assert.False(analysis.At(Angles.RadFromDeg(10)).Contacts[0]);
    }

    [Fact]
    public void NetAt_LineNeutralAndLooseEnd_AreToldApart()
    {
        // Worked here: the contact is open, so its strip hangs on neutral through the lamp; the net behind the open input hangs on nothing.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("a", (10, 20)).Ohms("lamp", "a", "N", 100).Ohms("bell", "b", "c", 100).Input("lid", "c", "N").Analyse();
        CircuitNetwork network = analysis.Network;
        CircuitMoment open = analysis.At(0);
        Assert.Equal(NetState.Live, open.NetAt(network.NodeOf("L"), network.SupplyV));
        Assert.Equal(NetState.AtZero, open.NetAt(network.NodeOf("a"), network.SupplyV));
        Assert.Equal(NetState.Unjoined, open.NetAt(network.NodeOf("b"), network.SupplyV));
        Assert.Equal(NetState.Live, analysis.At(Angles.RadFromDeg(15)).NetAt(network.NodeOf("a"), network.SupplyV));
        Assert.Equal(NetState.AtZero, analysis.At(0, inputs: 1).NetAt(network.NodeOf("b"), network.SupplyV));
    }

    [Fact]
    public void At_Short_EveryNetIsWithoutVoltage()
    {
        CircuitMoment moment = new CircuitBuilder().Ring("a", (10, 20)).Input("slip", "a", "N").Ohms("lamp", "a", "N", 100).Analyse().At(Angles.RadFromDeg(15), inputs: 1);
        Assert.True(moment.State.IsShort);
        Assert.All(moment.NodesV, Assert.Null);
    }

    [Fact]
    public void State_InputsHeldAsTheyAre_TellsTheSecondsToHomeWhereTheMotorRunsOn()
    {
        // A degree is a second. The hold ring feeds the motor up to 200° and from 210° to home; between them only the thermostat does.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("hold", "run", 0, (0, 200), (210, 360)).Ring("dose", (100, 110)).Watts("valve", "dose", "N", 7)
            .Motor("run", "N").Input("thermostat", "L", "run").Analyse();
        double? ToHome(double deg, int inputs) => analysis.At(Angles.RadFromDeg(deg), inputs).State.SecondsToHome is double s ? Math.Round(s, 9) : null;
        Assert.Equal([null, null, null, 150.0], new double[] { 105, 150, 205, 300 }.Select(deg => ToHome(deg, 0)));
        Assert.Equal([260.0, 250.0, 160.0, 150.0], new double[] { 105, 150, 205, 300 }.Select(deg => ToHome(deg, 1)));
    }

    [Fact]
    public void At_InputThatIsNotThere_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new CircuitBuilder().Always("a").Ohms("lamp", "a", "N", 100).Analyse().At(0, inputs: 1));
}
