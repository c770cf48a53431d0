namespace WheelDraft.Cli;

/// <summary>Files that are written together or not at all, as far as a file system allows.</summary>
/// <remarks>Every file is first written in full under a temporary name in its own folder, and flushed to the disk while others are still made; only when all are there do the
/// program's own stale files go and is each renamed over its old one. A run that fails or is stopped before that leaves the old set and no
/// temporary file; a change that fails half-way takes back all before it (<see cref="Placing"/>). Putting in place is a matter of milliseconds and is not interrupted by Ctrl-C; a
/// run killed in it is noticed by the next, by the manifest (<see cref="FolderRecord"/>). Files that are not the program's own are never touched.</remarks>
/// <param name="folder">Folder of the set; made when it is not there.</param>
/// <param name="stop">Looked at until the renaming begins.</param>
internal sealed class FileSet(string folder, CancellationToken stop) : IDisposable
{
    private readonly SortedDictionary<string, string> _temporary = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _hashes = new(StringComparer.Ordinal);

    // Disks take their time over each, and most of it is waiting: what has been written is flushed beside the work that goes on.
    private readonly List<Task> _flushes = [];

    // Files that wait for the disk are open; of a film's thousands no more than a system lets a program have.
    private readonly SemaphoreSlim _open = new(MostOpen);
    private const int MostOpen = 64;

    // Hashes of files as they were before anything is put in place: each file is read once.
    private readonly Dictionary<string, string> _there = new(StringComparer.Ordinal);

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
        if (_temporary.Count == 0)
        {
            // Leftovers of killed runs go before anything is written: on a full disk they may be what fills it.
            Guarded(() => FolderLook.SweepTemporary(folder));
        }

        if (!_temporary.TryAdd(relativePath, TemporaryFiles.NameFor(final)))
        {
            throw new ArgumentException($"The set holds '{relativePath}' already.", nameof(relativePath));
        }

