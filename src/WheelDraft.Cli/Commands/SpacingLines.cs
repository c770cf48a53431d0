using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Spacing rows as lines of a terminal.</summary>
internal static class SpacingLines
{
    /// <summary>A head and one line a row; nothing where there are no rows.</summary>
    public static IEnumerable<string> Of(IReadOnlyList<SpacingRow> rows, ReadersUnit unit)
    {
        if (rows.Count == 0)
        {
            return [];
        }

        List<string[]> all = [["nets", "items", "kind", "grade", "V", $"required {unit.Sign}", $"nominal {unit.Sign}", $"worst {unit.Sign}", "verdict"]];
        all.AddRange(rows.Select(r => (string[])
        [
            $"{r.Nets.First} - {r.Nets.Second}",
            $"{r.FirstItem} - {r.SecondItem}",
            r.Kind == SpacingKind.Clearance ? "clearance" : "creepage",
            r.Nets.Grade switch { Insulation.Functional => "functional", Insulation.Basic => "basic", Insulation.Supplementary => "supplementary", _ => "reinforced" },
            Wording.Number(r.Nets.WorkingV, 1),
            unit.Number(r.Required.RequiredMm),
            unit.Number(r.NominalMm),
            unit.Number(r.WorstMm),
            r.Verdict switch { SpacingVerdict.Misses => "misses", SpacingVerdict.Tight => "tight", _ => "meets" },
        ]));
        return TextTable.Lines(all, 4);
    }
}
