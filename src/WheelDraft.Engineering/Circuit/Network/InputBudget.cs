using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>What the positions of inputs that matter together may come to.</summary>
internal static class InputBudget
{
    /// <summary>Whether every position of some inputs can be looked at in every interval.</summary>
    public static bool Allows(CircuitModel model, int inputs) => States(model, inputs) <= Budgets.CircuitStates;

    /// <summary>Refuses what comes to more states than are proved.</summary>
    /// <param name="model">The circuit.</param>
    /// <param name="inputs">Inputs that matter together, one bit each.</param>
    /// <param name="fault">The fault under which they do.</param>
    /// <exception cref="DesignRefusedException">They are too many; at the file's inputs.</exception>
    public static void Ask(CircuitModel model, int inputs, CircuitFault fault)
    {
        if (!Allows(model, inputs))
        {
            string names = string.Join(", ", InputMask.Members(inputs).Select(i => $"'{model.Inputs[i].Name}'"));
            throw new DesignRefusedException([TooMany(model.Brief, string.Create(
                CultureInfo.InvariantCulture,
                $"{InputMask.Count(inputs)} inputs matter together ({fault.Words}: {names}): they have {InputMask.Positions(inputs)} positions, and the turn has {model.Turn.Intervals.Count} intervals: {States(model, inputs)} states, of which at most {Budgets.CircuitStates} can be proved and listed."))]);
        }
    }

    /// <summary>What is said of too many inputs.</summary>
    public static Finding TooMany(Brief brief, string found) =>
        Finding.Error("circuit.too-many-inputs", $"{found} Contacts that always move together can be one input.", brief.PlaceOf("input"));

    private static long States(CircuitModel model, int inputs) => (long)model.Turn.Intervals.Count << InputMask.Count(inputs);
}
