using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Spacing rows as lines of a terminal.</summary>
internal static class SpacingLines
{
    /// <summary>A head and one line a row; nothing where there are no rows.</summary>
    public static IEnumerable<string> Of(IReadOnlyList<SpacingRow> rows)
    {
        if (rows.Count == 0)
        {
            return [];
        }

        List<string[]> all = [["nets", "items", "kind", "grade", "V", "required mm", "nominal mm", "worst mm", "verdict"]];
        all.AddRange(rows.Select(r => (string[])
        [
            $"{r.Nets.First} - {r.Nets.Second}",
            $"{r.FirstItem} - {r.SecondItem}",
            r.Kind == SpacingKind.Clearance ? "clearance" : "creepage",
            r.Nets.Grade switch { Insulation.Functional => "functional", Insulation.Basic => "basic", Insulation.Supplementary => "supplementary", _ => "reinforced" },
            Wording.Number(r.Nets.WorkingV, 1),
            Wording.Number(r.Required.RequiredMm, 3),
            Wording.Number(r.NominalMm, 3),
            Wording.Number(r.WorstMm, 3),
            r.Verdict switch { SpacingVerdict.Misses => "misses", SpacingVerdict.Tight => "tight", _ => "meets" },
        ]));
        return TextTable.Lines(all, 4);
    }
}
