namespace WheelDraft.Engineering;

/// <summary>What the person who signs must be able to show, because the design rests on it and no drawing can prove it.</summary>
internal static class EvidenceAsked
{
    // Comparative tracking index at the lower end of each group, IEC 60112 solution A (IEC 60664-1:2007 clause 4.8.1.3, the clause from memory).
    private static string LeastIndex(MaterialGroup group) => group switch
    {
        MaterialGroup.I => "600",
        MaterialGroup.II => "400",
        MaterialGroup.IIIa => "175",
        _ => "100",
    };

    /// <summary>In words, in fixed order.</summary>
    public static IReadOnlyList<string> Of(Brief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        return
        [
            $"carrier of material group {RuleWords.Group(brief.Carrier.Group)}: a comparative tracking index of at least {LeastIndex(brief.Carrier.Group)} by IEC 60112, from the maker of the material",
            .. brief.Surfaces.Select(s => $"surface '{s.Name}' of material group {RuleWords.Group(s.Group)}: a comparative tracking index of at least {LeastIndex(s.Group)}, likewise"),
            $"pollution degree {RuleWords.Plain(brief.Environment.PollutionDegree)} at every surface between live parts, in the place where the timer lives and for its whole life: copper dust of the wipers, damp and dirt counted{(brief.Environment.Condensation ? ", frost and dew too" : "; no frost or dew, as the file says")}",
            $"overvoltage category {RuleWords.Category(brief.Supply.Category)}: how and where the timer is connected",
            $"use at no more than {RuleWords.Metres(Math.Max(brief.Environment.AltitudeM, 2000))} above the sea, which its instructions must say",
            .. brief.Ribs.Where(r => r.Joint == RibJoint.Cemented).Select(r => $"the cemented joint of the rib on '{r.Surface}': that bond, without gap, for the life of the timer (IEC 60664-3, from memory)"),
            .. Worn(brief),
            .. brief.Spacing.OwnResponsibility is string words ? [$"what is below the rules on own responsibility: \"{words}\""] : Array.Empty<string>(),
        ];
    }

    private static IEnumerable<string> Worn(Brief brief) => brief.Outputs
        .Where(o => o.Contact.WornLengthMm > o.Contact.LengthMm)
        .Select(o => $"'{o.Name}' is serviced before its contact patch is longer than {RuleWords.Mm(o.Contact.WornLengthMm)}");
}
