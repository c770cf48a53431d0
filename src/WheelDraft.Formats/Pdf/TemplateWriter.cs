using WheelDraft.Drawing;
using WheelDraft.Formats.Raster;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Pdf;

/// <summary>What a true-size template holds.</summary>
/// <param name="Title">Title of the document.</param>
/// <param name="Parts">The drawings at true size: a sheet each, as large as it needs to be.</param>
public sealed record TemplateContent(string Title, IReadOnlyList<Sheet> Parts)
{
    /// <summary>The paper to print on: A4 or Letter, upright.</summary>
    public PaperSize Paper { get; init; } = PaperSize.A4;

    /// <summary>Pages of instructions and cautions that come first, at most as large as the paper.</summary>
    public IReadOnlyList<Sheet> Instructions { get; init; } = [];

    /// <summary>Colours.</summary>
    public Theme Theme { get; init; } = Theme.Print;
}

/// <summary>Writes templates that are printed at true size, glued together and laid on the metal.</summary>
public static class TemplateWriter
{
    /// <summary>The bytes of the PDF: instructions, then each part on one page or over several that overlap by 10 mm,
    /// each page with a line of 100 mm across and one along to check the printer by.</summary>
    /// <exception cref="ArgumentException">There is no part, or the paper leaves less than 100 mm to draw on.</exception>
    public static byte[] Write(TemplateContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (content.Parts.Count == 0)
        {
            throw new ArgumentException("A template needs at least one part.", nameof(content));
        }

        IEnumerable<PdfPage> words = content.Instructions.Select(s => new PdfPage(s.Size, p => p.Paint(s)));
        IEnumerable<PdfPage> tiles = Pages(content).Select(p => new PdfPage(content.Paper, painter => Paint(painter, p)));
        PdfOptions options = new(content.Title) { Theme = content.Theme, Subject = "True-size template: print at 100 %" };
        return PdfWriter.Pages(options, words.Concat(tiles));
    }

    /// <summary>The pages of the parts, in the order in which they are printed.</summary>
    internal static IReadOnlyList<TemplatePage> Pages(TemplateContent content)
    {
        TemplateFrame frame = new(content.Paper);
        TilePlan[] plans = [.. content.Parts.Select(p => new TilePlan(p, frame.Window))];
        int total = plans.Sum(p => p.Columns * p.Rows);
        List<TemplatePage> pages = [];
        for (int part = 0; part < plans.Length; part++)
        {
            foreach (Tile tile in plans[part].Tiles)
            {
                string name = FixedPoint.Short(pages.Count + 1, 0);
                Sheet marks = frame.Marks(content.Parts[part], plans[part], tile, (name, FixedPoint.Short(total, 0)));
                pages.Add(new(content.Parts[part], tile.Shift, frame.Window, marks));
            }
        }

        return pages;
    }

    private static void Paint(SheetPainter painter, TemplatePage page)
    {
        painter.PaintWindow(page.Part, page.Shift, page.Window, page.Marks.HeightMm);
        painter.PaintItems(page.Marks);
    }
}

/// <summary>One page of a template.</summary>
/// <param name="Part">The drawing of which it shows a piece.</param>
/// <param name="Shift">From a point of the drawing to its place on the page, mm.</param>
/// <param name="Window">Where the page shows the drawing, mm on the page.</param>
/// <param name="Marks">Check lines, joins and words.</param>
internal sealed record TemplatePage(Sheet Part, Vector Shift, Bounds Window, Sheet Marks);
