using System.Runtime.Intrinsics;
using WheelDraft.Engineering;
using WheelDraft.Tests.Wheel.Timing;
using Xunit;

namespace WheelDraft.Tests.Tolerance;

/// <summary>Draws of on-times and starts over rings of every kind: adjusted, lands, discs, turned folds, worn.</summary>
public sealed class OnTimeModelTests
{
    // What halving angles leaves, and a bound's own rounding, s.
    private const double FoundS = 2e-9;

    // Turning the wheel until the patch no longer touches: shares no formula with the program.
    [Fact]
    public void Of_DrawsOfRingsOfEveryKind_AreWhatTurningTheWheelFinds() => WithEach(60, (drawn, moved) =>
    {
        TimedPeriod period = PeriodOf(drawn, moved);
        OnTimeModel model = new(period, DrawDistribution.Uniform);
        TouchOracle oracle = new(drawn);
        DrawStream stream = new(11, 0);
        Vector256<double>[] v = new Vector256<double>[OnTimeModel.Variates];
        model.Draw(ref stream, v);
        DrawnTimes times = model.Of(v);
        for (int lane = 0; lane < 4; lane++)
        {
            Member member = MemberOf(drawn, v, lane, moved);
            Assert.Equal(oracle.OnS(member, moved), times.OnS[lane], FoundS);
            double scale = drawn.Shop.Motion.TurnTimeS / (2 * Math.PI) / (1 + member.FrequencyShare);
            double make = oracle.TouchRad(EdgeEnd.Make, member, moved) - oracle.TouchRad(EdgeEnd.Make, default, 0);

            // The oracle leaves the placing of a single wiper out.
            double placing = drawn.Ring.Land is null ? v[(int)Variate.MakePlacing][lane] * drawn.Shop.PlacingMm / (drawn.Trial.RadiusMm + moved + member.MakeSideMm) : 0;
            Assert.Equal((drawn.Period.StartRad + make + placing) * scale, times.StartS[lane], FoundS);
        }
    });

    [Theory]
    [InlineData(DrawDistribution.Normal)]
    [InlineData(DrawDistribution.Uniform)]
    public void Of_AnyDraw_StaysInTheWorstCase(DrawDistribution law) => WithEach(150, (drawn, moved) =>
    {
        TimedPeriod period = PeriodOf(drawn, moved);
        OnTimeModel model = new(period, law);
        RingTiming timing = new(drawn.Shop, drawn.Ring, Deviations.Of(drawn.Shop, drawn.Ring), drawn.Trial.RadiusMm, moved);
        (double longer, double shorter) = timing.Limits(drawn.Period, drawn.Cut);
        double on = drawn.Shop.Motion.SecondsFromRad(timing.OnRad(drawn.Period, drawn.Cut));
        PeriodBands bands = new EdgeBands(drawn.Shop, drawn.Ring, drawn.Trial.RadiusMm).Of(drawn.Period, drawn.Cut);
        IReadOnlyList<DrawnSummary> summaries = new DrawRun(model, 7, [new(on, on - shorter, on + longer, null), new(model.StartS, bands.StartMinS, bands.StartMaxS, null)]).Of(2048, 1);
        Assert.InRange(summaries[0].Tally.Least, on - shorter - FoundS, on + longer + FoundS);
        Assert.InRange(summaries[0].Tally.Most, on - shorter - FoundS, on + longer + FoundS);

        // The band of the start is at mid travel; a make edge that is sloped moves with the wiper.
        if (moved == 0)
        {
            Assert.InRange(summaries[1].Tally.Least, bands.StartMinS - FoundS, bands.StartMaxS + FoundS);
            Assert.InRange(summaries[1].Tally.Most, bands.StartMinS - FoundS, bands.StartMaxS + FoundS);
        }
    });

