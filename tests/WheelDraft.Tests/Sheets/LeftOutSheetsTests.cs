using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Raster;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>A drawing that cannot be made never costs the report, the cutting files and the other drawings.</summary>
public sealed class LeftOutSheetsTests
{
    // Names have up to 60 characters; W is the widest letter. Some sheet had no room for these, and nothing at all was made.
    private static Design Long(string demo) => new ChangedDemo(demo)
        .WithEvery("\"(mist|stir|run|lid|fan|floor|heater|shaker|lid side|humidity switch|mist valve|motor case|heating mat|fan motor|shaker coil)\"", m => $"\"{(m.Groups[1].Value + " " + new string('W', 60))[..60]}\"")
        .Design();

    [Theory]
    [InlineData("propagation-bench", 13)]
    [InlineData("seed-drier", 6)]
    public void Of_NamesOfSixtyLetters_LeavesOutNoSheet(string demo, int sheets)
    {
        List<string> left = [];
        Assert.Equal(sheets, DesignSheets.Of(Long(demo), leaveOut: left.Add).Count);
        Assert.Empty(left);
    }

    [Fact]
    public void Of_NamesTooWideForThePaper_PutsTheAssemblysLabelsIntoAKey()
    {
        Sheet assembly = AssemblySheet.Of(Long("propagation-bench"));
        Assert.Contains(assembly.Groups, g => string.Equals(g.Name.Id, "table-2", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_ASheetThatFails_IsLeftOutWithItsNameAndTheOthersAreDrawn()
    {
        // A strip without figures cannot be drawn: a fault of the program, planted.
        Design whole = Demos.Of("propagation-bench");
        Design broken = whole with { Strips = whole.Strips with { Strips = [whole.Strips.Strips[0] with { Spring = null!, Electrics = null! }, .. whole.Strips.Strips.Skip(1)] } };
        List<string> left = [];
        IReadOnlyList<Sheet> drawn = DesignSheets.Of(broken, leaveOut: left.Add);
        Assert.Equal(12, drawn.Count);
        Assert.Contains("'strip feed strip' is left out", Assert.Single(left), StringComparison.Ordinal);
        Assert.ThrowsAny<Exception>(() => DesignSheets.Of(broken));
    }

    // The guide was worked out before its files were, so that a fault in it cost the template, the page and the rest of the set.
    [Fact]
    public void Of_AGuideThatFails_CostsNothingElse()
    {
        // A guide reads a meter's test off the circuit; without one it cannot be: a fault of the program, planted.
        Design broken = Demos.Of("propagation-bench") with { Circuit = null! };
        List<string> warnings = [];
        string[] names = [.. OutputFiles.Of(broken, new OutputRequest { Kinds = [OutputKind.Cut, OutputKind.Print], DespiteFindings = true }, warnings.Add).Select(f => f.Name)];
        Assert.Contains("print/template.pdf", names, StringComparer.Ordinal);
        Assert.DoesNotContain("build.md", names, StringComparer.Ordinal);
        Assert.Contains(warnings, w => w.StartsWith("The building guide is left out", StringComparison.Ordinal));
    }

    // At 1,200 dpi an A2 sheet has 557 million pixels: the run ended as a fault of the program, with every demo.
    [Fact]
    public void Of_AResolutionBeyondWhatAPictureMayHave_LeavesThatPictureOutAndSaysWhichHasRoom()
    {
        List<string> warnings = [];
        string[] names = [.. OutputFiles.Of(Demos.Of("tank-doser"), new OutputRequest { Kinds = [OutputKind.Report, OutputKind.Cut, OutputKind.Png], PngDpi = 1200 }, warnings.Add).Select(f => f.Name)];
        Assert.Contains("report.json", names, StringComparer.Ordinal);
        Assert.Contains("cut/wheel.dxf", names, StringComparer.Ordinal);
        Assert.NotEmpty(warnings);
        Assert.All(warnings, w => Assert.Matches(new Regex("draw/.*png is left out: .* At --dpi [0-9]+ it has room", RegexOptions.None, TimeSpan.FromMinutes(1)), w));
    }

    [Fact]
    public void MostDpi_OfEverySheet_IsJustWithinItsPixels()
    {
        foreach (Sheet sheet in Demos.SheetsOf("tank-doser"))
        {
            double most = PngWriter.MostDpi(sheet);
            Assert.True(PngWriter.PixelsOf(sheet, most) <= PngWriter.MostPixels);
            Assert.True(most >= 2400 || PngWriter.PixelsOf(sheet, most + 1) > PngWriter.MostPixels);
        }
    }

    // The words that answer for less than the rule stood in the report alone.
    [Fact]
    public void Of_OwnResponsibility_IsRepeatedByEveryFile()
    {
        Design design = new ChangedDemo("propagation-bench").With("margin = \"0.2 mm\"", "margin = \"0.2 mm\"\nclearance = \"1.4 mm\"\nown_responsibility = \"XQZ17\"").Design();
        OutputFile[] texts = [.. OutputFiles.Of(design, new OutputRequest { Kinds = [OutputKind.Report, OutputKind.Cut, OutputKind.Draw, OutputKind.Show] })];
        // A table of parts has no place for sentences.
        Assert.All(texts.Where(f => !f.Name.EndsWith(".csv", StringComparison.Ordinal)), f => Assert.Contains("XQZ17", Encoding.UTF8.GetString(f.Bytes), StringComparison.Ordinal));
        Assert.True(texts.Length > 15);
    }
}
