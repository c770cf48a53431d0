namespace WheelDraft.Engineering;

/// <summary>The account of a ring's on-periods: worst cases, what each deviation does alone, and the bands of edges.</summary>
internal sealed class RingAccount(RingShop shop, RingDemand ring, double radiusMm)
{
    private readonly RingTiming _all = new(shop, ring, Deviations.Of(shop, ring), radiusMm);
    private readonly EdgeBands _bands = new(shop, ring, radiusMm);

    // Backlash moves a start and lengthens nothing.
    private readonly IReadOnlyList<(DeviationKind Kind, RingTiming Timing)> _alone =
    [
        .. Deviations.Of(shop, ring).All.Select(d => d.Kind).Where(k => k != DeviationKind.Backlash)
            .Select(k => (k, new RingTiming(shop, ring, Deviations.Of(shop, ring).Only(k), radiusMm))),
    ];

    /// <summary>The worst case of an on-time, at mid travel, and what makes it up.</summary>
    public TimingLimits Limits(OnPeriod period, PeriodCut cut)
    {
        (double longer, double shorter) = _all.Limits(period, cut);
        return new(longer, shorter, [.. _alone.Select(a => Share(a.Kind, a.Timing.Limits(period, cut)))]);
    }

    /// <summary>How far its edges may be from their nominal angles, and when it may start.</summary>
    public PeriodBands Bands(OnPeriod period, PeriodCut cut) => _bands.Of(period, cut);

    private static TimingShare Share(DeviationKind kind, (double LongerS, double ShorterS) limits) => new(kind, limits.LongerS, limits.ShorterS);
}
