using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>One state of the circuit in words.</summary>
internal static class StateWords
{
    /// <summary>From when on in the turn, and which inputs are closed: "from 12.0 s, thermostat closed".</summary>
    /// <param name="model">The circuit.</param>
    /// <param name="position">Index of the wheel's position.</param>
    /// <param name="closed">Inputs that are really closed, one bit each.</param>
    public static string Of(CircuitModel model, int position, int closed)
    {
        int[] set = [.. Enumerable.Range(0, model.Inputs.Count).Where(i => (closed >> i & 1) != 0)];
        string[] holds = [.. set.Where(i => model.IsHold(i)).Select(i => $", {model.Standing(i, closed: true)}")];
        string inputs = string.Join(", ", set.Where(i => !model.IsHold(i)).Select(i => model.Inputs[i].Name));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"from {model.SecondsAt(model.Turn.Positions[position].LowerRad):0.0} s, {(inputs.Length == 0 ? "every input open" : $"{inputs} closed")}{string.Concat(holds)}");
    }
}
