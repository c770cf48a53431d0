using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Everything that spacing is judged by.</summary>
/// <param name="Solids">All solids; those of one net are of one kind.</param>
/// <param name="Surfaces">All insulating surfaces, fixed and turning.</param>
/// <param name="Demands">What is asked of two nets.</param>
/// <param name="Direction">Which way the wheel runs: programme angles count that way.</param>
public sealed record SpacingTask(
    IReadOnlyList<Solid> Solids, IReadOnlyList<InsulatingSurface> Surfaces, SpacingDemands Demands, Turning Direction)
{
    /// <summary>For two nets whose clearance is judged in parts of the turn only: those parts; null for the whole turn.</summary>
    public Func<string, string, IReadOnlyList<TurnRange>?> OnlyDuring { get; init; } = static (_, _) => null;

    /// <summary>Where an item stands in the person's file, for findings; null where nothing is known.</summary>
    public Func<string, TextPlace?> PlaceOf { get; init; } = static _ => null;

    /// <summary>What solids that were left out bring to a surface, with a least groove width; see <see cref="SpacingExcerpts"/>.</summary>
    internal Func<InsulatingSurface, double, Bystanders> LeftOut { get; init; } = static (_, _) => Bystanders.None;
}

/// <summary>What is asked of two nets, from the supply, the surroundings and the rules chosen.</summary>
/// <param name="Supply">The supply.</param>
/// <param name="Environment">The surroundings.</param>
/// <param name="Spacing">The rules chosen.</param>
/// <param name="WorkingVoltageV">Working voltage of two nets, r.m.s.; asked in ordinal order of the names.</param>
public sealed record SpacingDemands(
    SupplyBrief Supply, EnvironmentBrief Environment, SpacingBrief Spacing, Func<string, string, double> WorkingVoltageV)
{
    /// <summary>The grade between two kinds; null where nothing is asked (floating metal, earthed to touchable).</summary>
    public Insulation? Grade(SolidKind first, SolidKind second) => (first, second) switch
    {
        (SolidKind.Live, SolidKind.Live) => Spacing.BetweenLive,
        (SolidKind.Live, SolidKind.Earthed) or (SolidKind.Earthed, SolidKind.Live) => Spacing.ToEarthed,
        (SolidKind.Live, SolidKind.Touchable) or (SolidKind.Touchable, SolidKind.Live) => Spacing.ToTouchable,
        _ => null,
    };

    /// <summary>What the rules ask of two nets.</summary>
    /// <exception cref="RuleRefusedException">The rules give no distance.</exception>
    internal PairRequirement Required(NetPair pair, MaterialGroup? group) => SpacingRules.RequiredBetween(
        new PairQuery(Supply, Environment, Spacing, pair.Grade) { WorkingVoltageV = pair.WorkingV, Group = group });

    /// <summary>The least width of a groove that counts, beside a clearance.</summary>
    internal double GrooveXMm(double clearanceMm) =>
        GrooveWidth.LeastMm(Environment.PollutionDegree, Spacing.GrooveX, Math.Max(clearanceMm, Tolerances.JoinMm));
}

/// <summary>Two nets between which a distance is asked, in ordinal order.</summary>
/// <param name="First">The first net.</param>
/// <param name="Second">The second.</param>
/// <param name="Grade">Grade of the insulation between them.</param>
/// <param name="WorkingV">Working voltage between them, r.m.s.</param>
public sealed record NetPair(string First, string Second, Insulation Grade, double WorkingV);
