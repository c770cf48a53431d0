namespace WheelDraft.Engineering;

/// <summary>An edge that comes once a turn.</summary>
/// <param name="Contact">The contact, by its place in the log.</param>
/// <param name="IsMake">Whether it is a make.</param>
/// <param name="Share">Where in the turn, as a share of it, from 0 at the first edge.</param>
internal readonly record struct EdgeOfTurn(int Contact, bool IsMake, double Share);

/// <summary>An edge of the log in its place.</summary>
/// <param name="Edge">Which edge of the turn, by its place in <see cref="TurnWalk.Edges"/>.</param>
/// <param name="Turn">In which turn.</param>
/// <param name="At">When.</param>
/// <param name="Stops">How often the wheel had stood before it.</param>
internal readonly record struct PlacedEdge(int Edge, int Turn, LoggedEdge At, int Stops);

/// <summary>The wheel stood.</summary>
/// <param name="After">The edge before it; −1 where that is not known.</param>
/// <param name="ForS">How long, s.</param>
internal readonly record struct WheelStop(int After, double ForS);

/// <summary>Walks through a log and tells every edge its place in the turn, and where the wheel stood.</summary>
internal sealed class TurnWalk
{
    private const double DriftShare = 0.015;

    // What an edge may be away from its place besides drift, rows and bounce, s: contacts that make a little differently each time.
    private const double RestlessS = 0.1;

    // After so many edges in a row that fit nowhere the wheel must have stood unseen, and the walk begins anew.
    private const int Lost = 4;

    private readonly BenchRecord _record;
    private readonly double _turnS;
    private readonly List<PlacedEdge> _placed = [];
    private readonly List<WheelStop> _stops = [];

    private TurnWalk(BenchRecord record, double turnS, IReadOnlyList<EdgeOfTurn> edges)
    {
        (_record, _turnS, Edges) = (record, turnS, edges);
        Walk();
    }

    /// <summary>The edges of one turn, in order.</summary>
    public IReadOnlyList<EdgeOfTurn> Edges { get; }

    /// <summary>The edges of the log that found their place, by time.</summary>
    public IReadOnlyList<PlacedEdge> Placed => _placed;

    /// <summary>Where the wheel stood.</summary>
    public IReadOnlyList<WheelStop> Stops => _stops;

    /// <summary>Edges that fit nowhere.</summary>
    public int Unexplained { get; private set; }

    /// <summary>Edges that should have come while the wheel turned, and did not.</summary>
    public int Missing
    {
        get
        {
            double turns = _placed.Count == 0 ? 0 : (_placed[^1].At.AtS - _placed[0].At.AtS - _stops.Sum(s => s.ForS)) / _turnS;
            return (int)Math.Max(0, Math.Round((Edges.Count * turns) - _placed.Count));
        }
    }

    /// <summary>In how many words the walk explains the log: the edges of its turn, and twice what it leaves unexplained, misses, or puts down to a wheel that stood.</summary>
    public int Cost => Edges.Count + (2 * (Unexplained + Missing + _stops.Count));

    /// <summary>The walk that explains most of a log; null when no turn in it is whole.</summary>
    public static TurnWalk? Of(BenchRecord record, double turnS)
    {
        // Turns that one would begin with: from a make to its next one, and as the log allows from others, in case the first is spoilt.
        const int tries = 12;
        return Templates(record, turnS).Take(tries).Select(t => new TurnWalk(record, turnS, t)).MinBy(w => w.Cost);
    }

    private static IEnumerable<IReadOnlyList<EdgeOfTurn>> Templates(BenchRecord record, double turnS)
    {
        List<(int Contact, bool IsMake, LoggedEdge At)> all = Sorted(record);
        double within = (DriftShare * turnS) + record.SlackS;
        for (int i = 0; i < all.Count; i++)
        {
            (int contact, bool isMake, LoggedEdge first) = all[i];
            if (!isMake)
            {
                continue;
            }

            int last = all.FindIndex(i + 1, e => e.Contact == contact && e.IsMake && Math.Abs(e.At.AtS - first.AtS - turnS) <= within);

            // With a turn time from elsewhere the wheel may have stood in every turn of the log: then the turn is what the order of edges says.
            if (last > 0 && OnceOnly(all[i..last]))
            {
                double length = all[last].At.AtS - first.AtS;
                yield return [.. all[i..last].Select(e => new EdgeOfTurn(e.Contact, e.IsMake, (e.At.AtS - first.AtS) / length))];
            }
        }
    }

