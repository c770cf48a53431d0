using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>A set of strips for a wheel of 26 mm radius, as the mains examples use them: the figures that it has to meet.</summary>
public sealed class StripDemoTests(ITestOutputHelper output)
{
    private static readonly Brief Demo = StripBriefs.With(
        StripBriefs.Wiper("feed strip", new ServesFeed(), 40, 26),
        StripBriefs.Wiper("hold strip", new ServesOutput("hold", false), 50, 24),
        StripBriefs.Wiper("fan strip", new ServesOutput("fan", false), 70, 24),
        StripBriefs.Wiper("mist strip", new ServesOutput("mist", false), 90, 24)) with
    {
        Forming = FormingBrief.Exact,
    };

    [Fact]
    public void Of_DemoSet_MeetsForceYieldAndClearance()
    {
        StripSet set = StripSet.Of(Demo, StripBriefs.Rings);
        foreach (PlacedStrip s in set.Strips)
        {
            Solid[] low = [.. s.Solids.Where(b => !b.IsNose && b.FromZMm < 1.7 + 0.1)];
            double riser = low.Min(b => Distances.Radii(b.Outline, Point.Origin).LeastMm);
            double underside = s.Solids.Where(b => !b.IsNose && !low.Contains(b)).Min(b => b.FromZMm);
            output.WriteLine(FormattableString.Invariant($"{s.Form.Strip.Name}: blank {s.Form.LengthMm:0.####} riser {s.Form.AutoLengthMm:0.####} force {s.Spring!.ForceN:0.####} worn {s.Spring.WornForceN:0.####} stress {s.Spring.StressMpa:0.##} at {s.Spring.StressAtMm:0.##} yield {s.Spring.YieldFactor:0.##} fatigue {s.Spring.FatigueFactor:0.##} riser radius {riser:0.##} underside {underside:0.###} solids {s.Solids.Count} R {s.Electrics.ResistanceOhm * 1000:0.##} mohm life {s.Life}"));
            Assert.InRange(s.Spring.LeastForceN, 0.5, 3);
            Assert.InRange(s.Spring.MostForceN, 0.5, 3);
            Assert.True(s.Spring.YieldFactor > 1.3);
            Assert.True(s.Spring.FatigueFactor > 1);

            // 1.7 mm of clearance over the copper of outer rings, run-out and cutter besides; the riser outside the wheel by as much.
            Assert.True(underside >= 1.7 + 0.1);
            Assert.True(riser >= 26 + 1.7 + 0.05 + 0.1 + 0.1, FormattableString.Invariant($"{riser}"));
            Assert.Equal(ArmSense.Trailing, s.Sense);
        }

        output.WriteLine($"{set.Friction}");
        Assert.True(set.Friction!.MostNm < 0.25);
        Assert.Empty(set.Findings);
    }

    [Fact]
    public void Of_WeakAndStrongSprings_AreWarned()
    {
        StripSet weak = StripSet.Of(Demo with { Strips = [Demo.Strips[0] with { DeflectionMm = 0.6 }] }, StripBriefs.Rings);
        Assert.Contains(weak.Findings, f => f.Code is "strip.force" && f.Message.Contains("as little as", StringComparison.Ordinal));
        StripBrief stiff = Demo.Strips[0] with { DeflectionMm = 7, Shape = [.. Demo.Strips[0].Shape.Select(p => p is StripStraight { WidthEndMm: not null } s ? s with { LengthMm = 18 } : p)] };
        StripSet strong = StripSet.Of(Demo with { Strips = [stiff] }, StripBriefs.Rings);
        Assert.Contains(strong.Findings, f => f.Code is "strip.force" && f.Message.Contains("as much as", StringComparison.Ordinal));
        Assert.Contains(strong.Findings, f => f.Code is "strip.linear");
    }

    // Screw M3 (ISO 261, pitch 0.5 mm), travel 2 mm, lever 1: half a millimetre a turn. Oracle for the force: the frame, loaded outward.
    [Fact]
    public void Of_Adjuster_TellsScrewForceAndTravelPerTurn()
    {
        Brief brief = Demo with
        {
            Outputs = [.. Demo.Outputs.Select(o => o.Name is "mist" ? o with { Adjust = new(AdjustedEdge.Off, 1, 0.6, LongerWay.In, "M3", 0.5, 1) } : o)],
        };
        PlacedStrip strip = StripSet.Of(brief, StripBriefs.Rings).Strips[3];
        StripAdjuster adjuster = strip.Spring!.Adjuster!;
        Assert.Equal(0.5, adjuster.TipPerTurnMm, 1e-12);
        SpaceVector radial = StripSpring.RadialOf(strip.Form.Nose!, strip.Form.Strip.ApproachRad!.Value);
        SpaceVector up = StripFrames.Gives(strip.Form);
        SpaceVector outward = StripFrames.Gives(strip.Form, radial);
        double alone = outward.Dot(radial) - (up.Dot(radial) * outward.Z / up.Z);
        Assert.Equal(0.3 / alone, adjuster.ScrewForceN, 0.01 * adjuster.ScrewForceN);

        // An arm along the tangent moves sideways by twisting its riser: contact force hardly changes.
        Assert.InRange(adjuster.InnerForceN / strip.Spring.ForceN, 0.9, 1.1);
        Assert.True(adjuster.StressMpa >= strip.Spring.StressMpa);
        output.WriteLine($"{adjuster}");
    }

