using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel.Timing;

/// <summary>The rounded corners of windows: copper that a straight edge does not count.</summary>
public sealed class RoundedCornerTests
{
    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.3)]
    public void OnTime_AWiperAtTheEndOfItsPlay_DoesNotReachARoundedCorner(double movedMm)
    {
        // Was 0.05 mm of room whatever the play: the patch then rode on copper left in the corner, and the on-time passed its limits.
        OutputBrief output = Briefs.Output("fan", 20, 40) with { SidePlayMm = 0.3, OverOpenContact = null };
        Brief plain = Briefs.Plain(output);
        Design design = Design.Of(plain with
        {
            Process = plain.Process with { InsideRadiusMm = 1.2, ToleranceMm = 0, LeastSlotMm = 0.5 },
            Wheel = plain.Wheel with { RunOutMm = 0 },
            Supply = plain.Supply with { FrequencyToleranceShare = 0 },
        });
        RingLayout ring = design.Wheel.Rings[0];
        SweptPatch bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        (double from, double to) = Assert.Single(bench.OnPeriods(new(ring.RadiusMm + movedMm, 0, 0.4, 2, 0, false), clockwise: true));
        TimingLimits limits = ring.Periods[0].Limits;
        Assert.InRange((to - from) / 2, 40 - limits.ShorterS - 1e-6, 40 + limits.LongerS + 1e-6);
    }

    [Fact]
    public void Corners_AtASlopedEdge_StayClearOfPlayAndWear()
    {
        // The same of an adjusting edge: its acute corner carries the fillet far along the edge.
        OutputBrief output = Briefs.Worked().Outputs[1] with { SidePlayMm = 0.4, OverOpenContact = null, ToleranceS = 5 };
        Brief plain = Briefs.Plain(output);
        Design design = Design.Of(plain with
        {
            Process = plain.Process with { InsideRadiusMm = 0.8, ToleranceMm = 0 },
            Wheel = plain.Wheel with { RunOutMm = 0 },
            Supply = plain.Supply with { FrequencyToleranceShare = 0 },
        });
        RingLayout ring = design.Wheel.Rings[0];
        SweptPatch bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        foreach ((AdjustStep step, double side) in new[] { (ring.Adjust!.Steps[0], -0.4), (ring.Adjust.Steps[^1], 0.4) })
        {
            double station = Angles.DegFromRad(ring.StationRad);
            (double from, double to) = Assert.Single(bench.OnPeriods(new(ring.RadiusMm + step.OffsetMm + side, station, 0.8, 2, 0, false), clockwise: true));
            Assert.InRange((to - from) / 2, step.OnS - step.ShorterS - 1e-6, step.OnS + step.LongerS + 1e-6);
        }
    }

    [Theory]
    [InlineData(0.25, 0)]
    [InlineData(0, 0.35)]
    public void Intrusion_OfAWornDiscWithPlay_CountsBoth(double wearMm, double playMm)
    {
        // A disc grows all round: a corner must stand off by as much more as the contact wears, or has play.
        RingShop shop = new(new(180, Turning.Clockwise), 0, 0, new(null, 0, 0, 0.1, 0.1, 0.1, 0.8));
        RingDemand ring = new()
        {
            Name = "dome",
            Where = default,
            Patch = new() { IsDisc = true, HalfLengthMm = 0.4, HalfWidthMm = 0.4, WornHalfLengthMm = 0.4, AngleRad = 0 },
            Periods = [new(1, 1, 0)],
            SidePlayMm = 0,
            SideGapMm = 0.2,
            Adjust = new(AdjustedEdge.Off, 1, 2, LongerWay.In, "M3", 0.5, 1),
        };
        RingTrial trial = new RingSetter(shop, ring).At(20);
        RingDemand loose = ring with { Patch = ring.Patch with { WornHalfLengthMm = 0.4 + wearMm }, SidePlayMm = playMm };
        double exact = WindowCorners.Intrusion(shop, ring, trial);
        Assert.True(exact > 0);
        Assert.Equal(exact + wearMm + playMm, WindowCorners.Intrusion(shop, loose, trial), 1e-12);
    }
}
