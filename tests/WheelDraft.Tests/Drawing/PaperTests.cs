using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Drawing;

public sealed class PaperTests
{
    // ISO 5457:1999, drawing spaces, from memory: A4 180 x 277, A3 277 x 390, A2 400 x 564, A1 574 x 811, A0 821 x 1159.
    [Theory]
    [InlineData(0, 180, 277)]
    [InlineData(1, 390, 277)]
    [InlineData(2, 564, 400)]
    [InlineData(3, 811, 574)]
    [InlineData(4, 1159, 821)]
    public void SpaceOf_IsoSizes_AreThoseOfTheStandard(int size, double widthMm, double heightMm)
    {
        Bounds space = SheetFrame.SpaceOf(PaperSize.Iso[size]);
        Assert.Equal(widthMm, space.Width, 1e-9);
        Assert.Equal(heightMm, space.Height, 1e-9);
    }

    [Fact]
    public void ToString_OfASize_Ends() => Assert.Equal("A4 210 x 297 mm", PaperSize.A4.ToString());

    // ISO 5455:1979: 1, 2 and 5 times powers of ten; enlargements to 50:1.
    [Theory]
    [InlineData(60, 150, "2:1")]
    [InlineData(60, 60, "1:1")]
    [InlineData(60, 59.9, "1:2")]
    [InlineData(3, 150, "50:1")]
    [InlineData(400, 150, "1:5")]
    public void Fitting_ASquare_TakesTheLargestStandardScale(double modelMm, double paperMm, string scale) =>
        Assert.Equal(scale, DrawingScale.Fitting(new Bounds(0, 0, modelMm, modelMm), new Bounds(0, 0, paperMm, paperMm)).ToString());

    [Fact]
    public void Fitted_AnyContent_LiesInTheArea() =>
        Gen.Select(Gen.Double[1, 900], Gen.Double[1, 900], Gen.Double[-500, 500]).Sample(
            (w, h, x) =>
            {
                Bounds area = new(30, 40, 200, 280);
                Bounds drawn = SheetView.Fitted(new Bounds(x, -x, x + w, h - x), area).Of(new Bounds(x, -x, x + w, h - x));
                Bounds grown = area.Grown(1e-9);
                Assert.True(grown.Contains(new(drawn.MinX, drawn.MinY)) && grown.Contains(new(drawn.MaxX, drawn.MaxY)));
            },
            iter: 300);

    [Fact]
    public void TitleBlock_LongestWords_NeitherOverlapNorLeave() =>
        Gen.Select(Gen.String[Gen.Char["abcdefgh WMÅ-0"], 1, 60], Gen.String[Gen.Char["abW 0"], 0, 30], Gen.Int[0, 3].Select(i => new[] { PaperSize.A4, PaperSize.A3, PaperSize.Letter, PaperSize.A2 }[i])).Sample(
            (title, number, size) =>
            {
                SheetBuilder sheet = new(new("t", "T", ""), size);
                SheetFrame.Draw(sheet, new TitleBlock
                {
                    Title = "x" + title,
                    Subtitle = "y" + title,
                    DocumentType = "Part drawing",
                    Number = number.Trim(),
                    Units = "mm, decimal point",
                    Scale = "1:10000",
                    Date = "2026-11-01",
                    Sheet = 12,
                    Sheets = 345,
                    Projection = Projection.FirstAngle,
                });
                AssertTidy(sheet.Build());
            },
            iter: 200);

    [Fact]
    public void Frame_A4_IsLabelledAboveAndOnTheRightOnly()
    {
        SheetBuilder sheet = new(new("t", "T", ""), PaperSize.A4);
        SheetFrame.Draw(sheet, new TitleBlock { Title = "a", Subtitle = "b", DocumentType = "c" });
        SheetText[] labels = [.. sheet.Build().Groups[0].Items.OfType<SheetText>()];
        Assert.Equal("1234", string.Concat(labels.Where(l => l.Place.Anchor.Y > 285).Select(l => l.Text)));
        Assert.Equal("ABCDEF", string.Concat(labels.Where(l => l.Place.Anchor.X > 200).OrderByDescending(l => l.Place.Anchor.Y).Select(l => l.Text)));
        Assert.Equal(10, labels.Length);
    }

    [Theory]
    [InlineData(-0.00004, "0")]
    [InlineData(12.5, "12.5")]
    [InlineData(12.004999, "12")]
    [InlineData(6, "6")]
    [InlineData(-3.456, "-3.46")]
    public void Length_Millimetres_HasNoZerosAtTheEnd(double mm, string text) => Assert.Equal(text, new DrawingNumbers(DrawingUnit.Millimetre).Length(mm));

    [Theory]
    [InlineData(12.7, "0.5000")]
    [InlineData(-0.00001, "0.0000")]
    [InlineData(25.4, "1.0000")]
    public void Length_Inches_HasFourDecimals(double mm, string text) => Assert.Equal(text, new DrawingNumbers(DrawingUnit.Inch).Length(mm));

    [Fact]
    public void Angle_Quarter_Is90Degrees() => Assert.Equal("90°", DrawingNumbers.Angle(Math.PI / 2));

    [Fact]
    public void NotesAndCautions_AnyWords_KeepToTheirWidthAndOverlapNothing() =>
        Gen.Select(Gen.String[Gen.Char["abcdefg hijk lmno WÅ "], 1, 200].Array[1, 5], Gen.Double[60, 160]).Sample(
            (notes, width) =>
            {
                SheetBuilder sheet = new(new("n", "N", ""), PaperSize.A3);
                GroupPen pen = sheet.Group("notes", "Notes", "notes");
                string[] words = [.. notes.Select(n => "x " + n)];
                Bounds first = new NoteBlock("Notes", words).Draw(pen, new Point(30, 280), width);
                Bounds second = new CautionBlock(words).Draw(pen, new Point(200, 280), width);
                Sheet done = sheet.Build();
                Assert.Empty(SheetAudit.OverlappingTexts(done));
                Assert.All(done.Texts, t => Assert.True(t.Box.IsInside(first.Grown(0.6)) || t.Box.IsInside(second.Grown(0.6)), t.Text));
                Assert.Equal(first.Height, new NoteBlock("Notes", words).HeightMm(width), 1e-9);
                Assert.Equal(second.Height, new CautionBlock(words).HeightMm(width), 1e-9);
            },
            iter: 100);

    internal static void AssertTidy(Sheet sheet)
    {
        Assert.Empty(SheetAudit.OverlappingTexts(sheet).Select(p => $"{p.First.Text} | {p.Second.Text}"));
        Assert.Empty(SheetAudit.TextsOffPaper(sheet).Select(t => t.Text));
        Assert.Empty(SheetAudit.ItemsOffPaper(sheet).Select(i => i.Bounds.ToString()));
    }
}