    [Fact]
    public void Of_LeadingArmAndCoilLoad_AreTold()
    {
        Brief brief = Demo with
        {
            Drive = Demo.Drive with { Direction = Turning.Anticlockwise },
            Outputs = [.. Demo.Outputs.Select(o => o with { On = new([new(new StartAt(TurnAmount.Seconds(1)), new LastsFor(TurnAmount.Seconds(5)))]) })],
            Loads = [new LoadBrief("mist valve", "mist", "N", new RatedPower(7, 0.6), 0.8, 0.2)],
        };
        CircuitRequest circuit = new(brief, WheelContacts.Exact(brief, Programme.Of(brief, Motion.Of(brief))));
        StripSet set = StripSet.Of(brief, StripBriefs.Rings, CircuitCurrents.Of(circuit));
        Assert.Equal(4, set.Findings.Count(f => f.Code is "strip.leading"));
        Finding slow = Assert.Single(set.Findings, f => f.Code is "strip.slow-break");
        Assert.Contains("inductive", slow.Message, StringComparison.Ordinal);
        Assert.Contains("\"mist strip\"", slow.Message, StringComparison.Ordinal);
    }

    // What was wrong: a load behind an input gave its strip 0 A. By hand 1000 W at 230 V + 10 %: 4.348 · 1.1 = 4.783 A, in the wiper, the feed and
    // a plain strip on the neutral alike; a strip on a net that the circuit does not know carries nobody knows what, and not 0 A.
    [Fact]
    public void Of_LoadBehindAnInput_ItsStripsCarryItsCurrent()
    {
        StripBrief Plain(string name, string net) => new(name, new ServesNet(net, new(45, 0)), "C11000-H02", 0.5, [new StripStraight(20, 4, null), new StripStraight(30, 4, 2)]) { ApproachRad = 0, SeatedOn = "floor" };
        Brief brief = Demo with
        {
            Supply = Demo.Supply with { VoltageToleranceShare = 0.1 },
            Outputs = [.. Demo.Outputs.Select(o => o with { On = new([new(new StartAt(TurnAmount.Seconds(1)), new LastsFor(TurnAmount.Seconds(5)))]) })],
            Loads = [new LoadBrief("heater", "behind", "N", new RatedPower(1000, 1), 0.8, 0.2)],
            Inputs = [new InputBrief("stat", "mist", "behind", null)],
            Strips = [.. Demo.Strips, Plain("bus", "N"), Plain("spare", "aux")],
        };
        StripSet set = StripSet.Of(brief, StripBriefs.Rings, CircuitCurrents.Of(new(brief, WheelContacts.Exact(brief, Programme.Of(brief, Motion.Of(brief))))));
        double? Amperes(string strip) => set.Strips.Single(s => string.Equals(s.Form.Strip.Name, strip, StringComparison.Ordinal)).Electrics.CurrentA;
        Assert.Equal(1100 / 230.0, Amperes("mist strip")!.Value, 1e-9);
        Assert.Equal(1100 / 230.0, Amperes("feed strip")!.Value, 1e-9);
        Assert.Equal(1100 / 230.0, Amperes("bus")!.Value, 1e-9);
        Assert.Null(Amperes("spare"));
        Assert.Contains(set.Findings, f => f.Code is "strip.slow-break" && f.Message.Contains("breaks 4.783 A", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_WeakMotor_IsWarnedOfFriction()
    {
        Brief brief = Demo with { Drive = Demo.Drive with { TorqueNm = 0.01 } };
        StripSet set = StripSet.Of(brief, StripBriefs.Rings);
        Assert.Contains(set.Findings, f => f.Code is "strip.torque" && f.Severity == FindingSeverity.Error);

        // Σ μ F r by hand.
        double sum = set.Strips.Sum(s => s.Spring!.MostForceN * s.Ring!.RadiusMm / 1000);
        Assert.Equal(0.5 * sum, set.Friction!.MostNm, 1e-12);
    }

    // Every clamp lies between 30 and 60 mm from the axis.
    [Theory]
    [InlineData(30, 4)]
    [InlineData(80, 0)]
    public void Of_SeatBeyondItsSurface_IsWarned(double floorRadius, int warnings)
    {
        Brief brief = Demo with { Surfaces = [new("floor", MaterialGroup.IIIa, -7, new Outline(Contour.Circle(Point.Origin, floorRadius)))] };
        StripSet set = StripSet.Of(brief, StripBriefs.Rings);
        Assert.Equal(warnings, set.Findings.Count(f => f.Code is "strip.seat"));
    }
}
