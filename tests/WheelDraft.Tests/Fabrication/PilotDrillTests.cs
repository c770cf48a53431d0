using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

/// <summary>Which drill a hole gets. Oracle: the bore as a disc and a half plane, looked through point by point round the hole.</summary>
public sealed class PilotDrillTests
{
    private const int Points = 3600;

    // Ø6 with a flat of 5 was drilled Ø6: the flat was gone. By hand: the flat is 2 mm from the axis, so a hole of 4.0 mm touches it, and the
    // drill that cuts over by 0.1 mm is 3.9 mm.
    [Fact]
    public void Bore_WithAFlat_IsNotDrilledToItsFullSize()
    {
        DrillPlan plan = Bore(6, 5, 0, 0.15, DrillSeries.Metric)!;
        Assert.Equal((3.9, false, Point.Origin), (plan.DrillMm, plan.ToSize, plan.At));
    }

    [Fact]
    public void Bore_AnyFlat_GetsTheLargestDrillThatStaysInside()
    {
        Gen.Select(Gen.Double[3, 20], Gen.Double[0.15, 0.98], Gen.Double[0, 6.28], Gen.Bool).Sample(
            (diameter, share, at, inch) =>
            {
                DrillSeries series = inch ? DrillSeries.Fractional : DrillSeries.Metric;
                double flat = diameter * share;
                if (Bore(diameter, flat, at, 0, series) is not DrillPlan plan)
                {
                    Assert.False(IsInside(diameter, flat, at, Middle(diameter, flat, at), series.FirstMm), "a drill would have fitted");
                    return;
                }

                Assert.True(IsInside(diameter, flat, at, plan.At, plan.DrillMm), "the hole leaves the outline");
                double next = plan.DrillMm + series.StepMm;
                double most = inch ? 12.7 : 13;
                Assert.True(next > most + 1e-6 || !IsInside(diameter, flat, at, plan.At, next), "a larger drill would have stayed inside");
                Assert.False(plan.ToSize);
            },
            iter: 400);
    }

    // With the flat at or beyond the axis no drill about the axis fits, and the largest circle between flat and opposite side is taken.
    [Fact]
    public void Bore_FlatThroughTheAxis_IsDrilledBesideIt()
    {
        DrillPlan plan = Bore(6, 3, 0, 0, DrillSeries.Metric)!;
        Assert.Equal(2.9, plan.DrillMm);
        Assert.Equal(-1.5, plan.At.X, 1e-9);
        Assert.Equal(0, plan.At.Y, 1e-9);
    }

    [Theory]
    [InlineData(6, 6, true)]
    [InlineData(6.35, 6.2, false)]
    [InlineData(2.2, 2.2, true)]
    [InlineData(20, 13, false)]
    public void Round_AHole_IsDrilledToSizeWhereTheSeriesHasIt(double holeMm, double drillMm, bool toSize)
    {
        DrillPlan plan = DrillPlan.Round(new(3, 4), holeMm, DrillSeries.Metric)!;
        Assert.Equal((drillMm, toSize), (plan.DrillMm, plan.ToSize));
    }

    [Theory]
    [InlineData(9.525, 9.525, true)]
    [InlineData(2.2606, 1.984375, false)]
    public void Round_InInches_TakesAFraction(double holeMm, double drillMm, bool toSize)
    {
        DrillPlan plan = DrillPlan.Round(Point.Origin, holeMm, DrillSeries.Fractional)!;
        Assert.Equal(drillMm, plan.DrillMm, 1e-9);
        Assert.Equal(toSize, plan.ToSize);
    }

    [Fact]
    public void Round_SmallerThanEveryDrill_HasNone() => Assert.Null(DrillPlan.Round(Point.Origin, 0.3, DrillSeries.Metric));

    private static DrillPlan? Bore(double diameterMm, double flatMm, double atRad, double insideRadiusMm, DrillSeries series)
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 3, (20, 60)));
        BoreBrief bore = new(diameterMm, flatMm, atRad);
        Brief brief = plain with { Wheel = plain.Wheel with { Bore = bore }, Process = plain.Process with { InsideRadiusMm = insideRadiusMm } };
        return DrillPlan.Bore(bore, HubLayout.Of(brief, 1.2).Bore, series);
    }

    private static Point Middle(double diameterMm, double flatMm, double atRad) => Point.Polar((diameterMm - flatMm) / 2, atRad + Math.PI);

    // A hole cut over by a tenth: every point of its rim in the disc and on this side of the flat, to a nanometre.
    private static bool IsInside(double diameterMm, double flatMm, double atRad, Point centre, double drillMm) =>
        Enumerable.Range(0, Points).All(i =>
        {
            double turn = (2 * Math.PI * i / Points) + atRad;
            double half = (drillMm + 0.1) / 2;
            (double x, double y) = (centre.X + (half * Math.Cos(turn)), centre.Y + (half * Math.Sin(turn)));
            return Math.Sqrt((x * x) + (y * y)) <= (diameterMm / 2) + 2e-6 && (x * Math.Cos(atRad)) + (y * Math.Sin(atRad)) <= flatMm - (diameterMm / 2) + 2e-6;
        });
}
