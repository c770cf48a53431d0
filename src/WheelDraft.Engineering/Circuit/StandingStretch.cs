namespace WheelDraft.Engineering;

/// <summary>A stretch of programme angles at which the wheel can come to stand in a reachable state.</summary>
/// <param name="FromRad">Where it begins, rad in [0, 2π), already on the unsafe side: bands of edges, backlash.</param>
/// <param name="ToRad">Where it ends, at least where it begins, at most a turn further; coast is in it.</param>
public sealed record StandingStretch(double FromRad, double ToRad)
{
    /// <summary>How the wheel comes to stand there, in plain words.</summary>
    public required string Why { get; init; }

    /// <summary>Outputs, by index in file order, whose contact is open there, or may be, with voltage across it in some such state.</summary>
    public required IReadOnlyList<int> VoltageAcross { get; init; }
}
