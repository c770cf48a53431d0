using System.Text.Json.Nodes;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>A refused file is told in one way by every command that reads one.</summary>
public sealed class RefusedFileTests
{
    private const string Words = "bad.toml:2:9: 'title' is the bare number 7; write a text in quotation marks, e.g. title = ";

    // The faults of a file were once told as JSON by a reader that no command used.
    [Theory]
    [InlineData("make")]
    [InlineData("check")]
    [InlineData("why")]
    [InlineData("run")]
    public void Json_OfAFaultyFile_IsOneObjectWithEveryFault(string command)
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("bad.toml"), "format = 1\ntitle = 7\n");
        Assert.Equal(2, run.Run(command, "bad.toml", "--json"));
        JsonObject told = JsonNode.Parse(run.Out)!.AsObject();
        Assert.Equal("bad.toml", (string?)told["file"]);
        JsonArray faults = told["faults"]!.AsArray();
        Assert.Equal(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length, faults.Count);
        JsonNode title = faults.Single(f => (int?)f!["line"] == 2)!;
        Assert.Equal(("parameters", 9), ((string?)title["code"], (int?)title["column"]));
        Assert.StartsWith("'title' is the bare number 7; write a text", (string?)title["message"], StringComparison.Ordinal);
        Assert.Contains(Words, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("make")]
    [InlineData("check")]
    public void NoJson_OfAFaultyFile_IsWordsOnStandardErrorOnly(string command)
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("bad.toml"), "format = 1\ntitle = 7\n");
        Assert.Equal(2, run.Run(command, "bad.toml"));
        Assert.Empty(run.Out);
        Assert.Contains(Words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_OfADesignThatCannotBeBuilt_HasTheCodeOfTheReason()
    {
        using CliRun run = new();
        string small = File.ReadAllText(Demos.PathOf("kiln-room")).Replace("outer_diameter = \"3.300 in\"", "outer_diameter = \"2.5 in\"", StringComparison.Ordinal);
        File.WriteAllText(run.PathOf("small.toml"), small);
        Assert.Equal(2, run.Run("check", "small.toml", "--json"));
        JsonNode fault = Assert.Single(JsonNode.Parse(run.Out)!["faults"]!.AsArray())!;
        Assert.Equal("wheel.diameter", (string?)fault["code"]);
        Assert.True((int?)fault["line"] > 1);
    }

    [Fact]
    public void Json_OfAFileThatIsNotThere_IsFileTroubleInWords()
    {
        using CliRun run = new();
        Assert.Equal(3, run.Run("check", "none.toml", "--json"));
        Assert.Empty(run.Out);
        Assert.Contains("there is no such file", run.Error, StringComparison.Ordinal);
    }
}
