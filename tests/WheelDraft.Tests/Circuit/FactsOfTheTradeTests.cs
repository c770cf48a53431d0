using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Facts of the trade as check values: common practice, no source.</summary>
public sealed class FactsOfTheTradeTests
{
    [Fact]
    public void Analysis_ThermostatThatShortsTheDosingValve_KeepsItOffWhileStuckClosed()
    {
        // Common practice, no source: heater in series with the dosing valve, thermostat across the valve.
        CircuitBuilder circuit = new CircuitBuilder()
            .Ring("hold", "run", 0, (3, 360)).Motor("run", "N").Input("start", "L", "run")
            .Ring("dose", (100, 110)).Ohms("heater", "dose", "mid", 50).Ohms("dosing valve", "mid", "N", 450)
            .Input("thermostat", "mid", "N")
            .Interlock(new InterlockBrief("no dose while the thermostat is closed", InterlockClaim.NeverOn, ["dosing valve"]) { WhileClosed = ["thermostat"], Faults = FaultDepth.None });
        CircuitAnalysis analysis = circuit.Analyse();

        Assert.Equal(InterlockVerdict.Holds, analysis.Interlocks[0].Verdict);
        FaultEffect stuck = analysis.Faults.Single(f => f.Fault == new CircuitFault(CircuitFaultKind.InputStuckClosed, "thermostat"));
        Assert.Contains(new LoadEffect("dosing valve", LoadChange.OffWhenOn | LoadChange.NeverOn), stuck.Effects);
        Assert.Empty(stuck.BreaksInterlocks);
        Assert.Equal(["no dose while the thermostat is closed"], stuck.CaughtBy);
        Assert.True(stuck.IsNoticed);
    }

    [Fact]
    public void Analysis_MotorHoldingItselfThroughItsRing_ParksAtTheBreak()
    {
        // Common practice, no source: a start switch carries the motor until its own ring takes over; the ring's break stops it.
        CircuitAnalysis analysis = new CircuitBuilder { CoastLeastDeg = 0, CoastMostDeg = 0.5 }
            .Ring("hold", "run", 0, (3, 360)).Motor("run", "N").Input("thermostat", "L", "run").Analyse();

        ParkedPosition park = Assert.Single(analysis.Parks);
        Assert.Equal(0, park.FromRad, 1e-12);
        Assert.Equal(0.5, Angles.DegFromRad(park.ToRad), 1e-12);
        Assert.Equal("hold", park.Output);
        Assert.Empty(analysis.StalledIntervals);
        Assert.All(analysis.Intervals, i => Assert.True(i.IsReachable));

        // It can be left standing before its ring takes over, with nothing on: a note, for the person to judge.
        Assert.Equal(CycleVerdict.No, analysis.Cycle);
        Assert.Equal(["home", "thermostat closes", "thermostat opens: the wheel stands between 0° and 3.5°, until thermostat closes"], analysis.CycleHistory);
        Finding note = Assert.Single(analysis.Findings);
        Assert.Equal((FindingSeverity.Note, "circuit.cycle"), (note.Severity, note.Code));
    }

    [Fact]
    public void Analysis_ThermostatAloneOnTheMotor_DoesNotAlwaysCompleteTheCycle()
    {
        // Common practice, no source: without a holding ring the wheel stops wherever the thermostat opens.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("dose", (10, 20)).Motor("run", "N").Input("thermostat", "L", "run").Analyse();
        Assert.False(analysis.CycleCompletes);
        Assert.Empty(analysis.Parks);
    }

    [Fact]
    public void Analysis_GapBetweenTwoHoldingRings_IsAStall()
    {
        // Common practice, no source: two rings that hold the motor in turn must overlap; a gap of 2° without coast stops it for good.
        CircuitBuilder Holding(double coastDeg) => new CircuitBuilder { CoastLeastDeg = coastDeg, CoastMostDeg = coastDeg }
            .Ring("first", "run", 0, (0, 100)).Ring("second", "run", 0, (102, 355)).Motor("run", "N");

        CircuitAnalysis stalls = Holding(0).Analyse();
        Assert.Equal(100, Angles.DegFromRad(stalls.Parks[0].FromRad), 1e-9);
        Assert.Contains(stalls.Findings, f => f.Code is "circuit.stall");
        Assert.False(stalls.CycleCompletes);

        // With three degrees of coast the wheel is carried over the gap, but not over the five degrees before home.
        CircuitAnalysis carried = Holding(3).Analyse();
        ParkedPosition park = Assert.Single(carried.Parks);
        Assert.Equal(358, Angles.DegFromRad(park.FromRad), 1e-9);
    }

    [Fact]
    public void Analysis_EdgesWithinTolerance_AreFollowedWithGapAndWithOverlap()
    {
        // Common practice, no source: rings that hand over at one angle do so with a gap or with an overlap, nobody knows which.
        CircuitAnalysis handOver = new CircuitBuilder().Ring("first", "run", 0.2, (0, 100)).Ring("second", "run", 0.2, (100, 300)).Motor("run", "N").Analyse();
        Assert.Contains(handOver.Findings, f => f.Code is "circuit.stall" && f.Message.Contains("99.8 s", StringComparison.Ordinal));

        CircuitAnalysis exact = new CircuitBuilder().Ring("first", (10, 100)).Ring("second", (100, 300))
            .Ohms("a", "first", "m", 100).Ohms("b", "second", "m", 100).Ohms("c", "m", "N", 50)
            .Interlock(new InterlockBrief("never both", InterlockClaim.NeverOn, ["a", "b"]) { WhileClosed = ["first", "second"] }).Analyse();
        // Both closed: 100 ‖ 100 in front of 50 ohm: half the supply on a and b, which is neither on nor off.
        Assert.Equal(InterlockVerdict.Undecided, exact.Interlocks[0].Verdict);
        Assert.Equal(["home", "at 10.0 s first ring makes", "at 100.0 s second ring makes: a undecided, b undecided"], exact.Interlocks[0].History);
    }
}