    // What would be found if every deviation stood at the end of its band that lengthens: some corner comes near the bound.
    [Fact]
    public void Of_CornersOfTheBox_ComeNearTheWorstCase() => WithEach(60, (drawn, moved) =>
    {
        TimedPeriod period = PeriodOf(drawn, moved);
        OnTimeModel model = new(period, DrawDistribution.Normal);
        RingTiming timing = new(drawn.Shop, drawn.Ring, Deviations.Of(drawn.Shop, drawn.Ring), drawn.Trial.RadiusMm, moved);
        (double longer, double _) = timing.Limits(drawn.Period, drawn.Cut);
        double on = drawn.Shop.Motion.SecondsFromRad(timing.OnRad(drawn.Period, drawn.Cut));
        double most = 0;
        foreach (double makePlay in (double[])[-1, 1])
        {
            foreach (double breakPlay in (double[])[-1, 1])
            {
                for (int k = 0; k < 72; k++)
                {
                    Vector256<double>[] v = new Vector256<double>[OnTimeModel.Variates];
                    void Set(Variate variate, double share) => v[(int)variate] = Vector256.Create(share);
                    Set(Variate.Frequency, -1);
                    Set(Variate.MakeCut, 1);
                    Set(Variate.BreakCut, 1);
                    Set(Variate.CentreAlong, Math.Cos(k * Math.PI / 36));
                    Set(Variate.CentreAcross, Math.Sin(k * Math.PI / 36));
                    Set(Variate.MakePlay, makePlay);
                    Set(Variate.BreakPlay, breakPlay);
                    Set(Variate.Wear, 1);
                    Set(Variate.MakePlacing, -1);
                    Set(Variate.BreakPlacing, 1);
                    most = Math.Max(most, model.Of(v).OnS[0]);
                }
            }
        }

        // Placing counts on the least radius in the bound and on its own radius here; the centre is tried every five degrees.
        Assert.InRange(most - on, (longer * (drawn.Ring.Land is null ? 0.99 : 0.8)) - 1e-9, longer + FoundS);
    });

    [Theory]
    [InlineData(0.001)]
    [InlineData(0.05)]
    [InlineData(0.3)]
    [InlineData(0.45)]
    public void SeriesFor_AnglesWithinItsReach_IsTheArctangent(double widest)
    {
        Vector256<double>[] series = EdgeMoments.SeriesFor(widest);
        Assert.NotEmpty(series);
        for (double z = -widest; z <= widest; z += widest / 7)
        {
            double sum = series.Aggregate(0.0, (s, term) => (s * z * z) + term[0]) * z;
            Assert.Equal(Math.Atan(z), sum, 1e-9);
        }
    }

    [Fact]
    public void SeriesFor_AWideAngle_IsLeftToTheLibrary() => Assert.Empty(EdgeMoments.SeriesFor(0.9));

    private static TimedPeriod PeriodOf(DrawnRing drawn, double moved) =>
        new(drawn.Shop.Motion, Deviations.Of(drawn.Shop, drawn.Ring), drawn.Period, drawn.Cut.Make, drawn.Cut.Break)
        {
            MakePatch = drawn.Ring.MakePatch,
            BreakPatch = drawn.Ring.BreakPatch,
            HasTwoWipers = drawn.Ring.Land is not null,
            RadiusMm = drawn.Trial.RadiusMm,
            MovedMm = moved,
        };

    private static Member MemberOf(DrawnRing d, Vector256<double>[] v, int lane, double moved)
    {
        double Of(Variate variate) => v[(int)variate][lane];
        double e = d.Shop.RunOutMm / 2;
        (double sin, double cos) = Math.SinCos(d.Cut.Break.NormalRad);
        double t = d.Shop.Process.ToleranceMm;
        double bound = d.Ring.PlacingRad(d.Shop.PlacingMm, d.Trial.RadiusMm);
        double riding = d.Trial.RadiusMm + moved;
        double makePlay = Of(Variate.MakePlay) * d.Ring.SidePlayMm;
        double breakPlay = Of(Variate.BreakPlay) * d.Ring.SidePlayMm;

        // The oracle's is where the wiper stands over the wheel: further on is sooner.
        double Placing(Variate which, double play) => bound == 0 ? 0 : -Of(which) * d.Shop.PlacingMm / (riding + play) / bound;
        double along = Of(Variate.CentreAlong), across = Of(Variate.CentreAcross);
        return new(
            Of(Variate.Frequency) * d.Shop.FrequencyShare,
            Of(Variate.MakeCut) * t,
            Of(Variate.BreakCut) * t,
            e * ((along * cos) + (across * sin)),
            e * ((along * sin) - (across * cos)),
            makePlay,
            breakPlay,
            Of(Variate.Wear))
        {
            MakePlacing = Placing(Variate.MakePlacing, makePlay),
            BreakPlacing = Placing(Variate.BreakPlacing, breakPlay),
        };
    }

    private static void WithEach(int rings, Action<DrawnRing, double> holds, [System.Runtime.CompilerServices.CallerMemberName] string test = "")
    {
        int set = 0;
        DrawnRing.Any.Sample(
            drawn =>
            {
                if (drawn is not null)
                {
                    set++;
                    foreach (double moved in drawn.Ring.Adjust is null ? [0] : (double[])[0, -drawn.Ring.TravelMm / 2, drawn.Ring.TravelMm / 2])
                    {
                        holds(drawn, moved);
                    }
                }
            },
            iter: rings,
            print: d => d is null ? "none" : FormattableString.Invariant($"ring on {d.Trial.RadiusMm} mm, {d.Cut}"),
            test: test);
        Assert.True(set >= rings / 3, FormattableString.Invariant($"Only {set} of {rings} rings could be set."));
    }
}
