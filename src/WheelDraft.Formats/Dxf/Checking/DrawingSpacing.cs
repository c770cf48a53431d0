using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>The nets of a drawing measured against each other.</summary>
/// <param name="Table">Rows and findings.</param>
/// <param name="Frames">Contours round all nets that were taken for no copper.</param>
internal sealed record DrawingSpacing(SpacingTable Table, IReadOnlyList<LeftOut> Frames)
{
    // "Tight" is below 1.1 times the required distance: paths longer than that change no verdict.
    private const double Tight = 1.1;

    internal static DrawingSpacing Of(ReadDrawing drawing, DrawingQuestion question, DrawingRules rules, List<Finding> findings)
    {
        IReadOnlyList<DrawingNet> nets = question.Nets;
        RefuseOneNet(nets);
        IReadOnlyList<(DrawingNet Net, ReadLayer Layer)> all = [.. nets.Select(n => (n, DrawingCheck.LayerOf(drawing, n.Layer)))];
        ReadLayer[] loose = [.. drawing.Layers.Where(l => question.IsLoose(l.Name) && l.Contours.Count + l.Areas.Count > 0)];
        DrawingCheck.CheckSize([.. all.Select(a => a.Layer), .. loose], "The layers of the nets and of copper on no net hold", DrawingCheck.MostPieces);
        IReadOnlyList<Solid> solids = Solids(drawing, question, all, findings);

        // All layers of one net have the same voltage and phase.
        Dictionary<string, DrawingNet> byName = all.DistinctBy(a => a.Net.Net, StringComparer.Ordinal).ToDictionary(a => a.Net.Net, a => a.Net, StringComparer.Ordinal);
        string[] unphased = [.. byName.Values.Where(n => n is { VoltageV: > 0, PhaseDeg: null }).Select(n => $"'{n.Net}'")];
        if (unphased.Length > 0 && byName.Values.Count(n => n.VoltageV > 0) > 1)
        {
            findings.Add(Finding.Note("drawing.phase", $"The phase of {string.Join(", ", unphased)} is not given: against every other live net the sum of both voltages is taken. Where they are of one line give them the same phase, e.g. \"CU1=L:230 V@0\"."));
        }

        SpacingTask task = new(
            solids,
            [new InsulatingSurface(DrawingCheck.SurfaceName, rules.Group, 0, null, Turns: false)],
            new SpacingDemands(rules.Supply, rules.Environment, rules.Spacing, (a, b) => byName[a].VoltageToV(byName[b])),
            Turning.Anticlockwise)
        {
            PlaceOf = item => drawing.Layers.FirstOrDefault(l => string.Equals(l.Name, item, StringComparison.Ordinal))?.Contours is [var first, ..] ? new TextPlace(first.Source.Line, 1) : null,
        };
        try
        {
            return Measured(task, loose, findings);
        }
        catch (RuleRefusedException refusal)
        {
            throw new DesignRefusedException([refusal.ToFinding()]);
        }
    }

    private static DrawingSpacing Measured(SpacingTask task, ReadLayer[] loose, List<Finding> findings)
    {
        SpacingTable table = SpacingTable.Of(task);
        if (table.Rows.Count == 0)
        {
            throw new DesignRefusedException(
            [
                .. findings.Where(f => f.Severity == FindingSeverity.Error),
                Finding.Error("drawing.nothing", "No distance was measured: no two nets that need one from each other hold a closed contour or a filled area."),
            ]);
        }

        double offMm = task.Solids.Max(s => s.Tolerance.CutEdgeMm);
        double reachMm = (Tight * table.Rows.Max(r => r.Required.RequiredMm)) + (4 * offMm);
        (IReadOnlyList<Solid> more, IReadOnlyList<LeftOut> frames) = LooseCopper.Of(loose, task.Solids, reachMm, findings);
        return new(more.Count == 0 ? table : SpacingTable.Of(task with { Solids = [.. task.Solids, .. more] }), frames);
    }

    private static List<Solid> Solids(ReadDrawing drawing, DrawingQuestion question, IReadOnlyList<(DrawingNet Net, ReadLayer Layer)> all, List<Finding> findings)
    {
        ReadLayer[] holeLayers = [.. question.Holes.Select(h => DrawingCheck.LayerOf(drawing, h)), .. drawing.Layers.Where(l => IsWindow(l.Name, question))];
        ReadContour[] holes = [.. holeLayers.SelectMany(l => l.Contours)];
        if (holes.Length > 0)
        {
            findings.Add(Finding.Note("drawing.holes", $"{DxfReader.Count(holes.Length)} contours of {string.Join(", ", holeLayers.Select(l => l.Name))} cut holes into the copper that they lie in; filled areas there cut nothing."));
        }

        List<Solid> solids = [];
        foreach ((DrawingNet net, ReadLayer layer) in all)
        {
            IReadOnlyList<CopperShape> shapes = NetCopper.Of(layer, holes, findings);
            if (shapes.Count == 0)
            {
                findings.Add(Finding.Error("drawing.no-copper", $"Layer {layer.Name} holds no closed contour and no filled area, so nothing of net '{net.Net}' is measured; close its contours or raise the joining tolerance."));
            }

            solids.AddRange(shapes.Select(s => new Solid(layer.Name, net.Net, net.Kind, Turns: false, 0, 0, s.Outline) { OnSurface = DrawingCheck.SurfaceName, Tolerance = s.Tolerance }));
        }

        return solids;
    }

    private static bool IsWindow(string layer, DrawingQuestion question) =>
        question.HoleLayers.Contains(layer, StringComparer.OrdinalIgnoreCase) && !question.Holes.Contains(layer, StringComparer.OrdinalIgnoreCase);

    private static void RefuseOneNet(IReadOnlyList<DrawingNet> nets)
    {
        string[] names = [.. nets.Select(n => n.Net).Distinct(StringComparer.Ordinal)];
        if (names.Length < 2)
        {
            throw new DesignRefusedException("drawing.nets", $"--net names one net only ('{names[0]}'), and spacing lies between two: give the layers of the other nets too.");
        }
    }
}
