using WheelDraft.Formats.Explaining;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Explaining;

/// <summary>Every command that an explanation shows is run as it stands there.</summary>
public sealed class ExplainedCommandsTests
{
    public static TheoryData<string> Shown => [.. ExplanationBook.All().Where(e => e.Example.Language is "sh").SelectMany(e => e.Example.Lines).Distinct(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Shown))]
    public void Explanation_Command_RunsAsItStands(string command)
    {
        Assert.StartsWith("wheeldraft ", command, StringComparison.Ordinal);
        string[] words = ShownCommands.Words(command["wheeldraft ".Length..]);
        using CliRun run = ShownCommands.Folder(words);
        int status = run.Run(words);
        Assert.True(status == 0, FormattableString.Invariant($"exit status {status}: {run.Error}{run.Out}"));
    }
}
