namespace WheelDraft.Geometry;

/// <summary>Shortest ways from one conductor to every other over a graph of bends.</summary>
/// <remarks>E. W. Dijkstra, A note on two problems in connexion with graphs, Numerische Mathematik 1 (1959). A state is a node and, for
/// the borders that it lies on, the side of each: changing side there costs the wall.</remarks>
internal sealed class SurfaceSearch
{
    private readonly int _source;
    private readonly BendNodes _bends;
    private readonly IReadOnlyList<SurfaceBorder> _borders;
    private readonly IReadOnlyList<SurfaceConductor> _conductors;
    private readonly LegJudge _judge;
    private readonly ILookup<int, PossibleLeg> _legsAt;
    private readonly Dictionary<(int Node, ulong Level), Step> _best = [];
    private readonly Dictionary<int, Step> _ends = [];
    private readonly PriorityQueue<(int Node, ulong Level), double> _open = new();

    internal SurfaceSearch(int source, SurfaceGraph graph)
    {
        _source = source;
        _bends = graph.Bends;
        _borders = graph.Borders;
        _conductors = graph.Conductors;
        _judge = graph.Judge;
        _legsAt = graph.LegsAt;
        Start();
        while (_open.TryDequeue(out (int Node, ulong Level) state, out double at))
        {
            if (at <= _best[state].LengthMm)
            {
                Spread(state);
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

        double length = step.LengthMm;
        List<SurfaceLeg> legs = [];
        List<Crossing> climbed = [];
        for (Step? s = step; s is not null; s = s.Before)
        {
            if (s.Plan is null)
            {
                climbed.InsertRange(0, s.Crossed);
                continue;
            }

            IReadOnlyList<Crossing> crossed = [.. s.Crossed, .. climbed];
            legs.Add(new SurfaceLeg(s.Plan, s.Plan.Length + crossed.Sum(c => c.AddedMm), crossed));
            climbed.Clear();
        }

        legs.Reverse();
        return new SurfacePath(length, legs);
    }

    private void Start()
    {
        SurfaceConductor from = _conductors[_source];
        foreach (PossibleLeg leg in _legsAt[~_source])
        {
            BendNode node = _bends.Nodes[leg.To];
            foreach (LegCost cost in leg.Costs(_judge, _conductors))
            {
                Step step = new(leg.PlanMm + cost.AddedMm, leg.Piece, cost.Crossed, null);
                foreach (ulong level in LevelsAfter(cost, node, from))
                {
                    Offer((leg.To, level), step);
                    OfferClimbs(leg, level, step, from);
                }
            }
        }
    }

    /// <summary>The levels on which a leg from a conductor can arrive: given by the leg, or where it merely runs along by the conductor.</summary>
    private List<ulong> LevelsAfter(LegCost cost, BendNode node, SurfaceConductor conductor)
    {
        List<ulong> levels = [cost.Last & cost.Known & node.OnBorder];
        foreach (SurfaceBorder border in Along(cost, node))
        {
            List<ulong> next = [];
            foreach (ulong level in levels)
            {
                if (conductor.Stands(border, inside: false))
                {
                    next.Add(level);
                }

                if (conductor.Stands(border, inside: true))
                {
                    next.Add(level | border.Flag);
                }
            }

            levels = next;
        }

        return levels;
    }

    private IEnumerable<SurfaceBorder> Along(LegCost cost, BendNode node) =>
        _borders.Where(b => b.Bit >= 0 && (node.OnBorder & ~cost.Known & b.Flag) != 0);

    /// <summary>Right at the end of a plain leg from the conductor a wall may be climbed across a narrow recess.</summary>
    private void OfferClimbs(PossibleLeg leg, ulong level, Step step, SurfaceConductor from)
    {
        if (step.Crossed.Count > 0)
        {
            return;
        }

        BendNode node = _bends.Nodes[leg.To];
        foreach (SurfaceBorder border in _borders.Where(b => (node.OnBorder & b.Flag) != 0))
        {
            double height = from.HeightAt(leg.Piece?.Start ?? node.At);
            double wall = _judge.WallAfterMm(border, (level & border.Flag) == 0, leg.PlanMm, height);
            Offer((leg.To, level ^ border.Flag), step.Climbed(border, node.At, wall));
        }
    }

    private void Spread((int Node, ulong Level) state)
    {
        Step here = _best[state];
        BendNode node = _bends.Nodes[state.Node];
        foreach (SurfaceBorder border in _borders.Where(b => (node.OnBorder & b.Flag) != 0))
        {
            Offer((state.Node, state.Level ^ border.Flag), here.Climbed(border, node.At, border.Region.WallMm));
        }

        foreach (PossibleLeg leg in _legsAt[state.Node])
        {
            bool forward = leg.To == state.Node;
            int other = forward ? leg.From : leg.To;
            if (other == ~_source || IsSettled(other, here.LengthMm + leg.PlanMm))
            {
                continue;
            }

            foreach (LegCost cost in leg.Costs(_judge, _conductors))
            {
                Follow(state, leg, cost, other);
            }
        }
    }

    private bool IsSettled(int other, double atLeastMm) =>
        other < 0 && _ends.TryGetValue(~other, out Step? end) && end.LengthMm <= atLeastMm;

    private void Follow((int Node, ulong Level) state, PossibleLeg leg, LegCost cost, int other)
    {
        // A leg is judged from its first end to its second; from the second end it reads backwards.
        bool backwards = leg.To == state.Node;
        (ulong first, ulong last) = backwards ? (cost.Last, cost.First) : (cost.First, cost.Last);
        BendNode node = _bends.Nodes[state.Node];
        if (((state.Level ^ first) & cost.Known & node.OnBorder) != 0)
        {
            return;
        }

        Step here = _best[state];
        IReadOnlyList<Crossing> crossed = backwards ? [.. cost.Crossed.Reverse()] : cost.Crossed;
        Step step = new(here.LengthMm + leg.PlanMm + cost.AddedMm, backwards ? leg.Piece?.Reversed() : leg.Piece, crossed, here);
        if (other >= 0)
        {
            BendNode next = _bends.Nodes[other];
            Offer((other, ((last & cost.Known) | (state.Level & ~cost.Known)) & next.OnBorder), step);
            return;
        }

        Finish(state, leg, cost, ~other, step);
    }

    private void Finish((int Node, ulong Level) state, PossibleLeg leg, LegCost cost, int conductor, Step step)
    {
        SurfaceConductor to = _conductors[conductor];
        BendNode node = _bends.Nodes[state.Node];
        double wall = 0;
        foreach (SurfaceBorder border in Along(cost, node))
        {
            bool inside = (state.Level & border.Flag) != 0;
            if (!to.Stands(border, inside))
            {
                // Seen from the conductor the wall is climbed right after the leg.
                double height = to.HeightAt(leg.Piece?.Start ?? node.At);
                double one = cost.Crossed.Count == 0 ? _judge.WallAfterMm(border, inside, leg.PlanMm, height) : border.Region.WallMm;
                step = step with { Crossed = [new Crossing(border.Region.Name, node.At, one, one < border.Region.WallMm), .. step.Crossed] };
                wall += one;
            }
        }

        step = step with { LengthMm = step.LengthMm + wall };
        if (!_ends.TryGetValue(conductor, out Step? known) || step.LengthMm < known.LengthMm)
        {
            _ends[conductor] = step;
        }
    }

    private void Offer((int Node, ulong Level) state, Step step)
    {
        if (!_best.TryGetValue(state, out Step? known) || step.LengthMm < known.LengthMm)
        {
            _best[state] = step;
            _open.Enqueue(state, step.LengthMm);
        }
    }

    /// <summary>A step of a way: how long it is so far, the last leg's plan (null for a climb on the spot), what that crosses.</summary>
    private sealed record Step(double LengthMm, Piece? Plan, IReadOnlyList<Crossing> Crossed, Step? Before)
    {
        internal Step Climbed(SurfaceBorder border, Point at, double wallMm) =>
            new(LengthMm + wallMm, null, [new Crossing(border.Region.Name, at, wallMm, wallMm < border.Region.WallMm)], this);
    }
}
