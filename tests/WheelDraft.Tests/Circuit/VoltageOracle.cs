using System.Numerics;
using WheelDraft.Engineering;

namespace WheelDraft.Tests;

/// <summary>
/// The oracle for working voltages: every position of all inputs, every pair of nets, one after the other, for the sound circuit and each fault that counts;
/// nothing is left out because it was counted before, and nets that float are walked pattern by pattern (<see cref="PatternwisePotentials"/>).
/// </summary>
internal sealed class VoltageOracle
{
    private readonly CircuitModel _model;
    private readonly Dictionary<(string, string), (double V, string Where)> _largest = [];

    private VoltageOracle(CircuitModel model) => _model = model;

    /// <summary>Pairs of nets as the product lists them: volts, and the state that decides, in words.</summary>
    public static IReadOnlyList<(string First, string Second, double V, string Where)> Of(CircuitRequest request)
    {
        CircuitModel model = new(request);
        VoltageOracle oracle = new(model);
        SoundCircuit sound = new(model);
        oracle.Count(sound.Sheet.Fault, sound.MayReach);
        SourcelessNets sourceless = new(model);
        foreach (CircuitFault fault in SingleFaults.Of(model).Where(f => request.VoltagesUnderFaults || f.Kind == CircuitFaultKind.LoadOpen))
        {
            FaultCase faultCase = new(model, fault);
            StateSheet sheet = new(model);
            sheet.Fill(faultCase, new NetworkSplit(model), new SectionSolver(model));
            oracle.Count(faultCase, new StateReach(model, sheet).AfterFault(sound.MayReach, Certainty.Possible));
        }

        return [.. oracle._largest
            .OrderBy(p => p.Key.Item1, StringComparer.Ordinal).ThenBy(p => p.Key.Item2, StringComparer.Ordinal)
            .Select(p => sourceless.Raise(new WorkingVoltage(p.Key.Item1, p.Key.Item2, p.Value.V, p.Value.Where)))
            .Select(v => (v.First, v.Second, v.VoltageV, v.Where))];
    }

    private void Count(FaultCase fault, ulong[] reach)
    {
        NetworkSplit split = new(_model);
        SectionSolver solver = new(_model);
        PatternwisePotentials potentials = new(_model);
        for (int inputs = 0; inputs < 1 << _model.Inputs.Count; inputs++)
        {
            bool isSolved = split.Split(fault, inputs);
            if (isSolved)
            {
                potentials.Read(split, solver);
            }

            for (int a = 0; a < _model.NodeCount; a++)
            {
                for (int b = a + 1; b < _model.NodeCount; b++)
                {
                    CountPair(a, b, (fault, inputs), reach, isSolved ? (potentials.Of[a], potentials.Of[b]) : ([], []));
                }
            }
        }
    }

    private void CountPair(int a, int b, (FaultCase Fault, int Inputs) state, ulong[] reach, (List<NodePotential> A, List<NodePotential> B) potentials)
    {
        int order = string.CompareOrdinal(_model.NodeNets[a], _model.NodeNets[b]);
        if (order == 0)
        {
            return;
        }

        (string, string) pair = order < 0 ? (_model.NodeNets[a], _model.NodeNets[b]) : (_model.NodeNets[b], _model.NodeNets[a]);
        _largest.TryAdd(pair, (0, "in every reachable state"));
        foreach (NodePotential first in potentials.A)
        {
            foreach (NodePotential second in potentials.B)
            {
                double volts = Complex.Abs(first.Volts - second.Volts);
                int at = Enumerable.Range(0, _model.Turn.Positions.Count).FirstOrDefault(p => BitRow.Has(first.Positions, p) && BitRow.Has(second.Positions, p) && BitRow.Has(reach, p), -1);
                if (at >= 0 && volts > _largest[pair].V && !(first.Floats >= 0 && first.Floats == second.Floats))
                {
                    string suffix = state.Fault.Fault.Kind == CircuitFaultKind.None ? "" : $", {state.Fault.Fault.Words}";
                    _largest[pair] = (volts, StateWords.Of(_model, at, state.Fault.Actual(state.Inputs)) + suffix);
                }
            }
        }
    }
}
