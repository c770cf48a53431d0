using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

public sealed class InterlockTests
{
    [Fact]
    public void History_SeriesValveShorted_TellsTheShortestWay()
    {
        // The valve limits the heater behind it; with its winding shorted the heater has full voltage while the dose ring is made.
        CircuitAnalysis analysis = Timer()
            .Ring("dose", (150, 155)).Ohms("valve", "dose", "mid", 450).Ohms("heater", "mid", "N", 50)
            .Interlock(new InterlockBrief("heater stays cold", InterlockClaim.NeverOn, ["heater"]) { Faults = FaultDepth.Single }).Analyse();
        InterlockResult result = Assert.Single(analysis.Interlocks);
        Assert.Equal(InterlockVerdict.Fails, result.Verdict);
        Assert.Equal("home; thermostat closes; at 150.0 s dose ring makes; valve winding shorted: heater on", string.Join("; ", result.History));
        Assert.Equal(new CircuitFault(CircuitFaultKind.LoadShorted, "valve"), result.Fault);
        Assert.Contains(analysis.Findings, f => f.Severity == FindingSeverity.Error && f.Code is "circuit.interlock-fails");
    }

    [Fact]
    public void NeverOn_WithoutFaults_HoldsAndFailsAsTheInputsSay()
    {
        CircuitBuilder circuit = Timer().Ring("mist", (100, 110)).Watts("mist valve", "mist", "lidded", 7).Input("lid", "lidded", "N")
            .Interlock(new InterlockBrief("no mist while the lid is open", InterlockClaim.NeverOn, ["mist valve"]) { WhileOpen = ["lid"] })
            .Interlock(new InterlockBrief("no mist", InterlockClaim.NeverOn, ["mist valve"]))
            .Interlock(new InterlockBrief("no mist early", InterlockClaim.NeverOn, ["mist valve"]) { Between = CircuitBuilder.Arc(0, 100) })
            .Interlock(new InterlockBrief("mist in its window", InterlockClaim.AlwaysOn, ["mist valve"]) { WhileClosed = ["lid"], Between = CircuitBuilder.Arc(100, 110) })
            .Interlock(new InterlockBrief("no mist while the lid is open, whatever fails", InterlockClaim.NeverOn, ["mist valve"]) { WhileOpen = ["lid"], Faults = FaultDepth.Single });
        CircuitAnalysis analysis = circuit.Analyse();
        Assert.Equal(
            [InterlockVerdict.Holds, InterlockVerdict.Fails, InterlockVerdict.Holds, InterlockVerdict.Holds, InterlockVerdict.Fails],
            analysis.Interlocks.Select(i => i.Verdict));
        // The lid breaks the neutral side: one earth fault behind the valve by-passes it.
        Assert.Equal(new CircuitFault(CircuitFaultKind.NetEarthed, "lidded"), analysis.Interlocks[4].Fault);
        Assert.Equal("net lidded joined to E: mist valve on", analysis.Interlocks[4].History[^1]);
        Assert.Equal([new CircuitFault(CircuitFaultKind.NetEarthed, "lidded")], analysis.Interlocks[4].FaultsThatBreakIt);
    }

    [Fact]
    public void NeverOn_BetweenAnglesWithTolerance_CountsTheBand()
    {
        CircuitAnalysis analysis = Timer().Ring("mist", "mist", 0.2, (100, 110)).Watts("valve", "mist", "N", 7)
            .Interlock(new InterlockBrief("off by 110", InterlockClaim.NeverOn, ["valve"]) { Between = CircuitBuilder.Arc(110, 350) })
            .Interlock(new InterlockBrief("off by 110.3", InterlockClaim.NeverOn, ["valve"]) { Between = CircuitBuilder.Arc(110.3, 350) }).Analyse();
        Assert.Equal([InterlockVerdict.Fails, InterlockVerdict.Holds], analysis.Interlocks.Select(i => i.Verdict));
    }

    [Fact]
    public void WhileClosed_WeldedContact_CountsAsClosed()
    {
        // While the fill ring is really closed the drain must be off; a welded fill ring is closed all the turn.
        CircuitAnalysis analysis = Timer().Ring("fill", (10, 20)).Ring("drain", (30, 40)).Watts("filler", "fill", "N", 7).Watts("pump", "drain", "N", 30)
            .Interlock(new InterlockBrief("no drain while filling", InterlockClaim.NeverOn, ["pump"]) { WhileClosed = ["fill"], Faults = FaultDepth.Single }).Analyse();
        InterlockResult result = analysis.Interlocks[0];
        Assert.Equal(InterlockVerdict.Fails, result.Verdict);
        Assert.Contains(new CircuitFault(CircuitFaultKind.ContactWelded, "fill"), result.FaultsThatBreakIt);
        Assert.Contains(new CircuitFault(CircuitFaultKind.ContactWelded, "drain"), result.FaultsThatBreakIt);
        Assert.DoesNotContain(new CircuitFault(CircuitFaultKind.MotorReversed), result.FaultsThatBreakIt);
    }

