using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>What the gaps of an open contact under a round nose must keep, along the motion and sideways.</summary>
/// <remarks>Both gaps were once compared with what is required along the motion. Under a fold whose round section asks for more than the
/// rules, windows are cut for its upright ends, so that every ring was told to miss.
/// Mains at pollution degree 2: clearance 1.5 mm (IEC 60664-1:2020, Table F.2, 2.5 kV), creepage 2.3 mm (Table F.5, material group
/// IIIa, between 2.0 mm at 200 V and 2.5 mm at 250 V), each with 0.2 mm of margin: 1.7 and 2.5 mm.</remarks>
public sealed class RoundNoseTests
{
    private const double RoundingMm = 1e-9;

    // A least gap over a stretch is told up to this much below what it is.
    private const double CertifiedMm = 1.1e-6;

    // √((1.7 + 1.5)² − 1.5²), the plan distance from the axis of a nose of radius 1.5 mm: √7.99.
    private const double SectionMm = 2.8266588049;

    private static readonly Gen<ContactPatch> Patches = Gen.Select(
        Gen.Int[0, 2],
        Gen.Double[0.1, 6],
        Gen.Double[-1.57, 1.57],
        (kind, nose, angle) => kind == 0 ? MeasuredContacts.Rivet(nose) : MeasuredContacts.Fold(nose, kind == 1 ? angle : 0));

    private static readonly Gen<Question> Any = Gen.Select(
        Gen.Double[20, 500],
        Gen.Int[1, 3],
        Gen.Int[1, 4],
        Gen.Int[0, 3],
        Patches,
        (volts, degree, category, group, patch) => new Question(volts, degree, (OvervoltageCategory)category, (MaterialGroup)group, patch));

    private static OutputBrief Fan => Briefs.Output("fan", 30, (20, 60));

    [Fact]
    public void AutoRing_FoldWhereTheClearanceDecides_IsJudgedSidewaysByItsUprightEnds()
    {
        OpenContact open = MeasuredContacts.Of(Degree2(Fan), MeasuredContacts.Fold(1.5)).Only;
        Assert.Equal(SectionMm - 0.2, open.Along!.RequiredMm!.Value, RoundingMm);
        Assert.Equal(2.5, open.Sideways.RequiredMm!.Value, RoundingMm);
        Assert.Equal(2.5, open.Sideways.WorstMm, RoundingMm);
        Assert.True(open.SidewaysDecides);
        Assert.Equal(2.5, open.RequiredMm!.Value, RoundingMm);
        Assert.Equal(open.Requirement!.Creepage, open.DecidingRule);
        Assert.Equal(SpacingVerdict.Tight, Verdicts.On(open.WorstMm, open.RequiredMm.Value));
        Assert.Empty(OpenContactFindings.Of(Degree2(Fan), open));
    }

