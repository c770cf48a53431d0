using NetTopologySuite.Operation.Distance;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Geometry;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>What wear takes from the gap of an open contact, sideways as well as along the motion.</summary>
/// <remarks>A worn disc is larger all round. Its growth was once counted along the motion alone: sideways it had less than what was
/// told, and windows were cut too narrow for it.</remarks>
public sealed class WornContactTests
{
    private const double RoundingMm = 1e-9;

    [Theory]
    [InlineData("hold")]
    [InlineData("mist")]
    public void WorstSideways_WornDisc_IsTheGapOfTheGrownDisc(string name)
    {
        // Oracle: NetTopologySuite, the worn disc shifted by all play towards the copper, far from both ends of the window.
        Brief brief = Briefs.Worked();
        (WheelLayout wheel, IReadOnlyList<OpenContact> open) = Set(brief, Disc(0.2, 0.4));
        RingLayout ring = wheel.Ring(name);
        OpenContact gap = open.Single(o => string.Equals(o.Output, name, StringComparison.Ordinal));
        Outline copper = wheel.Copper[0].Outline;
        double shift = ring.SidePlayMm + (brief.Wheel.RunOutMm / 2);
        OpenPeriod off = gap.Periods[0];
        double housing = ring.StationRad + ((off.BreakRad + off.MakeRad) / 2); // clockwise: wheel angles grow with the programme
        NetTopologySuite.Geometries.Geometry copperShape = Flattened.Polygon(copper);
        double least = new[] { ring.RadiusMm - (ring.TravelMm / 2) - shift, ring.RadiusMm + (ring.TravelMm / 2) + shift }
            .Min(r => Flattened.Of(Point.Polar(r, housing)).Distance(copperShape) - 0.4);
        Assert.Equal(least - brief.Process.ToleranceMm, gap.Sideways.WorstMm, Flattened.ErrorMm(copper));
        if (gap.RequiredMm is double required)
        {
            Assert.Equal(required, gap.Sideways.WorstMm, RoundingMm);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.05)]
    [InlineData(0.2)]
    [InlineData(0.6)]
    public void Worst_DiscOfAnAutoRing_NeverMissesForItsWear(double wearMm)
    {
        foreach (OpenContact gap in Set(Briefs.Worked(), Disc(0.2, 0.2 + wearMm)).Open)
        {
            Assert.True(gap.Sideways.WorstMm >= (gap.RequiredMm ?? 0.2) - RoundingMm);
            Assert.True(gap.RequiredMm is null || Verdicts.On(gap.WorstMm, gap.RequiredMm.Value) != SpacingVerdict.Misses);
        }
    }

    [Fact]
    public void SideGap_OfAWornRectangleWithARadialFold_HoldsWhatItsCornersReachFurther()
    {
        // g = 3.88 + 0.05 + 0.05 + 0.10 on the inner side; outside besides what the corners of the worn patch reach beyond those of the
        // new one at the outer end of travel. They were once left out, a few micrometres on the unsafe side.
        RingLayout mist = Set(Briefs.Worked(), Rectangle(0.4, 0)).Wheel.Ring("mist");
        double outer = mist.RadiusMm + 1 + 1;
        Assert.Equal(4.08, mist.PathFromMm - mist.WindowFromMm!.Value, 1e-6);
        Assert.Equal(4.08 + double.Hypot(outer, 0.4) - double.Hypot(outer, 0.2), mist.WindowToMm!.Value - mist.PathToMm, 1e-6);
    }

    [Fact]
    public void SideGap_OfAWornRectangleAcrossTheRadius_GrowsByItsWholeWear()
    {
        Assert.InRange(Set(Briefs.Worked(), Rectangle(0.4, Math.PI / 2)).Wheel.Ring("mist").SideGapMm!.Value, 4.28 - RoundingMm, 4.29);
        Assert.InRange(Set(Briefs.Worked(), Rectangle(0.4, -Math.PI / 6)).Wheel.Ring("mist").SideGapMm!.Value, 4.18 - RoundingMm, 4.19);
    }

    [Fact]
    public void SideGap_OfAWornTurnedRectangle_CountsWhatItsCornerReachesFurtherIn()
    {
        // By hand: at the inner end of its travel of 2 mm the corner of half width 1 and worn half length 0.6 lies √((ρ cos − 1)² + (ρ sin − 0.6)²)
        // from the axis, 0.4 by the length nearer than new times a little more than the sine of 30°.
        RingLayout mist = Set(Briefs.Worked(), Rectangle(0.6, Math.PI / 6)).Wheel.Ring("mist");
        double inner = mist.RadiusMm - 1;
        double corner = double.Hypot((inner * Math.Cos(Math.PI / 6)) - 1, (inner * 0.5) - 0.6);
        Assert.True(corner - mist.WindowFromMm!.Value >= 4.08 - 1e-6, FormattableString.Invariant($"{corner - mist.WindowFromMm}"));
    }

