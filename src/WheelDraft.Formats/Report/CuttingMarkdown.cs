using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;

namespace WheelDraft.Formats.Report;

/// <summary>What the shop has to do, as a chapter of the report: process and its source, work by part, sheets.</summary>
internal static class CuttingMarkdown
{
    public static void Write(ProsePage page, Design design)
    {
        ProcessBrief process = design.Brief.Process;
        page.Heading(2, "Cutting")
            .Paragraph($"{(process.Name is string name ? $"By {name}: kerf" : "Kerf")} {Wording.Mm(process.KerfMm)}, cut edges within ±{Wording.Mm(process.ToleranceMm)}; least slot {Wording.Mm(process.LeastSlotMm)}, web {Wording.Mm(process.LeastWebMm)}, hole {Wording.Mm(process.LeastHoleMm)}, inside radius {Wording.Mm(process.InsideRadiusMm)}.{Source(process)}")
            .Table(["Part", "Blank", "Mass, g", "Cut length", "Starts", "Time, s"], design.Parts.All.Select(p => Row(page, CutWork.Of(design.Brief, p))))
            .Paragraph("Blank and cut length are those of the cutter's path. Times are a wide band from common practice, no source, without setting up: they tell an honest quotation from a slip. `bom.csv` has the same with alloys and hardware.");
        Tabs(page, design);
        foreach (NestedStock nested in design.Parts.Nested)
        {
            page.Paragraph($"{Wording.Number(nested.Stock.Sets, 0)} sets of what is made of {nested.Stock.Material}, {Wording.Mm(nested.Stock.ThicknessMm)} thick, lie on {(nested.Result.Sheets.Count == 1 ? "1 sheet" : $"{Wording.Number(nested.Result.Sheets.Count, 0)} sheets")} of {Wording.Mm(nested.Stock.WidthMm)} by {Wording.Mm(nested.Stock.HeightMm)}, from `cut/sheet-{Wording.Number(nested.FirstNumber, 0)}.dxf` on; by area fewer than {Wording.Number(nested.Result.LeastSheets, 0)} are impossible. Parts cover {Wording.Percent(nested.UsedShare)} of the sheets, at least {Wording.Mm(nested.Stock.GapMm)} apart and from the edge; strips that fold keep to the rolling direction, along the sheet's width.");
        }
    }

    private static void Tabs(ProsePage page, Design design)
    {
        if (design.Brief.Process.HoldingTabs == 0)
        {
            return;
        }

        (Part Part, HoldingTab Tab)[] all = [.. design.Parts.All.SelectMany(p => HoldingTabs.Of(design.Brief, design.Wheel, design.Strips, p).SelectMany(t => t.Tabs).Select(t => (p, t)))];
        page.Paragraph($"Holding tabs, {Wording.Mm(design.Brief.Process.TabWidthMm)} wide, keep the parts in their sheet. They lie on layer TAB of the DXF, where the outline is left uncut; the SVG has gaps there. Break them, then file the edge flush and smooth at each place below, before anything is folded or fitted: a stub takes from clearances, and one under a clamp tilts the strip. No tab stands on a patch path, a contact nose, a springing length, a terminal tab or beside a fold.");
        if (all.Length > 0)
        {
            page.Table(["Part", "File at x", "y"], all.Select(a => (IReadOnlyList<string>)[a.Part.Name, page.Mm(a.Tab.At.X), page.Mm(a.Tab.At.Y)]));
        }
    }

    private static IReadOnlyList<string> Row(ProsePage page, CutWork work) =>
    [
        work.Part.Name,
        $"{page.Mm(work.Part.CutBounds.Width)} × {page.Mm(work.Part.CutBounds.Height)}",
        work.MassG is double mass ? Wording.Number(mass, 2) : "–",
        page.Mm(work.CutLengthMm),
        Wording.Number(work.Pierces, 0),
        work.TimeS is (double least, double most) ? $"{Wording.Number(least, 0)} – {Wording.Number(most, 0)}" : "–",
    ];

    private static string Source(ProcessBrief process) => process.Name is string name && CuttingProcesses.Find(name) is CuttingProcess listed
        ? $" Figures that the file does not give itself are of the process list: {listed.Source}.{(listed.Remark.Length > 0 ? $" Mind: {listed.Remark}." : "")}"
        : "";
}
