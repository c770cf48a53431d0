namespace WheelDraft.Engineering;

/// <summary>The turns of a log, averaged.</summary>
/// <param name="TurnTime">Turn time, s, as it was: the supply's frequency at the time is not in the log.</param>
/// <param name="Contacts">What each contact does in a turn, in the order of the log.</param>
internal sealed record BenchTurns(MeanReading TurnTime, IReadOnlyList<BenchContact> Contacts)
{
    /// <summary>Whether the turn time was found in the log, and not given.</summary>
    public bool IsTurnFound { get; init; }

    /// <summary>Whether the turn time was seen to repeat more than once; a single repeat may be chance.</summary>
    public bool IsTurnSure { get; init; }

    /// <summary>A time in the log at which the wheel was at the log's own zero, s.</summary>
    public double ZeroAtS { get; init; }

    /// <summary>Edges that fit into no turn.</summary>
    public int Unexplained { get; init; }

    /// <summary>How often the wheel stood.</summary>
    public int Stops { get; init; }

    /// <summary>Contacts at whose break the wheel always came to stand; empty when it never stood, or stood elsewhere too; several when they cannot be told apart.</summary>
    public IReadOnlyList<string> MotorHolders { get; init; } = [];

    /// <summary>The turns of a log.</summary>
    /// <param name="record">The log.</param>
    /// <param name="turnTimeS">The turn time where it is given, s; null to find it.</param>
    /// <exception cref="DesignRefusedException">Nothing repeats, or no contact changes.</exception>
    public static BenchTurns Of(BenchRecord record, double? turnTimeS = null)
    {
        if (turnTimeS is double given)
        {
            return TurnWalk.Of(record, given) is TurnWalk own ? new TurnAverage(record, own, given).Of(isFound: false) : WithinOneTurn.Of(record, given);
        }

        // The turn that explains the log in fewest words; of equals the shortest.
        (double TurnS, TurnWalk Walk)[] walked = [.. TurnFinder.TurnTimesS(record).Select(t => (t, TurnWalk.Of(record, t))).Where(t => t.Item2 is not null).Select(t => (t.t, t.Item2!))];
        if (walked.Length == 0)
        {
            throw new DesignRefusedException("log.turn-time", NoTurn(record));
        }

        (double turn, TurnWalk walk) = walked.OrderBy(w => w.Walk.Cost).ThenBy(w => w.TurnS).First();
        return new TurnAverage(record, walk, turn).Of(isFound: true);
    }

    private static string NoTurn(BenchRecord record) =>
        FormattableString.Invariant($"No turn time can be found in the log of {record.ToS - record.FromS:0.###} s: it takes two starts of the same output, as long on both times, with the wheel turning in between. Log two turns or more, or give it: --turn-time \"180 s\".");
}

/// <summary>What a contact does in a turn.</summary>
/// <param name="Name">Name of its column.</param>
/// <param name="Periods">Its on-periods by start; empty when it never changes.</param>
/// <param name="IsAlwaysOn">Whether it was closed all the time.</param>
internal sealed record BenchContact(string Name, IReadOnlyList<BenchPeriod> Periods, bool IsAlwaysOn);

/// <summary>An on-period, averaged.</summary>
/// <param name="StartShare">Where it starts, as a share of the turn from the log's own zero, in [0, 1).</param>
/// <param name="Start">How far it starts behind that zero, s, turn by turn.</param>
/// <param name="On">On-time, s, brought to the mean turn time.</param>
internal readonly record struct BenchPeriod(double StartShare, MeanReading Start, MeanReading On)
{
    /// <summary>The on-times turn by turn, s, in the order of the log.</summary>
    public IReadOnlyList<double> Readings { get; init; } = [];
}

/// <summary>Averages the turns of a walk.</summary>
internal sealed class TurnAverage
{
    private readonly BenchRecord _record;
    private readonly TurnWalk _walk;
    private readonly double _turnS;
    private readonly Dictionary<(int Edge, int Turn), PlacedEdge> _at = [];
    private readonly SortedDictionary<int, double> _turns = [];
    private TurnTrend _trend = new([]);
    private readonly double[] _mostHalfS;

