using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Angles at which the wheel can come to stand in one position of the wheel.</summary>
/// <param name="Position">Index of the position, whose contacts are as they are there.</param>
/// <param name="FromRad">Least angle, edges where their worst case puts them; unrolled as the position's own angles are.</param>
/// <param name="ToRad">Greatest angle, at least the least.</param>
/// <param name="Why">Why it stands there, in words.</param>
internal readonly record struct RestingPlace(int Position, double FromRad, double ToRad, string Why);

/// <summary>Everywhere the wheel can come to stand without fault, position by position.</summary>
/// <remarks>It stands wherever, in a state that may be reached, its motor is not on for certain: off, undecided, or behind an open
/// fuse. Where some inputs turn the motor and others do not, an input can stop it at every angle, and it runs on by up to its
/// most coast. Where no input turns it, it gets there from an edge by its coast alone: at least the least coast beyond an edge at
/// which its supply breaks, any less beyond one before which an input could stop it. A supply that is lost stops the wheel
/// anywhere, but dead; that it comes back to a wheel nearer an edge than it parks is a fault, listed in the fault table.</remarks>
internal sealed class RestingPlaces
{
    private readonly CircuitModel _model;
    private readonly StateSheet _sheet;
    private readonly StateReach _reach;
    private readonly IReadOnlyList<TurnPosition> _turn;
    private readonly ulong[] _mayReach;
    private readonly List<RestingPlace> _places = [];

    /// <summary>Finds them.</summary>
    /// <param name="model">A circuit with a motor.</param>
    /// <param name="sheet">States without fault.</param>
    /// <param name="reach">Movement without fault.</param>
    /// <param name="mayReach">Positions that may be reached.</param>
    public RestingPlaces(CircuitModel model, StateSheet sheet, StateReach reach, ulong[] mayReach)
    {
        (_model, _sheet, _reach, _mayReach) = (model, sheet, reach, mayReach);
        _turn = model.Turn.Positions;
        Positions = BitRow.Empty(_turn.Count);
        StopWords words = new(model, sheet);
        AddBreaks();
        AddStops(words);
        AddHome();
        foreach (RestingPlace place in _places)
        {
            BitRow.Add(Positions, place.Position);
        }
    }

    /// <summary>The places, in no particular order; one position may have several.</summary>
    public IReadOnlyList<RestingPlace> Places => _places;

    /// <summary>Positions with at least one place.</summary>
    public ulong[] Positions { get; }

    private Coast Coast => _model.Brief.Drive.Coast;

    // Edges at which the wheel itself takes the motor's supply, by the contact that lets go or makes there.
    private void AddBreaks()
    {
        Dictionary<string, CoastSpread> spreads = new(StringComparer.Ordinal);
        foreach (int from in _reach.Members(_mayReach))
        {
            foreach (TurnStep step in _turn[from].Next.Where(s => BitRow.Has(_reach.MayRest, s.To) && StopsOver(from, s.To)))
            {
                string why = $"where '{_model.Contacts[step.Edge.Contact].Name}' {(step.Edge.Makes ? "makes" : "lets go")}";
                Spread(spreads, why).Enter(step, Coast.LeastRad, Coast.MostRad);
            }
        }

        AddSpreads(spreads);
    }

    // Positions in which inputs, or a motor that may or may not run, stop the wheel at any angle, and what lies behind them.
    private void AddStops(StopWords words)
    {
        Dictionary<string, CoastSpread> spreads = new(StringComparer.Ordinal);
        foreach (int at in _reach.Members(_mayReach).Where(p => BitRow.Has(_reach.MayRun, p) && BitRow.Has(_reach.MayRest, p)))
        {
            TurnPosition position = _turn[at];
            if (IsCoastedOver(position))
            {
                continue;
            }

            _places.Add(new RestingPlace(at, position.LowerRad, position.UpperRad + Coast.MostRad, words.At(at)));
            foreach (TurnStep step in position.Next.Where(s => BitRow.Has(_reach.MayRest, s.To)))
            {
                Spread(spreads, words.At(at)).Enter(step, 0, Coast.MostRad);
            }
        }

        AddSpreads(spreads);
    }

