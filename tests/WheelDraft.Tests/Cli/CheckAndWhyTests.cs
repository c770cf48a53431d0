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
}
