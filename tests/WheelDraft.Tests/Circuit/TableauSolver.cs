using MathNet.Numerics.LinearAlgebra;
using WheelDraft.Engineering;
using Complex = System.Numerics.Complex;

namespace WheelDraft.Tests;

/// <summary>
/// The oracle for networks, in another formulation than the product's: the sparse tableau of Hachtel, Brayton and Gustavson
/// (1971). Every switch and load is a branch with its own current; a closed switch is "no voltage", an open one "no current" and
/// left out, a load "voltage = Z times current"; nothing is merged and nothing is split into blocks. The overdetermined system goes through
/// the singular value decomposition of MathNet.Numerics, which gives the least solution where currents round a loop of closed
/// switches, or potentials that nothing fixes, are free; load voltages are unique all the same.
/// </summary>
internal sealed class TableauSolver
{
    private readonly CircuitBuilder _circuit;
    private readonly CircuitFault _fault;
    private readonly Dictionary<string, int> _nets = new(StringComparer.Ordinal);
    private readonly Dictionary<int, Complex> _held = [];
    private readonly List<Branch> _branches = [];

    private TableauSolver(CircuitBuilder circuit, CircuitFault fault)
    {
        (_circuit, _fault) = (circuit, fault);
        Hold(circuit.Lines[0], circuit.SupplyV);
        if (fault.Kind != CircuitFaultKind.NeutralOpen)
        {
            Hold("N", 0);
        }

        Hold("E", 0);
        for (int line = 1; line < circuit.Lines.Count; line++)
        {
            // In polar form, not the product's closed one: each line lags a third of a turn behind the one before.
            Hold(circuit.Lines[line], Complex.FromPolarCoordinates(circuit.SupplyV, -line * 2 * Math.PI / 3));
        }
    }

    private void Hold(string net, Complex volts) => _held[Net(net)] = volts;

    /// <summary>Current of the feed wiper, named (feed), and of each closed contact; null when the supply is shorted.</summary>
    public static IReadOnlyDictionary<string, double>? ContactAmperes(CircuitBuilder circuit, double angleRad, int inputs)
    {
        TableauSolver solver = new(circuit, new CircuitFault(CircuitFaultKind.None));
        solver.AddBranches(angleRad, inputs);
        if (solver.IsShort())
        {
            return null;
        }

        Vector<Complex> solution = solver.Solve();
        int first = circuit.IsLands ? 0 : 1;
        Dictionary<string, double> amperes = new(StringComparer.Ordinal);
        for (int b = 0; b < first + circuit.Contacts.Count; b++)
        {
            string name = b < first ? "(feed)" : circuit.Contacts[b - first].Output;
            amperes[name] = solution[solver._nets.Count + b].Magnitude;
        }

        return amperes;
    }

    /// <summary>Voltages over the loads, in order, without fault.</summary>
    public static double[] LoadVolts(CircuitBuilder circuit, double angleRad, int inputs) =>
        LoadVolts(circuit, angleRad, inputs, new CircuitFault(CircuitFaultKind.None)) ?? throw new InvalidOperationException("L is joined to N.");

    /// <summary>Voltages over the loads, in order; null when closed switches join line to neutral or earth. What was solved before is taken from memory, if there is one.</summary>
    public static double[]? LoadVolts(CircuitBuilder circuit, double angleRad, int inputs, CircuitFault fault, TableauMemory? memory = null)
    {
        TableauSolver solver = new(circuit, fault);
        solver.AddBranches(angleRad, inputs);
        return memory is null ? Solved() : memory.Of(solver.Words, Solved);

        double[]? Solved() => solver.IsShort() ? null : solver.Volts();
    }

    /// <summary>All that the solution depends on: which nets are held at what, and every branch.</summary>
    private string Words => string.Join(';', _held.Select(h => FormattableString.Invariant($"{h.Key}={h.Value:R}")).Concat(_branches.Select(b => FormattableString.Invariant($"{b.A}-{b.B} {b.Closed} {b.Impedance:R}"))));

