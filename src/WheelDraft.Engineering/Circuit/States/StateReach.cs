using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How sure the motor's turning must be for a step to count.</summary>
internal enum Certainty
{
    /// <summary>The motor is on.</summary>
    Certain,

    /// <summary>The motor is on or undecided, or the fuse is just about to open.</summary>
    Possible,
}

/// <summary>Where the wheel can move and rest under one fault, whatever the inputs do, and how far it gets.</summary>
/// <remarks>Inputs are free to change at any time, so every input position is reachable at every reached position of the wheel,
/// and a step over an edge needs only one input position that turns the motor. A wheel that loses its motor at an edge may be
/// carried over further edges by its coast.</remarks>
internal sealed class StateReach
{
    private readonly CircuitModel _model;
    private readonly IReadOnlyList<TurnPosition> _turn;

    /// <summary>Reads the motor's states from a sheet.</summary>
    public StateReach(CircuitModel model, StateSheet sheet)
    {
        _model = model;
        _turn = model.Turn.Positions;
        Motion = sheet.Fault.Motion;
        Runs = BitRow.Empty(_turn.Count);
        MayRun = BitRow.Empty(_turn.Count);
        MayRest = BitRow.Empty(_turn.Count);
        if (model.Motor < 0)
        {
            Runs = BitRow.Full(_turn.Count);
            MayRun = BitRow.Full(_turn.Count);
            return;
        }

        ulong[] all = BitRow.Full(_turn.Count);
        foreach (int inputs in InputMask.Subsets(sheet.MatterToMotion))
        {
            ReadOnlySpan<ulong> on = sheet.On(inputs, model.Motor);
            ReadOnlySpan<ulong> undecided = sheet.Undecided(inputs, model.Motor);
            ReadOnlySpan<ulong> isShort = sheet.Short(inputs);
            for (int w = 0; w < Runs.Length; w++)
            {
                Runs[w] |= on[w];
                MayRun[w] |= on[w] | undecided[w] | isShort[w];
                MayRest[w] |= all[w] & ~on[w];
            }
        }
    }

    /// <summary>How the wheel moves.</summary>
    public WheelMotion Motion { get; }

    /// <summary>Positions at which some inputs turn the motor.</summary>
    public ulong[] Runs { get; }

    /// <summary>Positions at which some inputs may turn the motor.</summary>
    public ulong[] MayRun { get; }

    /// <summary>Positions at which some inputs leave the motor off or undecided.</summary>
    public ulong[] MayRest { get; }

    /// <summary>Positions reached without fault, from home.</summary>
    public ulong[] FromHome(Certainty certainty) => From([.. _model.Turn.AtHome()], certainty);

    /// <summary>Positions reached once the fault has come at any of the positions reached before it.</summary>
    /// <param name="before">Positions reached without fault.</param>
    /// <param name="certainty">How sure the motor must be.</param>
    public ulong[] AfterFault(ulong[] before, Certainty certainty)
    {
        if (Motion == WheelMotion.Slipped)
        {
            return BitRow.Full(_turn.Count);
        }

        return Motion == WheelMotion.Stalled ? before : From([.. Members(before)], certainty);
    }

    /// <summary>The set bits of a row of positions.</summary>
    public IEnumerable<int> Members(ulong[] row) => Enumerable.Range(0, _turn.Count).Where(p => BitRow.Has(row, p));

    /// <summary>The least angle from entering a position to its next edge: from its latest entry to that edge at its earliest.</summary>
    /// <remarks>Edges are unrolled over one turn from position 0, which alone lies across the seam.</remarks>
    public static double Gap(CircuitModel model, WheelMotion motion, int position, TurnEdge edge)
    {
        TurnPosition at = model.Turn.Positions[position];
        double gap = motion == WheelMotion.Backward
            ? at.Next.Min(s => s.Edge.EarliestRad) - edge.LatestRad
            : edge.EarliestRad - at.Previous.Max(s => s.Edge.LatestRad);
        return Math.Max(0, position == 0 ? gap + Angles.TurnRad : gap);
    }

    private ulong[] From(IReadOnlyList<int> starts, Certainty certainty)
    {
        ulong[] runs = certainty == Certainty.Certain ? Runs : MayRun;
        ulong[] reached = BitRow.Empty(_turn.Count);

        // How far beyond a position's entry the wheel may still coast; running renews it at every edge.
        double[] carry = new double[_turn.Count];
        Array.Fill(carry, double.NegativeInfinity);
        Queue<int> open = new(starts);
        foreach (int start in starts)
        {
            BitRow.Add(reached, start);
        }

        while (open.TryDequeue(out int at))
        {
            foreach (TurnStep step in Motion == WheelMotion.Backward ? _turn[at].Previous : _turn[at].Next)
            {
                bool running = BitRow.Has(runs, at);
                double left = running ? _model.Brief.Drive.Coast.MostRad : carry[at] - Gap(_model, Motion, at, step.Edge);
                if ((!running && !(left > 0)) || (BitRow.Has(reached, step.To) && left <= carry[step.To]))
                {
                    continue;
                }

                carry[step.To] = left;
                BitRow.Add(reached, step.To);
                open.Enqueue(step.To);
            }
        }

        return reached;
    }
}
