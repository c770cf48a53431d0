namespace WheelDraft.Engineering;

/// <summary>One on-period on its ring, and all that may depart from the drawing there.</summary>
/// <param name="Motion">The turning.</param>
/// <param name="Deviations">What may depart, each with its band.</param>
/// <param name="Wanted">The on-period.</param>
/// <param name="Make">Where the copper begins.</param>
/// <param name="Break">Where it ends.</param>
internal sealed record TimedPeriod(Motion Motion, Deviations Deviations, OnPeriod Wanted, CopperEdge Make, CopperEdge Break)
{
    /// <summary>The patch that makes.</summary>
    public required ContactPatch MakePatch { get; init; }

    /// <summary>The patch that breaks.</summary>
    public required ContactPatch BreakPatch { get; init; }

    /// <summary>Whether one wiper makes and another breaks.</summary>
    public bool HasTwoWipers { get; init; }

    /// <summary>Ring radius, mm.</summary>
    public required double RadiusMm { get; init; }

    /// <summary>How far the wiper is moved outward from mid travel, mm.</summary>
    public double MovedMm { get; init; }

    /// <summary>Flow while on, litres a second; 0 when nothing flows.</summary>
    public double FlowLPerS { get; init; }

    /// <summary>The flow's tolerance, plus and minus, share.</summary>
    public double FlowShare { get; init; }

    /// <summary>An on-period of a wheel that is laid out.</summary>
    public static TimedPeriod Of(Brief brief, Motion motion, RingLayout ring, RingPeriod period)
    {
        OutputBrief output = brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
        bool ownBreaks = ring.Return is not { IsUpstream: true };
        bool ownMakes = ring.Return is null or { IsUpstream: true };
        return new(motion, Deviations.Of(RingShop.Of(brief, motion), ring.SidePlayMm), period.Wanted, period.Make, period.Break)
        {
            MakePatch = ownMakes ? ring.Patch : ring.Return!.Patch,
            BreakPatch = ownBreaks ? ring.Patch : ring.Return!.Patch,
            HasTwoWipers = ring.Return is not null,
            RadiusMm = ring.RadiusMm,
            FlowLPerS = output.FlowLPerS ?? 0,
            FlowShare = output.FlowToleranceShare,
        };
    }
}
