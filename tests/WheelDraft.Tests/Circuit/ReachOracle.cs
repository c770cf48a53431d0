using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests;

/// <summary>
/// The oracle for reachability and interlocks: every state (interval, inputs) is a node of its own, every move is tried one by
/// one, every state is solved by the tableau. For circuits with exact edges at different angles and no coast.
/// </summary>
internal sealed class ReachOracle
{
    private readonly CircuitBuilder _circuit;
    private readonly double[] _cuts;
    private readonly Dictionary<(CircuitFault, int, int), LoadState[]> _solved = [];
    private readonly TableauMemory _memory = new();

    public ReachOracle(CircuitBuilder circuit)
    {
        _circuit = circuit;
        _cuts = [.. circuit.Contacts.SelectMany(c => c.Periods).SelectMany(p => new[] { p.Closed.StartRad, Angles.InTurn(p.Closed.EndRad) }).Order()];
    }

    public static CircuitFault NoFault { get; } = new(CircuitFaultKind.None);

    public int Intervals => Math.Max(1, _cuts.Length);

    /// <summary>Angle midway of an interval; interval 0 contains home.</summary>
    public double MiddleRad(int interval)
    {
        if (_cuts.Length == 0)
        {
            return Math.PI;
        }

        // A cut never lies at home in these circuits: interval 0 runs from the last cut over home to the first.
        double from = interval == 0 ? _cuts[^1] - Angles.TurnRad : _cuts[interval - 1];
        return Angles.InTurn((from + _cuts[interval]) / 2);
    }

    /// <summary>States of the loads; all off when the fuse opens.</summary>
    public LoadState[] Loads(CircuitFault fault, int interval, int inputs)
    {
        if (!_solved.TryGetValue((fault, interval, inputs), out LoadState[]? states))
        {
            double[]? volts = TableauSolver.LoadVolts(_circuit, MiddleRad(interval), inputs, fault, _memory);
            states = [.. _circuit.Loads.Select((l, i) => volts is null ? LoadState.Off : StateOf(l, volts[i]))];
            _solved[(fault, interval, inputs)] = states;
            _solved[(fault with { Other = fault.Other + "\u0001short" }, interval, inputs)] = volts is null ? [LoadState.On] : [];
        }

        return states;
    }

    /// <summary>Intervals reached, the motor surely or only possibly on.</summary>
    public HashSet<int> Reached(CircuitFault fault, bool possible)
    {
        HashSet<(int Interval, int Inputs)> seen = [(0, 0)];
        Explore(seen, NoFault, possible, forward: true);
        if (fault.Kind == CircuitFaultKind.WheelSlipped)
        {
            return [.. Enumerable.Range(0, Intervals)];
        }

        if (fault.Kind is not CircuitFaultKind.None and not CircuitFaultKind.MotorStalled)
        {
            Explore(seen, fault, possible, fault.Kind != CircuitFaultKind.MotorReversed);
        }

        return [.. seen.Select(s => s.Interval)];
    }

    /// <summary>Whether the fuse opens.</summary>
    public bool IsShort(int interval, int inputs)
    {
        Loads(NoFault, interval, inputs);
        return _solved[(NoFault with { Other = "\u0001short" }, interval, inputs)].Length > 0;
    }

    /// <summary>The interval that an angle lies in, away from every cut.</summary>
    public int IntervalAt(double angleRad) => _cuts.Length == 0 ? 0 : _cuts.Count(c => c <= angleRad) % _cuts.Length;

    /// <summary>Verdict of an interlock.</summary>
    public InterlockVerdict Verdict(InterlockBrief interlock, CircuitFault fault)
    {
        int[] loads = [.. interlock.Loads.Select(name => _circuit.Loads.ToList().FindIndex(l => string.Equals(l.Name, name, StringComparison.Ordinal)))];
        HashSet<int> sure = Reached(fault, possible: false);
        InterlockVerdict verdict = InterlockVerdict.Holds;
        foreach (int interval in Reached(fault, possible: true))
        {
            for (int inputs = 0; inputs < 1 << _circuit.Inputs.Count; inputs++)
            {
                if (!IsAsked(interlock, fault, interval, inputs))
                {
                    continue;
                }

                LoadState[] all = Loads(fault, interval, inputs);
                (bool broken, bool unsure) = Judge(interlock.Claim, [.. loads.Select(l => all[l])]);
                if (broken && sure.Contains(interval))
                {
                    return InterlockVerdict.Fails;
                }

                verdict = broken || unsure ? InterlockVerdict.Undecided : verdict;
            }
        }

        return verdict;
    }

