namespace WheelDraft.Engineering;

/// <summary>The current of one strip, at the upper end of the supply voltage.</summary>
/// <param name="CurrentA">The largest r.m.s. current that it carries, A.</param>
/// <param name="BrokenA">The largest that its contact breaks, A; 0 for one that never opens.</param>
/// <param name="Inductive">Whether what it breaks flows through a coil.</param>
public sealed record StripCurrent(double CurrentA, double BrokenA, bool Inductive)
{
    /// <summary>The current of what a strip serves; null when the circuit does not say it.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="currents">Currents of the solved circuit; null when it was not solved.</param>
    /// <param name="task">What the strip serves.</param>
    internal static StripCurrent? Of(Brief brief, CircuitCurrents? currents, StripTask task)
    {
        if (currents is null || !brief.FeedsAnything)
        {
            return null;
        }

        ContactCurrent? contact = task switch
        {
            ServesFeed => currents.Feed,
            ServesOutput serves => currents.Contacts[brief.Outputs.TakeWhile(o => !string.Equals(o.Name, serves.Output, StringComparison.OrdinalIgnoreCase)).Count()],
            _ => null,
        };
        double? carried = task is ServesNet plain ? currents.NetsA.TryGetValue(plain.Net, out double net) ? net : null : contact?.CarriedA;
        return carried is double amperes && double.IsFinite(amperes) ? new(amperes, contact?.BrokenA ?? 0, contact?.BreaksInductive ?? false) : null;
    }
}