    public TurnAverage(BenchRecord record, TurnWalk walk, double turnS)
    {
        (_record, _walk, _turnS) = (record, walk, turnS);
        foreach (PlacedEdge placed in walk.Placed)
        {
            _at.TryAdd((placed.Edge, placed.Turn), placed);
        }

        // An edge that fell into a hole of the log says little; it is left out where the rows round it are much further apart than for others of its contact.
        const double holes = 4.5, leastS = 1e-6;
        _mostHalfS = [.. record.Contacts.Select(c => c.Spells.SelectMany(s => new[] { s.Make, s.Break }).Where(e => e.IsSeen).Select(e => e.HalfWidthS).Order().ToArray() is { Length: > 0 } halves ? Math.Max(halves[halves.Length / 2] * holes, leastS) : leastS)];
        Turns();
    }

    public BenchTurns Of(bool isFound)
    {
        // A supply that drifts makes every turn another; what counts is the turn in the middle of the log, to which everything else is brought.
        MeanReading turn = _turns.Count > 0
            ? MeanReading.Of(_turns.Values, _record.StepS / Math.Sqrt(Math.Max(1, _walk.Edges.Count))) with { MeanS = _trend.Middle((_record.FromS + _record.ToS) / 2) }
            : new(_turnS, 0, 1, _record.SlackS);
        return new(turn, [.. _record.Contacts.Select((c, i) => Contact(c, i, turn.MeanS))])
        {
            IsTurnFound = isFound,
            IsTurnSure = _turns.Count > 1 || _walk.Edges.Count > 2,
            ZeroAtS = ZeroAtS(turn.MeanS),
            Unexplained = _walk.Unexplained,
            Stops = _walk.Stops.Count,
            MotorHolders = Holders(),
        };
    }

    private double ZeroAtS(double meanS)
    {
        PlacedEdge first = _walk.Placed.Count > 0 ? _walk.Placed.FirstOrDefault(p => p.Edge == 0, _walk.Placed[0]) : default;
        return first.At.AtS - (_walk.Edges[first.Edge].Share * meanS);
    }

    private void Turns()
    {
        Dictionary<int, List<double>> each = [];
        List<(double MidS, double LengthS)> all = [];
        foreach (((int edge, int turn), PlacedEdge placed) in _at)
        {
            if (_at.TryGetValue((edge, turn + 1), out PlacedEdge next) && next.Stops == placed.Stops && IsSharp(placed) && IsSharp(next))
            {
                if (!each.TryGetValue(turn, out List<double>? list))
                {
                    each[turn] = list = [];
                }

                list.Add(next.At.AtS - placed.At.AtS);
                all.Add(((next.At.AtS + placed.At.AtS) / 2, next.At.AtS - placed.At.AtS));
            }
        }

        foreach ((int turn, List<double> lengths) in each)
        {
            _turns[turn] = lengths.Average();
        }

        _trend = new(all);
    }

    private bool IsSharp(PlacedEdge placed) => placed.At.HalfWidthS <= _mostHalfS[_walk.Edges[placed.Edge].Contact];

    private BenchContact Contact(LoggedContact contact, int index, double meanS)
    {
        List<BenchPeriod> periods = [];
        for (int e = 0; e < _walk.Edges.Count; e++)
        {
            if (_walk.Edges[e].Contact == index && _walk.Edges[e].IsMake && Period(e, index, meanS) is BenchPeriod period)
            {
                periods.Add(period);
            }
        }

        bool always = contact.Spells.Count == 1 && !contact.Spells[0].Make.IsSeen && !contact.Spells[0].Break.IsSeen;
        return new(contact.Name, [.. periods.OrderBy(p => p.StartShare)], always);
    }

    private BenchPeriod? Period(int make, int contact, double meanS)
    {
        int ahead = Enumerable.Range(1, _walk.Edges.Count).First(k => _walk.Edges[(make + k) % _walk.Edges.Count] is var e && e.Contact == contact && !e.IsMake);
        int end = (make + ahead) % _walk.Edges.Count, over = make + ahead >= _walk.Edges.Count ? 1 : 0;
        List<double> on = [], start = [];
        foreach (PlacedEdge placed in _walk.Placed.Where(p => p.Edge == make && IsSharp(p)))
        {
            if (_at.TryGetValue((end, placed.Turn + over), out PlacedEdge off) && off.Stops == placed.Stops && IsSharp(off))
            {
                on.Add(Brought(placed.At.AtS, off.At.AtS, meanS));
            }

            if (_at.TryGetValue((0, placed.Turn), out PlacedEdge zero) && zero.Stops == placed.Stops && IsSharp(zero))
            {
                start.Add(Brought(zero.At.AtS, placed.At.AtS, meanS));
            }
        }

        if (on.Count == 0)
        {
            return null;
        }

        MeanReading at = start.Count > 0 ? MeanReading.Of(start, _record.StepS) : new(_walk.Edges[make].Share * meanS, 0, 1, _record.SlackS);
        double share = at.MeanS / meanS;
        return new(share - Math.Floor(share), at, MeanReading.Of(on, _record.StepS)) { Readings = on };
    }

