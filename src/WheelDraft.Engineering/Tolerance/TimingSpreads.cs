namespace WheelDraft.Engineering;

/// <summary>The spreads of all outputs of a wheel, drawn when somebody first asks for them: findings and drawings do not need them.</summary>
public sealed class TimingSpreads
{
    // A three-sigma interval and its middle, and one of 95 %.
    private static readonly double[] QuantileShares = [0.00135, 0.025, 0.5, 0.975, 0.99865];

    // Bins of the histogram that is reported.
    private const int HistogramBins = 32;

    private readonly Brief _brief;
    private readonly Motion _motion;
    private readonly LongWork _attend;
    private readonly int _draws;
    private readonly int _periods;
    private int _drawn;
    private readonly Lazy<IReadOnlyList<OutputSpread>> _all;

    internal TimingSpreads(Brief brief, Motion motion, WheelLayout wheel, LongWork? attend = null)
    {
        (_brief, _motion, _attend) = (brief, motion, attend ?? LongWork.Unattended);
        _periods = wheel.Rings.Sum(r => r.Periods.Count);
        _draws = DrawsOf(brief, _periods);
        _all = new(() => [.. wheel.Rings.Select(r => new OutputSpread(r.Name, [.. r.Periods.Select((p, i) => Period(r, p, i))]))]);
    }

    // As many as the file says; else a million, less where many on-periods share them.
    private static int DrawsOf(Brief brief, int periods) =>
        brief.Places.ContainsKey("monte_carlo.draws") || periods == 0 ? brief.MonteCarlo.Draws : Math.Min(brief.MonteCarlo.Draws, Budgets.DrawsOfAll / periods);

    /// <summary>Draws of each on-period, made in whole blocks.</summary>
    public long DrawsMade => DrawRun.Whole(_draws);

    /// <summary>One entry an output, in file order.</summary>
    public IReadOnlyList<OutputSpread> All => _all.Value;

    /// <summary>The spreads of one output.</summary>
    public OutputSpread Of(string output) => All.First(s => string.Equals(s.Output, output, StringComparison.OrdinalIgnoreCase));

    private PeriodSpread Period(RingLayout ring, RingPeriod period, int index)
    {
        OutputBrief output = _brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
        OnTimeModel model = new(TimedPeriod.Of(_brief, _motion, ring, period), _brief.MonteCarlo.Distribution);
        List<DrawnFigure> figures =
        [
            new(model.OnS, model.OnS - period.Limits.ShorterS, model.OnS + period.Limits.LongerS, output.ToleranceS),
            new(model.StartS, period.Bands.StartMinS, period.Bands.StartMaxS, null),
        ];
        if (DoseLimits.Of(output, model.OnS, period.Limits) is DoseLimits dose)
        {
            figures.Add(new(dose.NominalMl, dose.LeastMl, dose.MostMl, dose.AskedMl));
        }

        // Shares are worked out by one processor, draws by all: beside each other none of them waits.
        Task<IReadOnlyList<IReadOnlyList<VarianceShare>>> sharing = Task.Run(() => VarianceShares.Of(model, _brief.MonteCarlo.Seed));
        IReadOnlyList<DrawnSummary> drawn = new DrawRun(model, _brief.MonteCarlo.Seed, figures) { Attend = (share => _attend.Tell("drawing on-times", (_drawn + share) / _periods), _attend.Stop) }.Of(_draws);
        _drawn++;
        IReadOnlyList<IReadOnlyList<VarianceShare>> shares = sharing.GetAwaiter().GetResult();
        IReadOnlyList<RootSumSquare> roots = RootSumSquare.Of(model);
        FigureSpread One(int i) => SpreadOf(figures[i], drawn[i], roots[i], Told(shares[i], i));
        return new(index, One(0), One(1), figures.Count > 2 ? One(2) : null) { Drawn = [.. model.Kinds.Select(k => new DrawnDeviation(k.Kind, k.Law))] };
    }

    // A kind that does not act on a figure at all has a share of exactly nothing: left out.
    private static IReadOnlyList<VarianceShare> Told(IReadOnlyList<VarianceShare> shares, int figure) =>
        [.. shares.Where(s => s.Total > 0 && (figure == 2 || s.Kind != DeviationKind.Flow))];

    private static FigureSpread SpreadOf(DrawnFigure figure, DrawnSummary drawn, RootSumSquare root, IReadOnlyList<VarianceShare> shares) => new()
    {
        Nominal = figure.Nominal,
        WorstLeast = figure.Least,
        WorstMost = figure.Most,
        Asked = figure.Tolerance,
        RootSumSquare = root,
        Mean = drawn.Mean,
        Deviation = drawn.Deviation,
        LeastDrawn = drawn.Tally.Least,
        MostDrawn = drawn.Tally.Most,
        Quantiles = [.. QuantileShares.Select(q => new DrawnQuantile(q, drawn.Tally.Quantile(q, drawn.Draws)))],
        Histogram = drawn.Tally.Histogram(HistogramBins),
        Within = figure.Tolerance is null ? null : WithinShare.Of(drawn.Tally.Within, drawn.Draws),
        Shares = shares,
    };
}
