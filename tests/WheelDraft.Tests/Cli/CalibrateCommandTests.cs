using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>The command <c>calibrate</c>: from a measured dose to flow, on-time, screw turns or a new file. Figures by hand: flow = volume / time.</summary>
public sealed class CalibrateCommandTests
{
    [Fact]
    public void Calibrate_AnAdjustedOutput_TurnsTheScrewToTheOnTimeThatGivesTheDose()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("calibrate", Worked(run), "--output", "mist", "--measured", "118 mL", "--json"));
        Assert.Empty(run.Error);
        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement root = json.RootElement;
        Assert.Equal(118 / 5.5 * 60 / 1000, Number(root, "flow_l_per_min"), 1e-6);
        Assert.Equal(110, Number(root, "wanted_ml"), 1e-6);
        Assert.Equal(5.5 * 110 / 118, Number(root, "corrected_on_s"), 1e-6);
        JsonElement screw = root.GetProperty("screw");
        Assert.True(screw.GetProperty("reaches").GetBoolean());
        Assert.Equal(5.5 * 110 / 118, Number(screw, "on_s"), 1e-6);
        Assert.Equal(-Number(screw, "turns_longer") * 0.5, Number(screw, "moves_out_mm"), 1e-5);

        // About a half second a turn of travel each way; from where it then stands the other way round comes back to the middle.
        double turns = Number(screw, "turns_longer");
        Assert.InRange(turns, -2, -1);
        string back = turns.ToString("R", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(0, run.Run("calibrate", "worked.toml", "--output", "mist", "--measured", "110 mL", "--wanted", "118 mL", $"--turned={back}", "--json"));
        using JsonDocument again = JsonDocument.Parse(run.Out);
        Assert.Equal(-turns, Number(again.RootElement.GetProperty("screw"), "turns_longer"), 1e-4);
        Assert.Equal(5.5, Number(again.RootElement, "corrected_on_s"), 1e-4);
    }

    [Fact]
    public void Calibrate_BeyondTheTravel_GoesToItsEndAndSaysThatItDoesNotReach()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("calibrate", Worked(run), "--output", "mist", "--measured", "170 mL"));
        Assert.Contains("That is the end of its travel", run.Out, StringComparison.Ordinal);
        Assert.Contains("2 turns", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Calibrate_WithANewFile_ChangesFlowAndOnTimeAndNothingElse()
    {
        using CliRun run = new();
        string old = File.ReadAllText(run.PathOf(Worked(run)));
        Assert.Equal(0, run.Run("calibrate", "worked.toml", "--output", "mist", "--measured", "118 mL", "-o", "new.toml"));
        string made = File.ReadAllText(run.PathOf("new.toml"));
        string[] before = old.Split('\n'), after = made.Split('\n');
        Assert.Equal(before.Length, after.Length);
        Assert.Equal(2, before.Zip(after).Count(p => !string.Equals(p.First, p.Second, StringComparison.Ordinal)));
        OutputBrief mist = ParameterReader.Read(made).Brief!.Outputs[1];
        Assert.Equal(118 / 5.5 / 1000, mist.FlowLPerS!.Value, 1e-6);
        Assert.Equal(110, ((LastsFor)mist.On.Periods![0].Extent).Amount.Value * mist.FlowLPerS.Value * 1000, 0.01);

        // A file that is there is never overwritten.
        Assert.Equal(3, run.Run("calibrate", "worked.toml", "--output", "mist", "--measured", "118 mL", "-o", "new.toml"));
        Assert.Equal(made, File.ReadAllText(run.PathOf("new.toml")));
    }

    [Fact]
    public void Calibrate_ADoseGivenAsAVolume_KeepsItAndChangesTheFlow()
    {
        using CliRun run = new();
        string file = Worked(run);
        File.WriteAllText(run.PathOf(file), File.ReadAllText(run.PathOf(file)).Replace("for = \"5.5 s\"", "for = '110 mL'", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal));
        Assert.Equal(0, run.Run("calibrate", file, "--output", "MIST", "--measured", "0.118 L", "-o", "new.toml"));
        string made = File.ReadAllText(run.PathOf("new.toml"));
        Assert.Contains("for = '110 mL'", made, StringComparison.Ordinal);
        Assert.Contains("flow = \"1.2873 L/min\"", made, StringComparison.Ordinal);
        Assert.Contains("\r\n", made, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--output|mist", "--measured is missing")]
    [InlineData("--output|mist|--measured|118", "--measured")]
    [InlineData("--output|mist|--measured|-1 mL", "is not above zero")]
    [InlineData("--output|fog|--measured|118 mL", "there is no output 'fog'")]
    [InlineData("--output|hold|--measured|118 mL", "'hold' has no flow")]
    [InlineData("--output|mist|--measured|118 mL|--period|2", "on-periods 1 to 1, not 2")]
    [InlineData("--output|mist|--measured|118 mL|--turned|3", "beyond its travel")]
    [InlineData("--output|hold|--measured|118 mL|--wanted|100 mL|--turned|1", "has no adjusting screw")]
    public void Calibrate_WhatCannotBe_IsRefusedWithWords(string arguments, string words)
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run(["calibrate", Worked(run), .. arguments.Split('|')]));
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a = 'x'\nflow = \"1 L/min\" # b = \"c\"\n", 2, 1, "a = 'x'\nflow = \"2 L/min\" # b = \"c\"\n")]
    [InlineData("on = [ { from = \"1 s\", for = \"2 s\" } ]", 1, 23, "on = [ { from = \"1 s\", for = \"2 L/min\" } ]")]
    [InlineData("flow = 3", 1, 1, null)]
    [InlineData("flow = \"a\\\"b\"", 1, 1, null)]
    [InlineData("flow", 1, 1, null)]
    [InlineData("flow = \"1", 1, 1, null)]
    [InlineData("x", 3, 1, null)]
    public void Replaced_AValueOnTheLineOfItsKey_ChangesBetweenItsQuotes(string text, int line, int column, string? expected) =>
        Assert.Equal(expected, ValueEdit.Replaced(text, [(new TextPlace(line, column), "2 L/min")]));

    private static string Worked(CliRun run)
    {
        File.Copy(Path.Combine(AppContext.BaseDirectory, "cases", "worked", "worked-wheel.toml"), run.PathOf("worked.toml"));
        return "worked.toml";
    }

    private static double Number(JsonElement of, string name) => of.GetProperty(name).GetDouble();
}
