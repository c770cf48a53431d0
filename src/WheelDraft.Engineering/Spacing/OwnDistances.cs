namespace WheelDraft.Engineering;

/// <summary>Distances of the person's own in place of the rule's: below the rule's value they need words that say why.</summary>
internal static class OwnDistances
{
    /// <summary>One finding for each kind of distance that lies below the rule's value: an error without words, a warning that repeats them.</summary>
    public static IReadOnlyList<Finding> Of(Brief brief, SpacingTable spacing, IReadOnlyList<OpenContact> open) =>
    [
        .. Below(brief, "clearance", brief.Spacing.ClearanceMm, [.. Rows(spacing, SpacingKind.Clearance), .. open.Select(o => o.Requirement?.Clearance)]),
        .. Below(brief, "creepage", brief.Spacing.CreepageMm, [.. Rows(spacing, SpacingKind.Creepage), .. open.Select(o => o.Requirement?.Creepage)]),
    ];

    private static IEnumerable<Requirement?> Rows(SpacingTable spacing, SpacingKind kind) => spacing.Rows.Where(r => r.Kind == kind).Select(r => r.Required);

    private static IEnumerable<Finding> Below(Brief brief, string key, double? ownMm, IEnumerable<Requirement?> asked)
    {
        IReadOnlyList<Requirement> own = [.. asked.OfType<Requirement>().Where(r => r.IsOwn)];
        if (ownMm is not double mm || own.Count == 0)
        {
            yield break;
        }

        bool noRule = own.Any(r => r.RuleMm is null);
        double ruleMm = own.Max(r => r.RuleMm ?? 0);
        if (!noRule && mm >= ruleMm)
        {
            yield break;
        }

        string less = noRule ? $"stands where {Standard(brief)} gives no distance at all" : $"is below the {RuleWords.Mm(ruleMm)} that {Standard(brief)} asks";
        string found = $"The {key} of one's own, {RuleWords.Mm(mm)} ([spacing] {key}), {less}";
        yield return brief.Spacing.OwnResponsibility is string words
            ? Finding.Warning("spacing.own-responsibility", $"{found}. Taken on the person's own responsibility: \"{words}\".", brief.PlaceOf($"spacing.{key}"))
            : Finding.Error("spacing.own-distance", $"{found}. Give the rule's value or more, or say in [spacing] own_responsibility what proves that less is enough.", brief.PlaceOf($"spacing.{key}"));
    }

    private static string Standard(Brief brief) => brief.Spacing.Standard == SpacingStandard.Iec60664 ? "IEC 60664-1" : "IEC 60335-1";
}
