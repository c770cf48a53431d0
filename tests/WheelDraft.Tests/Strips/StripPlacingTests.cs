using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class StripPlacingTests
{
    private static readonly string[] Names = [.. StripCases.All.Keys];

    private static PlacedStrip Placed(string name, double ringMm, double stationRad, double approachRad) =>
        StripSet.Of(StripBriefs.With(StripCases.All[name] with { ApproachRad = approachRad }), StripBriefs.Rings with { Feed = new RingPlace(ringMm, stationRad, 0.1, 60) }).Strips[0];

    // Oracle: the definition of the place. Wherever ring, station and approach are, the pressed contact is there and the arm leaves
    // that way, and the spring does not know of it.
    [Fact]
    public void Of_AnyRingStationAndApproach_ContactIsOnItsRingAndForceTheSame() =>
        Gen.Select(Gen.Int[0, Names.Length - 1], Gen.Double[3, 40], Gen.Double[-7, 7], Gen.Double[-7, 7]).Sample(
            (which, ring, station, approach) =>
            {
                PlacedStrip strip = Placed(Names[which], ring, station, approach);
                PlacedStrip fixedOne = Placed(Names[which], 6, 0, 0);
                SpaceVector contact = strip.WorkingContact!.Value;
                StripFrame nose = strip.Placement.Of(strip.Form.Nose!.Frame);
                double back = new Vector(-nose.Along.X, -nose.Along.Y).AngleRad;
                return contact.Plan.DistanceTo(Point.Polar(ring, station)) < 1e-9
                    && Math.Abs(contact.Z) < 1e-9
                    && Math.Abs(Angles.Signed(back - station - approach)) < 1e-9
                    && Math.Abs(strip.Spring!.ForceN - fixedOne.Spring!.ForceN) < 1e-12;
            },
            iter: 100);

    // Consistency: the same housing turned about its axis is the same strip turned.
    [Fact]
    public void Of_TurnedStation_SolidsTurnWithIt()
    {
        foreach (string name in Names)
        {
            PlacedStrip here = Placed(name, 12, 0.3, 1);
            PlacedStrip there = Placed(name, 12, 0.3 + 1.1, 1);
            Assert.Equal(here.Solids.Count, there.Solids.Count);
            foreach ((Solid a, Solid b) in here.Solids.Zip(there.Solids))
            {
                Assert.Equal(a.FromZMm, b.FromZMm, 1e-9);
                Assert.Equal(a.ToZMm, b.ToZMm, 1e-9);
                Assert.Equal(a.Outline.AreaMm2, b.Outline.AreaMm2, 1e-6);
                Assert.Equal(Distances.Radii(a.Outline, Point.Origin).LeastMm, Distances.Radii(b.Outline, Point.Origin).LeastMm, 1e-6);
            }
        }
    }

    // Consistency: every sweep and the approach mirrored is the mirrored strip, with the same force.
    [Fact]
    public void Of_MirroredSweeps_IsTheMirroredStrip()
    {
        foreach (string name in Names)
        {
            StripBrief brief = StripCases.All[name];
            StripBrief mirrored = brief with
            {
                ApproachRad = -brief.ApproachRad,
                Shape = [.. brief.Shape.Select(p => p is StripSweep s ? s with { AngleRad = -s.AngleRad } : p)],
            };
            RingPlaces rings = StripBriefs.Rings;
            PlacedStrip one = StripSet.Of(StripBriefs.With(brief), rings).Strips[0];
            PlacedStrip other = StripSet.Of(StripBriefs.With(mirrored), rings).Strips[0];
            Assert.Equal(one.Spring!.ForceN, other.Spring!.ForceN, 1e-9);
            Assert.Equal(one.Spring.StressMpa, other.Spring.StressMpa, 1e-6);
            foreach ((WorkingStation a, WorkingStation b) in one.Working.Zip(other.Working))
            {
                Assert.True((a.Frame.Origin - new SpaceVector(b.Frame.Origin.X, -b.Frame.Origin.Y, b.Frame.Origin.Z)).Length < 1e-9);
            }
        }
    }

    // Metamorphic: thicker stock presses harder, as t³ where nothing else changes (straight cantilever).
    [Fact]
    public void Of_ThickerStock_PressesWithItsCube()
    {
        double Stiffness(double t)
        {
            Brief brief = StripBriefs.Deflected(StripBriefs.Cantilever(25, 5, 3, t), 1);
            return StripSpring.Of(StripForm.Of(brief, 0), StripContact.OfFeed(brief), null).StiffnessNPerMm;
        }

        Assert.Equal(8, Stiffness(0.6) / Stiffness(0.3), 1e-9);
    }

    [Fact]
    public void Reasons_OfAStrip_EndInItsFigures()
    {
        PlacedStrip strip = Placed("Z with rivet", 6, 0, 1);
        Assert.EndsWith(FormattableString.Invariant($"{strip.Form.LengthMm:0.####} mm"), StripReasons.BlankLength(strip.Form)[^1], StringComparison.Ordinal);
        Assert.Contains(StripReasons.Force(strip), s => s.EndsWith(FormattableString.Invariant($"= {strip.Spring!.ForceN:0.####} N"), StringComparison.Ordinal));
        Assert.Contains(StripReasons.Stress(strip), s => s.Contains(FormattableString.Invariant($"{strip.Spring!.StressMpa:0.##} MPa"), StringComparison.Ordinal));
        Assert.Contains(StripReasons.BlankLength(strip.Form), s => s.Contains("Machinery's Handbook", StringComparison.Ordinal));
    }
}
