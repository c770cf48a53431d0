using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>Single rules of the layout, each worked here by hand from the definitions.</summary>
public sealed class WheelRuleTests
{
    private const double CloseMm = 1e-6;

    // 230 V functional at degree 3, group IIIa: 3.68 mm by IEC 60664-1:2020 Table F.5 (200 V: 3.2, 250 V: 4.0, linear), margin 0.2 mm.
    private const double RequiredMm = 3.88;

    [Theory]
    [InlineData(false, EdgeEnd.Make, 1.8)]
    [InlineData(false, EdgeEnd.Break, 1.3)]
    [InlineData(true, EdgeEnd.Make, 1.3)]
    [InlineData(true, EdgeEnd.Break, 1.9)]
    public void TouchOf_AWiperMovedOutward_ChangesByItsSlope(bool isDisc, EdgeEnd end, double normalRad)
    {
        ContactPatch contact = new() { IsDisc = isDisc, HalfLengthMm = 0.3, HalfWidthMm = isDisc ? 0.3 : 1, WornHalfLengthMm = 0.3, AngleRad = 0 };
        ProgrammePatch patch = new(contact, Turning.Clockwise);
        CopperEdge edge = CopperEdge.Sloped(end, patch, 20, 1, normalRad);

        // Central difference over a hundredth of a millimetre.
        double slope = (edge.TouchOf(patch, 20.005).AtRad - edge.TouchOf(patch, 19.995).AtRad) / 0.01;
        Assert.Equal(slope, edge.TouchOf(patch, 20).RadPerMm, 1e-7);
        Assert.True(Math.Abs(slope) > 1e-3);
    }

    [Fact]
    public void Screw_WithALever_MovesTheWiperByItsRatio()
    {
        Brief worked = Briefs.Worked();
        AdjustBrief asked = worked.Outputs[1].Adjust!;
        AdjustLayout Of(double lever) => Design.Of(worked with { Outputs = [worked.Outputs[0], worked.Outputs[1] with { Adjust = asked with { Lever = lever } }] }).Wheel.Ring("mist").Adjust!;

        // M3: 0.5 mm a turn; 2 mm of travel are 4 turns, with a lever of 2 (wiper by screw travel) 2 turns of twice the effect.
        Assert.Equal(2, Of(2).Turns, 1e-12);
        Assert.Equal(2 * Of(1).Middle.SecondsPerTurn, Of(2).Middle.SecondsPerTurn, 1e-12);
    }

    [Fact]
    public void OverStep_ARoundNose_ReachesToHalfItsChord()
    {
        // A circle of 1.5 mm over an edge 0.1 mm high: half chord √(2 × 1.5 × 0.1 − 0.01) = √0.29. Worn from a chord of 0.4 to one of
        // 0.6 mm it rides lower by √(1.5² − 0.2²) − √(1.5² − 0.3²), and meets the edge that much higher up.
        ContactPatch patch = new() { IsDisc = false, HalfLengthMm = 0.2, HalfWidthMm = 1, WornHalfLengthMm = 0.3, AngleRad = 0, NoseRadiusMm = 1.5 };
        Assert.Equal(Math.Sqrt(0.29), patch.OverStep(0.1).HalfLengthMm, 1e-12);
        double high = 0.1 + Math.Sqrt(2.21) - Math.Sqrt(2.16);
        Assert.Equal(Math.Sqrt((3 * high) - (high * high)), patch.OverStep(0.1).WornHalfLengthMm, 1e-12);
        Assert.Equal(0.3, patch.OverStep(0.01).WornHalfLengthMm, 1e-12);
    }

