using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>An item as the spacing drawing shows it: strips as strips, not as the prisms that are measured.</summary>
/// <param name="Name">As reports call it.</param>
/// <param name="Net">Its net.</param>
/// <param name="Kind">What it is, electrically.</param>
/// <param name="Shapes">Its areas in plan with the wheel at home, the lowest first.</param>
internal sealed record SpacingPart(string Name, string Net, SolidKind Kind, IReadOnlyList<Outline> Shapes)
{
    /// <summary>Thin lines on it: folds, and the edge of a contact rivet.</summary>
    public IReadOnlyList<Piece> Marks { get; init; } = [];

    /// <summary>Ribs and slots of a surface, along their middles.</summary>
    public IReadOnlyList<Piece> Walls { get; init; } = [];

    /// <summary>Its filling.</summary>
    public Fill Look { get; init; }

    /// <summary>Whether it is carrier or surface, which conduct nothing.</summary>
    public bool IsInsulation { get; init; }

    /// <summary>Where a leader that names it ends.</summary>
    public Point NamedAt { get; init; }

    /// <summary>Whether it turns with the wheel.</summary>
    public bool Turns { get; init; }

    /// <summary>Its highest point over the copper face, mm.</summary>
    public double TopMm { get; init; }

    /// <summary>All conductive items of a design, the lowest first.</summary>
    public static IReadOnlyList<SpacingPart> Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        ILookup<string, PlacedStrip> strips = design.Strips.Strips.ToLookup(s => s.Form.Strip.Name, StringComparer.Ordinal);
        return
        [
            .. design.Solids.Where(s => !s.IsLowered)
                .GroupBy(s => s.Name, StringComparer.Ordinal)
                .Select(g => strips[g.Key].FirstOrDefault() is PlacedStrip strip ? OfStrip(strip, [.. g]) : OfSolids([.. g.OrderBy(s => s.ToZMm)]))
                .OrderBy(p => p.TopMm),
        ];
    }

    private static SpacingPart OfSolids(IReadOnlyList<Solid> solids) =>
        new(solids[0].Name, solids[0].Net, solids[0].Kind, [.. solids.Select(s => s.Outline)])
        {
            Turns = solids[0].Turns,
            TopMm = solids[^1].ToZMm,
            NamedAt = solids[^1].Outline.Outer.Pieces[0].PointAt(0.6),
        };

    private static SpacingPart OfStrip(PlacedStrip strip, IReadOnlyList<Solid> solids)
    {
        StripPlan plan = StripRibbon.Working(strip);
        IEnumerable<Piece> rivet = strip.Form.Nose?.Rivet is StripRivet head && strip.WorkingContact is SpaceVector at
            ? Contour.Circle(at.Plan, head.DiameterMm / 2).Pieces
            : [];
        return new(strip.Form.Strip.Name, strip.Net, solids[0].Kind, [.. plan.Ribbons.Select(r => new Outline(r))])
        {
            Marks = [.. plan.Folds, .. rivet],
            TopMm = solids.Max(s => s.ToZMm),
            NamedAt = strip.Placement.Of(strip.Form.FrameAt((strip.Form.Clamp.FromMm + strip.Form.Clamp.ToMm) / 2)).Origin.Plan,
        };
    }
}