    [Fact]
    public void Worst_MoreWorn_NeverRises()
    {
        // Metamorphic: the same wheel under contacts ever more worn.
        Brief windowed = Briefs.Worked();
        Brief lands = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("heater", 30, (20, 60), (120, 30)), 0, 30));
        foreach (ContactPatch patch in (ContactPatch[])[Disc(0.2, 0.2), Rectangle(0.2, 0), Rectangle(0.2, 0.6), Rectangle(0.2, Math.PI / 2)])
        {
            foreach (Brief brief in new[] { windowed, lands })
            {
                WheelLayout wheel = Set(brief, patch).Wheel;
                double[] before = [.. Enumerable.Repeat(double.PositiveInfinity, 4 * brief.Outputs.Count)];
                for (double worn = 0.2; worn < 0.6; worn += 0.05)
                {
                    double[] now = [.. Measure(brief, Worn(wheel, worn)).SelectMany(Figures)];
                    Assert.All(now.Zip(before), f => Assert.True(f.First <= f.Second + RoundingMm));
                    before = now;
                }
            }
        }
    }

    [Fact]
    public void Lands_UnderWornDiscs_ReachBeyondThemAndKeepWhatIsRequiredBetweenRings()
    {
        // Oracle: NetTopologySuite; a worn disc at the limit of its play lies on its own land's width, and so keeps the live
        // distance from the lands of the next ring.
        Brief brief = Briefs.Lands(
            Briefs.TwoWipers(Briefs.Output("heater", 30, (20, 60)), 0, 30),
            Briefs.TwoWipers(Briefs.Output("fan", 30, (5, 90)), 120, 150));
        WheelLayout wheel = Set(brief, Disc(0.2, 0.5)).Wheel;
        RingLayout[] rings = [.. wheel.Rings.OrderBy(r => r.RadiusMm)];
        double shift = rings[0].SidePlayMm + (brief.Wheel.RunOutMm / 2);
        Outline next = rings[1].Lands[0].Outline;
        NetTopologySuite.Geometries.Geometry land = Flattened.Polygon(next);
        CircleArc covers = rings[1].Periods[0].CopperRad;
        NetTopologySuite.Geometries.Geometry disc = Flattened.Of(Point.Polar(rings[0].RadiusMm + shift, covers.StartRad + (covers.SweepRad / 2))).Buffer(0.5, 90);
        double required = OpenContactRequirements.Of(brief, _ => brief.Supply.VoltageV).Distances[0].RequiredMm;
        Assert.True(DistanceOp.Distance(disc, land) - brief.Process.ToleranceMm >= required - Flattened.ErrorMm(next));
        Assert.All(Measure(brief, wheel), o => Assert.True(o.Sideways.WorstMm >= required - RoundingMm));
    }

    [Fact]
    public void Lands_WipersAsNearAsWearAllows_MoveOutUntilTheWornPatchesKeepTheirDistance()
    {
        Brief brief = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("fan", 30, (5, 100)), 120, 130));
        OpenContact open = Measure(brief, Set(brief, Disc(0.2, 0.5)).Wheel).Single();
        Assert.Equal(open.RequiredMm!.Value, open.Sideways.WorstMm, 1e-6);
    }

    private static ContactPatch Disc(double halfMm, double wornMm) =>
        new() { IsDisc = true, HalfLengthMm = halfMm, HalfWidthMm = halfMm, WornHalfLengthMm = wornMm, AngleRad = 0 };

    private static ContactPatch Rectangle(double wornMm, double angleRad) =>
        new() { IsDisc = false, HalfLengthMm = 0.2, HalfWidthMm = 1, WornHalfLengthMm = wornMm, AngleRad = angleRad };

    private static (WheelLayout Wheel, IReadOnlyList<OpenContact> Open) Set(Brief brief, ContactPatch patch)
    {
        Motion motion = Motion.Of(brief);
        IReadOnlyList<ContactPatch> all = [.. brief.Outputs.Select(_ => patch)];
        bool isLands = brief.Wheel.Construction == WheelConstruction.Lands;
        WiperContacts contacts = new(isLands ? null : ContactPatch.Of(StripContact.OfFeed(brief)), all, isLands ? all : []);
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, _ => brief.Supply.VoltageV);
        WheelLayout wheel = WheelSetter.Of(new WheelTask(brief, motion, Programme.Of(brief, motion), contacts, rules.Distances));
        return (wheel, Measure(brief, wheel));
    }

    private static IReadOnlyList<OpenContact> Measure(Brief brief, WheelLayout wheel)
    {
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, _ => brief.Supply.VoltageV);
        OpenContactMeter meter = OpenContactMeter.Of(brief, Motion.Of(brief), wheel);
        IReadOnlyList<StandingStretch> standing = MeasuredContacts.Standing([new(0, 0.02, null)]);
        return [.. brief.Outputs.Select((_, i) => meter.Of(i, rules.Outputs[i], brief.Supply.VoltageV, standing)).OfType<OpenContact>()];
    }

    private static WheelLayout Worn(WheelLayout wheel, double wornMm) => wheel with
    {
        Rings = [.. wheel.Rings.Select(r => r with
        {
            Patch = r.Patch with { WornHalfLengthMm = wornMm },
            Return = r.Return is ReturnWiper other ? other with { Patch = other.Patch with { WornHalfLengthMm = wornMm } } : null,
        })],
    };

    private static IEnumerable<double> Figures(OpenContact open) =>
        [open.WorstMm, open.Sideways.WorstMm, open.Periods.Min(p => p.WorstGreatestMm), open.Parked?.WorstMm ?? 0];
}
