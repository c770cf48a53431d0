namespace WheelDraft.Geometry;

/// <summary>A leg that may exist: from a node or a conductor to another.</summary>
/// <param name="From">Node; or the bitwise complement of a conductor's index.</param>
/// <param name="To">Likewise.</param>
/// <param name="Piece">Its plan, from the first to the second; null when both are in one place.</param>
internal sealed record PossibleLeg(int From, int To, Piece? Piece)
{
    private bool? _isFree = Piece is null ? true : null;

    /// <summary>Its length, mm.</summary>
    internal double LengthMm { get; } = Piece?.Length ?? 0;

    /// <summary>Whether it may run, found once.</summary>
    internal bool IsFree(LegJudge judge) => _isFree ??= judge.IsFree(Piece!);
}

/// <summary>Builds the nodes and possible legs of a surface's visibility graph.</summary>
/// <remarks>Visibility graph with tangent nodes at arcs: M. de Berg and others, Computational Geometry (3rd edition, 2008), chapter 15, whose
/// argument that a shortest path bends at obstacle corners only holds for tangents at arcs as well. Legs between bends are all pairs; each is
/// judged only when a search comes to it.</remarks>
internal sealed class BendNodes
{
    private readonly IReadOnlyList<SurfaceBorder> _borders;
    private readonly IReadOnlyList<SurfaceConductor> _conductors;
    private readonly List<Point> _nodes = [];
    private readonly List<PossibleLeg> _legs = [];

    /// <summary>Per round border piece: the nodes on it.</summary>
    private readonly List<(Arc Arc, List<int> Nodes)> _arcs = [];

    internal BendNodes(IReadOnlyList<SurfaceBorder> borders, IReadOnlyList<SurfaceConductor> conductors)
    {
        _borders = borders;
        _conductors = conductors;
        AddCorners();
        int corners = _nodes.Count;
        AddCornerLegs(corners);
        AddTangents(corners);
        AddConductorLegs(corners);
        AddConductorTangents();
        AddArcLegs();
    }

    internal IReadOnlyList<PossibleLeg> Legs => _legs;

    private int NodeAt(Point p)
    {
        _nodes.Add(p);
        return _nodes.Count - 1;
    }

    private void AddCorners()
    {
        foreach (SurfaceBorder border in _borders)
        {
            foreach (Contour contour in border.Region.Outline.Contours)
            {
                AddCorners(border, contour.Pieces);
            }
        }
    }

    private void AddCorners(SurfaceBorder border, IReadOnlyList<Piece> pieces)
    {
        int[] at = new int[pieces.Count];
        for (int i = 0; i < pieces.Count; i++)
        {
            Piece before = pieces[(i + pieces.Count - 1) % pieces.Count];
            at[i] = CanBendAt(border, before, pieces[i]) ? NodeAt(pieces[i].Start) : -1;
        }

        for (int i = 0; i < pieces.Count; i++)
        {
            if (pieces[i] is Arc arc)
            {
                int[] ends = [at[i], at[(i + 1) % pieces.Count]];
                _arcs.Add((arc, [.. ends.Where(n => n >= 0).Distinct()]));
            }
        }
    }

    /// <summary>A path bends only round what it must go round.</summary>
    private static bool CanBendAt(SurfaceBorder border, Piece before, Piece after)
    {
        double turn = before.TangentAt(1).Cross(after.TangentAt(0));
        return before is Arc
            || after is Arc
            || (border.BlocksOutside ? turn < SurfaceTolerances.FlatRad : turn > -SurfaceTolerances.FlatRad);
    }

    private void AddCornerLegs(int corners)
    {
        for (int i = 0; i < corners; i++)
        {
            for (int j = i + 1; j < corners; j++)
            {
                AddStraight(i, j, _nodes[i], _nodes[j]);
            }
        }
    }

    private void AddTangents(int corners)
    {
        for (int a = 0; a < _arcs.Count; a++)
        {
            Arc arc = _arcs[a].Arc;
            for (int i = 0; i < corners; i++)
            {
                foreach (Point touch in LegCandidates.TangentPoints(_nodes[i], arc.Centre, arc.RadiusMm))
                {
                    AddTouching(i, _nodes[i], a, touch);
                }
            }

            for (int b = a + 1; b < _arcs.Count; b++)
            {
                foreach ((Point first, Point second) in LegCandidates.Bitangents(arc, _arcs[b].Arc))
                {
                    if (BorderCuts.IsOnSpan(arc, first) && BorderCuts.IsOnSpan(_arcs[b].Arc, second))
                    {
                        AddStraight(NodeOn(a, first), NodeOn(b, second), first, second);
                    }
                }
            }
        }
    }

    private void AddConductorLegs(int corners)
    {
        for (int c = 0; c < _conductors.Count; c++)
        {
            for (int i = 0; i < corners; i++)
            {
                foreach (Point foot in LegCandidates.FeetFrom(_conductors[c], _nodes[i]))
                {
                    AddStraight(~c, i, foot, _nodes[i]);
                }
            }
        }
    }

    private void AddConductorTangents()
    {
        for (int c = 0; c < _conductors.Count; c++)
        {
            for (int a = 0; a < _arcs.Count; a++)
            {
                foreach ((Point from, Point touch) in LegCandidates.SquareTangents(_conductors[c], _arcs[a].Arc))
                {
                    AddTouching(~c, from, a, touch);
                }
            }
        }
    }

    private void AddTouching(int from, Point at, int arc, Point touch)
    {
        if (BorderCuts.IsOnSpan(_arcs[arc].Arc, touch))
        {
            AddStraight(from, NodeOn(arc, touch), at, touch);
        }
    }

    private int NodeOn(int arc, Point touch)
    {
        int node = NodeAt(touch);
        _arcs[arc].Nodes.Add(node);
        return node;
    }

    private void AddStraight(int from, int to, Point start, Point end)
    {
        bool apart = start.DistanceTo(end) > Tolerances.ShortestPieceMm;
        _legs.Add(new PossibleLeg(from, to, apart ? new Segment(start, end) : null));
    }

    /// <summary>Along each round border from node to node.</summary>
    private void AddArcLegs()
    {
        foreach ((Arc arc, List<int> nodes) in _arcs)
        {
            bool whole = Math.Abs(arc.SweepRad) == Angles.TurnRad;
            List<(double Ahead, int Node)> order = [.. nodes.Select(n => (AheadOf(arc, _nodes[n]), n))];
            order.Sort();
            for (int i = whole ? 0 : 1; i < order.Count; i++)
            {
                (double from, int first) = order[(i + order.Count - 1) % order.Count];
                (double to, int second) = order[i];
                double sweep = to - from + (i == 0 ? Angles.TurnRad : 0);
                if (first == second)
                {
                    continue;
                }

                if (sweep * arc.RadiusMm > Tolerances.ShortestPieceMm)
                {
                    double sense = Math.Sign(arc.SweepRad);
                    _legs.Add(new PossibleLeg(first, second, new Arc(arc.Centre, arc.RadiusMm, arc.StartRad + (sense * from), sense * sweep)));
                }
                else
                {
                    _legs.Add(new PossibleLeg(first, second, null));
                }
            }
        }
    }

    private static double AheadOf(Arc arc, Point p)
    {
        double ahead = BorderCuts.Ahead(arc, (p - arc.Centre).AngleRad);
        return ahead > Angles.TurnRad - SurfaceTolerances.ArcStartRad && Math.Abs(arc.SweepRad) < Angles.TurnRad ? 0 : Math.Min(ahead, Math.Abs(arc.SweepRad));
    }
}
