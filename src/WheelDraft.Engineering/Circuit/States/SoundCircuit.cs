using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>The circuit without fault, solved: answers what any state is.</summary>
internal sealed class SoundCircuit
{
    private readonly NetworkSplit _split;
    private readonly SectionSolver _solver;
    private readonly FaultCase _none;
    private readonly Lock _gate = new();

    /// <summary>Solves the sound circuit.</summary>
    public SoundCircuit(CircuitModel model)
    {
        Model = model;
        _split = new NetworkSplit(model);
        _solver = new SectionSolver(model);
        _none = new FaultCase(model, new CircuitFault(CircuitFaultKind.None));
        Sheet = new StateSheet(model);
        Sheet.Fill(_none, _split, _solver);
        Reach = new StateReach(model, Sheet);
        Reached = Reach.FromHome(Certainty.Certain);
        MayReach = Reach.FromHome(Certainty.Possible);
        Motion = new TurnMotion(model, Sheet, Reach, MayReach);
    }

    /// <summary>The circuit.</summary>
    public CircuitModel Model { get; }

    /// <summary>Its states.</summary>
    public StateSheet Sheet { get; }

    /// <summary>How the wheel can move.</summary>
    public StateReach Reach { get; }

    /// <summary>Positions surely reached from home.</summary>
    public ulong[] Reached { get; }

    /// <summary>Positions that may be reached from home.</summary>
    public ulong[] MayReach { get; }

    /// <summary>Parking, stalls, the cycle.</summary>
    public TurnMotion Motion { get; }

    /// <summary>Whether a contact is closed at an input position; that of a lever depends on what holds the lever.</summary>
    /// <param name="contact">Index of the contact.</param>
    /// <param name="inputs">Closed inputs.</param>
    /// <param name="byTurn">Whether the turn closes it.</param>
    public bool IsClosed(int contact, int inputs, bool byTurn) => _none.ModeAt(contact, inputs) switch
    {
        ElementMode.Joined => true,
        ElementMode.Absent => false,
        _ => byTurn,
    };

    /// <summary>One state.</summary>
    /// <param name="interval">Index of the interval.</param>
    /// <param name="inputs">Closed inputs.</param>
    public CircuitState State(int interval, int inputs)
    {
        int position = Model.Turn.Intervals[interval].Position;
        bool isShort = BitRow.Has(Sheet.Short(inputs), position);
        LoadState[] loads = [.. Enumerable.Range(0, Model.Loads.Count).Select(l => Sheet.StateOf(inputs, l, position))];
        return new CircuitState(interval, inputs)
        {
            Loads = loads,
            Motor = Model.Motor < 0 ? null : loads[Model.Motor],
            VoltsV = Volts(position, inputs, isShort),
            IsReachable = BitRow.Has(MayReach, position),
            IsShort = isShort,
            SecondsToHome = Motion.SecondsToHome(interval, inputs),
        };
    }

    /// <summary>All inputs where all of their positions can be listed, else sets of inputs so that each load's are within one.</summary>
    public IReadOnlyList<int> MatterTogether()
    {
        if (InputBudget.Allows(Model, Model.AllInputs))
        {
            return [Model.AllInputs];
        }

        int[] sets = [.. Enumerable.Range(0, Model.Loads.Count).Select(Sheet.MatterTo).Append(Sheet.MatterToShort).Distinct()];
        return [.. sets.Where(s => !sets.Any(o => o != s && (o & s) == s)).Order()];
    }

    /// <summary>Voltage of every node over neutral; null where nothing holds a node, everywhere when the fuse is open.</summary>
    /// <param name="interval">Index of the interval.</param>
    /// <param name="inputs">Closed inputs.</param>
    public double?[] NodesV(int interval, int inputs)
    {
        int position = Model.Turn.Intervals[interval].Position;
        double?[] nodes = new double?[Model.NodeCount];
        if (BitRow.Has(Sheet.Short(inputs), position))
        {
            return nodes;
        }

        // The work space serves one state at a time.
        lock (_gate)
        {
            _split.Split(_none, inputs);
            double?[] merged = new double?[Model.NodeCount];
            for (int s = 0; s < _split.Count; s++)
            {
                AddSection(s, position, merged);
            }

            for (int n = 0; n < nodes.Length; n++)
            {
                HeldAt held = _split.Held[_split.Roots[n]];
                nodes[n] = held == HeldAt.Nothing ? merged[_split.Roots[n]] : Complex.Abs(Model.Potentials[SourcePotentials.IndexOf(held)]);
            }
        }

        return nodes;
    }

