using System.Globalization;
using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Raster;

namespace WheelDraft.Formats.Pdf;

// The folder "Pdf": sheets as pages of a PDF at true size, and true-size templates tiled over printable sheets.
// Everything is vectors and text; texts are the stroke alphabet as an embedded font; no dates and no ids, so that the same sheets give the same bytes.

/// <summary>How sheets are written as PDF.</summary>
/// <param name="Title">Title of the document.</param>
internal sealed record PdfOptions(string Title)
{
    /// <summary>Colours.</summary>
    public Theme Theme { get; init; } = Theme.Light;

    /// <summary>What the document is about, or null.</summary>
    public string? Subject { get; init; }

    /// <summary>Drawing number, or null.</summary>
    public string? Number { get; init; }

    /// <summary>Who made it; empty when not known.</summary>
    public string Author { get; init; } = "";

    /// <summary>For letters that the stroke alphabet lacks, or null.</summary>
    public ScriptFont? Font { get; init; }

    /// <summary>The language of its words, as BCP 47 names it.</summary>
    public string Language { get; init; } = ReadersWords.Language;
}

/// <summary>Writes sheets as the pages of one PDF.</summary>
internal static class PdfWriter
{
    /// <summary>The bytes of the file; one page and one entry of the outline a sheet, at the sheet's size.</summary>
    /// <exception cref="ArgumentException">There is no sheet.</exception>
    public static byte[] Write(IReadOnlyList<Sheet> sheets, PdfOptions options)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(options);
        if (sheets.Count == 0)
        {
            throw new ArgumentException("A PDF needs at least one sheet.", nameof(sheets));
        }

        return Pages(options, sheets.Select(s => new PdfPage(s.Size, painter => painter.Paint(s)) { Entries = [ReadersWords.Read(s.Words.Title)] }));
    }

    internal static byte[] Pages(PdfOptions options, IEnumerable<PdfPage> pages)
    {
        PdfFile file = new();
        PdfLettering lettering = new(options.Font);
        int catalog = file.Reserve();
        int tree = file.Reserve();
        int resources = file.Reserve();
        List<int> leaves = [];
        List<(string Title, int Page)> entries = [];
        foreach (PdfPage page in pages)
        {
            PdfPainter painter = new(lettering, options.Theme);
            page.Paint(painter);
            int content = file.AddStream(painter.Content);
            string size = $"{Points(page.Size.WidthMm)} {Points(page.Size.HeightMm)}";
            leaves.Add(file.Add($"<</Type/Page/Parent {PdfFile.To(tree)}/MediaBox[0 0 {size}]/Resources {PdfFile.To(resources)}/Contents {PdfFile.To(content)}>>"));
            entries.AddRange(page.Entries.Select(e => (e, leaves[^1])));
        }

        file.Set(resources, $"<</Font<<{lettering.Write(file)}>>>>");
        file.Set(tree, string.Create(CultureInfo.InvariantCulture, $"<</Type/Pages/Count {leaves.Count}/Kids[{string.Join(' ', leaves.Select(PdfFile.To))}]>>"));
        int metadata = file.AddStream(Encoding.UTF8.GetBytes(PdfMetadata.Packet(options)), "/Type/Metadata/Subtype/XML");
        string outline = entries.Count > 0 ? $"/Outlines {PdfFile.To(Outline(file, entries))}/PageMode/UseOutlines" : "";
        file.Set(
            catalog,
            $"<</Type/Catalog/Pages {PdfFile.To(tree)}/Lang{PdfFile.Text(options.Language)}/ViewerPreferences<</DisplayDocTitle true>>/Metadata {PdfFile.To(metadata)}{outline}>>");
        return file.Bytes(catalog, file.Add(PdfMetadata.Information(options)));
    }

    /// <summary>Points of 1/72 in, never more than the paper has: a hair more would be another row of pixels.</summary>
    private static string Points(double lengthMm)
    {
        const double hair = 1e-9;
        const int decimals = 5;
        double unit = Math.Pow(10, -decimals);
        return FixedPoint.Short(Math.Floor((lengthMm * 72 / 25.4 / unit) + hair) * unit, decimals);
    }

    private static int Outline(PdfFile file, List<(string Title, int Page)> entries)
    {
        int root = file.Reserve();
        int[] items = [.. entries.Select(_ => file.Reserve())];
        for (int i = 0; i < items.Length; i++)
        {
            string before = i > 0 ? $"/Prev {PdfFile.To(items[i - 1])}" : "";
            string after = i < items.Length - 1 ? $"/Next {PdfFile.To(items[i + 1])}" : "";
            file.Set(items[i], $"<</Title{PdfFile.Text(entries[i].Title)}/Parent {PdfFile.To(root)}{before}{after}/Dest[{PdfFile.To(entries[i].Page)}/Fit]>>");
        }

        file.Set(root, string.Create(CultureInfo.InvariantCulture, $"<</Type/Outlines/First {PdfFile.To(items[0])}/Last {PdfFile.To(items[^1])}/Count {items.Length}>>"));
        return root;
    }
}

/// <summary>A page in the making.</summary>
/// <param name="Size">Its paper.</param>
/// <param name="Paint">Paints it, in millimetres.</param>
internal sealed record PdfPage(PaperSize Size, Action<PdfPainter> Paint)
{
    /// <summary>What the outline calls it, or what begins on it; empty for a page that goes on.</summary>
    public IReadOnlyList<string> Entries { get; init; } = [];
}
