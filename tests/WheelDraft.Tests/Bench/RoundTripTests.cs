using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Bench;

/// <summary>From a demo to a log, from the log to a file, from the file to a wheel, and the wheel's log against the file.</summary>
public sealed partial class RoundTripTests
{
    public static TheoryData<string> Names => [.. Demos.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Demo_LoggedLearnedMadeAndCompared_Meets(string demo)
    {
        Design design = Demos.Of(demo);
        SyntheticLog log = new(LoggedProgramme.Of(design)) { Turns = 3.2, StepS = Math.Max(0.05, design.Motion.TurnTimeS / 4000), MakeBounceS = 0.04, DriftShare = 0.001 };
        using CliRun run = new();
        File.WriteAllBytes(run.PathOf("log.csv"), log.Csv());
        Assert.Equal(0, run.Run("learn", "log.csv", "-o", "learned.toml"));
        string learned = File.ReadAllText(run.PathOf("learned.toml"));

        // The rest of the demo with the times that were learned: what a person would enter.
        File.WriteAllText(run.PathOf("new.toml"), WithTimes(File.ReadAllText(Demos.PathOf(demo)), learned, design));
        Assert.True(run.Run("make", "new.toml", "-o", "made", "--only", "report,bench") == 0, run.Error);
        int status = run.Run("compare", "new.toml", "log.csv", "--json");
        Assert.True(status == 0, run.Out + run.Error);

        // Columns of the empty log are those that compare reads.
        Assert.Equal("time_s," + string.Join(',', design.Brief.Outputs.Select(o => o.Name)), File.ReadAllText(run.PathOf("made/bench/bench-log.csv")).TrimEnd());
    }

    [Fact]
    public void Learned_Check_NamesEveryPlaceToEnterInOneRun()
    {
        SyntheticLog log = new(LoggedProgramme.Of(Demos.Of("propagation-bench"))) { Turns = 2.3 };
        using CliRun run = new();
        File.WriteAllBytes(run.PathOf("log.csv"), log.Csv());
        Assert.Equal(0, run.Run("learn", "log.csv", "-o", "learned.toml"));
        AssertAllAreNamed(run, "learned.toml");
        Assert.Equal(3, run.Run("learn", "log.csv", "-o", "learned.toml"));
        Assert.Contains("not overwritten", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void LearnedAngles_Check_NamesEveryPlaceToEnterAndKeepsWhatWasMeasured()
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("angles.csv"), "output,on_deg,off_deg,radius_mm,contact_length_mm\nred,90,200,9.5,0.8\nblue,160,250,30.5,\nblue,290,310,,\n");
        Assert.Equal(0, run.Run("learn", "angles.csv", "-o", "old.toml"));
        string text = File.ReadAllText(run.PathOf("old.toml"));
        Assert.Contains("copper = [ { from = \"160 deg\", to = \"250 deg\" }, { from = \"290 deg\", to = \"310 deg\" } ]", text, StringComparison.Ordinal);
        Assert.Contains("radius = \"9.5 mm\"", text, StringComparison.Ordinal);
        AssertAllAreNamed(run, "old.toml");
    }

    [Fact]
    public void LearnAngles_WrongRows_AreAllNamedWithTheirLines()
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("angles.csv"), "output,on_deg,off_deg\nred,ninety,200\nblue,160\n");
        Assert.Equal(2, run.Run("learn", "angles.csv", "-o", "old.toml"));
        Assert.Contains("angles.csv:2:2", run.Error, StringComparison.Ordinal);
        Assert.Contains("angles.csv:3:1", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(run.PathOf("old.toml")));
    }

    [Fact]
    public void Compare_WheelThatMisses_EndsWithOneAndDraws()
    {
        LoggedProgramme programme = LoggedProgramme.Of(Demos.Of("propagation-bench")).With(2, (p, _) => (p.FromS, p.ForS + 1.6));
        using CliRun run = new();
        File.WriteAllBytes(run.PathOf("log.csv"), new SyntheticLog(programme) { Turns = 3.2 }.Csv());
        Assert.Equal(1, run.Run("compare", Demos.PathOf("propagation-bench"), "log.csv", "-o", "shown"));
        Assert.Contains("MISSES", run.Out, StringComparison.Ordinal);
        Assert.Contains("<svg xmlns", File.ReadAllText(run.PathOf("shown/draw/compare.svg")), StringComparison.Ordinal);
    }

    private static void AssertAllAreNamed(CliRun run, string file)
    {
        string[] lines = File.ReadAllLines(run.PathOf(file));
        Assert.Equal(2, run.Run("check", file));
        int[] asked = [.. Enumerable.Range(0, lines.Length).Where(i => lines[i].Contains("\"ENTER:", StringComparison.Ordinal)).Select(i => i + 1)];
        Assert.True(asked.Length > 10);
        Assert.All(asked, line => Assert.Contains(FormattableString.Invariant($"{file}:{line}:"), run.Error, StringComparison.Ordinal));
        Assert.Equal(asked.Length, run.Error.Split('\n').Count(l => l.StartsWith(file, StringComparison.Ordinal)));
    }

    private static string WithTimes(string demo, string learned, Design design)
    {
        string[] on = [.. Programmes().Matches(learned).Select(m => m.Value)];
        Assert.Equal(design.Brief.Outputs.Count, on.Length);
        int at = 0;
        return Programmes().Replace(demo, _ => on[at++]);
    }

    [GeneratedRegex("(?m)^on = (\"always\"|\\[[^\\]]*\\])", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Programmes();
}
