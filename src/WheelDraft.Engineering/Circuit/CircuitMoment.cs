using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How a net stands at a moment.</summary>
public enum NetState
{
    /// <summary>Joined to neutral or earth, through loads or not, and to nothing else: at zero.</summary>
    AtZero,

    /// <summary>At a voltage over neutral.</summary>
    Live,

    /// <summary>Joined to neither line nor neutral. It may hold a charge: not the same as dead.</summary>
    Unjoined,
}

/// <summary>How everything stands while the wheel passes an angle, inputs held as they are, without fault.</summary>
/// <remarks>Edges where they should be: a contact is made from its make on, and no longer at its break.</remarks>
public sealed record CircuitMoment
{
    // Of the supply: less than this over neutral is rounding.
    private const double LiveShare = 1e-6;

    /// <summary>Programme angle, in [0, 2π).</summary>
    public required double AngleRad { get; init; }

    /// <summary>Whether each contact is made, in the order of <see cref="CircuitNetwork.Contacts"/>.</summary>
    public required IReadOnlyList<bool> Contacts { get; init; }

    /// <summary>Whether each input is closed, in the order of <see cref="CircuitNetwork.Inputs"/>.</summary>
    public required IReadOnlyList<bool> Inputs { get; init; }

    /// <summary>R.m.s. voltage of each node over neutral, in the order of <see cref="CircuitNetwork.Nets"/>; null when nothing holds it, or when the fuse is open.</summary>
    public required IReadOnlyList<double?> NodesV { get; init; }

    /// <summary>The state that it lies in: loads, voltages over them, motor, whether the fuse opens.</summary>
    public required CircuitState State { get; init; }

    /// <summary>How a node stands; NaN, an answer that resonance without resistance lacks, counts as live.</summary>
    /// <param name="node">Index of the node.</param>
    /// <param name="supplyV">Voltage of the supply.</param>
    public NetState NetAt(int node, double supplyV) => NodesV[node] switch
    {
        null => NetState.Unjoined,
        double volts when volts <= supplyV * LiveShare => NetState.AtZero,
        _ => NetState.Live,
    };

    internal static CircuitMoment Of(SoundCircuit sound, double programmeRad, int inputs)
    {
        CircuitModel model = sound.Model;
        double angle = Angles.InTurn(programmeRad);
        int interval = model.Turn.IntervalAt(angle);
        int position = model.Turn.Intervals[interval].Position;
        return new CircuitMoment
        {
            AngleRad = angle,
            Contacts = [.. model.Contacts.Select((_, c) => sound.IsClosed(c, inputs, BitRow.Has(model.Turn.Positions[position].Closed, c)))],
            Inputs = [.. model.Inputs.Select((_, i) => (inputs >> i & 1) != 0)],
            NodesV = sound.NodesV(interval, inputs),
            State = sound.State(interval, inputs),
        };
    }
}
