using System.Runtime.Intrinsics;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Tolerance;

/// <summary>Roots of sums of squares, draws and shares of variance against worked stacks and closed forms.</summary>
public sealed class SpreadTests
{
    // "Tolerance stackup worked example" (metricmech.com): 40.00 ± 0.10 less 25.00 ± 0.05, 2.00 ± 0.03 and 10.00 ± 0.05 is 3.00: worst ± 0.23, root of the
    // sum of squares ± 0.1261 (results worked out again). Uniform instead: standard deviation 0.0728, 99.73 % within ± 0.186.
    [Fact]
    public void RootSumSquare_OfTheWorkedStack_IsThatOfItsSourceAndOfTheDraws()
    {
        double[] bands = [0.10, 0.05, 0.03, 0.05];
        Assert.Equal(0.23, bands.Sum(), 1e-12);
        Assert.Equal(0.1261, RootSumSquare.Of(bands.Select(b => (0.0, RootSumSquare.DeviationOf(DrawLaw.Normal, b)))).Limit, 5e-5);
        Assert.Equal(0.0728, RootSumSquare.Of(bands.Select(b => (0.0, RootSumSquare.DeviationOf(DrawLaw.Uniform, b)))).Limit / 3, 5e-5);

        DrawStream stream = new(1, 0);
        Tally normal = new(-0.23, 0.23, 0, null), uniform = new(-0.23, 0.23, 0, null);
        Vector256<double>[] of = new Vector256<double>[250_000], other = new Vector256<double>[250_000];
        for (int i = 0; i < of.Length; i++)
        {
            foreach (double b in bands)
            {
                of[i] += stream.TwoNormals().First * Vector256.Create(b);
                other[i] += stream.Uniform() * Vector256.Create(b);
            }
        }

        double n = 4.0 * of.Length;
        Assert.Equal(0.1261, 3 * Math.Sqrt(normal.Add(of).Squares / n), 5 * 0.1261 / Math.Sqrt(2 * n) + 5e-5);
        Assert.Equal(0.0728, Math.Sqrt(uniform.Add(other).Squares / n), 5 * 0.0728 / Math.Sqrt(2 * n) + 5e-5);
        Assert.Equal(0.186, (uniform.Quantile(0.99865, (long)n) - uniform.Quantile(0.00135, (long)n)) / 2, 6e-4);
    }

    // A turn of a minute, radius 30, on for 10 s (60°): edges ± 0.1 mm do 0.032 s each, 0.05 mm of eccentricity 0.016 s, ± 0.1 % of frequency 0.010 s
    // (derived from r ω, all to a thousandth); a patch 0.3 mm longer at each end, 0.095 s at each. Worst 0.185 s, root of the sum of squares 0.107 s.
    [Fact]
    public void Spread_OfTheWorkedTimingStack_HasItsContributors()
    {
        (TimingSpreads spreads, RingPeriod period) = Stack(0.1, 0.1, 0.001, 0.4);
        double Alone(DeviationKind kind) => period.Limits.Of(kind).WorstS;
        (DeviationKind Kind, double S)[] stack = [(DeviationKind.MakeCut, 0.032), (DeviationKind.BreakCut, 0.032), (DeviationKind.Centre, 0.016), (DeviationKind.Frequency, 0.010)];
        Assert.All(stack, c => Assert.Equal(c.S, Alone(c.Kind), 5e-4));
        Assert.Equal(0.185, stack.Sum(c => c.S) + 0.095, 1e-12);
        Assert.Equal(0.107, RootSumSquare.Of([.. stack.Select(c => (0.0, c.S / 3)), (0, 0.095 / 3)]).Limit, 5e-4);

        // By own laws: normal, normal, arcsine, normal.
        double expected = Math.Sqrt((Square(Alone(DeviationKind.MakeCut)) + Square(Alone(DeviationKind.BreakCut)) + Square(Alone(DeviationKind.Frequency))) / 9 + (Square(Alone(DeviationKind.Centre)) / 2));
        FigureSpread on = spreads.All[0].Periods[0].OnTime;
        Assert.Equal(3 * expected, on.RootSumSquare.Limit, 3e-5);
        Assert.Equal(expected, on.Deviation, 1e-4);
        Assert.InRange(on.LeastDrawn, on.WorstLeast, on.WorstMost);
        Assert.InRange(on.MostDrawn, on.WorstLeast, on.WorstMost);

        // Near additive, so shares of the variance are those of the squares, first order and total alike.
        foreach ((DeviationKind kind, double deviation) in new[] { (DeviationKind.MakeCut, 1 / 3.0), (DeviationKind.Centre, 1 / Math.Sqrt(2)), (DeviationKind.Frequency, 1 / 3.0) })
        {
            VarianceShare share = on.Shares.First(s => s.Kind == kind);
            double closed = Square(Alone(kind) * deviation / expected);
            Assert.Equal(closed, share.First, (5 * share.FirstError) + 0.003);
            Assert.Equal(closed, share.Total, (5 * share.TotalError) + 0.003);
            Assert.InRange(share.FirstError, 0, 0.02);
        }
    }

