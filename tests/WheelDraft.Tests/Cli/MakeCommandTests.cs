using System.Globalization;
using System.Text.Json.Nodes;
using WheelDraft.Cli;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>From a parameter file to a folder, end to end.</summary>
public sealed class MakeCommandTests
{
    /// <summary>An earthed part 0.9 mm above the copper face, where 1.5 mm and a margin are asked.</summary>
    private const string Near = """

        [[part]]
        name = "frame"
        kind = "earthed"
        circle = { at = ["12 mm", "0 mm"], diameter = "4 mm" }
        z = ["0.9 mm", "4 mm"]
        """;

    [Fact]
    public void Make_GoodFile_WritesExactlyWhatItLists()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--dpi", "40"));
        Assert.Equal(Listed(run), Present(run), StringComparer.Ordinal);
        Assert.Contains("report.json", Present(run), StringComparer.Ordinal);
        Assert.Contains("report.md", Present(run), StringComparer.Ordinal);
        Assert.Contains("cut/wheel.dxf", Present(run), StringComparer.Ordinal);
    }

    [Fact]
    public void Make_AtTheEnd_SaidNothingButNamesOfFiles()
    {
        using CliRun run = new();
        File.Copy(Demos.PathOf("propagation-bench"), run.PathOf("bench.toml"));
        run.Run("make", "bench.toml", "-o", "made", "--only", "report");
        Assert.StartsWith("bench.toml: Propagation bench controller: nothing misses, ", run.Out, StringComparison.Ordinal);
        Assert.Contains("wheel 62.44 mm across, one turn in 180 s, clockwise", run.Out, StringComparison.Ordinal);

        // 5.5 s at 1.2 L/min are 110 mL; the limits are those of the report.
        Assert.Contains("mist: on 5.5 s, 110 mL from 122 s, at worst 5.263 to 6.238 s (±1 s asked)", run.Out, StringComparison.Ordinal);
        Assert.Matches(@"strips: 4 contacts, each strip within its limits pressing with \d\.\d\d to \d\.\d\d N", run.Out);
        Assert.Contains("tightest: ", run.Out, StringComparison.Ordinal);
        Assert.Contains($"read on: {Path.Combine("made", "report.md")} ", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("first to change", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("make", "--dpi", "40")]
    [InlineData("check")]
    public void Commands_OfADesignThatMisses_NameTheFirstThingToChange(string command, params string[] options)
    {
        using CliRun run = Bench(Near);
        Assert.Equal(1, run.Run([command, "bench.toml", .. options]));
        Assert.Contains("something misses, ", run.Out, StringComparison.Ordinal);
        Assert.Contains("  first to change: ", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("make", "--dpi", "40")]
    [InlineData("check")]
    public void Commands_Quiet_PrintedMoreThanErrors(string command, params string[] options)
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run([command, "bench.toml", "--quiet", .. options]));
        Assert.Empty(run.Out + run.Error);
        using CliRun misses = Bench(Near);
        Assert.Equal(1, misses.Run([command, "bench.toml", "--quiet", .. options]));
        Assert.Empty(misses.Out);
        Assert.All(misses.Error.TrimEnd().Split('\n'), l => Assert.Contains(": error: ", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Make_OnlyReport_WritesThoseThreeAndTheManifest()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "report"));
        Assert.Equal(["bom.csv", "manifest.json", "report.html", "report.json", "report.md", "settled.toml"], Present(run), StringComparer.Ordinal);
    }

    [Fact]
    public void Make_NoFolderGiven_WritesIntoOutAndTheFilesName()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "--only", "report"));
        Assert.True(File.Exists(run.PathOf("out/bench/report.json")));
    }

    [Fact]
    public void Make_AgainAndInAnotherCulture_GivesTheSameBytes()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--dpi", "40");
        Dictionary<string, byte[]> first = Bytes(run);
        run.Run("make", "bench.toml", "-o", "made", "--dpi", "40");
        Same(first, Bytes(run));
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = Commas();
            run.Run("make", "bench.toml", "-o", "made", "--dpi", "40");
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Same(first, Bytes(run));
    }

    [Fact]
    public void Make_DesignThatMisses_WithholdsAndDeletesCutFilesAndSaysSo()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--dpi", "40");
        File.AppendAllText(run.PathOf("bench.toml"), Near);
        Assert.Equal(1, run.Run("make", "bench.toml", "-o", "made", "--only", "report,cut"));
        Assert.DoesNotContain(Present(run), f => f.StartsWith("cut/", StringComparison.Ordinal));
        Assert.Contains("withheld", run.Error, StringComparison.Ordinal);
        Assert.Contains("cut/wheel.dxf", run.Error, StringComparison.Ordinal);
        Assert.Contains("[spacing.", run.Error, StringComparison.Ordinal);
        Assert.Matches("bench\\.toml:[0-9]+:[0-9]+: error: ", run.Error);
    }

    // Once `--only report` left the cutting files of a good run beside a report that misses.
    [Fact]
    public void Make_OnlyReportOfADesignThatMisses_DeletesTheCutFilesOfTheGoodOne()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "report,cut,print");
        File.AppendAllText(run.PathOf("bench.toml"), Near);
        Assert.Equal(1, run.Run("make", "bench.toml", "-o", "made", "--only", "report"));
        Assert.Equal(["bom.csv", "manifest.json", "report.html", "report.json", "report.md", "settled.toml"], Present(run), StringComparer.Ordinal);
    }

    // Once print/template.pdf was written unmarked when something missed.
    [Fact]
    public void Make_DesignThatMisses_WithholdsTheTemplateToo()
    {
        using CliRun run = Bench(Near);
        Assert.Equal(1, run.Run("make", "bench.toml", "-o", "made", "--only", "report,print"));
        Assert.DoesNotContain("print/template.pdf", Present(run), StringComparer.Ordinal);
        Assert.Contains("withheld", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_DesignThatMissesDespiteFindings_MarksEveryFileWithStatusOne()
    {
        using CliRun run = Bench(Near);
        Assert.Equal(1, run.Run("make", "bench.toml", "-o", "made", "--only", "report,cut,draw,print", "--despite-findings"));
        string[] cut = [.. Present(run).Where(f => f.StartsWith("cut/", StringComparison.Ordinal))];
        Assert.Contains("cut/wheel.dxf", cut, StringComparer.Ordinal);
        Assert.All(cut, f => Assert.Contains("MISSES: DO NOT CUT", File.ReadAllText(run.PathOf($"made/{f}")), StringComparison.Ordinal));
        Assert.All(
            Present(run).Where(f => f.StartsWith("draw/", StringComparison.Ordinal) && f.EndsWith(".svg", StringComparison.Ordinal)),
            f => Assert.Contains("MISSES: DO NOT CUT", File.ReadAllText(run.PathOf($"made/{f}")), StringComparison.Ordinal));
        string report = File.ReadAllText(run.PathOf("made/report.md"));
        Assert.DoesNotContain("withheld", report, StringComparison.Ordinal);
        Assert.Contains("asked for all the same", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_OfAnotherFileIntoTheSameFolder_IsRefusedUnlessAsked()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "report");
        File.Copy(run.PathOf("bench.toml"), run.PathOf("other.toml"));
        Assert.Equal(3, run.Run("make", "other.toml", "-o", "made", "--only", "report"));
        Assert.Contains("made from 'bench.toml'", run.Error, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("make", "other.toml", "-o", "made", "--only", "report", "--take-over"));
    }

    [Fact]
    public void Check_FolderOfARun_TellsWhatIsMissingChangedOrForeign()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "report,cut");
        Assert.Equal(0, run.Run("check", "made"));
        Assert.Contains("every file is there as it was written", run.Out, StringComparison.Ordinal);
        File.Delete(run.PathOf("made/report.md"));
        File.AppendAllText(run.PathOf("made/cut/wheel.dxf"), "999\nedited\n");
        File.WriteAllText(run.PathOf("made/cut/strip-other.dxf"), "of another design");
        Assert.Equal(1, run.Run("check", "made", "--json"));
        JsonObject told = JsonNode.Parse(run.Out)!.AsObject();
        Assert.Equal(["report.md"], told["missing"]!.AsArray().Select(n => (string)n!), StringComparer.Ordinal);
        Assert.Equal(["cut/wheel.dxf"], told["changed"]!.AsArray().Select(n => (string)n!), StringComparer.Ordinal);
        Assert.Equal(["cut/strip-other.dxf"], told["foreign"]!.AsArray().Select(n => (string)n!), StringComparer.Ordinal);
        Directory.CreateDirectory(run.PathOf("empty"));
        Assert.Equal(2, run.Run("check", "empty"));
    }

    [Fact]
    public void Make_EveryPartAndDrawing_CarriesTheMarkOfItsInput()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "report,cut,draw,show");
        JsonNode report = JsonNode.Parse(File.ReadAllText(run.PathOf("made/report.json")))!;

        // Something in the file is "auto": the mark is that of the settled file, of which the same parts are made.
        string mark = ((string)report["settled_sha256"]!)[..8];
        Assert.Equal((string)report["settled_sha256"]!, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(run.PathOf("made/settled.toml")))));
        Assert.Equal((string)report["input_sha256"]!, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(run.PathOf("bench.toml")))));
        Assert.All(
            Present(run).Where(f => f.EndsWith(".svg", StringComparison.Ordinal) || f.EndsWith(".html", StringComparison.Ordinal)),
            f => Assert.Contains(mark, File.ReadAllText(run.PathOf($"made/{f}")), StringComparison.Ordinal));
        Assert.All(
            Present(run).Where(f => f.EndsWith(".dxf", StringComparison.Ordinal)),
            f => Assert.Contains($"INPUT {mark.ToUpperInvariant()}", File.ReadAllText(run.PathOf($"made/{f}")), StringComparison.Ordinal));
    }

    [Fact]
    public void Make_DesignThatMissesQuietly_StillTellsTheError()
    {
        using CliRun run = Bench(Near);
        Assert.Equal(1, run.Run("make", "bench.toml", "-o", "made", "--only", "report", "--quiet"));
        Assert.All(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries), l => Assert.Contains(": error: ", l, StringComparison.Ordinal));
        Assert.NotEmpty(run.Error);
    }

    [Fact]
    public void Make_Json_GivesOneDocumentOnStandardOutput()
    {
        using CliRun run = Bench(Near);
        Assert.Equal(1, run.Run("make", "bench.toml", "-o", "made", "--only", "report,cut", "--json"));
        JsonObject result = JsonNode.Parse(run.Out)!.AsObject();
        Assert.Equal("misses", (string?)result["verdict"]);
        Assert.True((bool)result["cut_withheld"]!);
        Assert.Equal(["bom.csv", "report.html", "report.json", "report.md", "settled.toml", "manifest.json"], result["files"]!.AsArray().Select(f => (string)f!), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("voltage = \"230 V\"", "voltage = \"230\"", "bench\\.toml:[0-9]+:[0-9]+: ")]
    [InlineData("turn_time = \"240 s\"", "turn_time = \"240 s\"\nturntime = 3", "bench\\.toml:[0-9]+:[0-9]+: ")]
    [InlineData("pollution_degree = 3", "pollution_degree = 4", "bench\\.toml:[0-9]+:[0-9]+: 'pollution_degree' is 4; .*creepage")]
    [InlineData("outer_diameter = \"auto\"", "outer_diameter = \"20 mm\"", "bench\\.toml:[0-9]+:[0-9]+: .*too small")]
    public void Make_WrongInput_IsLocatedAndWritesNothing(string good, string bad, string message)
    {
        using CliRun run = Bench();
        string text = File.ReadAllText(run.PathOf("bench.toml"));
        Assert.Contains(good, text, StringComparison.Ordinal);
        File.WriteAllText(run.PathOf("bench.toml"), text.Replace(good, bad, StringComparison.Ordinal));
        Assert.Equal(2, run.Run("make", "bench.toml", "-o", "made", "--dpi", "40"));
        Assert.Matches(message, run.Error);
        Assert.False(Directory.Exists(run.PathOf("made")));
    }

    [Fact]
    public void Make_UnknownKind_IsWrongInputAndNamesTheKinds()
    {
        using CliRun run = Bench();
        Assert.Equal(2, run.Run("make", "bench.toml", "--only", "pictures"));
        Assert.Contains("'pictures'", run.Error, StringComparison.Ordinal);
        Assert.Contains("report", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_NoSuchFile_IsFileTrouble()
    {
        using CliRun run = new();
        Assert.Equal(3, run.Run("make", "nowhere.toml"));
        Assert.Contains("nowhere.toml", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_FolderThatIsAFile_IsFileTrouble()
    {
        using CliRun run = Bench();
        File.WriteAllText(run.PathOf("made"), "in the way");
        Assert.Equal(3, run.Run("make", "bench.toml", "-o", "made", "--only", "report"));
        Assert.Equal("in the way", File.ReadAllText(run.PathOf("made")));
    }

    [Fact]
    public void Make_SomethingInTheWay_LeavesTheOldSet()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "report,cut");
        byte[] old = File.ReadAllBytes(run.PathOf("made/report.json"));
        File.Delete(run.PathOf("made/report.md"));
        Directory.CreateDirectory(run.PathOf("made/report.md"));
        File.WriteAllText(run.PathOf("bench.toml"), File.ReadAllText(run.PathOf("bench.toml")).Replace("PB-01", "PB-02", StringComparison.Ordinal));
        Assert.Equal(3, run.Run("make", "bench.toml", "-o", "made", "--only", "report,cut"));
        Assert.Equal(old, File.ReadAllBytes(run.PathOf("made/report.json")));
        Assert.Equal(["bom.csv", "cut/base.dxf", "cut/carrier.dxf", "cut/order.txt", "cut/strip-feed-strip.dxf", "cut/strip-hold-strip.dxf", "cut/strip-mist-strip.dxf", "cut/wheel.dxf", "manifest.json", "report.html", "report.json", "settled.toml"], Present(run), StringComparer.Ordinal);
    }

    [Fact]
    public void Make_Stopped_IsInterruptedAndWritesNothing()
    {
        using CliRun run = Bench();
        Assert.Equal(130, run.RunStopped(CommandList.All(), ["make", "bench.toml", "-o", "made"]));
        Assert.False(Directory.Exists(run.PathOf("made")));
    }

    internal static CliRun Bench(string more = "")
    {
        CliRun run = new();
        File.WriteAllBytes(run.PathOf("bench.toml"), TemplateShelf.All[0].Bytes());
        File.AppendAllText(run.PathOf("bench.toml"), Briefs.FewDraws + more);
        return run;
    }

    private static CultureInfo Commas()
    {
        CultureInfo culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "\u2212";
        return culture;
    }

    // Folder by folder: "    draw/ wheel.png and .svg, set.pdf" are draw/wheel.png, draw/wheel.svg and draw/set.pdf.
    private static string[] Listed(CliRun run) =>
        [.. run.Out.Split('\n').SkipWhile(l => !string.Equals(l, "  written into made:", StringComparison.Ordinal)).Skip(1).TakeWhile(l => l.StartsWith("    ", StringComparison.Ordinal)).SelectMany(Listed).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Listed(string line)
    {
        string folder = line.Contains("/ ", StringComparison.Ordinal) ? line[4..(line.IndexOf("/ ", StringComparison.Ordinal) + 1)] : "";
        foreach (string file in line[(4 + folder.Length)..].TrimStart().Split(", "))
        {
            string[] endings = file.Split(" and ");
            yield return folder + endings[0];
            foreach (string ending in endings.Skip(1))
            {
                yield return folder + Path.ChangeExtension(endings[0], ending);
            }
        }
    }

    private static string[] Present(CliRun run) =>
        [.. Directory.EnumerateFiles(run.PathOf("made"), "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(run.PathOf("made"), f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    private static Dictionary<string, byte[]> Bytes(CliRun run) =>
        Present(run).ToDictionary(f => f, f => File.ReadAllBytes(run.PathOf("made/" + f)), StringComparer.Ordinal);

    private static void Same(Dictionary<string, byte[]> first, Dictionary<string, byte[]> second)
    {
        Assert.Equal(first.Keys.Order(StringComparer.Ordinal), second.Keys.Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.All(first, f => Assert.Equal(f.Value, second[f.Key]));
    }
}
