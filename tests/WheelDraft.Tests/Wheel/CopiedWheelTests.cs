using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>Rings at places of their own: the feed anywhere, an order that the file gives, and an old wheel copied as it is.</summary>
/// <remarks>What is measured is measured on the copper itself, contour by contour, with the distances of the plane as the second way.</remarks>
public sealed class CopiedWheelTests
{
    private const double SameMm = 1e-6;

    private static Brief Three { get; } = Briefs.Plain(Briefs.Output("mist", 10, 60), Briefs.Output("fan", 100, 40), Briefs.Output("pump", 20, 30, 4));

    private static Brief Ordered(params string[] order) => Three with { Wheel = Three.Wheel with { RingOrder = order } };

    private static Brief WithRadii(Brief brief, double feedMm, params double[] radiiMm) => brief with
    {
        Feed = brief.Feed! with { RadiusMm = feedMm },
        Outputs = [.. brief.Outputs.Zip(radiiMm, (o, r) => o with { RadiusMm = r })],
    };

    [Fact]
    public void Of_FeedWithARadius_StaysThereAndTheOthersFindRoomAroundIt()
    {
        Brief asked = Three with { Feed = Three.Feed! with { RadiusMm = 18 } };
        WheelLayout wheel = Design.Of(asked).Wheel;

        Assert.Equal(18, wheel.Feed!.RadiusMm);
        Assert.Contains(wheel.Rings, r => r.RadiusMm < 18);

        // The copper under the feed is whole: no contour other than the outer one comes within its path.
        foreach (Contour window in wheel.Copper[0].Outline.Holes.Where(h => Distances.Radii(new Outline(h), Point.Origin).LeastMm > 3 + SameMm))
        {
            RadialInterval span = Distances.Radii(new Outline(window), Point.Origin);
            Assert.True(span.GreatestMm < wheel.Feed.PathFromMm || span.LeastMm > wheel.Feed.PathToMm);
        }
    }

    [Theory]
    [InlineData("feed", "mist", "fan", "pump")]
    [InlineData("pump", "feed", "mist", "fan")]
    [InlineData("fan", "pump", "mist", "feed")]
    public void Of_OrderGiven_StandsInThatOrder(params string[] order)
    {
        WheelLayout wheel = Design.Of(Ordered(order)).Wheel;
        IEnumerable<double> radii = order.Select(n => n is "feed" ? wheel.Feed!.RadiusMm : wheel.Ring(n).RadiusMm);
        Assert.Equal(radii.Order(), radii);
    }

    [Fact]
    public void Of_UsualOrderWrittenOut_GivesTheSameWheel()
    {
        WheelLayout usual = Design.Of(Three).Wheel;
        string[] order = ["feed", .. usual.Rings.OrderBy(r => r.RadiusMm).Select(r => r.Name)];
        WheelLayout written = Design.Of(Ordered(order)).Wheel;
        Assert.Equal(usual.OuterDiameterMm, written.OuterDiameterMm);
        Assert.Equal(usual.Rings.Select(r => r.RadiusMm), written.Rings.Select(r => r.RadiusMm));
    }

    [Fact]
    public void Of_OrderAgainstAGivenRadius_IsRefusedWithBoth()
    {
        Brief asked = Ordered("mist", "feed", "fan", "pump") with { Feed = Three.Feed! with { RadiusMm = 6 } };
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Design.Of(asked));
        Finding reason = Assert.Single(refused.Reasons);
        Assert.Equal("wheel.order", reason.Code);
        Assert.Contains("'mist' inside the feed", reason.Message, StringComparison.Ordinal);
        Assert.Contains("6 mm", reason.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AllRadiiOfADesignGivenBack_IsTheSameWheel()
    {
        WheelLayout wheel = Design.Of(Three).Wheel;
        WheelLayout copied = Design.Of(WithRadii(Three, wheel.Feed!.RadiusMm, [.. wheel.Rings.Select(r => r.RadiusMm)])).Wheel;
        Assert.Equal(wheel.OuterDiameterMm, copied.OuterDiameterMm, SameMm);
        Assert.Equal(wheel.Rings.Select(r => (r.WindowFromMm, r.WindowToMm)), copied.Rings.Select(r => (r.WindowFromMm, r.WindowToMm)));
    }

    [Fact]
    public void Of_OldWheelWithRingsTooNearForTheRules_IsDrawnAsItIsAndMisses()
    {
        // Paths of 2 mm and a little, 4.5 mm apart: 2.5 mm lie between them, of which the web takes 1.2 mm. The rules ask for about 4 mm beside each.
        Design design = Design.Of(WithRadii(Three, 22, 8, 12.5, 17));
        Outline copper = design.Wheel.Copper[0].Outline;
        Assert.Equal([8, 12.5, 17], design.Wheel.Rings.Select(r => r.RadiusMm));
        for (int i = 0; i < copper.Holes.Count; i++)
        {
            for (int k = i + 1; k < copper.Holes.Count; k++)
            {
                Assert.True(Distances.Between(new Outline(copper.Holes[i]), new Outline(copper.Holes[k])).DistanceMm >= 1.2 - SameMm);
            }
        }

        Assert.Equal(3, design.Findings.Count(f => f is { Severity: FindingSeverity.Error, Code: "spacing.open-contact" }));
        Assert.All(design.OpenContacts, c => Assert.True(c.Sideways.WorstMm < c.Sideways.RequiredMm));
    }

    [Fact]
    public void Of_OldWheelThatMissesATolerance_IsDrawnAsItIsAndMisses()
    {
        // A hundredth of a second is finer than 1 % of any on-time here.
        WheelLayout wheel = Design.Of(Three).Wheel;
        Brief copied = WithRadii(Three, wheel.Feed!.RadiusMm, [.. wheel.Rings.Select(r => r.RadiusMm)]);
        Design design = Design.Of(copied with { Outputs = [copied.Outputs[0] with { ToleranceS = 0.01 }, .. copied.Outputs.Skip(1)] });
        Assert.Contains(design.Findings, f => f is { Severity: FindingSeverity.Error, Code: "wheel.tolerance" } && f.Message.Contains("'mist'", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_OldWheelWithLessWebThanAsked_IsDrawnAsItIsAndMisses()
    {
        // A bore of 6 mm, and the feed's path from 4 mm on: 1 mm less play stays where 1.2 mm are asked.
        Design design = Design.Of(WithRadii(Three, 5.5, 14, 24, 34));
        Finding web = Assert.Single(design.Findings, f => f.Code is "wheel.web");
        Assert.Equal(FindingSeverity.Error, web.Severity);
        Assert.Contains("the feed", web.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OldWheelWithRingsOnTopOfEachOther_IsRefused()
    {
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Design.Of(WithRadii(Three, 20, 8, 9, 16)));
        Assert.Contains(refused.Reasons, r => r.Code is "wheel.web");
    }
}
