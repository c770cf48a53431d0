namespace WheelDraft.Geometry;

/// <summary>A surface made ready for searching: borders, conductors, and (when first needed) bends and legs.</summary>
internal sealed class SurfaceGraph
{
    private readonly Lazy<BendNodes> _bends;
    private readonly Lazy<ILookup<int, PossibleLeg>> _legsAt;

    internal SurfaceGraph(
        Outline? surface,
        IReadOnlyList<SurfaceRegion> regions,
        IReadOnlyList<IReadOnlyList<Footprint>> conductors,
        double linkMm)
    {
        List<SurfaceBorder> borders = [];
        if (surface is not null)
        {
            borders.Add(new SurfaceBorder(SurfaceRegion.Through("outline", surface), blocksOutside: true, bit: -1));
        }

        int bit = 0;
        foreach (SurfaceRegion region in regions.Where(r => r.WallMm > 0))
        {
            borders.Add(new SurfaceBorder(region, blocksOutside: false, region.IsImpassable ? -1 : bit++));
        }

        if (bit > SurfaceBorder.MostCrossable)
        {
            throw new NotSupportedException(string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"A surface with {bit} ribs and grooves is beyond what shortest paths are found for; {SurfaceBorder.MostCrossable} are the most."));
        }

        Borders = borders;
        Conductors = [.. conductors.Select(c => new SurfaceConductor(c, borders))];
        Judge = new LegJudge(borders, linkMm);
        _bends = new(() => new BendNodes(Borders, Conductors));
        _legsAt = new(() => Bends.Legs
            .SelectMany(leg => new[] { (At: leg.From, Leg: leg), (At: leg.To, Leg: leg) })
            .ToLookup(x => x.At, x => x.Leg));
    }

    internal IReadOnlyList<SurfaceBorder> Borders { get; }

    internal IReadOnlyList<SurfaceConductor> Conductors { get; }

    internal LegJudge Judge { get; }

    internal BendNodes Bends => _bends.Value;

    /// <summary>Legs by either end.</summary>
    internal ILookup<int, PossibleLeg> LegsAt => _legsAt.Value;

    /// <summary>Whether nothing stands in any path's way.</summary>
    internal bool IsPlain => Borders.Count == 0;
}
