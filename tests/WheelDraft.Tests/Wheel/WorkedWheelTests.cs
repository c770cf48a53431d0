using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>The worked wheel, whose figures were computed by a separate script from the definitions alone (cases/worked/worked-wheel.toml).</summary>
/// <remarks>On one side 'mist' keeps more than the text: its window reaches further out by what the corners of the worn patch reach beyond
/// those of the new one, √(20.792676² + 0.4²) less √(20.792676² + 0.2²) mm, so that a worn contact keeps what is required too.</remarks>
public sealed class WorkedWheelTests
{
    private const double LengthMm = 1e-5;
    private const double AngleDeg = 1e-5;
    private const double TimeS = 1e-5;
    private const double WorstS = 1e-6;
    private static readonly double WornCornerMm = Math.Sqrt((20.792676 * 20.792676) + 0.16) - Math.Sqrt((20.792676 * 20.792676) + 0.04);

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
        Assert.Equal(16.792676, mist.PathFromMm, LengthMm);
        Assert.Equal(18.792676, mist.RadiusMm, LengthMm);
        Assert.Equal(20.793638, mist.PathToMm, LengthMm);
        Assert.Equal(24.873638 + WornCornerMm, mist.WindowToMm!.Value, LengthMm);
        Assert.Equal(52.147276 + (2 * WornCornerMm), Wheel.Wheel.OuterDiameterMm, LengthMm);
    }

    [Fact]
    public void Edges_WorkedWheel_AreThoseOfTheTable()
    {
        RingPeriod hold = Wheel.Wheel.Ring("hold").Periods[0];
        RingPeriod mist = Wheel.Wheel.Ring("mist").Periods[0];
        AdjustLayout adjust = Wheel.Wheel.Ring("mist").Adjust!;
        Assert.Equal(7.257543, Angles.DegFromRad(hold.Make.AngleAt(10)), AngleDeg);
        Assert.Equal(358.742457, Angles.DegFromRad(hold.Break.AngleAt(10)), AngleDeg);
        Assert.Equal(244.644011, Angles.DegFromRad(mist.Make.AngleAt(18)), AngleDeg);
        Assert.Equal(12.712676, adjust.EdgeInner.RadiusMm, LengthMm);
        Assert.Equal(261.056669, Angles.DegFromRad(adjust.EdgeInner.ProgrammeRad), AngleDeg);
        Assert.Equal(24.873638 + WornCornerMm, adjust.EdgeOuter.RadiusMm, LengthMm);

        // The line of the table, followed to the outer radius of the table.
        Assert.Equal(249.723753, Angles.DegFromRad(Angles.InTurn(mist.Break.AngleAt(24.873638))), AngleDeg);
    }

    [Theory]
    [InlineData(0, 6.029172)]
    [InlineData(1, 5.756626)]
    [InlineData(2, 5.500000)]
    [InlineData(3, 5.257921)]
    [InlineData(4, 5.029172)]
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
        Assert.Equal(0.935290, mist.LongerS, WorstS);
        Assert.Equal(0.274548, mist.ShorterS, WorstS);
        Assert.Equal(5.225452, 5.5 - mist.ShorterS, WorstS);
        Assert.Equal(6.435290, 5.5 + mist.LongerS, WorstS);
        TimingLimits hold = Wheel.Wheel.Ring("hold").Periods[0].Limits;
        Assert.Equal(2.146866, hold.LongerS, WorstS);
        Assert.Equal(2.096717, hold.ShorterS, WorstS);
    }

    // Each by itself, from the definitions: 5.5 s at 1 % low and high frequency; a patch 0.4 mm longer at both ends.
    [Fact]
    public void Contributors_WorkedWheel_AreEachAlone()
    {
        TimingLimits mist = Wheel.Wheel.Ring("mist").Periods[0].Limits;
        Assert.Equal(5.5 * ((1 / 0.99) - 1), mist.Of(DeviationKind.Frequency).LongerS, 1e-9);
        Assert.Equal(5.5 * (1 - (1 / 1.01)), mist.Of(DeviationKind.Frequency).ShorterS, 1e-9);

        // The nearest corner is 17.792676 mm out and 0.2 mm beside the radius: √(17.792676² + 0.2²) from the axis.
        double edge = Math.Asin(0.05 / Math.Sqrt((17.792676 * 17.792676) + 0.04)) / (2 * Math.PI / 180);
        Assert.Equal(edge, mist.Of(DeviationKind.MakeCut).LongerS, TimeS);
        Assert.Equal(edge, mist.Of(DeviationKind.MakeCut).ShorterS, TimeS);

        // Computed apart from the program, from the definitions, as the worst case of the text was.
        Assert.Equal(0.642290, mist.Of(DeviationKind.Wear).LongerS, WorstS);
        Assert.Equal(0.009601, mist.Of(DeviationKind.Centre).LongerS, WorstS);
        Assert.Equal(0.009590, mist.Of(DeviationKind.Centre).ShorterS, WorstS);
        Assert.Equal(0.050120, mist.Of(DeviationKind.SidePlay).LongerS, WorstS);
        Assert.Equal(0.049538, mist.Of(DeviationKind.SidePlay).ShorterS, WorstS);
        Assert.Equal(0, mist.Of(DeviationKind.Wear).ShorterS, 1e-12);
    }
}
