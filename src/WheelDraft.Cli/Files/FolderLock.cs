namespace WheelDraft.Cli;

/// <summary>Keeps two runs from putting files into one folder at the same time.</summary>
/// <remarks>The lock lies among the machine's temporary files, named after the folder, so that nothing is left in the folder.
/// Where none can be made (another person's file of that name), the runs are not kept apart; each still writes whole files.</remarks>
internal static class FolderLock
{
    // Putting files in place takes milliseconds; a run that holds the lock longer has stopped, and its lock goes with it.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    // How systems say that another process has a file open for itself: EWOULDBLOCK of Linux and of BSD, ERROR_SHARING_VIOLATION.
    private const int LinuxHeld = 11;
    private const int BsdHeld = 35;
    private const int WindowsHeld = unchecked((int)0x80070020);

    /// <summary>Takes the lock of a folder; let it go by disposing.</summary>
    /// <exception cref="FileTroubleException">Another run holds it all the time.</exception>
    /// <exception cref="OperationCanceledException">The run is stopped while it waits.</exception>
    public static IDisposable Take(string folder, CancellationToken stop)
    {
        string path = Path.Combine(Path.GetTempPath(), $"wheeldraft-{FolderRecord.HashOf(System.Text.Encoding.UTF8.GetBytes(Path.GetFullPath(folder)))[..16]}.lock");
        if (new FileInfo(path).LinkTarget is not null)
        {
            // Somebody has put a link there: what it leads to is not opened.
            return new MemoryStream();
        }

        for (TimeSpan waited = TimeSpan.Zero; waited < Patience; waited += Pause)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException held) when (held.HResult is LinuxHeld or BsdHeld or WindowsHeld)
            {
                stop.WaitHandle.WaitOne(Pause);
                stop.ThrowIfCancellationRequested();
            }
            catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
            {
                return new MemoryStream();
            }
        }

        throw new FileTroubleException($"another run is writing into '{folder}'; try again when it has ended");
    }
}
