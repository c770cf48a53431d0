using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>Springs against closed forms of beam theory, within 0.5 % as the strips promise (most are far nearer).</summary>
public sealed class SpringClosedFormTests
{
    private const double ModulusMpa = 110_000; // C51000

    private static StripSpring Spring(StripBrief strip, double deflection, double cutMm = 0.05)
    {
        Brief brief = StripBriefs.Deflected(strip, deflection, cutMm);
        return StripSpring.Of(StripForm.Of(brief, 0), StripContact.OfFeed(brief), null);
    }

    private static void Near(double expected, double found, double share = 0.001) => Assert.InRange(found / expected, 1 - share, 1 + share);

    // Cantilever with tip load: F = E b t³ d/(4 L³), σ = 3 E t d/(2 L²) (electrical-contacts-wiki.com, contact spring calculations;
    // tokaibane.com, flat springs). CuSn5, b 5, t 0.3, L 25, d 1.5: 0.3564 N, 118.8 MPa.
    [Fact]
    public void Straight_TipLoad_MatchesTheCantilever()
    {
        StripSpring spring = Spring(StripBriefs.Cantilever(25, 5, null, 0.3), 1.5);
        Near(ModulusMpa * 5 * 0.027 * 1.5 / (4 * 15625), spring.ForceN, 1e-9);
        Near(0.3564, spring.ForceN);
        Near(118.8, spring.StressMpa);
        Assert.Equal(1, spring.StressAtMm, 1e-9);
    }

    // Any linear taper β = b_tip/b_root: d = Kt F L³/(3 E I_root), Kt = 3 [1/(2c) − β/c² − β² ln β/c³], c = 1 − β (integrated by
    // hand); 5 → 2.5 mm: 0.3075 N, 102.5 MPa.
    [Theory]
    [InlineData(0.1, 1.3911)]
    [InlineData(0.2, 1.3147)]
    [InlineData(0.25, 1.2828)]
    [InlineData(0.5, 1.1589)]
    [InlineData(0.75, 1.0697)]
    public void Tapered_TipLoad_MatchesKt(double beta, double kt)
    {
        StripSpring spring = Spring(StripBriefs.Cantilever(25, 5, 5 * beta, 0.3), 1.5);
        Near(ModulusMpa * 5 * 0.027 * 1.5 / (4 * 15625 * kt), spring.ForceN, 1e-4);
        Near(3 * ModulusMpa * 0.3 * 1.5 / (2 * kt * 625), spring.StressMpa, 1e-4);
    }

    [Fact]
    public void Tapered_FiveToTwoAndAHalf_MatchesTheWorkedNumbers()
    {
        StripSpring spring = Spring(StripBriefs.Cantilever(25, 5, 2.5, 0.3), 1.5);
        Near(0.3075, spring.ForceN);
        Near(102.5, spring.StressMpa);
    }

    // Triangular plan: F = E b t³ d/(6 L³), σ = E t d/L² all along (Machinery's Handbook, 27th ed., flat springs).
    [Fact]
    public void Triangular_TipLoad_MatchesTheHandbook()
    {
        // A point is cut exactly or not at all.
        StripSpring spring = Spring(StripBriefs.Cantilever(25, 5, 0.005, 0.3), 1.5, cutMm: 0);
        Near(ModulusMpa * 5 * 0.027 * 1.5 / (6 * 15625), spring.ForceN, 0.003);
        Near(ModulusMpa * 0.3 * 1.5 / 625, spring.StressMpa, 0.003);
    }

    // The handbook's tapered plan, F = E b t³ d/(5.22 L³) (engineersedge.com, tapered flat spring), is a tip of about 0.215 of the root.
    [Fact]
    public void Tapered_HandbookPlan_MatchesItsFactor() =>
        Near(ModulusMpa * 5 * 0.027 * 1.5 / (5.22 * 15625), Spring(StripBriefs.Cantilever(25, 5, 5 * 0.215, 0.3), 1.5).ForceN, 0.005);

    // Guided (fixed, other end free to move but not to turn): F = 12 E I d/L³, σ = 3 E t d/L² (Roark, "left end guided, right end
    // fixed", from memory). Its inflection lies midway: each half is a cantilever with half the deflection. L 25, d 1.5: 0.9504 N/mm, 237.6 MPa.
    [Fact]
    public void Guided_HalfAndHalf_MatchesRoark()
    {
        StripSpring half = Spring(StripBriefs.Cantilever(12.5, 5, null, 0.3), 0.75);
        Near(0.9504 * 1.5, half.ForceN);
        Near(237.6, half.StressMpa);
    }

