namespace WheelDraft.Engineering;

/// <summary>What one wiper's contact carries and breaks.</summary>
/// <param name="CarriedA">The largest r.m.s. current over every reachable state, at the upper end of the supply voltage, A; NaN where resonance without resistance leaves it without a bound.</param>
/// <param name="CarriedWhere">The state that decides it, in words; empty when it carries nothing.</param>
/// <param name="BrokenA">The largest r.m.s. current just before it opens, A; 0 for a contact that never opens, NaN without a bound.</param>
/// <param name="BrokenWhere">The state that decides it, in words; empty when it breaks nothing.</param>
/// <param name="BreaksInductive">Whether what it breaks flows through a coil in some such state.</param>
/// <param name="IsShared">Whether in the deciding state other closed contacts or inputs lie beside it: nothing decides how the current divides, so it is given as if all flowed through this one.</param>
public sealed record ContactCurrent(double CarriedA, string CarriedWhere, double BrokenA, string BrokenWhere, bool BreaksInductive, bool IsShared);

/// <summary>Currents of the solved circuit: branch currents, the largest over every reachable state without fault.</summary>
/// <remarks>Loads are impedances, so currents rise with the supply: those at nominal voltage times one plus the voltage tolerance.</remarks>
public sealed record CircuitCurrents
{
    /// <summary>The feed wiper, which never opens; null for a lands wheel.</summary>
    public required ContactCurrent? Feed { get; init; }

    /// <summary>The outputs' contacts, in file order.</summary>
    public required IReadOnlyList<ContactCurrent> Contacts { get; init; }

    /// <summary>By net: the most that one conductor of the net carries, however its loads and contacts hang on it, A.</summary>
    public required IReadOnlyDictionary<string, double> NetsA { get; init; }

    /// <summary>Whether there were too many states to look at each: every figure is then that of all loads on at once.</summary>
    public bool IsBound { get; init; }

    /// <summary>The currents of a circuit.</summary>
    /// <exception cref="DesignRefusedException">A circuit that cannot be solved, with the reasons.</exception>
    public static CircuitCurrents Of(CircuitRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return new CurrentSearch(new SoundCircuit(new CircuitModel(request))).Find();
    }
}
