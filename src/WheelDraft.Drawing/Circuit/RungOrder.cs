namespace WheelDraft.Drawing;

/// <summary>The rungs of a wiring diagram from above, with the bars that join them and what the order costs.</summary>
/// <remarks>Only two neighbours ever change places. That moves an end of no bar but of those that one of the two meets, so that its cost is kept up with by looking
/// at what the two rungs carry, however many there are.</remarks>
internal sealed class RungOrder
{
    private readonly WiringGraph _graph;
    private readonly IReadOnlyList<int> _rank;
    private readonly List<WiringLink>[] _linksOf;
    private readonly int[][] _netsOf;
    private readonly int[] _loose;
    private readonly int[] _order;
    private readonly int[] _levelOf;
    private readonly (int Top, int Bottom)[] _spans;

    /// <summary>Rungs in the order of their numbers.</summary>
    /// <param name="graph">The circuit.</param>
    /// <param name="rank">Of each net, how far it stands from the line.</param>
    /// <param name="rungOf">Of each link, its rung; rungs are numbered from 0.</param>
    public RungOrder(WiringGraph graph, IReadOnlyList<int> rank, IReadOnlyList<int> rungOf)
    {
        (_graph, _rank) = (graph, rank);
        int rungs = rungOf.Count == 0 ? 0 : rungOf.Max() + 1;
        _order = [.. Enumerable.Range(0, rungs)];
        _levelOf = [.. _order];
        _linksOf = [.. _order.Select(_ => new List<WiringLink>())];
        _spans = new (int Top, int Bottom)[graph.Nets.Count];
        Array.Fill(_spans, (int.MaxValue, int.MinValue));
        for (int l = 0; l < rungOf.Count; l++)
        {
            WiringLink link = graph.Links[l];
            _linksOf[rungOf[l]].Add(link);
            foreach (int net in new[] { link.A, link.B })
            {
                _spans[net] = (Math.Min(_spans[net].Top, rungOf[l]), Math.Max(_spans[net].Bottom, rungOf[l]));
            }
        }

        _netsOf = [.. _linksOf.Select(links => links.SelectMany(l => new[] { l.A, l.B }).Distinct().ToArray())];
        _loose = [.. Enumerable.Range(0, _spans.Length).Where(n => _spans[n].Top > _spans[n].Bottom)];
        foreach (int net in _loose)
        {
            _spans[net] = (0, 0);
        }

        Cost = (graph.Links.Select((l, i) => Crossings(l, rungOf[i], Enumerable.Range(0, _spans.Length))).Sum(), _spans.Sum(s => s.Bottom - s.Top));
    }

    /// <summary>Rungs that pass a bar of a rank between their own, bars of one rank that must stand side by side; and lengths of bars, in rungs.</summary>
    public (int Crossings, int Length) Cost { get; private set; }

    /// <summary>How many rungs.</summary>
    public int Count => _order.Length;

    /// <summary>The place of a rung, from 0 above.</summary>
    public int LevelOf(int rung) => _levelOf[rung];

    /// <summary>The first and last place of a bar; (0, 0) for one that meets no rung.</summary>
    public (int Top, int Bottom) SpanOf(int net) => _spans[net];

    /// <summary>Moves a rung to the place where it costs least, the uppermost of equals; stays where nothing is less.</summary>
    public void MoveToBest(int rung)
    {
        int best = _levelOf[rung];
        (int Crossings, int Length) least = Cost;
        while (_levelOf[rung] > 0)
        {
            Swap(_levelOf[rung] - 1);
        }

        for (int at = 0; ; at++)
        {
            if (Cost.CompareTo(least) < 0)
            {
                (best, least) = (at, Cost);
            }

            if (at == _order.Length - 1)
            {
                break;
            }

            Swap(at);
        }

        while (_levelOf[rung] > best)
        {
            Swap(_levelOf[rung] - 1);
        }
    }

    // The rungs at a place and at the next change places.
    private void Swap(int upper)
    {
        (int first, int second) = (_order[upper], _order[upper + 1]);
        (int Crossings, int Length) before = CostOf(first, second);
        (_order[upper], _order[upper + 1]) = (second, first);
        (_levelOf[first], _levelOf[second]) = (upper + 1, upper);
        foreach (int net in _netsOf[first])
        {
            if (!_netsOf[second].Contains(net))
            {
                (int top, int bottom) = _spans[net];
                _spans[net] = (top == upper ? upper + 1 : top, bottom == upper ? upper + 1 : bottom);
            }
        }

        foreach (int net in _netsOf[second])
        {
            if (!_netsOf[first].Contains(net))
            {
                (int top, int bottom) = _spans[net];
                _spans[net] = (top == upper + 1 ? upper : top, bottom == upper + 1 ? upper : bottom);
            }
        }

        (int Crossings, int Length) after = CostOf(first, second);
        Cost = (Cost.Crossings + after.Crossings - before.Crossings, Cost.Length + after.Length - before.Length);
    }

    // Of the bars and links of two neighbours: no other bar ends at either, so that it passes both or neither.
    private (int Crossings, int Length) CostOf(int first, int second)
    {
        int[] nets = [.. _netsOf[first].Union(_netsOf[second]).Union(_loose)];
        int crossings = 0;
        foreach (int rung in new[] { first, second })
        {
            foreach (WiringLink link in _linksOf[rung])
            {
                crossings += Crossings(link, _levelOf[rung], nets);
            }
        }

        return (crossings, nets.Sum(n => _spans[n].Bottom - _spans[n].Top));
    }

    private int Crossings(WiringLink link, int level, IEnumerable<int> nets)
    {
        int low = Math.Min(_rank[link.A], _rank[link.B]);
        int high = Math.Max(_rank[link.A], _rank[link.B]);
        return nets.Count(n => n != link.A && n != link.B && _rank[n] >= low && _rank[n] <= high && _spans[n].Top <= level && _spans[n].Bottom >= level);
    }
}