    // A wheel at speed runs over a stretch shorter than its least coast, unless it could already stand before it.
    private bool IsCoastedOver(TurnPosition position) =>
        position.UpperRad - position.LowerRad < Coast.LeastRad && !position.Previous.Exists(s => BitRow.Has(_reach.MayRest, s.To));

    // At home it stands before it ever starts.
    private void AddHome()
    {
        foreach (int home in _model.Turn.AtHome().Where(p => BitRow.Has(_reach.MayRest, p) && !BitRow.Has(_reach.MayRun, p)))
        {
            double at = _turn[home].UpperRad >= Angles.TurnRad ? Angles.TurnRad : 0;
            _places.Add(new RestingPlace(home, at, at, "at home, before it starts"));
        }
    }

    private CoastSpread Spread(Dictionary<string, CoastSpread> spreads, string why)
    {
        if (!spreads.TryGetValue(why, out CoastSpread? spread))
        {
            spread = new CoastSpread(_model, _reach.MayRest);
            spreads[why] = spread;
        }

        return spread;
    }

    private void AddSpreads(Dictionary<string, CoastSpread> spreads)
    {
        foreach ((string why, CoastSpread spread) in spreads)
        {
            _places.AddRange(spread.Rests().Select(r => new RestingPlace(r.Position, r.FromRad, r.ToRad, why)));
        }
    }

