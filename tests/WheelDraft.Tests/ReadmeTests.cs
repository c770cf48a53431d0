using System.Text.RegularExpressions;
using WheelDraft.Tests.Cli;
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
        [".ci/pack.sh packages"] = "the build packs",
        ["dotnet tool install --global WheelDraft.Tool --source ./packages"] = "the build installs what it packed, into an empty home",
        [".ci/native.sh archives"] = "takes minutes a platform; the build publishes for one",
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
        string[] words = ShownCommands.Words(command.StartsWith(FromSource, StringComparison.Ordinal) ? command[FromSource.Length..] : command["wheeldraft ".Length..]);
        using CliRun run = ShownCommands.Folder(words);
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

    private const int MatchMilliseconds = 10_000;

    [GeneratedRegex("```sh\n(?<text>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, MatchMilliseconds)]
    private static partial Regex Blocks();

    [GeneratedRegex("`(?<text>(wheeldraft|dotnet run)\\s[^`]+)`", RegexOptions.ExplicitCapture, MatchMilliseconds)]
    private static partial Regex Inline();

    [GeneratedRegex("\\s+", RegexOptions.None, MatchMilliseconds)]
    private static partial Regex Blanks();
}
