using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;

namespace WheelDraft.Formats.Report;

/// <summary>Spacing for people: a table in the order of test houses, what would meet, and the full steps in an appendix.</summary>
internal static class SpacingMarkdown
{
    // Pairs of nets in the body of the report, and pairs whose every step stands in the appendix; and pairs of conductors there.
    private const int MostShown = 20;
    private const int MostPairs = 200;

    public static void Write(ProsePage page, Design design) => Write(page, design.Spacing, design.Remedies);

    /// <summary>The table of a design or of any drawing.</summary>
    public static void Write(ProsePage page, SpacingTable table, IReadOnlyList<Remedy> remedies)
    {
        page.Heading(2, "Spacing");
        IReadOnlyList<SpacingLocation> locations = SpacingLocation.Of(table.Rows);
        if (locations.Count == 0)
        {
            page.Paragraph("No two nets are in the file between which a distance is asked.");
            return;
        }

        (SpacingLocation Location, int Number)[] all = [.. locations.Select((l, i) => (l, i + 1))];
        (SpacingLocation Location, int Number)[] shown = Shown(all);
        page.Paragraph($"{(shown.Length == all.Length ? "Every pair of nets" : $"The {Wording.Number(shown.Length, 0)} pairs of nets with the least to spare of {Wording.Number(all.Length, 0)}, which all stand in the appendix")}, over the whole turn: the least distance at the worst tolerance, in brackets as drawn, of what is asked with its margin. "
                + "Lengths in mm, voltages across the distance, r.m.s. of a sine: its peak is √2 times as much. The steps stand in the appendix by number.");
        Lines(page, shown, withPlaces: true);
        Remedies(page, remedies);
    }

    // What misses or is tight is always shown; besides them as many as a page of a report bears.
    private static (SpacingLocation Location, int Number)[] Shown((SpacingLocation Location, int Number)[] all) =>
        all.Length <= MostShown ? all : [.. all.OrderBy(a => a.Location.Ratio).Where((a, i) => i < MostShown || a.Location.Verdict != SpacingVerdict.Meets).OrderBy(a => a.Number)];

    private static void Lines(ProsePage page, IEnumerable<(SpacingLocation Location, int Number)> lines, bool withPlaces) => page.Table(
        ["No.", "Nets", "V r.m.s.", "Grade", "Clearance of asked", "Creepage of asked", "Verdict", .. withPlaces ? ["Location"] : (string[])[]],
        lines.Select(l => (IReadOnlyList<string>)[.. Line(page, l.Location, l.Number), .. withPlaces ? [l.Location.Where] : (string[])[]]));

    /// <summary>Every step of every row; what is required in the same way is shown once.</summary>
    public static void Appendix(ProsePage page, SpacingTable table)
    {
        IReadOnlyList<SpacingLocation> locations = SpacingLocation.Of(table.Rows);
        if (locations.Count == 0)
        {
            return;
        }

        List<SpacingRow> distinct = [];
        foreach (SpacingRow row in locations.SelectMany(l => l.Rows).Where(r => !distinct.Exists(d => IsAsked(d, r))))
        {
            distinct.Add(row);
        }

        page.Heading(2, "Appendix: spacing, step by step").Heading(3, "What is required");
        foreach ((SpacingRow row, int i) in distinct.Select((r, i) => (r, i)))
        {
            page.Paragraph($"**R{Wording.Number(i + 1, 0)}.** {Kind(row)}, {SpacingJson.Grade(row.Nets.Grade)}: {Wording.Mm(row.Required.RequiredMm)}. Basis: {row.Required.BasisInFull} (confidence: {row.Required.ConfidenceInWords}).")
                .List(row.Required.Steps);
        }

        (SpacingLocation Location, int Number)[] all = [.. locations.Select((l, i) => (l, i + 1))];
        (SpacingLocation Location, int Number)[] shown = Shown(all);
        page.Heading(3, "What is measured");
        foreach ((SpacingLocation location, int number) in shown)
        {
            page.Paragraph($"**{Wording.Number(number, 0)}. {location.Nets}**").List(location.Rows.SelectMany(r => Measuring(r, distinct.FindIndex(d => IsAsked(d, r)) + 1)));
        }

        if (shown.Length < all.Length)
        {
            page.Heading(3, "All pairs of nets");
            Lines(page, all, withPlaces: false);
            page.Heading(3, "Where the others were measured")
                .Table(["No.", "Kind", "At worst", "Required", "By", "From", "To"], all.Except(shown).SelectMany(l => l.Location.Rows.Select(r => (IReadOnlyList<string>)
                [
                    Wording.Number(l.Number, 0), Kind(r), page.Mm(r.WorstMm), page.Mm(r.Required.RequiredMm), $"R{Wording.Number(distinct.FindIndex(d => IsAsked(d, r)) + 1, 0)}", At(r.OnFirst), At(r.OnSecond),
                ])));
        }
    }

