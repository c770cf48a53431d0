using System.Numerics;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

// The folder "Checking": any drawing judged by the rules that designs are judged by. Layers become nets, closed contours become
// flat conductors on one plane surface; what is reported about the drawing itself (open, doubled, crossing) comes from "Reading".

/// <summary>A layer of a drawing as a net.</summary>
/// <param name="Layer">Name of the layer, letters of either case alike.</param>
/// <param name="Net">Name of the net; several layers may be one net.</param>
/// <param name="Kind">What it is, electrically.</param>
/// <param name="VoltageV">Its largest r.m.s. voltage to neutral, V; 0 for what is not live.</param>
internal sealed record DrawingNet(string Layer, string Net, SolidKind Kind, double VoltageV)
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
internal sealed record DrawingRules(SupplyBrief Supply, EnvironmentBrief Environment, SpacingBrief Spacing, MaterialGroup Group);

/// <summary>How a drawing is to be cut.</summary>
/// <param name="Process">The process.</param>
/// <param name="ThicknessMm">Thickness of the stock, mm.</param>
/// <param name="Layers">The layers that are cut; empty for all that hold closed contours.</param>
internal sealed record DrawingCut(CuttingProcess Process, double ThicknessMm, IReadOnlyList<string> Layers);

/// <summary>What is asked of a drawing.</summary>
/// <param name="Nets">Its nets; fewer than two leave nothing to measure.</param>
/// <param name="Rules">The rules; null where no spacing is asked.</param>
/// <param name="Cut">How it is to be cut; null where no limits are asked.</param>
internal sealed record DrawingQuestion(IReadOnlyList<DrawingNet> Nets, DrawingRules? Rules, DrawingCut? Cut)
{
    /// <summary>Layers of cutting files that are not cut through: what is scribed, folded, sunk or written need not close. Defpoints is never plotted.</summary>
    private static readonly string[] NotCut = ["FOLD", "MARK", "NOTE", "RECESS", "LEAD", "Defpoints"];

    /// <summary>Layers whose contours cut holes into the copper of nets.</summary>
    public IReadOnlyList<string> Holes { get; init; } = [];

    /// <summary>Layers on no net that hold no copper.</summary>
    public IReadOnlyList<string> Ignored { get; init; } = [];

    /// <summary>The layers of holes: those given, and WINDOW beside a net on OUTLINE, as our own cutting files have it.</summary>
    public IReadOnlyList<string> HoleLayers =>
        HasOutlineNet && !IsOf(Nets.Select(n => n.Layer).Concat(Holes).Concat(Ignored), WindowLayer) ? [.. Holes, WindowLayer] : Holes;

    private const string WindowLayer = "WINDOW";

    private bool HasOutlineNet => IsOf(Nets.Select(n => n.Layer), "OUTLINE");

    /// <summary>Whether a layer matters: where nets, holes or cuts are given, one of their layers; else any except those for folds, marks, recesses and notes.</summary>
    public bool Heeds(string layer) => Named.Any() ? IsOf(Named, layer) : !IsOf(NotCut, layer) && !IsOf(Ignored, layer);

    /// <summary>What of a layer must be understood: everything on one that is named, words included; shapes on one that matters; else nothing.</summary>
    public LayerNeed Needs(string layer) =>
        IsOf(Nets.Select(n => n.Layer).Concat(HoleLayers), layer) ? LayerNeed.Everything : Heeds(layer) ? LayerNeed.Shapes : LayerNeed.Nothing;

    /// <summary>Whether closed shapes of a layer are metal on no net.</summary>
    internal bool IsLoose(string layer) => !IsOf(Nets.Select(n => n.Layer).Concat(HoleLayers).Concat(Ignored).Concat(NotCut), layer);

    private IEnumerable<string> Named => [.. Nets.Select(n => n.Layer), .. HoleLayers, .. Cut?.Layers ?? []];

    private static bool IsOf(IEnumerable<string> layers, string layer) => layers.Contains(layer, StringComparer.OrdinalIgnoreCase);
}

/// <summary>A drawing, judged.</summary>
/// <param name="Drawing">What was read.</param>
/// <param name="Spacing">Spacing of its nets; no rows where none is asked.</param>
/// <param name="Cut">Its finest features against the process; null where none is asked or contours meet.</param>
/// <param name="Findings">Everything found, the drawing's own remarks first.</param>
internal sealed record DrawingCheck(ReadDrawing Drawing, SpacingTable Spacing, CutFigures? Cut, IReadOnlyList<Finding> Findings)
{
    /// <summary>The one surface on which the nets of a drawing lie.</summary>
    public const string SurfaceName = "the drawing plane";

    // As many as the reader takes in: distances are found by trees of bounds, n log n.
    internal const int MostPieces = 500_000;

