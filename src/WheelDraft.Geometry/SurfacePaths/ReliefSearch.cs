namespace WheelDraft.Geometry;

/// <summary>The shortest way between two conductors over a relief.</summary>
/// <remarks>Between bends a shortest way is straight in an unfolding, and it bends only where more than a full turn of surface meets (M. Sharir and
/// A. Schorr, On shortest paths in polyhedral spaces, SIAM Journal on Computing 15, 1986, lemmas 3.1 to 3.4). So: beams from every such corner between
/// the two, beams straight from one to the other, and the shortest way over them (E. W. Dijkstra, Numerische Mathematik 1, 1959).
/// What cannot be part of a way shorter than the best known is left out, by plan distance: no surface is shorter than its plan.</remarks>
internal sealed class ReliefSearch
{
    /// <summary>How much longer than the plan distance the first ways are that are looked for, mm; then three times as much, and so on.</summary>
    /// <remarks>Only time depends on it. About X: few ways among walls are less than that longer than their plan.</remarks>
    private const double FirstMoreMm = 1.5;

    private readonly BeamTrees _trees;
    private readonly Relief _relief;
    private readonly SurfaceConductor _a;
    private readonly SurfaceConductor _b;
    private readonly double[] _planToA;
    private readonly double[] _planToB;
    private readonly BendBetween?[] _traced;
    private readonly List<int> _order = [];
    private bool _wasLimited;
    private double _best;

    private ReliefSearch(BeamTrees trees, SurfaceConductor a, SurfaceConductor b, double reach)
    {
        (_trees, _relief, _a, _b, _best) = (trees, trees.Relief, a, b, reach);
        (_planToA, _planToB) = (trees.PlanMm(a), trees.PlanMm(b));
        _traced = new BendBetween?[_relief.Nodes.Count];
    }

    /// <summary>The shortest way, nothing where the two touch; null when there is none.</summary>
    internal static SurfacePath? Shortest(BeamTrees trees, SurfaceConductor a, SurfaceConductor b)
    {
        (Point from, Point to) = LegCandidates.Direct(a, b, a.NearestTo(b).DistanceMm + (2 * Tolerances.JoinMm)).MinBy(leg => leg.From.DistanceTo(leg.To));
        if (from.DistanceTo(to) <= Tolerances.JoinMm)
        {
            return new SurfacePath(0, []);
        }

        Segment plan = new(from, to);
        try
        {
            return Within(trees, a, b, plan);
        }
        catch (TooManyBeamsException)
        {
            // The straight distance in plan, all walls left out: never more than the true path.
            return new SurfacePath(plan.Length, [new SurfaceLeg(plan, plan.Length, [])]);
        }
    }

