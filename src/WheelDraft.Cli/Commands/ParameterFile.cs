using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Opens the file that a command was given.</summary>
internal static class ParameterFile
{
    private const int BlockBytes = 1 << 16;

    /// <summary>All bytes of a parameter file.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read, is larger than <see cref="Budgets.ParameterFileBytes"/>, or does not end in time.</exception>
    public static byte[] Bytes(string named, CommandContext context) => Bytes(named, context, Budgets.ParameterFileBytes, "a parameter file");

    /// <summary>All bytes of a drawing.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read, is larger than <see cref="Budgets.DrawingBytes"/>, or does not end in time.</exception>
    public static byte[] DrawingBytes(string named, CommandContext context) => Bytes(named, context, Budgets.DrawingBytes, "a drawing");

    private static byte[] Bytes(string named, CommandContext context, int most, string what)
    {
        string path = context.PathOf(named);
        try
        {
            // A pipe into which nobody writes keeps even the opening waiting, so that both are done beside, on a thread of their own, and given up after a while.
            Task<byte[]?> reading = Task.Factory.StartNew(() => UpTo(path, most, context.Stop), context.Stop, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            if (!reading.Wait(TimeSpan.FromSeconds(Budgets.ReadingS), context.Stop))
            {
                throw new FileTroubleException(string.Create(CultureInfo.InvariantCulture, $"cannot read '{named}': it has not come to its end within {Budgets.ReadingS} s; if it is a pipe, nothing writes into it. Save it as a file first."));
            }

            return reading.Result
                ?? throw new FileTroubleException(string.Create(CultureInfo.InvariantCulture, $"cannot read '{named}': it is larger than {most / (1024 * 1024)} MiB, or has no end; {what} is smaller than that. Is it the right file?"));
        }
        catch (AggregateException several) when (several.InnerException is IOException or UnauthorizedAccessException)
        {
            Exception trouble = several.InnerException;
            string why = trouble is FileNotFoundException or DirectoryNotFoundException ? "there is no such file" : trouble.Message;
            throw new FileTroubleException($"cannot read '{named}': {why}");
        }
    }

    /// <summary>The bytes of a file; null when there are more.</summary>
    private static byte[]? UpTo(string path, int most, CancellationToken stop)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using MemoryStream all = new();
        byte[] block = new byte[BlockBytes];
        for (int read = file.Read(block); read > 0; read = file.Read(block))
        {
            stop.ThrowIfCancellationRequested();
            all.Write(block, 0, read);
            if (all.Length > most)
            {
                return null;
            }
        }

        return all.ToArray();
    }
}
