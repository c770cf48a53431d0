using System.Collections;

namespace WheelDraft.Engineering;

/// <summary>One stretch of the turn in which no contact changes, edges where they should be.</summary>
/// <param name="FromRad">Programme angle at which it starts, in [0, 2π).</param>
/// <param name="LengthRad">How long it is; one turn when nothing ever changes.</param>
/// <param name="Closed">Outputs whose contact is closed, in file order.</param>
/// <param name="SecondsToHome">From its start to home if the motor runs all the way.</param>
/// <param name="IsReachable">Whether the wheel may come here from home.</param>
public sealed record CircuitInterval(double FromRad, double LengthRad, IReadOnlyList<string> Closed, double SecondsToHome, bool IsReachable);

/// <summary>A stretch of the turn over which something stays the same.</summary>
/// <param name="Value">What it is.</param>
/// <param name="FromRad">Programme angle at which it starts, in [0, 2π).</param>
/// <param name="LengthRad">How long it is; it may run through home.</param>
public readonly record struct TurnStretch<T>(T Value, double FromRad, double LengthRad);

/// <summary>The circuit at one interval and one position of the inputs, without fault.</summary>
/// <param name="Interval">Index of the interval.</param>
/// <param name="Inputs">Inputs that are closed, one bit each by index.</param>
public sealed record CircuitState(int Interval, int Inputs)
{
    /// <summary>State of the drive motor; null without one.</summary>
    public LoadState? Motor { get; init; }

    /// <summary>State of each load, the motor last.</summary>
    public required IReadOnlyList<LoadState> Loads { get; init; }

    /// <summary>R.m.s. voltage over each load; NaN where it has no answer (a short, or resonance without resistance).</summary>
    public required IReadOnlyList<double> VoltsV { get; init; }

    /// <summary>Whether the state can be reached from home.</summary>
    public bool IsReachable { get; init; }

    /// <summary>Whether line is joined to neutral or earth: the fuse opens and every load is off.</summary>
    public bool IsShort { get; init; }

    /// <summary>Seconds from the start of the interval to home, inputs held as they are; null when the wheel stops before.</summary>
    public double? SecondsToHome { get; init; }
}

/// <summary>How a load behaves over one interval.</summary>
public enum LoadTruth
{
    /// <summary>Off whatever the inputs do.</summary>
    Off,

    /// <summary>On whatever the inputs do.</summary>
    On,

    /// <summary>On at some positions of the inputs, off at the others.</summary>
    WithInputs,

    /// <summary>Undecided at some positions of the inputs.</summary>
    Undecided,
}

/// <summary>One entry of the truth table: a load in an interval.</summary>
/// <param name="Truth">How it behaves.</param>
/// <param name="Condition">When it is on, in words ("thermostat closed, lid open"); empty when the inputs do not matter.</param>
public sealed record TruthEntry(LoadTruth Truth, string Condition);

/// <summary>States made as they are asked for: interval by interval, within one the input positions by rising number.</summary>
internal sealed class CircuitStateList(int intervals, IReadOnlyList<int> inputPositions, Func<int, int, CircuitState> make) : IReadOnlyList<CircuitState>
{
    /// <inheritdoc/>
    public int Count => checked(intervals * inputPositions.Count);

    /// <inheritdoc/>
    public CircuitState this[int index] => make(index / inputPositions.Count, inputPositions[index % inputPositions.Count]);

    /// <inheritdoc/>
    public IEnumerator<CircuitState> GetEnumerator()
    {
        for (int i = 0; i < Count; i++)
        {
            yield return this[i];
        }
    }

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