        _hashes[relativePath] = FolderRecord.HashOf(bytes);
        Guarded(() =>
        {
            Directory.CreateDirectory(Path.GetDirectoryName(final)!);
            _open.Wait(stop);
            FileStream filled = TemporaryFiles.Filled(_temporary[relativePath], bytes);
            _flushes.Add(Task.Run(() => Flush(filled), CancellationToken.None));
        });
    }

    /// <summary>Deletes the program's own stale files, puts all files in place and writes the manifest.</summary>
    /// <exception cref="FileTroubleException">The folder is another parameter file's, a file that is not the program's own is in the way, or
    /// something could not be written; the old set is left.</exception>
    /// <exception cref="OperationCanceledException">The run is stopped; the old set is left.</exception>
    public FolderOutcome Commit(FolderClaim claim)
    {
        ArgumentNullException.ThrowIfNull(claim);
        stop.ThrowIfCancellationRequested();
        FolderOutcome? outcome = null;
        Guarded(() =>
        {
            foreach (Task flush in _flushes)
            {
                flush.GetAwaiter().GetResult();
            }

            Directory.CreateDirectory(folder);
            using IDisposable alone = FolderLock.Take(folder, stop);
            lock (TemporaryFiles.Gate)
            {
                stop.ThrowIfCancellationRequested();
                outcome = PutInPlace(claim, FolderRecord.Read(folder));
            }
        });

        return outcome!;
    }

    /// <summary>Removes what was written but not put in place.</summary>
    public void Dispose()
    {
        // What is being flushed cannot be deleted everywhere; whether it went well is told by whoever puts files in place.
        Task.WhenAll(_flushes).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing).GetAwaiter().GetResult();
        foreach (string temporary in _temporary.Values)
        {
            TemporaryFiles.Discard(temporary);
        }

        _open.Dispose();
    }

    /// <summary>Writes one file that must not be there yet.</summary>
    /// <exception cref="FileTroubleException">It is there already, or cannot be written.</exception>
    public static void WriteNew(string path, byte[] bytes)
    {
        string? temporary = null;
        try
        {
            temporary = TemporaryFiles.NameFor(path);
            TemporaryFiles.Sweep(Path.GetDirectoryName(path)!, Path.GetFileName(path));
            TemporaryFiles.Write(temporary, bytes);
            lock (TemporaryFiles.Gate)
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
            TemporaryFiles.Discard(temporary);
        }
    }

    private void Flush(FileStream filled)
    {
        try
        {
            TemporaryFiles.Flush(filled);
        }
        finally
        {
            _open.Release();
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

    private FolderOutcome PutInPlace(FolderClaim claim, FolderRecord? before)
    {
        CheckTheWay(claim, before);
        IReadOnlyList<string> stale = Stale(claim, before);
        FolderRecord after = RecordAfter(claim, before, stale);
        FolderLook.SweepTemporary(folder);

        string manifest = PathIn(FolderRecord.FileName);
        string between = TemporaryFiles.NameFor(manifest), last = TemporaryFiles.NameFor(manifest + ".last");
        try
        {
            // Both manifests are written before the first change, so that from there on a full disk stops nothing.
            TemporaryFiles.Write(between, Between(before, after).Bytes());
            TemporaryFiles.Write(last, after.Bytes());
            Change(manifest, (between, last), stale);
        }
        finally
        {
            TemporaryFiles.Discard(between);
            TemporaryFiles.Discard(last);
        }

        return new(stale, FolderLook.Unknown(folder, after), before is { IsComplete: false });
    }

    /// <summary>The changes themselves. From the first to the last the folder is between two runs, and its manifest says so.</summary>
    private void Change(string manifest, (string Between, string Last) manifests, IReadOnlyList<string> stale)
    {
        Placing placing = new();
        try
        {
            placing.Put(manifests.Between, manifest);
            foreach (string name in stale)
            {
                placing.TakeAway(PathIn(name));
            }

            foreach ((string name, string temporary) in _temporary)
            {
                placing.Put(temporary, PathIn(name));
            }

            placing.Put(manifests.Last, manifest);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw placing.TakeBack()
                ? new FileTroubleException($"cannot write into '{folder}': {trouble.Message}; all is as it was before")
                : new FileTroubleException($"cannot write into '{folder}': {trouble.Message}; nor could all be taken back: two designs may be mixed there, as its {FolderRecord.FileName} says; make room or give leave to write, and run again");
        }

        placing.Finish();
    }

    /// <summary>Everything that stands in the way is found before the first change, not half-way.</summary>
    private void CheckTheWay(FolderClaim claim, FolderRecord? before)
    {
        if (before is not null && !claim.TakesOver && !string.Equals(before.Input, claim.Input, StringComparison.Ordinal))
        {
            throw new FileTroubleException($"'{folder}' holds what was made from '{before.Input}', not from '{claim.Input}': give another folder with -o, or --take-over to replace it");
        }

        foreach (string name in _temporary.Keys.Append(FolderRecord.FileName))
        {
            if (Directory.Exists(PathIn(name)))
            {
                throw new IOException($"'{PathIn(name)}' is a folder");
            }
        }

        // A manifest that cannot be read is another program's, or was changed by hand: it is in the way like any other file.
        string[] foreign = [.. _temporary.Keys.Where(n => File.Exists(PathIn(n)) && !IsKnown(before, n)), .. before is null && File.Exists(PathIn(FolderRecord.FileName)) ? [FolderRecord.FileName] : Array.Empty<string>()];
        if (foreign.Length > 0 && !claim.TakesOver)
        {
            throw new FileTroubleException($"in '{folder}' there {(foreign.Length == 1 ? "is a file" : "are files")} that this program did not make, or that {(foreign.Length == 1 ? "was" : "were")} changed since: {string.Join(", ", foreign)}; move {(foreign.Length == 1 ? "it" : "them")} away, give another folder with -o, or --take-over to replace");
        }
    }

    private bool IsKnown(FolderRecord? before, string name) =>
        string.Equals(HashThere(name), _hashes[name], StringComparison.Ordinal) || IsOwn(before, name);

    private bool IsOwn(FolderRecord? before, string name) =>
        before is not null && before.Files.TryGetValue(name, out IReadOnlyList<string>? hashes) && hashes.Contains(HashThere(name), StringComparer.Ordinal);

    private string HashThere(string name)
    {
        if (!_there.TryGetValue(name, out string? hash))
        {
            hash = FolderRecord.HashOf(PathIn(name));
            _there.Add(name, hash);
        }

        return hash;
    }

    /// <summary>Own files of earlier runs that are not of this design, or that this run replaces, or whose run was cut off.</summary>
    private IReadOnlyList<string> Stale(FolderClaim claim, FolderRecord? before)
    {
        if (before is null)
        {
            return [];
        }

        bool isSameDesign = before.IsComplete
            && string.Equals(before.InputSha256, claim.InputSha256, StringComparison.Ordinal)
            && string.Equals(before.Settings, claim.Settings, StringComparison.Ordinal);
        return [.. before.Files.Keys
            .Where(n => !_temporary.ContainsKey(n) && (!isSameDesign || claim.Replaces(n)) && IsOwn(before, n))
            .Order(StringComparer.Ordinal)];
    }

    private FolderRecord RecordAfter(FolderClaim claim, FolderRecord? before, IReadOnlyList<string> stale)
    {
        Dictionary<string, IReadOnlyList<string>> files = new(StringComparer.Ordinal);
        foreach (string kept in before?.Files.Keys.Except(stale, StringComparer.Ordinal).Where(n => !_temporary.ContainsKey(n) && IsOwn(before, n)) ?? [])
        {
            files[kept] = before!.Files[kept];
        }

        foreach ((string name, string hash) in _hashes)
        {
            files[name] = [hash];
        }

        return new(claim.Input, claim.InputSha256, claim.Settings, IsComplete: true, files);
    }

    private static FolderRecord Between(FolderRecord? before, FolderRecord after)
    {
        Dictionary<string, IReadOnlyList<string>> both = new(after.Files, StringComparer.Ordinal);
        foreach ((string name, IReadOnlyList<string> hashes) in before?.Files ?? new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal))
        {
            both[name] = both.TryGetValue(name, out IReadOnlyList<string>? later) ? [.. hashes.Union(later, StringComparer.Ordinal)] : hashes;
        }

        return after with { IsComplete = false, Files = both };
    }

    private string PathIn(string name) => FolderRecord.PathIn(folder, name);

    private static void CheckName(string relativePath)
    {
        string[] parts = relativePath.Split('/');
        if (parts.Any(p => p is "" or "." or "..") || relativePath.Contains('\\', StringComparison.Ordinal) || Path.IsPathRooted(relativePath))
        {
            throw new ArgumentException($"'{relativePath}' is not a plain name below a folder.", nameof(relativePath));
        }
    }
}
