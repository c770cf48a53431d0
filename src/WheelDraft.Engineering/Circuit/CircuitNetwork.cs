using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>A contact or input of the network: when closed it makes its two nodes one.</summary>
/// <param name="Name">Name of the output or input.</param>
/// <param name="A">First node.</param>
/// <param name="B">Second node.</param>
public readonly record struct NetworkSwitch(string Name, int A, int B);

/// <summary>A line of the supply.</summary>
/// <param name="Node">Its node.</param>
/// <param name="PotentialV">Its potential over neutral, r.m.s.</param>
public readonly record struct NetworkLine(int Node, Complex PotentialV);

/// <summary>A load of the network.</summary>
/// <param name="Name">Its name.</param>
/// <param name="A">First node.</param>
/// <param name="B">Second node.</param>
/// <param name="ImpedanceOhm">Impedance at supply frequency, neither zero nor infinite.</param>
/// <param name="OnAtV">Voltage at nominal supply at and above which it is on over all of the supply's range, a rounding's slack included.</param>
/// <param name="OffAtV">Voltage at nominal supply at and below which it is off over all of the supply's range, a rounding's slack included.</param>
public readonly record struct NetworkLoad(string Name, int A, int B, Complex ImpedanceOhm, double OnAtV, double OffAtV);

/// <summary>The circuit as numbered nodes: all that a moving picture of it needs to solve it by itself.</summary>
/// <remarks>Node 0 is the first line, 1 neutral and 2 earth, both at zero; with three lines nodes 3 and 4 are the others. A windowed wheel's copper is a node apart from
/// its feed's net; the feed wiper joins the two.</remarks>
public sealed record CircuitNetwork
{
    /// <summary>Supply voltage, r.m.s., line to neutral.</summary>
    public required double SupplyV { get; init; }

    /// <summary>The lines, in phase order.</summary>
    public required IReadOnlyList<NetworkLine> Lines { get; init; }

    /// <summary>Net of each node; the wheel's copper carries its feed's net.</summary>
    public required IReadOnlyList<string> Nets { get; init; }

    /// <summary>Node of a windowed wheel's copper, or −1.</summary>
    public required int WheelNode { get; init; }

    /// <summary>Node of the feed wiper's net, or −1.</summary>
    public required int FeedNode { get; init; }

    /// <summary>The contacts, in file order of their outputs, then those of levers.</summary>
    public required IReadOnlyList<NetworkSwitch> Contacts { get; init; }

    /// <summary>When each contact is closed.</summary>
    public required IReadOnlyList<ContactSchedule> Schedules { get; init; }

    /// <summary>The contacts of levers, each with what can hold it.</summary>
    internal IReadOnlyList<LeverContact> Levers { get; init; } = [];

    /// <summary>The lever's contact that an input of the brief is; null for any other.</summary>
    internal LeverContact? LeverOf(string input) => Levers.FirstOrDefault(l => string.Equals(l.Schedule.Input, input, StringComparison.Ordinal));

    /// <summary>The inputs but those that are contacts of levers, then what can hold levers.</summary>
    public required IReadOnlyList<NetworkSwitch> Inputs { get; init; }

    /// <summary>The loads, in file order, the drive motor last.</summary>
    public required IReadOnlyList<NetworkLoad> Loads { get; init; }

    /// <summary>Index of the drive motor among the loads, or −1.</summary>
    public required int Motor { get; init; }

    /// <summary>The node of a net, never the wheel's copper; −1 when the circuit does not know it.</summary>
    public int NodeOf(string net)
    {
        for (int n = 0; n < Nets.Count; n++)
        {
            if (n != WheelNode && string.Equals(Nets[n], net, StringComparison.Ordinal))
            {
                return n;
            }
        }

        return -1;
    }

    /// <summary>Index of the contact of an output.</summary>
    /// <exception cref="ArgumentException">There is none of that name.</exception>
    public int ContactOf(string output) => IndexOf(Contacts.Select(c => c.Name), output);

    /// <summary>Index of an input.</summary>
    /// <exception cref="ArgumentException">There is none of that name.</exception>
    public int InputOf(string input) => IndexOf(Inputs.Select(i => i.Name), input);

    /// <summary>Index of a load.</summary>
    /// <exception cref="ArgumentException">There is none of that name.</exception>
    public int LoadOf(string load) => IndexOf(Loads.Select(l => l.Name), load);

    private static int IndexOf(IEnumerable<string> names, string name)
    {
        int at = 0;
        foreach (string one in names)
        {
            if (string.Equals(one, name, StringComparison.Ordinal))
            {
                return at;
            }

            at++;
        }

        throw new ArgumentException($"The circuit has no '{name}'.", nameof(name));
    }

    internal static CircuitNetwork Of(CircuitModel model) => new()
    {
        SupplyV = model.SupplyV,
        Lines = [.. model.Lines.Select((node, phase) => new NetworkLine(node, model.Potentials[SourcePotentials.IndexOf(SourcePotentials.HeldBy(phase))]))],
        Nets = model.NodeNets,
        WheelNode = model.WheelNode,
        FeedNode = model.FeedNode,
        Contacts = [.. model.Contacts.Select(Switch)],
        Schedules = model.Schedules,
        Levers = model.Levers,
        Inputs = [.. model.Inputs.Select(Switch)],
        Loads = [.. model.Loads.Select((l, i) => new NetworkLoad(
            l.Name,
            l.A,
            l.B,
            model.Impedances[i],
            SectionSolver.OnAtV(model, i),
            SectionSolver.OffAtV(model, i)))],
        Motor = model.Motor,
    };

    private static NetworkSwitch Switch(NetworkElement element) => new(element.Name, element.A, element.B);
}
