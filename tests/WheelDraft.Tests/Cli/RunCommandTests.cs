using System.Text.Json;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>The command <c>run</c> from a file to table, CSV and chart.</summary>
public sealed class RunCommandTests
{
    // Worked here: the humidity switch starts the wheel at home; at 3 s the run ring makes and holds; it breaks at 179 s; the valve is on
    // for 5.5 s, the fan for 90 s and 30 s; the wheel coasts on by 0.25° in the middle, 0.125 s.
    [Fact]
    public void Run_Json_TellsOnTimes()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("run", Demos.PathOf("propagation-bench"), "-o", "runs", "--json"));
        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement first = json.RootElement.GetProperty("runs")[0];
        Assert.Equal("one dry hour begins", first.GetProperty("scenario").GetString());
        Assert.True(first.GetProperty("certain").GetBoolean());
        JsonElement on = first.GetProperty("on_s");
        Assert.Equal(5.5, on.GetProperty("mist valve").GetDouble(), 1e-6);
        Assert.Equal(120, on.GetProperty("fan").GetDouble(), 1e-6);
        Assert.Equal(179, on.GetProperty("motor").GetDouble(), 1e-6);
        JsonElement last = first.GetProperty("moments").EnumerateArray().Last();
        Assert.Equal(179.125, last.GetProperty("time_s").GetDouble(), 1e-6);
        Assert.Equal(358.25, last.GetProperty("at_deg").GetDouble(), 1e-6);
        Assert.False(last.GetProperty("turning").GetBoolean());
    }

    [Fact]
    public void Run_Words_WriteTableCsvAndChart()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("run", Demos.PathOf("propagation-bench"), "--scenario", "One Dry Hour Begins", "-o", "runs"));
        Assert.Contains("mist ring makes", run.Out, StringComparison.Ordinal);
        Assert.Contains("mist valve 5.5 s", run.Out, StringComparison.Ordinal);
        string[] csv = File.ReadAllLines(run.PathOf("runs/run-one-dry-hour-begins.csv"));
        Assert.StartsWith("time_s,angle_deg,turns,event,turning,input humidity switch,input lid,contact run,contact stir,contact mist,load mist valve", csv[0], StringComparison.Ordinal);
        Assert.StartsWith("0,0,0,home,0,0,0,0,0,0,off", csv[1], StringComparison.Ordinal);
        Assert.StartsWith("0,0,0,\"lid closes, humidity switch closes\",1,1,1,0,0,0,off", csv[2], StringComparison.Ordinal);
        Assert.Contains("<svg xmlns", File.ReadAllText(run.PathOf("runs/draw/run-one-dry-hour-begins.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_FileWithFindings_EndsWithOne()
    {
        // An earthed part 0.9 mm above live copper, as near as no rule allows.
        const string near = """

            [[part]]
            name = "near frame"
            kind = "earthed"
            circle = { at = ["12 mm", "0 mm"], diameter = "4 mm" }
            z = ["0.9 mm", "4 mm"]
            """;
        using CliRun run = new();
        File.WriteAllText(run.PathOf("near.toml"), File.ReadAllText(Demos.PathOf("propagation-bench")) + near);
        Assert.Equal(1, run.Run("run", "near.toml", "-o", "runs"));
        Assert.True(File.Exists(run.PathOf("runs/run-one-dry-hour-begins.csv")));
    }

    [Fact]
    public void Run_UnknownScenario_IsRefusedWithTheNamesThereAre()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("run", Demos.PathOf("propagation-bench"), "--scenario", "two turns"));
        Assert.Contains("'one dry hour begins'", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_FileWithoutScenario_IsRefusedWithAnExample()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("run", Demos.PathOf("kiln-room")));
        Assert.Contains("[[scenario]]", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("force mist strip", "free contact: 3 mm below the copper face")]
    [InlineData("stress mist strip", "von Mises")]
    [InlineData("blank mist strip", "blank length")]
    [InlineData("voltage L mist", "230 V")]
    public void Why_StripsAndVoltages_AreExplained(string topic, string says)
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run(["why", Demos.PathOf("propagation-bench"), .. topic.Split(' ')]));
        Assert.Contains(says, run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_ThemeTextAndWidth_ShapeTheChart()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("run", Demos.PathOf("propagation-bench"), "-o", "runs", "--theme", "dark", "--text", "strokes", "--width", "160 mm"));
        string svg = File.ReadAllText(run.PathOf("runs/draw/run-one-dry-hour-begins.svg"));
        Assert.Contains(" width=\"160mm\"", svg, StringComparison.Ordinal);
        Assert.Contains("fill:#14181d", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("<text", svg, StringComparison.Ordinal);
    }
}
