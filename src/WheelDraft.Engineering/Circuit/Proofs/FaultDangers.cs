namespace WheelDraft.Engineering;

/// <summary>What becomes dangerous under a fault, in words.</summary>
/// <param name="sound">The circuit without fault.</param>
internal sealed class FaultDangers(SoundCircuit sound)
{
    private readonly CircuitModel _model = sound.Model;

    /// <summary>Everything found; empty when nothing is.</summary>
    /// <param name="sheet">States under the fault.</param>
    /// <param name="reach">Movement under the fault.</param>
    /// <param name="mayReach">Positions that may be reached once it has come.</param>
    /// <param name="effects">What it does to each load.</param>
    public IEnumerable<string> Of(StateSheet sheet, StateReach reach, ulong[] mayReach, IReadOnlyList<LoadEffect> effects)
    {
        foreach (LoadEffect effect in effects)
        {
            if (_model.Motor >= 0 && string.Equals(effect.Load, _model.Loads[_model.Motor].Name, StringComparison.Ordinal))
            {
                if (effect.Change.HasFlag(LoadChange.AlwaysOn))
                {
                    yield return "the wheel never stops, so the programme comes again every turn";
                }
            }
            else if (effect.Change.HasFlag(LoadChange.AlwaysOn))
            {
                yield return $"{effect.Load} never goes off";
            }
            else if (effect.Change.HasFlag(LoadChange.OnWhenOff))
            {
                yield return $"{effect.Load} on when it should be off";
            }
            else if (effect.Change.HasFlag(LoadChange.Undecided))
            {
                yield return $"{effect.Load} may be on when it should be off";
            }
        }

        foreach (string load in LeftOn(sheet, reach, mayReach))
        {
            yield return $"{load} may stay on while the wheel stands";
        }

        if (sheet.Fault.Fault.Kind == CircuitFaultKind.SupplyLost && StandsNearer() is { Length: > 0 } edges)
        {
            yield return $"the wheel may come to stand nearer than it parks to the edge {edges}";
        }
    }

    // Loads on where the wheel stands under the fault and did not without it.
    private IEnumerable<string> LeftOn(StateSheet sheet, StateReach reach, ulong[] mayReach)
    {
        if (sound.Motion.Resting is not { } resting)
        {
            yield break;
        }

        bool stalled = reach.Motion == WheelMotion.Stalled;
        for (int load = 0; load < _model.Motor; load++)
        {
            int matters = sheet.MatterTo(load) | sheet.MatterTo(_model.Motor);
            InputBudget.Ask(_model, matters, sheet.Fault.Fault);
            if (InputMask.Subsets(matters).Any(u => IsLeftOn(sheet, u, load, stalled, mayReach, resting.Positions)))
            {
                yield return _model.Loads[load].Name;
            }
        }
    }

    private bool IsLeftOn(StateSheet sheet, int inputs, int load, bool stalled, ulong[] mayReach, ulong[] before)
    {
        ReadOnlySpan<ulong> on = sheet.On(inputs, load);
        ReadOnlySpan<ulong> undecided = sheet.Undecided(inputs, load);
        ReadOnlySpan<ulong> turns = sheet.On(inputs, _model.Motor);
        for (int w = 0; w < on.Length; w++)
        {
            if (((on[w] | undecided[w]) & mayReach[w] & ~before[w] & (stalled ? ulong.MaxValue : ~turns[w])) != 0)
            {
                return true;
            }
        }

        return false;
    }

    // A wheel at speed runs on by its least coast at least; one whose supply was lost just before the edge need not, and the
    // supply comes back to it where no contact feeds the motor.
    private string StandsNearer() => _model.Brief.Drive.Coast.LeastRad <= 0 || sound.Motion.Resting is null ? ""
        : string.Join(" and the edge ", sound.Motion.Parks.Select(p => $"where '{p.Output}' lets go").Distinct(StringComparer.Ordinal));
}