    /// <summary>Every pair of items, and not only the one that decides.</summary>
    public static void AllPairs(ProsePage page, SpacingTable table)
    {
        IReadOnlyList<SpacingLocation> pairs =
            [.. table.AllPairs.GroupBy(r => (r.Nets.First, r.Nets.Second, r.FirstItem, r.SecondItem)).Select(g => new SpacingLocation([.. g.OrderBy(r => r.Kind)]))
            .OrderBy(l => l.Rows[0].Nets.First, NaturalOrder.Names).ThenBy(l => l.Rows[0].Nets.Second, NaturalOrder.Names)];
        if (pairs.Count == 0)
        {
            return;
        }

        IReadOnlyList<SpacingLocation> shown = pairs.Count <= MostPairs ? pairs : [.. pairs.OrderBy(p => p.Ratio).Where((p, i) => i < MostPairs || p.Verdict != SpacingVerdict.Meets)];
        page.Heading(2, "Appendix: every pair of conductors")
            .Paragraph($"Measured as above, item by item, mm.{(shown.Count == pairs.Count ? "" : $" The {Wording.Number(shown.Count, 0)} of {Wording.Number(pairs.Count, 0)} with the least to spare; report.json has all.")}")
            .Table(
                ["Items", "Nets", "Clearance of asked", "Creepage of asked", "Verdict"],
                shown.Select(p => (IReadOnlyList<string>)
                [
                    p.Where,
                    p.Nets,
                    OfAsked(page, p.Clearance),
                    OfAsked(page, p.Creepage),
                    p.Verdict == SpacingVerdict.Misses ? "**misses**" : SpacingJson.Word(p.Verdict),
                ]));
    }

    private static string Kind(SpacingRow row) => row.Kind == SpacingKind.Clearance ? "Clearance" : "Creepage";

    private static bool IsAsked(SpacingRow like, SpacingRow row) =>
        like.Kind == row.Kind && like.Nets.Grade == row.Nets.Grade && like.Required.Steps.SequenceEqual(row.Required.Steps, StringComparer.Ordinal);

    private static IEnumerable<string> Measuring(SpacingRow row, int requirement)
    {
        yield return $"{Kind(row)}: {Wording.Mm(row.WorstMm)} at worst, {Wording.Mm(row.NominalMm)} nominal, {Wording.Mm(row.Required.RequiredMm)} required (R{Wording.Number(requirement, 0)}). {WordOf(row)}. {Place(row)}";
        foreach (string step in row.Measured)
        {
            yield return step;
        }
    }

    private static IReadOnlyList<string> Line(ProsePage page, SpacingLocation location, int number)
    {
        NetPair pair = location.Rows[0].Nets;
        return
        [
            Wording.Number(number, 0),
            location.Nets,
            Wording.Number(pair.WorkingV, 1),
            SpacingJson.Grade(pair.Grade),
            OfAsked(page, location.Clearance),
            OfAsked(page, location.Creepage),
            location.Verdict == SpacingVerdict.Misses ? "**misses**" : SpacingJson.Word(location.Verdict),
        ];
    }

    private static string OfAsked(ProsePage page, SpacingRow? row) => row is null ? "-" : $"{page.Mm(row.WorstMm)} ({page.Mm(row.NominalMm)}) of {page.Mm(row.Required.RequiredMm)}";

