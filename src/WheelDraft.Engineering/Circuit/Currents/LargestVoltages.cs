using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>The largest voltage met between every two nodes, and where it was met first.</summary>
internal sealed class LargestVoltages(CircuitModel model)
{
    private readonly double[,] _largestV = new double[model.NodeCount, model.NodeCount];
    private readonly (FaultCase? Fault, int Inputs, int Position)[,] _where = new (FaultCase?, int, int)[model.NodeCount, model.NodeCount];

    /// <summary>The largest so far between two nodes, the lower one first.</summary>
    public double Of(int a, int b) => _largestV[a, b];

    /// <summary>Takes what is larger than anything before.</summary>
    public void Set((int A, int B) pair, double volts, (FaultCase Fault, int Inputs, int Position) where)
    {
        _largestV[pair.A, pair.B] = volts;
        _where[pair.A, pair.B] = where;
    }

    /// <summary>Whether some potentials of two nodes lie further apart than anything before, at a position reached.</summary>
    public bool Rises((int A, int B) pair, ulong[] reach, (List<NodePotential> A, List<NodePotential> B) potentials)
    {
        foreach (NodePotential first in potentials.A)
        {
            foreach (NodePotential second in potentials.B)
            {
                bool together = first.Floats >= 0 && first.Floats == second.Floats;
                if (!together
                    && Complex.Abs(first.Volts - second.Volts) > _largestV[pair.A, pair.B]
                    && FirstCommon(first.Positions, second.Positions, reach) >= 0)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Takes what lies further apart than anything before.</summary>
    public void Raise((int A, int B) pair, (FaultCase Fault, int Inputs) state, ulong[] reach, (List<NodePotential> A, List<NodePotential> B) potentials)
    {
        foreach (NodePotential first in potentials.A)
        {
            foreach (NodePotential second in potentials.B)
            {
                double volts = Complex.Abs(first.Volts - second.Volts);
                bool together = first.Floats >= 0 && first.Floats == second.Floats;
                if (together || !(volts > _largestV[pair.A, pair.B]))
                {
                    continue;
                }

                int at = FirstCommon(first.Positions, second.Positions, reach);
                if (at >= 0)
                {
                    Set(pair, volts, (state.Fault, state.Inputs, at));
                }
            }
        }
    }

    /// <summary>The voltages of every pair of nets, in ordinal order.</summary>
    public IReadOnlyList<WorkingVoltage> Result()
    {
        Dictionary<(string First, string Second), (double V, int A, int B)> pairs = [];
        for (int a = 0; a < model.NodeCount; a++)
        {
            for (int b = a + 1; b < model.NodeCount; b++)
            {
                int order = string.CompareOrdinal(model.NodeNets[a], model.NodeNets[b]);
                (string, string) pair = order < 0 ? (model.NodeNets[a], model.NodeNets[b]) : (model.NodeNets[b], model.NodeNets[a]);
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

    /// <summary>The first position that three rows share, or −1.</summary>
    public static int FirstCommon(ulong[] a, ulong[] b, ulong[] c)
    {
        for (int w = 0; w < a.Length; w++)
        {
            ulong common = a[w] & b[w] & c[w];
            if (common != 0)
            {
                return (w * 64) + BitOperations.TrailingZeroCount(common);
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
        return StateWords.Of(model, where.Position, where.Fault.Actual(where.Inputs)) + fault;
    }
}
