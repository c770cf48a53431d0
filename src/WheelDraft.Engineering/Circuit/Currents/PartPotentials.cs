using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>A potential that a node takes in some states of its part.</summary>
/// <param name="Volts">Over neutral.</param>
/// <param name="FromCentreV">Distance from a point amid the potentials of the supply, the same for all.</param>
/// <param name="Positions">Positions of the wheel, over all of the inputs named.</param>
/// <param name="Inputs">Positions of the part's inputs at which it is taken somewhere, by rising number.</param>
internal sealed record TakenPotential(Complex Volts, double FromCentreV, ulong[] Positions, List<int> Inputs);

/// <summary>All potentials of one part of the network: what a net of another part may meet.</summary>
/// <remarks>Parts move apart from each other, so each potential of one meets each of the other at the positions that they share.</remarks>
internal sealed class PartPotentials
{
    private readonly Dictionary<Complex, TakenPotential>[] _taken;
    private readonly Complex _centre;
    private readonly TakenPotential[]?[] _sorted;

    /// <summary>An empty book of one part.</summary>
    /// <param name="part">The part.</param>
    /// <param name="sources">Potentials of the supply.</param>
    public PartPotentials(NetworkPart part, Complex[] sources)
    {
        Part = part;
        Complex[] different = [.. sources.Distinct()];
        _centre = different.Aggregate(Complex.Zero, (sum, p) => sum + p) / different.Length;
        _taken = [.. part.Nodes.Select(_ => new Dictionary<Complex, TakenPotential>())];
        _sorted = new TakenPotential[]?[part.Nodes.Count];
        IsChanged = new bool[part.Nodes.Count];
    }

    /// <summary>The part.</summary>
    public NetworkPart Part { get; }

    /// <summary>The first position of its inputs at which nothing is shorted whatever the contacts do; negative when there is none.</summary>
    public int Base { get; set; } = -1;

    /// <summary>For each position of its inputs the lists of its nodes that do not float; null where a position is shorted.</summary>
    public List<NodePotential>?[]?[] Lists { get; set; } = [];

    /// <summary>For each node whether its potentials may differ from those without fault.</summary>
    public bool[] IsChanged { get; }

    /// <summary>Takes the potentials of a node, by its index in the part, at a position of the inputs; positions come by rising number.</summary>
    public void Take(int node, int inputs, List<NodePotential> potentials)
    {
        _sorted[node] = null;
        foreach (NodePotential potential in potentials)
        {
            if (!_taken[node].TryGetValue(potential.Volts, out TakenPotential? taken))
            {
                taken = new TakenPotential(potential.Volts, Complex.Abs(potential.Volts - _centre), new ulong[potential.Positions.Length], []);
                _taken[node][potential.Volts] = taken;
            }

            BitRow.AddAll(taken.Positions, potential.Positions);
            if (taken.Inputs.Count == 0 || taken.Inputs[^1] != inputs)
            {
                taken.Inputs.Add(inputs);
            }
        }
    }

    /// <summary>All potentials of a node, by its index in the part, the one furthest from the centre first.</summary>
    public TakenPotential[] Of(int node) => _sorted[node] ??= [.. _taken[node].Values.OrderByDescending(t => t.FromCentreV)];
}
