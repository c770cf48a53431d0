using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Runs timed by hand: a degree is a second.</summary>
public sealed class ScenarioRunTests
{
    [Fact]
    public void Play_OneCycle_StartsHoldsDosesAndParks()
    {
        // Worked here: starts at 5 s, so the dose ring makes at 105 s for 10 s, and the hold ring breaks at 365 s.
        ScenarioRun run = ScenarioRun.Play(Timer(0).Request(), new ScenarioBrief("one cycle", [Step(5, close: true), Step(50, close: false)], 400));
        Assert.Equal(
            [(0, "home"), (5, "thermostat closes"), (8, "hold ring makes"), (50, "thermostat opens"), (105, "dose ring makes"), (115, "dose ring breaks"), (365, "hold ring breaks")],
            run.Moments.Select(m => (Math.Round(m.TimeS, 9), m.What)));
        Assert.Equal(10, run.OnTimeS(0), 1e-9);
        Assert.Equal(360, run.OnTimeS(1), 1e-9);
        Assert.Equal(400, run.EndS);
        Assert.True(run.IsCertain);
        Assert.Equal(1, run.Moments[^1].Turns);
        Assert.Equal(0, run.Moments[^1].AngleRad);
        Assert.Equal([new RunSpan(5, 365)], run.Spans(m => m.IsTurning).Select(s => new RunSpan(Math.Round(s.FromS, 9), Math.Round(s.ToS, 9))));
    }

    [Fact]
    public void Play_ThermostatOpensBeforeTheRingHolds_StandsAndGoesOnLater()
    {
        // Worked here: runs from 0 to 2 s, stands at 2°, goes on at 10 s; the dose ring makes 8 s late.
        ScenarioRun run = ScenarioRun.Play(Timer(0).Request(), new ScenarioBrief("late", [Step(0, close: true), Step(2, close: false), Step(10, close: true)], 120));
        Assert.Equal(108, run.Moments.Single(m => m.What is "dose ring makes").TimeS, 1e-9);
        Assert.Equal(2, Angles.DegFromRad(run.Moments.Single(m => m.TimeS == 10).AngleRad), 1e-9);
    }

    [Fact]
    public void Play_WithCoast_RunsOnAfterTheBreakAndComesToRest()
    {
        // Worked here: coast 0.4 to 0.6°, so 0.5° in the middle: half a second past the break at 360 s.
        ScenarioRun run = ScenarioRun.Play(Timer(0.5).Request(), new ScenarioBrief("coast", [Step(0, close: true), Step(20, close: false)], 400));
        RunMoment rest = run.Moments[^1];
        Assert.Equal("the wheel has come to rest", rest.What);
        Assert.Equal(360.5, rest.TimeS, 1e-9);
        Assert.Equal(0.5, Angles.DegFromRad(rest.AngleRad), 1e-9);
    }

    [Fact]
    public void Play_HomeWithinAnInterval_CountsTheTurnThere()
    {
        CircuitBuilder circuit = new CircuitBuilder().Ring("mist", (350, 20)).Watts("valve", "mist", "N", 7);
        ScenarioRun run = ScenarioRun.Play(circuit.Request(), new ScenarioBrief("free", [], 800));
        Assert.Equal([(20.0, 0), (350.0, 0), (360.0, 1), (380.0, 1), (710.0, 1), (720.0, 2), (740.0, 2)], run.Moments.Skip(1).Select(m => (Math.Round(m.TimeS, 9), m.Turns)));
        Assert.Equal(20 + 30 + 30, run.OnTimeS(0), 1e-9);
    }

    [Fact]
    public void Play_Short_EndsTheRun()
    {
        CircuitBuilder circuit = new CircuitBuilder().Ring("dose", (50, 60)).Input("drain", "dose", "N").Watts("valve", "dose", "N", 7);
        ScenarioRun run = ScenarioRun.Play(circuit.Request(), new ScenarioBrief("short", [new ScenarioStep(55, ["drain"], [])], 100));
        Assert.Equal(55, run.EndS);
        Assert.Contains("fuse", run.Moments[^1].What, StringComparison.Ordinal);
        Assert.Equal(5, run.OnTimeS(0), 1e-9);
    }

    [Fact]
    public void Play_UnknownInput_IsRefused()
    {
        Assert.Throws<DesignRefusedException>(() => ScenarioRun.Play(Timer(0).Request(), new ScenarioBrief("x", [new ScenarioStep(1, ["door"], [])], 10)));
    }

    private static ScenarioStep Step(double atS, bool close) => new(atS, close ? ["thermostat"] : [], close ? [] : ["thermostat"]);

    private static CircuitBuilder Timer(double coastDeg) => new CircuitBuilder { CoastLeastDeg = coastDeg * 0.8, CoastMostDeg = coastDeg * 1.2 }
        .Ring("hold", "run", 0, (3, 360)).Ring("dose", (100, 110)).Watts("valve", "dose", "N", 7).Motor("run", "N").Input("thermostat", "L", "run");
}
