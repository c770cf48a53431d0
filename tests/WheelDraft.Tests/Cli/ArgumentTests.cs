using System.Text.Json.Nodes;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class ArgumentTests
{
    // Once these gave words on standard error and nothing on standard output, so that a program that reads it saw an empty document.
    [Theory]
    [InlineData("--json")]
    [InlineData("nonsense", "--json")]
    [InlineData("check", "--json")]
    [InlineData("check", "a.toml", "--jsn", "--json")]
    [InlineData("check", "", "--json")]
    [InlineData("check", "a.toml", "--net", "L", "--json")]
    [InlineData("check", "a.dxf", "--net", "L", "--json")]
    [InlineData("make", "a.toml", "--only", "nonsense", "--json")]
    [InlineData("make", "a.toml", "-o", "a", "-o", "b", "--json")]
    [InlineData("make", "a.toml", "--dxf", "r99", "--json")]
    [InlineData("new", "--json")]
    [InlineData("new", "a", "--like", "nonsense", "--json")]
    [InlineData("rule", "--json")]
    [InlineData("rule", "clearance", "--json")]
    [InlineData("rule", "clearance", "--impulse", "4 parsecs", "--degree", "3", "--json")]
    [InlineData("--json=nonsense")]
    public void Run_WrongArgumentsAskedAsJson_GivesJsonOnStandardOutput(params string[] args)
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run(args));
        JsonArray faults = JsonNode.Parse(run.Out)!["faults"]!.AsArray();
        Assert.NotEmpty(faults);
        Assert.All(faults, f => Assert.NotEmpty((string)f!["message"]!));
        Assert.NotEmpty(run.Error);
    }

    [Theory]
    [InlineData("--quiet", "--quiet")]
    [InlineData("--json", "--json")]
    [InlineData("--json", "--json", "--quiet", "--quiet", "--quiet")]
    public void Run_RepeatedSwitch_IsTheSwitch(params string[] switches)
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run(["schema", .. switches]));
        Assert.Empty(run.Error);
    }

    // Once `--only cut,draw FILE` took the file for another kind.
    [Theory]
    [InlineData("make", "--only", "cut,report", "FILE")]
    [InlineData("make", "--only", "cut", "--only", "report", "FILE")]
    [InlineData("make", "FILE", "--only=cut,report")]
    [InlineData("make", "--only", "report,cut,draw", "--closed", "lid", "--frame", "1 s", "FILE")]
    public void Make_OnlyBeforeTheFile_LeavesTheFile(params string[] args)
    {
        using CliRun run = new();
        File.Copy(Path.Combine(AppContext.BaseDirectory, "parameters", "propagation-bench.toml"), run.PathOf("a.toml"));
        Assert.Equal(0, run.Run([.. args.Select(a => a.Replace("FILE", "a.toml", StringComparison.Ordinal)), "-o", "made"]));
        Assert.True(File.Exists(run.PathOf("made/cut/wheel.dxf")));
        Assert.True(File.Exists(run.PathOf("made/report.json")));
        Assert.False(Directory.Exists(run.PathOf("made/print")));
    }

    // Once the folder where one stood was taken for the empty name, and filled.
    [Theory]
    [InlineData("make", "a.toml", "-o", "")]
    [InlineData("check", "")]
    [InlineData("why", "", "arc mist")]
    [InlineData("watch", "")]
    public void Run_EmptyName_IsWrongInput(params string[] args)
    {
        using CliRun run = new();
        File.Copy(Path.Combine(AppContext.BaseDirectory, "parameters", "propagation-bench.toml"), run.PathOf("a.toml"));
        Assert.Equal(2, run.Run(args));
        Assert.Contains("empty", run.Error, StringComparison.Ordinal);
        Assert.Single(Directory.EnumerateFileSystemEntries(run.Folder));
    }

    // Once the first bad file was the last that was looked at.
    [Fact]
    public void Check_BadFilesBeforeAGoodOne_LooksAtAll()
    {
        using CliRun run = new();
        File.Copy(Path.Combine(AppContext.BaseDirectory, "parameters", "propagation-bench.toml"), run.PathOf("good.toml"));
        File.WriteAllText(run.PathOf("bad.toml"), "format = 1\nnonsense = 2\n");
        Assert.Equal(3, run.Run("check", "bad.toml", "missing.toml", "good.toml"));
        Assert.Contains("bad.toml:2:1", run.Error, StringComparison.Ordinal);
        Assert.Contains("missing.toml", run.Error, StringComparison.Ordinal);
        Assert.Contains("good.toml: ", run.Out, StringComparison.Ordinal);
    }
}