    [Fact]
    public void AutoRing_RivetWhereTheClearanceDecides_KeepsItsSectionBothWays()
    {
        OpenContact open = MeasuredContacts.Of(Degree2(Fan), MeasuredContacts.Rivet(1.5)).Only;
        Assert.Equal(SectionMm - 0.2, open.Along!.RequiredMm!.Value, RoundingMm);
        Assert.Equal(SectionMm - 0.2, open.Sideways.RequiredMm!.Value, RoundingMm);
        Assert.Equal(SectionMm - 0.2, open.Sideways.WorstMm, RoundingMm);
        Assert.Equal(open.Requirement!.Clearance, open.DecidingRule);
        Assert.Empty(OpenContactFindings.Of(Degree2(Fan), open));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    [InlineData(0.6)]
    [InlineData(1.4)]
    [InlineData(2)]
    public void Rule_CopperProudOfTheCarrier_KeepsTheClearanceFromTheLowerNose(double stepMm)
    {
        // Oracle: a ball of radius 1.5 mm that rides on the carrier, its middle 1.5 mm − step over the copper's face, and the edge of
        // the copper. The nose was once taken to ride on the copper, up to some hundredths of a millimetre on the unsafe side.
        OpenContactRule rule = new(1.7, 0, IsNone: false);
        ContactPatch patch = MeasuredContacts.Rivet(1.5).OverStep(stepMm);
        double plan = patch.HalfLengthMm + rule.SidewaysMm(patch);
        double wanted = double.Hypot(plan, Math.Max(0, 1.5 - stepMm)) - 1.5;
        Assert.True(wanted >= 1.7 - RoundingMm, FormattableString.Invariant($"{wanted} mm from the edge"));
        Assert.True(rule.SidewaysMm(patch) == 1.7 || wanted <= 1.7 + RoundingMm, "more than asked, and not because the patch itself asks it");
    }

    [Fact]
    public void ReachedAfter_FoldWhereTheClearanceDecides_IsWhereTheGapAlongTheMotionHasItsSection()
    {
        // By hand: the inner rear corner, √(rᵢ² + a²) from the axis, leaves a radial edge at the break; at worst the wiper lies 0.1 mm
        // further in, and edge and centre take 0.1 mm. The foot on the edge is inside the window.
        MeasuredContacts measured = MeasuredContacts.Of(Degree2(Fan), MeasuredContacts.Fold(1.5));
        double after = After(measured.Wheel.Ring("fan").RadiusMm - 1, SectionMm - 0.2 + 0.1);
        Assert.Equal(after, measured.Only.Periods[0].ReachedAfterRad!.Value, RoundingMm);
    }

    [Theory]
    [InlineData(2.56, true)]
    [InlineData(2.70, false)]
    public void ShortOffPeriod_Fold_IsJudgedAlongTheMotionByItsSection(double worstMm, bool misses)
    {
        // Half-way through the off-period both corners are as far from their edges; edge and centre take 0.1 mm, the wiper 0.1 mm
        // further in some more.
        double offS = 2 * After(19, worstMm + 0.1) / Angles.TurnRad * 180;
        Brief brief = Degree2(Briefs.Output("fan", 30, (0, 180 - offS)) with { RadiusMm = 20 });
        OpenContact open = MeasuredContacts.Of(brief, MeasuredContacts.Fold(1.5)).Only;
        Assert.Equal(worstMm, open.Along!.WorstMm, RoundingMm);
        Assert.Equal(misses, !open.SidewaysDecides);
        Assert.Equal(misses ? worstMm : 2.5, open.WorstMm, RoundingMm);
        string[] told = [.. OpenContactFindings.Of(brief, open).Select(f => f.Message)];
        Assert.Equal(misses ? 1 : 0, told.Length);
        Assert.All(told, t => Assert.Contains("2.56 mm along the motion at worst", t, StringComparison.Ordinal));
        Assert.All(told, t => Assert.Contains("2.627 mm are required", t, StringComparison.Ordinal));
    }

    [Fact]
    public void Parked_WhereOnlyTheUprightRuleIsKept_Misses()
    {
        // Parked 2.55 mm after the break at worst: what the fold keeps sideways, less than its section needs.
        double after = After(19, 2.65);
        Brief brief = Degree2(Fan with { RadiusMm = 20 });
        double parks = Angles.TurnRad * 80 / 180;
        OpenContact open = MeasuredContacts.Of(brief, MeasuredContacts.Fold(1.5), new ParkedPosition(parks + after, parks + after + 0.1, null)).Only;
        Assert.Equal(double.Hypot(19, 0.2) * Math.Sin(after), open.NominalMm, RoundingMm);
        Assert.Equal(2.55, open.WorstMm, CertifiedMm);
        Assert.False(open.SidewaysDecides);
        Assert.Equal(SpacingVerdict.Misses, Verdicts.On(open.WorstMm, open.RequiredMm!.Value));
    }

    [Fact]
    public void Parked_TwoPositions_TheOneWithLessAlongTheMotionDecidesThoughSidewaysIsLess()
    {
        double parks = Angles.TurnRad * 80 / 180;
        double Far(double mm) => parks + Math.Asin(mm / double.Hypot(19, 0.2));
        OpenContact open = MeasuredContacts.Of(
            Degree2(Fan with { RadiusMm = 20 }), MeasuredContacts.Fold(1.5), new ParkedPosition(Far(2.80), Far(2.81), null), new ParkedPosition(Far(2.70), Far(2.71), null)).Only;
        Assert.Equal(2.70, open.Along!.NominalMm, RoundingMm);
        Assert.Equal(SpacingVerdict.Misses, Verdicts.On(open.WorstMm, open.RequiredMm!.Value));
    }

    [Fact]
    public void AutoRing_AnyNoseUnderAnyRule_NeverMisses()
    {
        int byClearance = 0, byCreepage = 0;
        Any.Sample(
            g =>
            {
                Brief plain = Briefs.Plain(Fan);
                Brief brief = plain with
                {
                    Supply = plain.Supply with { VoltageV = g.VoltageV, Category = g.Category },
                    Environment = new(g.Degree, 300, false),
                    Carrier = plain.Carrier with { Group = g.Group },
                };
                OpenContact open = MeasuredContacts.Of(brief, g.Patch, new ParkedPosition(4, 4.1, null)).Only;
                Assert.NotEqual(SpacingVerdict.Misses, Verdicts.On(open.WorstMm, open.RequiredMm!.Value));
                Assert.Empty(OpenContactFindings.Of(brief, open));
                Interlocked.Increment(ref open.Along!.RequiredMm > open.Requirement!.Creepage!.RequiredMm ? ref byClearance : ref byCreepage);
            },
            iter: 200,
            threads: 1);
        Assert.True(byClearance > 20 && byCreepage > 20);
    }

    [Fact]
    public void AutoRing_GrowingNose_NeverMisses()
    {
        // Metamorphic: what is required grows with the radius, and the window with it.
        foreach (Func<double, ContactPatch> kind in (Func<double, ContactPatch>[])[r => MeasuredContacts.Fold(r), r => MeasuredContacts.Rivet(r), r => MeasuredContacts.Fold(r, 0.7), r => MeasuredContacts.Fold(r, Math.PI / 2)])
        {
            double before = 0;
            for (double radius = 0.2; radius < 8; radius += 0.6)
            {
                OpenContact open = MeasuredContacts.Of(Degree2(Fan), kind(radius)).Only;
                Assert.NotEqual(SpacingVerdict.Misses, Verdicts.On(open.WorstMm, open.RequiredMm!.Value));
                Assert.True(open.Along!.RequiredMm >= before);
                before = open.Along.RequiredMm!.Value;
            }
        }
    }

    [Fact]
    public void Sideways_TurnedFold_HasTheClearanceThroughTheAirAndLittleMore()
    {
        // Oracle: the least distance from the points of a straight edge on the face to a cylinder that ends upright, by its definition:
        // √(v² + R²) − R across its line, and beyond its end the sum of squares with the rest along it.
        Gen.Select(Gen.Double[0, Math.PI / 2], Gen.Double[0.2, 5], Gen.Double[0.3, 4], Gen.Double[0.05, 0.4]).Sample(
            (beta, nose, clearance, half) =>
            {
                ContactPatch patch = MeasuredContacts.Fold(nose, beta, half);
                double gap = new OpenContactRule(clearance, clearance, IsNone: false).SidewaysMm(patch);
                double from = Math.Cos(beta) + (half * Math.Sin(beta)) + gap;
                double least = double.PositiveInfinity;
                for (double t = -12; t <= 12; t += 0.01)
                {
                    // Along the edge, the fold's line and what is across it being the axes.
                    double u = (from * Math.Cos(beta)) - (t * Math.Sin(beta));
                    double v = (from * Math.Sin(beta)) + (t * Math.Cos(beta));
                    least = Math.Min(least, double.Hypot(Math.Max(0, Math.Abs(u) - 1), double.Hypot(v, nose) - nose));
                }

                Assert.InRange(least, clearance - RoundingMm, double.PositiveInfinity);
                Assert.True(gap <= Math.Max(clearance, Math.Sqrt(((clearance + nose) * (clearance + nose)) - (nose * nose)) - half) + RoundingMm);
            },
            iter: 200,
            threads: 1);
    }

    [Fact]
    public void Steps_Fold_TellBothRequirementsAndWhichDecides()
    {
        string steps = string.Join('\n', MeasuredContacts.Of(Degree2(Fan), MeasuredContacts.Fold(1.5)).Only.Steps);
        Assert.Contains("√((1.7 + 1.5)² − 1.5²) = 2.827 mm", steps, StringComparison.Ordinal);
        Assert.Contains("2.627 mm are required", steps, StringComparison.Ordinal);
        Assert.Contains("ends upright: 2.5 mm are required", steps, StringComparison.Ordinal);
        Assert.Contains("The gap sideways has less to spare", steps, StringComparison.Ordinal);
    }

    // The angle after the break at which the inner rear corner of a patch of half length 0.2 mm, its wiper 0.1 mm further in than on
    // the innermost radius drawn, is a distance from the radial edge that the patch as drawn left at the break.
    private static double After(double innerMm, double mm)
    {
        double played = innerMm - 0.1;
        return Math.Asin(mm / double.Hypot(played, 0.2)) + Math.Atan(0.2 / played) - Math.Atan(0.2 / innerMm);
    }

    private static Brief Degree2(OutputBrief output) => Briefs.Plain(output) with { Environment = new(2, 300, false) };

    private sealed record Question(double VoltageV, int Degree, OvervoltageCategory Category, MaterialGroup Group, ContactPatch Patch);
}
