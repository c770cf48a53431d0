namespace WheelDraft.Engineering;

/// <summary>What the wheel is set out from.</summary>
/// <param name="Brief">What was asked.</param>
/// <param name="Motion">The turning.</param>
/// <param name="Programme">When each output is on.</param>
/// <param name="Contacts">The patches.</param>
/// <param name="Rules">What an open contact must keep, per output in file order.</param>
internal sealed record WheelTask(Brief Brief, Motion Motion, Programme Programme, WiperContacts Contacts, IReadOnlyList<OpenContactRule> Rules)
{
    /// <summary>Working voltage of two nets, V; null for the supply's between any two.</summary>
    public Func<string, string, double>? WorkingV { get; init; }
}
