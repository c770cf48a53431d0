using System.Globalization;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>What a person asks for a shop: nominal files, files held against the design, the list of processes.</summary>
public sealed class ShopCommandTests
{
    private static CliRun Bench()
    {
        CliRun run = new();
        File.WriteAllText(run.PathOf("doser.toml"), File.ReadAllText(Demos.PathOf("tank-doser")) + Briefs.FewDraws);
        File.WriteAllText(run.PathOf("bench.toml"), File.ReadAllText(Demos.PathOf("propagation-bench")) + Briefs.FewDraws);
        return run;
    }

    [Fact]
    public void Make_Nominal_NamesItsFilesAndReplacesTheOthers()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "cut"));
        Assert.True(File.Exists(run.PathOf("made/cut/wheel.dxf")));
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "cut", "--nominal"));
        Assert.False(File.Exists(run.PathOf("made/cut/wheel.dxf")));
        Assert.Contains("NOMINAL, THE SHOP ALLOWS FOR ITS KERF", File.ReadAllText(run.PathOf("made/cut/wheel-nominal.dxf")), StringComparison.Ordinal);

        // The carrier is cut by another process and was nominal before.
        Assert.True(File.Exists(run.PathOf("made/cut/carrier.dxf")));
    }

    // The oracle is a reader of SVG that is not ours (Svg.Skia): the bounds of what it draws, one pixel to the millimetre by the viewBox.
    [Fact]
    public void Make_CutSvg_HasEveryContourAtTrueSizeInOneColour()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "cut", "--cut", "svg,dxf", "--nominal"));
        string svg = File.ReadAllText(run.PathOf("made/cut/wheel-nominal.svg"));
        XElement root = XElement.Parse(svg);
        double widthMm = double.Parse(((string)root.Attribute("width")!)[..^2], CultureInfo.InvariantCulture);
        Assert.Equal(Demos.Of("propagation-bench").Parts.Wheel.Shapes[0].Finished.Bounds.Width + 10, widthMm, 1e-5);
        XElement[] drawn = [.. root.Descendants().Where(e => e.Name.LocalName is "path" or "circle")];
        Assert.Equal(1 + Demos.Of("propagation-bench").Parts.Wheel.Shapes[0].Finished.Holes.Count, drawn.Length);
        Assert.Single(root.Descendants().Select(e => (string?)e.Attribute("stroke")).OfType<string>().Distinct(StringComparer.Ordinal));
        Assert.All(drawn.Where(e => e.Name.LocalName is "path"), e => Assert.EndsWith("Z", (string)e.Attribute("d")!, StringComparison.Ordinal));
        using global::Svg.Skia.SKSvg picture = new();
        picture.FromSvg(svg);
        Assert.NotNull(picture.Picture);
        Assert.Equal(2, run.Run("make", "bench.toml", "-o", "made", "--only", "cut", "--cut", "plt"));
    }

    [Fact]
    public void Check_AgainstItsOwnFile_IsAsDesigned()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "cut", "--dxf", "r12");
        Assert.Equal(0, run.Run("check", "made/cut/wheel.dxf", "made/cut/strip-mist-strip.dxf", "--against", "bench.toml"));
        Assert.Contains("WHEEL, compensated for a kerf of 0.12 mm: as designed", run.Out, StringComparison.Ordinal);
        Assert.Contains("mist strip", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_AgainstAnotherDesign_IsRefusedOrDiffers()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "cut");
        Assert.Equal(1, run.Run("check", "made/cut/wheel.dxf", "--against", "doser.toml", "--json"));
        JsonNode result = JsonNode.Parse(run.Out)!;
        Assert.Equal("misses", (string?)result["verdict"]);
        Assert.NotEmpty(result["differences"]!.AsArray());
        Assert.Equal(2, run.Run("check", "made/cut/strip-mist-strip.dxf", "--against", "doser.toml"));
        Assert.Contains("Nothing says which part", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("made/cut/wheel.dxf", "--against", "bench.toml", "--net", "OUTLINE=L:230 V", "--degree", "2", "--group", "I", "--category", "II")]
    [InlineData("bench.toml", "--against", "bench.toml")]
    public void Check_AgainstWithWhatDoesNotGoWithIt_IsRefused(params string[] arguments)
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "cut");
        Assert.Equal(2, run.Run(["check", .. arguments]));
        Assert.Contains("--against", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Processes_Thickness_ShowsFiguresAndSources()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("processes", "--thickness", "0.5 mm"));

        // Design guides of etchers: openings 1.1 thickness, corners one thickness (facts of the list, see CuttingProcessTests).
        Assert.Matches(@"photo-etch\n.*\n\s+0\.5\s+0\s+0\.05\s+0\.55\s+0\.5\s+0\.55\s+0\.5\n", run.Out);
        Assert.Contains("board-etch\n  does not cut stock of 0.5 mm", run.Out, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("processes", "waterjet", "--json"));
        JsonNode jet = JsonNode.Parse(run.Out)!.AsArray().Single()!;
        Assert.Equal("waterjet", (string?)jet["name"]);
        Assert.Contains("bigbluesaw.com", (string)jet["source"]!, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("processes", "scissors"));
    }
}
