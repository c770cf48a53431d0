using System.CommandLine;
using System.CommandLine.Help;

namespace WheelDraft.Cli;

/// <summary>One run of the program, from arguments to exit status. It gives one of <see cref="ExitStatus"/> and throws nothing.</summary>
internal static class ProgramRun
{
    /// <summary>A run on the console of this process.</summary>
    public static int FromConsole(string[] args)
    {
        using TextWriter output = ConsoleStreams.Open(Console.OpenStandardOutput());
        using TextWriter error = ConsoleStreams.Open(Console.OpenStandardError(), flushesEachLine: true);
        using CancellationTokenSource stop = new();
        return Run(args, new Surroundings
        {
            Out = output,
            Error = error,
            Folder = Environment.CurrentDirectory,
            ErrorIsTerminal = !Console.IsErrorRedirected,
            Colour = !Console.IsErrorRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
            Stop = stop.Token,
            Guard = () => new Interruption(stop),
        });
    }

    /// <summary>A run in given surroundings.</summary>
    public static int Run(IReadOnlyList<string> args, Surroundings surroundings) => Run(args, surroundings, CommandList.All());

    /// <summary>A run with given commands.</summary>
    public static int Run(IReadOnlyList<string> args, Surroundings surroundings, IReadOnlyList<ICommand> commands)
    {
        Switches switches = new();
        RootCommand root = switches.Root(commands, surroundings);
        ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        CommandContext context = switches.Context(parsed, surroundings);
        try
        {
            int status = parsed.Action is HelpAction || !ArgumentFaults.Any(parsed)
                ? parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, Output = surroundings.Out, Error = surroundings.Error })
                : ArgumentFaults.Report(parsed, context);
            surroundings.Out.Flush();
            return status;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            // Only the last flush of standard output can end here: commands are guarded in Invoke.
            context.Complain($"standard output could not be written: {trouble.Message}");
            return ExitStatus.FileTrouble;
        }
    }
}
