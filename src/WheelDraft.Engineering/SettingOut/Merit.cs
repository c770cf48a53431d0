namespace WheelDraft.Engineering;

/// <summary>How good a candidate is, in the order of the aims: no error; the smallest wheel, or with a diameter given the largest least ratio of distances; the largest least
/// ratio; the shortest strips.</summary>
/// <remarks>Among candidates with errors, the fewer and the nearer to none the better. Plain angles need no aim: only whole degrees are tried.</remarks>
/// <param name="Errors">Findings of severity error; <see cref="Refused"/> and the number of reasons where there is no design at all.</param>
/// <param name="Off">How far distances are below what is required, summed over all that are.</param>
/// <param name="DiameterMm">Diameter, mm, to a nanometre.</param>
/// <param name="LeastRatio">The least of measured over required distance and of factors over what is asked, to a thousandth.</param>
/// <param name="StripsMm">Developed length of all strips, mm.</param>
internal readonly record struct Merit(int Errors, double Off, double DiameterMm, double LeastRatio, double StripsMm)
{
    /// <summary>What a candidate that cannot be built counts for, beyond its reasons.</summary>
    public const int Refused = 100_000;

    /// <summary>The better first.</summary>
    public static IComparer<Merit> Order { get; } = Comparer<Merit>.Create((a, b) => a.Against(b));

    /// <summary>Below 0 where it is better than another.</summary>
    public int Against(Merit other)
    {
        int order = Errors.CompareTo(other.Errors);
        order = order != 0 ? order : Off.CompareTo(other.Off);
        order = order != 0 ? order : DiameterMm.CompareTo(other.DiameterMm);
        order = order != 0 ? order : other.LeastRatio.CompareTo(LeastRatio);
        return order != 0 ? order : StripsMm.CompareTo(other.StripsMm);
    }

    /// <summary>Of a design.</summary>
    public static Merit Of(Design design)
    {
        double off = design.Spacing.Rows.Sum(r => Math.Max(0, 1 - (r.WorstMm / r.Required.RequiredMm)));
        return new(
            design.Findings.Count(f => f.Severity == FindingSeverity.Error),
            Math.Round(off, 6),
            Math.Round(design.Wheel.OuterDiameterMm, 6),
            Math.Round(RatioOf(design), 3),
            Math.Round(design.Strips.Strips.Sum(s => s.Form.LengthMm), 3));
    }

    /// <summary>Of a brief that is refused.</summary>
    /// <param name="refused">Why.</param>
    /// <param name="tooLargeMm">How much larger its wheel would have to be than it may be, mm; 0 where that is not the reason.</param>
    public static Merit Of(DesignRefusedException refused, double tooLargeMm) => new(Refused + refused.Reasons.Count, tooLargeMm, 0, 0, 0);

    /// <summary>The least of measured over required distance; with [strips] also of forces over what practice wants of them, and of factors over what is asked.</summary>
    public static double RatioOf(Design design)
    {
        StripsBrief? recipe = design.Brief.StripRecipe;
        IEnumerable<double> ratios = recipe is null ? [] : design.Strips.Strips.Select(s => s.Spring).OfType<StripSpring>().SelectMany(s => new[]
        {
            s.LeastForceN / StripSetting.LeastUsualN,
            StripSetting.MostUsualN / s.MostForceN,
            s.YieldFactor / (recipe.YieldFactor ?? 1),
            s.FatigueFactor is double f && recipe.FatigueFactor is double least ? f / least : double.PositiveInfinity,
        });
        return ratios.Append(TightestDistance.Of(design)?.Ratio ?? double.PositiveInfinity).Min();
    }
}

/// <summary>How much work is put into a search.</summary>
public enum SearchEffort
{
    /// <summary>The first design without error.</summary>
    Quick,

    /// <summary>What takes a few seconds.</summary>
    Usual,

    /// <summary>Ten times as much.</summary>
    Long,
}
