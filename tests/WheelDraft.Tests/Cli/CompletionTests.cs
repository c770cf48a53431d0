using System.Diagnostics;
using WheelDraft.Cli;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>Completion scripts and manual page, written from the commands; bash is asked for real, other shells by the build (<c>.ci/shells.sh</c>).</summary>
public sealed class CompletionTests
{
    private static readonly CommandWords Program = CommandWords.Of(new Switches().Root(CommandList.All(), new Surroundings { Out = TextWriter.Null, Error = TextWriter.Null, Folder = null }));

    [Fact]
    public void Of_TheProgram_HasEveryCommandAndOption()
    {
        Assert.Equal(CommandList.All().Select(c => c.Describe().Name), Program.Parts.Select(p => p.Name), StringComparer.Ordinal);
        Assert.Equal(["clearance", "creepage"], Program.Parts.Single(p => p.Name is "rule").Parts.Select(p => p.Name), StringComparer.Ordinal);
        CommandWords make = Program.Parts.Single(p => p.Name is "make");
        Assert.Equal(["--out", "-o"], make.Options.Single(o => o.Names.Contains("-o", StringComparer.Ordinal)).Names);
        Assert.Equal(ValueKind.Folder, make.Options.Single(o => o.Names.Contains("-o", StringComparer.Ordinal)).Value!.Kind);
        Assert.Null(make.Options.Single(o => o.Names[0] is "--nominal").Value);
        Assert.Equal(["dark", "light", "print"], make.Options.Single(o => o.Names[0] is "--theme").Value!.Choices);
        Assert.Equal(["I", "II", "IIIa", "IIIb"], Program.All.First(c => c.Path is "rule creepage").Options.Single(o => o.Names[0] is "--group").Value!.Choices);
        Assert.Contains("spacing.creepage", Program.Parts.Single(p => p.Name is "explain").Arguments.Single().Choices, StringComparer.Ordinal);
        Assert.Contains(make.Options, o => o.Names[0] is "--json");
        Assert.All(Program.All.SelectMany(c => c.Options).SelectMany(o => o.Names), n => Assert.StartsWith("-", n, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("wheeldraft ma", "make,manual")]
    [InlineData("wheeldraft rule cr", "creepage")]
    [InlineData("wheeldraft rule creepage --gr", "--group")]
    [InlineData("wheeldraft rule creepage --group II", "II,IIIa,IIIb")]
    [InlineData("wheeldraft make a.toml --theme ", "dark,light,print")]
    [InlineData("wheeldraft make a.toml --no", "--nominal")]
    [InlineData("wheeldraft explain spacing.c", "spacing.clearance,spacing.collision,spacing.creepage")]
    [InlineData("wheeldraft new x --like sh", "shortest")]
    [InlineData("wheeldraft check own", "own file.toml,own-folder")]
    [InlineData("wheeldraft make own.toml -o ow", "own-folder")]
    [InlineData("wheeldraft --qu", "--quiet")]
    [InlineData("wheeldraft rule creepage --standard IEC", "IEC 60335-1,IEC 60664-1")]
    public void Bash_AskedForAWord_OffersIt(string line, string words)
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("completion", "bash"));
        File.WriteAllText(run.PathOf("script.bash"), run.Out);
        File.WriteAllText(run.PathOf("own file.toml"), "");
        Directory.CreateDirectory(run.PathOf("own-folder"));
        string asked = string.Join(' ', line.Split(' ').Select(w => $"'{w}'"));
        Assert.Equal(words, Bash(run.Folder, $"set -u; . ./script.bash; COMP_WORDS=({asked}); COMP_CWORD=$((${{#COMP_WORDS[@]}} - 1)); _wheeldraft; printf '%s\\n' \"${{COMPREPLY[@]}}\" | LC_ALL=C sort | paste -sd ,").Trim());
    }

    [Theory]
    [InlineData("bash", "complete -F _wheeldraft wheeldraft")]
    [InlineData("zsh", "#compdef wheeldraft")]
    [InlineData("fish", "complete -c wheeldraft -n '__fish_seen_subcommand_from make' -l theme -x -a 'dark light print' -d 'Colours of drawings: light, dark or print'")]
    [InlineData("powershell", "'make --theme' = @('dark', 'light', 'print')")]
    public void Completion_Script_HoldsEveryOptionOfEveryCommand(string shell, string line)
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("completion", shell));
        Assert.Contains(line, run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', run.Out);
        Assert.All(Program.All.SelectMany(c => c.Options).SelectMany(o => o.Names), n => Assert.Contains(shell is "fish" ? n.TrimStart('-') : n, run.Out, StringComparison.Ordinal));
        Assert.All(Program.All.Skip(1), c => Assert.Contains(c.Name, run.Out, StringComparison.Ordinal));
    }

    [Fact]
    public void Completion_UnknownShell_NamesThoseThereAre()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("completion", "basic"));
        Assert.Contains("there are bash, zsh, fish, powershell", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Manual_Page_HasEveryCommandAndTheCaution()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("manual"));
        Assert.StartsWith($".TH WHEELDRAFT 1 \"\" \"WheelDraft {ProgramVersion.Short.Replace("-", "\\-", StringComparison.Ordinal)}\"", run.Out, StringComparison.Ordinal);
        Assert.Contains("Mains voltage kills.", run.Out, StringComparison.Ordinal);
        Assert.All(Program.All.Skip(1).Where(c => c.Parts.Count == 0), c => Assert.Contains($".SS \"wheeldraft {c.Path}", run.Out, StringComparison.Ordinal));
        Assert.All(run.Out.Split('\n'), l => Assert.DoesNotContain("  ", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Version_OfTheProgram_IsThatOfTheBuildPropertiesAndTheChanges()
    {
        string root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "WheelDraft.sln")))
        {
            root = Path.GetDirectoryName(root)!;
        }

        Assert.Contains($"<Version>{ProgramVersion.Short}</Version>", File.ReadAllText(Path.Combine(root, "src/Directory.Build.props")), StringComparison.Ordinal);
        Assert.StartsWith($"## {ProgramVersion.Short}", File.ReadLines(Path.Combine(root, "CHANGELOG.md")).First(l => l.StartsWith("## ", StringComparison.Ordinal)), StringComparison.Ordinal);
        using CliRun run = new();
        Assert.Equal(0, run.Run("--version"));
        Assert.Equal(ProgramVersion.Short, run.Out.Trim());
    }

    private static string Bash(string folder, string script)
    {
        using Process bash = Process.Start(new ProcessStartInfo("bash", ["--norc", "-c", script]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        string words = bash.StandardOutput.ReadToEnd(), faults = bash.StandardError.ReadToEnd();
        bash.WaitForExit();
        Assert.Equal("", faults);
        return words;
    }
}