    /// <summary>Whether nothing is wrong.</summary>
    public bool Meets => Findings.All(f => f.Severity != FindingSeverity.Error);

    /// <summary>Judges a drawing.</summary>
    /// <exception cref="DesignRefusedException">A layer is not there, the drawing is too large to measure, or the rules give no distance.</exception>
    public static DrawingCheck Of(ReadDrawing drawing, DrawingQuestion question)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(question);
        List<Finding> findings = [.. drawing.Remarks];
        DrawingSpacing? measured = question.Rules is DrawingRules rules ? DrawingSpacing.Of(drawing, question, rules, findings) : null;
        SpacingTable spacing = measured?.Table ?? new SpacingTable([], []);
        findings.AddRange(spacing.Findings);
        string[] unheeded = [.. drawing.Layers.Select(l => l.Name).Where(n => !question.Heeds(n))];
        if (unheeded.Length > 0)
        {
            findings.Add(Finding.Note("drawing.unheeded", $"Layers on no net and not cut were not searched for open, doubled or crossing lines: {string.Join(", ", unheeded)}."));
        }

        if (!drawing.Layers.Any(l => question.Heeds(l.Name)))
        {
            throw new DesignRefusedException("drawing.nothing", "There is nothing to check: no line, arc or area was read on any layer that matters.");
        }

        CutFigures? cut = question.Cut is DrawingCut asked
            ? CutFigures.Of(drawing, asked with { Layers = asked.Layers.Count > 0 ? asked.Layers : [.. drawing.Layers.Where(l => l.Contours.Count > 0 && question.Heeds(l.Name)).Select(l => l.Name)] }, findings)
            : null;
        return new(drawing, spacing, cut, [.. findings.Distinct()])
        {
            IsMeasured = spacing.Rows.Count > 0 || cut is not null,
            NotCounted = [.. drawing.LeftOut, .. measured?.Frames ?? [], .. NotCountedLayers(drawing, question)],
        };
    }

    /// <summary>Whether a distance or a limit was measured; otherwise only contours were looked at.</summary>
    public bool IsMeasured { get; private init; }

    /// <summary>Everything in the drawing that the verdict says nothing about, by layer and kind.</summary>
    public IReadOnlyList<LeftOut> NotCounted { get; private init; } = [];

    /// <summary>Whether everything that may be metal was read and counted.</summary>
    public bool IsComplete => NotCounted.All(l => l.What is LeftOutKind.Annotation or LeftOutKind.PaperSpace);

    private static IEnumerable<LeftOut> NotCountedLayers(ReadDrawing drawing, DrawingQuestion question)
    {
        foreach (ReadLayer layer in drawing.Layers.Where(l => !question.Heeds(l.Name)))
        {
            bool counts = question.Rules is not null && question.IsLoose(layer.Name);
            if (layer.OpenPaths.Count > 0)
            {
                yield return new(layer.Name, "open line", LeftOutKind.OpenLine, layer.OpenPaths.Count, layer.OpenPaths[0].Source.Line, "it encloses nothing, so it is taken for no copper");
            }

            if (!counts && layer.Contours.Count + layer.Areas.Count > 0)
            {
                int first = layer.Contours.Select(c => c.Source.Line).Concat(layer.Areas.Select(a => a.Source.Line)).Min();
                yield return new(layer.Name, "closed shape", LeftOutKind.Ignored, layer.Contours.Count + layer.Areas.Count, first, "its layer is left out, or holds marks and notes");
            }
        }
    }

    /// <summary>The layer of a name.</summary>
    /// <exception cref="DesignRefusedException">There is none that holds anything.</exception>
    internal static ReadLayer LayerOf(ReadDrawing drawing, string name) =>
        drawing.Layers.FirstOrDefault(l => string.Equals(l.Name, name, StringComparison.OrdinalIgnoreCase))
        ?? throw new DesignRefusedException(
            "drawing.layer",
            $"There is no layer '{name}' that holds anything; the layers are {(drawing.Layers.Count == 0 ? "none" : string.Join(", ", drawing.Layers.Select(l => $"'{l.Name}'")))}.");

    /// <summary>Refuses what is too much to measure.</summary>
    internal static void CheckSize(IEnumerable<ReadLayer> layers, string what, int most)
    {
        int pieces = layers.Sum(l => l.Contours.Sum(c => c.Contour.Pieces.Count) + l.Areas.Sum(a => a.Outline.Contours.Sum(c => c.Pieces.Count)));
        if (pieces > most)
        {
            throw new DesignRefusedException(
                "drawing.size",
                $"{what} {DxfReader.Count(pieces)} lines and arcs; at most {DxfReader.Count(most)} are measured. Leave out lettering and hatching, or give only the layers that matter.");
        }
    }
}
