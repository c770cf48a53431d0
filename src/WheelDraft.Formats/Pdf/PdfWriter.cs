using SkiaSharp;
using WheelDraft.Drawing;
using WheelDraft.Formats.Raster;

namespace WheelDraft.Formats.Pdf;

// The folder "Pdf": sheets as pages of a PDF at true size, and true-size templates tiled over printable sheets.
// Everything is vectors; texts are stroke lettering; no dates and no ids, so that the same sheets give the same bytes.

/// <summary>How sheets are written as PDF.</summary>
/// <param name="Title">Title of the document.</param>
internal sealed record PdfOptions(string Title)
{
    /// <summary>Colours.</summary>
    public Theme Theme { get; init; } = Theme.Light;

    /// <summary>What the document is about, or null.</summary>
    public string? Subject { get; init; }
}

/// <summary>Writes sheets as the pages of one PDF.</summary>
internal static class PdfWriter
{
    /// <summary>The bytes of the file; one page a sheet, at the sheet's size.</summary>
    /// <exception cref="ArgumentException">There is no sheet.</exception>
    public static byte[] Write(IReadOnlyList<Sheet> sheets, PdfOptions options)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(options);
        if (sheets.Count == 0)
        {
            throw new ArgumentException("A PDF needs at least one sheet.", nameof(sheets));
        }

        return Pages(options, sheets.Select(s => new PdfPage(s.Size, painter => painter.Paint(s))));
    }

    internal static byte[] Pages(PdfOptions options, IEnumerable<PdfPage> pages)
    {
        using MemoryStream stream = new();
        using (SKDocument document = SKDocument.CreatePdf(stream, Metadata(options)) ?? throw new InvalidOperationException("The PDF could not be begun."))
        {
            foreach (PdfPage page in pages)
            {
                SKCanvas canvas = document.BeginPage((float)(page.Size.WidthMm * PointsPerMm), (float)(page.Size.HeightMm * PointsPerMm));
                canvas.Scale((float)PointsPerMm);
                page.Paint(new SheetPainter(canvas, options.Theme));
                document.EndPage();
            }

            document.Close();
        }

        return stream.ToArray();
    }

    private const double PointsPerMm = 72 / 25.4;

    private static SKDocumentPdfMetadata Metadata(PdfOptions options) => new()
    {
        Title = options.Title,
        Subject = options.Subject ?? "",
        Creator = "WheelDraft",
        Producer = "WheelDraft",

        // 100 units per mm: page sizes in hundredths of a millimetre come out exact. At the default of 72 an A4 page
        // would be rounded to whole points, 0.05 % too small.
        RasterDpi = 2540,
        EncodingQuality = 101,
    };
}

/// <summary>A page in the making.</summary>
/// <param name="Size">Its paper.</param>
/// <param name="Paint">Paints it, in millimetres.</param>
internal sealed record PdfPage(PaperSize Size, Action<SheetPainter> Paint);
