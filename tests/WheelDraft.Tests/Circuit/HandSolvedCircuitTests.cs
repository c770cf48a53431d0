using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>
/// Circuits whose voltages were worked by hand; each also goes through the tableau oracle at every state. "Worked here" means
/// the arithmetic stands in the test; the laws themselves (Ohm; series and parallel; voltage divider; delta and star) are in
/// any textbook, e.g. Hayt, Kemmerly, Durbin: Engineering Circuit Analysis, chapters 3 and 10, named from memory.
/// </summary>
public sealed class HandSolvedCircuitTests
{
    // Within 1e-9 of the supply: the arithmetic of both sides is double precision on a few nodes.
    private const double ToleranceV = 1e-7;

    [Fact]
    public void State_LoadStraightAcrossSupply_HasSupplyVoltage()
    {
        // Worked here: ring closed from 10° to 20°; 7 W across 230 V.
        CircuitBuilder circuit = new CircuitBuilder().Ring("mist", (10, 20)).Watts("valve", "mist", "N", 7);
        Expect(circuit, atDeg: 15, inputs: 0, [230]);
        Expect(circuit, atDeg: 25, inputs: 0, [0]);
    }

    [Fact]
    public void State_LoadFedThroughAnother_DividesTheVoltage()
    {
        // Worked here: 60 ohm heater feeds a 40 ohm valve while its own ring is open: 230 · 40 / 100 = 92 V and 138 V.
        CircuitBuilder circuit = new CircuitBuilder().Ring("mid", (100, 110)).Ohms("heater", "L", "mid", 60).Ohms("valve", "mid", "N", 40);
        Expect(circuit, atDeg: 50, inputs: 0, [138, 92]);
        // With the ring closed the heater is shorted out and the valve has all.
        Expect(circuit, atDeg: 105, inputs: 0, [0, 230]);
    }

    [Fact]
    public void State_ResistorAndCoilInSeries_AddAsPhasors()
    {
        // Worked here, the 3-4-5 triangle: 30 ohm and 40 ohm inductive in series are 50 ohm; 250 V gives 5 A, 150 V and 200 V.
        CircuitBuilder circuit = new CircuitBuilder { SupplyV = 250 }.Always("x").Ohms("lamp", "x", "m", 30).Ohms("coil", "m", "N", 0, 40);
        Expect(circuit, atDeg: 0, inputs: 0, [150, 200]);
    }

    [Fact]
    public void State_SeriesResonanceWithResistance_RaisesCoilAboveSupply()
    {
        // Worked here: j100 and −j100 cancel, 230 V over 50 ohm is 4.6 A: 460 V over the coil and over the capacitor.
        CircuitBuilder circuit = new CircuitBuilder().Always("x").Ohms("lamp", "x", "a", 50).Ohms("coil", "a", "b", 0, 100).Ohms("capacitor", "b", "N", 0, -100);
        Expect(circuit, atDeg: 0, inputs: 0, [230, 460, 460]);
    }

    [Fact]
    public void State_LaggingPowerAndACapacitor_CancelAsOppositeSigns()
    {
        // Worked here: 150 W at 250 V with power factor 0.6 lagging is 250 ohm, 150 + j200; −j200 in series leaves 150 ohm: 5/3 A, so
        // 1250/3 V over the load and 1000/3 V over the capacitor. Either sign the wrong way round would leave 150 − j400.
        CircuitBuilder circuit = new CircuitBuilder { SupplyV = 250 }.Always("x").Watts("valve", "x", "m", 150, 0.6).Ohms("capacitor", "m", "N", 0, -200);
        Expect(circuit, atDeg: 0, inputs: 0, [1250.0 / 3, 1000.0 / 3]);
    }

    [Fact]
    public void State_ThermostatAcrossValve_ShortsItOut()
    {
        // Worked here: heater and valve in series, an input across the valve: closed, the valve has nothing.
        CircuitBuilder circuit = new CircuitBuilder().Ring("dose", (10, 20)).Ohms("heater", "dose", "mid", 50).Ohms("valve", "mid", "N", 450).Input("thermostat", "mid", "N");
        Expect(circuit, atDeg: 15, inputs: 0, [23, 207]);
        Expect(circuit, atDeg: 15, inputs: 1, [230, 0]);
    }

