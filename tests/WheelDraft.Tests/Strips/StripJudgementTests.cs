using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>What is told of strips that may not keep their promises: errors where something cannot work, never silence.</summary>
public sealed class StripJudgementTests
{
    private static readonly StripBrief Feed = StripBriefs.Wiper("feed strip", new ServesFeed(), 40, 26);

    private static Brief Of(StripBrief strip) => StripBriefs.With(strip) with { Forming = FormingBrief.Exact };

    private static StripSet Set(Brief brief, double amperes = 0) =>
        StripSet.Of(brief with { Loads = [new("heat", "L", "N", new RatedCurrent(1, 1), 0.8, 0.2)] }, StripBriefs.Rings, new CircuitCurrents
        {
            Feed = new(amperes, "", 0, "", BreaksInductive: false, IsShared: false),
            Contacts = [],
            NetsA = new Dictionary<string, double>(StringComparer.Ordinal),
        });

    private static Finding? Told(StripSet set, string code) => set.Findings.FirstOrDefault(f => string.Equals(f.Code, code, StringComparison.Ordinal));

    // Half a millimetre of deflection is gone with one degree at each of two folds, 26 mm away: 2 × 26 × sin 1° = 0.9 mm.
    [Fact]
    public void Force_FoldsThatMayTakeTheDeflectionAway_IsAnError()
    {
        Brief brief = StripBriefs.With(Feed with { DeflectionMm = 0.5 });
        Finding lifts = Told(Set(brief), "strip.lifts")!;
        Assert.Equal(FindingSeverity.Error, lifts.Severity);
        Assert.Contains("folds ±1°", lifts.Message, StringComparison.Ordinal);
        Assert.Contains("common practice, no source", lifts.Message, StringComparison.Ordinal);
        Assert.Null(Told(Set(brief with { Forming = FormingBrief.Exact }), "strip.lifts"));
    }

    // One figure was told although a degree of fold and a twentieth of thickness move it by tens of percent.
    [Fact]
    public void Force_UsualLimits_IsABandThatOnlyGrowsWithThem()
    {
        StripSpring Spring(FormingBrief forming) => Set(Of(Feed) with { Forming = forming }).Strips[0].Spring!;
        FormingBrief usual = new();
        StripSpring exact = Spring(FormingBrief.Exact);
        StripSpring band = Spring(usual);
        Assert.True(band.LeastForceN < 0.5 * band.ForceN && band.MostForceN > 1.5 * band.ForceN);
        Assert.True(exact.LeastForceN < exact.WornForceN);

        // Yield 560 and fatigue strength 170 MPa (C51000-H04) over the greatest stress, not over the drawn one.
        Assert.Equal(560 / band.WorstStressMpa, band.YieldFactor, 1e-9);
        Assert.Equal(170 / band.WorstStressMpa, band.FatigueFactor!.Value, 1e-9);
        foreach (FormingBrief one in new[]
        {
            FormingBrief.Exact with { FoldRad = usual.FoldRad },
            FormingBrief.Exact with { ThicknessShare = usual.ThicknessShare },
            FormingBrief.Exact with { HeightMm = usual.HeightMm },
            FormingBrief.Exact with { RadiusMm = usual.RadiusMm },
        })
        {
            StripSpring alone = Spring(one);
            Assert.True(alone.LeastForceN < exact.LeastForceN && alone.MostForceN > exact.MostForceN);
            Assert.True(alone.WorstStressMpa > exact.WorstStressMpa);
            Assert.True(alone.LeastForceN > band.LeastForceN && alone.MostForceN < band.MostForceN);
        }
    }

    // Force by t³ and, for the height, by deflection: (1 ± 0.05)³ and 1 ± 0.1/1.5 of a cantilever, whose width alone matters besides.
    [Fact]
    public void Force_PlainCantilever_HasTheBandOfItsClosedForm()
    {
        Brief brief = StripBriefs.Deflected(StripBriefs.Cantilever(25, 5, null, 0.3), 1.5);
        StripForm form = StripForm.Of(brief, 0);
        PressingLimits limits = new()
        {
            Forming = FormingBrief.Exact with { ThicknessShare = new(0.05, true), HeightMm = new(0.1, true) },
            CutMm = 0.05,
        };
        StripSpring spring = StripSpring.Of(form, StripContact.OfFeed(brief), null, limits);

        // The middle surface lies half the thickness over the seat, and the rivet hangs half of it below: neither moves the contact.
        double Force(double t, double d, double b) => 110_000 * b * t * t * t * d / (4 * 15625);
        Assert.Equal(Force(0.285, 1.4, 4.9), spring.LeastForceN, 0.002 * spring.ForceN);
        Assert.Equal(Force(0.315, 1.6, 5.1), spring.MostForceN, 0.002 * spring.MostForceN);
        Assert.Equal(3 * 110_000 * 0.315 * 1.6 / (2 * 625), spring.WorstStressMpa, 0.2);
    }

