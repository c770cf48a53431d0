using System.Numerics;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

// The folder "Checking": any drawing judged by the rules that designs are judged by. Layers become nets, closed contours become
// flat conductors on one plane surface; what is told of the drawing itself (open, doubled, crossing) comes from "Reading".

/// <summary>A layer of a drawing as a net.</summary>
/// <param name="Layer">Name of the layer, letters of either case alike.</param>
/// <param name="Net">Name of the net; several layers may be one net.</param>
/// <param name="Kind">What it is, electrically.</param>
/// <param name="VoltageV">Its largest r.m.s. voltage to neutral, V; 0 for what is not live.</param>
public sealed record DrawingNet(string Layer, string Net, SolidKind Kind, double VoltageV)
{
    /// <summary>How far its voltage lags behind the first line's, degrees; null when it is not known.</summary>
    public double? PhaseDeg { get; init; }

    /// <summary>The largest r.m.s. voltage that this net and another may have between them, V.</summary>
    /// <remarks>Any net may be dead while another is live: so never below the larger of the two voltages to neutral. With both phases known
    /// it is the length of the difference; with one unknown the two may be opposite, as the lines of a split phase are: their sum.</remarks>
    public double VoltageToV(DrawingNet other)
    {
        ArgumentNullException.ThrowIfNull(other);
        double larger = Math.Max(VoltageV, other.VoltageV);
        if (VoltageV == 0 || other.VoltageV == 0)
        {
            return larger;
        }

        return PhaseDeg is double own && other.PhaseDeg is double across
            ? Math.Max(larger, Complex.Abs(Complex.FromPolarCoordinates(VoltageV, -Angles.RadFromDeg(own)) - Complex.FromPolarCoordinates(other.VoltageV, -Angles.RadFromDeg(across))))
            : VoltageV + other.VoltageV;
    }
}

/// <summary>The rules that a drawing's nets are judged by.</summary>
/// <param name="Supply">The supply.</param>
/// <param name="Environment">The surroundings.</param>
/// <param name="Spacing">The rules.</param>
/// <param name="Group">Material group of the surface that everything lies on.</param>
public sealed record DrawingRules(SupplyBrief Supply, EnvironmentBrief Environment, SpacingBrief Spacing, MaterialGroup Group);

/// <summary>How a drawing is to be cut.</summary>
/// <param name="Process">The process.</param>
/// <param name="ThicknessMm">Thickness of the stock, mm.</param>
/// <param name="Layers">The layers that are cut; empty for all that hold closed contours.</param>
public sealed record DrawingCut(CuttingProcess Process, double ThicknessMm, IReadOnlyList<string> Layers);

/// <summary>What is asked of a drawing.</summary>
/// <param name="Nets">Its nets; fewer than two leave nothing to measure.</param>
/// <param name="Rules">The rules; null where no spacing is asked.</param>
/// <param name="Cut">How it is to be cut; null where no limits are asked.</param>
public sealed record DrawingQuestion(IReadOnlyList<DrawingNet> Nets, DrawingRules? Rules, DrawingCut? Cut)
{
    /// <summary>Layers of cutting files that are not cut through: what is scribed, folded or written need not close.</summary>
    private static readonly string[] NotCut = ["FOLD", "MARK", "NOTE"];

    /// <summary>Whether a layer matters: one of the nets' or of those cut, where such are given; else any but those for folds, marks and notes.</summary>
    public bool Heeds(string layer)
    {
        IReadOnlyList<string> named = [.. Nets.Select(n => n.Layer), .. Cut?.Layers ?? []];
        return named.Count > 0 ? named.Contains(layer, StringComparer.OrdinalIgnoreCase) : !NotCut.Contains(layer, StringComparer.OrdinalIgnoreCase);
    }
}

/// <summary>A drawing, judged.</summary>
/// <param name="Drawing">What was read.</param>
/// <param name="Spacing">Spacing of its nets; no rows where none is asked.</param>
/// <param name="Cut">Its finest features against the process; null where none is asked or contours meet.</param>
/// <param name="Findings">Everything found, the drawing's own remarks first.</param>
public sealed record DrawingCheck(ReadDrawing Drawing, SpacingTable Spacing, CutFigures? Cut, IReadOnlyList<Finding> Findings)
{
    /// <summary>The one surface on which the nets of a drawing lie.</summary>
    public const string SurfaceName = "the drawing plane";

    // Spacing tries every pair of pieces of two nets: with this many it takes a second or two and some fifty megabytes.
    internal const int MostPieces = 2000;

    /// <summary>Whether nothing is wrong.</summary>
    public bool Meets => Findings.All(f => f.Severity != FindingSeverity.Error);

