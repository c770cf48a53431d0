using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Puts everything conductive together and judges every pair of nets.</summary>
internal static class SpacingStage
{
    // A pair of nets nearer than this many times what is required may be bridged by dirt or a bent strip (methods: circuit).
    private const double BridgedBelow = 2;

    /// <summary>The table of all pairs.</summary>
    /// <exception cref="DesignRefusedException">The rules give no distance for a pair.</exception>
    public static SpacingTable Table(Brief brief, IReadOnlyList<Solid> solids, Func<string, string, double> workingV, double carrierRadiusMm)
    {
        SpacingDemands demands = new(brief.Supply, brief.Environment, brief.Spacing, workingV);
        try
        {
            return SpacingTable.Of(new SpacingTask(solids, Surfaces(brief, carrierRadiusMm), demands, brief.Drive.Direction));
        }
        catch (RuleRefusedException refusal)
        {
            throw new DesignRefusedException([refusal.ToFinding(brief.PlaceOf(refusal.Key ?? "spacing"))]);
        }
    }

    /// <summary>Pairs of nets so near that a fault may bridge them.</summary>
    public static IReadOnlyList<BridgedNets> Bridges(SpacingTable table) =>
        [.. table.Rows
            .Where(r => r.WorstMm < BridgedBelow * r.Required.RequiredMm)
            .Select(r => new BridgedNets(r.Nets.First, r.Nets.Second))
            .Distinct()];

    private static IReadOnlyList<InsulatingSurface> Surfaces(Brief brief, double carrierRadiusMm)
    {
        InsulatingSurface carrier = new(
            WheelSolids.CarrierSurface, brief.Carrier.Group, -brief.Carrier.StepMm, new Outline(Contour.Circle(Point.Origin, carrierRadiusMm)), Turns: true)
        {
            BodyMm = brief.Carrier.ThicknessMm,
        };
        return
        [
            carrier,
            .. brief.Surfaces.Select(s => new InsulatingSurface(s.Name, s.Group, s.LevelMm, s.Outline, Turns: false)
            {
                Ribs = [.. brief.Ribs.Where(r => string.Equals(r.Surface, s.Name, StringComparison.OrdinalIgnoreCase))],
                Slots = [.. brief.Slots.Where(r => string.Equals(r.Surface, s.Name, StringComparison.OrdinalIgnoreCase))],
            }),
        ];
    }
}
