using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>The cutting file of a part: its shapes as the cutter is led, the recess that is not cut through, fold lines, marks to scribe, a note that is not cut.</summary>
/// <remarks>A wheel and its carrier lie in the wheel frame; a base in the housing's plan, the shaft axis at the origin; a strip's blank lies along x, its terminal end at x = 0.</remarks>
internal static class PartCutFile
{
    /// <summary>The drawing of one part of a design.</summary>
    /// <param name="design">The design.</param>
    /// <param name="part">The part.</param>
    /// <param name="leadMm">Length of lead-ins, mm; 0 for none. Only parts that the process of the file cuts have them.</param>
    public static CutDrawing Of(Design design, Part part, double leadMm = 0)
    {
        IReadOnlyList<LeadIn> leads = leadMm > 0 && part.KerfMm is not null ? LeadIns.Of(design.Strips, part, leadMm) : [];
        IReadOnlyList<TabbedContour> tabbed = HoldingTabs.Of(design.Brief, design.Wheel, design.Strips, part, leads);
        PartMarks marks = PartMarks.Of(design, part);
        return new CutDrawing(
            design.Brief.DrawingUnit,
            [
                .. part.Recess?.Pockets.SelectMany(p => p.Contours).Select(c => new CutContour(CutLayer.Recess, c)) ?? [],
                .. part.Shapes.SelectMany(s => CutDrawing.ContoursOf(s.ToCut)).Select(c => c with
                {
                    Contour = leads.FirstOrDefault(l => ReferenceEquals(l.Of, c.Contour))?.Contour ?? c.Contour,
                    Tabbed = tabbed.FirstOrDefault(t => ReferenceEquals(t.Of, c.Contour)),
                }),
            ],
            [
                .. marks.Folds.Select(f => new CutPath(CutLayer.Fold, [f])),
                .. marks.Scribed.Select(s => new CutPath(CutLayer.Mark, s)),
                .. leads.Select(l => new CutPath(CutLayer.Lead, [l.Line])),
                .. marks.Shown.Select(s => new CutPath(CutLayer.Note, s)),
            ],
            CutNotes.Of(design, part, tabbed.Sum(t => t.Tabs.Count)));
    }
}