    // Each alone: normal of a third, arcsine e²/2, uniform W²/12 (closed forms).
    [Theory]
    [InlineData(0.1, 0, 0, 0.4)]
    [InlineData(0, 0.2, 0, 0.4)]
    [InlineData(0, 0, 0.01, 0.4)]
    [InlineData(0, 0, 0, 0.9)]
    public void Spread_OneDeviationAlone_HasTheVarianceOfItsLaw(double cut, double runOut, double frequency, double worn)
    {
        (TimingSpreads spreads, RingPeriod period) = Stack(cut, runOut, frequency, worn);
        TimingLimits l = period.Limits;
        double half = (l.LongerS + l.ShorterS) / 2;
        double expected = cut > 0 ? half / 3 / Math.Sqrt(2) : runOut > 0 ? half / Math.Sqrt(2) : frequency > 0 ? half / 3 : half / Math.Sqrt(3);
        FigureSpread on = spreads.All[0].Periods[0].OnTime;
        Assert.Equal(1, on.Deviation / expected, 0.006);
        Assert.Equal(1, on.RootSumSquare.Limit / 3 / expected, 0.003);
        Assert.Equal(worn > 0.4 ? half : 0, on.RootSumSquare.Shift, 1e-4);
        Assert.Equal(on.Nominal + on.RootSumSquare.Shift, on.Mean, 5 * on.Deviation / Math.Sqrt(spreads.DrawsMade) + 2e-5);
        Assert.Equal(spreads.DrawsMade, on.Histogram.Sum());
    }

    [Fact]
    public void Spread_NothingDeparts_IsOneFigure()
    {
        (TimingSpreads spreads, RingPeriod _) = Stack(0, 0, 0, 0.4);
        FigureSpread on = spreads.All[0].Periods[0].OnTime;
        Assert.Equal(10, on.Mean, 1e-9);
        Assert.Equal(0, on.Deviation, 1e-9);
        Assert.Empty(on.Shares);
        Assert.Equal(1, on.Within!.Value.Share);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(7)]
    public void DrawRun_OverAnyNumberOfProcessors_GivesTheSameFigures(int workers)
    {
        Design design = Design.Of(Briefs.Worked());
        RingLayout ring = design.Wheel.Ring("mist");
        OnTimeModel model = new(TimedPeriod.Of(design.Brief, design.Motion, ring, ring.Periods[0]), DrawDistribution.Normal);
        DrawRun run = new(model, 5, [new(model.OnS, 5, 7, 0.2), new(model.StartS, 118, 126, null), new(model.DoseMl, 90, 140, 5)]);
        IReadOnlyList<DrawnSummary> one = run.Of(50_000, 1), many = run.Of(50_000, workers);
        foreach ((DrawnSummary a, DrawnSummary b) in one.Zip(many))
        {
            Assert.Equal((a.Draws, a.Mean, a.Deviation), (b.Draws, b.Mean, b.Deviation));
            Assert.Equal((a.Tally.Within, a.Tally.Least, a.Tally.Most), (b.Tally.Within, b.Tally.Least, b.Tally.Most));
            Assert.Equal(a.Tally.Histogram(32), b.Tally.Histogram(32));
        }

        DrawnSummary again = new DrawRun(model, 6, [new(model.OnS, 5, 7, 0.2)]).Of(50_000, 1)[0];
        Assert.NotEqual(one[0].Mean, again.Mean);
    }

    // Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17 (1998), table I, score method (from memory).
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void WithinShare_OfPublishedCounts_HasWilsonsInterval(long within, long draws, double low, double high)
    {
        WithinShare share = WithinShare.Of(within, draws);
        Assert.Equal(low, share.Low, 6e-5);
        Assert.Equal(high, share.High, 6e-5);
        WithinShare mirrored = WithinShare.Of(draws - within, draws);
        Assert.Equal(1 - share.Low, mirrored.High, 1e-12);
        Assert.Equal(1 - share.High, mirrored.Low, 1e-12);
    }

    private static double Square(double x) => x * x;

    private static (TimingSpreads Spreads, RingPeriod Period) Stack(double cut, double runOut, double frequency, double worn)
    {
        OutputBrief output = Briefs.Output("fan", 5, 10) with { RadiusMm = 30, SidePlayMm = 0, OverOpenContact = null, Contact = new(0.4, 0.4, worn, 0, null) };
        Brief plain = Briefs.Plain(output);
        Design design = Design.Of(plain with
        {
            Supply = plain.Supply with { FrequencyToleranceShare = frequency },
            Drive = plain.Drive with { TurnTimeS = 60 },
            Wheel = plain.Wheel with { RunOutMm = runOut },
            Process = plain.Process with { ToleranceMm = cut },
            MonteCarlo = new() { Draws = 100_000 },
            Places = new Dictionary<string, TextPlace>(StringComparer.Ordinal) { ["monte_carlo.draws"] = new(1, 1) },
        });
        return (design.Spreads, design.Wheel.Rings[0].Periods[0]);
    }

    [Fact]
    public void Spreads_Attended_TellHowFarTheyAreAndStop()
    {
        List<double> told = [];
        Brief brief = Demos.Of("propagation-bench").Brief with { MonteCarlo = new() { Draws = 20_000 } };
        Assert.NotEmpty(Design.Of(brief, new((_, share) => told.Add(share), default)).Spreads.All);
        Assert.True(told.Count > 2 && told[^1] == 1);
        Assert.All(told, share => Assert.InRange(share, 0, 1));
        using CancellationTokenSource stop = new();
        Design stopped = Design.Of(brief, new((_, _) => stop.Cancel(), stop.Token));
        Assert.ThrowsAny<OperationCanceledException>(() => stopped.Spreads.All);
    }
}
