using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Puts everything conductive together and judges every pair of nets.</summary>
internal static class SpacingStage
{
    // A pair of nets nearer than this many times what is required may be bridged by dirt or a bent strip (methods: circuit).
    private const double BridgedBelow = 2;

    /// <summary>Everything that spacing is judged by.</summary>
    public static SpacingTask Task(Brief brief, IReadOnlyList<Solid> solids, Func<string, string, double> workingV, double carrierRadiusMm) =>
        new(solids, Surfaces(brief, carrierRadiusMm), new SpacingDemands(brief.Supply, brief.Environment, brief.Spacing, workingV), brief.Drive.Direction)
        {
            PlaceOf = item => PlaceOf(brief, item),
        };

    /// <summary>The table of all pairs.</summary>
    /// <exception cref="DesignRefusedException">The rules give no distance for a pair.</exception>
    public static SpacingTable Table(Brief brief, SpacingTask task)
    {
        try
        {
            return SpacingTable.Of(task);
        }
        catch (RuleRefusedException refusal)
        {
            throw new DesignRefusedException([refusal.ToFinding(brief.PlaceOf(refusal.Key ?? "spacing"))]);
        }
    }

    /// <summary>The changes that would make missing rows meet; looked for only where some miss.</summary>
    public static IReadOnlyList<Remedy> Remedies(SpacingTask task, SpacingTable table) =>
        table.Rows.Any(r => r.Verdict == SpacingVerdict.Misses) ? Engineering.Remedies.For(task, table) : [];

    /// <summary>Whether a spacing finding says again that the wheel runs into a strip, which the strips' own check tells with radius and height.</summary>
    public static bool IsToldByCollision(Finding finding, IReadOnlyList<Finding> collisions) =>
        (finding.Code is "spacing.collision" || (finding.Code is "spacing.touch" && finding.Message.Contains(", wheel at ", StringComparison.Ordinal)))
        && finding.Where is TextPlace where && collisions.Any(c => c.Where == where);

    /// <summary>Where an item stands in the file; null for the wheel and its fixings, which no one place decides.</summary>
    private static TextPlace? PlaceOf(Brief brief, string item)
    {
        for (int i = 0; i < brief.Strips.Count; i++)
        {
            if (string.Equals(brief.Strips[i].Name, item, StringComparison.Ordinal))
            {
                return brief.PlaceOf(FormattableString.Invariant($"strip[{i}]"));
            }
        }

        for (int i = 0; i < brief.Parts.Count; i++)
        {
            if (string.Equals(brief.Parts[i].Name, item, StringComparison.Ordinal))
            {
                return brief.PlaceOf(FormattableString.Invariant($"part[{i}]"));
            }
        }

        return string.Equals(item, ItemNames.Shaft, StringComparison.Ordinal) ? brief.PlaceOf("wheel.shaft") : null;
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
            ItemNames.Carrier, brief.Carrier.Group, -brief.Carrier.StepMm, new Outline(Contour.Circle(Point.Origin, carrierRadiusMm)), Turns: true)
        {
            BodyMm = brief.Carrier.ThicknessMm,
            FaceMm = brief.Wheel.FaceRunOutMm / 2,
            RunOutMm = brief.Wheel.RunOutMm / 2,
        };
        return
        [
            carrier,
            .. brief.Surfaces.Select(s => new InsulatingSurface(s.Name, s.Group, s.LevelMm, s.Outline, Turns: false)
            {
                FaceMm = brief.Housing.ToleranceMm,
                Ribs = [.. brief.Ribs.Where(r => string.Equals(r.Surface, s.Name, StringComparison.OrdinalIgnoreCase))],
                Slots = [.. brief.Slots.Where(r => string.Equals(r.Surface, s.Name, StringComparison.OrdinalIgnoreCase))],
            }),
        ];
    }
}