    /// <summary>Judges a drawing.</summary>
    /// <exception cref="DesignRefusedException">A layer is not there, the drawing is too large to measure, or the rules give no distance.</exception>
    public static DrawingCheck Of(ReadDrawing drawing, DrawingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(question);
        List<Finding> findings = [.. drawing.Remarks];
        SpacingTable spacing = question.Rules is DrawingRules rules ? SpacingOf(drawing, question.Nets, rules, findings) : new SpacingTable([], []);
        findings.AddRange(spacing.Findings);
        string[] unheeded = [.. drawing.Layers.Select(l => l.Name).Where(n => !question.Heeds(n))];
        if (unheeded.Length > 0)
        {
            findings.Add(Finding.Note("drawing.unheeded", $"Layers that do not matter here, not looked at for open, doubled or crossing lines: {string.Join(", ", unheeded)}."));
        }

        CutFigures? cut = question.Cut is DrawingCut asked
            ? CutFigures.Of(drawing, asked with { Layers = asked.Layers.Count > 0 ? asked.Layers : [.. drawing.Layers.Where(l => l.Contours.Count > 0 && question.Heeds(l.Name)).Select(l => l.Name)] }, findings)
            : null;
        return new(drawing, spacing, cut, [.. findings.Distinct()]);
    }

    /// <summary>The layer of a name.</summary>
    /// <exception cref="DesignRefusedException">There is none that holds anything.</exception>
    internal static ReadLayer LayerOf(ReadDrawing drawing, string name) =>
        drawing.Layers.FirstOrDefault(l => string.Equals(l.Name, name, StringComparison.OrdinalIgnoreCase))
        ?? throw new DesignRefusedException(
            "drawing.layer",
            $"There is no layer '{name}' that holds anything; the layers are {(drawing.Layers.Count == 0 ? "none" : string.Join(", ", drawing.Layers.Select(l => $"'{l.Name}'")))}.");

    /// <summary>Refuses what is too much to measure.</summary>
    internal static void CheckSize(IEnumerable<ReadLayer> layers, string what)
    {
        int pieces = layers.SelectMany(l => l.Contours).Sum(c => c.Contour.Pieces.Count);
        if (pieces > MostPieces)
        {
            throw new DesignRefusedException(
                "drawing.size",
                $"{what} {DxfReader.Count(pieces)} lines and arcs; at most {DxfReader.Count(MostPieces)} are measured. Leave out lettering and hatching, or give only the layers that matter.");
        }
    }

    private static SpacingTable SpacingOf(ReadDrawing drawing, IReadOnlyList<DrawingNet> nets, DrawingRules rules, List<Finding> findings)
    {
        IReadOnlyList<(DrawingNet Net, ReadLayer Layer)> all = [.. nets.Select(n => (n, LayerOf(drawing, n.Layer)))];
        CheckSize(all.Select(a => a.Layer), "The layers of the nets hold");
        List<Solid> solids = [];
        foreach ((DrawingNet net, ReadLayer layer) in all)
        {
            IReadOnlyList<Outline> outlines = ContourNest.Outlines([.. layer.Contours.Select(c => c.Contour)]);
            if (outlines.Count == 0)
            {
                findings.Add(Finding.Error("drawing.no-copper", $"Layer {layer.Name} holds no closed contour, so nothing of net '{net.Net}' is measured; close its contours or raise the joining tolerance."));
            }

            solids.AddRange(outlines.Select(o => new Solid(layer.Name, net.Net, net.Kind, Turns: false, 0, 0, o) { OnSurface = SurfaceName }));
        }

        // All layers of one net have the same voltage and phase.
        Dictionary<string, DrawingNet> byName = all.DistinctBy(a => a.Net.Net, StringComparer.Ordinal).ToDictionary(a => a.Net.Net, a => a.Net, StringComparer.Ordinal);
        string[] unphased = [.. byName.Values.Where(n => n is { VoltageV: > 0, PhaseDeg: null }).Select(n => $"'{n.Net}'")];
        if (unphased.Length > 0 && byName.Values.Count(n => n.VoltageV > 0) > 1)
        {
            findings.Add(Finding.Note("drawing.phase", $"The phase of {string.Join(", ", unphased)} is not given: against every other live net the sum of both voltages is taken. Where they are of one line give them the same phase, e.g. \"CU1=L:230 V@0\"."));
        }

        SpacingTask task = new(
            solids,
            [new InsulatingSurface(SurfaceName, rules.Group, 0, null, Turns: false)],
            new SpacingDemands(rules.Supply, rules.Environment, rules.Spacing, (a, b) => byName[a].VoltageToV(byName[b])),
            Turning.Anticlockwise)
        {
            PlaceOf = item => drawing.Layers.First(l => string.Equals(l.Name, item, StringComparison.Ordinal)).Contours is [var first, ..] ? new TextPlace(first.Source.Line, 1) : null,
        };
        try
        {
            return SpacingTable.Of(task);
        }
        catch (RuleRefusedException refusal)
        {
            throw new DesignRefusedException([refusal.ToFinding()]);
        }
    }
}