    // As long as it would have been in the middle of the log.
    private double Brought(double fromS, double toS, double meanS) => (toS - fromS) * meanS / _trend.At((fromS + toS) / 2, meanS);

    // The wheel stands at the break of what holds its motor. Breaks that the rows cannot part from the last one are named too.
    private IReadOnlyList<string> Holders()
    {
        if (_walk.Stops.Count == 0 || _walk.Stops.Any(s => s.After < 0))
        {
            return [];
        }

        int[] after = [.. _walk.Stops.Select(s => s.After).Distinct()];
        double near = (_record.SlackS + 0.1) / _turnS;
        HashSet<int>? all = null;
        foreach (int edge in after)
        {
            double share = _walk.Edges[edge].Share;
            HashSet<int> breaks = [.. _walk.Edges.Where(e => !e.IsMake && share - e.Share is var d && d - Math.Round(d) is var off && Math.Abs(off) <= near).Select(e => e.Contact)];
            all = all is null ? breaks : [.. all.Intersect(breaks)];
        }

        return [.. all!.Order().Select(c => _record.Contacts[c].Name)];
    }
}

/// <summary>How long a turn took at each time of a log: straight lines through the turns round it, since supplies drift slowly.</summary>
/// <param name="turns">Turns from any edge to its next, by the time of their middle.</param>
internal sealed class TurnTrend(IEnumerable<(double MidS, double LengthS)> turns)
{
    // Turns so many turns away on either side still count.
    private const double ReachTurns = 2;

    private readonly (double MidS, double LengthS)[] _turns = [.. turns.OrderBy(t => t.MidS)];

    /// <summary>A turn about a time, s.</summary>
    /// <param name="timeS">The time.</param>
    /// <param name="usualS">The usual turn, where there is none near.</param>
    public double At(double timeS, double usualS)
    {
        int from = First(timeS - (ReachTurns * usualS)), to = First(timeS + (ReachTurns * usualS));
        return to - from < 2 ? usualS : Line(_turns.AsSpan(from, to - from), timeS);
    }

    /// <summary>A turn about a time by all turns of the log, s.</summary>
    public double Middle(double timeS) => Line(_turns, timeS);

    // The first turn whose middle is not before a time.
    private int First(double timeS)
    {
        int low = 0, high = _turns.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _turns[middle].MidS < timeS ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    // Least squares; level where the turns do not reach over a turn in all, so that nothing is read into their scatter.
    private static double Line(ReadOnlySpan<(double MidS, double LengthS)> turns, double timeS)
    {
        double mid = 0, length = 0;
        foreach ((double m, double l) in turns)
        {
            mid += m / turns.Length;
            length += l / turns.Length;
        }

        if (turns[^1].MidS - turns[0].MidS < length)
        {
            return length;
        }

        double square = 0, product = 0;
        foreach ((double m, double l) in turns)
        {
            square += (m - mid) * (m - mid);
            product += (m - mid) * (l - length);
        }

        return length + (product / square * (timeS - mid));
    }
}

/// <summary>A log of less than two turns, with the turn time given: every spell is taken once.</summary>
internal static class WithinOneTurn
{
    public static BenchTurns Of(BenchRecord record, double turnS)
    {
        double zero = record.Contacts.SelectMany(c => c.Spells).Where(s => s.Make.IsSeen).Select(s => s.Make.AtS).DefaultIfEmpty(record.FromS).Min();
        BenchContact[] contacts =
        [
            .. record.Contacts.Select(c => new BenchContact(
                c.Name,
                [.. c.Spells.Where(s => s.IsWhole && s.Make.AtS - zero < turnS).Select(s => new BenchPeriod((s.Make.AtS - zero) / turnS, new(s.Make.AtS - zero, 0, 1, record.SlackS), MeanReading.Of([s.OnS], record.StepS)) { Readings = [s.OnS] })],
                c.Spells.Count == 1 && !c.Spells[0].Make.IsSeen && !c.Spells[0].Break.IsSeen)),
        ];
        return contacts.Any(c => c.Periods.Count > 0)
            ? new(new(turnS, 0, 1, 0), contacts) { ZeroAtS = zero }
            : throw new DesignRefusedException("log.empty", "No output makes and breaks within the log: there is nothing to learn from. Log a whole turn.");
    }
}
