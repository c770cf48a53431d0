using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>Which sheet of nested parts a file is.</summary>
/// <param name="Nested">The stock.</param>
/// <param name="Index">Which of its sheets, from 0.</param>
/// <param name="KerfMm">The kerf that its note says it is compensated for, mm; null where its name alone says what it is.</param>
/// <param name="Input">The mark of the parameter file that it was made from; null when it has none.</param>
internal sealed record NestedSheetNote(NestedStock Nested, int Index, double? KerfMm, string? Input)
{
    /// <summary>What it is called.</summary>
    public string Name => $"SHEET {Wording.Number(Nested.FirstNumber + Index, 0)}";

    /// <summary>What its file is called.</summary>
    public string FileName => NestSheet.Name(Nested, Index) + (KerfMm is 0 && Nested.Pieces[0].Part.KerfMm > 0 ? Nominal : "");

    private const string Nominal = "-nominal";

    /// <summary>The sheet that a file's note names, else the one that its name does; null where it is none of the design's.</summary>
    public static NestedSheetNote? Of(ReadDrawing drawing, Design design, string fileName)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(design);
        string[] texts = [.. CutFileNote.TextsOf(drawing)];
        NestedSheetNote[] all = [.. All(design)];
        foreach (NestedSheetNote sheet in all)
        {
            if (Enum.GetValues<DrawingUnit>().Select(u => $"{design.Brief.DrawingNumber ?? design.Brief.Title} {sheet.Name}, {CutNotes.Unit(u)}, ") is var heads && texts.FirstOrDefault(t => heads.Any(h => t.Contains(h, StringComparison.Ordinal))) is string text)
            {
                return sheet with { KerfMm = CutFileNote.KerfIn(text, design, sheet.Nested.Pieces[0].Part), Input = CutFileNote.InputIn(text) };
            }
        }

        // A file that says it is a part is one, whatever its name.
        return CutFileNote.Of(drawing, design) is not null ? null
            : all.FirstOrDefault(s => string.Equals(s.FileName, fileName, StringComparison.OrdinalIgnoreCase) || string.Equals(s.FileName + Nominal, fileName, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>What files of sheets are called, with their ending.</summary>
    public static IEnumerable<string> FileNames(Design design) => All(design).Select(s => s.FileName + ".dxf");

    /// <summary>What there is to say of its note.</summary>
    /// <param name="design">The design.</param>
    /// <param name="ownMm">The kerf of the process, mm.</param>
    /// <param name="takenMm">The kerf that the file was taken for, mm.</param>
    public IEnumerable<Finding> Remarks(Design design, double ownMm, double takenMm)
    {
        ArgumentNullException.ThrowIfNull(design);
        if (KerfMm is not double told)
        {
            yield return Finding.Warning("against.note", $"The file has no note of this design, so its name says that it is {Name}, and it is taken as {(takenMm > 0 ? $"compensated for a kerf of {Wording.Mm(takenMm)}" : "nominal")}, which fits better.");
        }
        else if (told > 0 && Math.Abs(told - ownMm) > CutComparison.ToleranceMm)
        {
            yield return Finding.Error("against.kerf", $"The file is compensated for a kerf of {Wording.Mm(told)}; the process has {Wording.Mm(ownMm)}.");
        }

        if (Input is string mark && design.Brief.InputMark.Length > 0 && !string.Equals(mark, design.Brief.InputMark, StringComparison.OrdinalIgnoreCase))
        {
            yield return Finding.Warning("against.input", $"The file was made from another state of the parameter file: its mark is {mark}, that of the file given {design.Brief.InputMark.ToUpperInvariant()}.");
        }
    }

    // Only asked for where there are sheets: nesting takes a second or two.
    private static IEnumerable<NestedSheetNote> All(Design design) =>
        design.Brief.Sheets.Count == 0 ? [] : design.Parts.Nested.SelectMany(n => Enumerable.Range(0, n.Result.Sheets.Count).Select(i => new NestedSheetNote(n, i, null, null)));
}
