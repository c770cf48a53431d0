using System.Collections.Immutable;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Measuring;

/// <summary>The shortest string between two solids over and round ribs, every order tightened as soon as it is thought of: the way it was
/// done before orders waited, kept as an oracle.</summary>
/// <remarks>A shortest string bends over edges of what is in its way; for a given order of edges its length is convex in the places where
/// it bends, and turning each bend about its edge tightens it (M. Sharir and A. Schorr, On shortest paths in polyhedral spaces, SIAM
/// J. Computing 15, 1986). Orders are tried by increasing length, each a sub-order of a longer one and so no longer than it: the first
/// string that nothing blocks is the shortest. Where two bends meet each string is loosened too, in thinner steps and with more rounds than is usual.</remarks>
internal sealed class EagerString(StringEnd from, StringEnd to, IReadOnlyList<RibBox> boxes)
{
    /// <summary>Orders tried before a string is given as a lower bound only.</summary>
    /// <remarks>Two ribs one behind the other need some hundreds; beyond this the length already found is reported, which is
    /// on the safe side.</remarks>
    private const int MostOrders = 3000;

    /// <summary>Rounds of tightening, and the change of length at which they end, mm.</summary>
    private const int MostRounds = 2000;
    private const double TightMm = 1e-11;

    private readonly PriorityQueue<EdgeOrder, (double LengthMm, int Number)> _open = new();
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly IReadOnlyList<IReadOnlyList<StringEdge>> _edges = [.. boxes.Select(b => b.Edges)];

    /// <summary>Pulls it tight.</summary>
    /// <param name="reachMm">A string longer than this is of no interest: what is returned is then no longer than the true one.</param>
    internal PulledString Pull(double reachMm = double.PositiveInfinity)
    {
        Try([]);
        while (_open.TryDequeue(out EdgeOrder? order, out (double LengthMm, int Number) at))
        {
            int blocking = Blocking(order.Places);
            if (blocking < 0 || at.LengthMm > reachMm || _seen.Count > MostOrders)
            {
                return new PulledString(at.LengthMm, order.Places);
            }

            for (int position = 0; position <= order.Edges.Count; position++)
            {
                for (int e = 0; e < _edges[blocking].Count; e++)
                {
                    Try(order.Edges.Insert(position, (blocking, e)));
                }
            }
        }

        throw new InvalidOperationException("No string between two solids: ribs are finite, so one can always be pulled.");
    }

    private void Try(ImmutableList<(int Box, int Edge)> edges)
    {
        if (edges.Distinct().Count() == edges.Count && _seen.Add(string.Join(';', edges)))
        {
            SpacePoint[] places = Tighten(edges);
            double length = LengthOf(places);
            _open.Enqueue(new EdgeOrder(edges, places), (length, _seen.Count));
        }
    }

    private SpacePoint[] Tighten(ImmutableList<(int Box, int Edge)> edges)
    {
        SpacePoint[] held = Begin(edges);
        Tighten(edges, held, MostRounds, 0);
        if (edges.Count == 0 || !held.Zip(held.Skip(1)).Any(leg => leg.First.DistanceTo(leg.Second) < 1e-5))
        {
            return held;
        }

        SpacePoint[] loose = [.. held];
        for (double thick = 0.5; thick > 1e-6; thick /= 2)
        {
            Tighten(edges, loose, 60, thick);
        }

        Tighten(edges, loose, MostRounds, 0);
        return LengthOf(loose) < LengthOf(held) ? loose : held;
    }

    private void Tighten(ImmutableList<(int Box, int Edge)> edges, SpacePoint[] places, int rounds, double thick)
    {
        double length = double.PositiveInfinity;
        for (int round = 0; round < rounds; round++)
        {
            places[0] = from.Nearest(places[1]);
            for (int i = 0; i < edges.Count; i++)
            {
                places[i + 1] = _edges[edges[i].Box][edges[i].Edge].Tightest(places[i], places[i + 2], thick);
            }

            places[^1] = to.Nearest(places[^2]);
            double tighter = LengthOf(places);
            if (thick == 0 && length - tighter < TightMm)
            {
                break;
            }

            length = tighter;
        }
    }

    private SpacePoint[] Begin(ImmutableList<(int Box, int Edge)> edges)
    {
        Nearest plan = Distances.Between(from.Outline, to.Outline);
        SpacePoint[] places = new SpacePoint[edges.Count + 2];
        double z = Math.Clamp((Math.Max(from.FromZMm, to.FromZMm) + Math.Min(from.ToZMm, to.ToZMm)) / 2, from.FromZMm, from.ToZMm);
        places[0] = SpacePoint.At(plan.OnFirst, z);
        places[^1] = SpacePoint.At(plan.OnSecond, Math.Clamp(z, to.FromZMm, to.ToZMm));
        for (int i = 0; i < edges.Count; i++)
        {
            places[i + 1] = _edges[edges[i].Box][edges[i].Edge].Tightest(places[i], places[^1]);
        }

        return places;
    }

    private int Blocking(SpacePoint[] places)
    {
        for (int i = 1; i < places.Length; i++)
        {
            for (int box = 0; box < boxes.Count; box++)
            {
                if (boxes[box].Blocks(places[i - 1], places[i]))
                {
                    return box;
                }
            }
        }

        return -1;
    }

    private static double LengthOf(SpacePoint[] places)
    {
        double length = 0;
        for (int i = 1; i < places.Length; i++)
        {
            length += places[i - 1].DistanceTo(places[i]);
        }

        return length;
    }

    private sealed record EdgeOrder(ImmutableList<(int Box, int Edge)> Edges, SpacePoint[] Places);
}
