using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>One unit a design, everywhere a person reads. The inch is 25.4 mm exactly (international yard and pound agreement, 1959).</summary>
public sealed partial class ReadersUnitTests
{
    private static readonly ReadersUnit Inches = ReadersUnit.Of(Demos.Of("kiln-room").Brief);

    [Theory]
    [InlineData("25.4 mm wide", "1 in wide")]
    [InlineData("from 2.54 to -25.4 mm", "from 0.1 to -1 in")]
    [InlineData("a patch of 0.762 × 3.048 mm, ±0.1 mm", "a patch of 0.03 × 0.12 in, ±0.0039 in")]
    [InlineData("at (25.4, -12.7, 0) on shaft", "at (1, -0.5, 0) on shaft")]
    [InlineData("0.0025 mm", "0.0001 in")]
    [InlineData("0.01270 mm", "0.0005 in")]
    [InlineData("2.54 mm/s, 5.08 mm/N", "0.1 in/s, 0.2 in/N")]
    [InlineData("12 A/mm², 3 mm² and 40 mN m", "12 A/mm², 3 mm² and 40 mN m")]
    [InlineData("Lengths in mm, nominal in brackets, mm.", "Lengths in inches, nominal in brackets, in.")]
    [InlineData("at 5 s, 230 V and 20 K", "at 5 s, 230 V and 20 K")]
    public void Words_OfAnInchDesign_TurnLengthsOnly(string inMm, string expected) => Assert.Equal(expected, Inches.Words(inMm));

    [Fact]
    public void Words_OfAMillimetreDesign_StayAsTheyAre() => Assert.Equal("25.4 mm", ReadersUnit.Of(Demos.Of("tank-doser").Brief).Words("25.4 mm"));

    [Fact]
    public void Words_WithANameThatLooksLikeALength_LeaveTheName()
    {
        Brief brief = Demos.Of("kiln-room").Brief with { Title = "Wheel of 50.8 mm" };
        Assert.Equal("Wheel of 50.8 mm is 2 in across", ReadersUnit.Of(brief).Words("Wheel of 50.8 mm is 50.8 mm across"));
    }

    [Fact]
    public void Make_WithDrawingUnitsInch_SpokeMillimetresInReportPageAndNotes()
    {
        Design design = Demos.Of("kiln-room");
        HashSet<string> read = [];
        foreach (OutputFile file in OutputFiles.Of(design, new OutputRequest { Kinds = [OutputKind.Report, OutputKind.Cut, OutputKind.Draw, OutputKind.Show] }, _ => { }))
        {
            string ending = Path.GetExtension(file.Name);
            if (ending is ".md" or ".dxf" or ".svg" or ".html")
            {
                read.Add(ending);
                Assert.Empty(Millimetres().Matches(Visible(Encoding.UTF8.GetString(file.Bytes), ending)).Select(m => $"{file.Name}: {m.Value}"));
            }
        }

        Assert.Equal(4, read.Count);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("why")]
    public void Commands_WithDrawingUnitsInch_SpokeMillimetres(string command)
    {
        using CliRun run = new();
        run.Run(command, Demos.PathOf("kiln-room"));
        Assert.Empty(Millimetres().Matches(run.Out + run.Error).Select(m => m.Value));
        if (command is "check")
        {
            Assert.Contains("3.3 in", run.Out, StringComparison.Ordinal); // 83.82 mm
        }
    }

    [Fact]
    public void ReportJson_WithDrawingUnitsInch_StaysInMillimetres()
    {
        using CliRun run = new();
        run.Run("check", Demos.PathOf("kiln-room"), "--json");
        Assert.Contains("83.82", run.Out, StringComparison.Ordinal);
        Assert.Contains("taken as 4.521 mm across", run.Out, StringComparison.Ordinal);
    }

    // Style sheets of pages and drawings measure paper, and only words between tags are read.
    private static string Visible(string text, string ending) => ending is ".html" or ".svg" ? Hidden().Replace(text, " ") : text;

    [GeneratedRegex(@"[^\n]{0,60}(?<![\w/·])mm(?![\w²³/])[^\n]{0,20}", RegexOptions.None, 10_000)]
    private static partial Regex Millimetres();

    [GeneratedRegex(@"<style.*?</style>|<script.*?</script>|<[^>]*>", RegexOptions.Singleline, 10_000)]
    private static partial Regex Hidden();
}
