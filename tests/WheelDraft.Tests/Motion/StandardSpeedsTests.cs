using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Motions;

/// <summary>Usual speeds of geared motors; the series is common practice, no source, that they follow the frequency is arithmetic.</summary>
public sealed class StandardSpeedsTests
{
    [Theory]
    [InlineData(180, 60, 1.0 / 3, 1)]
    [InlineData(60, 60, 1, 1)]
    [InlineData(72, 50, 5.0 / 6, 1)]
    [InlineData(12, 50, 5, 1)]
    [InlineData(180, 50, 5.0 / 12, 1.25)]
    [InlineData(900, 50, 1.0 / 12, 1.25)]
    [InlineData(86400, 60, 1.0 / 1440, 1)]
    public void For_TurnTime_IsTheUsualSpeedOrTheNextFasterWithItsGear(double turnTimeS, double frequencyHz, double rpm, double gearDown)
    {
        MotorSpeed speed = StandardSpeeds.For(turnTimeS, frequencyHz)!.Value;
        Assert.Equal(rpm, speed.Rpm, 1e-12);
        Assert.Equal(gearDown, speed.GearDown, 1e-9);
        Assert.Equal(60 / turnTimeS, speed.Rpm / speed.GearDown, 1e-12);
    }

    [Fact]
    public void For_WheelFasterThanAny_IsNone() => Assert.Null(StandardSpeeds.For(0.9, 60));
}
