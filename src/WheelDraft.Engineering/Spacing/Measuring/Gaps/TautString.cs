using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A string pulled tight.</summary>
/// <param name="LengthMm">Its length, mm; where the search was cut short a length that it does not undercut.</param>
/// <param name="Bends">Where it ends and bends, in order; two places for a straight line.</param>
internal sealed record PulledString(double LengthMm, IReadOnlyList<SpacePoint> Bends);

/// <summary>The shortest string between two solids over and round ribs.</summary>
/// <remarks><para>A shortest string bends over edges of what is in its way; for a given order of edges its length is convex in the places where
/// it bends, and turning each bend about its edge tightens it (M. Sharir and A. Schorr, On shortest paths in polyhedral spaces, SIAM
/// J. Computing 15, 1986). Orders are tried by increasing length, each a sub-order of a longer one and so no longer than it: the first
/// string that nothing blocks is the shortest.</para>
/// <para>Most orders are never tightened: they wait by a length that they cannot undercut, first by what is apart from what (<see cref="StringReach"/>), then after
/// a few rounds by how much there is still to gain (<see cref="StringBound"/>), until nothing shorter is left.</para></remarks>
internal sealed class TautString(StringEnd from, StringEnd to, IReadOnlyList<RibBox> boxes)
{
    /// <summary>Orders tried before a string is given as a lower bound only.</summary>
    /// <remarks>Two ribs one behind the other need some hundreds; beyond this the length already found is reported, which is
    /// on the safe side.</remarks>
    private const int MostOrders = 3000;

    /// <summary>Rounds of tightening, and the change of length at which they end, mm.</summary>
    private const int MostRounds = 2000;

    /// <summary>Rounds after which an order waits again; then three times as many, and so on.</summary>
    /// <remarks>Only time depends on it.</remarks>
    private const int FirstRounds = 4;

    private const double TightMm = 1e-11;

    /// <summary>Rounds between two looks ahead.</summary>
    /// <remarks>Only time depends on it.</remarks>
    private const int RoundsBetween = 4;

    /// <summary>How thick a string is that is loosened, mm, at first and at last, and rounds of each thickness.</summary>
    private const double ThickestMm = 0.3;

    private const double ThinnestMm = 1e-5;

    private const int RoundsOfAThickness = 16;

    private readonly PriorityQueue<EdgeOrder, (double LengthMm, int Number)> _open = new();
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly StringReach _reach = new(from, to, boxes);
    private Nearest? _plan;

    /// <summary>Pulls it tight.</summary>
    /// <param name="reachMm">A string longer than this is of no interest: what is returned is then no longer than the true one.</param>
    internal PulledString Pull(double reachMm = double.PositiveInfinity)
    {
        Try([]);
        while (_open.TryDequeue(out EdgeOrder? order, out (double LengthMm, int Number) at))
        {
            if (!order.IsTight)
            {
                EdgeOrder tighter = order.IsHeld ? Loosened(order) : Tightened(order);
                double length = LengthOf(tighter.Places!);
                _open.Enqueue(tighter, (tighter.IsTight ? length : Math.Max(at.LengthMm, LeastMm(length, tighter)), at.Number));
                continue;
            }

            SpacePoint[] places = order.Places!;
            int blocking = Blocking(places);
            if (blocking < 0 || at.LengthMm > reachMm || _seen.Count > MostOrders)
            {
                return new PulledString(at.LengthMm, places);
            }

            for (int position = 0; position <= order.Edges.Length; position++)
            {
                for (int e = 0; e < RibBox.EdgeCount; e++)
                {
                    Try([.. order.Edges.AsSpan(0, position), StringReach.NumberOf(blocking, e), .. order.Edges.AsSpan(position)]);
                }
            }
        }

        throw new InvalidOperationException("No string between two solids: ribs are finite, so one can always be pulled.");
    }

    private void Try(int[] edges)
    {
        if (IsTwice(edges) || !_seen.Add(Key(edges)))
        {
            return;
        }

        _open.Enqueue(new EdgeOrder(edges, null, 0), (_reach.LeastMm(edges), _seen.Count));
    }

    private static bool IsTwice(int[] edges)
    {
        for (int i = 1; i < edges.Length; i++)
        {
            if (edges.AsSpan(0, i).Contains(edges[i]))
            {
                return true;
            }
        }

        return false;
    }

    private static string Key(int[] edges) => string.Create(edges.Length, edges, static (text, all) =>
    {
        for (int i = 0; i < all.Length; i++)
        {
            text[i] = (char)all[i];
        }
    });

    /// <summary>No string over these edges is shorter, mm.</summary>
    private double LeastMm(double length, EdgeOrder order) =>
        StringBound.LeastMm(length, order.Places!, (from, to), i => _reach[order.Edges[i - 1]]) - StringReach.OffMm;

    /// <summary>An order tightened by some more rounds.</summary>
    private EdgeOrder Tightened(EdgeOrder order)
    {
        SpacePoint[] places = order.Places ?? Begin(order.Edges);
        int rounds = Math.Min(order.Rounds == 0 ? FirstRounds : 3 * order.Rounds, MostRounds);
        bool isTight = Tighten(order.Edges, places, rounds - order.Rounds) || rounds == MostRounds, isHeld = isTight && MayBeHeld(order.Edges, places);
        return order with { Places = places, Rounds = rounds, IsTight = isTight && !isHeld, IsHeld = isHeld };
    }

