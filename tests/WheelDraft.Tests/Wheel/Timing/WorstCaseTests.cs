using System.Globalization;
using CsCheck;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Wheel.Timing;

/// <summary>Worst-case on-times against members of the box, each found by turning the wheel until the patch no longer touches.</summary>
/// <remarks>WHEELDRAFT_WHEELS and WHEELDRAFT_DRAWS set how many rings are drawn and how many members of each.</remarks>
public sealed class WorstCaseTests
{
    // What halving angles of a turn of up to a quarter of an hour leaves, s.
    private const double FoundS = 1e-9;
    private const double PromisedS = 1e-6;

    private static readonly int Wheels = Count("WHEELDRAFT_WHEELS", 60);
    private static readonly int Draws = Count("WHEELDRAFT_DRAWS", 100);

    private static int Count(string variable, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out int count) ? count : otherwise;

    private static IEnumerable<double> Places(DrawnRing drawn) =>
        drawn.Ring.Adjust is null ? [0] : [0, -drawn.Ring.TravelMm / 2, drawn.Ring.TravelMm / 2];

    private static (double LongerS, double ShorterS) Limits(DrawnRing drawn, double moved) =>
        new RingTiming(drawn.Shop, drawn.Ring, Deviations.Of(drawn.Shop, drawn.Ring), drawn.Trial.RadiusMm, moved).Limits(drawn.Period, drawn.Cut);

    // All corners of the box with the centre in 12 directions, and members drawn uniformly.
    [Fact]
    public void Limits_EveryCornerAndDrawOfTheBox_LiesWithinThem() => WithEach((drawn, random) =>
    {
        TouchOracle oracle = new(drawn);
        foreach (double moved in Places(drawn))
        {
            double nominal = oracle.NominalS(moved);
            (double longer, double shorter) = Limits(drawn, moved);
            foreach (Member member in Corners(drawn).Concat(Enumerable.Range(0, Draws).Select(_ => Uniform(drawn, random))))
            {
                double on = oracle.OnS(member, moved);
                Assert.InRange(on, nominal - shorter - FoundS, nominal + longer + FoundS);
            }
        }
    });

    // Another kind of search: directions of the centre in a fan, then by thirds; side play at its ends, or by thirds.
    [Fact]
    public void Limits_ASearchOfAnotherKind_ComesWithinAMicrosecond() => WithEach((drawn, _) =>
    {
        TouchOracle oracle = new(drawn);
        foreach (double moved in Places(drawn))
        {
            double nominal = oracle.NominalS(moved);
            (double longer, double shorter) = Limits(drawn, moved);
            double most = BoxSearch.Greatest(drawn, oracle, moved) - nominal;
            double least = nominal - BoxSearch.Least(drawn, oracle, moved);
            Assert.InRange(longer - most, -FoundS, PromisedS);
            Assert.InRange(shorter - least, -FoundS, PromisedS);
        }
    });

    // A tolerance is judged by each edge at its own worst first, and by both together only where that does not decide. Oracle: the worst case itself.
    [Fact]
    public void Exceeds_AnyRing_BeginsAtItsWorstCase() => WithEach((drawn, _) =>
    {
        foreach (double moved in Places(drawn))
        {
            RingTiming timing = new(drawn.Shop, drawn.Ring, Deviations.Of(drawn.Shop, drawn.Ring), drawn.Trial.RadiusMm, moved);
            double worst = Worst(timing.Limits(drawn.Period, drawn.Cut));
            Assert.False(timing.Exceeds(drawn.Period, drawn.Cut, worst + PromisedS));
            Assert.Equal(worst > PromisedS, timing.Exceeds(drawn.Period, drawn.Cut, Math.Max(0, worst - PromisedS)));
        }
    });

    // Once judged at mid travel and both ends: one drawn ring in some hundreds was worse between.
    [Fact]
    public void Travel_EveryPlaceOfIt_IsNoWorseThanWhatTheSearchFinds() => WithEach((drawn, _) =>
    {
        if (drawn.Ring.Adjust is null)
        {
            return;
        }

        double found = new TravelSearch(drawn.Shop, drawn.Ring, drawn.Trial.RadiusMm).Worst(drawn.Cut).WorstS;
        for (int i = 0; i <= 200; i++)
        {
            double there = Worst(Limits(drawn, drawn.Ring.TravelMm * ((i / 200.0) - 0.5)));
            Assert.True(there <= found + PromisedS, FormattableString.Invariant($"{there} s at {i} of 200, {found} s found."));
        }
    });

    // Was the sum of first-order terms: on-times beyond it, one of them here. 90 s on 10 mm, everything at its worst, edges 180° apart.
    [Fact]
    public void Limits_OnceASumOfFirstOrderTerms_AreABound()
    {
        Design design = Design.Of(Briefs.Plain(Briefs.Output("fan", 10, 90, 5) with { RadiusMm = 16 }));
        TimingLimits limits = design.Wheel.Rings[0].Periods[0].Limits;

        // By hand: 90 s at 1 % low frequency alone is 0.909091 s longer, which the first-order 0.9 s fell short of.
        Assert.True(limits.LongerS > (90 / 0.99) - 90 + ((limits.Of(DeviationKind.MakeCut).LongerS + limits.Of(DeviationKind.BreakCut).LongerS) / 0.99));
    }

