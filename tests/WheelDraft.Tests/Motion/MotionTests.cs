using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Motions;

public sealed class MotionTests
{
    [Fact]
    public void Speed_OneTurnInThreeMinutes_IsTwoDegreesASecond() // common practice, no source
        => Assert.Equal(2, new Motion(180, Turning.Clockwise).SpeedDegPerS, 1e-12);

    [Fact]
    public void Angle_SevenSecondsOnSuchAWheel_IsFourteenDegrees() // common practice, no source
        => Assert.Equal(14, Angles.DegFromRad(new Motion(180, Turning.Clockwise).RadFromSeconds(7)), 1e-12);

    [Theory]
    [InlineData(Turning.Clockwise, 30, 100, 130)]
    [InlineData(Turning.Anticlockwise, 30, 100, 290)]
    public void WheelRad_UnderAStation_RunsAgainstTheTurning(Turning direction, double stationDeg, double programmeDeg, double wheelDeg)
    {
        Motion motion = new(180, direction);
        double wheel = motion.WheelRad(Angles.RadFromDeg(stationDeg), Angles.RadFromDeg(programmeDeg));
        Assert.Equal(wheelDeg, Angles.DegFromRad(wheel), 1e-9);
        // The point found stands under the station once the wheel has turned.
        Point there = motion.WheelAt(Angles.RadFromDeg(programmeDeg)).Of(Point.Polar(10, wheel));
        Assert.Equal(0, there.DistanceTo(Point.Polar(10, Angles.RadFromDeg(stationDeg))), 1e-9);
    }
}
