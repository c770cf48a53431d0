using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>The wipers of a circuit with what they carry, as reports list them.</summary>
internal static class CurrentWords
{
    /// <summary>The feed, where there is one, then the outputs in file order.</summary>
    public static IReadOnlyList<(string Name, ContactCurrent Current)> Wipers(CircuitAnalysis circuit)
    {
        IEnumerable<(string, ContactCurrent)> outputs = circuit.Network.Contacts.Select((c, i) => (c.Name, circuit.Currents.Contacts[i]));
        return circuit.Currents.Feed is { } feed ? [("(feed)", feed), .. outputs] : [.. outputs];
    }
}