    [Fact]
    public void Window_IsAtLeastTwoInsideRadiiWide()
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 3, (10, 60), (76, 60)) with { OverOpenContact = null });
        RingLayout ring = Design.Of(plain with { Process = plain.Process with { InsideRadiusMm = 2 } }).Wheel.Rings[0];
        double inner = ring.WindowFromMm!.Value;
        double gap = ring.Periods[1].Make.AngleAt(inner) - ring.Periods[0].Break.AngleAt(inner);
        Assert.Equal(4, 2 * inner * Math.Sin(gap / 2), CloseMm);
    }

    [Fact]
    public void Lands_OfOneRing_KeepTheDistanceWithBothCutEdges()
    {
        // Off for 21 s, 42°, wipers 30° apart: the ring grows until the gap is the distance and both edges' 0.05 mm.
        OutputBrief output = Briefs.TwoWipers(Briefs.Output("heat", 60, (0, 50), (71, 50)), 0, 30);
        RingLayout ring = Design.Of(Briefs.Lands(output)).Wheel.Rings[0];
        double gap = ring.Periods[1].Make.AngleAt(20) - ring.Periods[0].Break.AngleAt(20);
        Assert.Equal(RequiredMm + 0.1, 2 * ring.LandFromMm!.Value * Math.Sin(gap / 2), CloseMm);
    }

    [Fact]
    public void Lands_OfTwoRings_KeepTheDistanceWithBothCutEdges()
    {
        WheelLayout wheel = Design.Of(Briefs.Lands(
            Briefs.TwoWipers(Briefs.Output("heat", 20, 60, 60), 0, 30),
            Briefs.TwoWipers(Briefs.Output("shake", 20, 60, 60), 180, 210))).Wheel;
        Assert.Equal(RequiredMm + 0.1, wheel.Rings[1].LandFromMm!.Value - wheel.Rings[0].LandToMm!.Value, CloseMm);
    }

    [Fact]
    public void Lands_BesideFixings_KeepTheDistanceAndTheCutter()
    {
        // Bore 3 mm, web 1.2 mm, holes of 2.2 mm: they reach to 6.4 mm.
        Brief lands = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("heat", 20, 60, 60), 0, 30));
        WheelLayout wheel = Design.Of(lands with { Wheel = lands.Wheel with { Fixings = new(3, 2.2, null, 0) { GivenHeadMm = 2.2 } } }).Wheel;
        Assert.Equal(2 * (3 + 1.2 + 1.1), wheel.PitchCircleMm!.Value, CloseMm);
        Assert.Equal(6.4 + RequiredMm + 0.05, wheel.Rings[0].LandFromMm!.Value, CloseMm);
    }

    [Fact]
    public void Lands_BesideALiveShaft_KeepTheDistanceTheCutterAndTheRunOut()
    {
        // A shaft of 5 mm in a bore of 6 mm, run-out 0.4 mm.
        Brief lands = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("heat", 20, 60, 60), 0, 90));
        WheelLayout wheel = Design.Of(lands with { Wheel = lands.Wheel with { Shaft = ShaftKind.Live, ShaftNet = "L", ShaftDiameterMm = 5, RunOutMm = 0.4 } }).Wheel;
        Assert.Equal(2.5 + RequiredMm + 0.05 + 0.2, wheel.Rings[0].LandFromMm!.Value, CloseMm);
    }

    [Fact]
    public void Feed_OutsideTheFixings_KeepsAWebPlayAndRunOut()
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 20, 60, 20));
        WheelLayout wheel = Design.Of(plain with { Wheel = plain.Wheel with { Fixings = new(3, 2.2, null, 0) { GivenHeadMm = 2.2 } } }).Wheel;
        Assert.Equal(6.4 + 1.2 + 0.1 + 0.05, wheel.Feed!.PathFromMm, CloseMm);
    }

    [Fact]
    public void Fixings_ManyOfThem_KeepAWebBetweenThem()
    {
        // Twelve holes of 2.2 mm, a web of 1.2 mm between neighbours: 3.4 mm apart.
        Brief plain = Briefs.Plain(Briefs.Output("fan", 20, 60, 20));
        WheelLayout wheel = Design.Of(plain with { Wheel = plain.Wheel with { Fixings = new(12, 2.2, null, 0) { GivenHeadMm = 2.2 } } }).Wheel;
        Assert.Equal(3.4, wheel.Fixings[0].DistanceTo(wheel.Fixings[1]), CloseMm);
    }

    [Fact]
    public void After_AnOutputWithSeveralPeriods_StartsAfterTheLastListed()
    {
        OutputBrief first = Briefs.Output("first", 20, (10, 20), (60, 15));
        OutputBrief second = Briefs.Output("second", 20, 0, 10) with
        {
            On = new([new OnPeriodBrief(new StartAfter("first", TurnAmount.Seconds(5)), new LastsFor(TurnAmount.Seconds(10)))]),
        };
        Programme programme = Design.Of(Briefs.Plain(first, second)).Programme;

        // 60 s and 15 s and the gap of 5 s: 80 s, 160°.
        Assert.Equal(160, Angles.DegFromRad(programme.Outputs[1].Periods[0].StartRad), 1e-9);
    }

    [Theory]
    [InlineData(2.1, false)]
    [InlineData(2.3, true)]
    public void Holes_SmallerThanTheProcessMakes_AreTold(double leastHoleMm, bool isTold)
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 20, 60, 20));
        Design design = Design.Of(plain with { Wheel = plain.Wheel with { Fixings = new(3, 2.2, null, 0) }, Process = plain.Process with { LeastHoleMm = leastHoleMm } });
        Assert.Equal(isTold, design.Findings.Any(f => f.Code is "cut.hole"));
    }

    [Theory]
    [InlineData("7.2 L/h", 0.002)]
    [InlineData("1.2 L/min", 0.02)]
    public void Flow_ByTheHour_IsAThreeThousandSixHundredthASecond(string flow, double litresPerSecond)
    {
        string text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "cases", "worked", "worked-wheel.toml"));
        Brief brief = ParameterReader.Read(text.Replace("1.2 L/min", flow, StringComparison.Ordinal)).Brief!;
        Assert.Equal(litresPerSecond, brief.Outputs[1].FlowLPerS!.Value, 1e-15);
    }

    [Fact]
    public void Housing_PlacingOfTheFile_ReachesTheBands()
    {
        string text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "cases", "worked", "worked-wheel.toml"));
        Brief brief = ParameterReader.Read(text + "\n[housing]\nplacing = \"0.2 mm\"\n[monte_carlo]\nseed = 7\n").Brief!;
        Assert.Equal(0.2, brief.Housing.PlacingMm, 1e-12);
        Design design = Design.Of(brief);
        Assert.True(design.Wheel.Ring("hold").Periods[0].Bands.Make.LaterRad > Design.Of(Briefs.Worked()).Wheel.Ring("hold").Periods[0].Bands.Make.LaterRad + 0.01);
        Assert.DoesNotContain(design.Findings, f => f.Code is "tolerance.draws"); // once a note that no draws are made
        Assert.Equal(7, design.Brief.MonteCarlo.Seed);
    }
}
