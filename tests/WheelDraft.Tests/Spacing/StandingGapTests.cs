using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>The gap of an open contact wherever the wheel can stand.</summary>
/// <remarks>Only the places where the wheel's own contact stops its motor were once looked at, and of the tolerances there only those
/// that act straight across an edge.</remarks>
public sealed class StandingGapTests
{
    // A least gap over a stretch is told up to this much below what it is.
    private const double CertifiedMm = 1.1e-6;

    // On 20 mm, a patch of half length 0.2 mm by half width 1 mm: its break at 80 s of 180 s.
    private static readonly double BreakRad = Angles.TurnRad * 80 / 180;

    [Fact]
    public void Parked_PlayWearAndShape_AllTakeFromTheGap()
    {
        // By hand: the nearest point of the patch is its inner rear corner, worn to 0.35 mm and 0.1 mm further in; from it straight to
        // the edge, less 0.05 mm of the cut and 0.05 mm of the centre.
        OpenContact open = At(0.15, 0.3, halfWornMm: 0.35);
        Assert.Equal(Corner(0.35, 0.15) - 0.1, open.Parked!.WorstMm, CertifiedMm);
    }

    [Theory]
    [InlineData(0.0, 0.05)]
    [InlineData(0.2, 0.05)]
    [InlineData(0.2, 0.02)]
    public void Parked_CentreOffsetAndCut_AreCountedInFull(double runOutMm, double cutMm)
    {
        Brief brief = Brief(runOutMm, cutMm);
        OpenContact open = MeasuredContacts.Of(brief, MeasuredContacts.Fold(null), new ParkedPosition(BreakRad + 0.15, BreakRad + 0.3, null)).Only;
        Assert.Equal(Corner(0.2, 0.15) - (runOutMm / 2) - cutMm, open.Parked!.WorstMm, CertifiedMm);
    }

    [Fact]
    public void Parked_PlacedOffItsStation_ComesNearerByAsMuch()
    {
        Brief brief = Brief(0.1, 0.05);
        MeasuredContacts measured = MeasuredContacts.Of(brief, MeasuredContacts.Fold(null));
        RingLayout ring = measured.Wheel.Rings[0];
        ParkedGap Gap(double placingMm) => new WindowGaps(Motion.Of(brief), ring, OpenContactRule.None, new(0.05, 0.05, 0.1) { PlacingMm = placingMm })
            .LeastBetween(0, BreakRad + 0.1, BreakRad + 0.2);
        Assert.Equal(Gap(0).Along!.WorstMm - 0.15, Gap(0.15).Along!.WorstMm, CertifiedMm);
    }

