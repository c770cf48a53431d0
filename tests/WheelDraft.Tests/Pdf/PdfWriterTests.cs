using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Formats.Pdf;
using WheelDraft.Formats.Raster;
using WheelDraft.Geometry;
using WheelDraft.Tests.Raster;
using WheelDraft.Tests.Svg;
using Xunit;

namespace WheelDraft.Tests.Pdf;

public sealed class PdfWriterTests : IDisposable
{
    private readonly OutsideFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    [Trait("Needs", "pdfinfo")]
    public async Task Write_TwoSheets_GivesTwoPagesOfTheirSizes()
    {
        Sheet a4 = new(SampleSheets.Card.Words, PaperSize.A4, SampleSheets.Card.Groups, []);
        string file = await _folder.WriteAsync("set.pdf", PdfWriter.Write([a4, SampleSheets.Card], new("A set") { Subject = "Samples" }));
        string info = await OutsideProgram.OrSkip("/usr/bin/pdfinfo", "-v").RunAsync("-f", "1", "-l", "2", "-box", file);
        Assert.Contains("Title:           A set\n", info, StringComparison.Ordinal);
        Assert.Contains("Producer:        WheelDraft\n", info, StringComparison.Ordinal);
        Assert.Contains("Pages:           2\n", info, StringComparison.Ordinal);
        Assert.DoesNotContain("Date:", info, StringComparison.Ordinal);

        // 210 by 297 mm is 595.2756 by 841.8898 points of 1/72 in.
        Assert.Contains("Page    1 size:  595.276 x 841.89 pts (A4)", info, StringComparison.Ordinal);
        Assert.Contains("Page    2 size:  340.157 x 255.118 pts", info, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_Twice_GivesTheSameBytesWithoutPictureOrDate()
    {
        byte[] once = PdfWriter.Write([SampleSheets.Card], new("Card"));
        Assert.Equal(once, PdfWriter.Write([SampleSheets.Card], new("Card")));
        string text = Encoding.Latin1.GetString(once);
        Assert.DoesNotContain("/Image", text, StringComparison.Ordinal);
        Assert.DoesNotContain("/CreationDate", text, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Needs", "pdftoppm")]
    public async Task Write_Card_LooksLikeItsPng()
    {
        // Fine enough that the other renderer's habit of widening level lines to whole pixels does not count.
        const double dpi = 254;
        Picture own = Picture.Of(PngWriter.Write(SampleSheets.Card, new() { Dpi = dpi }));
        Picture page = await OutsideRenderers.PopplerAsync(PdfWriter.Write([SampleSheets.Card], new("Card")), 1, dpi, _folder);
        Assert.InRange(PictureDifference.Of(own, page).Share, 0, PictureDifference.MostShare);
    }

    [Fact]
    [Trait("Needs", "pdftoppm")]
    public async Task Write_HundredMillimetres_MeasuresSoAt600Dpi()
    {
        // A bar of exactly 100 by 100 mm; at 600 dpi a pixel is 0.042 mm.
        Sheet sheet = new(
            new("bar", "Bar", "A bar."),
            PaperSize.A4,
            [new(new("bar", "Bar", "bar"), [new SheetArea(new Outline(Contour.Rectangle(new(50, 100), new(150, 200))), Fill.Solid(Ink.Outline))])],
            []);
        Picture page = await OutsideRenderers.PopplerAsync(PdfWriter.Write([sheet], new("Bar")), 1, 600, _folder);
        int row = Enumerable.Range(0, page.Width).Count(x => page.IsInked(x, page.Height / 2));
        int column = Enumerable.Range(0, page.Height).Count(y => page.IsInked(page.Width / 2, y));
        Assert.Equal(100, row * 25.4 / 600, 0.1);
        Assert.Equal(100, column * 25.4 / 600, 0.1);
    }
}
