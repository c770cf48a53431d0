namespace WheelDraft.Geometry;

/// <summary>Shortest paths on a plane surface between conductors, among regions to go round or to cross by walls.</summary>
/// <remarks><para>Without walls exact: lines and arcs stay what they are. With walls a path is as long as on the true surface: walls are unfolded, so one
/// straight wall on both sides of a rib, h high, makes √(d∥² + (d⊥ + 2h)²) of a plan distance with these parts. A region without an upright wall (a V) is
/// taken as upright walls that make its contour when crossed square. Borders' arcs are then taken as polygons (<see cref="FlatBorder"/>): never longer, and
/// shorter by less than 0.1 %; conductors' arcs stay arcs.</para>
/// <para>Recesses narrower than the link are bridged (<see cref="RecessLinks"/>). Other conductors are no obstacle: a path runs under them as if they were
/// surface. Overlapping regions: see <see cref="Relief"/>.</para></remarks>
public sealed class SurfacePaths
{
    private readonly IReadOnlyList<IReadOnlyList<Footprint>> _footprints;
    private readonly IReadOnlyList<Piece> _cutting;
    private readonly SurfaceConductor?[] _conductors;
    private readonly SurfaceGraph _graph;
    private readonly BeamTrees? _trees;
    private readonly Dictionary<int, SurfaceSearch> _searches = [];
    private readonly Dictionary<(int, int), SurfacePath?> _found = [];

    /// <summary>Paths on a surface.</summary>
    /// <param name="surface">Plan of the surface; null for unbounded.</param>
    /// <param name="regions">Regions of the surface; one without a wall is left out.</param>
    /// <param name="conductors">Each conductor's footprints, looked at when a path to it is first asked for; none leads to one without any.</param>
    /// <param name="linkMm">A recess beside a rib that is narrower than this is bridged, mm; at least 0.</param>
    /// <param name="notchMm">Where a notch of the outline is narrower than this it is bridged, mm; as <paramref name="linkMm"/> when left out.</param>
    /// <exception cref="ArgumentOutOfRangeException">The link is negative or not finite.</exception>
    public SurfacePaths(
        Outline? surface,
        IReadOnlyList<SurfaceRegion> regions,
        IReadOnlyList<IReadOnlyList<Footprint>> conductors,
        double linkMm,
        double? notchMm = null)
    {
        ArgumentNullException.ThrowIfNull(regions);
        ArgumentNullException.ThrowIfNull(conductors);
        if (!(linkMm >= 0) || !double.IsFinite(linkMm))
        {
            throw new ArgumentOutOfRangeException(nameof(linkMm), linkMm, "A link has a length of at least 0.");
        }

        List<SurfaceRegion> standing = [.. regions.Where(r => r.WallMm > 0)];
        Relief? relief = Relief.IfAny(surface, standing, linkMm, notchMm ?? linkMm);
        List<SurfaceBorder> borders = [.. standing.Select(r => new SurfaceBorder(r, blocksOutside: false))];
        if (surface is not null)
        {
            borders.Add(new SurfaceBorder(SurfaceRegion.Through(SurfaceRegion.OutlineName, surface), blocksOutside: true));
        }

        _footprints = conductors;
        _cutting = relief is null ? [.. borders.SelectMany(b => b.Pieces)] : [.. relief.Edges.Select(e => new Segment(e.From, e.To))];
        _conductors = new SurfaceConductor?[conductors.Count];
        _graph = new SurfaceGraph(borders, () => [.. Enumerable.Range(0, conductors.Count).Select(Conductor)]);
        _trees = relief is null ? null : new BeamTrees(relief, new RecessLinks(relief, linkMm));
    }

    /// <summary>The shortest path from one conductor to another; null when the surface has none.</summary>
    /// <param name="from">Index of the first conductor.</param>
    /// <param name="to">Index of the second.</param>
    public SurfacePath? Shortest(int from, int to)
    {
        if (from > to)
        {
            return Shortest(to, from)?.Reversed();
        }

        if (!_found.TryGetValue((from, to), out SurfacePath? path))
        {
            path = Find(from, to);
            _found.Add((from, to), path);
        }

        return path;
    }

    private SurfaceConductor Conductor(int index) => _conductors[index] ??= new SurfaceConductor(_footprints[index], _cutting);

    private SurfacePath? Find(int from, int to)
    {
        SurfaceConductor a = Conductor(from), b = Conductor(to);
        if (a.Footprints.Count == 0 || b.Footprints.Count == 0)
        {
            return null;
        }

        if (_graph.IsPlain)
        {
            return Plain(a.NearestTo(b));
        }

        if (a.Touches(b))
        {
            return new SurfacePath(0, []);
        }

        return _trees is not null ? ReliefSearch.Shortest(_trees, a, b) : OnPlane(from, to);
    }

    private SurfacePath? OnPlane(int from, int to)
    {
        SurfaceConductor a = Conductor(from), b = Conductor(to);

        // Most often nothing stands between the places where they are nearest, and no other leg needs to be looked at.
        double gap = a.NearestTo(b).DistanceMm;
        if (Straight(LegCandidates.Direct(a, b, gap + (2 * Tolerances.JoinMm))) is { } shortest && shortest.LengthMm <= gap + Tolerances.JoinMm)
        {
            return shortest;
        }

        SurfacePath? direct = Straight(LegCandidates.Direct(a, b, double.PositiveInfinity));

        if (!_searches.TryGetValue(from, out SurfaceSearch? search))
        {
            search = new SurfaceSearch(from, _graph);
            _searches.Add(from, search);
        }

        SurfacePath? bent = search.To(to);
        return direct is null || bent?.LengthMm < direct.LengthMm ? bent : direct;
    }

    /// <summary>Where nothing stands in the way the shortest path is the least distance: found by trees of bounds, not by all pairs of pieces.</summary>
    private static SurfacePath Plain(Nearest nearest) => nearest.DistanceMm <= Tolerances.JoinMm
        ? new SurfacePath(0, [])
        : new SurfacePath(nearest.DistanceMm, [new SurfaceLeg(new Segment(nearest.OnFirst, nearest.OnSecond), nearest.DistanceMm, [])]);

    /// <summary>The best straight leg: candidates from the shortest, until one is free.</summary>
    private SurfacePath? Straight(IEnumerable<(Point From, Point To)> candidates)
    {
        IEnumerable<Segment> legs = candidates
            .Where(leg => leg.From.DistanceTo(leg.To) > Tolerances.ShortestPieceMm)
            .OrderBy(leg => leg.From.DistanceTo(leg.To))
            .Select(leg => new Segment(leg.From, leg.To));
        return legs.FirstOrDefault(_graph.Judge.IsFree) is { } leg ? new SurfacePath(leg.Length, [new SurfaceLeg(leg, leg.Length, [])]) : null;
    }
}
