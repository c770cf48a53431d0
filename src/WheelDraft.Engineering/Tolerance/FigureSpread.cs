namespace WheelDraft.Engineering;

/// <summary>How one figure of an on-period is spread: its start, its on-time or its dose.</summary>
/// <remarks>Units are those of the figure, s or mL.</remarks>
public sealed record FigureSpread
{
    /// <summary>As drawn on paper.</summary>
    public required double Nominal { get; init; }

    /// <summary>Least at worst; no draw is below it.</summary>
    public required double WorstLeast { get; init; }

    /// <summary>Greatest at worst; no draw is above it.</summary>
    public required double WorstMost { get; init; }

    /// <summary>Plus and minus about nominal that is asked; null when nothing is.</summary>
    public double? Asked { get; init; }

    /// <summary>Limits by the root of the sum of squares.</summary>
    public required RootSumSquare RootSumSquare { get; init; }

    /// <summary>Mean of the draws.</summary>
    public required double Mean { get; init; }

    /// <summary>Their standard deviation.</summary>
    public required double Deviation { get; init; }

    /// <summary>The least drawn.</summary>
    public required double LeastDrawn { get; init; }

    /// <summary>The greatest drawn.</summary>
    public required double MostDrawn { get; init; }

    /// <summary>Quantiles, ascending.</summary>
    public required IReadOnlyList<DrawnQuantile> Quantiles { get; init; }

    /// <summary>Draws by value, in bins of one width from <see cref="WorstLeast"/> to <see cref="WorstMost"/>.</summary>
    public required IReadOnlyList<long> Histogram { get; init; }

    /// <summary>The share within what is asked; null when nothing is.</summary>
    public WithinShare? Within { get; init; }

    /// <summary>Shares of the variance, in fixed order; empty when nothing varies.</summary>
    public required IReadOnlyList<VarianceShare> Shares { get; init; }
}

/// <summary>A value below which a share of all draws lies.</summary>
/// <param name="Share">Share, from 0 to 1.</param>
/// <param name="Value">Value, known to a bin of the tally: an eight-thousandth of the worst case.</param>
public readonly record struct DrawnQuantile(double Share, double Value);

/// <summary>How the times of one on-period are spread, at mid travel.</summary>
/// <param name="Index">Place of the on-period on its ring, by start.</param>
/// <param name="OnTime">The on-time, s.</param>
/// <param name="Start">The start after home, s.</param>
/// <param name="Dose">The dose, mL; null when nothing flows.</param>
public sealed record PeriodSpread(int Index, FigureSpread OnTime, FigureSpread Start, FigureSpread? Dose)
{
    /// <summary>What is drawn and by which law.</summary>
    public required IReadOnlyList<DrawnDeviation> Drawn { get; init; }
}

/// <summary>One kind of deviation as it is drawn.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Law">By which law.</param>
public readonly record struct DrawnDeviation(DeviationKind Kind, DrawLaw Law)
{
    /// <summary>What reports call it.</summary>
    public string Name => Deviation.NameOf(Kind);
}

/// <summary>How the times of one output are spread.</summary>
/// <param name="Output">Its name.</param>
/// <param name="Periods">Its on-periods, by start; empty when it is always on.</param>
public sealed record OutputSpread(string Output, IReadOnlyList<PeriodSpread> Periods);
