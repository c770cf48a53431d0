namespace WheelDraft.Engineering;

/// <summary>One line of the spacing table: two nets, one kind of distance, the pair of items that decides.</summary>
/// <param name="Nets">The two nets, their grade and working voltage.</param>
/// <param name="FirstItem">Deciding item of the first net.</param>
/// <param name="SecondItem">Deciding item of the second.</param>
/// <param name="Kind">Which distance.</param>
/// <param name="Required">What is asked, margin included, with basis and steps.</param>
/// <param name="NominalMm">What there is as drawn.</param>
/// <param name="WorstMm">What there is with all tolerances against it: this is judged.</param>
/// <param name="OnFirst">Where on the first, in the housing.</param>
/// <param name="OnSecond">Where on the second.</param>
public sealed record SpacingRow(
    NetPair Nets,
    string FirstItem,
    string SecondItem,
    SpacingKind Kind,
    Requirement Required,
    double NominalMm,
    double WorstMm,
    SpacePoint OnFirst,
    SpacePoint OnSecond)
{
    /// <summary>Programme angle there, radians in one turn; null for two fixed items.</summary>
    public double? AtRad { get; init; }

    /// <summary>Certified bounds of the nominal figure; null where it is exact.</summary>
    public GapBounds? Bounds { get; init; }

    /// <summary>Clearances: the gaps that it is made of, more than one where floating metal lies between.</summary>
    public IReadOnlyList<SolidGap> Gaps { get; init; } = [];

    /// <summary>Creepage: the path.</summary>
    public CreepagePath? Path { get; init; }

    /// <summary>How it was measured, one sentence each; follows the steps of the requirement.</summary>
    public IReadOnlyList<string> Measured { get; init; } = [];

    /// <summary>The verdict on the worst figure.</summary>
    public SpacingVerdict Verdict => Verdicts.On(WorstMm, Required.RequiredMm);

    /// <summary>All steps: from the voltage to the requirement, then how it was measured.</summary>
    public IReadOnlyList<string> Steps => [.. Required.Steps, .. Measured];
}

/// <summary>Which distance.</summary>
public enum SpacingKind
{
    /// <summary>Through air.</summary>
    Clearance,

    /// <summary>Along a surface.</summary>
    Creepage,
}

/// <summary>What a measured distance is worth.</summary>
public enum SpacingVerdict
{
    /// <summary>Below what is required.</summary>
    Misses,

    /// <summary>Not below, but less than 1.1 times as much.</summary>
    Tight,

    /// <summary>At least 1.1 times what is required.</summary>
    Meets,
}

/// <summary>The one place where measured and required distances are compared.</summary>
internal static class Verdicts
{
    /// <summary>The verdict on a worst-case distance; both are rounded to 1e-6 mm before they are compared.</summary>
    public static SpacingVerdict On(double worstMm, double requiredMm)
    {
        double measured = SpacingTolerances.Compared(worstMm), required = SpacingTolerances.Compared(requiredMm);
        return measured >= required
            ? measured >= SpacingTolerances.Compared(SpacingTolerances.TightFactor * required) ? SpacingVerdict.Meets : SpacingVerdict.Tight
            : SpacingVerdict.Misses;
    }
}
