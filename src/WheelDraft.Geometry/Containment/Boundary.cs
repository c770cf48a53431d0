namespace WheelDraft.Geometry;

/// <summary>Closed contours prepared for many searches: their pieces in a tree of bounds.</summary>
/// <remarks>Long arcs are cut into parts, each still an exact arc, so that their bounds are small.</remarks>
internal sealed class Boundary
{
    private readonly List<Edge> _edges = [];
    private readonly BoundsTree _tree;

    internal Boundary(IEnumerable<Contour> contours)
    {
        Contour[] all = [.. contours];
        double longest = Parts.LongestMm([.. all.SelectMany(c => c.Pieces).Select(p => p.Bounds)]);
        for (int i = 0; i < all.Length; i++)
        {
            Add(all[i], i, longest);
        }

        _tree = new([.. _edges.Select(e => e.Part.Bounds)]);
    }

    internal IReadOnlyList<Edge> Edges => _edges;

    internal BoundsTree Tree => _tree;

    /// <summary>How often the contours go round a point, all together.</summary>
    internal int Winding(Point p)
    {
        if (_tree.All is not { } all || all.DistanceTo(p) > Tolerances.JoinMm)
        {
            return 0;
        }

        int winding = 0;
        Bounds ray = new(p.X - Tolerances.JoinMm, p.Y - Tolerances.JoinMm, double.PositiveInfinity, p.Y + Tolerances.JoinMm);
        foreach (int i in _tree.Overlapping(ray))
        {
            winding += Geometry.Winding.Of(_edges[i].Part, _edges[i].Start, _edges[i].End, p);
        }

        return winding;
    }

    /// <summary>How often each contour goes round a point, by its number; a contour without an edge to the right is not entered.</summary>
    internal void Windings(Point p, Dictionary<int, int> windings)
    {
        Bounds ray = new(p.X - Tolerances.JoinMm, p.Y - Tolerances.JoinMm, double.PositiveInfinity, p.Y + Tolerances.JoinMm);
        foreach (int i in _tree.Overlapping(ray))
        {
            int winding = Geometry.Winding.Of(_edges[i].Part, _edges[i].Start, _edges[i].End, p);
            if (winding != 0)
            {
                windings[_edges[i].Contour] = windings.GetValueOrDefault(_edges[i].Contour) + winding;
            }
        }
    }

    /// <summary>The nearest point of the contours (not of what they enclose).</summary>
    internal Nearest Nearest(Point p)
    {
        Nearest best = new(double.PositiveInfinity, p, p);
        BoundsTree.NearestSearch search = _tree.From(Bounds.Of(p), best.DistanceMm);
        while (search.Next(out int i))
        {
            Point on = _edges[i].Part.NearestTo(p);
            double distance = p.DistanceTo(on);
            if (distance < best.DistanceMm)
            {
                (best, search.LimitMm) = (new(distance, p, on), distance);
            }
        }

        return best;
    }

    /// <summary>The nearest points of two sets of contours (not of what they enclose).</summary>
    internal Nearest Nearest(Boundary other)
    {
        Nearest best = new(double.PositiveInfinity, default, default);
        BoundsTree.PairSearch search = _tree.Beside(other._tree, best.DistanceMm);
        while (search.Next(out int i, out int j))
        {
            Nearest found = PieceDistances.Between(_edges[i].Part, other._edges[j].Part);
            if (found.DistanceMm < best.DistanceMm)
            {
                (best, search.LimitMm) = (found, found.DistanceMm);
            }
        }

        return best;
    }

    private void Add(Contour contour, int number, double longestMm)
    {
        int begin = _edges.Count;
        for (int i = 0; i < contour.Pieces.Count; i++)
        {
            foreach (Piece part in Parts.Of(contour.Pieces[i], longestMm))
            {
                _edges.Add(new(part, number, i, part.Start, part.End));
            }
        }

        for (int i = begin; i < _edges.Count; i++)
        {
            _edges[i] = _edges[i] with { End = _edges[i + 1 < _edges.Count ? i + 1 : begin].Start };
        }
    }

    /// <summary>A piece of a contour or a part of it.</summary>
    /// <param name="Part">The exact part.</param>
    /// <param name="Contour">Number of the contour.</param>
    /// <param name="Piece">Number of the piece in it.</param>
    /// <param name="Start">Where it starts.</param>
    /// <param name="End">Where the next one starts.</param>
    internal readonly record struct Edge(Piece Part, int Contour, int Piece, Point Start, Point End);
}