    /// <summary>Voltage of every net over neutral, by name; null for one that no closed switch or load joins to line, neutral or earth.</summary>
    public static IReadOnlyDictionary<string, double?> NetVolts(CircuitBuilder circuit, double angleRad, int inputs) =>
        NetPotentials(circuit, angleRad, inputs).ToDictionary(n => n.Key, n => n.Value?.Magnitude, StringComparer.Ordinal);

    /// <summary>The same as phasors; the wheel's copper is the net "(copper)".</summary>
    public static IReadOnlyDictionary<string, Complex?> NetPotentials(CircuitBuilder circuit, double angleRad, int inputs)
    {
        TableauSolver solver = new(circuit, new CircuitFault(CircuitFaultKind.None));
        solver.AddBranches(angleRad, inputs);
        if (solver.IsShort())
        {
            return solver._nets.Keys.ToDictionary(n => n, _ => (Complex?)null, StringComparer.Ordinal);
        }

        Vector<Complex> solution = solver.Solve();
        HashSet<int> joined = [.. solver._held.Keys];
        while (solver._branches.Find(b => (b.Closed || b.Impedance is not null) && joined.Contains(b.A) != joined.Contains(b.B)) is Branch next)
        {
            joined.UnionWith([next.A, next.B]);
        }

        return solver._nets.ToDictionary(n => n.Key, n => joined.Contains(n.Value) ? solution[n.Value] : (Complex?)null, StringComparer.Ordinal);
    }

    private static Complex Impedance(LoadRating rating, double supplyV) => rating switch
    {
        RatedImpedance z => new Complex(z.ResistanceOhm, z.ReactanceOhm),
        // Apparent power S = P / pf; Z = V² / S with the angle of lag, in polar form.
        RatedPower p => Complex.FromPolarCoordinates(supplyV * supplyV / (p.PowerW / p.PowerFactor), Math.Acos(p.PowerFactor)),
        RatedCurrent c => Complex.FromPolarCoordinates(supplyV / c.CurrentA, Math.Acos(c.PowerFactor)),
        _ => throw new NotSupportedException(),
    };

    private int Net(string name) => _nets.TryGetValue(name, out int n) ? n : _nets[name] = _nets.Count;

    private bool Is(CircuitFaultKind kind, string subject) => _fault.Kind == kind && string.Equals(_fault.Subject, subject, StringComparison.Ordinal);

    private void AddBranches(double angleRad, int inputs)
    {
        if (!_circuit.IsLands)
        {
            _branches.Add(new Branch(Net(_circuit.FeedNet), Net("(copper)"), null, _fault.Kind != CircuitFaultKind.FeedOpen));
        }

        foreach (ContactSchedule contact in _circuit.Contacts)
        {
            bool closed = contact.Periods.Any(p => p.Closed.Contains(angleRad)) || Is(CircuitFaultKind.ContactWelded, contact.Output);
            string wheel = _circuit.IsLands ? contact.WheelNet : "(copper)";
            _branches.Add(new Branch(Net(wheel), Net(contact.WiperNet), null, closed && !Is(CircuitFaultKind.ContactNeverMade, contact.Output)));
        }

        for (int i = 0; i < _circuit.Inputs.Count; i++)
        {
            InputBrief input = _circuit.Inputs[i];
            bool closed = (inputs >> i & 1) != 0 || Is(CircuitFaultKind.InputStuckClosed, input.Name);
            _branches.Add(new Branch(Net(input.From), Net(input.To), null, closed && !Is(CircuitFaultKind.InputStuckOpen, input.Name)));
        }

        if (_fault.Kind is CircuitFaultKind.NetEarthed or CircuitFaultKind.NetsBridged)
        {
            _branches.Add(new Branch(Net(_fault.Subject), Net(_fault.Kind == CircuitFaultKind.NetEarthed ? "E" : _fault.Other), null, true));
        }

        foreach (LoadBrief load in _circuit.Loads)
        {
            bool works = !Is(CircuitFaultKind.LoadOpen, load.Name) && !Is(CircuitFaultKind.LoadShorted, load.Name);
            Complex? impedance = works ? Impedance(load.Rating, load.RatedV ?? _circuit.SupplyV) : null;
            _branches.Add(new Branch(Net(load.From), Net(load.To), impedance, Is(CircuitFaultKind.LoadShorted, load.Name)));
        }
    }

