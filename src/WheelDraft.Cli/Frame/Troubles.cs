using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Turns what goes wrong into words and an exit status: wrong input, a file that cannot be read or written, or a fault of the program itself.</summary>
internal static class Troubles
{
    /// <summary>Does something; whatever it throws becomes a message and an exit status, never a stack trace.</summary>
    /// <exception cref="OperationCanceledException">It was interrupted.</exception>
    public static int StatusOf(Func<int> work, CommandContext context)
    {
        try
        {
            return work();
        }
        catch (OperationCanceledException)
        {
            throw;
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
            Refusals.ReportInternal(fault, context);
            return ExitStatus.WrongInput;
        }
    }
}
