using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The contact of one output as the circuit sees it: two nets, and when they are joined.</summary>
/// <param name="Output">Name of the output.</param>
/// <param name="WiperNet">Net of its wiper.</param>
/// <param name="WheelNet">The other side: the feed's net, or the return net of a lands wheel.</param>
/// <param name="Periods">When it is closed, in turning order, not overlapping; one full period for always, none for never.</param>
public sealed record ContactSchedule(string Output, string WiperNet, string WheelNet, IReadOnlyList<MadePeriod> Periods)
{
    /// <summary>Whether the contact never opens.</summary>
    public bool IsAlways => Periods.Any(p => p.Closed.IsFull);

    /// <summary>A contact that is closed over the given parts of the turn, its edges exactly where they should be.</summary>
    /// <param name="output">Name of the output.</param>
    /// <param name="wiperNet">Net of its wiper.</param>
    /// <param name="wheelNet">The other side.</param>
    /// <param name="closed">Programme angles, from home.</param>
    public static ContactSchedule Exact(string output, string wiperNet, string wheelNet, params IReadOnlyList<CircleArc> closed) =>
        new(output, wiperNet, wheelNet, [.. closed.Where(a => !a.IsEmpty).Select(a => new MadePeriod(a, default, default))]);
}

/// <summary>One stretch of the turn over which a contact is closed.</summary>
/// <param name="Closed">Nominal programme angles, from make to break.</param>
/// <param name="Make">How far the make may be from its nominal angle, worst case.</param>
/// <param name="Break">How far the break may be from its nominal angle, worst case.</param>
public sealed record MadePeriod(CircleArc Closed, EdgeBand Make, EdgeBand Break);

/// <summary>The worst-case band of a make or break about its nominal programme angle.</summary>
/// <remarks><c>default</c> is an edge exactly where it should be.</remarks>
/// <param name="EarlierRad">How much sooner it may come, at least 0.</param>
/// <param name="LaterRad">How much later it may come, at least 0.</param>
public readonly record struct EdgeBand(double EarlierRad, double LaterRad);

/// <summary>Two nets that are so near that dirt or a bent strip may join them: a fault to consider.</summary>
/// <param name="FirstNet">One net.</param>
/// <param name="SecondNet">The other net.</param>
public sealed record BridgedNets(string FirstNet, string SecondNet);

/// <summary>What a circuit is analysed from.</summary>
/// <param name="Brief">Supply, drive, loads, inputs, interlocks.</param>
/// <param name="Contacts">One schedule for each output, in file order.</param>
public sealed record CircuitRequest(Brief Brief, IReadOnlyList<ContactSchedule> Contacts)
{
    /// <summary>Contacts of levers that cams move; each is one of the brief's inputs.</summary>
    internal IReadOnlyList<LeverSchedule> Levers { get; init; } = [];

    /// <summary>Pairs of nets whose worst distance is under twice the required one.</summary>
    public IReadOnlyList<BridgedNets> Bridges { get; init; } = [];

    /// <summary>Whether working voltages also count every single fault, and not only single open loads; as the brief says when left out.</summary>
    public bool VoltagesUnderFaults { get; init; } = Brief.Spacing.VoltagesUnderFaults;
}
