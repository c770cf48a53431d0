using System.Collections.Concurrent;

namespace WheelDraft.Engineering;

/// <summary>What stays the same while a search puts strips at many stations: strips and their springs, by the brief that they were made from.</summary>
/// <remarks>A strip is known again by its brief itself, not by what stands in it. All briefs that share a memory have the same materials, forming, supply, wheel and
/// contacts: a spring knows nothing of stations. Safe to use from many threads; what two work out at once is the same.</remarks>
internal sealed class StripMemory
{
    private readonly ConcurrentDictionary<StripBrief, StripForm> _forms = new(ReferenceEqualityComparer.Instance);
    private readonly ConcurrentDictionary<StripBrief, StripSpring> _springs = new(ReferenceEqualityComparer.Instance);

    /// <summary>The strip as it is formed; null, and nothing remembered, when it cannot be made.</summary>
    public StripForm? FormOf(StripBrief strip, Func<StripForm?> make)
    {
        if (!_forms.TryGetValue(strip, out StripForm? form) && make() is StripForm made)
        {
            form = _forms.GetOrAdd(strip, made);
        }

        return form;
    }

    /// <summary>The spring of a formed strip.</summary>
    public StripSpring SpringOf(StripForm form, Func<StripSpring> make) => _springs.TryGetValue(form.Strip, out StripSpring? spring) ? spring : _springs.GetOrAdd(form.Strip, make());
}
