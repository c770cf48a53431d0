namespace WheelDraft.Geometry;

/// <summary>A surface without walls made ready for searching: borders, conductors, and (when first needed) bends and legs.</summary>
internal sealed class SurfaceGraph
{
    private readonly Lazy<BendNodes> _bends;
    private readonly Lazy<ILookup<int, PossibleLeg>> _legsAt;

    internal SurfaceGraph(IReadOnlyList<SurfaceBorder> borders, Func<IReadOnlyList<SurfaceConductor>> conductors)
    {
        Borders = borders;
        Judge = new LegJudge(borders);
        _bends = new(() => new BendNodes(Borders, conductors()));
        _legsAt = new(() => Bends.Legs
            .SelectMany(leg => new[] { (At: leg.From, Leg: leg), (At: leg.To, Leg: leg) })
            .ToLookup(x => x.At, x => x.Leg));
    }

    internal IReadOnlyList<SurfaceBorder> Borders { get; }

    internal LegJudge Judge { get; }

    internal BendNodes Bends => _bends.Value;

    /// <summary>Legs by either end.</summary>
    internal ILookup<int, PossibleLeg> LegsAt => _legsAt.Value;

    /// <summary>Whether nothing stands in any path's way.</summary>
    internal bool IsPlain => Borders.Count == 0;
}
