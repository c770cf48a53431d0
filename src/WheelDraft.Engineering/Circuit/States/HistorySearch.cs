namespace WheelDraft.Engineering;

/// <summary>What a search looks for: states marked per input position, on sheets without and with fault.</summary>
/// <param name="Base">States without fault.</param>
/// <param name="Faulty">States with the fault; null when there is none.</param>
/// <param name="Certainty">How sure the motor must be.</param>
/// <param name="Matters">Inputs that matter to what is looked for, one bit each.</param>
/// <param name="IsTarget">Marks the states looked for, by input position and wheel position.</param>
internal sealed record HistoryGoal(StateSheet Base, StateSheet? Faulty, Certainty Certainty, int Matters, Func<int, int, bool> IsTarget)
{
    /// <summary>Inputs that a shortest history may change: a change of any other leaves wheel and goal as they are.</summary>
    public int Changes { get; } = Matters | Base.MatterToMotion | (Faulty?.MatterToMotion ?? 0);
}

/// <summary>A state's place in a history.</summary>
/// <param name="Position">Position of the wheel.</param>
/// <param name="Inputs">What the inputs sense.</param>
/// <param name="Faulty">Whether the fault has come.</param>
internal readonly record struct HistoryNode(int Position, int Inputs, bool Faulty);

/// <summary>One step of a history.</summary>
/// <param name="From">State before; null at home.</param>
/// <param name="To">State after.</param>
/// <param name="Edge">The edge passed; null for other steps.</param>
/// <param name="IsSure">Whether the motor is on for certain while the edge is passed, or the wheel coasts over it.</param>
internal sealed record HistoryStep(HistoryNode? From, HistoryNode To, TurnEdge? Edge, bool IsSure);

/// <summary>Finds the shortest history from home to a state: fewest inputs changed, then fewest edges passed.</summary>
/// <remarks>Dijkstra's method (1959) over the states, edges passed as the small cost, changes of inputs and the fault as the
/// large one; ties fall in the order of inputs and positions, so the same brief gives the same history.</remarks>
internal sealed class HistorySearch(CircuitModel model)
{
    // One change of inputs or a fault outweighs any number of edges passed.
    private const long EventCost = 1L << 32;

    private readonly Dictionary<HistoryNode, (long Cost, HistoryStep Step)> _best = [];
    private readonly PriorityQueue<HistoryNode, (long Cost, long Order)> _open = new();
    private long _order;

    /// <summary>Cost of the history found last; only to be compared with others'.</summary>
    public long Cost { get; private set; }

    /// <summary>The shortest history, or null when there is none cheaper than a limit.</summary>
    public IReadOnlyList<HistoryStep>? Find(HistoryGoal goal, long limit = long.MaxValue)
    {
        _best.Clear();
        _open.Clear();
        _order = 0;
        foreach (int start in model.Turn.AtHome())
        {
            Offer(new HistoryStep(null, new HistoryNode(start, 0, Faulty: false), null, IsSure: true), 0);
        }

        while (_open.TryDequeue(out HistoryNode node, out (long Cost, long Order) key))
        {
            if (key.Cost >= limit)
            {
                return null;
            }

            if (key.Cost > _best[node].Cost)
            {
                continue;
            }

            if (node.Faulty == goal.Faulty is not null && goal.IsTarget(node.Inputs, node.Position))
            {
                Cost = key.Cost;
                return PathTo(node);
            }

            Expand(goal, node, key.Cost);
        }

        return null;
    }

    private void Offer(HistoryStep step, long cost)
    {
        if (!_best.TryGetValue(step.To, out (long Cost, HistoryStep Step) known) || cost < known.Cost)
        {
            _best[step.To] = (cost, step);
            _open.Enqueue(step.To, (cost, _order++));
        }
    }

    private List<HistoryStep> PathTo(HistoryNode node)
    {
        List<HistoryStep> path = [];
        for (HistoryNode? at = node; at is { } here; at = path[^1].From)
        {
            path.Add(_best[here].Step);
        }

        path.Reverse();
        return path;
    }

    private void Expand(HistoryGoal goal, HistoryNode node, long cost)
    {
        StateSheet sheet = node.Faulty ? goal.Faulty! : goal.Base;
        Advance(goal, sheet, node, cost);
        foreach (int i in InputMask.Members(goal.Changes))
        {
            Offer(new HistoryStep(node, node with { Inputs = node.Inputs ^ (1 << i) }, null, IsSure: true), cost + EventCost);
        }

        if (goal.Faulty is { } faulty && !node.Faulty)
        {
            Break(faulty, node, cost + EventCost);
        }
    }

    private void Break(StateSheet faulty, HistoryNode node, long cost)
    {
        Offer(new HistoryStep(node, node with { Faulty = true }, null, IsSure: true), cost);
        if (faulty.Fault.Motion != WheelMotion.Slipped || model.Turn.Positions[node.Position].Interval != 0)
        {
            // A slip from home reaches every position, so slips from elsewhere add nothing.
            return;
        }

        for (int p = 0; p < model.Turn.Positions.Count; p++)
        {
            Offer(new HistoryStep(node, new HistoryNode(p, node.Inputs, Faulty: true), null, IsSure: true), cost);
        }
    }

    private void Advance(HistoryGoal goal, StateSheet sheet, HistoryNode node, long cost)
    {
        if (node.Faulty && sheet.Fault.Motion == WheelMotion.Stalled)
        {
            return;
        }

        bool sure = Turns(sheet, node, Certainty.Certain);
        if (!sure && (goal.Certainty == Certainty.Certain || !Turns(sheet, node, Certainty.Possible)))
        {
            return;
        }

        foreach (TurnStep step in StepsFrom(sheet, node))
        {
            HistoryNode to = node with { Position = step.To };
            Offer(new HistoryStep(node, to, step.Edge, sure), cost + 1);
            CoastOn(goal, sheet, to, cost + 1, model.Brief.Drive.Coast.MostRad);
        }
    }

    // Behind the edge at which the motor lost its supply the wheel may pass further edges by its coast.
    private void CoastOn(HistoryGoal goal, StateSheet sheet, HistoryNode node, long cost, double leftRad)
    {
        if (Turns(sheet, node, goal.Certainty))
        {
            return;
        }

        foreach (TurnStep step in StepsFrom(sheet, node))
        {
            double left = leftRad - StateReach.Gap(model, sheet.Fault.Motion, node.Position, step.Edge);
            if (left > 0)
            {
                HistoryNode to = node with { Position = step.To };
                Offer(new HistoryStep(node, to, step.Edge, IsSure: true), cost + 1);
                CoastOn(goal, sheet, to, cost + 1, left);
            }
        }
    }

    private List<TurnStep> StepsFrom(StateSheet sheet, HistoryNode node)
    {
        TurnPosition at = model.Turn.Positions[node.Position];
        return node.Faulty && sheet.Fault.Motion == WheelMotion.Backward ? at.Previous : at.Next;
    }

    private bool Turns(StateSheet sheet, HistoryNode node, Certainty certainty)
    {
        if (model.Motor < 0)
        {
            return true;
        }

        LoadState motor = sheet.StateOf(node.Inputs, model.Motor, node.Position);
        return motor == LoadState.On
            || (certainty == Certainty.Possible && (motor == LoadState.Undecided || BitRow.Has(sheet.Short(node.Inputs), node.Position)));
    }
}
