namespace WheelDraft.Cli;

/// <summary>Tells when a file has been saved, however the editor does it: written in place, renamed over, deleted and made anew.</summary>
internal sealed class FileWatch : IDisposable
{
    // Editors write in bursts; what comes within this time is one saving, ms. Longer, and the redraw is felt to lag.
    private const int BurstMs = 50;

    private readonly string _name;
    private readonly Action _saved;
    private readonly FileSystemWatcher _folder;
    private readonly Timer _burst;
    private readonly Lock _gate = new();

    /// <summary>Watches until disposed.</summary>
    /// <param name="path">Full path of the file.</param>
    /// <param name="saved">Called after each burst of changes, never twice at once.</param>
    public FileWatch(string path, Action saved)
    {
        _name = Path.GetFileName(path);
        _saved = saved;
        _burst = new Timer(_ => Tell(), null, Timeout.Infinite, Timeout.Infinite);

        // The folder and not the file: a file that is renamed over is another file.
        _folder = new FileSystemWatcher(Path.GetDirectoryName(path)!)
        {
            NotifyFilter = NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size,
        };
        _folder.Changed += OnChange;
        _folder.Created += OnChange;
        _folder.Deleted += OnChange;
        _folder.Renamed += OnChange;
        _folder.Error += (_, _) => Restart();
        _folder.EnableRaisingEvents = true;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _folder.Dispose();
        _burst.Dispose();
    }

    private void OnChange(object sender, FileSystemEventArgs change)
    {
        if (string.Equals(change.Name, _name, StringComparison.Ordinal))
        {
            Restart();
        }
    }

    private void Restart() => _burst.Change(BurstMs, Timeout.Infinite);

    private void Tell()
    {
        lock (_gate)
        {
            _saved();
        }
    }
}
