using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class StripContactTests
{
    private static Brief FoldBrief(double approachDeg, ContactBrief? contact = null)
    {
        StripBrief strip = StripCases.All["fold as contact"] with { ApproachRad = StripBriefs.Deg(approachDeg) };
        Brief brief = StripBriefs.With(strip);
        return brief with { Feed = brief.Feed! with { Contact = contact ?? StripBriefs.Patch() } };
    }

    private static string Refusal(Brief brief) =>
        Assert.Throws<DesignRefusedException>(() => StripContact.OfFeed(brief)).Reasons[0].Message;

    // contact_angle = approach − 90°, brought into (−90°, 90°].
    [Theory]
    [InlineData(90, 0)]
    [InlineData(-90, 0)]
    [InlineData(0, 90)]
    [InlineData(180, 90)]
    [InlineData(70, -20)]
    [InlineData(290, 20)]
    [InlineData(450, 0)]
    public void OfFeed_Fold_AngleIsApproachLessAQuarter(double approachDeg, double angleDeg)
    {
        StripContact contact = StripContact.OfFeed(FoldBrief(approachDeg));
        Assert.Equal(StripBriefs.Deg(angleDeg), contact.AngleRad, 1e-12);
        Assert.Equal(ContactShape.FoldLine, contact.Shape);
        Assert.Equal(3, contact.WidthMm);
        Assert.Equal(1.5, contact.NoseRadiusMm);
    }

    [Fact]
    public void OfFeed_Rivet_IsADiscOfTheContactLength()
    {
        StripContact contact = StripContact.OfFeed(StripBriefs.With(StripBriefs.Wiper("feed strip", new ServesFeed())));
        Assert.Equal((ContactShape.Disc, 0.8, 1.2, 1.5), (contact.Shape, contact.LengthMm, contact.WornLengthMm, contact.NoseRadiusMm));

        // Depth of a chord w in a circle R: w = 2 √(2 R h − h²) (derived geometry): 0.56 mm at R 2 mm is 0.02 mm deep.
        Assert.Equal(0.02, StripContact.DepthOf(0.5643, 2), 1e-5);
        Assert.Equal(0.1, StripContact.DepthOf(1.249, 2), 1e-4);
    }

    [Fact]
    public void OfOutput_WithoutStrip_IsTheOutputsOwn()
    {
        Brief brief = StripBriefs.With();
        string message = Assert.Throws<DesignRefusedException>(() => StripContact.OfOutput(brief, 0)).Message;
        Assert.Contains("contact_width", message, StringComparison.Ordinal);
        brief = brief with { Outputs = [brief.Outputs[0] with { Contact = new(0.4, 2, 0.8, 0.1, 1.5) }] };
        StripContact contact = StripContact.OfOutput(brief, 0);
        Assert.Equal((2.0, 0.1, 1.5), (contact.WidthMm, contact.AngleRad, contact.NoseRadiusMm!.Value));
        Assert.Null(contact.FromStrip);
    }

    [Fact]
    public void OfFeed_WhatDoesNotFit_IsRefusedWithBothNumbers()
    {
        Assert.Contains("2.5 mm but", Refusal(FoldBrief(90, StripBriefs.Patch(0.4, 2.5))), StringComparison.Ordinal);
        Assert.Contains("10° but", Refusal(FoldBrief(90, StripBriefs.Patch() with { AngleRad = StripBriefs.Deg(10) })), StringComparison.Ordinal);
        Assert.Contains("1.2 mm but", Refusal(FoldBrief(90, StripBriefs.Patch() with { NoseRadiusMm = 1.2 })), StringComparison.Ordinal);
        Assert.Contains("3.5 mm, more than its fold", Refusal(FoldBrief(90, StripBriefs.Patch(3.5))), StringComparison.Ordinal);
        Brief rivet = StripBriefs.With(StripBriefs.Wiper("feed strip", new ServesFeed()));
        rivet = rivet with { Feed = rivet.Feed! with { Contact = StripBriefs.Patch(0.4, 2) } };
        Assert.Contains("leave contact_width", Refusal(rivet), StringComparison.Ordinal);
    }

    [Fact]
    public void OfFeed_SameNumbersGivenTwice_AreAccepted()
    {
        ContactBrief given = new(0.4, 3, 0.8, StripBriefs.Deg(180), 1.5);
        Assert.Equal(3, StripContact.OfFeed(FoldBrief(90, given)).WidthMm);
    }

    [Fact]
    public void OfFeed_NoApproachOrTwoStrips_IsRefused()
    {
        StripBrief strip = StripBriefs.Wiper("feed strip", new ServesFeed());
        Assert.Contains("approach", Refusal(StripBriefs.With(strip with { ApproachRad = null })), StringComparison.Ordinal);
        Assert.Contains("both serve", Refusal(StripBriefs.With(strip, strip with { Name = "other" })), StringComparison.Ordinal);
    }

    // Clockwise copper at approach 90° (arm leaving anticlockwise) moves from root to tip: it trails.
    [Theory]
    [InlineData(90, Turning.Clockwise, ArmSense.Trailing)]
    [InlineData(90, Turning.Anticlockwise, ArmSense.Leading)]
    [InlineData(-60, Turning.Clockwise, ArmSense.Leading)]
    [InlineData(0, Turning.Clockwise, ArmSense.Across)]
    public void SenseOf_ApproachAndDirection_TellsHowTheArmMeetsTheCopper(double approachDeg, Turning direction, ArmSense sense) =>
        Assert.Equal(sense, StripContact.OfFeed(FoldBrief(approachDeg)).SenseOf(direction));
}
