namespace WheelDraft.Engineering;

/// <summary>What a fault does to one load.</summary>
[Flags]
public enum LoadChange
{
    /// <summary>Nothing in any reachable state.</summary>
    None = 0,

    /// <summary>On in states in which it should not be.</summary>
    OnWhenOff = 1,

    /// <summary>Off in states in which it should be on.</summary>
    OffWhenOn = 2,

    /// <summary>Undecided in states in which it was decided.</summary>
    Undecided = 4,

    /// <summary>On in no state any more, though it was on in some before.</summary>
    NeverOn = 8,

    /// <summary>On in every reachable state, though it was not before.</summary>
    AlwaysOn = 16,
}

/// <summary>A load and what a fault does to it.</summary>
/// <param name="Load">Name of the load.</param>
/// <param name="Change">What changes.</param>
public sealed record LoadEffect(string Load, LoadChange Change);

/// <summary>One line of the fault table.</summary>
/// <param name="Fault">The fault.</param>
/// <param name="Effects">Loads that change, in file order, the motor last.</param>
/// <param name="ShortPath">What joins line to neutral or earth in some reachable state, from line on; empty when nothing does.</param>
/// <param name="BreaksInterlocks">Interlocks that fail under it, whether or not they claim to survive faults.</param>
/// <param name="CaughtBy">Interlocks that hold under it and name a load that changes, except those that it keeps from asking anything, because they ask the very contact that is stuck the other way.</param>
/// <param name="IsNoticed">Whether a person would notice without measuring.</param>
/// <param name="Notice">By what a person would notice, or why not.</param>
public sealed record FaultEffect(
    CircuitFault Fault,
    IReadOnlyList<LoadEffect> Effects,
    IReadOnlyList<string> ShortPath,
    IReadOnlyList<string> BreaksInterlocks,
    IReadOnlyList<string> CaughtBy,
    bool IsNoticed,
    string Notice)
{
    /// <summary>What becomes dangerous: interlocks that fail or are no longer proved, loads on that should be off, or left on where the wheel stands.</summary>
    public IReadOnlyList<string> Dangers { get; init; } = [];
}

/// <summary>Compares the states under a fault with those without.</summary>
internal sealed class FaultComparison(CircuitModel model, StateSheet sound, StateSheet faulty)
{
    /// <summary>What the fault does to each load over the reached positions.</summary>
    public IReadOnlyList<LoadEffect> Effects(ulong[] reach)
    {
        List<LoadEffect> effects = [];
        for (int load = 0; load < model.Loads.Count; load++)
        {
            LoadChange change = Change(load, reach);
            if (change != LoadChange.None)
            {
                effects.Add(new LoadEffect(model.Loads[load].Name, change));
            }
        }

        return effects;
    }

    /// <summary>The first reachable state with line on neutral or earth, or null.</summary>
    public (int Inputs, int Position)? FirstShort(ulong[] reach)
    {
        foreach (int inputs in InputMask.Subsets(faulty.MatterToShort))
        {
            ReadOnlySpan<ulong> isShort = faulty.Short(inputs);
            for (int w = 0; w < reach.Length; w++)
            {
                if ((isShort[w] & reach[w]) != 0)
                {
                    return (inputs, (w * 64) + System.Numerics.BitOperations.TrailingZeroCount(isShort[w] & reach[w]));
                }
            }
        }

        return null;
    }

    /// <summary>By what a person would notice, and whether.</summary>
    public (bool IsNoticed, string Words) Notice(IReadOnlyList<LoadEffect> effects, bool isShort)
    {
        if (isShort)
        {
            return (true, "the fuse opens");
        }

        switch (faulty.Fault.Fault.Kind)
        {
            case CircuitFaultKind.MotorStalled:
                return (true, "the wheel stands");
            case CircuitFaultKind.MotorReversed:
                return (true, "the wheel turns the other way");
            case CircuitFaultKind.WheelSlipped:
                return (false, "the programme comes at another time; the home mark shows it");
            case CircuitFaultKind.SupplyLost:
                return (false, "the cycle goes on from where it stood");
            default:
                break;
        }

        string lasting = string.Join(", ", effects.Select(Lasting).Where(w => w.Length > 0));
        if (lasting.Length > 0)
        {
            return (true, lasting);
        }

        LoadChange motor = model.Motor < 0 ? LoadChange.None
            : effects.FirstOrDefault(e => string.Equals(e.Load, model.Loads[model.Motor].Name, StringComparison.Ordinal))?.Change ?? LoadChange.None;
        if ((motor & (LoadChange.OffWhenOn | LoadChange.OnWhenOff)) != LoadChange.None)
        {
            return (true, motor.HasFlag(LoadChange.OffWhenOn) ? "the wheel stops where it should run" : "the wheel runs where it should stand");
        }

        return effects.Count == 0
            ? (false, "nothing changes in any reachable state")
            : (false, "only in some states, so someone would have to look");
    }

    // A change that lasts is noticed: a load that never comes on, or never goes off.
    private string Lasting(LoadEffect effect)
    {
        bool isMotor = model.Motor >= 0 && string.Equals(effect.Load, model.Loads[model.Motor].Name, StringComparison.Ordinal);
        return effect.Change.HasFlag(LoadChange.NeverOn) ? $"{effect.Load} never comes on{(isMotor ? ", no cycle" : "")}"
            : effect.Change.HasFlag(LoadChange.AlwaysOn) ? $"{effect.Load} never goes off{(isMotor ? ", the wheel never stops" : "")}"
            : "";
    }

    private LoadChange Change(int load, ulong[] reach)
    {
        LoadChange change = LoadChange.None;
        bool wasOn = false;
        bool isOn = false;
        bool wasOff = false;
        bool isOff = false;
        int matters = sound.MatterTo(load) | faulty.MatterTo(load);
        InputBudget.Ask(model, matters, faulty.Fault.Fault);
        foreach (int inputs in InputMask.Subsets(matters))
        {
            ReadOnlySpan<ulong> on = sound.On(inputs, load);
            ReadOnlySpan<ulong> nowOn = faulty.On(inputs, load);
            ReadOnlySpan<ulong> unsure = sound.Undecided(inputs, load);
            ReadOnlySpan<ulong> nowUnsure = faulty.Undecided(inputs, load);
            for (int w = 0; w < reach.Length; w++)
            {
                ulong at = reach[w];
                wasOn |= (on[w] & at) != 0;
                isOn |= (nowOn[w] & at) != 0;
                wasOff |= (~on[w] & at) != 0;
                isOff |= (~nowOn[w] & at) != 0;
                change |= (nowOn[w] & ~on[w] & ~unsure[w] & at) != 0 ? LoadChange.OnWhenOff : LoadChange.None;
                change |= (on[w] & ~nowOn[w] & ~nowUnsure[w] & at) != 0 ? LoadChange.OffWhenOn : LoadChange.None;
                change |= (nowUnsure[w] & ~unsure[w] & at) != 0 ? LoadChange.Undecided : LoadChange.None;
            }
        }

        change |= wasOn && !isOn ? LoadChange.NeverOn : LoadChange.None;
        return change | (wasOff && !isOff ? LoadChange.AlwaysOn : LoadChange.None);
    }
}
