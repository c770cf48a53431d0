using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Reads a file to its end, whatever stands under its name, within bounds of size and time.</summary>
internal static class WholeFile
{
    /// <summary>The largest parameter file, bytes: a thousand times what one holds. An endless device is noticed by it.</summary>
    public const int MostOfParameters = 16 << 20;

    /// <summary>The largest drawing, bytes.</summary>
    public const int MostOfDrawing = 1 << 30;

    // A file on a disk, even a slow one on a network, begins to answer within this time; a pipe that nobody writes into never does.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    /// <summary>All bytes; waits for as long as it takes, since a pipe may be filled by a program that is at work.</summary>
    /// <exception cref="IOException">It cannot be read, or is larger.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read, or is a folder.</exception>
    public static byte[] Bytes(string path, int most = MostOfParameters)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using MemoryStream bytes = new();
        byte[] piece = new byte[1 << 16];
        for (int read; (read = file.Read(piece)) > 0;)
        {
            bytes.Write(piece, 0, read);
            if (bytes.Length > most)
            {
                throw new IOException($"it is larger than {Wording.Number(most >> 20, 0)} MB, or has no end");
            }
        }

        return bytes.ToArray();
    }

    /// <summary>All bytes of a file that is read again and again, and so is one on a disk: a pipe does not block it.</summary>
    /// <exception cref="IOException">It cannot be read, is larger, or gives nothing.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read, or is a folder.</exception>
    public static byte[] BytesSoon(string path)
    {
        // The thread that waits on a pipe stays until the program ends; it keeps nobody else waiting.
        Task<byte[]> reading = Task.Factory.StartNew(() => Bytes(path), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        return Task.WaitAny([reading], Patience) == 0
            ? reading.GetAwaiter().GetResult()
            : throw new IOException("nothing comes from it; a file that is watched is one on a disk, not a pipe or a device");
    }
}
