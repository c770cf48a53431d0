using System.Globalization;

namespace WheelDraft.Cli;

/// <summary>A row of changes in a folder that can be taken back until it is finished.</summary>
/// <remarks>The old file of each change keeps a second, temporary name. At every moment one whole file, old or new, has each final name, but for
/// those that are taken away.</remarks>
internal sealed class Placing
{
    private readonly List<(string Final, string? Backup)> _done = [];

    /// <summary>Renames a temporary file to its final name.</summary>
    /// <exception cref="IOException">It could not be; nothing of this change was done.</exception>
    /// <exception cref="UnauthorizedAccessException">Likewise.</exception>
    public void Put(string temporary, string final)
    {
        if (!File.Exists(final))
        {
            File.Move(temporary, final, overwrite: true);
            _done.Add((final, null));
            return;
        }

        string backup = BackupFor(final);
        File.Delete(backup);
        File.Replace(temporary, final, backup);
        _done.Add((final, backup));
    }

    /// <summary>Takes a file away.</summary>
    /// <exception cref="IOException">It could not be.</exception>
    /// <exception cref="UnauthorizedAccessException">Likewise.</exception>
    public void TakeAway(string final)
    {
        string backup = BackupFor(final);
        File.Move(final, backup, overwrite: true);
        _done.Add((final, backup));
    }

    /// <summary>Lets the old files go.</summary>
    public void Finish()
    {
        foreach ((string _, string? backup) in _done)
        {
            TemporaryFiles.Discard(backup);
        }
    }

    /// <summary>Takes every change back, the last one first. Where one cannot be, those before it stay too, so that the manifest, which was
    /// changed first, goes on saying that the folder is between two runs.</summary>
    /// <returns>Whether all is as it was.</returns>
    public bool TakeBack()
    {
        try
        {
            for (; _done.Count > 0; _done.RemoveAt(_done.Count - 1))
            {
                (string final, string? backup) = _done[^1];
                if (backup is null)
                {
                    File.Delete(final);
                }
                else
                {
                    File.Move(backup, final, overwrite: true);
                }
            }

            return true;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    // A file may be changed twice, as the manifest is; each change has a backup of its own.
    private string BackupFor(string final) => TemporaryFiles.NameFor(string.Create(CultureInfo.InvariantCulture, $"{final}.old{_done.Count}"));
}
