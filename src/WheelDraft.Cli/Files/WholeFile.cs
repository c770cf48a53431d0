using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Reads a file to its end, whatever stands under its name, within bounds of size and time.</summary>
internal static class WholeFile
{
    // A file on a disk, even a slow one on a network, begins to answer within this time; a pipe that nobody writes into never does.
    private static readonly TimeSpan SoonS = TimeSpan.FromSeconds(2);

    private const int BlockBytes = 1 << 16;

    /// <summary>All bytes of a file, or of a pipe that a program fills within <see cref="Budgets.ReadingS"/>.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">Most bytes.</param>
    /// <param name="stop">Ends the waiting.</param>
    /// <exception cref="IOException">It cannot be read, is larger, or does not come to its end in time.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read, or is a folder.</exception>
    /// <exception cref="OperationCanceledException">The waiting was stopped.</exception>
    public static byte[] Bytes(string path, int most, CancellationToken stop) =>
        Within(TimeSpan.FromSeconds(Budgets.ReadingS), path, most, stop)
        ?? throw new IOException($"it has not come to its end within {Wording.Number(Budgets.ReadingS, 0)} s; if it is a pipe, nothing writes into it. Save it as a file first");

    /// <summary>All bytes of a parameter file that is read again and again, and so is one on a disk: a pipe does not block it.</summary>
    /// <exception cref="IOException">It cannot be read, is larger, or gives nothing.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read, or is a folder.</exception>
    public static byte[] BytesSoon(string path) =>
        Within(SoonS, path, Budgets.ParameterFileBytes, CancellationToken.None)
        ?? throw new IOException("nothing comes from it; a file that is watched is one on a disk, not a pipe or a device");

    /// <summary>All bytes of a file by its path from another file's folder, at most <see cref="Budgets.FontBytes"/>; null where it cannot be read.</summary>
    /// <exception cref="OperationCanceledException">The waiting was stopped.</exception>
    public static byte[]? BesideOrNull(string file, string beside, CancellationToken stop)
    {
        try
        {
            return Within(SoonS, Path.Combine(Path.GetDirectoryName(file) ?? "", beside), Budgets.FontBytes, stop);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }

    // Even opening a pipe waits for a writer. The thread that waits stays until the program ends; it keeps nobody else waiting.
    private static byte[]? Within(TimeSpan patience, string path, int most, CancellationToken stop)
    {
        Task<byte[]> reading = Task.Factory.StartNew(() => UpTo(path, most, stop), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        return Task.WaitAny([reading], (int)patience.TotalMilliseconds, stop) == 0 ? reading.GetAwaiter().GetResult() : null;
    }

    private static byte[] UpTo(string path, int most, CancellationToken stop)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using MemoryStream all = new();
        byte[] block = new byte[BlockBytes];
        for (int read = file.Read(block); read > 0; read = file.Read(block))
        {
            stop.ThrowIfCancellationRequested();
            all.Write(block, 0, read);
            if (all.Length > most)
            {
                throw new IOException($"it is larger than {Wording.Number(most >> 20, 0)} MiB, or has no end");
            }
        }

        return all.ToArray();
    }
}