    /// <summary>Whether places of a string may hold each other: two are one, and neither can be turned by itself, be the string tight or not.</summary>
    private bool MayBeHeld(int[] edges, SpacePoint[] places)
    {
        for (int i = 0; i <= edges.Length && edges.Length > 0; i++)
        {
            if (AreTogether(i, i + 1) && !IsTightPair(i))
            {
                return true;
            }
        }

        return false;

        bool AreTogether(int a, int b) => places[a].DistanceTo(places[b]) < HeldPair.TogetherMm;

        // Of two bends alone in a corner that their edges share it is known; of more, and of a bend where the string ends, it is not asked.
        bool IsTightPair(int i) => i > 0 && i < edges.Length && !AreTogether(i - 1, i) && !AreTogether(i + 1, i + 2)
            && HeldPair.IsTight((places[i - 1], places[i], places[i + 2]), _reach[edges[i - 1]], _reach[edges[i]]);
    }

    /// <summary>A string whose places hold each other, tightened once more from where a thick one lies.</summary>
    /// <remarks>A string that is thick at its bends, √(d² + t²) long where two are d apart, is no longer held anywhere: its length has no kinks. With t falling to nothing it comes to lie where
    /// the thin one is shortest (a smoothed function in place of one with kinks: Yu. Nesterov, Smooth minimization of non-smooth functions, Mathematical Programming 103, 2005).</remarks>
    private EdgeOrder Loosened(EdgeOrder order)
    {
        SpacePoint[] held = order.Places!, loose = [.. held];
        for (double thick = ThickestMm; thick > ThinnestMm; thick /= 6)
        {
            Tighten(order.Edges, loose, RoundsOfAThickness, thick);
        }

        Tighten(order.Edges, loose, MostRounds);
        return order with { Places = LengthOf(loose) < LengthOf(held) ? loose : held, IsTight = true };
    }

    /// <summary>Tightens a string; false when it is not tight after that many rounds.</summary>
    /// <remarks>Rounds shorten it ever less, by about the same share of what is left each time: now and then the places are moved as far ahead as such rounds would
    /// lead in the end (A. C. Aitken, On Bernoulli's numerical solution of algebraic equations, Proceedings of the Royal Society of Edinburgh 46, 1926), where that is
    /// shorter. It ends only when a round of its own gains nothing.</remarks>
    private bool Tighten(int[] edges, SpacePoint[] places, int rounds, double thickMm = 0)
    {
        double length = LengthOf(places, thickMm), gained = 0;
        SpacePoint[] before = new SpacePoint[places.Length], ahead = new SpacePoint[places.Length];
        for (int round = 1; round <= rounds; round++)
        {
            places.CopyTo(before, 0);
            places[0] = from.Nearest(places[1]);
            for (int i = 0; i < edges.Length; i++)
            {
                places[i + 1] = _reach[edges[i]].Tightest(places[i], places[i + 2], thickMm);
            }

            places[^1] = to.Nearest(places[^2]);
            double tighter = LengthOf(places, thickMm), gain = length - tighter;
            if (gain < TightMm)
            {
                return true;
            }

            length = tighter;
            if (round % RoundsBetween == 0 && gain < gained && AreAhead(edges, (before, places, ahead), Math.Sqrt(gain / gained)) && LengthOf(ahead, thickMm) < length)
            {
                ahead.CopyTo(places, 0);
                length = LengthOf(places, thickMm);
            }

            gained = gain;
        }

        return false;
    }

    /// <summary>Moves the places of a string as far ahead as rounds that each move them by the same share of the one before would; false where one would come to an end of its edge.</summary>
    private bool AreAhead(int[] edges, (SpacePoint[] Before, SpacePoint[] Now, SpacePoint[] Ahead) places, double share)
    {
        double steps = share / (1 - share);
        for (int i = 1; i <= edges.Length; i++)
        {
            if (_reach[edges[i - 1]].Moved(places.Before[i], places.Now[i], steps) is not { } moved)
            {
                return false;
            }

            places.Ahead[i] = moved;
        }

        (places.Ahead[0], places.Ahead[^1]) = (from.Nearest(places.Ahead[1]), to.Nearest(places.Ahead[^2]));
        return edges.Length > 0;
    }

    private SpacePoint[] Begin(int[] edges)
    {
        Nearest plan = _plan ??= Distances.Between(from.Outline, to.Outline);
        SpacePoint[] places = new SpacePoint[edges.Length + 2];
        double z = Math.Clamp((Math.Max(from.FromZMm, to.FromZMm) + Math.Min(from.ToZMm, to.ToZMm)) / 2, from.FromZMm, from.ToZMm);
        places[0] = SpacePoint.At(plan.OnFirst, z);
        places[^1] = SpacePoint.At(plan.OnSecond, Math.Clamp(z, to.FromZMm, to.ToZMm));
        for (int i = 0; i < edges.Length; i++)
        {
            places[i + 1] = _reach[edges[i]].Tightest(places[i], places[^1]);
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

    private static double LengthOf(SpacePoint[] places, double thickMm = 0)
    {
        double length = 0;
        for (int i = 1; i < places.Length; i++)
        {
            double apart = places[i - 1].DistanceTo(places[i]);
            length += thickMm > 0 ? SolidPair.Hypotenuse(apart, thickMm) : apart;
        }

        return length;
    }

    /// <summary>Edges that a string bends over, in order.</summary>
    /// <param name="Edges">Their numbers.</param>
    /// <param name="Places">Where it does; null before it is tightened at all.</param>
    /// <param name="Rounds">Rounds by which it was tightened.</param>
    /// <param name="IsTight">Whether it is tight.</param>
    /// <param name="IsHeld">Whether it only may be, since places hold each other.</param>
    private sealed record EdgeOrder(int[] Edges, SpacePoint[]? Places, int Rounds, bool IsTight = false, bool IsHeld = false);
}
