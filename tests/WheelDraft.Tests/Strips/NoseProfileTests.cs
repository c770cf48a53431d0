using CsCheck;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>The section of a folded nose: an arc with two legs. Oracle: the same section as a chain of points, tried one by one.</summary>
public sealed class NoseProfileTests
{
    private static readonly Gen<(double C, double R, double Lowered, double SlopeDeg)> Noses = Gen.Select(Gen.Double[0.2, 4], Gen.Double[0.5, 2.5], Gen.Double[0, 0.4], Gen.Double[10, 89]);

    [Fact]
    public void FromAxisMm_AnyNose_HasTheClearanceThereAndLessNearer() => Noses.Sample(
        n =>
        {
            NoseProfile profile = new(n.R, n.Lowered, new(n.SlopeDeg * Math.PI / 180, 0));
            double at = profile.FromAxisMm(n.C);
            Assert.InRange(DistanceTo(at, n), n.C - 1e-9, n.C + 1e-4);
            Assert.True(DistanceTo(at - 0.01, n) < n.C);
        },
        iter: 100);

    [Fact]
    public void FromAxisMm_SteepLegs_AreTheArcAlone()
    {
        // √((1.7 + 1.5)² − 1.5²) by hand; its direction is acos(1.5/3.2), 62° from straight down.
        NoseProfile arc = new(1.5, 0, Legs: null);
        Assert.Equal(Math.Sqrt(7.99), arc.FromAxisMm(1.7), 1e-12);
        Assert.Equal(Math.Sqrt(7.99), (arc with { Legs = new(63 * Math.PI / 180, 0) }).FromAxisMm(1.7), 1e-12);
        Assert.True((arc with { Legs = new(61 * Math.PI / 180, 0) }).FromAxisMm(1.7) > Math.Sqrt(7.99));
    }

    [Fact]
    public void MostMm_AnyNose_IsNoLessThanAnyPlaceOfItAndHardlyMore() => Gen.Select(Noses, Gen.Double[0, 1], Gen.Double[0, 0.3]).Sample(
        (n, share, widens) =>
        {
            NoseProfile profile = new(n.R, n.Lowered, new(n.SlopeDeg * Math.PI / 180, widens));
            double most = profile.MostMm(n.C, (x, leg) => (share * x) + (widens * leg));
            double tried = Section(n, LegToMm(n)).Where(p => p.H < n.C).Max(p => (share * p.X) + (widens * p.Leg) + Math.Sqrt((n.C * n.C) - (p.H * p.H)));
            Assert.InRange(most, tried - 1e-9, tried + 1e-3);
        },
        iter: 100);

    // As long as the leg is lower than the clearance; close together where it ends, because √(c² − h²) is steep there.
    private static double LegToMm((double C, double R, double Lowered, double SlopeDeg) nose)
    {
        double slope = nose.SlopeDeg * Math.PI / 180;
        return Math.Max(0, (nose.C + nose.Lowered - (nose.R * (1 - Math.Cos(slope)))) / Math.Sin(slope));
    }

    private static double DistanceTo(double planMm, (double C, double R, double Lowered, double SlopeDeg) nose) =>
        Section(nose, 40).Min(p => double.Hypot(planMm - p.X, p.True));

    // Heights over the face: as they are, and nothing below it.
    private static IEnumerable<(double X, double H, double True, double Leg)> Section((double C, double R, double Lowered, double SlopeDeg) nose, double legMm)
    {
        const int steps = 4000;
        double slope = nose.SlopeDeg * Math.PI / 180;
        for (int i = 0; i <= steps; i++)
        {
            double turned = slope * i / steps;
            double height = (nose.R * (1 - Math.Cos(turned))) - nose.Lowered;
            yield return (nose.R * Math.Sin(turned), Math.Max(0, height), height, 0);
        }

        for (int i = 1; i <= steps; i++)
        {
            double left = 1 - ((double)i / steps);
            double leg = legMm * (1 - (left * left));
            double height = (nose.R * (1 - Math.Cos(slope))) + (leg * Math.Sin(slope)) - nose.Lowered;
            yield return ((nose.R * Math.Sin(slope)) + (leg * Math.Cos(slope)), Math.Max(0, height), height, leg);
        }
    }
}
