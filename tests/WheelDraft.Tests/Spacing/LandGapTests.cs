using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>Open contacts of a wheel of lands, as drawn and at the worst tolerance, worked by hand.</summary>
/// <remarks>One turn 180 s clockwise, 2° a second; on from 40° to 100° and from 150° to 190°; wipers 40° apart; cutter 0.05 mm, side play
/// 0.1 mm, half of the run-out 0.05 mm. A land is as long as its on-period and the way between the wipers, less what a patch reaches to either
/// side (<see cref="Wheel.WorkedLandsTests"/>): the 50° between the on-periods leave 10° and twice that reach between the lands.</remarks>
public sealed class LandGapTests
{
    private const double CloseMm = 1e-6;

    [Fact]
    public void Along_OneWiperWaitingOnEachLand_IsBetweenTheCornersOfBothLandsLessTwiceTheCutter()
    {
        (RingLayout ring, OpenContact open) = Measure(Heater(), MeasuredContacts.Fold(null), MeasuredContacts.Fold(null));

        // The lands' sides are radial: nearest are their inner corners. The patch, 2 mm along the radius, reaches furthest at its inner end.
        double reach = Math.Atan(0.2 / (ring.RadiusMm - 1));
        double corners = 2 * ring.LandFromMm!.Value * Math.Sin((Angles.RadFromDeg(10) + (2 * reach)) / 2);
        OpenPeriod between = open.Periods[0];
        Assert.Equal(100, Angles.DegFromRad(between.BreakRad), CloseMm);
        Assert.Equal(corners, between.Along!.NominalMm, CloseMm);
        Assert.Equal(corners - (2 * 0.05), between.Along.WorstMm, CloseMm);
        Assert.Equal((corners, corners - (2 * 0.05)), (between.GreatestMm, between.WorstGreatestMm), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < CloseMm);
    }

    [Fact]
    public void Sideways_BetweenTwoPatches_CountsPlayPlacingAndWearOfBoth()
    {
        // Each may lie 0.1 mm to one side and 0.07 mm along the motion; discs of 0.2 mm that have worn to 0.35 and 0.5 mm.
        Brief brief = Heater();
        ContactPatch own = MeasuredContacts.Rivet(null) with { WornHalfLengthMm = 0.35 }, other = MeasuredContacts.Rivet(null) with { WornHalfLengthMm = 0.5 };
        (RingLayout ring, OpenContact open) = Measure(brief with { Housing = brief.Housing with { PlacingMm = 0.07 } }, own, other);
        double drawn = (2 * ring.RadiusMm * Math.Sin(Angles.RadFromDeg(20))) - (2 * 0.2);
        Assert.Equal(drawn, open.Sideways.NominalMm, CloseMm);
        Assert.Equal(drawn - (2 * (0.1 + 0.07)) - 0.15 - 0.3, open.Sideways.WorstMm, CloseMm);
    }

    [Fact]
    public void Required_OfTwoUnlikeNoses_IsThatOfTheOneThatAsksMore()
    {
        ContactPatch slim = MeasuredContacts.Fold(1.5), blunt = MeasuredContacts.Fold(8);
        double[] alike = [.. new[] { slim, blunt }.Select(p => Required(p, p))];
        Assert.True(alike[1] > alike[0]);
        Assert.Equal([alike[1], alike[1]], [Required(slim, blunt), Required(blunt, slim)]);

        static double Required(ContactPatch own, ContactPatch other) => Measure(Heater(), own, other).Open.Sideways.RequiredMm!.Value;
    }

    private static Brief Heater() => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("heater", 30, (20, 30), (75, 20)), 50, 90));

    private static (RingLayout Ring, OpenContact Open) Measure(Brief brief, ContactPatch own, ContactPatch other)
    {
        Motion motion = Motion.Of(brief);
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, _ => brief.Supply.VoltageV);
        WheelLayout wheel = WheelSetter.Of(new WheelTask(brief, motion, Programme.Of(brief, motion), new WiperContacts(null, [own], [other]), rules.Distances));
        return (wheel.Rings[0], OpenContactMeter.Of(brief, motion, wheel).Of(0, rules.Outputs[0], brief.Supply.VoltageV, [])!);
    }
}
