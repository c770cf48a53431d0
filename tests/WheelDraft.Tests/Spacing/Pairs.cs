using WheelDraft.Engineering;

namespace WheelDraft.Tests.Spacing;

/// <summary>Pairs of conductors to ask the rules about: category II, 50 Hz, group IIIa, sea level, no margin.</summary>
internal static class Pairs
{
    public static PairQuery Of(SpacingStandard standard, double supplyV, Insulation insulation, int degree) =>
        new(
            new SupplyBrief(supplyV, 50, 0.01, OvervoltageCategory.II),
            new EnvironmentBrief(degree, 0, Condensation: false),
            new SpacingBrief(standard, Insulation.Functional, Insulation.Basic, Insulation.Reinforced, Insulation.Functional, 0, GrooveX.Full),
            insulation)
        {
            WorkingVoltageV = supplyV,
            Group = MaterialGroup.IIIa,
        };

    public static PairQuery Margin(this PairQuery pair, double mm) => pair with { Spacing = pair.Spacing with { MarginMm = mm } };

    public static PairQuery Altitude(this PairQuery pair, double m) => pair with { Environment = pair.Environment with { AltitudeM = m } };

    public static PairQuery Own(this PairQuery pair, double? clearanceMm = null, double? creepageMm = null) =>
        pair with { Spacing = pair.Spacing with { ClearanceMm = clearanceMm, CreepageMm = creepageMm } };

    public static PairQuery In(this PairQuery pair, OvervoltageCategory category) => pair with { Supply = pair.Supply with { Category = category } };
}
