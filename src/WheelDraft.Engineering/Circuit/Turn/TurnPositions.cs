using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A make or break of one contact.</summary>
/// <param name="Contact">Index of the contact.</param>
/// <param name="Makes">Whether it makes; else it breaks.</param>
/// <param name="AtRad">Nominal programme angle, in [0, 2π) as listed, unrolled from the first cut within groups.</param>
/// <param name="EarliestRad">Worst case, at most the nominal angle.</param>
/// <param name="LatestRad">Worst case, at least the nominal angle.</param>
internal sealed record TurnEdge(int Contact, bool Makes, double AtRad, double EarliestRad, double LatestRad)
{
    /// <summary>The same edge a number of turns on.</summary>
    public TurnEdge Shifted(double byRad) => this with { AtRad = AtRad + byRad, EarliestRad = EarliestRad + byRad, LatestRad = LatestRad + byRad };
}

/// <summary>One set of closed contacts that the wheel can stand at.</summary>
internal sealed class TurnPosition
{
    /// <summary>The closed contacts.</summary>
    public required ulong[] Closed { get; init; }

    /// <summary>The smallest angle at which it can occur, worst case.</summary>
    public required double LowerRad { get; init; }

    /// <summary>The largest angle at which it can occur, worst case; at least the smallest.</summary>
    public required double UpperRad { get; init; }

    /// <summary>Index of the nominal interval, or −1 for an order of edges that only tolerances bring about.</summary>
    public int Interval { get; set; } = -1;

    /// <summary>Nominal angle of the edge that opens it, unrolled, when all edges come in their nominal order; null for other orders.</summary>
    public double? NominalRad { get; set; }

    /// <summary>Positions that follow as the wheel turns forward, each by one edge.</summary>
    public List<TurnStep> Next { get; } = [];

    /// <summary>Positions that follow as the wheel turns backward.</summary>
    public List<TurnStep> Previous { get; } = [];

    /// <summary>Whether it can occur at an angle of an arc.</summary>
    /// <param name="arc">The arc.</param>
    /// <param name="withinRad">Touching by no more than this, a rounding, is not lying in it.</param>
    public bool MayLieIn(CircleArc arc, double withinRad)
    {
        double length = UpperRad - LowerRad;
        return length >= Angles.TurnRad
            || (length > 2 * withinRad
                ? arc.Overlaps(CircleArc.Sweep(LowerRad + withinRad, length - (2 * withinRad)))
                : arc.Contains(LowerRad + (length / 2)));
    }
}

/// <summary>A step over one edge.</summary>
/// <param name="To">Index of the position behind it.</param>
/// <param name="Edge">The edge.</param>
internal readonly record struct TurnStep(int To, TurnEdge Edge);

/// <summary>One stretch of the turn between two neighbouring cuts, edges where they should be.</summary>
/// <param name="FromRad">Where it starts, in [0, 2π).</param>
/// <param name="LengthRad">How long it is.</param>
/// <param name="Position">Index of its position.</param>
internal sealed record TurnInterval(double FromRad, double LengthRad, int Position);

/// <summary>The turn cut at every make and break, with every order of edges whose worst-case bands overlap.</summary>
/// <remarks>Edges with overlapping bands form a local group; within it every set of passed edges that the bands allow is a
/// position, so that two edges meet both with overlap and with gap. Edges of one contact keep their order. A group of k edges
/// has at most 2^k positions; past <see cref="MostOrdersOfGroup"/> only the nominal order is followed and
/// <see cref="UnexploredGroups"/> says so: nothing may then be called proved.</remarks>
internal sealed class TurnPositions
{
    /// <summary>Most positions of one local group: twelve edges in any order.</summary>
    public const int MostOrdersOfGroup = 4096;

    // Angles nearer than this are one cut, rad. Found by different sums the same angle differs by 1e-15; reports round to 1e-7
    // degree (2e-9 rad). Larger, and honest gaps between contacts would be treated as unordered, which is safe but louder.
    internal const double SameAngleRad = 1e-9;

    private readonly List<TurnPosition> _positions = [];
    private readonly List<TurnInterval> _intervals = [];
    private readonly List<string> _unexplored = [];
    private readonly List<(double FromRad, double ToRad)> _unexploredSpans = [];
    private readonly IReadOnlyList<ContactSchedule> _contacts;

