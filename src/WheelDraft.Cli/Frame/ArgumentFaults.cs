using System.CommandLine;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>Says what is wrong with the arguments, shortly: exit status 2.</summary>
internal static class ArgumentFaults
{
    /// <summary>One line a fault, and where help is.</summary>
    public static int Report(ParseResult parsed, CommandContext context)
    {
        Command command = parsed.CommandResult.Command;
        string name = command is RootCommand ? "wheeldraft" : $"wheeldraft {FullName(parsed.CommandResult)}";
        List<string> lines = [.. parsed.UnmatchedTokens.Select(t => Unknown(t, command))];
        if (lines.Count == 0)
        {
            lines.AddRange(parsed.Errors.Select(e => command.Subcommands.Count > 0 && parsed.Tokens.Count < 2 ? Unsaid(command, name) : e.Message.TrimEnd('.')));
        }

        foreach (string line in lines.Distinct(StringComparer.Ordinal))
        {
            context.Complain(line);
        }

        context.Error.WriteLine($"Try: {name} --help");
        return ExitStatus.WrongInput;
    }

    private static string Unsaid(Command command, string name) =>
        $"no command was given; after '{name}' say {string.Join(", ", command.Subcommands.Select(c => c.Name))}";

    private static string Unknown(string token, Command command)
    {
        bool option = token.StartsWith('-');
        IEnumerable<string> known = option
            ? command.Options.Select(o => o.Name).Concat(["--help", "--json", "--quiet"])
            : command.Subcommands.Select(c => c.Name);
        string? near = NearMiss.Of(token, known);
        string what = option ? "option" : command.Subcommands.Count > 0 ? "command" : "argument";
        return near is null ? $"unknown {what} '{token}'" : $"unknown {what} '{token}'; did you mean '{near}'?";
    }

    private static string FullName(System.CommandLine.Parsing.CommandResult result) =>
        result.Parent is System.CommandLine.Parsing.CommandResult { Command: not RootCommand } parent
            ? $"{FullName(parent)} {result.Command.Name}"
            : result.Command.Name;
}