    [Fact]
    public void Layout_ToleranceBetweenFirstOrderAndTruth_GrowsUntilTheTruthMeets()
    {
        // What the free radius gives at worst, and a hair less asked for: the ring must grow until its true worst case is that.
        OutputBrief output = Briefs.Output("fan", 3, 100, 5) with { OverOpenContact = null };
        double free = Design.Of(Briefs.Plain(output)).Wheel.Rings[0].Periods[0].Limits.WorstS;
        RingLayout grown = Design.Of(Briefs.Plain(output with { ToleranceS = free - 1e-3 })).Wheel.Rings[0];
        Assert.InRange(grown.Periods[0].Limits.WorstS, free - 1e-3 - 1e-6, free - 1e-3);
    }

    [Fact]
    public void Layout_Adjusting_MeetsItsToleranceAtBothEndsOfTravel()
    {
        // The worked wheel asks for 1 s; its inner end comes to 0.997226 s (computed from the definitions, apart from the program).
        AdjustLayout adjust = Design.Of(Briefs.Worked()).Wheel.Ring("mist").Adjust!;
        Assert.Equal(0.997226, adjust.Steps[0].LongerS, PromisedS);
        Assert.Equal(0.880441, adjust.Steps[^1].LongerS, PromisedS);
        Assert.Equal(0.296764, adjust.Steps[0].ShorterS, PromisedS);

        // With 0.99 s at the inner end only a larger ring will do, though at mid travel this one would.
        Brief worked = Briefs.Worked();
        Brief finer = worked with { Outputs = [worked.Outputs[0], worked.Outputs[1] with { ToleranceS = 0.99 }] };
        RingLayout mist = Design.Of(finer).Wheel.Ring("mist");
        Assert.True(mist.RadiusMm > 18.8);
        Assert.All(mist.Adjust!.Steps, s => Assert.True(Math.Max(s.LongerS, s.ShorterS) <= 0.99 + 1e-9));
    }

    private static double Worst((double LongerS, double ShorterS) limits) => Math.Max(limits.LongerS, limits.ShorterS);

    private static void WithEach(Action<DrawnRing, Random> holds, [System.Runtime.CompilerServices.CallerMemberName] string test = "")
    {
        int set = 0;
        Gen.Select(DrawnRing.Any, Gen.Int).Sample(
            pair =>
            {
                (DrawnRing? drawn, int seed) = pair;
                if (drawn is not null)
                {
                    set++;
                    holds(drawn, new Random(seed));
                }
            },
            iter: Wheels,
            print: p => p.Item1 is DrawnRing d ? FormattableString.Invariant($"ring on {d.Trial.RadiusMm} mm, {d.Cut}") : "none",
            test: test);
        Assert.True(set >= Wheels / 3, FormattableString.Invariant($"Only {set} of {Wheels} rings could be set."));
    }

    internal static IEnumerable<Member> Corners(DrawnRing d)
    {
        double e = d.Shop.RunOutMm / 2;
        double t = d.Shop.Process.ToleranceMm;
        double p = d.Ring.SidePlayMm;
        double[] ways = [-1, 1];
        return from f in ways
               from mt in ways
               from bt in ways
               from ms in ways
               from bs in ways
               from wear in (double[])[0, 1]
               from k in Enumerable.Range(0, 12)
               from pm in d.Ring.Land is null ? [0] : ways
               select new Member(f * d.Shop.FrequencyShare, mt * t, bt * t, e * Math.Cos(k * Math.PI / 6), e * Math.Sin(k * Math.PI / 6), ms * p, bs * p, wear)
               {
                   MakePlacing = pm,
                   BreakPlacing = -pm,
               };
    }

    private static Member Uniform(DrawnRing d, Random random)
    {
        double Within(double most) => most * ((2 * random.NextDouble()) - 1);
        double e = d.Shop.RunOutMm / 2 * Math.Sqrt(random.NextDouble());
        double way = 2 * Math.PI * random.NextDouble();
        double t = d.Shop.Process.ToleranceMm;
        return new(Within(d.Shop.FrequencyShare), Within(t), Within(t), e * Math.Cos(way), e * Math.Sin(way), Within(d.Ring.SidePlayMm), Within(d.Ring.SidePlayMm), random.NextDouble())
        {
            MakePlacing = Within(1),
            BreakPlacing = Within(1),
        };
    }

    [Fact]
    public void LatestCurves_OfCornersThatPassEachOtherOnTheWay_HoldTheLatestMomentAtEveryPlace()
    {
        // Of a patch 2 mm by 0.4 mm the inner rear corner leaves last where the line lies beyond -0.2 mm from the axis, the outer one before:
        // there the line holds both. By brute force over the way of the line, half a millimetre to either side.
        EdgePatchPoints patch = new([new(-1, -0.2), new(1, -0.2), new(1, 0.2), new(-1, 0.2)], 0);
        EdgeCurves curves = new(patch, 19.9, 20.1, -0.2);
        for (double outMm = -0.5; outMm <= 0.5; outMm += 0.01)
        {
            Assert.Equal(curves.Latest(outMm), curves.LatestCurves(-0.5, 0.5).Max(c => c.At(outMm)), 1e-12);
        }
    }
}
