using System.Text.Json.Nodes;
using WheelDraft.Tests.Dxf.Reading;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>Several files in one command: each is checked, and the worst status wins.</summary>
public sealed class CheckManyTests
{
    private static readonly string[] Nets = ["--net", "CU1=L:230 V", "--net", "CU2=N:0 V", "--degree", "3", "--group", "IIIa", "--category", "II"];

    /// <summary>Files of all kinds: good, missing (spacing too small), refused; "none" is not there.</summary>
    private static CliRun Files()
    {
        CliRun run = new();
        File.WriteAllBytes(run.PathOf("good.dxf"), HandWritten.File(HandWritten.Square(0, 0, 10, "CU1") + HandWritten.Square(15, 0, 10, "CU2")));
        File.WriteAllBytes(run.PathOf("near.dxf"), HandWritten.File(HandWritten.Square(0, 0, 10, "CU1") + HandWritten.Square(11, 0, 10, "CU2")));
        File.WriteAllText(run.PathOf("bad.dxf"), "no drawing");
        return run;
    }

    [Theory]
    [InlineData("good.dxf good.dxf", 0)]
    [InlineData("good.dxf near.dxf", 1)]
    [InlineData("near.dxf good.dxf", 1)]
    [InlineData("bad.dxf near.dxf", 2)]
    [InlineData("near.dxf bad.dxf good.dxf", 2)]
    [InlineData("none.dxf bad.dxf good.dxf", 3)]
    [InlineData("bad.dxf none.dxf near.dxf", 3)]
    public void Check_SeveralFiles_TheWorstStatusWinsWhateverTheOrder(string files, int status)
    {
        using CliRun run = Files();
        string[] names = files.Split(' ');
        Assert.Equal(status, run.Run(["check", .. names, .. Nets]));

        // Each is spoken of, those after a refused one too.
        Assert.All(names, n => Assert.Contains(Path.GetFileNameWithoutExtension(n), run.Out + run.Error, StringComparison.Ordinal));
    }

    [Fact]
    public void Check_BadFileFirst_DoesNotKeepTheGoodOneFromBeingChecked()
    {
        using CliRun run = MakeCommandTests.Bench();
        File.WriteAllText(run.PathOf("bad.toml"), "title = 1");
        Assert.Equal(2, run.Run("check", "bad.toml", "bench.toml"));
        Assert.Contains("bad.toml:", run.Error, StringComparison.Ordinal);
        Assert.Contains("bench.toml: ", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_ManyFiles_SaysTheSameWordsInTheSameOrderAsOneByOne()
    {
        using CliRun run = MakeCommandTests.Bench();
        File.WriteAllText(run.PathOf("bad.toml"), "title = 1");
        string[] files = ["bench.toml", "bad.toml", Demos.PathOf("tank-doser"), "none.toml", "bench.toml", Demos.PathOf("kiln-room")];
        string words = "", messages = "";
        const string explain = "wheeldraft explain CODE tells more about a code in brackets.\n";
        foreach (string file in files)
        {
            run.Run("check", file);
            words += run.Out;
            messages += run.Error.Replace(explain, "", StringComparison.Ordinal);
        }

        Assert.Equal(3, run.Run(["check", .. files]));
        Assert.Equal(words, run.Out);
        Assert.Equal(messages + explain, run.Error);
    }

    [Fact]
    public void Check_ManyFilesAsJson_IsALineForEachInTheOrderGiven()
    {
        using CliRun run = MakeCommandTests.Bench();
        File.WriteAllText(run.PathOf("bad.toml"), "title = 1");
        Assert.Equal(0, run.Run("check", "--json", "bench.toml"));
        JsonNode alone = JsonNode.Parse(run.Out)!;
        Assert.Equal(3, run.Run("check", "--json", "bench.toml", "bad.toml", "none.toml", "bench.toml"));
        Assert.EndsWith("}\n", run.Out, StringComparison.Ordinal);
        JsonNode[] lines = [.. run.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!)];
        Assert.Equal(["bench.toml", "bad.toml", "none.toml", "bench.toml"], lines.Select(l => (string)l["file"]!), StringComparer.Ordinal);
        Assert.Equal([0, 2, 3, 0], lines.Select(l => (int)l["exit_status"]!));
        Assert.True(JsonNode.DeepEquals(alone, lines[0]["result"]));
        Assert.NotEmpty(lines[1]["result"]!["faults"]!.AsArray());
        Assert.Contains("none.toml", (string)lines[2]["messages"]!.AsArray().Single()!, StringComparison.Ordinal);
    }
}
