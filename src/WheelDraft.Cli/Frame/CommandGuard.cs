using System.CommandLine;
using WheelDraft.Engineering;

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
            return command.Run(parsed, context);
        }
        catch (OperationCanceledException)
        {
            context.Say("interrupted; no file was changed by halves");
            return ExitStatus.Interrupted;
        }
        catch (DesignRefusedException refused)
        {
            Refusals.Report(refused, context);
            return ExitStatus.WrongInput;
        }
        catch (Exception trouble) when (trouble is FileTroubleException or IOException or UnauthorizedAccessException)
        {
            context.Complain(trouble.Message);
            return ExitStatus.FileTrouble;
        }
#pragma warning disable CA1031 // The last line of defence: a person gets a sentence, and the status of a thing that cannot be built.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            context.Complain($"a fault of the program itself ({fault.GetType().Name}: {fault.Message}); please report it with the file that led to it");
            return ExitStatus.WrongInput;
        }
    }
}
