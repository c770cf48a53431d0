namespace WheelDraft.Engineering;

/// <summary>The patches of all wipers.</summary>
/// <param name="Feed">The feed's; null for a lands wheel.</param>
/// <param name="Outputs">The outputs', in file order.</param>
/// <param name="Returns">Those of the second wipers of a lands wheel, in file order; empty for a windowed one.</param>
internal sealed record WiperContacts(ContactPatch? Feed, IReadOnlyList<ContactPatch> Outputs, IReadOnlyList<ContactPatch> Returns)
{
    /// <summary>The patches of a brief.</summary>
    /// <exception cref="DesignRefusedException">A strip and its output contradict each other.</exception>
    public static WiperContacts Of(Brief brief)
    {
        bool lands = brief.Wheel.Construction == WheelConstruction.Lands;
        IReadOnlyList<ContactPatch> All(bool isReturn) =>
            [.. brief.Outputs.Select((_, i) => ContactPatch.Of(StripContact.OfOutput(brief, i, isReturn)))];
        return new(lands ? null : ContactPatch.Of(StripContact.OfFeed(brief)), All(isReturn: false), lands ? All(isReturn: true) : []);
    }
}
