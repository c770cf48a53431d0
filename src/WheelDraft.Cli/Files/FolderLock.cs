namespace WheelDraft.Cli;

/// <summary>Keeps two runs from putting files into one folder at the same time.</summary>
/// <remarks>The lock lies among the machine's temporary files, named after the folder, so that nothing is left in the folder.
/// Where none can be made (another person's file of that name), the runs are not kept apart; each still writes whole files.</remarks>
internal static class FolderLock
{
    // Putting files in place takes milliseconds; a run that holds the lock longer has stopped, and its lock goes with it.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    /// <summary>Takes the lock of a folder; let it go by disposing.</summary>
    /// <exception cref="FileTroubleException">Another run holds it all the time.</exception>
    public static IDisposable Take(string folder)
    {
        string path = Path.Combine(Path.GetTempPath(), $"wheeldraft-{FolderRecord.HashOf(System.Text.Encoding.UTF8.GetBytes(Path.GetFullPath(folder)))[..16]}.lock");
        for (TimeSpan waited = TimeSpan.Zero; waited < Patience; waited += Pause)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (UnauthorizedAccessException)
            {
                return new MemoryStream();
            }
            catch (DirectoryNotFoundException)
            {
                return new MemoryStream();
            }
            catch (IOException)
            {
                Thread.Sleep(Pause);
            }
        }

        throw new FileTroubleException($"another run is writing into '{folder}'; try again when it has ended");
    }
}