    /// <summary>Cuts the turn.</summary>
    /// <param name="contacts">The contacts, by index.</param>
    public TurnPositions(IReadOnlyList<ContactSchedule> contacts)
    {
        _contacts = contacts;
        List<TurnEdge> edges = EdgesOf(contacts);
        if (edges.Count == 0)
        {
            AddPosition(ClosedAt(0), 0, Angles.TurnRad);
        }
        else
        {
            Unroll(edges);
        }

        ListIntervals(edges);
    }

    /// <summary>Every position, nominal ones and those that only tolerances bring about.</summary>
    public IReadOnlyList<TurnPosition> Positions => _positions;

    /// <summary>The nominal intervals in turning order; the first one contains home.</summary>
    public IReadOnlyList<TurnInterval> Intervals => _intervals;

    /// <summary>Groups of edges too large to follow in every order, in words; empty as a rule.</summary>
    public IReadOnlyList<string> UnexploredGroups => _unexplored;

    /// <summary>The parts of the turn in which not every order was followed, worst-case edges; unrolled angles.</summary>
    public IReadOnlyList<(double FromRad, double ToRad)> UnexploredSpans => _unexploredSpans;

    /// <summary>Index of the nominal interval that an angle lies in; an interval has its start and not its end.</summary>
    /// <param name="programmeRad">Programme angle, in [0, 2π).</param>
    public int IntervalAt(double programmeRad)
    {
        for (int i = 1; i < _intervals.Count; i++)
        {
            // An angle given in seconds may lie a rounding before the edge that it names.
            if (Angles.InTurn(programmeRad - _intervals[i].FromRad + SameAngleRad) < _intervals[i].LengthRad)
            {
                return i;
            }
        }

        return 0;
    }

    /// <summary>Positions in which the wheel may stand at home.</summary>
    public IEnumerable<int> AtHome()
    {
        // Just behind home: a contact that breaks at home is open there.
        CircleArc home = CircleArc.Sweep(SameAngleRad / 4, SameAngleRad / 2);
        for (int p = 0; p < _positions.Count; p++)
        {
            if (_positions[p].Interval == 0 || _positions[p].MayLieIn(home, 0))
            {
                yield return p;
            }
        }
    }

    private static List<TurnEdge> EdgesOf(IReadOnlyList<ContactSchedule> contacts)
    {
        List<TurnEdge> edges = [];
        for (int c = 0; c < contacts.Count; c++)
        {
            foreach (MadePeriod period in contacts[c].Periods.Where(p => !p.Closed.IsFull && !p.Closed.IsEmpty))
            {
                edges.Add(EdgeAt(c, makes: true, period.Closed.StartRad, period.Make));
                edges.Add(EdgeAt(c, makes: false, Angles.InTurn(period.Closed.EndRad), period.Break));
            }
        }

        return [.. edges.OrderBy(e => e.AtRad).ThenBy(e => e.Makes).ThenBy(e => e.Contact)];
    }

    private static TurnEdge EdgeAt(int contact, bool makes, double atRad, EdgeBand band)
    {
        if (!(band.EarlierRad >= 0) || !(band.LaterRad >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(band), "The band of an edge reaches from at or before it to at or after it.");
        }

        // Home found by adding up, a rounding to either side, is home.
        double at = atRad < SameAngleRad || Angles.TurnRad - atRad < SameAngleRad ? 0 : atRad;
        return new TurnEdge(contact, makes, at, at - band.EarlierRad, at + band.LaterRad);
    }

    private ulong[] ClosedAt(double angleRad)
    {
        ulong[] closed = BitRow.Empty(_contacts.Count);
        for (int c = 0; c < _contacts.Count; c++)
        {
            if (_contacts[c].Periods.Any(p => p.Closed.Contains(angleRad)))
            {
                BitRow.Add(closed, c);
            }
        }

        return closed;
    }

    private void Unroll(List<TurnEdge> edges)
    {
        List<int> cuts = CleanCuts(edges);
        if (cuts.Count == 0)
        {
            _unexplored.Add("the bands of the edges overlap all round the turn");
            _unexploredSpans.Add((0, Angles.TurnRad));
            edges = [.. edges.Select(e => e with { EarliestRad = e.AtRad, LatestRad = e.AtRad })];
            cuts = CleanCuts(edges);
        }

        // Start behind the first clean cut, so that no group runs across the seam.
        int seam = cuts[0];
        TurnEdge[] unrolled = [.. edges.Skip(seam), .. edges.Take(seam).Select(e => e.Shifted(Angles.TurnRad))];
        List<TurnEdge[]> groups = [];
        for (int i = 0; i < cuts.Count; i++)
        {
            int end = i + 1 < cuts.Count ? cuts[i + 1] - seam : unrolled.Length;
            groups.Add(unrolled[(cuts[i] - seam)..end]);
        }

        new TurnGroups(_positions, (_unexplored, _unexploredSpans), _contacts).Follow(groups, ClosedBefore(unrolled));
    }

