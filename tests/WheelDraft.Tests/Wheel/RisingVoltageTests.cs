using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Working voltages that tolerances raise: the layout is made again for them, or it is told that it was not.</summary>
public sealed class RisingVoltageTests
{
    // Two rings follow each other closely. By exact edges one lamp of 200 ohm at a time hangs above two heaters of 200 ohm; with one heater open
    // that is 230 · 200/400 = 115 V to N. Within their tolerances both rings can be closed at once: 230 · 200/300 = 153.33 V.
    private static Brief Overlapping() => Briefs.Plain(
        Briefs.Output("a", 10, 50) with { StationRad = 0 },
        Briefs.Output("b", 60.02, 50) with { StationRad = 2 }) with
    {
        Loads =
        [
            new LoadBrief("one", "a", "mid", new RatedImpedance(200, 0), 0.8, 0.2),
            new LoadBrief("two", "b", "mid", new RatedImpedance(200, 0), 0.8, 0.2),
            new LoadBrief("heater", "mid", "N", new RatedImpedance(200, 0), 0.8, 0.2),
            new LoadBrief("other heater", "mid", "N", new RatedImpedance(200, 0), 0.8, 0.2),
        ],
    };

    [Fact]
    public void Run_VoltagesStillRisingInTheLastRound_IsAnError()
    {
        Design design = new DesignStages(Overlapping(), mostRounds: 1).Run();
        Finding told = Assert.Single(design.Findings, f => f.Code is "spacing.voltages-rise");
        Assert.Equal(FindingSeverity.Error, told.Severity);
        Assert.False(design.Meets);
        Assert.Contains("N – mid from 115 V to 153.33 V", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_WithRoundsEnough_EndsWithTheHigherVoltages()
    {
        Design design = new DesignStages(Overlapping()).Run();
        Assert.DoesNotContain(design.Findings, f => f.Code is "spacing.voltages-rise");
        Assert.Equal(230 * 2 / 3.0, design.Circuit.WorkingVoltageV("N", "mid"), 1e-9);
    }
}
