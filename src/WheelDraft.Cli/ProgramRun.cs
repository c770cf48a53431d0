using System.CommandLine;
using System.CommandLine.Help;

namespace WheelDraft.Cli;

/// <summary>One run of the program, from arguments to exit status. It gives one of <see cref="ExitStatus"/> and throws nothing.</summary>
internal static class ProgramRun
{
    /// <summary>A run on the console of this process.</summary>
    public static int FromConsole(string[] args)
    {
        using ConsoleStreams streams = new();
        using CancellationTokenSource stop = new();
        int status = Run(args, new Surroundings
        {
            Out = streams.Out,
            Error = streams.Messages,
            Folder = WorkingFolder(),
            ErrorIsTerminal = !streams.Error.IsClosed && !Console.IsErrorRedirected,
            Colour = !Console.IsErrorRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
            Stop = stop.Token,
            Guard = () => new Interruption(stop),
        });
        return Math.Max(status, StatusOf(streams));
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
                ? parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, Output = context.Out, Error = context.Error })
                : ArgumentFaults.Report(parsed, context);
            surroundings.Out.Flush();
            return status;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            // Only the last flush of standard output can end here: commands are guarded in Invoke.
            Complain(context, trouble.Message);
            return ExitStatus.FileTrouble;
        }
    }

    /// <summary>Words that a person or a program waits for and that were lost are a file that could not be written. Standard error that the caller has
    /// closed was not waited for.</summary>
    private static int StatusOf(ConsoleStreams streams)
    {
        streams.Out.Flush();
        if (streams.Output.Lost is string lost)
        {
            streams.Messages.WriteLine($"wheeldraft: standard output could not be written: {lost}");
        }

        return streams.Output.Lost is not null || (streams.Error.Lost is not null && !streams.Error.IsClosed) ? ExitStatus.FileTrouble : ExitStatus.Done;
    }

    private static void Complain(CommandContext context, string why)
    {
        try
        {
            context.Complain($"standard output could not be written: {why}");
        }
        catch (IOException)
        {
            // Standard error has failed too: the exit status is all that is left to tell with.
            return;
        }
    }

    /// <summary>The working folder; null when it has been deleted under the program.</summary>
    private static string? WorkingFolder()
    {
        try
        {
            return Environment.CurrentDirectory;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