    [Fact]
    public void State_TwoParallelBehindOne_DividesByTheParallelValue()
    {
        // Worked here: 60 ‖ 30 = 20 ohm behind 80: 230 · 20 / 100 = 46 V and 184 V.
        CircuitBuilder circuit = new CircuitBuilder().Always("x").Ohms("front", "x", "m", 80).Ohms("a", "m", "N", 60).Ohms("b", "m", "N", 30);
        Expect(circuit, atDeg: 0, inputs: 0, [184, 46, 46]);
    }

    [Fact]
    public void State_BalancedBridge_HasNothingAcrossItsMiddle()
    {
        // Wheatstone's bridge in balance (any textbook): 100 : 200 = 150 : 300, so the middle load sees 0 V whatever it is.
        CircuitBuilder circuit = new CircuitBuilder { SupplyV = 300 }.Always("x")
            .Ohms("r1", "x", "a", 100).Ohms("r2", "a", "N", 200).Ohms("r3", "x", "b", 150).Ohms("r4", "b", "N", 300).Ohms("middle", "a", "b", 75);
        Expect(circuit, atDeg: 0, inputs: 0, [100, 200, 100, 200, 0]);
    }

    [Fact]
    public void State_UnbalancedBridge_SolvesByDeltaToStar()
    {
        // Worked here by delta to star: delta x-a 10, x-b 20, a-b 30 ohm gives star arms 10·20/60 = 10/3 at x, 10·30/60 = 5 at a,
        // 20·30/60 = 10 at b; legs 5 + 15 = 20 and 10 + 10 = 20 in parallel are 10; total 40/3; 120 V gives 9 A, 4.5 A a leg.
        // So a is at 4.5 · 15 = 67.5 V, b at 4.5 · 10 = 45 V.
        CircuitBuilder circuit = new CircuitBuilder { SupplyV = 120 }.Always("x")
            .Ohms("r1", "x", "a", 10).Ohms("r3", "x", "b", 20).Ohms("middle", "a", "b", 30).Ohms("r2", "a", "N", 15).Ohms("r4", "b", "N", 10);
        Expect(circuit, atDeg: 0, inputs: 0, [52.5, 75, 22.5, 67.5, 45]);
    }

    [Fact]
    public void State_FloatingNet_LeavesItsLoadsOff()
    {
        // Worked here: both ends of the lamp hang on open contacts; nothing flows.
        CircuitBuilder circuit = new CircuitBuilder().Ring("a", (10, 20)).Input("switch", "b", "N").Ohms("lamp", "a", "b", 100);
        Expect(circuit, atDeg: 50, inputs: 0, [0]);
        Expect(circuit, atDeg: 15, inputs: 0, [0]);
        Expect(circuit, atDeg: 50, inputs: 1, [0]);
        Expect(circuit, atDeg: 15, inputs: 1, [230]);
    }

    [Fact]
    public void State_OpenWheelFeed_LetsLoadsFeedEachOtherThroughTheCopper()
    {
        // Worked here: the wheel's feed hangs on an open input; two closed rings join their loads through the copper; one load is
        // fed from L by a second input: 100 ohm from L to the copper, 100 and 50 ohm on to N are 33.3: 230 · 33.3 / 133.3 = 57.5 V.
        CircuitBuilder circuit = new CircuitBuilder { FeedNet = "run" }.Input("mains", "L", "run").Input("pilot", "L", "p")
            .Ring("a", (0, 180)).Ring("b", (0, 180)).Ohms("lamp", "p", "a", 100).Ohms("valve", "b", "N", 100).Ohms("fan", "a", "N", 50);
        Expect(circuit, atDeg: 90, inputs: 2, [172.5, 57.5, 57.5]);
        Expect(circuit, atDeg: 90, inputs: 1, [0, 230, 230]);
        Expect(circuit, atDeg: 270, inputs: 2, [230 * 100 / 150.0, 0, 230 * 50 / 150.0]);
    }

    [Fact]
    public void State_RatedByPowerAndFactor_MatchesTheImpedanceTriangle()
    {
        // Worked here: 230 W at power factor 0.8 is 1.25 A and 184 ohm, so 147.2 + j110.4 ohm; in series with 36.8 ohm it is
        // 184 + j110.4 = 214.5790 ohm: 1.071866 A, 197.2234 V over the motor load and 39.4447 V over the resistor.
        CircuitBuilder circuit = new CircuitBuilder().Always("x").Ohms("r", "x", "m", 36.8).Watts("fan", "m", "N", 230, 0.8);
        double amps = 230 / Math.Sqrt((184 * 184) + (110.4 * 110.4));
        Expect(circuit, atDeg: 0, inputs: 0, [36.8 * amps, 184 * amps]);
        Assert.Equal(197.2234, 184 * amps, 1e-3);
    }

