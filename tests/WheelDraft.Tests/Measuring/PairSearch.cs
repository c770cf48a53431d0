using WheelDraft.Geometry;

namespace WheelDraft.Tests.Measuring;

/// <summary>The shortest way between two conductors over a relief, searched for that pair alone: the way it was done before beams were shared, kept
/// as an oracle. Only one thing is other: a way longer than was looked for is no result.</summary>
/// <remarks>Between bends a shortest way is straight in an unfolding, and it bends only where more than a full turn of surface meets (M. Sharir and
/// A. Schorr, On shortest paths in polyhedral spaces, SIAM Journal on Computing 15, 1986, lemmas 3.1 to 3.4). So: beams from every such corner between
/// the two, beams straight from one to the other, and the shortest way over them (E. W. Dijkstra, Numerische Mathematik 1, 1959).
/// What cannot be part of a way shorter than the best known is left out, by plan distance: no surface is shorter than its plan.</remarks>
internal sealed class PairSearch
{
    private readonly Relief _relief;
    private readonly RecessLinks _links;
    private readonly SurfaceConductor _a;
    private readonly SurfaceConductor _b;
    private readonly double _reach;
    private readonly Dictionary<int, PairBeams> _traced = [];
    private bool _wasLimited;
    private double _best;

    private PairSearch(Relief relief, RecessLinks links, SurfaceConductor a, SurfaceConductor b, double reach)
    {
        (_relief, _links, _a, _b, _reach, _best) = (relief, links, a, b, reach, reach);
    }

    /// <summary>The shortest way, nothing where the two touch; null when there is none.</summary>
    internal static SurfacePath? Shortest(Relief relief, RecessLinks links, SurfaceConductor a, SurfaceConductor b)
    {
        // Straight over all walls is a way; where no surface is, ways not much longer than that first, then further and further.
        (Point from, Point to) = LegCandidates.Direct(a, b, a.NearestTo(b).DistanceMm + (2 * Tolerances.JoinMm)).MinBy(leg => leg.From.DistanceTo(leg.To));
        if (from.DistanceTo(to) <= Tolerances.JoinMm)
        {
            return new SurfacePath(0, []);
        }

        Segment plan = new(from, to);
        ReliefEdge[] crossed = [.. relief.Edges.Where(e => IsMet(e, plan))];
        double reach = (plan.Length + crossed.Where(e => !e.Blocks).Sum(e => e.WallMm)) * (1 + 1e-9);
        bool isBlocked = Array.Exists(crossed, e => e.Blocks);
        reach = isBlocked ? (reach * 1.5) + 1 : reach + 1e-6;
        try
        {
            for (int i = 0; i < 6; i++, reach *= 2)
            {
                PairSearch search = new(relief, links, a, b, reach);
                SurfacePath? path = search.Find();
                if (path is not null && (!isBlocked || path.LengthMm < reach - 1e-3))
                {
                    return path;
                }

                if (path is null && !search._wasLimited)
                {
                    return path;
                }
            }

            return new PairSearch(relief, links, a, b, double.PositiveInfinity).Find();
        }
        catch (TooManyBeamsException)
        {
            // The straight distance in plan, all walls left out: never more than the true path.
            return new SurfacePath(plan.Length, [new SurfaceLeg(plan, plan.Length, [])]);
        }
    }

    private static bool IsMet(ReliefEdge edge, Segment plan)
    {
        double a = plan.Direction.Cross(edge.From - plan.Start), b = plan.Direction.Cross(edge.To - plan.Start);
        double c = edge.UphillOf(plan.Start), d = edge.UphillOf(plan.End);
        return Math.Min(a, b) <= SurfaceTolerances.SameMm && Math.Max(a, b) >= -SurfaceTolerances.SameMm && Math.Min(c, d) <= SurfaceTolerances.SameMm && Math.Max(c, d) >= -SurfaceTolerances.SameMm;
    }

    private SurfacePath? Find()
    {
        Arrival? direct = Direct(_a, _b);
        Arrival? back = Direct(_b, _a);
        ReliefSector[] bends = [.. _relief.Nodes
            .Where(n => At(n).DistanceTo(_a) + At(n).DistanceTo(_b) < _best || Limited())
            .OrderBy(n => At(n).DistanceTo(_a) + At(n).DistanceTo(_b))];
        foreach (ReliefSector bend in bends)
        {
            if (At(bend).DistanceTo(_a) + At(bend).DistanceTo(_b) < _best)
            {
                TraceBend(bend);
            }
        }

        if (OverBends() is { } bent && bent.LengthMm < Math.Min(direct?.LengthMm ?? double.PositiveInfinity, back?.LengthMm ?? double.PositiveInfinity))
        {
            return bent;
        }

        return direct is not null && !(back?.LengthMm < direct.LengthMm) ? new SurfacePath(direct.LengthMm, BeamPath.Legs(direct))
            : back is not null ? new SurfacePath(back.LengthMm, BeamPath.Legs(back)).Reversed()
            : null;
    }

    private bool Limited()
    {
        _wasLimited = true;
        return false;
    }

