using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Where the wheel comes to rest because a contact breaks what feeds its motor.</summary>
/// <param name="FromRad">Least programme angle of rest, edges where they should be, in [0, 2π).</param>
/// <param name="ToRad">Greatest, at least the least; past 2π when the range runs across home.</param>
/// <param name="Output">The output at whose edge the motor loses its supply; null where nothing but home stops the wheel.</param>
public sealed record ParkedPosition(double FromRad, double ToRad, string? Output)
{
    /// <summary>How much sooner and later the edge may come, worst case.</summary>
    public EdgeBand Band { get; init; }
}

/// <summary>Parking, standing and stalls of the sound circuit.</summary>
internal sealed class TurnMotion
{
    private readonly CircuitModel _model;
    private readonly StateSheet _sheet;
    private readonly StateReach _reach;
    private readonly ulong[] _reached;
    private readonly List<ParkedPosition> _parks = [];

    /// <summary>Reads the sound circuit.</summary>
    /// <param name="model">The circuit.</param>
    /// <param name="sheet">States without fault.</param>
    /// <param name="reach">Movement without fault.</param>
    /// <param name="reached">Positions that may be reached.</param>
    public TurnMotion(CircuitModel model, StateSheet sheet, StateReach reach, ulong[] reached)
    {
        (_model, _sheet, _reach, _reached) = (model, sheet, reach, reached);
        if (model.Motor < 0)
        {
            Coast coast = model.Brief.Drive.Coast;
            _parks.Add(new ParkedPosition(coast.LeastRad, coast.MostRad, null));
            return;
        }

        FindParks();
        Resting = new RestingPlaces(model, sheet, reach, reached);
    }

    /// <summary>Where the wheel parks, by angle.</summary>
    public IReadOnlyList<ParkedPosition> Parks => [.. _parks.OrderBy(p => p.FromRad).ThenBy(p => p.Output, StringComparer.Ordinal)];

    /// <summary>Everywhere the wheel can come to stand; null without a motor.</summary>
    public RestingPlaces? Resting { get; }

    /// <summary>Positions at which the wheel may rest and no input can start it again.</summary>
    public IEnumerable<int> Stalls => Resting is null ? [] : _reach.Members(Resting.Positions).Where(p => !BitRow.Has(_reach.MayRun, p));

    /// <summary>Seconds from the start of an interval to home, inputs held as they are; null when the wheel stops before.</summary>
    public double? SecondsToHome(int interval, int inputs)
    {
        IReadOnlyList<TurnInterval> intervals = _model.Turn.Intervals;
        if (interval == 0)
        {
            return 0;
        }

        for (int i = interval; i < intervals.Count; i++)
        {
            if (!IsOn(inputs, intervals[i].Position))
            {
                return null;
            }
        }

        // The first interval may begin before home.
        bool stopsShort = intervals[0].FromRad > 0 && !IsOn(inputs, intervals[0].Position);
        return stopsShort ? null : SecondsAhead(intervals[interval].FromRad);
    }

    /// <summary>Seconds from a programme angle to home if the motor runs all the way.</summary>
    public double SecondsAhead(double angleRad) => _model.SecondsAt(Angles.TurnRad - angleRad);

    private bool IsOn(int inputs, int position) =>
        _model.Motor < 0 || _sheet.StateOf(inputs, _model.Motor, position) == LoadState.On;

    /// <summary>Whether the motor may turn at one position, is not sure to turn at the next, and the step between has changed that.</summary>
    public static bool Stops(CircuitModel model, StateSheet sheet, int inputs, int from, int to)
    {
        LoadState before = sheet.StateOf(inputs, model.Motor, from);
        LoadState after = sheet.StateOf(inputs, model.Motor, to);
        bool wasShort = BitRow.Has(sheet.Short(inputs), from);
        bool isShort = BitRow.Has(sheet.Short(inputs), to);
        return (before != LoadState.Off || wasShort) && after != LoadState.On && (before != after || wasShort != isShort);
    }

    private void FindParks()
    {
        IReadOnlyList<TurnPosition> turn = _model.Turn.Positions;
        foreach (int from in _reach.Members(_reached))
        {
            foreach (TurnStep step in turn[from].Next)
            {
                foreach (int inputs in InputMask.Subsets(_sheet.MatterToMotion))
                {
                    if (Stops(_model, _sheet, inputs, from, step.To))
                    {
                        Park(step, inputs);
                    }
                }
            }
        }
    }

    // From the edge the wheel coasts; where an edge within the coast feeds the motor again it does not come to rest beyond it.
    private void Park(TurnStep step, int inputs)
    {
        double least = _model.Brief.Drive.Coast.LeastRad;
        double most = _model.Brief.Drive.Coast.MostRad;
        int at = step.To;
        TurnEdge last = step.Edge;
        double entered = 0;
        while (true)
        {
            TurnStep next = _model.Turn.Positions[at].Next.MinBy(s => s.Edge.AtRad);
            double left = entered + Math.Max(0, next.Edge.AtRad - last.AtRad + (at == 0 ? Angles.TurnRad : 0));
            if (left > most)
            {
                break;
            }

            if (IsOn(inputs, next.To))
            {
                most = left;
                break;
            }

            (at, last, entered) = (next.To, next.Edge, left);
        }

        if (most >= least)
        {
            AddPark(step.Edge, least, most);
        }
    }

    private void AddPark(TurnEdge edge, double leastRad, double mostRad)
    {
        double from = Angles.InTurn(edge.AtRad + leastRad);
        ParkedPosition park = new(from, from + (mostRad - leastRad), _model.Contacts[edge.Contact].Name)
        {
            // The edge's own band counts the wheel's lag only; a wheel at rest may rock back in the backlash too.
            Band = new EdgeBand(edge.AtRad - edge.EarliestRad + _model.Brief.Drive.BacklashRad, edge.LatestRad - edge.AtRad),
        };
        int same = _parks.FindIndex(p => p.FromRad == park.FromRad && string.Equals(p.Output, park.Output, StringComparison.Ordinal));
        if (same < 0)
        {
            _parks.Add(park);
        }
        else if (park.ToRad > _parks[same].ToRad)
        {
            _parks[same] = park;
        }
    }
}
