using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Pdf;

namespace WheelDraft.Formats.Outputs;

/// <summary>A design's true-size template: on A4, or on Letter where drawings are in inches.</summary>
internal static class DesignTemplate
{
    public static TemplateContent Of(Design design)
    {
        PaperSize paper = TemplateSheets.PaperOf(design);
        return new(design.Brief.Title, [.. TemplateSheets.Parts(design), .. BaseTemplate.Parts(design)])
        {
            Number = design.Brief.DrawingNumber,
            Author = design.Brief.Office.CreatedBy,
            Paper = paper,
            Artwork = ArtworkSheets.Of(design),
            Check = CheckLine.Of(design.Brief.DrawingUnit),
            Input = design.Brief.InputMark,
            Warning = design.Meets ? "" : "MISSES: DO NOT CUT",
            Instructions = [TemplateSheets.Instructions(design, paper)],
        };
    }
}
