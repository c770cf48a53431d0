using System.CommandLine;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft manual</c>: the manual page, for man.</summary>
internal sealed class ManualCommand : ICommand
{
    /// <inheritdoc/>
    public Command Describe() => new("manual", "Writes the manual page, for man");

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        context.Results.Write(ManualPage.Write(CommandWords.Of((RootCommand)parsed.RootCommandResult.Command), ProgramVersion.Short));
        return ExitStatus.Done;
    }
}
