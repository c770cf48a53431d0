using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>A land worked here by hand, from the definitions alone.</summary>
/// <remarks>
/// One turn 180 s clockwise (2° a second); on from 30 s for 20 s, so make at 60° and break at 100°; ring radius 20 mm, patch
/// 0.4 mm along the motion by 2 mm along the radius; output's wiper at 0°, second one at 330°. Turning clockwise a wheel point
/// passes 0° first and 330° thirty degrees later, so the output's wiper is upstream and Δ = 30°.
/// The patch reaches atan(0.2/19) = 0.603094° to either side. The land begins that much after the make, seen from the second
/// wiper: at 60.603094° − 30° = 30.603094° in the frame of the first; it ends at 100° − 0.603094° = 99.396906°. Its angle is
/// 68.793812° = 40° + 30° − 2 × 0.603094°. Clockwise, with the wiper at 0°, wheel angles are programme angles.
/// Radii: the patch covers 19 to √(21² + 0.2²) = 21.000952 mm; 0.1 mm of side play, 0.05 of run-out and 0.05 of cutter widen this to
/// 18.8 to 21.200952 mm.
/// The first wiper touches the land from 30° to 100°, the second from 60° to 130°; from 130° to 30° it floats.
/// Worst case: the corner that touches is √(19² + 0.2²) = 19.001053 mm from the axis, ω = 2π/180 s = 0.034906585 /s, so that a
/// cut edge of 0.05 mm takes 0.05/(19.001053 × 0.034906585) = 0.075385 s; frequency 1 % of 20 s; the centre, off by 0.05 mm, moves
/// edges that lie 68.793812° apart by 2 × 0.05 × sin 34.396906°/(19.001053 × 0.034906585) = 0.085173 s.
/// Patches: nearest are the inner corners, each 19 sin 15° − 0.2 cos 15° = 4.724377 mm from the line midway: 9.448754 mm.
/// </remarks>
public sealed class WorkedLandsTests
{
    private const double CloseDeg = 1e-5;
    private const double CloseMm = 1e-5;
    private const double CloseS = 1e-5;

    private static readonly Design Wheel = Design.Of(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 0, 330) with { RadiusMm = 20 }));
    private static readonly RingLayout Ring = Wheel.Wheel.Rings[0];

    [Fact]
    public void Land_WorkedHere_LiesWhereItWasWorked()
    {
        CircleArc copper = Ring.Periods[0].CopperRad;
        Assert.Equal(30.603094, Angles.DegFromRad(copper.StartRad), CloseDeg);
        Assert.Equal(99.396906, Angles.DegFromRad(copper.EndRad), CloseDeg);
        Assert.Equal(68.793812, Angles.DegFromRad(copper.SweepRad), CloseDeg);
        Assert.Equal(18.8, Ring.LandFromMm!.Value, CloseMm);
        Assert.Equal(21.200952, Ring.LandToMm!.Value, CloseMm);

        // (R² − r²)/2 times the angle.
        double area = ((21.200952 * 21.200952) - (18.8 * 18.8)) / 2 * (68.793812 * Math.PI / 180);
        Assert.Equal(area, Assert.Single(Wheel.Wheel.Copper).Outline.AreaMm2, 1e-3);
    }

    [Fact]
    public void Land_WorkedHere_IsLiveAndFloatingWhenItWasWorked()
    {
        LandLayout land = Assert.Single(Ring.Lands);
        Assert.Equal((30, 100), Rounded(land.OnWiper));
        Assert.Equal((60, 130), Rounded(land.OnReturn));
        Assert.Equal([(60, 100)], land.Joins.Select(Rounded));
        Assert.Equal([(130, 390)], land.Floats.Select(Rounded));
        Assert.Equal(LandState.Floating, land.StateAt(Angles.RadFromDeg(20)));
        Assert.Equal(LandState.OnWiper, land.StateAt(Angles.RadFromDeg(45)));
        Assert.Equal(LandState.OnBoth, land.StateAt(Angles.RadFromDeg(80)));
        Assert.Equal(LandState.OnReturn, land.StateAt(Angles.RadFromDeg(115)));
        Assert.Equal(LandState.Floating, land.StateAt(Angles.RadFromDeg(140)));
    }

    [Fact]
    public void Limits_WorkedHere_AreThoseWorked()
    {
        TimingLimits limits = Ring.Periods[0].Limits;
        Assert.Equal(20 * ((1 / 0.99) - 1), limits.Of(DeviationKind.Frequency).LongerS, CloseS);
        Assert.Equal(0.075385, limits.Of(DeviationKind.MakeCut).LongerS, CloseS);
        Assert.Equal(0.075385, limits.Of(DeviationKind.BreakCut).ShorterS, CloseS);
        Assert.Equal(0.085173, limits.Of(DeviationKind.Centre).LongerS, CloseS);
        Assert.Equal(0, limits.Of(DeviationKind.Wear).LongerS, 1e-12);
    }

    [Fact]
    public void Wipers_WorkedHere_AreApartAsWorked()
    {
        Assert.Equal(9.448754, Ring.Return!.PatchGapMm, CloseMm);
        Assert.Equal(30, Angles.DegFromRad(Ring.Return.ApartRad), CloseDeg);
        Assert.False(Ring.Return.IsUpstream);
    }

    [Fact]
    public void Wear_OneWiperMakesTheOtherBreaks_CountsEachOnce()
    {
        // Worn from 0.4 to 0.8 mm: each patch reaches atan(0.4/19) instead of atan(0.2/19), 0.602961° or 0.301481 s more; the
        // land makes that much sooner at the one wiper and breaks that much later at the other.
        OutputBrief output = Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 0, 330) with { RadiusMm = 20, Contact = new(0.4, 2, 0.8, 0, null) };
        double wear = Design.Of(Briefs.Lands(output)).Wheel.Rings[0].Periods[0].Limits.Of(DeviationKind.Wear).LongerS;
        Assert.Equal(2 * (Math.Atan(0.4 / 19) - Math.Atan(0.2 / 19)) * 180 / (2 * Math.PI), wear, CloseS);
    }

    [Fact]
    public void Solids_Lands_AreNetsOfTheirOwnThatFloatAtTimes()
    {
        Design design = Design.Of(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("heat", 3, (0, 50), (80, 40)), 0, 25)));
        Assert.Equal("heat land 1, heat land 2", string.Join(", ", design.Solids.Select(s => s.Name)));
        Assert.All(design.Solids, s => Assert.Equal((s.Name, true, true, true), (s.Net, s.IsWheelCopper, s.FloatsAtTimes, s.Turns)));
    }

    [Fact]
    public void Solids_AnOutputNamedLikeALand_KeepsItsNetApart()
    {
        Design design = Design.Of(Briefs.Lands(
            Briefs.TwoWipers(Briefs.Output("heat", 30, 20), 0, 25),
            Briefs.TwoWipers(Briefs.Output("heat land", 30, 20), 100, 125)));
        Assert.Equal("heat land', heat land land", string.Join(", ", design.Solids.Select(s => s.Net)));
    }

    private static (int From, int To) Rounded(CircleArc arc)
    {
        (double from, double to) = (Angles.DegFromRad(arc.StartRad), Angles.DegFromRad(arc.EndRad));
        Assert.Equal(Math.Round(from), from, CloseDeg);
        Assert.Equal(Math.Round(to), to, CloseDeg);
        return ((int)Math.Round(from), (int)Math.Round(to));
    }
}