    private bool IsShort()
    {
        return _held.Keys.Any(from => _held.Any(to => to.Key != from && to.Value != _held[from] && JoinedTo(from).Contains(to.Key)));
    }

    private HashSet<int> JoinedTo(int from)
    {
        HashSet<int> live = [from];
        bool grows = true;
        while (grows)
        {
            grows = false;
            foreach (Branch b in _branches.Where(b => b.Closed && live.Contains(b.A) != live.Contains(b.B)))
            {
                live.Add(b.A);
                live.Add(b.B);
                grows = true;
            }
        }

        return live;
    }

    private double[] Volts()
    {
        Vector<Complex> solution = Solve();
        int loads = _circuit.Loads.Count;
        return [.. _branches.TakeLast(loads).Select(b => b.Impedance is { } z ? (z * solution[_nets.Count + _branches.IndexOf(b)]).Magnitude : 0)];
    }

    private Vector<Complex> Solve()
    {
        // Unknowns: net potentials, then currents of branches that can carry any. Rows: one such branch, then one a net: its currents' sum, or its potential.
        Branch[] carrying = [.. _branches.Where(b => b.Closed || b.Impedance is not null)];
        int unknowns = _nets.Count + carrying.Length;
        Matrix<Complex> matrix = Matrix<Complex>.Build.Dense(unknowns, unknowns);
        Vector<Complex> right = Vector<Complex>.Build.Dense(unknowns);
        for (int b = 0; b < carrying.Length; b++)
        {
            Branch branch = carrying[b];
            matrix[b, branch.A] += 1;
            matrix[b, branch.B] -= 1;
            matrix[b, _nets.Count + b] = branch.Impedance is { } z ? -z : Complex.Zero;
            matrix[carrying.Length + branch.A, _nets.Count + b] += 1;
            matrix[carrying.Length + branch.B, _nets.Count + b] -= 1;
        }

        foreach ((int held, Complex volts) in _held)
        {
            matrix.ClearRow(carrying.Length + held);
            matrix[carrying.Length + held, held] = 1;
            right[carrying.Length + held] = volts;
        }

        Vector<Complex> solution = LeastSolution(matrix, right);
        Vector<Complex> all = Vector<Complex>.Build.Dense(_nets.Count + _branches.Count);
        solution.CopySubVectorTo(all, 0, 0, _nets.Count);
        for (int b = 0; b < carrying.Length; b++)
        {
            all[_nets.Count + _branches.IndexOf(carrying[b])] = solution[_nets.Count + b];
        }

        return all;
    }

    private static Vector<Complex> LeastSolution(Matrix<Complex> matrix, Vector<Complex> right)
    {
        MathNet.Numerics.LinearAlgebra.Factorization.Svd<Complex> svd = matrix.Svd();
        Vector<Complex> rotated = svd.U.ConjugateTranspose() * right;
        Vector<Complex> scaled = Vector<Complex>.Build.Dense(matrix.ColumnCount);
        double largest = svd.S[0].Magnitude;
        for (int i = 0; i < svd.S.Count; i++)
        {
            scaled[i] = svd.S[i].Magnitude > 1e-12 * largest ? rotated[i] / svd.S[i] : Complex.Zero;
        }

        return svd.VT.ConjugateTranspose() * scaled;
    }

    // A class, so that two equal branches in parallel are still two.
    private sealed class Branch(int a, int b, Complex? impedance, bool closed)
    {
        public int A => a;

        public int B => b;

        public Complex? Impedance => impedance;

        public bool Closed => closed;
    }
}

/// <summary>Tableaux that were solved, by everything that went into them: most faults at most inputs close the branches that others close too.</summary>
internal sealed class TableauMemory
{
    private readonly Dictionary<string, double[]?> _solved = new(StringComparer.Ordinal);

    public double[]? Of(string tableau, Func<double[]?> solve) => _solved.TryGetValue(tableau, out double[]? volts) ? volts : _solved[tableau] = solve();
}