    // A nose of radius 1 mm that touches over 0.4 mm when new and 1.2 mm when worn has lost √(1 − 0.2²) − √(1 − 0.6²) = 0.1798 mm of height,
    // and a cantilever presses by its deflection.
    [Fact]
    public void Force_WornNose_LeavesTheLeastForceLessByWhatItHasLost()
    {
        Brief brief = StripBriefs.Deflected(StripBriefs.Cantilever(25, 5, null, 0.3), 1.5);
        PressingLimits exact = new() { Forming = FormingBrief.Exact, CutMm = 0 };
        StripContact contact = StripContact.OfFeed(brief) with { NoseRadiusMm = 1, LengthMm = 0.4, WornLengthMm = 1.2 };
        StripSpring spring = StripSpring.Of(StripForm.Of(brief, 0), contact, null, exact);
        double worn = Math.Sqrt(0.96) - 0.8;
        Assert.Equal(spring.ForceN * (1.5 - worn) / 1.5, spring.LeastForceN, 0.002 * spring.ForceN);
    }

    // The copper pulls a trailing arm on a tall riser over, and its nose down: of a riser H and an arm L, 1 N of drag sinks it by
    // H² L/(2 E I) and 1 N of force lifts it by L² (L + 3H)/(3 E I), so friction over L (L + 3H)/(1.5 H²) jams it: about 0.6 here
    // (closed form of the L-frame; its folds are left out). A leading arm is lifted.
    [Fact]
    public void Force_TallRiserUnderGreatFriction_IsRefusedAsJamming()
    {
        StripBrief tall = Feed with { ApproachRad = StripBriefs.Deg(90), Shape = [.. Feed.Shape.Select(p => p is StripStraight { WidthEndMm: not null } s ? s with { LengthMm = 10 } : p)] };
        Brief brief = Of(tall) with { Surfaces = [new("floor", MaterialGroup.IIIa, -40, null)] };
        Brief With(Turning direction, double friction) => brief with { Drive = brief.Drive with { Direction = direction, Friction = new(0, friction) } };
        Assert.Equal(ArmSense.Trailing, Set(With(Turning.Clockwise, 0.1)).Strips[0].Sense);
        Assert.Single(Set(With(Turning.Clockwise, 0.4)).Strips);
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Set(With(Turning.Clockwise, 0.7)));
        Assert.Equal("strip.fails", Assert.Single(refused.Reasons).Code);
        Assert.Contains("jams", refused.Message, StringComparison.Ordinal);
        Assert.Single(Set(With(Turning.Anticlockwise, 1.5)).Strips);
    }

    // Σ μ F r by hand, with the least coefficient on the least force and the greatest on the greatest; a motor between them may
    // stall, one below cannot turn, one under twice the greatest has little to spare.
    [Theory]
    [InlineData(0.5, FindingSeverity.Error, "cannot turn")]
    [InlineData(1.5, FindingSeverity.Error, "may stall")]
    [InlineData(2.5, FindingSeverity.Warning, "less than 2 times")]
    [InlineData(4.5, null, null)]
    public void Torque_AgainstFriction_IsJudgedByBothEnds(double place, FindingSeverity? severity, string? words)
    {
        Brief brief = Of(Feed);
        StripSpring spring = Set(brief).Strips[0].Spring!;
        double least = 0.2 * spring.LeastForceN * 0.006;
        double most = 0.5 * spring.MostForceN * 0.006;
        double motor = place switch { 0.5 => 0.5 * least, 1.5 => (least + most) / 2, 2.5 => 1.5 * most, _ => 2.5 * most };
        StripSet set = Set(brief with { Drive = brief.Drive with { TorqueNm = motor } });
        Assert.Equal(least, set.Friction!.LeastNm, 1e-12);
        Assert.Equal(most, set.Friction.MostNm, 1e-12);
        Assert.Equal(severity, Told(set, "strip.torque")?.Severity);
        Assert.Equal(words is not null, Told(set, "strip.torque")?.Message.Contains(words!, StringComparison.Ordinal) ?? false);
    }

    // At nine tenths of the voltage 0.81 of the torque: a motor of 2.2 times the friction keeps less than twice of it.
    [Fact]
    public void Torque_AtTheLowestVoltage_FallsWithItsSquare()
    {
        Brief brief = Of(Feed);
        double most = Set(brief).Friction!.MostNm;
        Brief strong = brief with { Drive = brief.Drive with { TorqueNm = 2.2 * most } };
        Assert.Null(Told(Set(strong), "strip.torque"));
        StripSet low = Set(strong with { Supply = strong.Supply with { VoltageToleranceShare = 0.1 } });
        Assert.Equal(0.81 * 2.2 * most, low.Friction!.MotorAtLowestNm!.Value, 1e-12);
        Assert.Contains("90 % of its voltage", Told(low, "strip.torque")!.Message, StringComparison.Ordinal);
    }

    // Films to ten times the clean spot, at the least force and not the drawn one; (ρ₁ + ρ₂)/4 √(π H/F) by hand (Holm).
    [Fact]
    public void Softening_FilmedContactAtItsLeastForce_IsAnErrorBeyondAndAWarningPastHalf()
    {
        Brief brief = Of(Feed) with { Forming = new() { FoldRad = new(StripBriefs.Deg(0.3), true) } };
        StripSpring spring = Set(brief).Strips[0].Spring!;
        double hardness = 3 * 255;
        double ohm = 10 * (115 + 17.24) * 1e-6 / 4 * Math.Sqrt(Math.PI * hardness / spring.LeastForceN);
        Assert.Equal(ohm * 2, Set(brief, 2).Strips[0].Electrics.FilmedContactV!.Value, 1e-9);

        // No softening voltage is known for bronze: the least of the list stands, brass at 0.1 V (Holm, from memory).
        Assert.Equal(0.1, Set(brief).Strips[0].Electrics.SofteningV!.Value);
        Assert.Contains("no value is known for C51000-H04", Set(brief).Strips[0].Electrics.SofteningV!.Source, StringComparison.Ordinal);
        Assert.Null(Told(Set(brief, 0.049 / ohm), "strip.softening"));
        Assert.Equal(FindingSeverity.Warning, Told(Set(brief, 0.051 / ohm), "strip.softening")!.Severity);
        Assert.Equal(FindingSeverity.Warning, Told(Set(brief, 0.099 / ohm), "strip.softening")!.Severity);
        Assert.Equal(FindingSeverity.Error, Told(Set(brief, 0.101 / ohm), "strip.softening")!.Severity);
    }

    // From 40 °C a rise of 60 K passes 100 °C, above which bronze loses force (from memory); the loss is all of strip and filmed spot.
    [Fact]
    public void Heat_BeyondWhatTheAlloyBears_IsAnError()
    {
        Brief brief = Of(Feed);
        StripElectrics one = Set(brief, 1).Strips[0].Electrics;
        double surface = one.LossW!.Value + (10 * one.ConstrictionOhm!.Value);
        Assert.Equal(surface, one.TemperatureRiseK!.Value * 10e-6 * Surface(Set(brief).Strips[0].Form), 1e-9);
        double amperes = Math.Sqrt(60 / one.TemperatureRiseK!.Value);
        Assert.Null(Told(Set(brief, 0.99 * amperes), "strip.heat"));
        Assert.Equal(FindingSeverity.Error, Told(Set(brief, 1.01 * amperes), "strip.heat")!.Severity);
    }

    // The estimate takes resistivity at 20 °C; copper's doubles within about 250 K (0.00393 a kelvin, IEC 60028:1925). A rise of a million kelvin
    // was told as if it were one; and no contact drops volts: the hardest metal to melt does so at 1.1 V (tungsten, Holm, from memory).
    [Fact]
    public void Heat_AMillionKelvin_IsAnErrorWithoutAFigure()
    {
        Brief brief = Of(Feed);
        StripElectrics one = Set(brief, 1).Strips[0].Electrics;
        StripSet molten = Set(brief, Math.Sqrt(1e6 / one.TemperatureRiseK!.Value));
        Finding told = Told(molten, "strip.heat")!;
        Assert.Equal(FindingSeverity.Error, told.Severity);
        Assert.Contains("more than 250 K", told.Message, StringComparison.Ordinal);
        Assert.Null(molten.Strips[0].Electrics.TemperatureRiseK);
        Assert.Null(molten.Strips[0].Electrics.FilmedContactV);
        Assert.Equal(FindingSeverity.Error, Told(molten, "strip.softening")!.Severity);
        Assert.Contains("no figure is given", Told(molten, "strip.softening")!.Message, StringComparison.Ordinal);

        Assert.Equal(249, Set(brief, Math.Sqrt(249 / one.TemperatureRiseK!.Value)).Strips[0].Electrics.TemperatureRiseK!.Value, 1e-9);
        Assert.True(Set(brief, Math.Sqrt(251 / one.TemperatureRiseK!.Value)).Strips[0].Electrics.WarmsBeyondSense);
    }

    // Both faces and both edges up to the rivet's axis.
    private static double Surface(StripForm form) => form.Pieces.Sum(p =>
    {
        double length = Math.Min(p.ToMm, form.Nose!.AtMm) - p.FromMm;
        return length * (p.WidthMm + p.WidthAt(length / p.DevelopedMm) + 1);
    });

    [Theory]
    [InlineData("C51000-H06", "strip.fatigue", "No fatigue strength is known")]
    [InlineData("C19400-H04", "strip.heat", "not judged")]
    public void Alloy_WithoutAValue_IsSaidToBeUnjudged(string alloy, string code, string words)
    {
        Finding note = Told(Set(Of(Feed with { Material = alloy, Shape = [.. Feed.Shape.Select(p => p is StripBend b ? b with { RadiusMm = 1.5 } : p)] })), code)!;
        Assert.Equal(FindingSeverity.Note, note.Severity);
        Assert.Contains(words, note.Message, StringComparison.Ordinal);
    }

    // An unlisted wheel counted as soft copper, which presses into the widest spot.
    [Fact]
    public void Electrics_UnlistedWheelAlloy_CountsAsTheWorstOfTheList()
    {
        Brief brief = Of(Feed);
        double unknown = Set(brief with { Wheel = brief.Wheel with { Material = "unobtainium" } }).Strips[0].Electrics.ConstrictionOhm!.Value;
        Assert.All(MaterialTable.All, m => Assert.True(unknown >= Set(brief with { Wheel = brief.Wheel with { Material = m.Designation } }).Strips[0].Electrics.ConstrictionOhm!.Value));
    }

    // Yield 560 MPa (C51000-H04, ASTM B103 strip data): a strip stressed beyond takes a set, and no force of its holds.
    [Fact]
    public void Yield_BeyondIt_IsAnError()
    {
        StripBrief stiff = Feed with { DeflectionMm = 8, Shape = [.. Feed.Shape.Select(p => p is StripStraight { WidthEndMm: not null } s ? s with { LengthMm = 14 } : p)] };
        StripSet set = Set(Of(stiff) with { Surfaces = [new("floor", MaterialGroup.IIIa, -10, null)] });
        Assert.True(set.Strips[0].Spring!.YieldFactor < 1);
        Assert.Equal(FindingSeverity.Error, Told(set, "strip.yield")!.Severity);
    }

    [Theory]
    [InlineData(22.5, 1)]
    [InlineData(15, 0)]
    public void Hole_InTheSprungPart_IsTold(double at, int told)
    {
        // A strip whose foot runs on beyond its clamp.
        StripBrief long_ = Feed with { Holes = [new(at, 0, 2.2)], Shape = [.. Feed.Shape.Select((p, i) => i == 1 ? new StripStraight(24, 6, null) : p)] };
        Assert.Equal(told, Set(Of(long_)).Findings.Count(f => f.Code is "strip.hole"));
    }

    // Stock of a thousandth of a millimetre reached the writer as no number at all; it springs back from any fold.
    [Fact]
    public void Form_FoilThatSpringsBackWholly_IsRefusedWhereItStands()
    {
        StripBrief foil = Feed with { ThicknessMm = 0.001, Shape = [.. Feed.Shape.Skip(1)], Clamp = new(2, 13) };
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => StripForm.Of(Of(foil) with
        {
            Places = new Dictionary<string, TextPlace>(StringComparer.Ordinal) { ["strip[0].shape[1]"] = new(7, 3) },
        }, 0));
        Assert.Contains(refused.Reasons, r => r.Code is "strip.form" && r.Where == new TextPlace(7, 3) && r.Message.Contains("springs back", StringComparison.Ordinal));
    }

    // The riser narrows to its upper fold, where the moment is greatest: 3 mm wide there, and 6 mm was told.
    [Fact]
    public void Reasons_StressAtTheEndOfATaper_TellTheWidthThere()
    {
        StripBrief narrowing = Feed with { Shape = [.. Feed.Shape.Select(p => p is StripStraight { LengthMm: null } ? new StripStraight(null, 6, 3) : p is StripStraight { WidthEndMm: not null } s ? s with { WidthMm = 3 } : p)] };
        PlacedStrip strip = Set(Of(narrowing)).Strips[0];
        Assert.InRange(strip.Spring!.StressAtMm, strip.Form.Folds[1].AtMm - strip.Form.Folds[1].AllowanceMm, strip.Form.Folds[1].AtMm);
        Assert.Contains(", 3 mm wide", StripReasons.Stress(strip)[0], StringComparison.Ordinal);
    }

    // Side play, half the travel, and what friction moves it, act in plan; the held part has none of them.
    [Fact]
    public void Solids_OfAWiper_MayMoveByPlayTravelAndFriction()
    {
        Brief brief = Of(StripBriefs.Wiper("mist strip", new ServesOutput("mist", false), 90));
        brief = brief with { Outputs = [.. brief.Outputs.Select(o => o with { SidePlayMm = 0.3, Adjust = new(AdjustedEdge.Off, 1, 0.8, LongerWay.In, "M3", 0.5, 1) })] };
        PlacedStrip strip = StripSet.Of(brief, StripBriefs.Rings).Strips[0];
        WindUp wind = strip.Spring!.WindUp!.Value;
        double expected = 0.3 + 0.4 + Math.Sqrt((wind.MostMm * wind.MostMm) + (wind.MostRadialMm * wind.MostRadialMm));
        Assert.True(wind.MostMm > 0);
        Assert.Equal(expected, strip.Solids.Max(s => s.Tolerance.SidePlayMm), 1e-12);
        Assert.Equal(0, strip.Solids.Min(s => s.Tolerance.SidePlayMm));
    }

    [Fact]
    public void WindUp_RangeOverSpeed_IsTheOnTime()
    {
        // 0.3 mm at 15 mm and 2° a second.
        Assert.Equal(0.3 / (15 * 2 * Math.PI / 180), new WindUp(0.1, 0.4).OnTimeS(15, 2 * Math.PI / 180), 1e-12);
        Assert.Equal("0.62 N (0.45 to 0.81 N)", FormingWords.Force(0.62, 0.4599, 0.8001));
    }

    // Arms nearly along the radius move in height when the screw pushes them: forces at the ends of travel by the frame, whose own
    // unit loads up and outward hold the height; a lever of 3 moves the tip three times as far and asks for three times the push.
    [Theory]
    [InlineData(20)]
    [InlineData(140)]
    [InlineData(-35)]
    public void Adjuster_SlantingArm_PressesAtBothEndsAsTheFrameSays(double approach)
    {
        Brief brief = Of(StripBriefs.Wiper("mist strip", new ServesOutput("mist", false), approach));
        brief = brief with { Outputs = [.. brief.Outputs.Select(o => o with { Adjust = new(AdjustedEdge.Off, 1, 0.6, LongerWay.In, "M3", 0.5, 3) })] };
        brief = brief with { Surfaces = [new("floor", MaterialGroup.IIIa, -20, null)] };
        StripForm form = StripForm.Of(brief, 0);
        StripAdjuster adjuster = StripSpring.Of(form, StripContact.OfOutput(brief, 2), brief.Outputs[2].Adjust).Adjuster!;
        SpaceVector radial = StripSpring.RadialOf(form.Nose!, StripBriefs.Deg(approach));
        SpaceVector up = StripFrames.Gives(form);
        SpaceVector outward = StripFrames.Gives(form, radial);
        double depth = form.Nose!.DepthMm;

        // Height: F up + S outward = depth; radius: the same less what F₀ alone gives = ±0.3 mm. Two equations, by Cramer's rule.
        (double Force, double Screw) At(double off)
        {
            double out0 = up.Dot(radial) * depth / up.Z;
            double det = (up.Z * outward.Dot(radial)) - (outward.Z * up.Dot(radial));
            return (((depth * outward.Dot(radial)) - (outward.Z * (out0 + off))) / det, ((up.Z * (out0 + off)) - (up.Dot(radial) * depth)) / det);
        }

        (double inner, _) = At(-0.3);
        (double outer, double screw) = At(0.3);
        Assert.Equal(inner, adjuster.InnerForceN, 0.005 * inner);
        Assert.Equal(outer, adjuster.OuterForceN, 0.005 * outer);
        Assert.True(Math.Abs(inner - outer) > 0.05 * (inner + outer));
        Assert.Equal(3 * Math.Abs(screw), adjuster.ScrewForceN, 0.005 * adjuster.ScrewForceN);
        Assert.Equal(1.5, adjuster.TipPerTurnMm, 1e-12);
    }
}
