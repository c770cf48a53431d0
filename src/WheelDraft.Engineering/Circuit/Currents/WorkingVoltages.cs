namespace WheelDraft.Engineering;

/// <summary>The largest r.m.s. voltage between two nets over every reachable state.</summary>
/// <param name="First">One net, first in ordinal order.</param>
/// <param name="Second">The other net.</param>
/// <param name="VoltageV">The voltage.</param>
/// <param name="Where">The state that decides it, in words.</param>
public sealed record WorkingVoltage(string First, string Second, double VoltageV, string Where);

/// <summary>Finds the largest voltage between every two nets.</summary>
internal sealed class WorkingVoltageSearch
{
    private readonly CircuitModel _model;
    private readonly NetworkSplit _split;
    private readonly SectionSolver _solver;
    private readonly NodePotentials _now;
    private readonly List<NodePotential>?[]?[] _sound;
    private readonly double[,] _largestV;
    private readonly (FaultCase? Fault, int Inputs, int Position)[,] _where;
    private readonly List<NodePotential>?[] _apart;
    private ulong[] _soundReach = [];

    /// <summary>A search over one circuit.</summary>
    public WorkingVoltageSearch(CircuitModel model, NetworkSplit split, SectionSolver solver)
    {
        (_model, _split, _solver) = (model, split, solver);
        _now = new NodePotentials(model);
        _apart = new List<NodePotential>?[model.NodeCount];
        _sound = new List<NodePotential>?[model.InputPositions][];
        _largestV = new double[model.NodeCount, model.NodeCount];
        _where = new (FaultCase?, int, int)[model.NodeCount, model.NodeCount];
    }

    /// <summary>Whether some block was in resonance without resistance.</summary>
    public bool HasResonance => _now.HasResonance;

    /// <summary>Counts the reachable states without fault; to be called first.</summary>
    public void CountSound(FaultCase none, ulong[] reach)
    {
        _soundReach = reach;
        Count(none, reach, isSound: true);
        _solver.KeepDetails();
        _now.Keep();
    }

    /// <summary>Counts the reachable states under a fault.</summary>
    public void CountFaulty(FaultCase fault, ulong[] reach)
    {
        Count(fault, reach, isSound: false);
        _solver.ForgetDetails();
        _now.Forget();
    }

    /// <summary>The voltages of every pair of nets, in ordinal order.</summary>
    public IReadOnlyList<WorkingVoltage> Result()
    {
        Dictionary<(string First, string Second), (double V, int A, int B)> pairs = [];
        for (int a = 0; a < _model.NodeCount; a++)
        {
            for (int b = a + 1; b < _model.NodeCount; b++)
            {
                int order = string.CompareOrdinal(_model.NodeNets[a], _model.NodeNets[b]);
                (string, string) pair = order < 0 ? (_model.NodeNets[a], _model.NodeNets[b]) : (_model.NodeNets[b], _model.NodeNets[a]);
                if (order != 0 && (!pairs.TryGetValue(pair, out (double V, int A, int B) known) || _largestV[a, b] > known.V))
                {
                    pairs[pair] = (_largestV[a, b], a, b);
                }
            }
        }

        return [.. pairs
            .OrderBy(p => p.Key.First, StringComparer.Ordinal)
            .ThenBy(p => p.Key.Second, StringComparer.Ordinal)
            .Select(p => new WorkingVoltage(p.Key.First, p.Key.Second, p.Value.V, Words(_where[p.Value.A, p.Value.B])))];
    }

    private void Count(FaultCase fault, ulong[] reach, bool isSound)
    {
        bool sameReach = reach.AsSpan().SequenceEqual(_soundReach);
        for (int inputs = 0; inputs < _model.InputPositions; inputs++)
        {
            if (!_split.Split(fault, inputs))
            {
                _sound[inputs] ??= [];
                continue;
            }

            _now.Read(_split, _solver);
            Array.Clear(_apart);
            List<NodePotential>?[]? sound = !isSound && sameReach && _sound[inputs] is { Length: > 0 } known ? known : null;
            CountPairs(sound, (fault, inputs), reach);
            if (isSound)
            {
                // What floats is never met again as the same list: not kept.
                _sound[inputs] = [.. _now.Of.Select((of, n) => _now.Floats(n) ? null : of)];
            }
        }
    }

    // Pairs in which neither net's potentials differ from those without fault were counted there.
    private void CountPairs(List<NodePotential>?[]? sound, (FaultCase Fault, int Inputs) state, ulong[] reach)
    {
        for (int a = 0; a < _model.NodeCount; a++)
        {
            for (int b = a + 1; b < _model.NodeCount; b++)
            {
                bool same = sound is not null && ReferenceEquals(sound[a], _now.Of[a]) && ReferenceEquals(sound[b], _now.Of[b]);
                if (!same)
                {
                    CountPair((a, b), state, reach);
                }
            }
        }
    }

    // Which of several positions is told depends on the order of what floats: it is looked up apart, once a pair is known to rise.
    private void CountPair((int A, int B) pair, (FaultCase Fault, int Inputs) state, ulong[] reach)
    {
        if (!_now.Floats(pair.A) && !_now.Floats(pair.B))
        {
            Raise(pair, state, reach, (_now.Of[pair.A], _now.Of[pair.B]));
        }
        else if (Rises(pair, reach))
        {
            Raise(pair, state, reach, (Apart(pair.A), Apart(pair.B)));
        }
    }

    private List<NodePotential> Apart(int node) => _apart[node] ??= _now.Apart(node, _split, _solver);

    private bool Rises((int A, int B) pair, ulong[] reach)
    {
        foreach (NodePotential first in _now.Of[pair.A])
        {
            foreach (NodePotential second in _now.Of[pair.B])
            {
                bool together = first.Floats >= 0 && first.Floats == second.Floats;
                if (!together
                    && System.Numerics.Complex.Abs(first.Volts - second.Volts) > _largestV[pair.A, pair.B]
                    && FirstCommon(first.Positions, second.Positions, reach) >= 0)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private void Raise((int A, int B) pair, (FaultCase Fault, int Inputs) state, ulong[] reach, (List<NodePotential> A, List<NodePotential> B) potentials)
    {
        foreach (NodePotential first in potentials.A)
        {
            foreach (NodePotential second in potentials.B)
            {
                double volts = System.Numerics.Complex.Abs(first.Volts - second.Volts);
                bool together = first.Floats >= 0 && first.Floats == second.Floats;
                if (together || !(volts > _largestV[pair.A, pair.B]))
                {
                    continue;
                }

                int at = FirstCommon(first.Positions, second.Positions, reach);
                if (at >= 0)
                {
                    _largestV[pair.A, pair.B] = volts;
                    _where[pair.A, pair.B] = (state.Fault, state.Inputs, at);
                }
            }
        }
    }

    private static int FirstCommon(ulong[] a, ulong[] b, ulong[] c)
    {
        for (int w = 0; w < a.Length; w++)
        {
            ulong common = a[w] & b[w] & c[w];
            if (common != 0)
            {
                return (w * 64) + System.Numerics.BitOperations.TrailingZeroCount(common);
            }
        }

        return -1;
    }

    private string Words((FaultCase? Fault, int Inputs, int Position) where)
    {
        if (where.Fault is null)
        {
            return "in every reachable state";
        }

        string fault = where.Fault.Fault.Kind == CircuitFaultKind.None ? "" : $", {where.Fault.Fault.Words}";
        return StateWords.Of(_model, where.Position, where.Fault.Actual(where.Inputs)) + fault;
    }
}
