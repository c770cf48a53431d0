using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>A cutting file held against the part of the design that it was made from.</summary>
/// <remarks>The kerf that the file says it is compensated for is put on the design's part rather than taken off the file: that is the same curve
/// wherever nothing was changed, and a contour that was changed may have no offset at all. What is wanted goes through the same writer and the
/// same reader as what is found, so that only the drawing differs.</remarks>
/// <param name="Name">What it is compared with: a part, or a sheet of nested parts.</param>
/// <param name="FileName">What its file is called, without folder and ending.</param>
/// <param name="KerfMm">The kerf that the file is compensated for, mm; 0 for a nominal one.</param>
/// <param name="Differences">Every difference.</param>
/// <param name="Remarks">What else there is to say: of the drawing itself, of its note.</param>
internal sealed record AgainstCheck(string Name, string FileName, double KerfMm, IReadOnlyList<CutDifference> Differences, IReadOnlyList<Finding> Remarks)
{
    /// <summary>Whether the part would come out as designed.</summary>
    public bool Meets => Findings.All(f => f.Severity != FindingSeverity.Error);

    /// <summary>Differences and remarks together.</summary>
    public IReadOnlyList<Finding> Findings => [.. Differences.Select(d => d.Finding), .. Remarks];

    /// <summary>How a drawing is read to be compared: nothing in it may stop the reading, because whatever it holds is a difference.</summary>
    public static DxfReadOptions Reading(DxfReadOptions asked, Design design)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(design);
        return asked with
        {
            // Finer than for drawings by hand: a file in the wrong unit has letters whose strokes are hardly longer than what is joined there.
            JoinMm = asked.JoinMm == new DxfReadOptions().JoinMm ? CutComparison.ToleranceMm : asked.JoinMm,
            UnitMm = asked.UnitMm ?? (design.Brief.DrawingUnit == DrawingUnit.Inch ? 25.4 : 1),
            Heeds = layer => !CutComparison.IsUncut(layer),
            Needs = _ => LayerNeed.Nothing,
            TabsCloseOutlines = asked.TabsCloseOutlines || design.Brief.Process.HoldingTabs > 0,
        };
    }

    /// <summary>Compares.</summary>
    /// <param name="drawing">The file, read as <see cref="Reading"/> says.</param>
    /// <param name="design">The design.</param>
    /// <param name="fileName">Name of the file without folder and ending: says which part it is where its note does not.</param>
    /// <exception cref="DesignRefusedException">Neither the note nor the name says which part it is.</exception>
    public static AgainstCheck Of(ReadDrawing drawing, Design design, string fileName)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(design);
        if (NestedSheetNote.Of(drawing, design, fileName) is NestedSheetNote sheet)
        {
            return OfSheet(drawing, design, sheet);
        }

        Part? named = design.Parts.All.FirstOrDefault(p => Is(p.FileName, fileName) || Is(p.Nominal().CutName, fileName));
        if (CutFileNote.Of(drawing, design) is CutFileNote note)
        {
            return Compared(drawing, design, note.Part, note.KerfMm) is var check && OfNote(note, named, design) is var remarks
                ? check with { Remarks = [.. check.Remarks, .. remarks] }
                : throw new InvalidOperationException("A comparison always gives a result.");
        }

        if (named is null)
        {
            string names = string.Join(", ", design.Parts.All.Select(p => $"{p.CutName}.dxf").Concat(NestedSheetNote.FileNames(design)));
            throw new DesignRefusedException("against.part", $"Nothing says which part '{fileName}' is: it has no note that this design writes, and no name of its cutting files. Rename it to one of {names}.");
        }

        // Without a note it may be compensated or not: the likelier of the two is the one with less to say about.
        double[] kerfs = [.. ((double[])[named.KerfMm ?? 0, 0]).Distinct()];
        AgainstCheck likelier = kerfs.Select(k => Compared(drawing, design, named, k)).MinBy(c => c.Differences.Count)!;
        string taken = likelier.KerfMm > 0 ? $"compensated for a kerf of {Wording.Mm(likelier.KerfMm)}" : "nominal";
        return likelier with { Remarks = [.. likelier.Remarks, Finding.Warning("against.note", $"The file has no note of this design, so its name says that it is {named.Name}, and it is taken as {taken}, which fits better.")] };
    }

    // A sheet holds the parts as the process cuts them, or nominal: no third kerf is put on all of them.
    private static AgainstCheck OfSheet(ReadDrawing drawing, Design design, NestedSheetNote sheet)
    {
        double own = sheet.Nested.Pieces[0].Part.KerfMm ?? 0;
        double[] kerfs = sheet.KerfMm is double told ? [told > 0 ? own : 0] : [.. ((double[])[own, 0]).Distinct()];
        AgainstCheck check = kerfs.Select(k => Compared(drawing, design, SheetCutFile.Of(design, sheet.Nested, sheet.Index, k == 0 && own > 0), (sheet.Name, sheet.FileName, k))).MinBy(c => c.Differences.Count)!;
        return check with { Remarks = [.. check.Remarks, .. sheet.Remarks(design, own, check.KerfMm)] };
    }

    private static AgainstCheck Compared(ReadDrawing drawing, Design design, Part part, double kerfMm) =>
        Compared(drawing, design, PartCutFile.Of(design, part.WithKerf(kerfMm, design.Brief)), (part.Name, part.CutName, kerfMm));

    private static AgainstCheck Compared(ReadDrawing drawing, Design design, CutDrawing asked, (string Name, string File, double KerfMm) of)
    {
        ReadDrawing wanted = Wanted(design, asked);
        Placement place = CutWhereabouts.Of(wanted, drawing);
        List<CutDifference> differences = [.. CutWhereabouts.Words(place), .. new CutComparison(wanted, drawing, place).Differences()];
        differences.AddRange(drawing.LeftOut.Where(Matters).Select(l => new CutDifference("against.extra", l.Layer, $"Not in the design, {l}: {l.Why}.") { Source = new DxfSource(l.Line, null, l.Entity) }));

        // Which unit is taken where the file states none was not asked by anybody.
        return new(of.Name, of.File, of.KerfMm, differences, [.. drawing.Remarks.Where(r => r.Code is not "drawing.unit")]);
    }

    private static bool Matters(LeftOut left) =>
        left.What == LeftOutKind.Shape || (left.What == LeftOutKind.Words && !Is(left.Layer, "NOTE"));

    private static ReadDrawing Wanted(Design design, CutDrawing drawing)
    {
        byte[] bytes = Encoding.ASCII.GetBytes(DxfWriter.Write(drawing, DxfVersion.R2000));
        return DxfReader.Read(bytes, Reading(new(), design));
    }

    private static IEnumerable<Finding> OfNote(CutFileNote note, Part? named, Design design)
    {
        if (named is not null && !ReferenceEquals(named, note.Part))
        {
            yield return Finding.Error("against.part", $"The file's name says {named.Name}, its note says {note.Part.Name}; it is compared with {note.Part.Name}.");
        }

        if (note.Part.KerfMm is double kerf and > 0 && note.KerfMm > 0 && Math.Abs(kerf - note.KerfMm) > CutComparison.ToleranceMm)
        {
            yield return Finding.Error("against.kerf", $"The file is compensated for a kerf of {Wording.Mm(note.KerfMm)}; the process has {Wording.Mm(kerf)}.");
        }

        if (note.Input is string mark && design.Brief.InputMark.Length > 0 && !Is(mark, design.Brief.InputMark))
        {
            yield return Finding.Warning("against.input", $"The file was made from another state of the parameter file: its mark is {mark}, that of the file given {design.Brief.InputMark.ToUpperInvariant()}.");
        }
    }

    private static bool Is(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
