using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>What friction, which winds arms up, does to times: shifts, on-times, bands and side play.</summary>
public sealed class FrictionShiftTests
{
    private static Design Bench { get; } = Demos.Of("propagation-bench");

    [Fact]
    public void Shifts_OfTheBench_AreThoseOfItsStripsOverRadiusAndSpeed()
    {
        // t = s/(r ω): the shift of the strip over the least radius of its patch and the speed of the wheel, worked out here again.
        Assert.Equal(["run", "stir", "mist"], Bench.FrictionShifts.Select(s => Bench.Brief.Outputs[s.Output].Name), StringComparer.Ordinal);
        foreach (FrictionShift shift in Bench.FrictionShifts)
        {
            RingLayout ring = Bench.Wheel.Rings[shift.Output];
            WindUp wound = Bench.Strips.Strips.Single(s => s.Form.Strip.Task is ServesOutput o && string.Equals(o.Output, ring.Name, StringComparison.Ordinal)).Spring!.WindUp!.Value;
            double speed = ring.PathFromMm * 2 * Math.PI / 180;
            Assert.Equal(wound.LeastMm / speed, shift.LaterMinS, 1e-9);
            Assert.Equal(wound.MostMm / speed, shift.LaterMaxS, 1e-9);
            Assert.Equal(shift.LaterMaxS - shift.LaterMinS, shift.OnTimeS, 1e-9);
        }
    }

    // Once an on-time beyond its tolerance by friction alone passed: nothing looked at it.
    [Fact]
    public void OnTime_ThatFrictionTakesBeyondItsTolerance_IsAnError()
    {
        RingLayout run = Bench.Wheel.Rings[0];
        double allowed = run.Periods[0].Limits.WorstS + (Bench.FrictionShifts[0].OnTimeS / 2);
        Brief brief = Bench.Brief with { Outputs = [Bench.Brief.Outputs[0] with { ToleranceS = allowed }, .. Bench.Brief.Outputs.Skip(1)] };
        Assert.Contains(Design.Of(brief).Findings, f => f is { Code: "timing.friction", Severity: FindingSeverity.Error });
        Assert.DoesNotContain(Bench.Findings, f => f.Code is "timing.friction");
    }

    [Fact]
    public void Contact_MovedByFrictionFurtherThanItsSidePlay_IsAnError()
    {
        Assert.True(Bench.FrictionShifts[0].MostRadialMm > 0.1);
        Brief brief = Bench.Brief with { Outputs = [Bench.Brief.Outputs[0] with { SidePlayMm = 0.1 }, .. Bench.Brief.Outputs.Skip(1)] };
        Assert.Contains(Design.Of(brief).Findings, f => f is { Code: "strip.side-play", Severity: FindingSeverity.Error });
        Assert.DoesNotContain(Bench.Findings, f => f.Code is "strip.side-play");
    }

    // The order of edges of different rings counts it: an edge may come later by all of the shift.
    [Fact]
    public void Bands_OfTheCircuit_ReachLaterByTheGreatestShift()
    {
        IReadOnlyList<ContactSchedule> still = WheelContacts.OnWheel(Bench.Brief, Bench.Wheel), wound = Bench.Circuit.Request.Contacts;
        foreach (FrictionShift shift in Bench.FrictionShifts)
        {
            double later = shift.MostMm / Bench.Wheel.Rings[shift.Output].PathFromMm;
            Assert.Equal(still[shift.Output].Periods[0].Make.LaterRad + later, wound[shift.Output].Periods[0].Make.LaterRad, 1e-12);
            Assert.Equal(still[shift.Output].Periods[0].Make.EarlierRad, wound[shift.Output].Periods[0].Make.EarlierRad, 1e-12);
        }
    }
}
