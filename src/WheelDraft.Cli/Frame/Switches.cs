using System.CommandLine;

namespace WheelDraft.Cli;

/// <summary>The options that every command takes, and the root that holds all commands.</summary>
internal sealed class Switches
{
    private readonly Option<bool> _quiet = new("--quiet") { Recursive = true, Description = "Say nothing but errors; check and make then print no summary either" };
    private readonly Option<bool> _json = new("--json") { Recursive = true, Description = "Machine-readable result on standard output, nothing else there" };

    /// <summary>The root command with all commands wired to run in the surroundings.</summary>
    public RootCommand Root(IReadOnlyList<ICommand> commands, Surroundings surroundings)
    {
        RootCommand root = new("Sets out rotary contact timers: from a parameter file to a wheel, its strips, proofs and drawings.") { _quiet, _json };
        foreach (ICommand command in commands)
        {
            Command described = command.Describe();
            Wire(described, command, surroundings);
            root.Add(described);
        }

        return root;
    }

    /// <summary>The context of a run with these arguments.</summary>
    public CommandContext Context(ParseResult parsed, Surroundings surroundings) =>
        new(surroundings) { Quiet = IsOn(parsed, _quiet), Json = IsOn(parsed, _json) };

    // Asked for before the arguments are known to be right, so it must bear any of them.
    private static bool IsOn(ParseResult parsed, Option<bool> option) =>
        parsed.GetResult(option) is { } given && (given.Errors.Any() || given.GetValueOrDefault<bool>());

    private void Wire(Command described, ICommand command, Surroundings surroundings)
    {
        foreach (Command part in described.Subcommands)
        {
            Wire(part, command, surroundings);
        }

        if (described.Subcommands.Count == 0)
        {
            described.SetAction(parsed => CommandGuard.Run(command, parsed, Context(parsed, surroundings), surroundings.Guard));
        }
    }
}
