using System.CommandLine;

namespace WheelDraft.Cli;

/// <summary>Stands round every command, so that nothing it throws reaches a person as a stack trace.</summary>
internal static class CommandGuard
{
    /// <summary>Runs a command; whatever it throws becomes a message and an exit status, never a stack trace.</summary>
    public static int Run(ICommand command, ParseResult parsed, CommandContext context, Func<IDisposable>? guard)
    {
        using IDisposable? interruption = guard?.Invoke();
        try
        {
            context.Stop.ThrowIfCancellationRequested();
            int status = Troubles.StatusOf(() => command.Run(parsed, context), context);
            if (context.HasShownCodes && !context.Json)
            {
                context.Say("wheeldraft explain CODE tells more about a code in brackets.");
            }

            return status;
        }
        catch (OperationCanceledException)
        {
            context.Say("interrupted; no file was left half changed");
            return ExitStatus.Interrupted;
        }
    }
}
