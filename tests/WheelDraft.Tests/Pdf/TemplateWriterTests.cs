using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Formats.Pdf;
using WheelDraft.Geometry;
using WheelDraft.Tests.Raster;
using Xunit;

namespace WheelDraft.Tests.Pdf;

public sealed partial class TemplateWriterTests : IDisposable
{
    private readonly OutsideFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("A4", 150, 150, 1)]
    [InlineData("A4", 180, 251, 1)]
    [InlineData("A4", 181, 100, 2)]
    [InlineData("A4", 400, 400, 6)]
    [InlineData("Letter", 400, 400, 6)]
    [InlineData("Letter", 185.9, 233, 1)]
    public void Pages_PartOfASize_TakesSoManySheets(string paper, double widthMm, double heightMm, int pages)
    {
        PaperSize size = paper is "A4" ? PaperSize.A4 : PaperSize.Letter;
        Assert.Equal(pages, TemplateWriter.Pages(new("Disc", [Part(widthMm, heightMm)]) { Paper = size }).Count);
    }

    [Fact]
    public void Pages_AnySize_ShowEveryPointOfTheDrawing()
    {
        // Oracle: the windows carried back to the drawing, looked through point by point.
        Gen.Select(Gen.Double[5, 900], Gen.Double[5, 900], Gen.Double[0, 1], Gen.Double[0, 1]).Sample(
            (width, height, u, v) =>
            {
                IReadOnlyList<TemplatePage> pages = TemplateWriter.Pages(new("Disc", [Part(width, height)]));
                Point asked = new(u * width, v * height);
                Assert.Contains(pages, p => p.Window.Contains(asked + p.Pieces.Single().Shift));
            },
            iter: 300);
    }

    [Fact]
    public void Pages_SmallParts_StandTogetherWholeAndApart()
    {
        // Oracle: the windows and the parts' own sizes. 251 mm of a page take two of 90 mm and one of 60, not a third of 90.
        Sheet[] parts = [Part(90, 90), Part(100, 90), Part(120, 60), Part(150, 90), Part(400, 100), Part(50, 50)];
        IReadOnlyList<TemplatePage> pages = TemplateWriter.Pages(new("Timer", parts));
        Assert.Equal([3, 1, 1, 1, 1, 1], pages.Select(p => p.Pieces.Count));
        Assert.Equal(parts, pages.SelectMany(p => p.Pieces).Select(p => p.Part).Distinct());
        foreach (TemplatePage page in pages.Where(p => p.Pieces[0].Part.WidthMm < 180))
        {
            Bounds[] places = [.. page.Pieces.Select(p => new Bounds(p.Shift.X, p.Shift.Y, p.Shift.X + p.Part.WidthMm, p.Shift.Y + p.Part.HeightMm))];
            Assert.All(places, b => Assert.True(page.Window.Grown(1e-9).Contains(new(b.MinX, b.MinY)) && page.Window.Grown(1e-9).Contains(new(b.MaxX, b.MaxY))));
            Assert.All(places.Zip(places.Skip(1)), p => Assert.True(p.First.MinY >= p.Second.MaxY - 1e-9));
        }
    }

    [Fact]
    public void Pages_Neighbours_ShareTheMarksOfTheirJoin()
    {
        TemplatePage[] pages = [.. TemplateWriter.Pages(new("Disc", [Part(400, 400)]))];
        Assert.Equal(6, pages.Length);

        // Each letter of a join stands on two pages, twice on each, at the same two points of the drawing.
        var letters = pages
            .SelectMany(p => p.Marks.Groups.Single(g => g.Id is "joins").Items.OfType<SheetText>().Select(t => (t.Text, At: t.Place.Anchor - p.Pieces[0].Shift, Page: p)))
            .GroupBy(l => l.Text, StringComparer.Ordinal)
            .ToArray();
        Assert.Equal(7, letters.Length);
        foreach (var join in letters)
        {
            Assert.Equal(2, join.Select(l => l.Page).Distinct().Count());
            Assert.Equal(4, join.Count());
            Assert.Equal(2, join.Select(l => (Math.Round(l.At.X, 6), Math.Round(l.At.Y, 6))).Distinct().Count());
        }
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public void Pages_Marks_KeepApartAndOnThePaper(string paper)
    {
        PaperSize size = paper is "A4" ? PaperSize.A4 : PaperSize.Letter;
        foreach (TemplatePage page in TemplateWriter.Pages(new("Disc", [Part(400, 700)]) { Paper = size }))
        {
            Assert.Empty(SheetAudit.OverlappingTexts(page.Marks));
            Assert.Empty(SheetAudit.ItemsOffPaper(page.Marks));
            Assert.All(page.Marks.Groups.Where(g => g.Id is not "joins").SelectMany(g => g.Items), i => Assert.False(i.Bounds.Overlaps(page.Window.Grown(-0.5))));
        }
    }

    [Fact]
    public void Write_CheckLines_AreHundredMillimetresInTheCoordinatesOfThePdf()
    {
        string content = Decoded(TemplateWriter.Write(new("Disc", [Part(50, 50)])));
        double[] lengths = [.. Stroke().Matches(content).Select(m =>
        {
            double[] n = [.. m.Groups.Values.Skip(1).Select(g => double.Parse(g.Value, CultureInfo.InvariantCulture))];
            return Math.Sqrt(Math.Pow(n[2] - n[0], 2) + Math.Pow(n[3] - n[1], 2));
        })];

        // Two matrices are in force, one for the page and one for the marks; a point is 1/72 in.
        double[] scales = [.. Matrix().Matches(content).Select(m => double.Parse(m.Groups["s"].Value, CultureInfo.InvariantCulture))];
        double mmPerUnit = scales[0] * scales[^1] / 72 * 25.4;
        Assert.Equal(2, lengths.Count(l => Math.Abs((l * mmPerUnit) - 100) < 1e-3));
    }

    [Fact]
    [Trait("Needs", "pdftoppm")]
    public async Task Write_CheckLines_MeasureHundredMillimetresAt600Dpi()
    {
        Picture page = await OutsideRenderers.PopplerAsync(TemplateWriter.Write(new("Disc", [Part(50, 50)])), 1, 600, _folder);
        double mm(int pixels) => pixels * 25.4 / 600;

        // 2.5 mm beside each line lie only its end ticks, 0.25 mm wide: from middle to middle is the outer distance less one width.
        int above = (int)((297 - 15.5) * 600 / 25.4);
        int[] across = [.. Enumerable.Range(0, page.Width).Where(x => page.IsInked(x, above) && mm(x) is > 20 and < 124)];
        Assert.Equal(100, mm(across[^1] - across[0] + 1) - 0.25, 0.1);
        int right = (int)(15.5 * 600 / 25.4);
        int[] along = [.. Enumerable.Range(0, page.Height).Where(y => page.IsInked(right, y) && mm(page.Height - y) is > 22 and < 126)];
        Assert.Equal(100, mm(along[^1] - along[0] + 1) - 0.25, 0.1);
    }

    [Fact]
    public void Write_NoPartOrTinyPaper_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => TemplateWriter.Write(new("None", [])));
        Assert.Throws<ArgumentException>(() => TemplateWriter.Write(new("Small", [Part(10, 10)]) { Paper = new("card", 100, 150) }));
    }

    internal static Sheet Part(double widthMm, double heightMm) =>
        new(
            new("part", "Disc", "A disc with its centre."),
            new PaperSize("part", widthMm, heightMm),
            [
                new(new("cut", "Cut lines", "cut"),
                [
                    new SheetLine(Contour.Rectangle(new(0.3, 0.3), new(widthMm - 0.3, heightMm - 0.3)), LineStyle.Thin),
                    new SheetLine(Contour.Circle(new(widthMm / 2, heightMm / 2), (Math.Min(widthMm, heightMm) / 2) - 1), LineStyle.Edge),
                ]),
            ],
            []);

    [GeneratedRegex(@"(?<a>-?[0-9.]+) (?<b>-?[0-9.]+) m\s+(?<c>-?[0-9.]+) (?<d>-?[0-9.]+) l\s+S", RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex Stroke();

    [GeneratedRegex(@"(?<s>[0-9.]+) 0 0 -?[0-9.]+ [0-9.]+ [0-9.]+ cm", RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex Matrix();

    /// <summary>All content streams of a PDF, inflated.</summary>
    private static string Decoded(byte[] pdf)
    {
        StringBuilder all = new();
        string text = Encoding.Latin1.GetString(pdf);
        for (int at = text.IndexOf("stream\n", StringComparison.Ordinal); at >= 0; at = text.IndexOf("\nstream\n", at + 1, StringComparison.Ordinal))
        {
            int start = text.IndexOf('\n', at + 1) + 1;
            int end = text.IndexOf("\nendstream", start, StringComparison.Ordinal);
            try
            {
                using ZLibStream zlib = new(new MemoryStream(pdf, start, end - start), CompressionMode.Decompress);
                using StreamReader reader = new(zlib, Encoding.Latin1);
                all.Append(reader.ReadToEnd()).Append('\n');
            }
            catch (InvalidDataException)
            {
                all.Append(text, start, end - start);
            }
        }

        return all.ToString();
    }
}
