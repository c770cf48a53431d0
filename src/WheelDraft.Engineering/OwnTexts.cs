namespace WheelDraft.Engineering;

/// <summary>What in a brief is the person's own wording: names, titles, signatures. No unit and no language changes them.</summary>
internal static class OwnTexts
{
    /// <summary>All of them, each once.</summary>
    public static IReadOnlyList<string> Of(Brief brief) => [.. All(brief).OfType<string>().Where(t => t.Length > 0).Distinct(StringComparer.Ordinal)];

    private static IEnumerable<string?> All(Brief brief) =>
    [
        brief.Title, brief.DrawingNumber, brief.Wheel.Material, brief.Wheel.ShaftNet, brief.Feed?.Net, brief.Spacing.OwnResponsibility,
        brief.Office.Owner, brief.Office.CreatedBy, brief.Office.ApprovedBy, brief.Office.Revision,
        .. brief.Office.Revisions.SelectMany(r => new[] { r.Revision, r.Text }),
        .. brief.Supply.Lines,
        .. brief.Outputs.SelectMany(o => new[] { o.Name, o.Net, o.ReturnNet }),
        .. brief.Loads.SelectMany(l => new[] { l.Name, l.From, l.To }),
        .. brief.Inputs.SelectMany(i => new[] { i.Name, i.From, i.To, i.ClosedWhen }),
        .. brief.Interlocks.Select(i => i.Name),
        .. brief.Scenarios.Select(s => s.Name),
        .. brief.Surfaces.Select(s => s.Name),
        .. brief.Strips.SelectMany(s => new[] { s.Name, s.Material, s.Task is ServesNet plain ? plain.Net : null }),
        .. brief.Cams.SelectMany(c => new[] { c.Name, c.Material }),
        .. brief.Parts.SelectMany(p => new[] { p.Name, p.Net }),
    ];
}
