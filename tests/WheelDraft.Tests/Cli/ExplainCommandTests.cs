using System.Text.Json;
using WheelDraft.Formats.Explaining;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class ExplainCommandTests
{
    [Fact]
    public void Explain_Code_SaysWhatWhyAndHow()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("explain", "spacing.creepage"));
        Assert.StartsWith("spacing.creepage\nThe way over a surface is too short\n\n", run.Out, StringComparison.Ordinal);
        Assert.All((string[])["\nWhy it matters\n  ", "\nSource\n  IEC 60664-1:2020 Table F.5", "\nHow to cure it\n  ", "\nKeys\n  rib.height", "\nExample\n  [[rib]]\n", "\nSee also\n  spacing.clearance"], p => Assert.Contains(p, run.Out, StringComparison.Ordinal));
        Assert.Empty(run.Error);
    }

    [Fact]
    public void Explain_NoCode_ListsAllByFamily()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("explain"));
        string[] lines = run.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(ExplanationBook.All().Count, lines.Count(l => l.StartsWith("  ", StringComparison.Ordinal)));
        Assert.Equal(ExplanationBook.Families().Select(f => f.Title), lines.Where(l => !l.StartsWith(' ')), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("spacing.crepage", "did you mean 'spacing.creepage'?")]
    [InlineData("creepage", "did you mean spacing.creepage?")]
    [InlineData("web", "did you mean wheel.web, cut.web or drawing.web?")]
    [InlineData("timing.unheard-of", "there are timing.dose, timing.friction.")]
    [InlineData("xyzzy", "there is no code 'xyzzy'. wheeldraft explain lists them all")]
    public void Explain_UnknownCode_NamesNearOnes(string code, string near)
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("explain", code));
        Assert.Contains(near, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wheel.web", 1)]
    [InlineData(null, 0)]
    public void Explain_Json_IsAList(string? code, int count)
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run([.. new[] { "explain", code, "--json" }.OfType<string>()]));
        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Equal(count == 0 ? ExplanationBook.All().Count : count, json.RootElement.GetArrayLength());
        JsonElement web = json.RootElement.EnumerateArray().First(e => e.GetProperty("code").GetString() is "wheel.web");
        Assert.Equal("Wheel", web.GetProperty("family").GetString());
        Assert.All((string[])["title", "meaning", "why", "source", "cure", "example"], n => Assert.NotEmpty(web.GetProperty(n).GetString()!));
        Assert.Contains("wheel.web", web.GetProperty("keys").EnumerateArray().Select(k => k.GetString()), StringComparer.Ordinal);
    }

    [Fact]
    public void Explain_Page_HasAHeadingForEveryCode()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("explain", "--page"));
        Assert.All(ExplanationBook.All(), e => Assert.Contains($"\n### {e.Code}\n", run.Out, StringComparison.Ordinal));
    }

    [Fact]
    public void Check_FileWithFindings_SaysOnceHowToAskAboutThem()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("new", "a.toml", "--like", "damp-mains"));
        File.WriteAllText(run.PathOf("b.toml"), File.ReadAllText(run.PathOf("a.toml")).Replace("margin = \"0.2 mm\"", "margin = \"9 mm\"", StringComparison.Ordinal));
        run.Run("check", "b.toml", "b.toml");
        Assert.Matches(@"\[[a-z]+\.[a-z-]+\]\n", run.Error);
        Assert.Equal(2, run.Error.Split("wheeldraft explain CODE tells more about a code in brackets.\n").Length);
        run.Run("check", "b.toml", "--quiet");
        Assert.DoesNotContain("wheeldraft explain", run.Error, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("check", "a.toml"));
    }
}
