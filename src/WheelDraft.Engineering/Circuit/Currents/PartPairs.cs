using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>Voltages between nets of different parts: each potential of the one against each of the other.</summary>
/// <param name="model">The circuit.</param>
/// <param name="largest">What was met so far.</param>
/// <param name="apart">Potentials of a node at a position of its part's inputs, in the order in which they are told.</param>
internal sealed class PartPairs(CircuitModel model, LargestVoltages largest, Func<int, int, List<NodePotential>> apart)
{
    // A sum of distances from the centre that a rounding may have made too small, as a share.
    private const double Slack = 1e-9;

    private readonly Dictionary<(int Node, int Inputs), List<NodePotential>> _apart = [];
    private readonly (int Part, int Index)[] _placeOf = new (int, int)[model.NodeCount];

    /// <summary>Counts every pair of nodes of different parts.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="reach">Positions that may be reached.</param>
    /// <param name="parts">The parts, all their potentials taken.</param>
    /// <param name="known">The parts without fault, counted before over the same positions; else null.</param>
    public void Count(FaultCase fault, ulong[] reach, PartPotentials[] parts, PartPotentials[]? known)
    {
        List<int> nodes = [];
        for (int p = 0; p < parts.Length; p++)
        {
            for (int n = 0; n < parts[p].Part.Nodes.Count; n++)
            {
                _placeOf[parts[p].Part.Nodes[n]] = (p, n);
                nodes.Add(parts[p].Part.Nodes[n]);
            }
        }

        int open = parts.Sum(p => p.Base);
        nodes.Sort();
        for (int i = 0; i < nodes.Count; i++)
        {
            for (int j = i + 1; j < nodes.Count; j++)
            {
                (int Part, int Index) a = _placeOf[nodes[i]];
                (int Part, int Index) b = _placeOf[nodes[j]];
                if (a.Part != b.Part && (known is null || IsChanged(parts, known, a) || IsChanged(parts, known, b)))
                {
                    Pair pair = new(nodes[i], nodes[j], parts[a.Part].Of(a.Index), parts[b.Part].Of(b.Index));
                    Count(pair, (fault, open - parts[a.Part].Base - parts[b.Part].Base), reach);
                }
            }
        }
    }

    private sealed record Pair(int A, int B, TakenPotential[] First, TakenPotential[] Second);

    private static bool IsChanged(PartPotentials[] parts, PartPotentials[] known, (int Part, int Index) node) =>
        !ReferenceEquals(parts[node.Part], known[node.Part]) && parts[node.Part].IsChanged[node.Index];

    private void Count(Pair pair, (FaultCase Fault, int Inputs) state, ulong[] reach)
    {
        double best = largest.Of(pair.A, pair.B);
        double before = best;
        foreach (TakenPotential first in pair.First)
        {
            foreach (TakenPotential second in pair.Second)
            {
                if (first.FromCentreV + second.FromCentreV < best * (1 - Slack))
                {
                    break;
                }

                double volts = Complex.Abs(first.Volts - second.Volts);
                if (volts > best && LargestVoltages.FirstCommon(first.Positions, second.Positions, reach) >= 0)
                {
                    best = volts;
                }
            }
        }

        if (best > before)
        {
            Place(pair, best, state, reach);
        }
    }

    // The state of the least number that has the voltage: positions of the two parts' inputs share no bit, so they are tried by rising sum.
    private void Place(Pair pair, double volts, (FaultCase Fault, int Inputs) state, ulong[] reach)
    {
        PriorityQueue<(List<int> First, List<int> Second, int I, int J), int> open = new();
        void Offer(List<int> first, List<int> second, int i, int j)
        {
            if (i < first.Count && j < second.Count)
            {
                open.Enqueue((first, second, i, j), first[i] + second[j]);
            }
        }

        foreach (TakenPotential first in pair.First)
        {
            foreach (TakenPotential second in pair.Second.Where(s => Complex.Abs(first.Volts - s.Volts) == volts && LargestVoltages.FirstCommon(first.Positions, s.Positions, reach) >= 0))
            {
                Offer(first.Inputs, second.Inputs, 0, 0);
            }
        }

        while (open.TryDequeue(out (List<int> First, List<int> Second, int I, int J) at, out int inputs))
        {
            int position = PositionAt(pair, volts, (at.First[at.I], at.Second[at.J]), reach);
            if (position >= 0)
            {
                largest.Set((pair.A, pair.B), volts, (state.Fault, inputs | state.Inputs, position));
                return;
            }

            Offer(at.First, at.Second, at.I, at.J + 1);
            if (at.J == 0)
            {
                Offer(at.First, at.Second, at.I + 1, 0);
            }
        }

        throw new InvalidOperationException("A voltage was met in no state.");
    }

    private int PositionAt(Pair pair, double volts, (int First, int Second) inputs, ulong[] reach)
    {
        foreach (NodePotential first in At(pair.A, inputs.First))
        {
            foreach (NodePotential second in At(pair.B, inputs.Second))
            {
                int at = Complex.Abs(first.Volts - second.Volts) == volts ? LargestVoltages.FirstCommon(first.Positions, second.Positions, reach) : -1;
                if (at >= 0)
                {
                    return at;
                }
            }
        }

        return -1;
    }

    private List<NodePotential> At(int node, int inputs)
    {
        if (!_apart.TryGetValue((node, inputs), out List<NodePotential>? potentials))
        {
            potentials = apart(node, inputs);
            _apart[(node, inputs)] = potentials;
        }

        return potentials;
    }
}
