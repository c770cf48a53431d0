using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Guide;
using WheelDraft.Formats.Prose;
using WheelDraft.Formats.Report;
using Xunit;

namespace WheelDraft.Tests.Report;

/// <summary>Cautions for mains stand wherever a supply can kill: its lines and its tolerance count, as they do for insulation.</summary>
public sealed class CautionsTests
{
    // 48 V with ten per cent is 52.8 V, and three lines of 40 V are 69 V apart: the report called both extra-low, the grades of insulation neither.
    [Theory]
    [InlineData(24, 0.1, 1, true)]
    [InlineData(48, 0, 1, true)]
    [InlineData(48, 0.1, 1, false)]
    [InlineData(40, 0, 3, false)]
    [InlineData(230, 0, 1, false)]
    public void For_Supply_AreThoseOfExtraLowVoltageOnlyWhereNoTwoLinesEverExceedIt(double volts, double toleranceShare, int lines, bool isExtraLow)
    {
        Design demo = Demos.Of("tank-doser");
        SupplyBrief supply = demo.Brief.Supply with { VoltageV = volts, VoltageToleranceShare = toleranceShare, Lines = [.. Enumerable.Range(1, lines).Select(i => FormattableString.Invariant($"L{i}"))] };
        Design design = demo with { Brief = demo.Brief with { Supply = supply } };
        Assert.Equal(isExtraLow, Cautions.For(design)[0].StartsWith("Extra-low voltage", StringComparison.Ordinal));
    }

    // Sheets, page, guide and report of a 24 V design said that mains voltage kills.
    [Theory]
    [InlineData("tank-doser", true)]
    [InlineData("dye-bath", true)]
    [InlineData("propagation-bench", false)]
    public void Sheets_ExtraLowVoltage_WarnOfFireAndNotOfMains(string name, bool isExtraLow)
    {
        Design design = Demos.Of(name);
        IEnumerable<string> all = Demos.SheetsOf(name).Append(TemplateSheets.Instructions(design, PaperSize.A4)).Select(s => string.Join(' ', s.Texts.Select(t => t.Text)))
            .Append(Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(design))))
            .Append(Encoding.UTF8.GetString(GuideMarkdown.Write(BuildGuide.Of(design))));
        Assert.All(all, words => Assert.Equal(!isExtraLow, words.Contains("Mains voltage kills", StringComparison.Ordinal)));
        Assert.All(all, words => Assert.Equal(isExtraLow, words.Contains("starts fires", StringComparison.Ordinal) || words.Contains("start fires", StringComparison.Ordinal)));
    }
}