    // L-frame, riser H clamped at its foot, arm L, tip load P: v = P L²(L + 3H)/(3EI), u = P L H²/(2EI), turn = P L (L/2 + H)/(EI),
    // moment P L all along the riser (derived, and found again with a frame solver). Folds are small against the legs.
    [Theory]
    [InlineData(160, 300)]
    [InlineData(120, 150)]
    public void LFrame_TipLoad_MatchesTheClosedForm(double h, double l)
    {
        const double t = 0.3;
        const double middle = t + (t / 2);
        StripBrief strip = new("frame", new ServesFeed(), "C51000-H04", t,
        [
            new StripStraight(5, 5, null),
            new StripBend(Math.PI / 2, t, false),
            new StripStraight(h - (2 * middle), 5, null),
            new StripBend(-Math.PI / 2, t, false),
            new StripStraight(l - middle, 5, null),
            new StripStraight(0.5, 5, null),
            // A dome whose centre lies in the arm's middle surface, so that the nose moves as the arm's end does.
            new StripRivet(1 - (t / 2), 1, 1),
        ])
        {
            Grain = StripGrain.Along,
            Clamp = new(0, 5),
            ApproachRad = Math.PI,
            SeatedOn = "floor",
        };
        StripSpring spring = Spring(strip, 1.5);
        double ei = ModulusMpa * 5 * t * t * t / 12;
        double p = spring.ForceN;
        Near(p * l * l * (l + (3 * h)) / (3 * ei), 1.5, 0.005);
        Near(p * l * h * h / (2 * ei), Math.Abs(spring.GivesMmPerN.X * p), 0.005);
        Near(p * l * ((l / 2) + h) / ei, spring.TurnRad, 0.005);

        // The moment is the same all along the riser, and gathers on the inside of its folds, R = t: neutral axis at t/ln 2
        // (Timoshenko, Strength of Materials, part II, curved bars).
        double neutral = t / Math.Log(2);
        double inside = (neutral - t) / ((1.5 * t) - neutral) / t * (t / 6);
        Near(p * l * 6 / (5 * t * t) * inside, spring.StressMpa, 0.005);
    }

    // Quarter of a circle in plan, load normal to it at the tip: δ = P R³/(EI) π/4 + P R³/(GJ) (3π/4 − 2) (Timoshenko, Strength of
    // Materials, bow girder; from memory, integrated by hand again).
    [Fact]
    public void Sweep_QuarterCircle_MatchesBendingAndTorsion()
    {
        const double r = 30;
        StripBrief strip = new("bow", new ServesFeed(), "C51000-H04", 0.5,
        [
            new StripStraight(5, 4, null),
            new StripSweep(Math.PI / 2, r, null),
            new StripStraight(1, 4, null),
            new StripRivet(2, 1, 2),
        ])
        {
            Grain = StripGrain.Along,
            Clamp = new(0, 5),
            ApproachRad = 0,
            SeatedOn = "floor",
        };
        double g = ModulusMpa / 2.68;
        double ei = ModulusMpa * 4 * 0.125 / 12;

        // Torsion of a flat strip: J = w t³/3 (1 − 0.630 t/w), Timoshenko and Goodier, Theory of Elasticity.
        double gj = g * 4 * 0.125 / 3 * (1 - (0.630 * 0.5 / 4));
        double expected = (r * r * r / ei * Math.PI / 4) + (r * r * r / gj * ((3 * Math.PI / 4) - 2));
        Near(1 / expected, Spring(strip, 1.0).StiffnessNPerMm, 0.002);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(1)]
    public void Chain_HalvedCells_ChangesNothing(double taper)
    {
        Brief brief = StripBriefs.With(StripBriefs.Wiper("feed strip", new ServesFeed()));
        StripBrief strip = brief.Strips[0];
        brief = StripBriefs.With(strip with { Shape = [.. strip.Shape.Select(p => p is StripStraight { WidthEndMm: not null } s ? s with { WidthMm = 3 * taper } : p)] });
        StripForm form = StripForm.Of(brief, 0);
        double once = new SpringChain(form, new(1, 0, 0)).Vertical.Shift(form.Nose!.Centre).Z;
        double finer = new SpringChain(form, new(1, 0, 0), refine: 4).Vertical.Shift(form.Nose!.Centre).Z;
        Assert.InRange(once / finer, 1 - 1e-9, 1 + 1e-9);
    }

    // A cantilever pushed sideways at a from its root: v(a) = F a³/3EI, v(L) = F a² (3L − a)/6EI, so the end moves (3L − a)/2a times as far
    // (Roark's Formulas for Stress and Strain, cantilever with an intermediate load).
    [Theory]
    [InlineData(6)]
    [InlineData(12.5)]
    [InlineData(20)]
    public void ContactPerPush_StraightPushedBetweenItsEnds_MatchesTheCantilever(double fromRootMm)
    {
        StripForm form = StripForm.Of(StripBriefs.Deflected(StripBriefs.Cantilever(25, 5, null, 0.3), 1.5, 0.05), 0);
        double root = form.Clamp.ToMm;
        double length = form.Nose!.AtMm - root;
        SpringChain chain = new(form, form.FrameAt(root).Left, pushAtMm: root + fromRootMm);
        Near(((3 * length) - fromRootMm) / (2 * fromRootMm), chain.ContactPerPush, 1e-9);
        Near(1, new SpringChain(form, form.FrameAt(root).Left).ContactPerPush, 1e-12);
    }
}
