using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class StripSolidsTests
{
    public static TheoryData<string> Strips => [.. StripCases.All.Keys];

    private static PlacedStrip Placed(string name) => StripSet.Of(StripBriefs.With(StripCases.All[name]), StripBriefs.Rings).Strips[0];

    // Every corner of the metal at every station lies in some solid of the strip, in plan and in height: the prisms hold the strip.
    [Theory]
    [MemberData(nameof(Strips))]
    public void Of_EveryCornerOfTheMetal_LiesInASolid(string name)
    {
        PlacedStrip strip = Placed(name);
        double half = strip.Form.Strip.ThicknessMm / 2;
        foreach (WorkingStation s in strip.Working.Where(s => strip.Form.Pieces[s.Piece].Kind != FormedKind.Fold))
        {
            foreach ((int side, int face) in new[] { (1, 1), (1, -1), (-1, 1), (-1, -1) })
            {
                SpaceVector corner = s.Frame.At(0, side * s.WidthMm / 2, face * half);
                Assert.Contains(strip.Solids, b => corner.Z >= b.FromZMm - 0.001 && corner.Z <= b.ToZMm + 0.001
                    && Distances.Between(corner.Plan, b.Outline).DistanceMm < 0.01);
            }
        }
    }

    // Height varies by at most 0.05 mm in each prism of a leg that is not steep: its thickness is the strip's (over the cosine of its slope) and that much.
    [Theory]
    [MemberData(nameof(Strips))]
    public void Of_LevelLegs_AreThinPrisms(string name)
    {
        PlacedStrip strip = Placed(name);
        double t = strip.Form.Strip.ThicknessMm;
        Solid[] arm = [.. strip.Solids.Where(s => !s.IsNose && s.FromZMm > 0.02 && s.ToZMm - s.FromZMm < 3 * t && s.Outline.Bounds.Centre.RadiusMm < 20)];
        Assert.NotEmpty(arm);

        // A leg that torsion rolls is thicker by its roll across its width, whatever it is split into; a slope of 8° adds 1 %.
        double roll = strip.Working.Where(s => Math.Abs(s.Frame.Along.Z) < 0.5).Max(s => Math.Abs(s.Frame.Left.Z) * s.WidthMm);
        Assert.All(arm, s => Assert.True(s.ToZMm - s.FromZMm <= (t * 1.01) + 0.05 + roll + 1e-9, FormattableString.Invariant($"{s.FromZMm} {s.ToZMm}")));
    }

    // By hand: the seat's leg and the riser run to the outer mould line of the first fold, R + t beyond its tangent lines.
    [Fact]
    public void Of_RightAngle_LegsMeetAtTheOuterMouldLine()
    {
        StripBrief strip = new("angle", new ServesNet("N", new(45, 0)), "C51000-H04", 0.5, [new StripStraight(10, 4, null), new StripBend(Math.PI / 2, 1, false), new StripStraight(8, 4, null)])
        {
            Grain = StripGrain.Along,
            ApproachRad = 0,
            SeatedOn = "floor",
        };

        // The end's plan direction: a riser has none of its own, so a level end is what an approach speaks of.
        StripBrief z = strip with { Shape = [.. strip.Shape, new StripBend(-Math.PI / 2, 1, false), new StripStraight(6, 4, null)] };
        PlacedStrip placed = StripSet.Of(StripBriefs.With(z), StripBriefs.Rings).Strips[0];
        Assert.Equal("N", placed.Net);
        double least = placed.Solids.Min(s => s.FromZMm);
        double most = placed.Solids.Max(s => s.ToZMm);
        Assert.Equal(-7, least, 1e-9);
        Assert.Equal(-7 + 0.5 + 8 + (2 * 1) + 0.5, most, 1e-9);

        // Approach 0 leaves outward: the end at 45 mm, the foot's end 6 + 2 × 1.25 + 10 further out.
        Assert.Equal(45, placed.Solids.Min(s => s.Outline.Bounds.MinX), 1e-9);
        Assert.Equal(45 + 6 + 2.5 + 10, placed.Solids.Max(s => s.Outline.Bounds.MaxX), 1e-9);

        // Foot leg to the mould line: the riser's far face, 51 + 1.25 − 0.25 mm out.
        Solid[] foot = [.. placed.Solids.Where(s => s.ToZMm < -6.4)];
        Assert.Equal(51 + 1.25 - 0.25, foot.Min(s => s.Outline.Bounds.MinX), 1e-9);
        Solid[] riser = [.. placed.Solids.Where(s => s.ToZMm - s.FromZMm > 1)];
        Assert.Equal(-7, riser.Min(s => s.FromZMm), 1e-9);
        Assert.All(riser, s => Assert.Equal(0.5, s.Outline.Bounds.Width, 1e-9));
    }

    [Fact]
    public void Of_Rivet_IsACylinderOfItsHeadMarkedAsNose()
    {
        Solid rivet = Assert.Single(Placed("Z with rivet").Solids, s => s.IsNose);
        Assert.Equal(0, rivet.FromZMm, 1e-9);
        Assert.Equal(2.2, rivet.ToZMm, 1e-9);
        Assert.Equal(Math.PI * 1.25 * 1.25, rivet.Outline.AreaMm2, 1e-9);
        Assert.Equal(6, rivet.Outline.Bounds.Centre.RadiusMm, 1e-9);
    }

    [Fact]
    public void Of_FoldContact_OnlyTheNoseComesToTheCopper()
    {
        PlacedStrip strip = Placed("fold as contact");
        Assert.All(strip.Solids.Where(s => !s.IsNose && s.Outline.Bounds.Centre.RadiusMm < 20), s => Assert.True(s.FromZMm > 0));
        Assert.All(strip.Solids.Where(s => s.IsNose), s => Assert.True(s.FromZMm >= 0));
        Assert.Contains(strip.Solids, s => s.IsNose && s.FromZMm < 0.01);
    }

    private static Solid[] WheelAndCarrier() =>
    [
        new("wheel", "L", SolidKind.Live, Turns: true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, 26), [Contour.Circle(Point.Origin, 3)]))
        {
            IsWheelCopper = true,
            Tolerance = new(0.05, 0, 0.05, 0.05),
        },
        new("carrier", "carrier", SolidKind.Floating, Turns: true, -3, 0, new Outline(Contour.Circle(Point.Origin, 26))),
    ];

    [Fact]
    public void Of_RiserInsideTheWheel_IsACollisionThatSaysWhere()
    {
        Brief brief = StripBriefs.With(StripBriefs.Wiper("feed strip", new ServesFeed(), 90, 22));
        StripSet set = StripSet.Of(brief, StripBriefs.Rings);
        IReadOnlyList<Finding> findings = StripCollisions.Of(set.Strips, WheelAndCarrier(), Turning.Clockwise, _ => null);
        Assert.Equal(2, findings.Count);
        Assert.All(findings, f => Assert.Equal(FindingSeverity.Error, f.Severity));
        Assert.Contains("at every angle", findings[0].Message, StringComparison.Ordinal);
        set = StripSet.Of(StripBriefs.With(StripBriefs.Wiper("feed strip", new ServesFeed(), 45, 26)), StripBriefs.Rings);
        Assert.Empty(StripCollisions.Of(set.Strips, WheelAndCarrier(), Turning.Clockwise, _ => null));
    }

    // A screw head 3 mm tall on a pitch circle under the arm: met once a turn, at the angle where it stands under the arm.
    [Fact]
    public void Of_FixingUnderAnArm_IsMetAtItsAngle()
    {
        StripSet set = StripSet.Of(StripBriefs.With(StripBriefs.Wiper("feed strip", new ServesFeed(), 0, 26)), StripBriefs.Rings);
        Solid head = new("fixing", "L", SolidKind.Live, Turns: true, -3, 3, new Outline(Contour.Circle(Point.Polar(15, StripBriefs.Deg(40)), 1)));
        Finding finding = Assert.Single(StripCollisions.Of(set.Strips, [head], Turning.Clockwise, _ => null));

        // Station 0°, arm outward: wheel angle 40° comes to 0° when a clockwise wheel has turned 40° (a few degrees less at its near side).
        Assert.Matches(@"wheel at (3[0-9]|4[0-9])\.\d°", finding.Message);
        Solid low = head with { ToZMm = 1.5 };
        Assert.Empty(StripCollisions.Of(set.Strips, [low], Turning.Clockwise, _ => null));
    }

    [Fact]
    public void Of_RingTooFarOut_IsOffTheCopper()
    {
        Brief brief = StripBriefs.With(StripBriefs.Wiper("feed strip", new ServesFeed(), 45, 26));
        RingPlaces rings = StripBriefs.Rings with { Feed = new RingPlace(25.8, 0, 3, 26) };
        string message = Assert.Throws<DesignRefusedException>(() => StripSet.Of(brief, rings)).Message;
        Assert.Contains("reaches from 3 to 26 mm", message, StringComparison.Ordinal);
    }
}