    [Fact]
    public void NeverOn_BridgedNets_AreFoundAmongTheFaults()
    {
        CircuitBuilder circuit = Timer().Ring("fill", (10, 20)).Ring("drain", (30, 40)).Watts("filler", "fill", "N", 7).Watts("pump", "drain", "N", 30)
            .Interlock(new InterlockBrief("never both", InterlockClaim.NeverOn, ["filler"]) { WhileClosed = ["drain"], WhileOpen = ["fill"], Faults = FaultDepth.Single });
        // L joined to the filler's net by E? No: only a bridge feeds the filler while the drain ring is closed and its own open.
        Assert.Equal(InterlockVerdict.Holds, circuit.Analyse().Interlocks[0].Verdict);
        InterlockResult bridged = circuit.Bridge("fill", "drain").Analyse().Interlocks[0];
        Assert.Equal(InterlockVerdict.Fails, bridged.Verdict);
        Assert.Equal("nets fill and drain bridged: filler on", bridged.History[^1]);
    }

    [Fact]
    public void Verdict_ReachedOnlyByAnUndecidedMotor_IsUndecided()
    {
        // The motor gets half the supply through an equal load: it may turn or not, so the lamp may come on.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("lamp", (100, 110)).Watts("lamp", "lamp", "N", 40)
            .Watts("choke", "L", "run", 3).Motor("run", "N", 3)
            .Interlock(new InterlockBrief("dark", InterlockClaim.NeverOn, ["lamp"])).Analyse();
        Assert.Equal(InterlockVerdict.Undecided, analysis.Interlocks[0].Verdict);
        Assert.Equal(["home", "motor undecided, the wheel turns", "at 100.0 s lamp ring makes: lamp on"], analysis.Interlocks[0].History);
    }

    [Fact]
    public void Analysis_InputAcrossTheSupply_IsAShortWithItsPath()
    {
        CircuitAnalysis analysis = Timer().Ring("dose", (50, 60)).Input("drain", "dose", "N").Watts("valve", "dose", "N", 7).Analyse();
        Finding found = Assert.Single(analysis.Findings, f => f.Code is "circuit.short");
        Assert.Equal(FindingSeverity.Error, found.Severity);
        Assert.Contains("by dose ring, drain, from 50.0 s", found.Message, StringComparison.Ordinal);
        CircuitState state = analysis.States.First(s => s.IsShort);
        Assert.All(state.Loads, l => Assert.Equal(LoadState.Off, l));
        Assert.All(state.VoltsV, v => Assert.True(double.IsNaN(v)));
    }

    [Fact]
    public void FaultTable_OpenFeed_LeavesOnlyWhatTheThermostatFeedsThroughTheCopper()
    {
        // Worked here: with the feed wiper off, the copper is fed only by the thermostat through the hold ring: valve and motor
        // are off in states in which they were on, but not in all of them.
        CircuitAnalysis analysis = Timer().Ring("dose", (50, 60)).Watts("valve", "dose", "N", 7).Analyse();
        FaultEffect feed = analysis.Faults.Single(f => f.Fault.Kind == CircuitFaultKind.FeedOpen);
        Assert.Equal([new LoadEffect("valve", LoadChange.OffWhenOn), new LoadEffect("motor", LoadChange.OffWhenOn)], feed.Effects);
        Assert.True(feed.IsNoticed);
        Assert.Equal("the wheel stops where it should run", feed.Notice);
        FaultEffect earth = analysis.Faults.Single(f => f.Fault == new CircuitFault(CircuitFaultKind.NetEarthed, "L"));
        Assert.Equal(["net L joined to E"], earth.ShortPath);
        Assert.Equal("the fuse opens", earth.Notice);
    }

    [Fact]
    public void Faults_OfASmallCircuit_AreAllListed()
    {
        CircuitAnalysis analysis = Timer().Ring("dose", (50, 60)).Watts("valve", "dose", "N", 7).Bridge("dose", "run").Analyse();
        // 1 input × 2, 2 contacts × 2, 2 loads × 2, feed, neutral, stalled, reversed, supply, slipped, nets L N dose run to E, 1 bridge.
        Assert.Equal(2 + 4 + 4 + 6 + 4 + 1, analysis.Faults.Count);
    }

    private static CircuitBuilder Timer() =>
        new CircuitBuilder().Ring("hold", "run", 0, (3, 360)).Motor("run", "N").Input("thermostat", "L", "run");
}
