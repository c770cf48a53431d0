using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>What no rule forbids and yet is asked about. Each case is an example wheel with one thing changed.</summary>
public sealed class OversightsTests
{
    private const string Motor = "[drive_motor]\nbetween = [\"L\", \"N\"]\npower = \"2 W\"\npower_factor = 0.7\n";

    [Fact]
    public void Of_ExampleWheels_AreAskedNothing()
    {
        foreach (string name in Demos.Names)
        {
            Assert.DoesNotContain(Demos.Of(name).Findings, f => f.Code is "circuit.no-loads" or "circuit.no-motor" or "circuit.feeds-nothing" or "circuit.no-effect" or "circuit.home" or "wheel.heat" or "wheel.softening");
        }
    }

    [Fact]
    public void Of_NoDriveMotor_PassedInSilenceAndIsAWarningNow()
    {
        Finding found = Assert.Single(Doser().With(Motor, "").Design().Findings, f => f.Code is "circuit.no-motor");
        Assert.Equal(FindingSeverity.Warning, found.Severity);
        Assert.Contains("[drive_motor]", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_NoLoadsAtAll_IsAskedOnce()
    {
        IReadOnlyList<Finding> found = Doser().With(Motor, "").WithEvery(@"\[\[load\]\][^\[]*(\[""[^\[]*)", _ => "").Design().Findings;
        Assert.Single(found, f => f.Code is "circuit.no-loads");
        Assert.DoesNotContain(found, f => f.Code is "circuit.no-motor" or "circuit.feeds-nothing");
    }

    [Fact]
    public void Of_OutputWhoseNetNoLoadHangsOn_FeedsNothing()
    {
        Finding found = Assert.Single(Doser().With("between = [\"feeder\", \"N\"]", "between = [\"stirrer\", \"N\"]").Design().Findings, f => f.Code is "circuit.feeds-nothing");
        Assert.Contains("'feeder' feeds nothing", found.Message, StringComparison.Ordinal);
        Assert.True(found.Where is { Line: > 1 });
    }

    [Fact]
    public void Of_LoadBehindAnInput_IsFed() => Assert.DoesNotContain(
        Doser().With("between = [\"feeder\", \"N\"]", "between = [\"behind\", \"N\"]").And("\n[[input]]\nname = \"switch\"\nbetween = [\"feeder\", \"behind\"]\n").Design().Findings,
        f => f.Code is "circuit.feeds-nothing");

    [Fact]
    public void Of_ContactBesideOneThatIsAlwaysClosed_CanChangeNothing()
    {
        // The lamp's contact is closed all the turn; the feeder's load now hangs on the lamp's net as well, by an input that is no input of its own.
        Design design = Doser().With("between = [\"feeder\", \"N\"]", "between = [\"lamp\", \"N\"]").With("name = \"feeder\"\non", "name = \"feeder\"\nnet = \"lamp\"\non").Design();
        Finding found = Assert.Single(design.Findings, f => f.Code is "circuit.no-effect" && f.Message.Contains("'feeder'", StringComparison.Ordinal));
        Assert.Contains("change nothing", found.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3 s", "179 s", false)] // as the demo has it: the wheel parks behind its edge at the end of the turn
    [InlineData("93 s", "89 s", true)] // the same, half a turn later
    public void Of_WheelThatParksFarFromHome_IsAsked(string from, string to, bool isAsked)
    {
        ChangedDemo bench = new("propagation-bench");
        Design design = bench.With("{ from = \"3 s\", to = \"179 s\" }", $"{{ from = \"{from}\", to = \"{to}\" }}").Design();
        Assert.Equal(isAsked, design.Findings.Any(f => f.Code is "circuit.home" && f.Message.Contains("178°", StringComparison.Ordinal)));
    }

    private static ChangedDemo Doser() => new("tank-doser");
}
