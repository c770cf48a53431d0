namespace WheelDraft.Geometry;

/// <summary>Shortest paths on a plane surface between conductors, among regions to go round or to cross at a cost.</summary>
/// <remarks><para>Exact for the model: plan length plus, wherever a border is crossed, its wall; lines and arcs stay what they are. The wall
/// counts in full however slantwise it is climbed, which is how the rule for measuring is worded.</para>
/// <para>Recesses narrower than the link are bridged where a straight leg crosses them. Other conductors are no obstacle: a
/// path runs under them as if they were surface.</para></remarks>
public sealed class SurfacePaths
{
    private readonly SurfaceGraph _graph;
    private readonly Dictionary<int, SurfaceSearch> _searches = [];
    private readonly Dictionary<(int, int), SurfacePath?> _found = [];

    /// <summary>Paths on a surface.</summary>
    /// <param name="surface">Plan of the surface; null for unbounded.</param>
    /// <param name="regions">Regions of the surface, at most 64 of them crossable; one without a wall is left out.</param>
    /// <param name="conductors">Each conductor's footprints, at least one each.</param>
    /// <param name="linkMm">A recess narrower than this is bridged, mm; at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The link is negative or not finite, or a conductor has no footprint.</exception>
    /// <exception cref="NotSupportedException">More than 64 crossable regions.</exception>
    public SurfacePaths(
        Outline? surface,
        IReadOnlyList<SurfaceRegion> regions,
        IReadOnlyList<IReadOnlyList<Footprint>> conductors,
        double linkMm)
    {
        ArgumentNullException.ThrowIfNull(regions);
        ArgumentNullException.ThrowIfNull(conductors);
        if (!(linkMm >= 0) || !double.IsFinite(linkMm))
        {
            throw new ArgumentOutOfRangeException(nameof(linkMm), linkMm, "A link has a length of at least 0.");
        }

        if (conductors.Any(c => c.Count == 0))
        {
            throw new ArgumentOutOfRangeException(nameof(conductors), "Every conductor needs a footprint.");
        }

        _graph = new SurfaceGraph(surface, regions, conductors, linkMm);
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

    private SurfacePath? Find(int from, int to)
    {
        SurfaceConductor a = _graph.Conductors[from];
        SurfaceConductor b = _graph.Conductors[to];
        if (_graph.IsPlain)
        {
            return Plain(a.NearestTo(b));
        }

        if (a.Touches(b))
        {
            return new SurfacePath(0, []);
        }

        SurfacePath? direct = Straight(a, b);
        if (direct is { } d && d.Legs[0].Crossed.Count == 0 && d.LengthMm <= PlanGap(a, b) + Tolerances.JoinMm)
        {
            return direct;
        }

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

    private static double PlanGap(SurfaceConductor a, SurfaceConductor b) =>
        LegCandidates.Direct(a, b).Min(leg => leg.From.DistanceTo(leg.To));

    /// <summary>The best straight leg: candidates from the shortest, until none can be better.</summary>
    private SurfacePath? Straight(SurfaceConductor a, SurfaceConductor b)
    {
        List<(double PlanMm, Point From, Point To)> legs =
            [.. LegCandidates.Direct(a, b).Select(leg => (leg.From.DistanceTo(leg.To), leg.From, leg.To))];
        legs.Sort((x, y) => x.Item1.CompareTo(y.Item1));
        SurfacePath? best = null;
        foreach ((double plan, Point start, Point end) in legs)
        {
            if (best is not null && plan >= best.LengthMm)
            {
                break;
            }

            if (plan <= Tolerances.ShortestPieceMm)
            {
                continue;
            }

            Segment leg = new(start, end);
            foreach (LegCost cost in _graph.Judge.Of(leg, a, b))
            {
                double length = plan + cost.AddedMm;
                if (best is null || length < best.LengthMm)
                {
                    best = new SurfacePath(length, [new SurfaceLeg(leg, length, cost.Crossed)]);
                }
            }
        }

        return best;
    }
}
