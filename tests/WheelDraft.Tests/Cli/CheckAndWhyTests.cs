using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class CheckAndWhyTests
{
    [Fact]
    public void Check_GoodFile_TellsFiguresAndWritesNothing()
    {
        using CliRun run = MakeCommandTests.Bench();
        Assert.Equal(0, run.Run("check", "bench.toml"));
        Assert.Contains("nothing misses", run.Out, StringComparison.Ordinal);
        Assert.Equal(["bench.toml"], Directory.EnumerateFileSystemEntries(run.Folder).Select(f => Path.GetFileName(f)!), StringComparer.Ordinal);
    }

    [Fact]
    public void Check_Json_IsTheReport()
    {
        using CliRun run = MakeCommandTests.Bench();
        Assert.Equal(0, run.Run("check", "bench.toml", "--json"));
        string checkedReport = run.Out;
        Assert.Equal("meets", (string?)JsonNode.Parse(checkedReport)!["verdict"]);
        run.Run("make", "bench.toml", "-o", "made", "--only", "report");
        Assert.Equal(File.ReadAllText(run.PathOf("made/report.json")), checkedReport);
    }

    [Fact]
    public void Check_DrawingOptionsForAParameterFile_IsWrongInput()
    {
        using CliRun run = MakeCommandTests.Bench();
        Assert.Equal(2, run.Run("check", "bench.toml", "--degree", "3"));
    }

    [Fact]
    public void Why_NoTopic_ListsTopicsThatAllAnswer()
    {
        using CliRun run = MakeCommandTests.Bench("""

            [[part]]
            name = "frame"
            kind = "earthed"
            circle = { at = ["0 mm", "0 mm"], diameter = "20 mm" }
            z = ["-40 mm", "-12 mm"]
            """);
        Assert.Equal(0, run.Run("why", "bench.toml"));
        string[] topics = run.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        foreach (string kind in (string[])["arc ", "open-contact ", "spacing ", "voltage "])
        {
            Assert.Contains(topics, t => t.StartsWith(kind, StringComparison.Ordinal));
        }

        foreach (string topic in topics.GroupBy(t => t.Split(' ')[0], StringComparer.Ordinal).Select(g => g.First()))
        {
            Assert.Equal(0, run.Run(["why", "bench.toml", .. topic.Split(' ')]));
            Assert.StartsWith(" 1. ", run.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Why_SpacingOfTwoNets_AnswersInEitherOrder()
    {
        using CliRun run = MakeCommandTests.Bench("""

            [[part]]
            name = "frame"
            kind = "earthed"
            circle = { at = ["0 mm", "0 mm"], diameter = "20 mm" }
            z = ["-40 mm", "-12 mm"]
            """);
        Assert.Equal(0, run.Run("why", "bench.toml", "spacing", "E", "L"));
        string one = run.Out;
        Assert.Contains("IEC 60664-1:2020 Table F.2", one, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("why", "bench.toml", "spacing", "L", "E"));
        Assert.Equal(one, run.Out);
    }

    [Fact]
    public void Why_UnknownTopic_IsWrongInputAndListsTopics()
    {
        using CliRun run = MakeCommandTests.Bench();
        Assert.Equal(2, run.Run("why", "bench.toml", "spacing", "L", "moon"));
        Assert.Contains("arc ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Schema_OfTheReport_IsPrinted()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("schema", "--report"));
        Assert.Equal("WheelDraft report, format 1", (string?)JsonNode.Parse(run.Out)!["title"]);
    }

    [Fact]
    public void Check_UnderFaults_CountsAnOpenNeutralInWorkingVoltages()
    {
        // Common practice, no source: behind an open neutral every load lifts the neutral's net to line. Without faults N is at earth.
        using CliRun run = new();
        Assert.Equal(0, Between("E", "N", "check", Demos.PathOf("propagation-bench"), "--json"));
        Assert.Equal(230, Between("E", "N", "check", Demos.PathOf("propagation-bench"), "--json", "--under-faults"), 1e-6);
        Assert.Contains("\"voltages_under_faults\": true", run.Out, StringComparison.Ordinal);
        run.Run("why", Demos.PathOf("propagation-bench"), "--under-faults", "voltage", "E", "N");
        Assert.Contains("neutral open", run.Out, StringComparison.Ordinal);

        double Between(string first, string second, params string[] args)
        {
            run.Run(args);
            using JsonDocument report = JsonDocument.Parse(run.Out);
            return report.RootElement.GetProperty("circuit").GetProperty("working_voltage").EnumerateArray()
                .Single(v => v.GetProperty("between")[0].ValueEquals(first) && v.GetProperty("between")[1].ValueEquals(second))
                .GetProperty("volts").GetDouble();
        }
    }

    [Fact]
    public void Check_UnderFaultsForADrawing_IsWrongInput()
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("part.dxf"), "");
        Assert.Equal(2, run.Run("check", "part.dxf", "--under-faults"));
        Assert.Contains("--under-faults", run.Error, StringComparison.Ordinal);
    }
}
