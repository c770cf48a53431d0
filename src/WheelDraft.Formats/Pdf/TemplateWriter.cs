using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Raster;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Pdf;

/// <summary>What a true-size template holds.</summary>
/// <param name="Title">Title of the document.</param>
/// <param name="Parts">The drawings at true size: a sheet each, as large as it needs to be.</param>
internal sealed record TemplateContent(string Title, IReadOnlyList<Sheet> Parts)
{
    /// <summary>Drawing number, or null.</summary>
    public string? Number { get; init; }

    /// <summary>Who made it; empty when not known.</summary>
    public string Author { get; init; } = "";

    /// <summary>For letters that the stroke alphabet lacks, or null.</summary>
    public ScriptFont? Font { get; init; }

    /// <summary>The paper to print on: A4 or Letter, upright.</summary>
    public PaperSize Paper { get; init; } = PaperSize.A4;

    /// <summary>Pages of instructions and cautions that come first, at most as large as the paper.</summary>
    public IReadOnlyList<Sheet> Instructions { get; init; } = [];

    /// <summary>Artwork, which begins a page of its own after the parts.</summary>
    public IReadOnlyList<Sheet> Artwork { get; init; } = [];

    /// <summary>The check lines of every page.</summary>
    public CheckLine Check { get; init; } = CheckLine.Of(DrawingUnit.Millimetre);

    /// <summary>Mark of the parameter file, on every page; empty for none.</summary>
    public string Input { get; init; } = "";

    /// <summary>Words across every page, under a cross, so that no part is cut by it; empty for none.</summary>
    public string Warning { get; init; } = "";

    /// <summary>Colours.</summary>
    public Theme Theme { get; init; } = Theme.Print;
}

/// <summary>Writes templates that are printed at true size, glued together and laid on the metal.</summary>
internal static class TemplateWriter
{
    /// <summary>The bytes of the PDF: instructions, then the parts, as many below each other as a page takes, a larger one over several
    /// pages that overlap by 10 mm; each page with a check line across and one along; artwork last, on pages of its own.</summary>
    /// <exception cref="ArgumentException">There is no part, or the paper leaves less than 100 mm to draw on.</exception>
    public static byte[] Write(TemplateContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (content.Parts.Count == 0)
        {
            throw new ArgumentException("A template needs at least one part.", nameof(content));
        }

        IEnumerable<PdfPage> words = content.Instructions.Select(s => new PdfPage(s.Size, p => p.Paint(s)) { Entries = [ReadersWords.Read(s.Words.Title)] });
        IEnumerable<PdfPage> tiles = Pages(content).Select(p => new PdfPage(content.Paper, painter => Paint(painter, p)) { Entries = [ReadersWords.Read(p.Marks.Words.Title)] });
        PdfOptions options = new(content.Title) { Theme = content.Theme, Subject = "True-size template: print at 100 %", Number = content.Number, Author = content.Author, Font = content.Font };
        return PdfWriter.Pages(options, words.Concat(tiles));
    }

    /// <summary>The pages of the parts, in the order in which they are printed.</summary>
    internal static IReadOnlyList<TemplatePage> Pages(TemplateContent content)
    {
        TemplateFrame frame = new(content.Paper) { Input = content.Input, Warning = content.Warning, Check = content.Check };
        List<TemplateLeaf> leaves = [.. Leaves(content.Title, content.Parts, frame.Window), .. Leaves(content.Title, content.Artwork, frame.Window)];
        string total = FixedPoint.Short(leaves.Count, 0);
        return [.. leaves.Select((leaf, i) => new TemplatePage(leaf.Pieces, frame.Window, frame.Marks(leaf, (FixedPoint.Short(i + 1, 0), total))))];
    }

    private static List<TemplateLeaf> Leaves(string title, IReadOnlyList<Sheet> parts, Bounds window)
    {
        List<TemplateLeaf> leaves = [];
        List<Sheet> together = [];
        foreach (Sheet part in parts)
        {
            TilePlan plan = new(part, window);
            bool isSmall = plan.Columns * plan.Rows == 1;
            if (together.Count > 0 && (!isSmall || together.Sum(p => p.HeightMm) + part.HeightMm > window.Height))
            {
                leaves.Add(TemplateLeaf.Of(title, together, window));
                together = [];
            }

            if (isSmall)
            {
                together.Add(part);
            }
            else
            {
                leaves.AddRange(plan.Tiles.Select(t => new TemplateLeaf(part.Words.Title, [new(part, t.Shift)]) { Tile = t, Plan = plan }));
            }
        }

        return together.Count > 0 ? [.. leaves, TemplateLeaf.Of(title, together, window)] : leaves;
    }

    private static void Paint(PdfPainter painter, TemplatePage page)
    {
        foreach (TemplatePiece piece in page.Pieces)
        {
            painter.PaintWindow(piece.Part, piece.Shift, page.Window);
        }

        painter.PaintItems(page.Marks);
    }
}

/// <summary>One page of a template.</summary>
/// <param name="Pieces">The drawings that it shows, or of one drawing a piece.</param>
/// <param name="Window">Where the page shows them, mm on the page.</param>
/// <param name="Marks">Check lines, joins and words.</param>
internal sealed record TemplatePage(IReadOnlyList<TemplatePiece> Pieces, Bounds Window, Sheet Marks);

/// <summary>A drawing on a page.</summary>
/// <param name="Part">The drawing.</param>
/// <param name="Shift">From a point of the drawing to its place on the page, mm.</param>
internal sealed record TemplatePiece(Sheet Part, Vector Shift);

/// <summary>A page before it is numbered.</summary>
/// <param name="Title">What it is called.</param>
/// <param name="Pieces">What it shows.</param>
internal sealed record TemplateLeaf(string Title, IReadOnlyList<TemplatePiece> Pieces)
{
    /// <summary>How a drawing over several pages is shared out; null where whole drawings stand on the page.</summary>
    public TilePlan? Plan { get; init; }

    /// <summary>Which page of the plan.</summary>
    public Tile Tile { get; init; }

    /// <summary>Whole drawings below each other, what room is left shared between them.</summary>
    public static TemplateLeaf Of(string title, IReadOnlyList<Sheet> parts, Bounds window)
    {
        double gap = (window.Height - parts.Sum(p => p.HeightMm)) / (parts.Count + 1);
        List<TemplatePiece> pieces = [];
        double top = window.MaxY;
        foreach (Sheet part in parts)
        {
            Point corner = new(window.Centre.X - (part.WidthMm / 2), top - gap - part.HeightMm);
            pieces.Add(new(part, corner - Point.Origin));
            top = corner.Y;
        }

        return new(parts.Count == 1 ? parts[0].Words.Title : title, pieces);
    }
}
