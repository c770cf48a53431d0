namespace WheelDraft.Engineering;

/// <summary>The patches of all wipers.</summary>
/// <param name="Feed">The feed's; null for a lands wheel.</param>
/// <param name="Outputs">The outputs', in file order.</param>
/// <param name="Returns">Those of the second wipers of a lands wheel, in file order; empty for a windowed one.</param>
internal sealed record WiperContacts(ContactPatch? Feed, IReadOnlyList<ContactPatch> Outputs, IReadOnlyList<ContactPatch> Returns)
{
    /// <summary>The patches of a brief, with the legs beside contact folds as its springs press them.</summary>
    /// <exception cref="DesignRefusedException">A strip and its output contradict each other.</exception>
    public static WiperContacts Of(StripSprings springs)
    {
        Brief brief = springs.Brief;
        bool lands = brief.Wheel.Construction == WheelConstruction.Lands;
        IReadOnlyList<ContactPatch> All(bool isReturn) =>
            [.. brief.Outputs.Select((o, i) => Patch(springs, StripContact.OfOutput(brief, i, isReturn), o.Adjust))];
        return new(lands ? null : Patch(springs, StripContact.OfFeed(brief), null), All(isReturn: false), lands ? All(isReturn: true) : []);
    }

    private static ContactPatch Patch(StripSprings springs, StripContact contact, AdjustBrief? adjust) =>
        ContactPatch.Of(contact) with { Section = springs.LegsOf(contact, adjust)?.Section };
}
