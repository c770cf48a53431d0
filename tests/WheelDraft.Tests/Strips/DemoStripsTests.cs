using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>The strips of the mains examples: what a person who opens the file may rely on.</summary>
public sealed class DemoStripsTests(ITestOutputHelper output)
{
    public static TheoryData<string> Files => [.. Demos.WithStrips];

    [Theory]
    [MemberData(nameof(Files))]
    public void Of_MainsDemo_HasStripsForFeedAndEveryOutput(string file)
    {
        Design design = Demos.Of(file);
        Assert.Equal(1, design.Brief.Strips.Count(s => s.Task is ServesFeed));
        Assert.All(design.Brief.Outputs, o => Assert.Single(design.Brief.Strips, s => s.Task is ServesOutput t && string.Equals(t.Output, o.Name, StringComparison.Ordinal)));
        Assert.Equal(design.Brief.Strips.Count, design.Strips.Strips.Count);
    }

    // Force band of bare sliding copper-alloy contacts and three quarters of yield: common practice, no source.
    [Theory]
    [MemberData(nameof(Files))]
    public void Of_MainsDemo_PressesInTheBandAndTakesNoSet(string file)
    {
        foreach (PlacedStrip strip in Demos.Of(file).Strips.Strips)
        {
            StripSpring spring = strip.Spring!;
            output.WriteLine(FormattableString.Invariant($"{strip.Form.Strip.Name}: {spring.LeastForceN:0.###} to {spring.MostForceN:0.###} N, yield {spring.YieldFactor:0.##}, fatigue {spring.FatigueFactor:0.##}"));
            Assert.InRange(spring.LeastForceN, 0.5, 3);
            Assert.InRange(spring.MostForceN, 0.5, 3);
            Assert.True(spring.YieldFactor > 4.0 / 3);
            Assert.True(spring.FatigueFactor > 1);
            Assert.Equal(ArmSense.Trailing, strip.Sense);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Of_MainsDemo_MissesNothingAndRunsIntoNothing(string file)
    {
        Design design = Demos.Of(file);
        Assert.DoesNotContain(design.Findings, f => f.Severity == FindingSeverity.Error);
        Assert.All(design.Spacing.Rows, r => Assert.NotEqual(SpacingVerdict.Misses, r.Verdict));
    }

    // Oracle: every solid of an arm against the wheel's copper by height and radius alone, written apart from the measuring.
    [Theory]
    [MemberData(nameof(Files))]
    public void Of_MainsDemo_ArmsKeepTheirClearanceOverEveryRing(string file)
    {
        Design design = Demos.Of(file);
        double rim = design.Wheel.OuterDiameterMm / 2;
        foreach (PlacedStrip strip in design.Strips.Strips.Where(s => !string.Equals(s.Net, design.Brief.Feed!.Net, StringComparison.Ordinal)))
        {
            double required = design.Spacing.Rows.First(r => r.Kind == SpacingKind.Clearance && string.Equals(r.SecondItem, strip.Form.Strip.Name, StringComparison.Ordinal) && r.FirstItem is ItemNames.Wheel).Required.RequiredMm;
            foreach (Solid solid in strip.Solids.Where(s => !s.IsNose))
            {
                double height = solid.FromZMm - (design.Brief.Wheel.FaceRunOutMm / 2) - solid.Tolerance.FaceRunOutMm;
                double beyond = Distances.Radii(solid.Outline, Point.Origin).LeastMm - solid.Tolerance.InPlanMm - (design.Brief.Wheel.RunOutMm / 2) - design.Brief.Process.ToleranceMm - rim;
                double gap = Math.Sqrt(Math.Pow(Math.Max(0, height), 2) + Math.Pow(Math.Max(0, beyond), 2));
                Assert.True(gap >= required, FormattableString.Invariant($"{strip.Form.Strip.Name}: {gap} mm at z {solid.FromZMm} to {solid.ToZMm}"));
            }
        }
    }

    // The contact of a whole design was judged against its ring's own path, so that a worn dome was refused on a sound wheel.
    [Fact]
    public void Of_WornDomeOnAWideCopperRing_IsNotOffItsRing()
    {
        PlacedStrip mist = Demos.Of("propagation-bench").Strips.Strips.Single(s => s.Net is "mist");
        Assert.Equal(3, mist.Ring!.InnerMm, 1e-9);
        Assert.Equal(Demos.Of("propagation-bench").Wheel.OuterDiameterMm / 2, mist.Ring.OuterMm, 1e-9);
    }
}
