using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Guide;

/// <summary>What a shop is told with the files, as plain text to send: what to cut of what, how exactly, and what must be agreed.</summary>
internal static class OrderNote
{
    /// <summary>The file, beside the cutting files.</summary>
    public const string FileName = "order.txt";

    /// <summary>Writes it; lengths in the unit of the drawings.</summary>
    /// <param name="design">The design.</param>
    /// <param name="nominal">Whether the cutting files follow the finished edges.</param>
    public static string Write(Design design, bool nominal)
    {
        ArgumentNullException.ThrowIfNull(design);
        Brief brief = design.Brief;
        ReadersUnit unit = ReadersUnit.Of(brief);
        StringBuilder text = new();
        Line($"{brief.DrawingNumber ?? brief.Title}: parts to cut{(brief.InputMark.Length > 0 ? $", mark {brief.InputMark.ToUpperInvariant()}" : "")}");
        Line(design.Meets ? "" : "MISSES: DO NOT CUT. The design misses something; ask first.");
        if (brief.Spacing.OwnResponsibility is string own)
        {
            text.Append(ReadersWords.Read("Below the rules on own responsibility")).Append(": \"").Append(own).Append("\".\n");
        }

        Line($"Files at true size; DXF in {(brief.DrawingUnit == DrawingUnit.Inch ? "inches" : "mm")}, SVG in mm with nothing but what is cut through. DXF: cut layers WINDOW first, then OUTLINE. FOLD and MARK are scribed or left out, never cut through; NOTE is for reading.");
        Line(KerfLine(brief, nominal));
        Line($"Cut edges within ±{Wording.Mm(brief.Process.ToleranceMm)} of their place{(brief.Process.Name is string process ? $" ({process})" : "")}. No burrs, no rounded edges; flat. Do not turn parts over: one face is the wiper side.");
        if (brief.Process.HoldingTabs > 0)
        {
            Line($"Holding tabs: the stretches on layer TAB ({Wording.Mm(brief.Process.TabWidthMm)} and the kerf) stay uncut; OUTLINE is open there on purpose. They are broken and filed by whoever takes the parts out.");
        }

        Line("");
        foreach (Part part in design.Parts.All.Where(p => p.KerfMm is not null).Select(p => nominal ? p.Nominal() : p))
        {
            CutWork work = CutWork.Of(brief, part);
            string grain = part.Stock.Grain switch { StripGrain.Along => ", grain along x", StripGrain.Across => ", grain along y", _ => "" };
            Line($"1 x {part.CutName}: {part.Name}, {part.Stock.Material}, {Thickness(part)}{grain}; blank {Wording.Mm(part.CutBounds.Width)} x {Wording.Mm(part.CutBounds.Height)}, cut {Wording.Mm(Math.Round(work.CutLengthMm, 1))}, {Wording.Number(work.Pierces, 0)} starts{Time(work)}.");
        }

        foreach (NestedStock nested in design.Parts.Nested)
        {
            Line("");
            Line($"Or nested for {Wording.Number(nested.Stock.Sets, 0)} sets, {Wording.Number(nested.Result.Sheets.Count, 0)} sheet(s) of {nested.Stock.Material}, {Wording.Mm(nested.Stock.ThicknessMm)} thick, {Wording.Mm(nested.Stock.WidthMm)} x {Wording.Mm(nested.Stock.HeightMm)}, grain along x: sheet-{Wording.Number(nested.FirstNumber, 0)}{(nested.Result.Sheets.Count > 1 ? " and following" : "")}.");
        }

        Line("");
        Line("Carrier and base are made by another process, from their own files. Times are a wide band from common practice, no source, without setting up.");
        return text.ToString();

        void Line(string line) => text.Append(ReadersWords.Read(unit.Words(line))).Append('\n');
    }

    private static string KerfLine(Brief brief, bool nominal) =>
        brief.Process.KerfMm == 0 ? "Contours are nominal, no kerf is counted."
        : nominal ? "Contours are the finished edges: allow for your kerf yourselves, outside outlines and inside windows."
        : $"Contours are the path of the cutter's middle, compensated for a kerf of {Wording.Mm(brief.Process.KerfMm)}: do not compensate again.";

    private static string Thickness(Part part) => part.Stock.ThicknessMm is double mm ? $"{Wording.Mm(mm)} thick" : "thickness to be agreed";

    private static string Time(CutWork work) => work.TimeS is (double least, double most) ? $", about {Wording.Number(least, 0)} to {Wording.Number(most, 0)} s" : "";
}
