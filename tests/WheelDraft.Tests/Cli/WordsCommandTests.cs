using System.Text.Json;
using WheelDraft.Cli;
using WheelDraft.Formats.Languages;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary><c>wheeldraft words</c> and the option <c>--words</c>.</summary>
public sealed class WordsCommandTests
{
    [Fact]
    public void Words_List_NamesEveryLanguage_AndThatNobodyHasReviewedIt()
    {
        using CliRun run = new();
        Assert.Equal(ExitStatus.Done, run.Run("words", "--list"));
        foreach (string language in PhraseTables.Languages)
        {
            Assert.Contains(run.Out.Split('\n'), l => l.TrimStart().StartsWith(language, StringComparison.Ordinal) && l.Contains("not reviewed by a native speaker", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Words_WithoutLanguage_IsATableToFillIn_ThatMakeTakes_AndNamesWhatStaysEnglishOnce()
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("tank-doser.toml"), File.ReadAllText(Demos.PathOf("tank-doser")) + Briefs.FewDraws);
        Assert.Equal(ExitStatus.Done, run.Run("words", "-o", "own.toml"));
        string table = File.ReadAllText(run.PathOf("own.toml")).Replace("language = \"\"", "language = \"eo\"", StringComparison.Ordinal).Replace("\"Timing chart\" = \"\"", "\"Timing chart\" = \"Tempodiagramo\"", StringComparison.Ordinal);
        File.WriteAllText(run.PathOf("own.toml"), table);
        Assert.Equal(ExitStatus.Done, run.Run("make", "tank-doser.toml", "-o", "made", "--only", "draw,show", "--words", "own.toml"));
        string timing = File.ReadAllText(run.PathOf("made/draw/timing.svg"));
        Assert.Contains("Tempodiagramo", timing, StringComparison.Ordinal);
        Assert.Contains("xml:lang=\"eo\"", timing, StringComparison.Ordinal);
        Assert.Contains("<html lang=\"eo\">", File.ReadAllText(run.PathOf("made/show/index.html")), StringComparison.Ordinal);
        Assert.Single(run.Error.Split('\n'), l => l.Contains("texts have no words and stay English", StringComparison.Ordinal));
    }

    [Fact]
    public void Make_InGerman_LeavesCuttingFilesAndReportForPrograms_AsTheyAre()
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("tank-doser.toml"), File.ReadAllText(Demos.PathOf("tank-doser")) + Briefs.FewDraws);
        Assert.Equal(ExitStatus.Done, run.Run("make", "tank-doser.toml", "-o", "en", "--only", "report,cut"));
        Assert.Equal(ExitStatus.Done, run.Run("make", "tank-doser.toml", "-o", "de", "--only", "report,cut", "--words", "de"));
        foreach (string file in Directory.GetFiles(run.PathOf("en/cut"), "*.dxf").Append(run.PathOf("en/report.json")))
        {
            Assert.Equal(File.ReadAllBytes(file), File.ReadAllBytes(file.Replace($"{Path.DirectorySeparatorChar}en{Path.DirectorySeparatorChar}", $"{Path.DirectorySeparatorChar}de{Path.DirectorySeparatorChar}", StringComparison.Ordinal)));
        }

        string report = File.ReadAllText(run.PathOf("de/report.md"));
        Assert.Contains("## Befunde", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_UnknownLanguageOrWrongTable_IsRefusedWithWhatWouldDo()
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("tank-doser.toml"), File.ReadAllText(Demos.PathOf("tank-doser")) + Briefs.FewDraws);
        Assert.Equal(ExitStatus.WrongInput, run.Run("make", "tank-doser.toml", "--words", "klingon"));
        Assert.Contains("there are no words for 'klingon'; there are de, es, fr, it, nl, pl", run.Error, StringComparison.Ordinal);
        File.WriteAllText(run.PathOf("wrong.toml"), "language = \"de\"\n[words]\n\"{1} of {2}\" = \"{1}\"\n");
        Assert.Equal(ExitStatus.WrongInput, run.Run("make", "tank-doser.toml", "--words", "wrong.toml"));
        Assert.Contains("wrong.toml:3:", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_AsJson_IsOneObject()
    {
        using CliRun run = new();
        Assert.Equal(ExitStatus.Done, run.Run("words", "fr", "--json"));
        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Equal("fr", json.RootElement.GetProperty("language").GetString());
        Assert.True(json.RootElement.GetProperty("words").EnumerateObject().Count() > 2000);
    }
}
