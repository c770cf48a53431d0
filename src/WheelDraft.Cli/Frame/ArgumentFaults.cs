using System.CommandLine;
using System.CommandLine.Parsing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>Says what is wrong with the arguments, briefly: exit status 2.</summary>
internal static class ArgumentFaults
{
    /// <summary>Whether anything is wrong with the arguments.</summary>
    public static bool Any(ParseResult parsed) => parsed.Errors.Count > 0 || Mistyped(parsed).Any();

    /// <summary>One line a fault, and where help is.</summary>
    public static int Report(ParseResult parsed, CommandContext context)
    {
        Command command = parsed.CommandResult.Command;
        string name = command is RootCommand ? "wheeldraft" : $"wheeldraft {FullName(parsed.CommandResult)}";
        List<string> lines = [.. Mistyped(parsed).Concat(parsed.UnmatchedTokens).Distinct(StringComparer.Ordinal).Select(t => Unknown(t, command))];
        if (lines.Count == 0)
        {
            lines.AddRange(parsed.Errors.Select(e => command.Subcommands.Count > 0 && parsed.Tokens.Count < 2 ? Unsaid(command, name) : e.Message.TrimEnd('.')));
        }

        Refusals.Report(new DesignRefusedException([.. lines.Distinct(StringComparer.Ordinal).Select(l => Finding.Error("arguments", l))]), context);
        context.Error.WriteLine($"Try: {name} --help");
        return ExitStatus.WrongInput;
    }

    /// <summary>Options that no command knows, and that the parser took for an argument: no file is likely to have such a name, and after "--" it can still be given.</summary>
    private static IEnumerable<string> Mistyped(ParseResult parsed) => parsed.Tokens
        .TakeWhile(t => t.Type != TokenType.DoubleDash)
        .Where(t => t.Type == TokenType.Argument && t.Value.Length > 2 && t.Value.StartsWith("--", StringComparison.Ordinal))
        .Select(t => t.Value);

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

    private static string FullName(CommandResult result) =>
        result.Parent is CommandResult { Command: not RootCommand } parent
            ? $"{FullName(parent)} {result.Command.Name}"
            : result.Command.Name;
}