    private bool IsAsked(InterlockBrief interlock, CircuitFault fault, int interval, int inputs)
    {
        // What an input senses is what its switch would say if it were sound.
        bool Senses(string name) => IsClosed(name, NoFault, interval, inputs);
        return interlock.WhileClosed.All(n => IsClosed(n, fault, interval, inputs))
            && !interlock.WhileOpen.Any(n => IsClosed(n, fault, interval, inputs))
            && interlock.WhileTrue.All(Senses)
            && !interlock.WhileFalse.Any(Senses);
    }

    // Every way in which the undecided loads may turn out is tried: broken in all of them, or in some.
    private static (bool Broken, bool Unsure) Judge(InterlockClaim claim, LoadState[] states)
    {
        int[] open = [.. Enumerable.Range(0, states.Length).Where(i => states[i] == LoadState.Undecided)];
        List<bool> ways = [];
        for (int way = 0; way < 1 << open.Length; way++)
        {
            bool[] on = [.. states.Select((s, i) => s == LoadState.On || (s == LoadState.Undecided && (way >> Array.IndexOf(open, i) & 1) != 0))];
            ways.Add(claim switch
            {
                InterlockClaim.NeverOn => on.Any(o => o),
                InterlockClaim.AlwaysOn => on.Any(o => !o),
                _ => on.All(o => o),
            });
        }

        return (ways.All(w => w), ways.Any(w => w));
    }

    private static LoadState StateOf(LoadBrief load, double volts) =>
        volts >= (load.PullInShare * 230) - 1e-6 ? LoadState.On : volts <= (load.DropOutShare * 230) + 1e-6 ? LoadState.Off : LoadState.Undecided;

    private bool IsClosed(string name, CircuitFault fault, int interval, int inputs)
    {
        int input = _circuit.Inputs.ToList().FindIndex(i => string.Equals(i.Name, name, StringComparison.Ordinal));
        if (string.Equals(fault.Subject, name, StringComparison.Ordinal))
        {
            switch (fault.Kind)
            {
                case CircuitFaultKind.InputStuckClosed or CircuitFaultKind.ContactWelded:
                    return true;
                case CircuitFaultKind.InputStuckOpen or CircuitFaultKind.ContactNeverMade:
                    return false;
                default:
                    break;
            }
        }

        return input >= 0
            ? (inputs >> input & 1) != 0
            : _circuit.Contacts.Single(c => string.Equals(c.Output, name, StringComparison.Ordinal)).Periods.Any(p => p.Closed.Contains(MiddleRad(interval)));
    }

    private void Explore(HashSet<(int Interval, int Inputs)> seen, CircuitFault fault, bool possible, bool forward)
    {
        Queue<(int Interval, int Inputs)> open = new(seen);
        while (open.TryDequeue(out (int Interval, int Inputs) at))
        {
            for (int i = 0; i < _circuit.Inputs.Count; i++)
            {
                Go((at.Interval, at.Inputs ^ (1 << i)));
            }

            if (Turns(fault, at, possible))
            {
                Go(((at.Interval + (forward ? 1 : Intervals - 1)) % Intervals, at.Inputs));
            }
        }

        void Go((int Interval, int Inputs) to)
        {
            if (seen.Add(to))
            {
                open.Enqueue(to);
            }
        }
    }

    private bool Turns(CircuitFault fault, (int Interval, int Inputs) at, bool possible)
    {
        if (!_circuit.Loads.Any(l => l.Name is "motor"))
        {
            return true;
        }

        LoadState motor = Loads(fault, at.Interval, at.Inputs)[^1];
        bool isShort = _solved[(fault with { Other = fault.Other + "\u0001short" }, at.Interval, at.Inputs)].Length > 0;
        return motor == LoadState.On || (possible && (motor == LoadState.Undecided || isShort));
    }
}
