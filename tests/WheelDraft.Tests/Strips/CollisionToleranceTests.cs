using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>What runs into a strip only at worst: run-out, face run-out, cut edges, side play, travel and wear.</summary>
/// <remarks>The strip's own share was once left out. Each case stands 0.01 mm clear or 0.01 mm foul of the sum of all that acts, by hand.</remarks>
public sealed class CollisionToleranceTests
{
    private const double HairMm = 0.01;

    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(0.05, 0.0)]
    [InlineData(0.0, 0.07)]
    [InlineData(0.05, 0.15)]
    public void Of_RimBesideARiser_TouchesAtTheSumOfAllInPlan(double cutMm, double runOutMm)
    {
        // Only the riser stands as high as the rim; the strip was cut at 0.05 mm, its contact has 0.1 mm of side play and is wound up by friction.
        PlacedStrip strip = Strip();
        Solid riser = strip.Solids.Where(s => s.FromZMm < -1 && s.ToZMm > 0).MinBy(s => Distances.Radii(s.Outline, Point.Origin).LeastMm)!;
        double least = Distances.Radii(riser.Outline, Point.Origin).LeastMm;
        double sum = cutMm + runOutMm + 0.05 + 0.1 + Wound(strip);
        Assert.Empty(Found(strip, Rim(least - sum - HairMm, -0.5, 0, new(cutMm, 0, runOutMm, 0))));
        Assert.Single(Found(strip, Rim(least - sum + HairMm, -0.5, 0, new(cutMm, 0, runOutMm, 0))));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.08)]
    public void Of_HeadUnderAnArm_TouchesAtFaceRunOutAndWear(double faceRunOutMm)
    {
        PlacedStrip strip = Strip();
        Solid arm = strip.Solids.Where(s => !s.IsNose && s.Outline.Bounds.Centre.RadiusMm is > 10 and < 24 && s.ToZMm < 5).MinBy(s => s.FromZMm)!;
        double sum = faceRunOutMm + strip.Contact!.WearDepthMm!.Value;
        Assert.True(sum > 0.04);
        SolidTolerance tolerance = new(0, 0, 0, faceRunOutMm);
        Assert.Empty(Found(strip, Head(arm, arm.FromZMm - sum - HairMm, tolerance)));
        Assert.Single(Found(strip, Head(arm, arm.FromZMm - sum + HairMm, tolerance)));
    }

    [Fact]
    public void TurningSolids_CarryHalfOfBothRunOutsAndTheCut()
    {
        // Definition: the centre is off by half the total indicator reading, the face by half of the total axial run-out.
        Brief plain = Briefs.Plain(Briefs.Output("fan", 30, (20, 60)));
        Brief brief = plain with { Wheel = plain.Wheel with { RunOutMm = 0.14, FaceRunOutMm = 0.22, Fixings = new(3, 2.2, null, 0) } };
        WheelLayout wheel = Spacing.MeasuredContacts.Of(brief, Spacing.MeasuredContacts.Fold(null)).Wheel;
        IReadOnlyList<Solid> solids = WheelSolids.Of(brief, wheel);
        Assert.Equal(new SolidTolerance(0.05, 0, 0.07, 0.11), solids.Single(s => s.IsWheelCopper).Tolerance);
        Assert.All(solids.Where(s => s.Name.StartsWith("fixing", StringComparison.Ordinal)), s => Assert.Equal((0.07, 0.11), (s.Tolerance.RunOutMm, s.Tolerance.FaceRunOutMm)));
        Assert.Equal((0.07, 0.11), (WheelSolids.Carrier(brief, wheel).Tolerance.RunOutMm, WheelSolids.Carrier(brief, wheel).Tolerance.FaceRunOutMm));
    }

    [Fact]
    public void StripBeyondItsClamp_CarriesSidePlayHalfItsTravelAndItsWear()
    {
        Brief brief = StripBriefs.With(StripBriefs.Wiper("mist strip", new ServesOutput("mist", IsReturn: false)));
        OutputBrief mist = brief.Outputs[2] with { SidePlayMm = 0.12, Adjust = new(AdjustedEdge.Off, 1, 2, LongerWay.In, "M3", 0.5, 1) };
        PlacedStrip strip = StripSet.Of(brief with { Outputs = [brief.Outputs[0], brief.Outputs[1], mist] }, StripBriefs.Rings).Strips[0];
        Solid nose = strip.Solids.Single(s => s.IsNose);
        Assert.Equal(0.12 + 1 + Wound(strip), nose.Tolerance.SidePlayMm, 1e-12);

        // From a chord of 0.4 mm to one of 0.8 mm in a dome of radius 1.5 mm: √(1.5² − 0.2²) − √(1.5² − 0.4²).
        Assert.Equal(Math.Sqrt(2.21) - Math.Sqrt(2.09), nose.Tolerance.FaceRunOutMm, 1e-12);
        Assert.Equal(0, strip.Solids.MinBy(s => s.FromZMm)!.Tolerance.SidePlayMm);
    }

    [Fact]
    public void WholeTurn_OfAnOffsetShape_IsLessByTheOffsetThoughItsCornersAreRounded()
    {
        // Metamorphic: a shape grown by t all round, its corners rounded, is nearer to anything outside it by exactly t, at every angle, and so over
        // the turn; a sharp corner would be nearer still.
        Measuring.RandomShapes random = new(31);
        int judged = 0;
        for (int i = 0; i < 300; i++)
        {
            Outline still = random.WithArcs(), turning = random.Straight();
            OffsetResult grown = Offsets.Of(new Outline(turning.Outer), 0.2);
            double gap = WholeTurn.Nearest(still, new Outline(turning.Outer)).Plan.DistanceMm;
            if (gap <= 0.2 || grown.Outlines.Count != 1)
            {
                continue;
            }

            judged++;
            Assert.Equal(gap - 0.2, WholeTurn.Nearest(still, grown.Outlines[0]).Plan.DistanceMm, 1e-6);
            Assert.Equal(gap - 0.2, WholeTurn.Nearest(grown.Outlines[0], still).Plan.DistanceMm, 1e-6);
        }

        Assert.True(judged > 30, FormattableString.Invariant($"{judged} judged"));
    }

    private static PlacedStrip Strip() => StripSet.Of(StripBriefs.With(StripBriefs.Wiper("feed strip", new ServesFeed(), 45, 26)), StripBriefs.Rings).Strips[0];

    private static IReadOnlyList<Finding> Found(PlacedStrip strip, Solid turning) => StripCollisions.Of([strip], [turning], Turning.Clockwise, _ => null);

    private static Solid Rim(double radiusMm, double fromZMm, double toZMm, SolidTolerance tolerance) =>
        new("wheel", "L", SolidKind.Live, Turns: true, fromZMm, toZMm, new Outline(Contour.Circle(Point.Origin, radiusMm))) { IsWheelCopper = true, Tolerance = tolerance };

    private static Solid Head(Solid under, double toZMm, SolidTolerance tolerance) =>
        new("fixing 1", "L", SolidKind.Live, Turns: true, -3, toZMm, new Outline(Contour.Circle(under.Outline.Bounds.Centre, 0.5))) { Tolerance = tolerance };

    private static double Wound(PlacedStrip strip) => double.Hypot(strip.Spring!.WindUp!.Value.MostMm, strip.Spring.WindUp.Value.MostRadialMm);
}