    [Fact]
    public void State_RatedByCurrent_MatchesOhm()
    {
        // Worked here: 2.3 A at 230 V is 100 ohm; with 130 ohm in series it has 100 V.
        CircuitBuilder circuit = new CircuitBuilder().Always("x").Ohms("r", "x", "m", 130).Load("pump", "m", "N", new RatedCurrent(2.3, 1));
        Expect(circuit, atDeg: 0, inputs: 0, [130, 100]);
    }

    [Fact]
    public void State_SelfHoldingMotor_RunsFromItsOwnRing()
    {
        // Worked here: the motor has 230 V through the thermostat at home, and through its ring from 3° on.
        CircuitBuilder circuit = new CircuitBuilder().Ring("hold", "run", 0, (3, 360)).Input("thermostat", "L", "run").Motor("run", "N");
        Expect(circuit, atDeg: 1, inputs: 0, [0]);
        Expect(circuit, atDeg: 1, inputs: 1, [230]);
        Expect(circuit, atDeg: 100, inputs: 0, [230]);
    }

    [Fact]
    public void State_LandsBetweenTwoNets_JoinThemOnlyOverTheirArc()
    {
        // Worked here: a land joins "warm" to "mid" from 90° to 120°, across the first of two 115 ohm loads.
        CircuitBuilder circuit = new CircuitBuilder { IsLands = true }.Land("bypass", "mid", "warm", (90, 120)).Input("mains", "L", "warm")
            .Ohms("first", "warm", "mid", 115).Ohms("second", "mid", "N", 115);
        Expect(circuit, atDeg: 10, inputs: 1, [115, 115]);
        Expect(circuit, atDeg: 100, inputs: 1, [0, 230]);
        Expect(circuit, atDeg: 100, inputs: 0, [0, 0]);
    }

    [Fact]
    public void State_ThresholdsMetExactly_AreOnAndOff()
    {
        // Worked here: two equal loads have exactly half the supply; pull-in 50 % is on, drop-out 50 % is off, 40 to 60 % neither.
        CircuitBuilder circuit = new CircuitBuilder().Always("x")
            .Load("a", "x", "m", new RatedImpedance(30, 0), pullIn: 0.5, dropOut: 0.2)
            .Load("b", "m", "m2", new RatedImpedance(15, 0), pullIn: 0.8, dropOut: 0.25)
            .Load("c", "m2", "N", new RatedImpedance(15, 0), pullIn: 0.6, dropOut: 0.2);
        Assert.Equal([LoadState.On, LoadState.Off, LoadState.Undecided], circuit.Analyse().State(0, 0).Loads);
    }

    [Fact]
    public void State_ResonanceWithoutResistance_IsUndecidedAndSaid()
    {
        // Worked here: coil and capacitor of equal reactance straight across the supply: current without bound.
        CircuitAnalysis analysis = new CircuitBuilder().Always("x").Ohms("coil", "x", "m", 0, 100).Ohms("capacitor", "m", "N", 0, -100).Analyse();
        Assert.Equal([LoadState.Undecided, LoadState.Undecided], analysis.State(0, 0).Loads);
        Assert.True(double.IsNaN(analysis.State(0, 0).VoltsV[0]));
        Assert.Contains(analysis.Findings, f => f.Code is "circuit.resonance");
    }

    private static void Expect(CircuitBuilder circuit, double atDeg, int inputs, double[] volts)
    {
        CircuitAnalysis analysis = circuit.Analyse();
        double at = Angles.RadFromDeg(atDeg);
        int interval = analysis.Intervals.ToList().FindIndex(i => CircleArc.Sweep(i.FromRad, i.LengthRad).Contains(at));
        AssertVolts(volts, analysis.State(interval, inputs).VoltsV);
        foreach (CircuitState state in analysis.States)
        {
            CircuitInterval here = analysis.Intervals[state.Interval];
            AssertVolts(TableauSolver.LoadVolts(circuit, here.FromRad + (here.LengthRad / 2), state.Inputs), state.VoltsV);
        }
    }

    private static void AssertVolts(double[] expected, IReadOnlyList<double> found)
    {
        Assert.Equal(expected.Length, found.Count);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], found[i], ToleranceV);
        }
    }
}