    // Whether an edge takes the motor's supply, for some inputs: it may turn before, does not surely turn behind, and the edge has
    // changed that. A motor as undecided behind as before may stop anywhere, and not because of the edge.
    private bool StopsOver(int from, int to)
    {
        foreach (int inputs in InputMask.Subsets(_sheet.MatterToMotion))
        {
            if (TurnMotion.Stops(_model, _sheet, inputs, from, to))
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>How far a wheel without supply spreads by its coast over positions in which it may stand.</summary>
internal sealed class CoastSpread(CircuitModel model, ulong[] mayRest)
{
    private readonly Dictionary<int, StandingEntry> _entries = [];
    private readonly Queue<int> _open = new();

    /// <summary>Lets the wheel in over an edge, with a range of coast left.</summary>
    public void Enter(TurnStep step, double leastRad, double mostRad)
    {
        // Position 0 lies across the seam: its own angles are a turn before those of the edge that leads into it.
        TurnEdge edge = step.To == 0 ? step.Edge.Shifted(-Angles.TurnRad) : step.Edge;
        StandingEntry next = new(edge.EarliestRad, edge.LatestRad, leastRad, mostRad);
        StandingEntry merged = _entries.TryGetValue(step.To, out StandingEntry known) ? known.With(next) : next;
        if (!_entries.ContainsKey(step.To) || merged != known)
        {
            _entries[step.To] = merged;
            _open.Enqueue(step.To);
        }
    }

    /// <summary>Where it may stand, by position; worst case.</summary>
    public IEnumerable<(int Position, double FromRad, double ToRad)> Rests()
    {
        while (_open.TryDequeue(out int at))
        {
            RunOn(at);
        }

        foreach ((int at, StandingEntry entry) in _entries.OrderBy(e => e.Key))
        {
            TurnPosition position = model.Turn.Positions[at];
            double from = Math.Max(position.LowerRad, entry.EarliestRad + entry.LeastRad);
            double to = Math.Min(position.UpperRad, entry.LatestRad + entry.MostRad);
            if (from <= to)
            {
                yield return (at, from, to);
            }
        }
    }

    private void RunOn(int at)
    {
        StandingEntry entry = _entries[at];
        foreach (TurnStep step in model.Turn.Positions[at].Next.Where(s => BitRow.Has(mayRest, s.To)))
        {
            double most = entry.MostRad - StateReach.Gap(model, WheelMotion.Forward, at, step.Edge);
            if (most > 0)
            {
                Enter(step, Math.Max(0, entry.LeastRad - Math.Max(0, step.Edge.LatestRad - entry.EarliestRad)), most);
            }
        }
    }

    private readonly record struct StandingEntry(double EarliestRad, double LatestRad, double LeastRad, double MostRad)
    {
        public StandingEntry With(StandingEntry other) => new(
            Math.Min(EarliestRad, other.EarliestRad),
            Math.Max(LatestRad, other.LatestRad),
            Math.Min(LeastRad, other.LeastRad),
            Math.Max(MostRad, other.MostRad));
    }
}

/// <summary>By what the motor can be stopped while no edge is passed, in words.</summary>
internal sealed class StopWords
{
    private readonly CircuitModel _model;
    private readonly ulong[][] _opening;
    private readonly ulong[][] _closing;
    private readonly ulong[] _undecided;

    /// <summary>Reads a sheet.</summary>
    public StopWords(CircuitModel model, StateSheet sheet)
    {
        _model = model;
        ulong[] Row() => BitRow.Empty(model.Turn.Positions.Count);
        _opening = [.. model.Inputs.Select(_ => Row())];
        _closing = [.. model.Inputs.Select(_ => Row())];
        _undecided = Row();
        foreach (int inputs in InputMask.Subsets(sheet.MatterToMotion))
        {
            BitRow.AddAll(_undecided, sheet.Undecided(inputs, model.Motor));
            foreach (int i in InputMask.Members(sheet.MatterToMotion))
            {
                ulong[] row = (inputs >> i & 1) != 0 ? _opening[i] : _closing[i];
                AddStops(sheet, inputs, inputs ^ (1 << i), row);
            }
        }
    }

    /// <summary>Why the wheel can stand in a position in which it can also run.</summary>
    public string At(int position)
    {
        List<string> ways = [];
        AddWays(ways, _opening, position, closes: false);
        AddWays(ways, _closing, position, closes: true);
        return ways.Count > 0 ? $"where {string.Join(" or ", ways)}"
            : BitRow.Has(_undecided, position) ? "where the motor is between drop-out and pull-in"
            : "where the fuse opens";
    }

    // "'a' or 'b' can open": inputs that do the same are named together.
    private void AddWays(List<string> ways, ulong[][] rows, int position, bool closes)
    {
        string verb = closes ? " can close" : " can open";
        string[] all = [.. Enumerable.Range(0, _model.Inputs.Count).Where(i => BitRow.Has(rows[i], position)).Select(i => _model.Possibility(i, closes))];
        string[] plain = [.. all.Where(w => w.EndsWith(verb, StringComparison.Ordinal)).Select(w => w[..^verb.Length])];
        ways.AddRange(plain.Length > 0 ? [string.Join(" or ", plain) + verb] : Array.Empty<string>());
        ways.AddRange(all.Where(w => !w.EndsWith(verb, StringComparison.Ordinal)));
    }

    private void AddStops(StateSheet sheet, int before, int after, ulong[] row)
    {
        ReadOnlySpan<ulong> on = sheet.On(before, _model.Motor);
        ReadOnlySpan<ulong> undecided = sheet.Undecided(before, _model.Motor);
        ReadOnlySpan<ulong> isShort = sheet.Short(before);
        ReadOnlySpan<ulong> thenOn = sheet.On(after, _model.Motor);
        ReadOnlySpan<ulong> thenUndecided = sheet.Undecided(after, _model.Motor);
        ReadOnlySpan<ulong> thenShort = sheet.Short(after);
        for (int w = 0; w < row.Length; w++)
        {
            // A change of an input that leaves the motor as it was stops nothing.
            ulong same = (undecided[w] & thenUndecided[w]) | (isShort[w] & thenShort[w]);
            row[w] |= (on[w] | undecided[w] | isShort[w]) & ~thenOn[w] & ~same;
        }
    }
}