    /// <summary>The shortest way, looked for among short ways first, then further and further.</summary>
    private static SurfacePath? Within(BeamTrees trees, SurfaceConductor a, SurfaceConductor b, Segment plan)
    {
        // Straight over all walls is a way, and no longer one is of interest, unless the surface ends on the way.
        ReliefEdge[] crossed = [.. trees.Relief.Edges.Where(e => IsMet(e, plan))];
        double most = (plan.Length + crossed.Where(e => !e.Blocks).Sum(e => e.WallMm)) * (1 + 1e-9);
        bool isBlocked = Array.Exists(crossed, e => e.Blocks);
        most = isBlocked ? (most * 1.5) + 1 : most + 1e-6;

        // What is taken off at round borders can bring a way below a limit by whose plan it was left out: so near to a limit no way is yet the shortest.
        double unsure = trees.UnsureMm;

        // What other pairs found may already lead from one to the other.
        double known = trees.OfConductor(a).Tree.KnownTo(trees.OfConductor(b).Tree) + BeamTree.SurelyMm;
        if (known < most)
        {
            ReliefSearch search = new(trees, a, b, known + unsure);
            if (search.Find() is { } path && path.LengthMm < known)
            {
                return path;
            }
        }

        for (double more = FirstMoreMm; plan.Length + unsure + more < most; more *= 3)
        {
            ReliefSearch search = new(trees, a, b, plan.Length + unsure + more);
            SurfacePath? path = search.Find();
            if (path?.LengthMm < plan.Length + more || (path is null && !search._wasLimited))
            {
                return path;
            }
        }

        for (int i = 0; i < 6; i++)
        {
            ReliefSearch search = new(trees, a, b, most);
            SurfacePath? path = search.Find();
            if (path is null ? !search._wasLimited : !isBlocked || path.LengthMm < most - unsure)
            {
                return path;
            }

            // Legs within the limit can add up to more than it: then a shorter way may have a leg beyond.
            most = path is null ? most * 2 : path.LengthMm + (2 * unsure);
        }

        return new ReliefSearch(trees, a, b, double.PositiveInfinity).Find();
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
        List<(double PlanMm, ReliefSector Bend)> bends = [];
        foreach (ReliefSector bend in _relief.Nodes)
        {
            double plan = PlanMm(bend.Node);
            if (plan < _best)
            {
                bends.Add((plan, bend));
            }
            else
            {
                _wasLimited = true;
            }
        }

        foreach ((double plan, ReliefSector bend) in bends.OrderBy(b => b.PlanMm))
        {
            if (plan < _best)
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

    /// <summary>No way by a bend is shorter in plan, mm.</summary>
    private double PlanMm(int node) => _planToA[node] + _planToB[node];

    /// <summary>The shortest way without a bend from one conductor's corners and round edges to the other.</summary>
    private Arrival? Direct(SurfaceConductor from, SurfaceConductor to)
    {
        BeamTracer tracer = new(_trees, [to]) { Limit = () => _best, Rest = plan => plan.DistanceTo(to.Bounds) };
        foreach (ConductorSource source in _trees.OfConductor(from).Sources)
        {
            tracer.Trace(source.Own);
            tracer.Trace(source.Linked);
            Shorten(tracer);
        }

        _wasLimited |= tracer.WasLimited;
        return tracer.Best[0];
    }

    private void Shorten(BeamTracer tracer) => _best = Math.Min(_best, tracer.Best[0]?.LengthMm ?? double.PositiveInfinity);

    private void TraceBend(ReliefSector bend)
    {
        BendWays ways = _trees.WaysFrom(bend);
        WaysTo a = ways.To(_a, _best - _planToB[bend.Node]), b = ways.To(_b, _best - _planToA[bend.Node]);
        _wasLimited |= a.WasLimited || b.WasLimited;
        _traced[bend.Node] = new BendBetween(a.Shortest, b.Shortest, ways.Bends);
        _order.Add(bend.Node);
        if (a.Shortest is { } toA && b.Shortest is { } toB)
        {
            _best = Math.Min(_best, toA.LengthMm + toB.LengthMm);
        }
    }

    private SurfacePath? OverBends()
    {
        double[] at = new double[_traced.Length];
        int[] before = new int[_traced.Length];
        bool[] settled = new bool[_traced.Length];
        Array.Fill(at, double.PositiveInfinity);
        Array.Fill(before, -1);
        PriorityQueue<int, double> open = new();
        double most = _best + _trees.UnsureMm;
        foreach (int node in _order)
        {
            if (_traced[node]!.ToA is { } start)
            {
                at[node] = start.LengthMm;
                open.Enqueue(node, start.LengthMm);
            }
        }

        (double LengthMm, int Node) best = (double.PositiveInfinity, -1);
        while (open.TryDequeue(out int node, out double length) && length < best.LengthMm)
        {
            if (settled[node])
            {
                continue;
            }

            settled[node] = true;
            BendBetween bend = _traced[node]!;
            if (bend.ToB is { } end && length + end.LengthMm < best.LengthMm)
            {
                best = (length + end.LengthMm, node);
            }

            foreach ((int next, Arrival leg) in bend.Bends)
            {
                double reached = length + leg.LengthMm;
                if (reached + _planToB[next] <= most && next != node && _traced[next] is not null && reached < at[next])
                {
                    (at[next], before[next]) = (reached, node);
                    open.Enqueue(next, reached);
                }
            }
        }

        return best.Node < 0 ? null : Path(best.LengthMm, best.Node, before);
    }

    private SurfacePath Path(double length, int last, int[] before)
    {
        List<SurfaceLeg> legs = [.. BeamPath.Legs(_traced[last]!.ToB!)];
        int node = last;
        for (int from = before[node]; from >= 0; (node, from) = (from, before[from]))
        {
            legs.InsertRange(0, BeamPath.Legs(_traced[from]!.Bends[node]));
        }

        legs.InsertRange(0, BeamPath.Legs(_traced[node]!.ToA!).Reverse().Select(l => l.Reversed()));
        return new SurfacePath(length, legs);
    }

    /// <summary>The straight ways from a bend between two conductors.</summary>
    /// <param name="ToA">The shortest to the one.</param>
    /// <param name="ToB">The shortest to the other.</param>
    /// <param name="Bends">The shortest to other bends.</param>
    private sealed record BendBetween(Arrival? ToA, Arrival? ToB, Dictionary<int, Arrival> Bends);
}
