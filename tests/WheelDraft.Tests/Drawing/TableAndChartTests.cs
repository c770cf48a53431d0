using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Drawing;

public sealed class TableAndChartTests
{
    private static readonly Gen<string> Cells = Gen.OneOf(Gen.String[Gen.Char["abc defgh WÅ0123"], 0, 40], Gen.Double[0, 360].Select(v => DrawingNumbers.Fixed(v, 3)), Gen.Const("Averylongwordwithoutanyblankwhichmustbebrokensomewhere"));

    [Fact]
    public void Draw_RandomTables_KeepEveryCharacterInsideAndApart() =>
        Gen.Select(Cells.Array[4].Array[0, 40], Gen.Double[70, 360]).Sample(
            (rows, width) =>
            {
                SheetTable table = new([new("Output"), new("from, s", TextAlong.End), new("Remark about it"), new("Verdict", TextAlong.Middle)], rows);
                int row = 0;
                int sheets = 0;
                string written = "";
                do
                {
                    SheetBuilder sheet = new(new("t", "T", ""), PaperSize.A3);
                    (Bounds drawn, int next) = table.Draw(sheet.Group("table", "Table", "table"), new Bounds(20, 20, 20 + width, 280), row);
                    Sheet done = sheet.Build();
                    PaperTests.AssertTidy(done);
                    Assert.All(done.Texts, t => Assert.True(t.Box.IsInside(drawn.Grown(0.2)), t.Text));
                    Assert.True(next > row || rows.Length == 0);
                    row = next;
                    sheets++;
                    written += string.Concat(done.Texts.Select(t => t.Text));
                }
                while (row < rows.Length && sheets < 50);
                int heads = sheets * Letters("Output from, s Remark about it Verdict");
                Assert.Equal(heads + rows.Sum(r => r.Sum(Letters)), Letters(written));
            },
            iter: 200);

    [Fact]
    public void DrawSideBySide_ManyRows_GoesOnInTheNextColumn()
    {
        SheetTable table = new([new("No.", TextAlong.End), new("Angle", TextAlong.End)], [.. Enumerable.Range(1, 100).Select(i => (IReadOnlyList<string>)[DrawingNumbers.Fixed(i, 0), DrawingNumbers.Fixed(i * 3.6, 3)])]);
        SheetBuilder sheet = new(new("t", "T", ""), PaperSize.A3);
        Assert.Equal(100, table.DrawSideBySide(sheet.Group("table", "Table", "table"), new Bounds(20, 60, 400, 280)));
        Sheet done = sheet.Build();
        PaperTests.AssertTidy(done);
        Assert.Equal(100, done.Texts.Count(t => t.Text.Contains('.', StringComparison.Ordinal) && t.Text.Length > 4));
    }

    [Fact]
    public void Table_RowOfAnotherLength_IsRefused() => Assert.Throws<ArgumentException>(() => new SheetTable([new("a"), new("b")], [["1"]]));

    [Theory]
    [InlineData(nameof(StepKind.Decimal), 3, 5)]
    [InlineData(nameof(StepKind.Decimal), 0.02, 0.02)]
    [InlineData(nameof(StepKind.Decimal), 70, 100)]
    [InlineData(nameof(StepKind.Degrees), 20, 30)]
    [InlineData(nameof(StepKind.Degrees), 46, 90)]
    [InlineData(nameof(StepKind.Degrees), 0.3, 0.5)]
    [InlineData(nameof(StepKind.Seconds), 12, 15)]
    [InlineData(nameof(StepKind.Seconds), 70, 120)]
    public void AtLeast_AnyWish_IsTheNextStepThatPeopleCountIn(string kind, double wish, double step) =>
        Assert.Equal(step, NiceSteps.AtLeast(Enum.Parse<StepKind>(kind), wish), 1e-12);

    [Fact]
    public void Between_RangeOfWholeSteps_HasBothEnds() => Assert.Equal([0, 45, 90], NiceSteps.Between(0, 90, 45));

    [Fact]
    public void Axes_AnyRange_LabelsStandApart() =>
        Gen.Select(Gen.Double[0.5, 90_000], Gen.Double[60, 380], Gen.Enum<StepKind>()).Sample(
            (turn, width, kind) =>
            {
                SheetBuilder sheet = new(new("c", "C", ""), PaperSize.A3);
                GroupPen pen = sheet.Group("axes", "Axes", "axis");
                ChartAxis axis = new(0, turn, 20, 20 + width) { Steps = kind };
                axis.Draw(pen, 100, AxisSide.Below, "Time after home, s");
                axis.Draw(pen, 120, AxisSide.Above, "Time after home, s");
                axis.DrawGrid(pen, 100, 120);
                PaperTests.AssertTidy(sheet.Build());
                Assert.True(axis.Labelled().Count >= 2 || width < 100);
            },
            iter: 200);

    [Fact]
    public void BarRound_OverHome_IsDrawnAtBothEnds()
    {
        SheetBuilder sheet = new(new("c", "C", ""), PaperSize.A3);
        ChartAxis axis = new(0, 180, 20, 200);
        new ChartRow(sheet.Group("bars", "Bars", "bars"), axis, 100, 6).BarRound(175, 10, Fill.Of(FillKind.Lit));
        SheetArea[] bars = [.. sheet.Build().Items.OfType<SheetArea>()];
        Assert.Equal(2, bars.Length);
        Assert.Equal(new Bounds(195, 97, 200, 103), bars[0].Bounds);
        Assert.Equal(new Bounds(20, 97, 25, 103), bars[1].Bounds);
    }

    [Fact]
    public void Label_RandomBars_OverlapNothing() =>
        Gen.Select(Gen.Double[0, 180], Gen.Double[0.01, 60]).Array[1, 12].Sample(
            bars =>
            {
                SheetBuilder sheet = new(new("c", "C", ""), PaperSize.A3);
                ChartRow row = new(sheet.Group("bars", "Bars", "bars"), new ChartAxis(0, 180, 20, 400), 100, 6);
                foreach ((double from, double length) in bars)
                {
                    row.Bar(from, from + length, Fill.Of(FillKind.Lit)).Whisker(from - 0.5, from + 0.5);
                }

                foreach ((double from, double length) in bars)
                {
                    row.Label(from, from + length, DrawingNumbers.Fixed(length, 2) + " s", TextStyle.Small);
                }

                Sheet done = sheet.Build();
                Assert.Empty(SheetAudit.OverlappingTexts(done));
                Assert.Empty(SheetAudit.TextsOffPaper(done));
            },
            iter: 200);

    [Fact]
    public void Legend_ManyEntries_BreaksIntoRows()
    {
        SheetBuilder sheet = new(new("c", "C", ""), PaperSize.A4);
        ChartLegend legend = new([.. Enumerable.Range(0, 9).Select(i => new LegendEntry(Invariant.Text($"net number {i}"), Fill.Net(i)))]);
        Bounds taken = legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(24, 200), 160);
        Sheet done = sheet.Build();
        PaperTests.AssertTidy(done);
        Assert.True(taken.Height > 12);
        Assert.All(done.Texts, t => Assert.True(t.Box.IsInside(taken.Grown(0.2)), t.Text));
    }

    private static int Letters(string text) => text.Count(c => !char.IsWhiteSpace(c) && c != '-');
}