    // Makes and breaks of a contact take turns, and a turn holds as many of one as of the other.
    private static bool OnceOnly(List<(int Contact, bool IsMake, LoggedEdge At)> edges) =>
        edges.GroupBy(e => e.Contact).All(g => g.Count(e => e.IsMake) * 2 == g.Count());

    private static List<(int Contact, bool IsMake, LoggedEdge At)> Sorted(BenchRecord record)
    {
        List<(int, bool, LoggedEdge)> all = [];
        for (int c = 0; c < record.Contacts.Count; c++)
        {
            foreach (ContactSpell spell in record.Contacts[c].Spells)
            {
                if (spell.Make.IsSeen)
                {
                    all.Add((c, true, spell.Make));
                }

                if (spell.Break.IsSeen)
                {
                    all.Add((c, false, spell.Break));
                }
            }
        }

        all.Sort((a, b) => a.Item3.AtS.CompareTo(b.Item3.AtS));
        return all;
    }

    private void Walk()
    {
        int lost = 0;
        foreach ((int contact, bool isMake, LoggedEdge at) in Sorted(_record))
        {
            if (_placed.Count > 0 && (Goes(contact, isMake, at) || Stood(contact, isMake, at)))
            {
                lost = 0;
                continue;
            }

            if (_placed.Count > 0 && ++lost < Lost)
            {
                Unexplained++;
                continue;
            }

            if (lost >= Lost)
            {
                _stops.Add(new(-1, 0));
            }

            lost = 0;
            Begin(contact, isMake, at);
        }
    }

    // An edge to begin with may be one of several of its kind: that whose followers come when they should.
    private void Begin(int contact, bool isMake, LoggedEdge at)
    {
        List<(int Contact, bool IsMake, LoggedEdge At)> all = Sorted(_record);
        int best = -1, most = -1;
        for (int e = 0; e < Edges.Count; e++)
        {
            if (Edges[e].Contact != contact || Edges[e].IsMake != isMake)
            {
                continue;
            }

            int fit = all.Count(o => o.At.AtS >= at.AtS && o.At.AtS - at.AtS <= _turnS && Near(o.Contact, o.IsMake, Edges[e].Share + ((o.At.AtS - at.AtS) / _turnS), Within(o.At.AtS - at.AtS)) >= 0);
            (best, most) = fit > most ? (e, fit) : (best, most);
        }

        if (best >= 0)
        {
            // Two turns on, so that no turn is begun in one walk and ended in the next.
            _placed.Add(new(best, _placed.Count == 0 ? 0 : _placed[^1].Turn + 2, at, _stops.Count));
        }
        else
        {
            Unexplained++;
        }
    }

    private double Within(double spanS) => (DriftShare * spanS) + _record.SlackS + RestlessS;

    private int Near(int contact, bool isMake, double share, double withinS)
    {
        int best = -1;
        double least = withinS / _turnS;
        for (int e = 0; e < Edges.Count; e++)
        {
            double off = Math.Abs(Off(share, Edges[e].Share));
            if (Edges[e].Contact == contact && Edges[e].IsMake == isMake && off <= least)
            {
                (best, least) = (e, off);
            }
        }

        return best;
    }

    private static double Off(double one, double two) => one - two - Math.Round(one - two);

    private bool Goes(int contact, bool isMake, LoggedEdge at)
    {
        PlacedEdge last = _placed[^1];
        double span = at.AtS - last.At.AtS;
        double share = Edges[last.Edge].Share + (span / _turnS);
        int edge = Near(contact, isMake, share, Within(span));
        if (edge < 0)
        {
            return false;
        }

        _placed.Add(new(edge, last.Turn + (int)Math.Round(share - Edges[edge].Share), at, _stops.Count));
        return true;
    }

    private bool Stood(int contact, bool isMake, LoggedEdge at)
    {
        PlacedEdge last = _placed[^1];
        double span = at.AtS - last.At.AtS;
        int next = (last.Edge + 1) % Edges.Count;

        // Edges that come together may have come the other way round: then the next one has been already.
        while (next != last.Edge && _placed.TakeLast(Edges.Count / 2).Any(p => p.Edge == next && last.At.AtS - p.At.AtS <= Within(0)))
        {
            next = (next + 1) % Edges.Count;
        }

        double ahead = Edges[next].Share - Edges[last.Edge].Share;
        double wait = (ahead - Math.Floor(ahead)) * _turnS;
        if (Edges[next].Contact != contact || Edges[next].IsMake != isMake || span <= wait)
        {
            return false;
        }

        _stops.Add(new(last.Edge, span - wait));
        _placed.Add(new(next, last.Turn + (next <= last.Edge ? 1 : 0), at, _stops.Count));
        return true;
    }
}