    private static string WordOf(SpacingRow row) => row.Verdict switch
    {
        SpacingVerdict.Misses => "**Misses**",
        SpacingVerdict.Tight => "Tight: less than 1.1 times as much as required",
        _ => "Meets",
    };

    private static string Place(SpacingRow row) =>
        $"Least from {At(row.OnFirst)} on {row.FirstItem} to {At(row.OnSecond)} on {row.SecondItem}"
        + (row.AtRad is double at && row.Kind == SpacingKind.Clearance ? $", wheel at {Wording.Degrees(at)}." : ".")
        + (row.Bounds is GapBounds bounds ? $" Certified between {Wording.Number(bounds.LowerMm, 4)} and {Wording.Number(bounds.UpperMm, 4)} mm." : "");

    private static string At(SpacePoint p) => $"({Wording.Number(p.X, 2)}, {Wording.Number(p.Y, 2)}, {Wording.Number(p.Z, 2)})";

    private static void Remedies(ProsePage page, IReadOnlyList<Remedy> remedies)
    {
        if (remedies.Count == 0)
        {
            return;
        }

        page.Heading(3, "What would meet")
            .Paragraph("Each change was tried by measuring again; it is the smallest of its kind in steps of 0.05 mm that meets with a tenth to spare, tolerances counted.")
            .Table(["Nets", "Misses", "Change", "Measured then, mm", "Misses elsewhere then"], remedies.Select(r => (IReadOnlyList<string>)
            [
                $"{r.Row.Nets.First} – {r.Row.Nets.Second}",
                r.Row.Kind == SpacingKind.Clearance ? "clearance" : "creepage",
                r.Text,
                double.IsFinite(r.WorstAfterMm) ? page.Mm(r.WorstAfterMm) : "-",
                r.NewMisses.Count == 0 ? "nothing" : string.Join("; ", r.NewMisses),
            ]));
    }
}

/// <summary>The rows of one pair of nets together.</summary>
/// <param name="Rows">Clearance, then creepage; one of them at least.</param>
internal sealed record SpacingLocation(IReadOnlyList<SpacingRow> Rows)
{
    public SpacingRow? Clearance => Rows.FirstOrDefault(r => r.Kind == SpacingKind.Clearance);

    public SpacingRow? Creepage => Rows.FirstOrDefault(r => r.Kind == SpacingKind.Creepage);

    /// <summary>The worse of the two.</summary>
    public SpacingVerdict Verdict => Rows.Min(r => r.Verdict);

    /// <summary>The least ratio of measured to required.</summary>
    public double Ratio => Rows.Min(r => r.Required.RequiredMm > 0 ? r.WorstMm / r.Required.RequiredMm : double.PositiveInfinity);

    public string Nets => $"{Rows[0].Nets.First} – {Rows[0].Nets.Second}";

    /// <summary>The deciding items, shown once where both rows have the same.</summary>
    public string Where => Clearance is { } air && Creepage is { } surface && !SameItems(air, surface)
        ? $"{Items(air)}; creepage: {Items(surface)}"
        : Items(Rows[0]);

    /// <summary>Rows by pair of nets, in natural order.</summary>
    public static IReadOnlyList<SpacingLocation> Of(IReadOnlyList<SpacingRow> rows) =>
        [.. rows.GroupBy(r => (r.Nets.First, r.Nets.Second)).Select(g => new SpacingLocation([.. g.OrderBy(r => r.Kind)]))
            .OrderBy(l => l.Rows[0].Nets.First, NaturalOrder.Names).ThenBy(l => l.Rows[0].Nets.Second, NaturalOrder.Names)];

    private static string Items(SpacingRow row) => $"{row.FirstItem} – {row.SecondItem}";

    private static bool SameItems(SpacingRow a, SpacingRow b) =>
        string.Equals(a.FirstItem, b.FirstItem, StringComparison.Ordinal) && string.Equals(a.SecondItem, b.SecondItem, StringComparison.Ordinal);
}
