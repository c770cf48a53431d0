namespace WheelDraft.Engineering;

/// <summary>The formed strips of a brief and their springs, each worked out when it is first asked for.</summary>
/// <remarks>Both follow from the brief alone: neither where rings lie nor what currents flow changes them, so that all rounds of a
/// layout share them.</remarks>
/// <param name="brief">The whole brief.</param>
/// <param name="memory">Strips worked out before for briefs that differ from this one in nothing that a strip knows of; null for none.</param>
/// <param name="bands">Bands found before, for whatever briefs; null for none.</param>
internal sealed class StripSprings(Brief brief, StripMemory? memory = null, BandMemory? bands = null)
{
    private readonly StripForm?[] _forms = new StripForm?[brief.Strips.Count];
    private readonly StripSpring?[] _springs = new StripSpring?[brief.Strips.Count];
    private readonly PressingLimits _limits = PressingLimits.Of(brief);

    /// <summary>The brief.</summary>
    internal Brief Brief => brief;

    /// <summary>One strip as it is formed; null, with every reason added, when it cannot be made.</summary>
    internal StripForm? Form(int index, List<Finding> reasons) =>
        _forms[index] ??= memory is null ? StripForming.Form(brief, index, reasons) : memory.FormOf(brief.Strips[index], () => StripForming.Form(brief, index, reasons));

    /// <summary>The spring of a wiper.</summary>
    /// <param name="form">The strip, as <see cref="Form"/> gave it.</param>
    /// <param name="contact">Its contact, as the brief gives it.</param>
    /// <param name="adjust">Its adjusting screw, as the brief gives it; null without one.</param>
    internal StripSpring Of(StripForm form, StripContact contact, AdjustBrief? adjust) =>
        _springs[form.Index] ??= memory is null ? StripSpring.Of(form, contact, adjust, _limits, bands) : memory.SpringOf(form, () => StripSpring.Of(form, contact, adjust, _limits, bands));

    /// <summary>The legs of a wiper's nose; null without a contact fold, and for a strip that cannot be made, which is refused when it is placed.</summary>
    internal NoseLegs? LegsOf(StripContact contact, AdjustBrief? adjust)
    {
        int index = Enumerable.Range(0, brief.Strips.Count).FirstOrDefault(i => string.Equals(brief.Strips[i].Name, contact.FromStrip, StringComparison.Ordinal), -1);
        return contact.Shape == ContactShape.FoldLine && index >= 0 && Form(index, []) is { Nose: not null } form
            ? LegsOf(form, contact, adjust)
            : null;
    }

    /// <summary>The same of a strip that is formed.</summary>
    internal NoseLegs? LegsOf(StripForm form, StripContact contact, AdjustBrief? adjust) =>
        Of(form, contact, adjust) is { Band.Fails: null } spring ? NoseLegs.Of(form, spring, contact) : null;
}
