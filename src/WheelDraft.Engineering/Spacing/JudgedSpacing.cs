using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Every pair of nets judged, and what follows from it.</summary>
/// <param name="Table">The table of all pairs.</param>
/// <param name="Remedies">The changes that would make missing rows meet; looked for only where some miss.</param>
/// <param name="Bridges">Pairs of nets so near that a fault may bridge them, as the circuit sees them.</param>
internal sealed record JudgedSpacing(SpacingTable Table, IReadOnlyList<Remedy> Remedies, IReadOnlyList<BridgedNets> Bridges)
{
    // A pair of nets nearer than this many times what is required may be bridged by dirt or a bent strip (methods: circuit).
    private const double BridgedBelow = 2;

    /// <summary>Puts everything conductive together and judges every pair of nets.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="turning">The wheel, and the cams beside it.</param>
    /// <param name="solids">Everything conductive.</param>
    /// <param name="voltages">The working voltages.</param>
    /// <param name="seeksRemedies">Whether it is looked for what would make missing rows meet.</param>
    /// <exception cref="DesignRefusedException">The rules give no distance for a pair.</exception>
    public static JudgedSpacing Of(Brief brief, (WheelLayout Wheel, IReadOnlyList<CamLayout> Cams) turning, IReadOnlyList<Solid> solids, VoltageBook voltages, bool seeksRemedies = true)
    {
        LandNets lands = new(turning.Wheel);
        SpacingDemands demands = Demands(brief, lands, voltages);
        SpacingTask task = new(solids, Surfaces(brief, turning.Cams, WheelSolids.CarrierRadiusMm(brief, turning.Wheel)), demands, brief.Drive.Direction)
        {
            PlaceOf = item => PlaceOf(brief, item),
        };
        SpacingTable table = TableOf(brief, task);
        SpacingRow? firstLeft = null;
        IReadOnlyList<Remedy> remedies = seeksRemedies ? Engineering.Remedies.For(task, table, out firstLeft) : [];
        return new(
            firstLeft is null ? table : table with { Findings = [.. table.Findings, Unlooked(firstLeft)] },
            remedies,
            lands.Bridges(BridgesOf(table)));
    }

    private static Finding Unlooked(SpacingRow firstLeft) => Finding.Note(
        "spacing.remedies",
        $"Remedies were looked for only up to the row of '{firstLeft.Nets.First}' and '{firstLeft.Nets.Second}': over ribs and slots each trial takes long. Mend the rows before it, then look again.");

    internal static SpacingDemands Demands(Brief brief, LandNets lands, VoltageBook voltages) =>
        new(brief.Supply, brief.Environment, brief.Spacing, (a, b) => lands.WorkingV(a, b, voltages.Between));

    private static SpacingTable TableOf(Brief brief, SpacingTask task)
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

        for (int i = 0; i < brief.Cams.Count; i++)
        {
            if (string.Equals(LeverSolids.NameOf(brief.Cams[i]), item, StringComparison.Ordinal) || string.Equals(LeverSolids.SurfaceOf(brief.Cams[i]), item, StringComparison.Ordinal))
            {
                return brief.PlaceOf(FormattableString.Invariant($"cam[{i}]"));
            }
        }

        return string.Equals(item, ItemNames.Shaft, StringComparison.Ordinal) ? brief.PlaceOf("wheel.shaft") : null;
    }

    private static IReadOnlyList<BridgedNets> BridgesOf(SpacingTable table) =>
        [.. table.Rows
            .Where(r => r.WorstMm < BridgedBelow * r.Required.RequiredMm)
            .Select(r => new BridgedNets(r.Nets.First, r.Nets.Second))
            .Distinct()];

    // A cam that insulates, under a lever that conducts: paths run over it from the roller to the shaft. It counts as the whole disc that it sweeps, over which no path
    // is longer than over itself, and as of the worst material, because the file does not say how well it withstands tracking.
    private static InsulatingSurface Face(Brief brief, CamLayout cam) =>
        new(LeverSolids.SurfaceOf(cam.Brief), MaterialGroup.IIIb, cam.Brief.UpperMm, new Outline(Contour.Circle(Point.Origin, cam.OuterRadiusMm)), Turns: true)
        {
            BodyMm = cam.Brief.UpperMm - cam.Brief.LowerMm,
            FaceMm = brief.Wheel.FaceRunOutMm / 2,
            RunOutMm = brief.Wheel.RunOutMm / 2,
        };

    private static IReadOnlyList<InsulatingSurface> Surfaces(Brief brief, IReadOnlyList<CamLayout> cams, double carrierRadiusMm)
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
            .. cams.Where(c => c.Brief.Net is null && c.Brief.Body?.Net is not null).Select(c => Face(brief, c)),
            .. brief.Surfaces.Select(s => new InsulatingSurface(s.Name, s.Group, s.LevelMm, s.Outline, Turns: false)
            {
                FaceMm = brief.Housing.ToleranceMm,
                Ribs = [.. brief.Ribs.Where(r => string.Equals(r.Surface, s.Name, StringComparison.OrdinalIgnoreCase))],
                Slots = [.. brief.Slots.Where(r => string.Equals(r.Surface, s.Name, StringComparison.OrdinalIgnoreCase))],
            }),
        ];
    }
}
