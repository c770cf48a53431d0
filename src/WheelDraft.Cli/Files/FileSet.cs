using System.Globalization;

namespace WheelDraft.Cli;

/// <summary>Files that are written together or not at all, as far as a file system allows.</summary>
/// <remarks>Every file is first written in full, and flushed to the disk, under a temporary name in its own folder; only when all are there is each
/// renamed over its old one. A run that fails or is stopped before the renaming leaves the old set and no temporary file. The renaming itself is a
/// matter of milliseconds, is not interrupted by Ctrl-C, and can be torn only by a loss of power between two renames.</remarks>
/// <param name="folder">Folder of the set; made when it is not there.</param>
/// <param name="stop">Looked at until the renaming begins.</param>
internal sealed class FileSet(string folder, CancellationToken stop) : IDisposable
{
    /// <summary>Held while files are put in place.</summary>
    public static readonly Lock Gate = new();

    private readonly SortedDictionary<string, string> _temporary = new(StringComparer.Ordinal);

    /// <summary>The relative names added so far, forward slashes, in ordinal order.</summary>
    public IReadOnlyCollection<string> Names => _temporary.Keys;

    /// <summary>Adds a file: it is written, under its temporary name.</summary>
    /// <param name="relativePath">Name below the folder, parted by forward slashes, without "..".</param>
    /// <param name="bytes">Its content.</param>
    /// <exception cref="ArgumentException">The name leaves the folder, or is there already.</exception>
    /// <exception cref="FileTroubleException">It could not be written.</exception>
    /// <exception cref="OperationCanceledException">The run is stopped.</exception>
    public void Add(string relativePath, byte[] bytes)
    {
        CheckName(relativePath);
        stop.ThrowIfCancellationRequested();
        string final = PathIn(relativePath);
        if (!_temporary.TryAdd(relativePath, TemporaryFor(final)))
        {
            throw new ArgumentException($"The set holds '{relativePath}' already.", nameof(relativePath));
        }

        Guarded(() =>
        {
            Directory.CreateDirectory(Path.GetDirectoryName(final)!);
            WriteFlushed(_temporary[relativePath], bytes);
        });
    }

    /// <summary>Puts all files in place and deletes stale ones.</summary>
    /// <param name="deleteStale">Relative names of files of an earlier run that go; those not there do not matter, those in the set stay.</param>
    /// <returns>The stale files that were there and are deleted, in the order given.</returns>
    /// <exception cref="FileTroubleException">Something could not be written; the old set is left.</exception>
    /// <exception cref="OperationCanceledException">The run is stopped; the old set is left.</exception>
    public IReadOnlyList<string> Commit(IReadOnlyList<string> deleteStale)
    {
        stop.ThrowIfCancellationRequested();
        List<string> deleted = [];
        lock (Gate)
        {
            Guarded(() => deleted = PutInPlace(deleteStale));
        }

        return deleted;
    }

    /// <summary>Takes away what was written and not put in place.</summary>
    public void Dispose()
    {
        foreach (string temporary in _temporary.Values)
        {
            Discard(temporary);
        }
    }

    /// <summary>Writes one file that must not be there yet.</summary>
    /// <exception cref="FileTroubleException">It is there already, or cannot be written.</exception>
    public static void WriteNew(string path, byte[] bytes)
    {
        string? temporary = null;
        try
        {
            temporary = TemporaryFor(path);
            WriteFlushed(temporary, bytes);
            lock (Gate)
            {
                File.Move(temporary, path, overwrite: false);
            }
        }
        catch (IOException) when (File.Exists(path) || Directory.Exists(path))
        {
            throw new FileTroubleException($"'{path}' is there already and is not overwritten; give another name, or remove it first");
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new FileTroubleException($"cannot write '{path}': {trouble.Message}");
        }
        finally
        {
            Discard(temporary);
        }
    }

    private void Guarded(Action work)
    {
        try
        {
            work();
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new FileTroubleException($"cannot write into '{folder}': {trouble.Message}");
        }
    }

    private List<string> PutInPlace(IReadOnlyList<string> deleteStale)
    {
        // A folder in the way of a name is found before the first rename, not half-way.
        foreach (string name in _temporary.Keys)
        {
            if (Directory.Exists(PathIn(name)))
            {
                throw new IOException($"'{PathIn(name)}' is a folder");
            }
        }

        foreach ((string name, string temporary) in _temporary)
        {
            File.Move(temporary, PathIn(name), overwrite: true);
        }

        List<string> deleted = [];
        foreach (string name in deleteStale)
        {
            CheckName(name);
            if (!_temporary.ContainsKey(name) && File.Exists(PathIn(name)))
            {
                File.Delete(PathIn(name));
                deleted.Add(name);
            }
        }

        return deleted;
    }

    private static void WriteFlushed(string path, byte[] bytes)
    {
        using FileStream file = new(path, FileMode.Create, FileAccess.Write, FileShare.None);
        file.Write(bytes);
        file.Flush(flushToDisk: true);
    }

    /// <summary>A name beside the final one, of this process alone; a leftover of a killed run of the same number is overwritten.</summary>
    private static string TemporaryFor(string final) => Path.Combine(
        Path.GetDirectoryName(final)!,
        string.Create(CultureInfo.InvariantCulture, $".{Path.GetFileName(final)}.{Environment.ProcessId}.part"));

    private string PathIn(string name) => Path.Combine(folder, Path.Combine(name.Split('/')));

    private static void CheckName(string relativePath)
    {
        string[] parts = relativePath.Split('/');
        if (parts.Any(p => p is "" or "." or "..") || relativePath.Contains('\\', StringComparison.Ordinal) || Path.IsPathRooted(relativePath))
        {
            throw new ArgumentException($"'{relativePath}' is not a plain name below a folder.", nameof(relativePath));
        }
    }

    private static void Discard(string? temporary)
    {
        try
        {
            if (temporary is not null)
            {
                File.Delete(temporary);
            }
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            // What cannot be deleted cannot be helped here, and the trouble that led here is the one worth telling.
            return;
        }
    }
}
