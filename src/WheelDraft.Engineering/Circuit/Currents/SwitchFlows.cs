using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>Currents through closed switches without resistance, from the currents that loads draw at their nodes.</summary>
/// <remarks>A switch that alone joins two parts of the network (a bridge of the graph) carries exactly what the part without a source
/// draws. Nothing decides how a current divides over switches in a ring, such as two contacts side by side: each gets
/// the most that can flow through it. That bound: seen from any one node of the ring as reference, resistances of whatever
/// size share out the current that enters at another node so that no switch gets more than all of it; so the currents that
/// enter, without the largest, added by size. Bridges by depth-first search (R. E. Tarjan, 1974).</remarks>
internal sealed class SwitchFlows
{
    private readonly int _nodes;
    private readonly List<(int A, int B)> _edges = [];
    private readonly List<int>[] _at;
    private readonly int[] _seen;
    private readonly int[] _low;
    private readonly int[] _via;
    private readonly int[] _parent;
    private readonly int[] _ring;
    private readonly Complex[] _drawn;
    private readonly Complex[] _enters;
    private readonly Complex[] _back;
    private readonly double[] _sum;
    private readonly double[] _most;
    private readonly List<int> _order = [];

    /// <summary>A work space for networks of the given number of nodes.</summary>
    public SwitchFlows(int nodes)
    {
        _nodes = nodes;
        _at = [.. Enumerable.Range(0, nodes).Select(_ => new List<int>())];
        (_seen, _low, _via, _parent, _ring) = (new int[nodes], new int[nodes], new int[nodes], new int[nodes], new int[nodes]);
        (_drawn, _enters, _back) = (new Complex[nodes], new Complex[nodes], new Complex[nodes]);
        (_sum, _most) = (new double[nodes], new double[nodes]);
    }

    /// <summary>Begins a network without switches.</summary>
    public void Clear()
    {
        _edges.Clear();
        foreach (List<int> edges in _at)
        {
            edges.Clear();
        }
    }

    /// <summary>Adds a closed switch; its index.</summary>
    public int Add(int a, int b)
    {
        _edges.Add((a, b));
        _at[a].Add(_edges.Count - 1);
        _at[b].Add(_edges.Count - 1);
        return _edges.Count - 1;
    }

    /// <summary>Number of switches.</summary>
    public int Count => _edges.Count;

    /// <summary>The nodes that a switch joins.</summary>
    public (int A, int B) Ends(int edge) => _edges[edge];

    /// <summary>Finds the flows.</summary>
    /// <param name="drawn">What loads draw from each node.</param>
    /// <param name="sources">Nodes that the supply holds; no two of them joined.</param>
    public void Solve(ReadOnlySpan<Complex> drawn, IReadOnlyList<int> sources)
    {
        drawn.CopyTo(_drawn);
        Array.Fill(_seen, -1);
        _order.Clear();
        foreach (int source in sources)
        {
            Visit(source, -1);
        }

        for (int n = 0; n < _nodes; n++)
        {
            Visit(n, -1);
        }

        // From the leaves inward: all that is drawn beyond each node.
        for (int i = _order.Count - 1; i >= 0; i--)
        {
            int node = _order[i];
            if (_via[node] >= 0)
            {
                _drawn[_parent[node]] += _drawn[node];
            }
        }

        FindRings(drawn);
    }

    /// <summary>R.m.s. current through a switch, A: exact, or the most it can be where <see cref="IsShared"/>.</summary>
    public double CurrentA(int edge)
    {
        int below = Below(edge);
        if (below >= 0 && IsBridge(below))
        {
            return Complex.Abs(_drawn[below]);
        }

        (int a, int b) = _edges[edge];
        int ring = _ring[a];
        return a == b ? 0 : Math.Max(0, _sum[ring] + Complex.Abs(_back[ring]) - Math.Max(_most[ring], Complex.Abs(_back[ring])));
    }

    /// <summary>Whether a switch lies in a ring of closed ones, so that nothing decides what of the current flows through it.</summary>
    public bool IsShared(int edge) => _edges[edge].A != _edges[edge].B && !(Below(edge) is >= 0 and int below && IsBridge(below));

    /// <summary>What the supply gives at a source's node, A.</summary>
    public double SuppliedA(int source) => Complex.Abs(_drawn[source]);

    /// <summary>The nodes behind a switch, seen from the source; of one in a ring, every node joined to it.</summary>
    public IEnumerable<int> Behind(int edge)
    {
        int top = Below(edge);
        if (top < 0 || !IsBridge(top))
        {
            top = _edges[edge].A;
            while (_via[top] >= 0)
            {
                top = _parent[top];
            }
        }

        return Enumerable.Range(0, _nodes).Where(n => Above(n).Contains(top));
    }

    private IEnumerable<int> Above(int node)
    {
        for (; _via[node] >= 0; node = _parent[node])
        {
            yield return node;
        }

        yield return node;
    }

    private void Visit(int node, int via)
    {
        if (_seen[node] >= 0)
        {
            return;
        }

        _seen[node] = _low[node] = _order.Count;
        _via[node] = via;
        _parent[node] = via < 0 ? node : Other(via, node);
        _order.Add(node);
        foreach (int edge in _at[node])
        {
            int next = Other(edge, node);
            if (edge == via)
            {
                continue;
            }

            if (_seen[next] < 0)
            {
                Visit(next, edge);
                _low[node] = Math.Min(_low[node], _low[next]);
            }
            else
            {
                _low[node] = Math.Min(_low[node], _seen[next]);
            }
        }
    }

    private int Other(int edge, int node) => _edges[edge].A == node ? _edges[edge].B : _edges[edge].A;

    // The node that the search found through an edge, or −1 for an edge that closes a ring.
    private int Below(int edge) => _via[_edges[edge].A] == edge ? _edges[edge].A : _via[_edges[edge].B] == edge ? _edges[edge].B : -1;

    private bool IsBridge(int below) => _low[below] == _seen[below];

    // A ring's head is its node nearest the source; what enters there is all that the others take.
    private void FindRings(ReadOnlySpan<Complex> drawn)
    {
        for (int n = 0; n < _nodes; n++)
        {
            (_enters[n], _back[n], _sum[n], _most[n]) = (drawn[n], Complex.Zero, 0, 0);
        }

        foreach (int node in _order)
        {
            bool begins = _via[node] < 0 || IsBridge(node);
            _ring[node] = begins ? node : _ring[_parent[node]];
            if (begins && _via[node] >= 0)
            {
                _enters[_parent[node]] += _drawn[node];
            }
        }

        foreach (int node in _order.Where(n => _ring[n] != n))
        {
            int ring = _ring[node];
            double size = Complex.Abs(_enters[node]);
            _back[ring] -= _enters[node];
            _sum[ring] += size;
            _most[ring] = Math.Max(_most[ring], size);
        }
    }
}
