namespace WheelDraft.Engineering;

/// <summary>The working voltage of every pair of nets, the highest that any look at the circuit has found.</summary>
internal sealed class VoltageBook(Brief brief, CircuitAnalysis first)
{
    // Solved voltages agree to rounding; less than this is no rise, V.
    private const double SameV = 1e-6;

    private readonly Dictionary<(string First, string Second), double> _raised = [];

    /// <summary>Working voltage of two nets, V.</summary>
    public double Between(string firstNet, string secondNet)
    {
        (string, string) key = string.CompareOrdinal(firstNet, secondNet) <= 0 ? (firstNet, secondNet) : (secondNet, firstNet);
        return Math.Max(first.WorkingVoltageV(firstNet, secondNet), _raised.GetValueOrDefault(key));
    }

    /// <summary>Working voltage across the contact of an output, V, by its index.</summary>
    public double AcrossContact(int output) => Between(brief.OtherNetOf(brief.Outputs[output]), brief.Outputs[output].Net);

    /// <summary>Takes a later look into account.</summary>
    /// <returns>The pairs whose voltage rose, with what it was before.</returns>
    public IReadOnlyList<(WorkingVoltage Pair, double BeforeV)> Raise(CircuitAnalysis later)
    {
        List<(WorkingVoltage, double)> rises = [];
        foreach (WorkingVoltage pair in later.WorkingVoltages)
        {
            double beforeV = Between(pair.First, pair.Second);
            if (pair.VoltageV > beforeV + SameV)
            {
                _raised[(pair.First, pair.Second)] = pair.VoltageV;
                rises.Add((pair, beforeV));
            }
        }

        return rises;
    }
}
