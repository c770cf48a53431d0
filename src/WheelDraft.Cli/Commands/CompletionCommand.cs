using System.CommandLine;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft completion</c>: the script that lets a shell complete commands, options and their values.</summary>
internal sealed class CompletionCommand : ICommand
{
    private static readonly (string Shell, Func<CommandWords, string> Write)[] Shells =
    [
        ("bash", BashScript.Write),
        ("zsh", ZshScript.Write),
        ("fish", FishScript.Write),
        ("powershell", PowerShellScript.Write),
    ];

    private readonly Argument<string> _shell = new Argument<string>("SHELL") { Description = $"Whose script: {string.Join(", ", Shells.Select(s => s.Shell))}" }.Suggesting(() => Shells.Select(s => s.Shell));

    /// <inheritdoc/>
    public Command Describe() => new("completion", "Writes the script with which a shell completes the words of this program") { _shell };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string shell = parsed.GetRequiredValue(_shell);
        Func<CommandWords, string> write = Array.Find(Shells, s => string.Equals(s.Shell, shell, StringComparison.Ordinal)).Write
            ?? throw new DesignRefusedException("arguments.shell", $"there is no script for '{shell}'; there are {string.Join(", ", Shells.Select(s => s.Shell))}");
        context.Results.Write(write(CommandWords.Of((RootCommand)parsed.RootCommandResult.Command)));
        return ExitStatus.Done;
    }
}
