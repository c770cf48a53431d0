using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>The same wheel asked for in another way gives the same wheel; more asked for never gives a smaller one.</summary>
public sealed class WheelConsistencyTests
{
    private static readonly OutputBrief[] Two =
    [
        Briefs.Output("first", 3, (20, 40), (100, 30)),
        Briefs.Output("second", 2, (5, 25)),
    ];

    [Fact]
    public void Copper_TurningTheOtherWay_IsTheMirrorImage()
    {
        Brief brief = Briefs.Plain(Two);
        Outline clockwise = Design.Of(brief).Wheel.Copper[0].Outline;
        Outline anticlockwise = Design.Of(brief with { Drive = new(180, Turning.Anticlockwise, 0, default) }).Wheel.Copper[0].Outline;
        Assert.Equal(clockwise.AreaMm2, anticlockwise.AreaMm2, 1e-6);
        Point mirrored = Placement.MirrorInX.Of(clockwise.Centroid);
        Assert.Equal(0, mirrored.DistanceTo(anticlockwise.Centroid), 1e-9);
    }

    [Fact]
    public void Copper_AllStationsTurned_IsTurnedAlike()
    {
        const double by = 0.7;
        Outline one = Design.Of(Briefs.Plain(Two)).Wheel.Copper[0].Outline;
        Outline turned = Design.Of(Briefs.Plain([.. Two.Select(o => o with { StationRad = o.StationRad + by })])).Wheel.Copper[0].Outline;
        Assert.Equal(one.AreaMm2, turned.AreaMm2, 1e-6);
        Assert.Equal(0, Placement.Turn(by).Of(one.Centroid).DistanceTo(turned.Centroid), 1e-9);
    }

    [Fact]
    public void Radii_OutputsInAnotherOrder_AreTheSame()
    {
        WheelLayout one = Design.Of(Briefs.Plain(Two)).Wheel;
        WheelLayout other = Design.Of(Briefs.Plain([.. Two.Reverse()])).Wheel;
        Assert.Equal(one.OuterDiameterMm, other.OuterDiameterMm, 1e-9);
        Assert.Equal(one.Ring("first").RadiusMm, other.Ring("first").RadiusMm, 1e-9);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(1.0)]
    public void Diameter_MoreMargin_NeverShrinks(double moreMm)
    {
        Brief brief = Briefs.Plain(Two);
        double less = Design.Of(brief).Wheel.OuterDiameterMm;
        double more = Design.Of(brief with { Spacing = brief.Spacing with { MarginMm = brief.Spacing.MarginMm + moreMm } }).Wheel.OuterDiameterMm;
        Assert.True(more > less);
    }

    [Fact]
    public void Tolerance_TooFineForTheInnermostRadius_MovesTheRingOutUntilItIsMet()
    {
        RingLayout loose = Design.Of(Briefs.Plain(Briefs.Output("fine", 20, 5, 1))).Wheel.Rings[0];
        RingLayout fine = Design.Of(Briefs.Plain(Briefs.Output("fine", 20, 5, 0.16))).Wheel.Rings[0];
        Assert.True(fine.RadiusMm > loose.RadiusMm);
        Assert.Equal(0.16, fine.Periods[0].Limits.LongerS, 1e-6);
    }

    [Fact]
    public void GivenDiameter_LargerThanNeeded_WidensEveryWebAlike()
    {
        Brief brief = Briefs.Plain(Two);
        WheelLayout smallest = Design.Of(brief).Wheel;
        double asked = smallest.OuterDiameterMm + 8;
        WheelLayout wheel = Design.Of(brief with { Wheel = brief.Wheel with { OuterDiameterMm = asked } }).Wheel;
        Assert.Equal(asked, wheel.OuterDiameterMm, 1e-9);
        double rim = (asked / 2) - wheel.Rings.Max(r => r.WindowToMm!.Value);
        Assert.Equal(wheel.WebMm, rim, 1e-6);
        double hub = wheel.Feed!.PathFromMm - 0.15 - 3;
        Assert.Equal(wheel.WebMm, hub, 1e-6);
    }

    [Fact]
    public void Copper_OfManyWheels_NeverCrossesItselfAndKeepsItsWebs()
    {
        foreach (Brief brief in (Brief[])[Briefs.Worked(), Briefs.Plain(Two), Briefs.Plain(Two) with { Drive = new(180, Turning.Anticlockwise, 0, default) }])
        {
            Outline copper = Design.Of(brief).Wheel.Copper[0].Outline;
            Assert.Empty(Soundness.Faults(copper));
        }
    }
}
