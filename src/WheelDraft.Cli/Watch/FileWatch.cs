namespace WheelDraft.Cli;

/// <summary>Tells when a file has been saved, however the editor does it: written in place, renamed over, renamed away, deleted and made anew; behind
/// a symbolic link too.</summary>
internal sealed class FileWatch : IDisposable
{
    // Editors write in bursts; what comes within this time is one saving, ms. Longer, and the redraw is felt to lag.
    private const int BurstMs = 50;

    // Of links that lead to links: more than any system follows.
    private const int MostLinks = 40;

    private readonly string _path;
    private readonly Action _saved;
    private readonly Timer _burst;
    private readonly Lock _gate = new();
    private readonly Lock _telling = new();
    private Dictionary<string, FileSystemWatcher> _folders = new(StringComparer.Ordinal);
    private HashSet<string> _names = new(StringComparer.Ordinal);
    private bool _isDisposed;

    /// <summary>Watches until disposed.</summary>
    /// <param name="path">Full path of the file.</param>
    /// <param name="saved">Called after each burst of changes, never twice at once.</param>
    public FileWatch(string path, Action saved)
    {
        _path = path;
        _saved = saved;
        _burst = new Timer(_ => Announce(), null, Timeout.Infinite, Timeout.Infinite);
        Follow();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_gate)
        {
            _isDisposed = true;
            foreach (FileSystemWatcher folder in _folders.Values)
            {
                folder.Dispose();
            }
        }

        _burst.Dispose();
    }

    /// <summary>The file and every file that it leads to: the link itself may be turned elsewhere, and what it leads to may be saved.</summary>
    private static HashSet<string> Chain(string path)
    {
        HashSet<string> names = new(StringComparer.Ordinal);
        try
        {
            for (string? at = path; at is not null && names.Count < MostLinks && names.Add(at);)
            {
                at = new FileInfo(at).ResolveLinkTarget(returnFinalTarget: false)?.FullName;
            }
        }
        catch (IOException)
        {
            // What cannot be followed cannot be read either, and that is told when it is read.
            return names;
        }

        return names;
    }

    /// <summary>Watches the folders of the chain as it is now, and no others. Folders and not files: a file that is renamed over is another file.</summary>
    private void Follow()
    {
        lock (_gate)
        {
            if (_isDisposed)
            {
                return;
            }

            _names = Chain(_path);
            Dictionary<string, FileSystemWatcher> folders = new(StringComparer.Ordinal);
            foreach (string folder in _names.Select(n => Path.GetDirectoryName(n)!).Distinct(StringComparer.Ordinal).Where(Directory.Exists))
            {
                folders.Add(folder, _folders.Remove(folder, out FileSystemWatcher? known) ? known : Watcher(folder));
            }

            foreach (FileSystemWatcher left in _folders.Values)
            {
                left.Dispose();
            }

            _folders = folders;
        }
    }

    private FileSystemWatcher Watcher(string folder)
    {
        FileSystemWatcher watcher = new(folder) { NotifyFilter = NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size };
        watcher.Changed += OnChange;
        watcher.Created += OnChange;
        watcher.Deleted += OnChange;
        watcher.Renamed += (_, change) => OnChange(change.FullPath, change.OldFullPath);
        watcher.Error += (_, _) => Restart();
        watcher.EnableRaisingEvents = true;
        return watcher;
    }

    private void OnChange(object sender, FileSystemEventArgs change) => OnChange(change.FullPath, change.FullPath);

    private void OnChange(string now, string before)
    {
        HashSet<string> names = _names;
        if (names.Contains(now) || names.Contains(before))
        {
            Restart();
        }
    }

    private void Restart()
    {
        try
        {
            _burst.Change(BurstMs, Timeout.Infinite);
        }
        catch (ObjectDisposedException)
        {
            // A change that comes as the watching ends.
            return;
        }
    }

    private void Announce()
    {
        try
        {
            Follow();
        }
        catch (Exception trouble) when (trouble is IOException or ArgumentException)
        {
            // A folder that is gone already or cannot be watched; what is watched now still tells.
            _ = trouble;
        }

        lock (_telling)
        {
            _saved();
        }
    }
}
