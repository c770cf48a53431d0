using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

public sealed class WorkingVoltageTests
{
    [Fact]
    public void WorkingVoltage_OpenContactWithLoad_IsTheSupply()
    {
        // Worked here: while open, the valve holds its net at neutral, across the contact stands the supply.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("mist", (10, 20)).Watts("valve", "mist", "N", 7).Analyse();
        Assert.Equal(230, analysis.WorkingVoltageV("L", "mist"), 1e-9);
        Assert.Equal(230, analysis.WorkingVoltageV("N", "mist"), 1e-9);
        Assert.Equal(230, analysis.WorkingVoltageV("E", "L"), 1e-9);
        Assert.Equal(0, analysis.WorkingVoltageV("E", "N"), 1e-9);
        Assert.Equal(0, analysis.WorkingVoltageV("mist", "mist"));
        Assert.Equal(230, analysis.WorkingVoltageV("mist", "some other net"));
    }

    [Fact]
    public void WorkingVoltage_DividerOfPairs_CountsSingleOpenLoads()
    {
        // Worked here: 60 ‖ 60 over 40 ‖ 40 ohm is 30 over 20: the middle is at 92 V. With one 60 ohm open 60 over 20: 57.5 V, so
        // 172.5 V to L. With one 40 ohm open 30 over 40: 230 · 4 / 7 = 131.43 V to N. Net f can be joined to the middle alone.
        CircuitAnalysis analysis = Divider().Analyse();
        Assert.Equal(230 * 4 / 7.0, analysis.WorkingVoltageV("mid", "N"), 1e-9);
        Assert.Equal(172.5, analysis.WorkingVoltageV("L", "mid"), 1e-9);
        Assert.Equal(230 * 4 / 7.0, analysis.WorkingVoltageV("f", "N"), 1e-9);
        Assert.Equal(172.5, analysis.WorkingVoltageV("f", "L"), 1e-9);
        Assert.Equal(0, analysis.WorkingVoltageV("f", "mid"), 1e-9);
        Assert.Contains(analysis.WorkingVoltages, v => v.First is "N" && v.Second is "mid" && v.Where.EndsWith("v1 winding open", StringComparison.Ordinal));
    }

    [Fact]
    public void WorkingVoltage_UnderFaultsOnRequest_CountsThemAll()
    {
        // Worked here: with one load shorted the middle is at L or at N.
        CircuitAnalysis analysis = Divider(underFaults: true).Analyse();
        Assert.Equal(230, analysis.WorkingVoltageV("mid", "N"), 1e-9);
        Assert.Equal(230, analysis.WorkingVoltageV("L", "mid"), 1e-9);
    }

    [Fact]
    public void WorkingVoltage_FloatingNet_TakesTheLargerOfWhatItCouldJoin()
    {
        // Worked here: f hangs between a ring and an input, both open at home: it may be at L as well as at N.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("f", (10, 20)).Input("drain", "f", "g").Watts("lamp", "g", "N", 10).Watts("lamp2", "g", "N", 10).Analyse();
        Assert.Equal(230, analysis.WorkingVoltageV("f", "L"), 1e-9);
        Assert.Equal(230, analysis.WorkingVoltageV("f", "N"), 1e-9);
        Assert.Equal(230, analysis.WorkingVoltageV("f", "g"), 1e-9);
    }

    [Fact]
    public void WorkingVoltage_Resonance_MayExceedTheSupply()
    {
        // Worked here: 50 ohm, j100 and −j100 in series: 4.6 A, 460 V over coil and capacitor.
        CircuitAnalysis analysis = new CircuitBuilder().Always("x").Ohms("lamp", "x", "a", 50).Ohms("coil", "a", "b", 0, 100).Ohms("capacitor", "b", "N", 0, -100).Analyse();
        Assert.Equal(460, analysis.WorkingVoltageV("a", "b"), 1e-7);
        Assert.Equal(460, analysis.WorkingVoltageV("b", "N"), 1e-7);
    }

    [Fact]
    public void WorkingVoltage_WithoutLoadsAndMotor_IsTheSupply()
    {
        CircuitAnalysis analysis = new CircuitBuilder().Ring("a", (10, 20)).Ring("b", (30, 40)).Analyse();
        Assert.All(analysis.WorkingVoltages, v => Assert.Equal(230, v.VoltageV));
        Assert.Equal(230, analysis.WorkingVoltageV("a", "b"));
    }

    [Fact]
    public void WorkingVoltage_UnreachableState_DoesNotCount()
    {
        // Worked here: the motor has no supply, so the wheel never leaves home and the ring at 10° never closes. The valve's net
        // stays at neutral; only as a floating net, its winding open, could it be joined to L.
        CircuitAnalysis still = new CircuitBuilder().Ring("a", (10, 20)).Watts("one", "a", "N", 7).Watts("two", "a", "N", 7).Motor("run", "N").Analyse();
        Assert.Equal(0, still.WorkingVoltageV("a", "N"), 1e-9);
        Assert.Contains(still.Findings, f => f.Code is "circuit.never-starts");
    }

    private static CircuitBuilder Divider(bool underFaults = false) => new CircuitBuilder { IsLands = true, VoltagesUnderFaults = underFaults }
        .Land("bypass", "f", "mid", (10, 20))
        .Ohms("h1", "L", "mid", 60).Ohms("h2", "L", "mid", 60).Ohms("v1", "mid", "N", 40).Ohms("v2", "mid", "N", 40);
}