    // Contacts closed just before the first edge of the unrolled turn: those whose first edge is a break, and the always closed.
    private ulong[] ClosedBefore(TurnEdge[] unrolled)
    {
        ulong[] closed = BitRow.Empty(_contacts.Count);
        for (int c = 0; c < _contacts.Count; c++)
        {
            TurnEdge? first = Array.Find(unrolled, e => e.Contact == c);
            BitRow.Put(closed, c, first is null ? _contacts[c].IsAlways : !first.Makes);
        }

        return closed;
    }

    // Indices of edges before which every earlier edge has surely passed and no later one can have.
    private static List<int> CleanCuts(List<TurnEdge> edges)
    {
        int n = edges.Count;
        double latestBefore = edges.Max(e => e.LatestRad) - Angles.TurnRad;
        double[] earliestFrom = new double[n + 1];
        earliestFrom[n] = edges.Min(e => e.EarliestRad) + Angles.TurnRad;
        for (int i = n - 1; i >= 0; i--)
        {
            earliestFrom[i] = Math.Min(earliestFrom[i + 1], edges[i].EarliestRad);
        }

        List<int> cuts = [];
        for (int i = 0; i < n; i++)
        {
            if (latestBefore + SameAngleRad < earliestFrom[i])
            {
                cuts.Add(i);
            }

            latestBefore = Math.Max(latestBefore, edges[i].LatestRad);
        }

        return cuts;
    }

    private void ListIntervals(List<TurnEdge> edges)
    {
        List<double> cuts = [];
        foreach (TurnEdge edge in edges)
        {
            if (cuts.Count == 0 || edge.AtRad - cuts[^1] > SameAngleRad)
            {
                cuts.Add(edge.AtRad);
            }
        }

        if (cuts.Count < 2)
        {
            // One cut or none: a single interval, from the cut round to itself.
            AddInterval(cuts.Count == 0 ? 0 : cuts[0], Angles.TurnRad);
            return;
        }

        // The interval with home comes first: the last cut opens it, unless a cut lies at home.
        int first = cuts[0] < SameAngleRad ? 0 : cuts.Count - 1;
        for (int i = 0; i < cuts.Count; i++)
        {
            double from = cuts[(first + i) % cuts.Count];
            double to = cuts[(first + i + 1) % cuts.Count];
            AddInterval(from, Angles.InTurn(to - from));
        }
    }

    private void AddInterval(double fromRad, double lengthRad)
    {
        int position = NominalPosition(fromRad, Angles.InTurn(fromRad + (lengthRad / 2)));
        _positions[position].Interval = _intervals.Count;
        _intervals.Add(new TurnInterval(fromRad, lengthRad, position));
    }

    // The position whose closed set is the nominal one at an angle, among those that may lie there. Bands wider than a period let several
    // positions of one set lie there: then it is the one that the interval's own edge opens.
    private int NominalPosition(double fromRad, double middleRad)
    {
        ulong[] closed = ClosedAt(middleRad);
        CircleArc here = CircleArc.Sweep(middleRad, SameAngleRad / 2);
        bool MayBe(TurnPosition p) => p.Interval < 0 && p.MayLieIn(here, 0) && p.Closed.AsSpan().SequenceEqual(closed);
        bool IsOpenedThere(TurnPosition p) => p.NominalRad is double at && Angles.InTurn(at - fromRad + SameAngleRad) < 4 * SameAngleRad;
        int found = _positions.FindIndex(p => IsOpenedThere(p) && MayBe(p));
        found = found >= 0 ? found : _positions.FindIndex(MayBe);
        return found >= 0
            ? found
            : throw new InvalidOperationException("A nominal interval has no position: the on-periods of one output overlap.");
    }

    private void AddPosition(ulong[] closed, double lowerRad, double upperRad) =>
        _positions.Add(new TurnPosition { Closed = closed, LowerRad = lowerRad, UpperRad = upperRad });
}
