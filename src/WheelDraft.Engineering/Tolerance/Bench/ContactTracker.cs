namespace WheelDraft.Engineering;

/// <summary>Turns the changes of one column into spells: gaps shorter than a bounce are joined, lone closures shorter than one left out, both counted.</summary>
/// <remarks>Keeps no rows, so that a log of any length is read at constant memory; what grows is one entry a spell.</remarks>
/// <param name="name">Name of the column.</param>
/// <param name="bounceS">A shorter gap, or lone closure, is bounce, s.</param>
internal sealed class ContactTracker(string name, double bounceS)
{
    // Chatter is looked for so many bounces behind a make, and before a break.
    private const double WindowBounces = 2;

    private readonly List<RawSpell> _spells = [];
    private readonly Chatter _atMakes = new();
    private readonly Chatter _atBreaks = new();
    private readonly Queue<(double FromS, double ToS)> _lately = new();
    private RawSpell _open;
    private bool _hasOpen;
    private bool _closed;
    private long _joined;
    private long _blips;

    /// <summary>How many spells are kept.</summary>
    public int Count => _spells.Count;

    /// <summary>The first row that tells the column.</summary>
    public void Begin(double timeS, bool closed)
    {
        _closed = closed;
        if (closed)
        {
            (_open, _hasOpen) = (new(new(timeS, timeS, false), default), true);
        }
    }

    /// <summary>A row that differs from the one before it.</summary>
    /// <param name="beforeS">Time of the row before, s.</param>
    /// <param name="timeS">Time of this row, s.</param>
    /// <param name="closed">What it says.</param>
    public void Change(double beforeS, double timeS, bool closed)
    {
        if (closed == _closed)
        {
            return;
        }

        _closed = closed;
        if (!closed)
        {
            _open = _open with { Break = new(beforeS, timeS, true) };
            return;
        }

        if (_hasOpen && timeS - _open.Break.AfterS < bounceS)
        {
            Join(timeS);
            return;
        }

        Settle();
        (_open, _hasOpen) = (new(new(beforeS, timeS, true), default), true);
    }

    /// <summary>No more rows.</summary>
    /// <param name="endS">Time of the last row, s.</param>
    public void End(double endS)
    {
        if (_hasOpen && _closed)
        {
            _open = _open with { Break = new(endS, endS, false) };
        }

        Settle();
    }

    /// <summary>The contacts of a log that has ended.</summary>
    /// <param name="trackers">All of its trackers: contacts of one timer are alike, so what chatter hides is told from all of them.</param>
    /// <param name="stepS">Usual time between rows, s; 0 for a list of changes, whose edges are at their rows.</param>
    public static IReadOnlyList<LoggedContact> Finish(IReadOnlyList<ContactTracker> trackers, double stepS)
    {
        int edges = trackers.Sum(t => t.Count);
        double late = Chatter.Of(trackers.Select(t => t._atMakes)).UnseenS(stepS, edges), early = Chatter.Of(trackers.Select(t => t._atBreaks)).UnseenS(stepS, edges);
        return [.. trackers.Select(t => t.Contact(stepS, late, early))];
    }

    private LoggedContact Contact(double stepS, double late, double early)
    {
        return new(name, [.. _spells.Select(s => new ContactSpell(s.Make.At(stepS, -late), s.Break.At(stepS, early)))]) { Joined = _joined, Blips = _blips };
    }

    private void Join(double timeS)
    {
        _joined++;
        double from = _open.Break.AfterS;
        if (from - _open.Make.AfterS < WindowBounces * bounceS)
        {
            _atMakes.Add(timeS - from, timeS - _open.Make.AfterS);
        }
        else
        {
            _lately.Enqueue((from, timeS));
            while (_lately.Count > 0 && _lately.Peek().FromS < timeS - (WindowBounces * bounceS))
            {
                _lately.Dequeue();
            }
        }
    }

    private void Settle()
    {
        if (!_hasOpen)
        {
            return;
        }

        _hasOpen = false;
        if (_open.Make.IsSeen && _open.Break.IsSeen && _open.Break.AfterS - _open.Make.AfterS < bounceS)
        {
            _blips++;
        }
        else
        {
            _spells.Add(_open);
            foreach ((double from, double to) in _lately.Where(g => g.FromS >= _open.Break.AfterS - (WindowBounces * bounceS)))
            {
                _atBreaks.Add(to - from, _open.Break.AfterS - from);
            }
        }

        _lately.Clear();
    }

    private readonly record struct RawSpell(RawEdge Make, RawEdge Break);

    private readonly record struct RawEdge(double BeforeS, double AfterS, bool IsSeen)
    {
        public LoggedEdge At(double stepS, double byS) => !IsSeen ? new(AfterS, 0, false)
            : stepS == 0 ? new(AfterS, 0, true)
            : new(((BeforeS + AfterS) / 2) + byS, (AfterS - BeforeS) / 2, true);
    }
}

/// <summary>What chatter at one kind of edge hides between rows.</summary>
/// <remarks>A contact that chatters may be open at the very rows after its first touch, so that the first closed row comes late. If each of K rows of
/// chatter is open with chance q, Σ qᵏ (k = 1 … K) rows are lost before the first closed one and K q less that are seen open behind it; q follows from
/// what is seen, and so does the mean loss.</remarks>
internal sealed class Chatter
{
    private double _openS;
    private double _longestS;

    /// <summary>That of several contacts together.</summary>
    public static Chatter Of(IEnumerable<Chatter> all)
    {
        Chatter sum = new();
        foreach (Chatter one in all)
        {
            sum._openS += one._openS;
            sum._longestS = Math.Max(sum._longestS, one._longestS);
        }

        return sum;
    }

    /// <summary>A gap of chatter.</summary>
    /// <param name="openS">How long it was open, s.</param>
    /// <param name="reachS">From the edge to the far end of the gap, s.</param>
    public void Add(double openS, double reachS)
    {
        _openS += openS;
        _longestS = Math.Max(_longestS, reachS);
    }

    /// <summary>By how much an edge is seen late on the mean, s.</summary>
    public double UnseenS(double stepS, int edges)
    {
        const int most = 50;
        if (stepS == 0 || edges == 0 || _openS == 0)
        {
            return 0;
        }

        int rows = (int)Math.Clamp(Math.Round(_longestS / stepS), 1, most);
        double seen = _openS / stepS / edges;
        double low = 0, high = 0.6;
        for (int i = 0; i < most; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = (rows * middle) - Lost(middle, rows) < seen ? (middle, high) : (low, middle);
        }

        return stepS * Lost(low, rows);
    }

    private static double Lost(double share, int rows)
    {
        double sum = 0, power = 1;
        for (int k = 0; k < rows; k++)
        {
            power *= share;
            sum += power;
        }

        return sum;
    }
}
