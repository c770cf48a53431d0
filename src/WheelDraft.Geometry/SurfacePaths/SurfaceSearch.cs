namespace WheelDraft.Geometry;

/// <summary>Shortest ways from one conductor to every other over a graph of bends, on a surface without walls.</summary>
/// <remarks>E. W. Dijkstra, A note on two problems in connexion with graphs, Numerische Mathematik 1 (1959).</remarks>
internal sealed class SurfaceSearch
{
    private readonly int _source;
    private readonly SurfaceGraph _graph;
    private readonly Dictionary<int, Step> _best = [];
    private readonly Dictionary<int, Step> _ends = [];
    private readonly PriorityQueue<int, double> _open = new();

    internal SurfaceSearch(int source, SurfaceGraph graph)
    {
        _source = source;
        _graph = graph;
        foreach (PossibleLeg leg in graph.LegsAt[~source].Where(l => l.IsFree(graph.Judge)))
        {
            Offer(leg.To, new Step(leg.LengthMm, leg.Piece, null));
        }

        while (_open.TryDequeue(out int node, out double at))
        {
            if (at <= _best[node].LengthMm)
            {
                Spread(node);
            }
        }
    }

    /// <summary>The shortest way with at least one bend to a conductor; null when there is none.</summary>
    internal SurfacePath? To(int conductor)
    {
        if (!_ends.TryGetValue(conductor, out Step? step))
        {
            return null;
        }

        List<SurfaceLeg> legs = [];
        for (Step? s = step; s is not null; s = s.Before)
        {
            if (s.Plan is not null)
            {
                legs.Add(new SurfaceLeg(s.Plan, s.Plan.Length, []));
            }
        }

        legs.Reverse();
        return new SurfacePath(step.LengthMm, legs);
    }

    private void Spread(int node)
    {
        Step here = _best[node];
        foreach (PossibleLeg leg in _graph.LegsAt[node])
        {
            bool backwards = leg.To == node;
            int other = backwards ? leg.From : leg.To;
            double length = here.LengthMm + leg.LengthMm;
            bool isWorse = other == ~_source || (other < 0 ? _ends.TryGetValue(~other, out Step? known) : _best.TryGetValue(other, out known)) && known.LengthMm <= length;
            if (!isWorse && leg.IsFree(_graph.Judge))
            {
                Offer(other, new Step(length, backwards ? leg.Piece?.Reversed() : leg.Piece, here));
            }
        }
    }

    private void Offer(int node, Step step)
    {
        if (node < 0)
        {
            _ends[~node] = step;
        }
        else if (!_best.TryGetValue(node, out Step? known) || step.LengthMm < known.LengthMm)
        {
            _best[node] = step;
            _open.Enqueue(node, step.LengthMm);
        }
    }

    /// <summary>A step of a way: how long it is so far, and the last leg's plan (null between two nodes in one place).</summary>
    private sealed record Step(double LengthMm, Piece? Plan, Step? Before);
}
