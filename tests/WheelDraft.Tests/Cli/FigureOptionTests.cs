using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary><c>make --figure</c>, end to end.</summary>
public sealed class FigureOptionTests
{
    [Theory]
    [InlineData("160mm", "--figure")]
    [InlineData("80mm", "--figure=80")]
    [InlineData("120mm", "--figure", "120 mm")]
    [InlineData("127mm", "--figure", "5 in")]
    public void Make_Figure_HasTheWidthThatWasAskedFor(string width, params string[] figure)
    {
        using CliRun run = Doser();
        Assert.Equal(0, run.Run(["make", "doser.toml", "-o", "made", "--only", "bench", .. figure]));
        Assert.Contains($" width=\"{width}\"", File.ReadAllText(run.PathOf("made/figures/wheel.svg")), StringComparison.Ordinal);
        Assert.True(File.Exists(run.PathOf("made/figures/wheel.pdf")));
        Assert.Contains("figures/captions.md", File.ReadAllText(run.PathOf("made/manifest.json")), StringComparison.Ordinal);
    }

    [Fact]
    public void Make_FiguresAgainAtATimeWithoutARun_ReplacesWhatIsNotMadeAgain()
    {
        using CliRun run = Doser();
        run.Run("make", "doser.toml", "-o", "made", "--only", "bench", "--figure", "--frame", "10 s");
        File.WriteAllText(run.PathOf("made/figures/own.svg"), "mine");
        string before = File.ReadAllText(run.PathOf("made/figures/moment.svg"));
        Assert.Equal(0, run.Run("make", "doser.toml", "-o", "made", "--only", "bench", "--figure"));
        Assert.NotEqual(before, File.ReadAllText(run.PathOf("made/figures/moment.svg")), StringComparer.Ordinal);
        Assert.Equal("mine", File.ReadAllText(run.PathOf("made/figures/own.svg")));
        Assert.Equal(0, run.Run("make", "doser.toml", "-o", "made", "--only", "bench"));
        Assert.True(File.Exists(run.PathOf("made/figures/moment.svg")));
    }

    [Theory]
    [InlineData("20 mm", "outside 60 mm to 400 mm")]
    [InlineData("wide", "is no width such as")]
    [InlineData("doser.toml", "the parameter file stands before --figure")]
    public void Make_AFigureOfNoWidth_IsRefusedWithWhatWouldBeRight(string width, string words)
    {
        using CliRun run = Doser();
        Assert.Equal(2, run.Run("make", "doser.toml", "-o", "made", "--figure", width));
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    private static CliRun Doser()
    {
        CliRun run = new();
        File.WriteAllText(run.PathOf("doser.toml"), File.ReadAllText(Demos.PathOf("tank-doser")) + Briefs.FewDraws);
        return run;
    }
}
