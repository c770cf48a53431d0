using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>The worked wheel, whose figures were computed by a separate script from the definitions alone (cases/worked/worked-wheel.toml).</summary>
/// <remarks>The windows of 'mist' reach 2.885 µm further than 3.88 + 0.2 mm: a corner of its worn patch lies at √(20.796² + 0.4²) mm, one of
/// the new patch at √(20.796² + 0.2²) mm.</remarks>
public sealed class WorkedWheelTests
{
    private const double LengthMm = 1e-5;
    private const double AngleDeg = 1e-5;
    private const double TimeS = 1e-5;
    private const double WorstS = 1e-3;

    private static readonly Design Wheel = Design.Of(Briefs.Worked());

    [Fact]
    public void Radii_WorkedWheel_AreThoseOfTheTable()
    {
        Assert.Equal(5.85, Wheel.Wheel.Feed!.RadiusMm, LengthMm);
        Assert.Equal(7.360876, Wheel.Wheel.Feed!.PathToMm, LengthMm);
        RingLayout hold = Wheel.Wheel.Ring("hold");
        Assert.Equal(8.710876, hold.WindowFromMm!.Value, LengthMm);
        Assert.Equal(9.110876, hold.PathFromMm, LengthMm);
        Assert.Equal(10.110876, hold.RadiusMm, LengthMm);
        Assert.Equal(11.112676, hold.PathToMm, LengthMm);
        Assert.Equal(11.512676, hold.WindowToMm!.Value, LengthMm);
        RingLayout mist = Wheel.Wheel.Ring("mist");
        Assert.Equal(12.712676, mist.WindowFromMm!.Value, LengthMm);
        Assert.Equal(16.795561, mist.PathFromMm, LengthMm);
        Assert.Equal(18.795561, mist.RadiusMm, LengthMm);
        Assert.Equal(20.796523, mist.PathToMm, LengthMm);
        Assert.Equal(24.879408, mist.WindowToMm!.Value, LengthMm);
        Assert.Equal(52.158815, Wheel.Wheel.OuterDiameterMm, LengthMm);
    }

    [Fact]
    public void Edges_WorkedWheel_AreThoseOfTheTable()
    {
        RingPeriod hold = Wheel.Wheel.Ring("hold").Periods[0];
        RingPeriod mist = Wheel.Wheel.Ring("mist").Periods[0];
        AdjustLayout adjust = Wheel.Wheel.Ring("mist").Adjust!;
        Assert.Equal(7.257543, Angles.DegFromRad(hold.Make.AngleAt(10)), AngleDeg);
        Assert.Equal(358.742457, Angles.DegFromRad(hold.Break.AngleAt(10)), AngleDeg);
        Assert.Equal(244.643906, Angles.DegFromRad(mist.Make.AngleAt(18)), AngleDeg);
        Assert.Equal(12.712676, adjust.EdgeInner.RadiusMm, LengthMm);
        Assert.Equal(261.061976, Angles.DegFromRad(adjust.EdgeInner.ProgrammeRad), AngleDeg);
        Assert.Equal(24.879408, adjust.EdgeOuter.RadiusMm, LengthMm);
        Assert.Equal(249.722197, Angles.DegFromRad(adjust.EdgeOuter.ProgrammeRad), AngleDeg);
    }

    [Theory]
    [InlineData(0, 6.029168)]
    [InlineData(1, 5.756625)]
    [InlineData(2, 5.500000)]
    [InlineData(3, 5.257920)]
    [InlineData(4, 5.029168)]
    public void OnTime_AlongTheTravel_IsThatOfTheTable(int place, double onS) =>
        Assert.Equal(onS, Wheel.Wheel.Ring("mist").Adjust!.Steps[place].OnS, TimeS);

    [Fact]
    public void Screw_WorkedWheel_GivesSecondsAndMillilitresPerTurn()
    {
        AdjustLayout adjust = Wheel.Wheel.Ring("mist").Adjust!;
        Assert.Equal(0.28101, adjust.Steps[0].SecondsPerTurn, TimeS);
        Assert.Equal(0.24914, adjust.Middle.SecondsPerTurn, TimeS);
        Assert.Equal(0.22246, adjust.Steps[^1].SecondsPerTurn, TimeS);
        Assert.Equal(4.983, adjust.Middle.SecondsPerTurn * 20, 1e-3);
        Assert.Equal(4, adjust.Turns, 1e-12);
    }

    [Fact]
    public void WorstCase_WorkedWheel_IsThatOfTheText()
    {
        TimingLimits mist = Wheel.Wheel.Ring("mist").Periods[0].Limits;
        Assert.Equal(0.0550, mist.FrequencyS, WorstS);
        Assert.Equal(0.0805, mist.MakeEdgeS, WorstS);
        Assert.Equal(0.0837, mist.BreakEdgeS, WorstS);
        Assert.Equal(0.0154, mist.CentreS, WorstS);
        Assert.Equal(0.0747, mist.SlopeS, WorstS);
        Assert.Equal(0.6438, mist.WearS, WorstS);
        Assert.Equal(0.9533, mist.LongerS, WorstS);
        TimingLimits hold = Wheel.Wheel.Ring("hold").Periods[0].Limits;
        Assert.Equal(1.7700, hold.FrequencyS, WorstS);
        Assert.Equal(0.3144, hold.MakeEdgeS + hold.BreakEdgeS, WorstS);
        Assert.Equal(0.0165, hold.CentreS, WorstS);
        Assert.Equal(2.1008, hold.LongerS, WorstS);
    }
}
