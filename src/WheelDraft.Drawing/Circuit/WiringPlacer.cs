namespace WheelDraft.Drawing;

/// <summary>Gives nets their columns and links their rungs.</summary>
internal sealed class WiringPlacer
{
    /// <summary>Room for a symbol of 12 mm, its leads and a line of lettering of 2.5 mm of some twenty characters, mm.</summary>
    public const double UsualColumnMm = 40;

    /// <summary>From net to net, mm.</summary>
    public double ColumnMm { get; init; } = UsualColumnMm;

    // A symbol, one line above it and one below.
    private const double RungMm = 16;

    // Between bars of one rank that stand side by side.
    private const double SideBySideMm = 8;

    // Passes of the local search; each stops early when nothing improves. Small diagrams settle in two or three.
    private const int MostPasses = 8;

    private readonly WiringGraph _graph;
    private readonly int[] _rank;
    private readonly int[] _rungOf;
    private readonly RungOrder _order;
    private int _rungs;
    private double[] _x = [];

    /// <summary>For one circuit.</summary>
    public WiringPlacer(WiringGraph graph)
    {
        _graph = graph;
        _rank = Ranks();
        _rungOf = new int[graph.Links.Count];
        AssignRungs();
        _order = new(graph, _rank, _rungOf);
    }

    /// <summary>The finished layout.</summary>
    public WiringLayout Place()
    {
        Improve();
        _x = Columns();
        List<WiringBar> bars = [];
        for (int n = 0; n < _graph.Nets.Count; n++)
        {
            (int top, int bottom) = Span(n);
            bars.Add(new WiringBar(_graph.Nets[n], n == _graph.Wheel, _x[n], top * RungMm, bottom * RungMm));
        }

        return new WiringLayout(bars, [.. _graph.Links.Select(Symbol)]);
    }

    private WiringSymbol Symbol(WiringLink link, int index)
    {
        (int left, int right) = _x[link.A] <= _x[link.B] ? (link.A, link.B) : (link.B, link.A);

        int level = _order.LevelOf(_rungOf[index]);
        return new WiringSymbol(link.Kind, link.Name, link.Words, level * RungMm, _x[left], _x[right], MiddleOfWidestGap(left, right, level))
        {
            LeftBar = left,
            RightBar = right,
            Designation = link.Designation,
            IsAlways = link.IsAlways,
        };
    }

    // The symbol stands where the rung is free of bars for longest; of equal stretches, in the last.
    private double MiddleOfWidestGap(int left, int right, int level)
    {
        List<double> stops = [.. Enumerable.Range(0, _x.Length)
            .Where(n => n == left || n == right || (Span(n).Top <= level && Span(n).Bottom >= level && _x[n] > _x[left] && _x[n] < _x[right]))
            .Select(n => _x[n])
            .Order()];
        (double Width, double Middle) widest = default;
        for (int i = 1; i < stops.Count; i++)
        {
            double width = stops[i] - stops[i - 1];
            widest = width >= widest.Width ? (width, (stops[i] + stops[i - 1]) / 2) : widest;
        }

        return widest.Middle;
    }

    // Steps from line; neutral stands right of everything else, earth right of neutral.
    private int[] Ranks()
    {
        int[] rank = new int[_graph.Nets.Count];
        Array.Fill(rank, -1);
        rank[0] = 0;
        Queue<int> open = new([0]);
        while (open.TryDequeue(out int net))
        {
            foreach (WiringLink link in _graph.Links.Where(l => l.A == net || l.B == net))
            {
                int other = link.Other(net);
                if (other != 1 && rank[other] < 0)
                {
                    rank[other] = rank[net] + 1;
                    open.Enqueue(other);
                }
            }
        }

        for (int n = 2; n < rank.Length; n++)
        {
            rank[n] = rank[n] < 0 ? 1 : rank[n];
        }

        rank[1] = rank.Max() + 1;
        for (int n = 2; n < rank.Length; n++)
        {
            rank[n] = _graph.Nets[n] is "E" ? rank[1] + 1 : rank[n];
        }

        return rank;
    }

    // From line outward: the first way on keeps to the rung, every other one opens its own below.
    private void AssignRungs()
    {
        Array.Fill(_rungOf, -1);
        Follow(0, -1);
        for (int l = 0; l < _rungOf.Length; l++)
        {
            if (_rungOf[l] < 0)
            {
                Follow(_graph.Links[l].A, -1);
            }
        }
    }

    private void Follow(int net, int rung)
    {
        for (int l = 0; l < _graph.Links.Count; l++)
        {
            WiringLink link = _graph.Links[l];
            if (_rungOf[l] >= 0 || (link.A != net && link.B != net))
            {
                continue;
            }

            int other = link.Other(net);
            bool onward = rung >= 0 && _rank[other] > _rank[net];
            _rungOf[l] = onward ? rung : OpenRung();
            int next = _rungOf[l];
            rung = onward ? -1 : rung;
            if (other > 1)
            {
                Follow(other, _rank[other] > _rank[net] ? next : -1);
            }
        }
    }

    private int OpenRung() => _rungs++;

    private void Improve()
    {
        for (int pass = 0; pass < MostPasses && _order.Cost != default; pass++)
        {
            (int Crossings, int Length) before = _order.Cost;
            for (int rung = 0; rung < _order.Count; rung++)
            {
                _order.MoveToBest(rung);
            }

            if (_order.Cost == before)
            {
                return;
            }
        }
    }

    private (int Top, int Bottom) Span(int net) => _order.SpanOf(net);

    // Nets of one rank share a column where their bars do not meet and no link joins them.
    private double[] Columns()
    {
        double[] x = new double[_graph.Nets.Count];
        double column = 0;
        foreach (IGrouping<int, int> rank in Enumerable.Range(0, x.Length).GroupBy(n => _rank[n]).OrderBy(g => g.Key))
        {
            List<List<int>> tracks = [];
            foreach (int net in rank.OrderBy(n => Span(n).Top).ThenBy(n => n))
            {
                int track = tracks.FindIndex(t => !t.Exists(other => Meet(net, other)));
                if (track < 0)
                {
                    track = tracks.Count;
                    tracks.Add([]);
                }

                tracks[track].Add(net);
                x[net] = column + (track * (Joined(rank) ? ColumnMm : SideBySideMm));
            }

            column = rank.Max(n => x[n]) + ColumnMm;
        }

        return x;
    }

    private bool Meet(int a, int b)
    {
        ((int topA, int bottomA), (int topB, int bottomB)) = (Span(a), Span(b));
        return (topA <= bottomB && topB <= bottomA) || _graph.Links.Any(l => (l.A == a && l.B == b) || (l.A == b && l.B == a));
    }

    private bool Joined(IEnumerable<int> nets) => _graph.Links.Any(l => nets.Contains(l.A) && nets.Contains(l.B));
}