    private void AddSection(int section, int position, double?[] merged)
    {
        if (_split.IsFed(section))
        {
            SectionDetail detail = _solver.Detail(_split.Section(section));
            SectionPattern pattern = detail.Solved[detail.Contacts.PatternAt[position]];
            for (int k = 0; k < detail.Nodes.Length; k++)
            {
                merged[detail.Nodes[k]] = pattern.Potentials[k] is { } volts ? Complex.Abs(volts) : null;
            }

            return;
        }

        UnfedPotentials unfed = _solver.Unfed(_split.Section(section), apart: false);
        for (int k = 0; k < unfed.Nodes.Length; k++)
        {
            NodePotential here = unfed.Of[k].First(p => BitRow.Has(p.Positions, position));
            merged[unfed.Nodes[k]] = here.Floats < 0 ? Complex.Abs(here.Volts) : null;
        }
    }

    /// <summary>How a load behaves in an interval, and when it is on.</summary>
    public TruthEntry Truth(int interval, int load)
    {
        int position = Model.Turn.Intervals[interval].Position;
        int matters = Sheet.MatterTo(load);
        List<int> on = [];
        bool undecided = false;
        foreach (int inputs in InputMask.Subsets(matters))
        {
            LoadState state = Sheet.StateOf(inputs, load, position);
            undecided |= state == LoadState.Undecided;
            if (state == LoadState.On)
            {
                on.Add(inputs);
            }
        }

        LoadTruth truth = undecided ? LoadTruth.Undecided
            : on.Count == 0 ? LoadTruth.Off
            : on.Count == InputMask.Positions(matters) ? LoadTruth.On
            : LoadTruth.WithInputs;
        return new TruthEntry(truth, on.Count == 0 || on.Count == InputMask.Positions(matters) ? "" : Condition(on, matters));
    }

    // The input positions as one product of conditions where they are one, else as the products of each, joined by "or".
    private string Condition(List<int> on, int matters)
    {
        List<(int Fixed, int Closed)> products = [];
        HashSet<int> left = [.. on];
        HashSet<int> all = [.. on];
        while (left.Count > 0)
        {
            int seed = left.Min();
            int isFixed = matters;
            foreach (int i in InputMask.Members(matters))
            {
                // Free an input when the product stays within the positions at which the load is on.
                int wider = isFixed & ~(1 << i);
                isFixed = Members(matters, wider, seed & wider).All(all.Contains) ? wider : isFixed;
            }

            products.Add((isFixed, seed & isFixed));
            left.ExceptWith(Members(matters, isFixed, seed & isFixed));
        }

        return string.Join(" or ", products.Select(p => Words(p.Fixed, p.Closed)));
    }

    private static IEnumerable<int> Members(int matters, int isFixed, int closed) => InputMask.Subsets(matters & ~isFixed).Select(u => u | closed);

    private string Words(int isFixed, int closed) => string.Join(", ", Enumerable.Range(0, Model.Inputs.Count)
        .Where(i => (isFixed >> i & 1) != 0)
        .Select(i => Model.Standing(i, (closed >> i & 1) != 0)));

    private double[] Volts(int position, int inputs, bool isShort)
    {
        double[] volts = new double[Model.Loads.Count];
        if (isShort)
        {
            Array.Fill(volts, double.NaN);
            return volts;
        }

        // The work space serves one state at a time.
        lock (_gate)
        {
            _split.Split(_none, inputs);
            for (int s = 0; s < _split.Count; s++)
            {
                if (!_split.IsFed(s))
                {
                    continue;
                }

                SectionDetail detail = _solver.Detail(_split.Section(s));
                SectionPattern pattern = detail.Solved[detail.Contacts.PatternAt[position]];
                for (int l = 0; l < detail.Loads.Length; l++)
                {
                    volts[detail.Loads[l]] = pattern.Volts[l];
                }
            }
        }

        return volts;
    }
}
