using System.Numerics;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests;

/// <summary>
/// The oracle for where the wheel stands: the turn in cells of half a degree, and a walk over every node (cell, inputs, cells of
/// coast still to run), move by move; every state is solved by the tableau. For circuits with exact edges between cells, and
/// coasts of whole cells. A cell is what the wheel is in, so a stop within a cell runs on over one cell more than one at its edge.
/// </summary>
internal sealed class StandingOracle
{
    public const int Cells = 720;

    private const int Running = -1;

    private readonly CircuitBuilder _circuit;
    private readonly ReachOracle _reach;
    private readonly int _least;
    private readonly int _most;
    private readonly HashSet<(int Cell, int Inputs, int Left)> _seen = [];
    private readonly Queue<(int Cell, int Inputs, int Left)> _open = new();

    /// <summary>Walks from home.</summary>
    /// <param name="circuit">The circuit; its motor is the last load.</param>
    /// <param name="possible">Whether an undecided motor and a fuse about to open count as turning, and an undecided one as standing too.</param>
    public StandingOracle(CircuitBuilder circuit, bool possible)
    {
        (_circuit, _reach) = (circuit, new ReachOracle(circuit));
        (_least, _most) = ((int)Math.Round(circuit.CoastLeastDeg * 2), (int)Math.Round(circuit.CoastMostDeg * 2));
        Go((0, 0, 0));
        while (_open.TryDequeue(out (int Cell, int Inputs, int Left) at))
        {
            Step(at, possible);
        }
    }

    /// <summary>Cells and inputs in which the wheel stands.</summary>
    public HashSet<(int Cell, int Inputs)> Stands { get; } = [];

    /// <summary>Intervals in which it has been.</summary>
    public HashSet<int> Intervals => [.. _seen.Select(s => IntervalOf(s.Cell))];

    /// <summary>Contacts open with voltage across them in a cell: those that surely have it, and those of which a net floats.</summary>
    public (HashSet<int> Sure, HashSet<int> Floating) Across(int cell, int inputs)
    {
        (HashSet<int> sure, HashSet<int> floating) = ([], []);
        if (_reach.IsShort(IntervalOf(cell), inputs))
        {
            return (sure, floating);
        }

        double middle = MiddleRad(cell);
        IReadOnlyDictionary<string, Complex?> nets = TableauSolver.NetPotentials(_circuit, middle, inputs);
        for (int c = 0; c < _circuit.Contacts.Count; c++)
        {
            ContactSchedule contact = _circuit.Contacts[c];
            if (contact.Periods.Any(p => p.Closed.Contains(middle)))
            {
                continue;
            }

            Complex? wheel = nets[_circuit.IsLands ? contact.WheelNet : "(copper)"];
            Complex? wiper = nets[contact.WiperNet];
            if (wheel is not { } a || wiper is not { } b)
            {
                floating.Add(c);
            }
            else if ((a - b).Magnitude > 1e-6)
            {
                sure.Add(c);
            }
        }

        return (sure, floating);
    }

    public static double MiddleRad(int cell) => Angles.RadFromDeg((cell + 0.5) / 2);

    public int IntervalOf(int cell) => _reach.IntervalAt(MiddleRad(cell));

    private void Go((int Cell, int Inputs, int Left) to)
    {
        if (_seen.Add(to))
        {
            _open.Enqueue(to);
        }
    }

    private void Step((int Cell, int Inputs, int Left) at, bool possible)
    {
        LoadState motor = _reach.Loads(ReachOracle.NoFault, IntervalOf(at.Cell), at.Inputs)[^1];
        bool turns = motor == LoadState.On || (possible && MayTurn(at.Cell, at.Inputs));
        if (at.Left == Running)
        {
            Run(at, turns, motor);
            return;
        }

        Toggle(at, (inputs, _) => Go((at.Cell, inputs, at.Left)));
        if (turns)
        {
            Go(at with { Left = Running });
        }

        if (motor == LoadState.On)
        {
            return;
        }

        if (at.Left > 0)
        {
            Go(((at.Cell + 1) % Cells, at.Inputs, at.Left - 1));
        }
        else if (possible || motor == LoadState.Off)
        {
            Stands.Add((at.Cell, at.Inputs));
        }
    }

    private void Run((int Cell, int Inputs, int Left) at, bool turns, LoadState motor)
    {
        if (!turns)
        {
            // Its supply breaks as it enters the cell.
            Lose(at.Cell, at.Inputs, Math.Max(_least, _most - 1));
            return;
        }

        if (motor != LoadState.On)
        {
            // A motor that may let go at any time does so within the cell.
            Lose(at.Cell, at.Inputs, _most);
        }

        Toggle(at, (inputs, then) =>
        {
            if (then != LoadState.On)
            {
                Lose(at.Cell, inputs, _most);
            }
            else
            {
                Go((at.Cell, inputs, Running));
            }
        });
        Go(((at.Cell + 1) % Cells, at.Inputs, Running));
    }

    private void Lose(int cell, int inputs, int most)
    {
        for (int left = _least; left <= most; left++)
        {
            Go((cell, inputs, left));
        }
    }

    private bool MayTurn(int cell, int inputs) =>
        _reach.IsShort(IntervalOf(cell), inputs) || _reach.Loads(ReachOracle.NoFault, IntervalOf(cell), inputs)[^1] == LoadState.Undecided;

    private void Toggle((int Cell, int Inputs, int Left) at, Action<int, LoadState> then)
    {
        for (int i = 0; i < _circuit.Inputs.Count; i++)
        {
            int inputs = at.Inputs ^ (1 << i);
            then(inputs, _reach.Loads(ReachOracle.NoFault, IntervalOf(at.Cell), inputs)[^1]);
        }
    }
}
