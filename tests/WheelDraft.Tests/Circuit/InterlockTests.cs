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
    public void History_UndecidedMotorPastSeveralEdges_IsToldOnce()
    {
        // The lamp's ring makes last: the wheel passes both edges of the fan's ring before, by a motor that is undecided all the way.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("fan", (20, 30)).Ring("lamp", (100, 110)).Watts("fan", "fan", "N", 20).Watts("lamp", "lamp", "N", 40)
            .Watts("choke", "L", "run", 3).Motor("run", "N", 3)
            .Interlock(new InterlockBrief("dark", InterlockClaim.NeverOn, ["lamp"])).Analyse();
        Assert.Equal(["home", "motor undecided, the wheel turns", "at 100.0 s lamp ring makes: lamp on"], analysis.Interlocks[0].History);
    }

    // The hold ring lets the motor go at 100°, and the wheel coasts on by up to 2°: over the edge at 101.5°, and no further than 102°.
    [Theory]
    [InlineData(101.8, false)]
    [InlineData(103, true)]
    [InlineData(150, true)]
    public void History_BeyondTheMotorsLastEdge_CoastsNoFurtherThanTheWheelDoes(double lampDeg, bool needsThermostat)
    {
        CircuitAnalysis analysis = new CircuitBuilder { CoastLeastDeg = 0.5, CoastMostDeg = 2 }
            .Ring("hold", "run", 0, (350, 100)).Ring("fan", (90, 101.5)).Ring("lamp", (lampDeg, 200))
            .Watts("fan", "fan", "N", 20).Watts("lamp", "lamp", "N", 40).Motor("run", "N").Input("thermostat", "L", "run")
            .Interlock(new InterlockBrief("dark", InterlockClaim.NeverOn, ["lamp"])).Analyse();
        InterlockResult dark = Assert.Single(analysis.Interlocks);
        Assert.Equal(InterlockVerdict.Fails, dark.Verdict);
        Assert.EndsWith("lamp ring makes: lamp on", dark.History[^1], StringComparison.Ordinal);
        Assert.Equal(needsThermostat, dark.History.Contains("thermostat closes", StringComparer.Ordinal));
    }

    // The hold ring feeds the motor across home, from 200° to 5°. Turning the wrong way from home the wheel loses its motor at 200° and coasts back by up to 2°.
    [Theory]
    [InlineData(199, true)]
    [InlineData(197, false)]
    public void Reversed_BeyondTheMotorsLastEdge_CoastsBackNoFurtherThanTheWheelDoes(double lampToDeg, bool isBroken)
    {
        CircuitAnalysis analysis = new CircuitBuilder { CoastLeastDeg = 0.5, CoastMostDeg = 2 }
            .Ring("hold", "run", 0, (200, 5)).Ring("lamp", (100, lampToDeg)).Watts("lamp", "lamp", "N", 40).Motor("run", "N")
            .Interlock(new InterlockBrief("dark", InterlockClaim.NeverOn, ["lamp"]) { Faults = FaultDepth.Single })
            .Interlock(new InterlockBrief("dark unless something fails", InterlockClaim.NeverOn, ["lamp"])).Analyse();
        Assert.Equal(isBroken, analysis.Interlocks[0].FaultsThatBreakIt.Contains(new CircuitFault(CircuitFaultKind.MotorReversed)));
        Assert.Equal(InterlockVerdict.Holds, analysis.Interlocks[1].Verdict);
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

    [Fact]
    public void WhileOpen_LidSwitchThatSticksClosed_HoldsButIsNotSaidToCatchIt_AndTheMeaningFails()
    {
        // The condition on the contact is not met while the switch sticks closed, so it asks nothing: mist over an open lid. Worked here.
        CircuitAnalysis analysis = Timer().Ring("mist", (100, 110)).Watts("mist valve", "mist", "lidded", 7).Input("lid", "lidded", "N")
            .Interlock(new InterlockBrief("contact", InterlockClaim.NeverOn, ["mist valve"]) { WhileOpen = ["lid"], Faults = FaultDepth.Single })
            .Interlock(new InterlockBrief("meaning", InterlockClaim.NeverOn, ["mist valve"]) { WhileFalse = ["lid"], Faults = FaultDepth.Single })
            .Interlock(new InterlockBrief("meaning, nothing faulty", InterlockClaim.NeverOn, ["mist valve"]) { WhileFalse = ["lid"] }).Analyse();
        CircuitFault stuck = new(CircuitFaultKind.InputStuckClosed, "lid");
        Assert.DoesNotContain(stuck, analysis.Interlocks[0].FaultsThatBreakIt);
        Assert.Contains(stuck, analysis.Interlocks[1].FaultsThatBreakIt);
        Assert.Equal(InterlockVerdict.Fails, analysis.Interlocks[1].Verdict);
        Assert.Equal(InterlockVerdict.Holds, analysis.Interlocks[2].Verdict);
        Assert.Equal(["lid"], analysis.Interlocks[0].AsksContactsOf);
        Assert.Empty(analysis.Interlocks[0].AsksMeaningOf);
        Assert.Empty(analysis.Interlocks[1].AsksContactsOf);
        Assert.Equal(["lid"], analysis.Interlocks[1].AsksMeaningOf);

        FaultEffect effect = analysis.Faults.Single(f => f.Fault == stuck);
        Assert.Equal(["meaning", "meaning, nothing faulty"], effect.BreaksInterlocks);
        Assert.Empty(effect.CaughtBy);
        Assert.Equal(["'meaning' fails", "'meaning, nothing faulty' fails", "mist valve on when it should be off"], effect.Dangers);
    }

    [Fact]
    public void WhileTrue_LidSwitchThatSticksOpen_AsksForTheMistAllTheSame()
    {
        CircuitAnalysis analysis = Timer().Ring("mist", (100, 110)).Watts("mist valve", "mist", "lidded", 7).Input("lid", "lidded", "N")
            .Interlock(new InterlockBrief("mist in its time", InterlockClaim.AlwaysOn, ["mist valve"]) { WhileTrue = ["lid"], Between = CircuitBuilder.Arc(100, 110), Faults = FaultDepth.Single }).Analyse();
        Assert.Contains(new CircuitFault(CircuitFaultKind.InputStuckOpen, "lid"), analysis.Interlocks[0].FaultsThatBreakIt);
    }

    [Fact]
    public void NeverTogether_BridgedNetsThatTurnBothOn_BreakIt()
    {
        // Worked here: filler from 10° to 20°, pump from 30° to 40°: never both, until their nets touch.
        CircuitBuilder circuit = Timer().Ring("fill", (10, 20)).Ring("drain", (30, 40)).Watts("filler", "fill", "N", 7).Watts("pump", "drain", "N", 30)
            .Interlock(new InterlockBrief("never both", InterlockClaim.NeverTogether, ["filler", "pump"]))
            .Interlock(new InterlockBrief("never both, whatever fails", InterlockClaim.NeverTogether, ["filler", "pump"]) { Faults = FaultDepth.Single });
        CircuitAnalysis apart = circuit.Analyse();
        Assert.Equal(InterlockVerdict.Holds, apart.Interlocks[0].Verdict);
        Assert.Equal(
            [new CircuitFault(CircuitFaultKind.ContactWelded, "fill"), new CircuitFault(CircuitFaultKind.ContactWelded, "drain")],
            apart.Interlocks[1].FaultsThatBreakIt);

        CircuitAnalysis bridged = circuit.Bridge("fill", "drain").Analyse();
        Assert.Equal(InterlockVerdict.Holds, bridged.Interlocks[0].Verdict);
        Assert.Contains(new CircuitFault(CircuitFaultKind.NetsBridged, "fill", "drain"), bridged.Interlocks[1].FaultsThatBreakIt);
        Assert.EndsWith(": filler on, pump on", bridged.Interlocks[1].History[^1], StringComparison.Ordinal);
        Assert.Contains("'never both' fails", bridged.Faults[^1].Dangers, StringComparer.Ordinal);
    }

    [Fact]
    public void NeverTogether_TwoOfThreeOn_IsNotAll()
    {
        CircuitBuilder circuit = Timer().Ring("a", (10, 30)).Ring("b", (20, 40)).Ring("c", (35, 50))
            .Watts("one", "a", "N", 7).Watts("two", "b", "N", 7).Watts("three", "c", "N", 7)
            .Interlock(new InterlockBrief("never all three", InterlockClaim.NeverTogether, ["one", "two", "three"]))
            .Interlock(new InterlockBrief("never the first two", InterlockClaim.NeverTogether, ["one", "two"]))
            .Interlock(new InterlockBrief("never the ends", InterlockClaim.NeverTogether, ["one", "three"]));
        Assert.Equal([InterlockVerdict.Holds, InterlockVerdict.Fails, InterlockVerdict.Holds], circuit.Analyse().Interlocks.Select(i => i.Verdict));
    }

    [Fact]
    public void NeverTogether_OneOnAndOneUndecided_IsUndecided()
    {
        // Worked here: two equal loads in series have half the supply each, neither on nor off; the lamp is on.
        CircuitAnalysis analysis = Timer().Ring("x", (100, 110)).Watts("lamp", "x", "N", 40).Ohms("first", "x", "m", 100).Ohms("second", "m", "N", 100)
            .Interlock(new InterlockBrief("apart", InterlockClaim.NeverTogether, ["lamp", "first"])).Analyse();
        Assert.Equal(InterlockVerdict.Undecided, analysis.Interlocks[0].Verdict);
        Assert.EndsWith(": lamp on, first undecided", analysis.Interlocks[0].History[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void WhileOpen_TwoInputs_AskOnlyWhenBothAreOpen()
    {
        CircuitAnalysis analysis = Timer().Ring("mist", (100, 110)).Watts("valve", "mist", "m", 7).Input("lid", "m", "N").Input("door", "m", "N")
            .Interlock(new InterlockBrief("both open", InterlockClaim.NeverOn, ["valve"]) { WhileOpen = ["lid", "door"] })
            .Interlock(new InterlockBrief("both false", InterlockClaim.NeverOn, ["valve"]) { WhileFalse = ["lid", "door"] })
            .Interlock(new InterlockBrief("one open", InterlockClaim.NeverOn, ["valve"]) { WhileOpen = ["lid"] }).Analyse();
        Assert.Equal([InterlockVerdict.Holds, InterlockVerdict.Holds, InterlockVerdict.Fails], analysis.Interlocks.Select(i => i.Verdict));
    }

    [Fact]
    public void Holds_ForConditionsThatAreNeverMet_IsSaidToHoldForNothing()
    {
        CircuitAnalysis analysis = Timer().Ring("a", (10, 20)).Ring("b", (30, 40)).Watts("valve", "a", "N", 7)
            .Interlock(new InterlockBrief("idle", InterlockClaim.NeverOn, ["valve"]) { WhileClosed = ["a", "b"] })
            .Interlock(new InterlockBrief("stuck as well as sound", InterlockClaim.NeverOn, ["valve"]) { WhileClosed = ["thermostat"], WhileFalse = ["thermostat"] })
            .Interlock(new InterlockBrief("asks", InterlockClaim.NeverOn, ["valve"]) { WhileClosed = ["b"] }).Analyse();
        Assert.Equal([false, false, true], analysis.Interlocks.Select(i => i.Applies));
        Assert.Equal(2, analysis.Findings.Count(f => f.Code is "circuit.interlock-idle" && f.Severity == FindingSeverity.Warning));
    }

    [Fact]
    public void Dangers_MotorThatStalls_LeavesOnWhatIsOn()
    {
        CircuitAnalysis analysis = Timer().Ring("dose", (50, 60)).Watts("valve", "dose", "N", 7).Analyse();
        FaultEffect stalled = analysis.Faults.Single(f => f.Fault.Kind == CircuitFaultKind.MotorStalled);
        Assert.Equal(["valve may stay on while the wheel stands"], stalled.Dangers);
        FaultEffect burnt = analysis.Faults.Single(f => f.Fault == new CircuitFault(CircuitFaultKind.LoadOpen, "motor"));
        Assert.Equal("motor never comes on, no cycle", burnt.Notice);
        Assert.Equal(["valve may stay on while the wheel stands"], burnt.Dangers);
        Assert.Equal(["valve never goes off"], analysis.Faults.Single(f => f.Fault == new CircuitFault(CircuitFaultKind.ContactWelded, "dose")).Dangers);
        Assert.Empty(analysis.Faults.Single(f => f.Fault == new CircuitFault(CircuitFaultKind.NetEarthed, "N")).Dangers);
    }

    [Fact]
    public void Dangers_SupplyLostJustBeforeTheBreak_MayStandNearerThanItParks()
    {
        FaultEffect Lost(double leastDeg) => new CircuitBuilder { CoastLeastDeg = leastDeg, CoastMostDeg = 3 }
            .Ring("hold", "run", 0, (3, 360)).Motor("run", "N").Input("thermostat", "L", "run").Analyse()
            .Faults.Single(f => f.Fault.Kind == CircuitFaultKind.SupplyLost);
        Assert.Equal(["the wheel may come to stand nearer than it parks to the edge where 'hold' lets go"], Lost(1).Dangers);
        Assert.Empty(Lost(0).Dangers);
    }

    private static CircuitBuilder Timer() =>
        new CircuitBuilder().Ring("hold", "run", 0, (3, 360)).Motor("run", "N").Input("thermostat", "L", "run");
}
