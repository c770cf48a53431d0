namespace WheelDraft.Geometry;

/// <summary>Strands tied together at their ends, and the closed paths that they form.</summary>
internal sealed class StrandGraph
{
    /// <summary>Ends this near are one knot, mm.</summary>
    /// <remarks>As contours join: a shallow crossing found from two pairs of pieces differs by far less, and a knot
    /// moved by as much is still a sound joint.</remarks>
    internal const double NodeMm = Tolerances.JoinMm;

    private readonly IReadOnlyList<RawPiece> _raw;
    private readonly List<Strand> _strands = [];
    private readonly List<Point> _knots = [];
    private readonly Dictionary<(long, long), List<int>> _cells = [];
    private readonly List<int> _start = [];
    private readonly List<int> _end = [];
    private readonly List<int>[] _leaving;
    private readonly bool[] _gone;

    internal StrandGraph(IReadOnlyList<RawPiece> raw, IReadOnlyList<Strand> strands)
    {
        _raw = raw;
        foreach (Strand strand in strands)
        {
            Piece piece = raw[strand.Raw].Piece;
            if ((strand.To - strand.From) * piece.Length > NodeMm)
            {
                _strands.Add(strand);
                _start.Add(Knot(piece.PointAt(strand.From)));
                _end.Add(Knot(piece.PointAt(strand.To)));
            }
        }

        _gone = new bool[_strands.Count];
        _leaving = [.. _knots.Select(_ => new List<int>())];
        for (int i = 0; i < _strands.Count; i++)
        {
            _leaving[_start[i]].Add(i);
        }

        DropDoubles();
        DropLooseEnds();
    }

    /// <summary>All closed paths, each strand in one of them.</summary>
    /// <exception cref="InvalidOperationException">A path does not close.</exception>
    internal IEnumerable<OffsetLoop> Loops()
    {
        for (int first = 0; first < _strands.Count; first++)
        {
            if (!_gone[first])
            {
                List<int> path = [first];
                _gone[first] = true;
                while (_end[path[^1]] != _start[first])
                {
                    int next = Next(path[^1]);
                    _gone[next] = true;
                    path.Add(next);
                }

                yield return Loop(path);
            }
        }
    }

    private int Knot(Point at)
    {
        long column = (long)Math.Floor(at.X / NodeMm);
        long row = (long)Math.Floor(at.Y / NodeMm);
        for (long x = column - 1; x <= column + 1; x++)
        {
            for (long y = row - 1; y <= row + 1; y++)
            {
                if (_cells.TryGetValue((x, y), out List<int>? known))
                {
                    foreach (int knot in known)
                    {
                        if (_knots[knot].DistanceTo(at) <= NodeMm)
                        {
                            return knot;
                        }
                    }
                }
            }
        }

        _knots.Add(at);
        if (!_cells.TryGetValue((column, row), out List<int>? cell))
        {
            _cells[(column, row)] = cell = [];
        }

        cell.Add(_knots.Count - 1);
        return _knots.Count - 1;
    }

    /// <summary>Coincident strands: one of two that run the same way, none of two that run opposite ways, because there the two
    /// sides of a gap meet and nothing is left between them.</summary>
    private void DropDoubles()
    {
        for (int i = 0; i < _strands.Count; i++)
        {
            Point middle = Middle(i);
            foreach (int j in _leaving[_start[i]])
            {
                if (j > i && !_gone[i] && !_gone[j] && _end[j] == _end[i] && Middle(j).DistanceTo(middle) <= NodeMm)
                {
                    _gone[j] = true;
                }
            }

            foreach (int j in _leaving[_end[i]])
            {
                if (j > i && !_gone[i] && !_gone[j] && _end[j] == _start[i] && Middle(j).DistanceTo(middle) <= NodeMm)
                {
                    _gone[i] = true;
                    _gone[j] = true;
                }
            }
        }
    }

    /// <summary>Strands that lead nowhere: stubs past a crossing so shallow that they keep the distance within tolerance.</summary>
    private void DropLooseEnds()
    {
        int[] into = new int[_knots.Count];
        int[] outOf = new int[_knots.Count];
        for (int i = 0; i < _strands.Count; i++)
        {
            if (!_gone[i])
            {
                outOf[_start[i]]++;
                into[_end[i]]++;
            }
        }

        bool dropped = true;
        while (dropped)
        {
            dropped = false;
            for (int i = 0; i < _strands.Count; i++)
            {
                if (!_gone[i] && (into[_start[i]] == 0 || outOf[_end[i]] == 0))
                {
                    _gone[i] = true;
                    outOf[_start[i]]--;
                    into[_end[i]]--;
                    dropped = true;
                }
            }
        }
    }

    /// <summary>The strand that goes on: straight on where edges graze each other, else the sharpest to the left, so that
    /// shapes that touch in a corner stay apart.</summary>
    private int Next(int strand)
    {
        const double straightRad = 1e-6;
        Vector arriving = Tangent(strand, atEnd: true);
        int best = -1;
        double most = double.NegativeInfinity;
        foreach (int next in _leaving[_end[strand]])
        {
            if (!_gone[next])
            {
                Vector leaving = Tangent(next, atEnd: false);
                double turn = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
                double rank = Math.Abs(turn) < straightRad ? Math.PI : Math.Abs(turn) > Math.PI - straightRad ? -Math.PI : turn;
                if (rank > most)
                {
                    most = rank;
                    best = next;
                }
            }
        }

        return best >= 0
            ? best
            : throw new InvalidOperationException($"The offset does not close at {_knots[_end[strand]]}: the contours of the source cross.");
    }

    private OffsetLoop Loop(List<int> path)
    {
        // Start where one raw piece changes to the next, so that none is cut at an arbitrary place.
        int turn = 0;
        while (turn < path.Count && Continues(path[(turn + path.Count - 1) % path.Count], path[turn]))
        {
            turn++;
        }

        List<Piece> pieces = [];
        List<RawPiece> from = [];
        int i = 0;
        while (i < path.Count)
        {
            int first = path[(turn + i) % path.Count];
            int last = first;
            double to = _strands[first].To;
            for (i++; i < path.Count && Continues(last, path[(turn + i) % path.Count]); i++)
            {
                last = path[(turn + i) % path.Count];
                to += _strands[last].To - _strands[last].From;
            }

            RawPiece raw = _raw[_strands[first].Raw];
            from.Add(raw);
            pieces.Add(Cut(raw.Piece, _strands[first].From, to, _knots[_start[first]], _knots[_end[last]]));
        }

        return new(new Contour(pieces), from);
    }

    private bool Continues(int before, int after)
    {
        Strand a = _strands[before];
        Strand b = _strands[after];
        Piece piece = _raw[a.Raw].Piece;
        return a.Raw == b.Raw && (a.To == b.From || (a.To == 1 && b.From == 0 && piece.Start == piece.End));
    }

    private static Piece Cut(Piece piece, double from, double to, Point start, Point end)
    {
        if (piece is Arc arc)
        {
            Arc cut = new(arc.Centre, arc.RadiusMm, arc.StartRad + (from * arc.SweepRad), (to - from) * arc.SweepRad);
            return cut.Between(start, end);
        }

        return new Segment(start, end);
    }

    private Point Middle(int strand) => _raw[_strands[strand].Raw].Piece.PointAt((_strands[strand].From + _strands[strand].To) / 2);

    private Vector Tangent(int strand, bool atEnd) =>
        _raw[_strands[strand].Raw].Piece.TangentAt(atEnd ? _strands[strand].To : _strands[strand].From);
}