    private PlanPlace At(ReliefSector bend) => new(_relief.Corners[bend.Corner].At);

    /// <summary>The shortest way without a bend from one conductor's corners and round edges to the other.</summary>
    private Arrival? Direct(SurfaceConductor from, SurfaceConductor to)
    {
        PairBeams tracer = new(_relief, _links, [to]) { Limit = () => _best, Rest = plan => plan.DistanceTo(to.Bounds) };
        foreach (Arc arc in from.Pieces.OfType<Arc>())
        {
            tracer.Trace(BeamSources.FromArc(from, arc));
            Shorten(tracer);
        }

        foreach (Point corner in from.Corners.Concat(FeetNearWalls(from)))
        {
            tracer.Trace(BeamSources.FromCorner(_relief, from, corner));
            tracer.Trace(_links.From(from, corner));
            Shorten(tracer);
        }

        _wasLimited |= tracer.WasLimited;
        return tracer.Best[0];
    }

    private void Shorten(PairBeams tracer) => _best = Math.Min(_best, tracer.Best[0]?.LengthMm ?? double.PositiveInfinity);

    /// <summary>Where a round edge is nearest to a wall.</summary>
    private IEnumerable<Point> FeetNearWalls(SurfaceConductor conductor)
    {
        foreach (Arc arc in conductor.Pieces.OfType<Arc>())
        {
            foreach (ReliefEdge edge in _relief.Edges.Where(e => !e.Blocks && e.IsUpright))
            {
                Point foot = arc.Centre + (edge.Uphill * arc.RadiusMm);
                if (BorderCuts.IsOnSpan(arc, foot) && -edge.UphillOf(foot) >= 0 && edge.DistanceTo(foot) < _links.LinkMm)
                {
                    yield return foot;
                }
            }
        }
    }

    private void TraceBend(ReliefSector bend)
    {
        double toA = At(bend).DistanceTo(_a), toB = At(bend).DistanceTo(_b);
        PairBeams tracer = new(_relief, _links, [_a, _b])
        {
            Limit = () => _best,
            Rest = plan => Math.Min(toA + plan.DistanceTo(_b.Bounds), toB + plan.DistanceTo(_a.Bounds)),
        };
        tracer.Trace(BeamSources.FromBend(_relief, bend));
        tracer.Offer(0, _links.Land(_relief.Corners[bend.Corner], bend, _a));
        tracer.Offer(1, _links.Land(_relief.Corners[bend.Corner], bend, _b));
        _wasLimited |= tracer.WasLimited;
        _traced.Add(bend.Node, tracer);
        if (tracer.Best[0] is { } a && tracer.Best[1] is { } b)
        {
            _best = Math.Min(_best, a.LengthMm + b.LengthMm);
        }
    }

    private SurfacePath? OverBends()
    {
        Dictionary<int, double> at = [];
        Dictionary<int, int> before = [];
        HashSet<int> settled = [];
        PriorityQueue<int, double> open = new();
        foreach ((int node, PairBeams tracer) in _traced)
        {
            if (tracer.Best[0] is { } start)
            {
                at[node] = start.LengthMm;
                open.Enqueue(node, start.LengthMm);
            }
        }

        (double LengthMm, int Node) best = (double.PositiveInfinity, -1);
        while (open.TryDequeue(out int node, out double length) && length < best.LengthMm)
        {
            if (!settled.Add(node))
            {
                continue;
            }

            PairBeams tracer = _traced[node];
            if (tracer.Best[1] is { } end && length + end.LengthMm < best.LengthMm)
            {
                best = (length + end.LengthMm, node);
            }

            foreach ((int next, double leg) in Legs(node, tracer))
            {
                if (!at.TryGetValue(next, out double known) || length + leg < known)
                {
                    (at[next], before[next]) = (length + leg, node);
                    open.Enqueue(next, length + leg);
                }
            }
        }

        return best.Node < 0 ? null : Path(best.LengthMm, best.Node, before);
    }

    private IEnumerable<(int Next, double LengthMm)> Legs(int node, PairBeams tracer)
    {
        foreach ((int next, Arrival arrival) in tracer.Bends)
        {
            if (next != node && _traced.ContainsKey(next))
            {
                yield return (next, arrival.LengthMm);
            }
        }
    }

    private SurfacePath Path(double length, int last, Dictionary<int, int> before)
    {
        List<SurfaceLeg> legs = [.. BeamPath.Legs(_traced[last].Best[1]!)];
        int node = last;
        while (before.TryGetValue(node, out int from))
        {
            legs.InsertRange(0, BeamPath.Legs(_traced[from].Bends[node]));
            node = from;
        }

        legs.InsertRange(0, BeamPath.Legs(_traced[node].Best[0]!).Reverse().Select(l => l.Reversed()));
        return new SurfacePath(length, legs);
    }

    /// <summary>A place in plan, for least distances.</summary>
    private readonly record struct PlanPlace(Point At)
    {
        internal double DistanceTo(SurfaceConductor conductor) => Bounds.Of(At).DistanceTo(conductor.Bounds);
    }
}
