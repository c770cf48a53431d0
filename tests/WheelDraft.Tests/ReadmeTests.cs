using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Tests.Bench;
using WheelDraft.Tests.Cli;
using WheelDraft.Tests.Dxf.Reading;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Every command that the README shows is run as it stands there, each in a folder of its own.</summary>
public sealed partial class ReadmeTests
{
    private const string FromSource = "dotnet run --project src/WheelDraft.Cli -- ";

    /// <summary>What is shown and not run here, with the reason.</summary>
    private static readonly Dictionary<string, string> NotRun = new(StringComparer.Ordinal)
    {
        ["wheeldraft COMMAND --help"] = "a pattern: --help of every command is run besides",
        ["wheeldraft watch my-wheel.toml"] = "runs until it is stopped; the tests of watching run it",
        ["dotnet test"] = "is what runs this",
        ["dotnet run --project src/WheelDraft.Cli --"] = "the beginning of a command",
        ["dotnet publish src/WheelDraft.Cli -c Release -r linux-x64 -o publish"] = "the build publishes and tries the program",
    };

    private static string Text => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "README.md"));

    private static string[] Commands =>
    [
        .. Blocks().Matches(Text).SelectMany(b => b.Groups["text"].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            .Concat(Inline().Matches(Blocks().Replace(Text, "")).Select(m => Blanks().Replace(m.Groups["text"].Value, " ").Trim()))
            .Distinct(StringComparer.Ordinal),
    ];

    public static TheoryData<string> Shown => [.. Commands.Where(c => !NotRun.ContainsKey(c))];

    [Theory]
    [MemberData(nameof(Shown))]
    public void Readme_EveryCommand_RunsAsItStands(string command)
    {
        Assert.True(command.StartsWith("wheeldraft ", StringComparison.Ordinal) || command.StartsWith(FromSource, StringComparison.Ordinal), $"neither run nor known: {command}");
        string[] words = Words(command.StartsWith(FromSource, StringComparison.Ordinal) ? command[FromSource.Length..] : command["wheeldraft ".Length..]);
        using CliRun run = Folder(words);
        int status = run.Run(words);
        Assert.True(status == 0, FormattableString.Invariant($"exit status {status}: {run.Error}"));
    }

    [Fact]
    public void Readme_CommandsThatAreNotRun_AreStillInIt()
    {
        Assert.True(Commands.Length >= 10, string.Join('\n', Commands));
        Assert.All(NotRun.Keys, k => Assert.Contains(k, Commands, StringComparer.Ordinal));
    }

    [Fact]
    public void Readme_HelpOfEveryCommand_IsThere()
    {
        using CliRun run = new();
        foreach (WheelDraft.Cli.ICommand command in WheelDraft.Cli.CommandList.All())
        {
            Assert.Equal(0, run.Run(command.Describe().Name, "--help"));
            Assert.NotEmpty(run.Out);
        }
    }

    /// <summary>A folder with the files that the words name: demos, a starter file, a drawing with two nets on layers OUTLINE and SCREW.</summary>
    private static CliRun Folder(string[] words)
    {
        CliRun run = new();
        foreach (string demo in words.Where(w => w.StartsWith("parameters/", StringComparison.Ordinal)))
        {
            Directory.CreateDirectory(run.PathOf("parameters"));
            File.Copy(Demos.PathOf(Path.GetFileNameWithoutExtension(demo)), run.PathOf(demo));
        }

        if (words.Contains("my-wheel.toml", StringComparer.Ordinal) && words[0] is not "new")
        {
            Assert.Equal(0, run.Run("new", "my-wheel.toml", "--like", "damp-mains"));
        }

        if (words.Contains("shortest.toml", StringComparer.Ordinal) && words[0] is not "new")
        {
            Assert.Equal(0, run.Run("new", "shortest.toml", "--like", "shortest"));
        }

        if (words.Any(w => w.StartsWith("out/my-wheel/", StringComparison.Ordinal)))
        {
            Assert.Equal(0, run.Run("make", "my-wheel.toml", "--only", "cut"));
        }

        if (words.Contains("bench.csv", StringComparer.Ordinal))
        {
            // The log of a wheel made from that starter file.
            Assert.Equal(0, run.Run("new", "logged.toml", "--like", "damp-mains"));
            Design design = Design.Of(ParameterReader.Read(File.ReadAllBytes(run.PathOf("logged.toml"))).Brief!);
            File.WriteAllBytes(run.PathOf("bench.csv"), new SyntheticLog(LoggedProgramme.Of(design)) { Turns = 3.2, DriftShare = 0.001 }.Csv());
        }

        if (words.Contains("drawing.dxf", StringComparer.Ordinal))
        {
            File.WriteAllBytes(run.PathOf("drawing.dxf"), HandWritten.File(HandWritten.Square(0, 0, 20, "OUTLINE") + "0 CIRCLE|8 WINDOW|10 10|20 10|40 8|0 CIRCLE|8 SCREW|10 10|20 10|40 2"));
        }

        return run;
    }

    /// <summary>Words as a shell takes them: double quotes hold blanks together.</summary>
    private static string[] Words(string command)
    {
        List<string> words = [];
        StringBuilder word = new();
        bool quoted = false;
        foreach (char c in command + " ")
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ' ' && !quoted)
            {
                words.Add(word.ToString());
                word.Clear();
            }
            else
            {
                word.Append(c);
            }
        }

        Assert.False(quoted, command);
        return [.. words.Where(w => w.Length > 0)];
    }

    private const int MatchMilliseconds = 10_000;

    [GeneratedRegex("```sh\n(?<text>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, MatchMilliseconds)]
    private static partial Regex Blocks();

    [GeneratedRegex("`(?<text>(wheeldraft|dotnet run)\\s[^`]+)`", RegexOptions.ExplicitCapture, MatchMilliseconds)]
    private static partial Regex Inline();

    [GeneratedRegex("\\s+", RegexOptions.None, MatchMilliseconds)]
    private static partial Regex Blanks();
}
