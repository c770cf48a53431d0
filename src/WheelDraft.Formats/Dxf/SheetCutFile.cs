using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>The cutting file of a sheet on which parts are nested: their contours, fold lines and marks in place; the sheet's edge, the name of each part
/// and a table of quantities on the layer that is not cut.</summary>
internal static class SheetCutFile
{
    private const double HeightMm = 2.5;
    private const double PitchMm = 4;
    private const double GapMm = 5;

    /// <summary>The drawing of one sheet.</summary>
    /// <param name="design">The design.</param>
    /// <param name="nested">The stock.</param>
    /// <param name="index">Which of its sheets, from 0.</param>
    /// <param name="nominal">Whether contours follow the finished edges.</param>
    public static CutDrawing Of(Design design, NestedStock nested, int index, bool nominal)
    {
        NestedSheet sheet = nested.Result.Sheets[index];
        List<CutContour> contours = [];
        List<CutPath> paths = [new(CutLayer.Note, Contour.Rectangle(Point.Origin, new(nested.Stock.WidthMm, nested.Stock.HeightMm)).Pieces)];
        List<CutNote> notes = [];
        int tabs = 0;
        foreach (NestedItem item in sheet.Items)
        {
            NestPiece piece = nested.Pieces[item.Item];
            Outline outline = (nominal ? piece.Part.Shapes[piece.Shape].Finished : piece.Outline).Placed(item.Place);
            Part part = nominal ? piece.Part.Nominal() : piece.Part;
            TabbedContour? tabbed = HoldingTabs.Of(design.Brief, design.Wheel, design.Strips, part).FirstOrDefault(t => ReferenceEquals(t.Of, part.Shapes[piece.Shape].ToCut.Outer))?.Placed(item.Place);
            tabs += tabbed?.Tabs.Count ?? 0;
            contours.AddRange(CutDrawing.ContoursOf(outline).Select(c => c.Layer == CutLayer.Outline ? c with { Tabbed = tabbed } : c));
            notes.Add(new(outline.Bounds.Centre, HeightMm / 2, piece.Mark));
            PartMarks marks = PartMarks.Of(design, piece.Part);
            paths.AddRange(marks.Folds.Select(f => new CutPath(CutLayer.Fold, [f.Placed(item.Place)])));
            paths.AddRange(marks.Scribed.Select(s => new CutPath(CutLayer.Mark, s.Select(p => p.Placed(item.Place)))));
        }

        return new(design.Brief.DrawingUnit, contours, paths, [.. Notes(design, nested, index, (nominal, tabs)), .. notes]);
    }

    private static IEnumerable<CutNote> Notes(Design design, NestedStock nested, int index, (bool Nominal, int Tabs) cut)
    {
        Part first = cut.Nominal ? nested.Pieces[0].Part.Nominal() : nested.Pieces[0].Part;
        ReadersUnit lengths = ReadersUnit.Of(design.Brief);
        string[] lines =
        [
            $"{(design.Meets ? "" : "MISSES: DO NOT CUT. ")}{design.Brief.DrawingNumber ?? design.Brief.Title} SHEET {Wording.Number(nested.FirstNumber + index, 0)}, {CutNotes.Unit(design.Brief.DrawingUnit)}, {CutNotes.KerfWords(design, first)}, "
                + lengths.Words($"{nested.Stock.Material} {Wording.Mm(nested.Stock.ThicknessMm)}, SHEET {Wording.Mm(nested.Stock.WidthMm)} BY {Wording.Mm(nested.Stock.HeightMm)}, GRAIN ALONG X, WIPER SIDE UP")
                + lengths.Words(CutNotes.Tabs(design, cut.Tabs))
                + (design.Brief.InputMark.Length > 0 ? $", INPUT {design.Brief.InputMark.ToUpperInvariant()}" : ""),
            .. nested.On(nested.Result.Sheets[index]).Select(p => $"{Wording.Number(p.Count, 0)} X {p.Piece.Mark}"),
        ];
        return lines.Select((words, i) => new CutNote(new(0, -GapMm - (i * PitchMm)), HeightMm, words));
    }
}