    [Fact]
    public void Parked_LongStretch_TheEndThatIsNearerToCopperDecides()
    {
        // To the make, a turn after 20 s: 0.16 rad before it the gap is that of the mirror image.
        double make = Angles.TurnRad * (1 + (20.0 / 180));
        OpenContact open = MeasuredContacts.Of(Brief(0.1, 0.05), MeasuredContacts.Fold(null), new ParkedPosition(BreakRad + 0.3, make - 0.16, null)).Only;
        Assert.Equal(Corner(0.2, 0.16) - 0.1, open.Parked!.WorstMm, CertifiedMm);
        Assert.Equal(make - 0.16, open.Parked.AtRad, 1e-6);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Parked_SeveralStretches_TheOneNearestToCopperDecidesInWhateverOrder(bool nearestFirst)
    {
        ParkedPosition near = new(BreakRad + 0.15, BreakRad + 0.2, null), far = new(BreakRad + 0.4, BreakRad + 0.5, null);
        ParkedPosition[] stretches = nearestFirst ? [near, far] : [far, near];
        OpenContact open = MeasuredContacts.Of(Brief(0.1, 0.05), MeasuredContacts.Fold(null), stretches).Only;
        Assert.Equal(Corner(0.2, 0.15) - 0.1, open.Parked!.WorstMm, CertifiedMm);
        Assert.Equal(near.FromRad, open.Parked.FromRad);
    }

    [Theory]
    [InlineData(-0.01, 0.05)]
    [InlineData(0, 0.05)]
    [InlineData(-0.2, -0.003)]
    public void Parked_AStretchThatReachesOverItsOwnBreak_IsAContactThatMayStandOpenByNothing(double fromRad, double toRad)
    {
        // At worst the contact breaks 0.1 mm, on 19 mm more than 0.005 rad, sooner than drawn.
        OpenContact open = MeasuredContacts.Of(Brief(0.1, 0.05), MeasuredContacts.Fold(null), new ParkedPosition(BreakRad + fromRad, BreakRad + toRad, null)).Only;
        Assert.Equal(0, open.Parked!.WorstMm, CertifiedMm);
        Assert.Equal(SpacingVerdict.Misses, Verdicts.On(open.WorstMm, open.RequiredMm!.Value));
    }

    [Fact]
    public void Parked_ClosedAsDrawnAndOpenOnlyAtItsWorst_HasNoGapAsDrawnEither()
    {
        // The cut edge and the centre may lie 0.9 mm off, more than the patch's 0.4 mm: as drawn the patch is all on copper, beyond its edge.
        OpenContact open = MeasuredContacts.Of(Brief(1.2, 0.3), MeasuredContacts.Fold(null), new ParkedPosition(BreakRad - 0.038, BreakRad - 0.03, null)).Only;
        Assert.Equal(0, open.Parked!.LeastMm);
        Assert.Equal(0, open.Parked.WorstMm);
    }

    [Fact]
    public void Sideways_WindowThatEndsNearerOutside_IsJudgedThere()
    {
        // By hand: the outer corner of the patch on 20 mm is √((20 + 1 + 0.1)² + 0.2²) from the axis with 0.1 mm of side play.
        Brief brief = Brief(0.1, 0.05);
        RingLayout ring = MeasuredContacts.Of(brief, MeasuredContacts.Fold(null)).Wheel.Rings[0];
        double windowTo = ring.WindowToMm!.Value - 0.3;
        WindowGaps gaps = new(Motion.Of(brief), ring with { WindowToMm = windowTo, SideGapMm = null }, OpenContactRule.None, new(0.05, 0.05, 0.1));
        Assert.Equal(windowTo - double.Hypot(21.1, 0.2) - 0.1, gaps.Sideways(0).WorstMm, CertifiedMm);
    }

    [Fact]
    public void Parked_WellWithinItsOnPeriod_HasNoGap() =>
        Assert.Null(MeasuredContacts.Of(Brief(0.1, 0.05), MeasuredContacts.Fold(null), new ParkedPosition(BreakRad - 0.5, BreakRad - 0.02, null)).Only.Parked);

    [Fact]
    public void Parked_OverAWholeTurn_IsNoGap() =>
        Assert.Equal(0, MeasuredContacts.Of(Brief(0.1, 0.05), MeasuredContacts.Fold(null), new ParkedPosition(3, 3 + Angles.TurnRad, null)).Only.Parked!.WorstMm);

    [Fact]
    public void Parks_AnInputThatOpensBeforeTheWheelHoldsItself_IsAPlaceWhereItStands()
    {
        // The demo as it once was: its fan makes at 10 s and breaks at 170 s. Until 'run' closes, at 3 s, the humidity switch can leave the
        // wheel standing, at worst at 6° with the bands of that edge, coast, backlash and what friction winds up; it was told to meet.
        Design design = Bench(("from = \"15 s\", for = \"90 s\"", "from = \"10 s\", for = \"90 s\""));
        OpenContact stir = design.OpenContacts.Single(o => o.Output is "stir");
        Assert.InRange(stir.Parked!.WorstMm, 1.8, 3.3);
        Finding missed = design.Findings.Single(f => f.Code is "spacing.open-contact" && f.Severity == FindingSeverity.Error);
        Assert.Contains("'stir'", missed.Message, StringComparison.Ordinal);
        Assert.Contains("the wheel can stand there", missed.Message, StringComparison.Ordinal);
        Assert.False(design.Meets);
        Assert.True(Demos.Of("propagation-bench").Meets);
    }

    [Fact]
    public void Parks_JustBehindItsOwnEdge_CountsTheBandOfThatEdge()
    {
        // The demo as it once was: 17° after the fan's break the wheel parks, by exact edges with room to spare, at worst not.
        Design design = Bench(("from = \"137 s\", for = \"30 s\"", "from = \"140 s\", for = \"30 s\""));
        Assert.InRange(design.OpenContacts.Single(o => o.Output is "stir").Parked!.WorstMm, 3, 3.8);
        Assert.False(design.Meets);
    }

    private static Design Bench(params (string Old, string Now)[] changes)
    {
        string text = File.ReadAllText(Demos.PathOf("propagation-bench"));
        foreach ((string old, string now) in changes)
        {
            Assert.Contains(old, text, StringComparison.Ordinal);
            text = text.Replace(old, now, StringComparison.Ordinal);
        }

        return Design.Of(ParameterReader.Read(Encoding.UTF8.GetBytes(text)).Brief!);
    }

    private static OpenContact At(double fromRad, double toRad, double halfWornMm) => MeasuredContacts.Of(
        Brief(0.1, 0.05),
        MeasuredContacts.Fold(null) with { WornHalfLengthMm = halfWornMm },
        new ParkedPosition(BreakRad + fromRad, BreakRad + toRad, null)).Only;

    // From the inner rear corner of a patch, 0.1 mm further in than drawn, to the radial edge that the new patch as drawn has left by an
    // angle: the corner leads the edge by that angle and lags it by what it reaches behind the station more than the new one.
    private static double Corner(double halfMm, double angle)
    {
        const double played = 20 - 1 - 0.1;
        return double.Hypot(played, halfMm) * Math.Sin(angle + Math.Atan(0.2 / 19) - Math.Atan(halfMm / played));
    }

    private static Brief Brief(double runOutMm, double cutMm)
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 30, (20, 60)) with { RadiusMm = 20 });
        return plain with { Wheel = plain.Wheel with { RunOutMm = runOutMm }, Process = plain.Process with { ToleranceMm = cutMm } };
    }
}
