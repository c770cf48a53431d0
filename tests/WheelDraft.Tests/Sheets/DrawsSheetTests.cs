using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>The histograms of on-times, what drawings tell a shop, and fold gauges.</summary>
public sealed class DrawsSheetTests
{
    [Fact]
    public void Of_TheBench_HasABarForEveryBinThatHoldsDraws()
    {
        Design design = Demos.Of("propagation-bench");
        Sheet sheet = DrawsSheet.Of(design);
        int bins = DrawsWords.All(design).Sum(a => a.OnTime.Histogram.Count(n => n > 0));
        SheetGroup bars = sheet.Groups.Single(g => g.Id.EndsWith("draws", StringComparison.Ordinal));
        Assert.Equal(bins, bars.Content.OfType<SheetArea>().Count(a => a.Fill == Fill.Of(FillKind.Copper)));
        Assert.Empty(sheet.Warnings);
        Assert.All(DrawsWords.All(design), a => Assert.Contains(sheet.Texts, t => t.Text.Contains(a.Name, StringComparison.Ordinal)));
    }

    [Fact]
    public void Notes_WithFriction_SayByHowMuchItComesOnTop() =>
        Assert.All(Demos.Of("propagation-bench").FrictionShifts, s => Assert.Contains(Wording.Number(s.OnTimeS, 3), DrawsWords.Notes(Demos.Of("propagation-bench"))[^1], StringComparison.Ordinal));

    // Never "100 %" for what is not quite all.
    [Fact]
    public void Table_AShareOfAllDraws_IsAtLeastNotAll() =>
        Assert.All(DrawsWords.Table(Demos.Of("propagation-bench")).Rows, r => Assert.DoesNotContain("100 % to", r[^1], StringComparison.Ordinal));

    [Theory]
    [InlineData("propagation-bench")]
    [InlineData("kiln-room")]
    [InlineData("dye-bath")]
    public void Drawings_OfParts_TellQuantityToleranceEdgesAndFlatness(string demo)
    {
        Design design = Demos.Of(demo);
        foreach (Sheet sheet in (Sheet[])[WheelSheet.Of(design), CarrierSheet.Of(design), .. design.Strips.Strips.Select((_, i) => StripSheet.Of(design, i))])
        {
            string words = string.Join(' ', sheet.Texts.Select(t => t.Text));
            Assert.All((string[])["Quantity: 1", "ISO 2768-m", "Deburr", "flat within"], w => Assert.Contains(w.Replace(" ", "", StringComparison.Ordinal), words.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal));
        }
    }

    // True size: as long and as high as the strip from the side, and a number at every fold.
    [Fact]
    public void TemplateGauge_OfEveryFoldedStrip_IsItsProfileAtTrueSize()
    {
        foreach (Design design in (Design[])[Demos.Of("propagation-bench"), Demos.Of("dye-bath")])
        {
            Sheet[] gauges = [.. TemplateSheets.Parts(design).Where(s => s.Words.Name.StartsWith("template-gauge", StringComparison.Ordinal))];
            StripForm[] folded = [.. design.Strips.Strips.Select(s => s.Form).Where(f => f.Folds.Count > 0)];
            Assert.Equal(folded.Length, gauges.Length);
            foreach ((StripForm form, Sheet sheet) in folded.Zip(gauges))
            {
                WheelDraft.Geometry.Bounds drawn = sheet.Groups.Single(g => g.Id.EndsWith("profile", StringComparison.Ordinal)).Content.OfType<SheetArea>().First().Bounds;
                WheelDraft.Geometry.Bounds asked = StripProfile.Of(form).Edge.Bounds;
                Assert.Equal(asked.Width, drawn.Width, 0.5);
                Assert.Equal(asked.Height, drawn.Height, 0.5);
                Assert.Equal(form.Folds.Count, sheet.Groups.Single(g => g.Id.EndsWith("names", StringComparison.Ordinal)).Content.OfType<SheetText>().Count());
            }
        }
    }

    [Fact]
    public void Compare_OneWheel_WritesThePageWithMeasuredBars()
    {
        using CliRun run = new();
        File.WriteAllBytes(run.PathOf("log.csv"), new Bench.SyntheticLog(Bench.LoggedProgramme.Of(Demos.Of("propagation-bench"))) { Turns = 3.2 }.Csv());
        run.Run("compare", Demos.PathOf("propagation-bench"), "log.csv", "-o", "shown");
        string page = File.ReadAllText(run.PathOf("shown/show/compare.html"));
        Assert.Equal(Demos.Of("propagation-bench").Programme.Outputs.Sum(o => o.Periods.Count), page.Split("<title>measured: from").Length - 1);
        Assert.Contains("By the log the wheel", page, StringComparison.Ordinal);
    }
}
