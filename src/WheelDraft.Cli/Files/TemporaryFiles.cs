using System.Diagnostics;
using System.Globalization;

namespace WheelDraft.Cli;

/// <summary>Files on their way to a final name: what they are called, how they are written and how they go.</summary>
/// <remarks>A temporary file lies beside the final one and carries the number of its process: ".wheel.dxf.4711.part". Those of a run that was
/// killed are known by that number and go with the next run into the folder; those of a run that is cut off go at once.</remarks>
internal static class TemporaryFiles
{
    /// <summary>Held while a file is begun or deleted and while files are put in place, so that a cut never falls between.</summary>
    public static readonly Lock Gate = new();

    // Clocks of files and processes are not read at one moment, and a clock may be set; a process that began later than this after
    // a file was last written has only the number in common with its writer.
    private static readonly TimeSpan ClockSlack = TimeSpan.FromSeconds(5);

    private const string Pattern = ".*.part";

    private static readonly HashSet<string> Unfinished = new(StringComparer.Ordinal);

    /// <summary>The temporary name of a file for this process.</summary>
    public static string NameFor(string final) => Path.Combine(
        Path.GetDirectoryName(final)!,
        string.Create(CultureInfo.InvariantCulture, $".{Path.GetFileName(final)}.{Environment.ProcessId}.part"));

    /// <summary>Whether a file is called as temporary files are.</summary>
    public static bool IsOne(string path) => ProcessOf(path) is not null;

    /// <summary>Writes one in full and flushes it to the disk. A leftover of that name goes first, so that a symbolic link is never written through.</summary>
    public static void Write(string path, byte[] bytes)
    {
        Flush(Filled(path, bytes));
    }

    /// <summary>Writes one in full; it is on the disk only after <see cref="Flush"/>, which has to follow. A leftover of that name goes first.</summary>
    public static FileStream Filled(string path, byte[] bytes)
    {
        FileStream file;
        lock (Gate)
        {
            File.Delete(path);
            file = new(path, FileMode.CreateNew, FileAccess.Write, FileShare.Delete);
            Unfinished.Add(path);
        }

        try
        {
            file.Write(bytes);
            return file;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>Waits until what was written is on the disk, and closes the file.</summary>
    public static void Flush(FileStream file)
    {
        using (file)
        {
            file.Flush(flushToDisk: true);
        }
    }

    /// <summary>Deletes one, where it is still there. What cannot be deleted is left to the next run.</summary>
    public static void Discard(string? path)
    {
        if (path is null)
        {
            return;
        }

        lock (Gate)
        {
            Unfinished.Remove(path);
            Delete(path);
        }
    }

    /// <summary>Deletes all that this process has begun; for a run that is cut off, with <see cref="Gate"/> held until the process ends.</summary>
    public static void DiscardAll()
    {
        foreach (string path in Unfinished)
        {
            Delete(path);
        }

        Unfinished.Clear();
    }

    /// <summary>Deletes those in a folder that belong to no run any more.</summary>
    /// <param name="folder">The folder, without those below it.</param>
    /// <param name="name">Only those of this final name; all when left out.</param>
    public static void Sweep(string folder, string? name = null)
    {
        lock (Gate)
        {
            foreach (string path in Directory.Exists(folder) ? Directory.GetFiles(folder, name is null ? Pattern : $".{name}.*.part") : [])
            {
                if (ProcessOf(path) is int process && !IsAtWork(process, path))
                {
                    Delete(path);
                }
            }
        }
    }

    private static int? ProcessOf(string path)
    {
        string[] parts = Path.GetFileName(path).Split('.');
        return parts.Length >= 4 && parts[0].Length == 0 && string.Equals(parts[^1], "part", StringComparison.Ordinal)
            && int.TryParse(parts[^2], NumberStyles.None, CultureInfo.InvariantCulture, out int process) ? process : null;
    }

    private static bool IsAtWork(int process, string path)
    {
        if (process == Environment.ProcessId)
        {
            return Unfinished.Contains(path);
        }

        try
        {
            using Process found = Process.GetProcessById(process);
            return found.StartTime.ToUniversalTime() <= File.GetLastWriteTimeUtc(path) + ClockSlack;
        }
        catch (ArgumentException)
        {
            return false;
        }
        catch (Exception trouble) when (trouble is InvalidOperationException or System.ComponentModel.Win32Exception or IOException)
        {
            // It ended while it was looked at, or may not be looked at: the file is left to a later run.
            return true;
        }
    }

    private static void Delete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            // What cannot be deleted cannot be helped here, and the trouble that led here is the one worth telling.
            return;
        }
    }
}
