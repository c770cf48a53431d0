namespace WheelDraft.Cli;

/// <summary>What a run asks of its folder.</summary>
/// <param name="Input">Name of the parameter file, without folders.</param>
/// <param name="InputSha256">Hash of its bytes.</param>
/// <param name="Settings">What else decides the design.</param>
internal sealed record FolderClaim(string Input, string InputSha256, string Settings)
{
    /// <summary>Whether a file of the same design, not in this run's set, goes all the same: withheld now, or of a kind that is made again.</summary>
    public Func<string, bool> Replaces { get; init; } = static _ => false;

    /// <summary>Whether a folder of another parameter file, and files in the way that are not known as the program's own, may be taken over.</summary>
    public bool TakesOver { get; init; }
}

/// <summary>What a run found and did in its folder.</summary>
/// <param name="Deleted">The program's own files of earlier runs that went, in ordinal order.</param>
/// <param name="Foreign">Files beside the program's own that it did not make or that were changed since; none was touched.</param>
/// <param name="WasCutOff">Whether an earlier run had been cut off while it put its files in place.</param>
internal sealed record FolderOutcome(IReadOnlyList<string> Deleted, IReadOnlyList<string> Foreign, bool WasCutOff);

/// <summary>What is in a folder, by its record: own, changed, missing, foreign.</summary>
internal static class FolderLook
{
    /// <summary>The folders below in which the program writes; files of others in them could be taken for parts of the design.</summary>
    public static IReadOnlyList<string> OwnFolders { get; } = ["cut", "draw", "print", "show", "frames", "film", "figures", "bench"];

    /// <summary>Files in the program's folders that are not its own, or that were changed since it wrote them; ordinal order.</summary>
    public static IReadOnlyList<string> Foreign(string folder, FolderRecord? record) =>
        [.. Present(folder).Where(n => record is null || !record.IsOwn(folder, n))];

    /// <summary>Files in the program's folders that the record does not name; ordinal order. Those it names are taken to be as they were written.</summary>
    public static IReadOnlyList<string> Unknown(string folder, FolderRecord record) => [.. Present(folder).Where(n => !record.Files.ContainsKey(n))];

    /// <summary>Files that the record names and that are not there.</summary>
    public static IReadOnlyList<string> Missing(string folder, FolderRecord record) =>
        [.. record.Files.Keys.Where(n => !File.Exists(FolderRecord.PathIn(folder, n))).Order(StringComparer.Ordinal)];

    /// <summary>Files that the record names and whose content is another now.</summary>
    public static IReadOnlyList<string> Changed(string folder, FolderRecord record) =>
        [.. record.Files.Keys.Where(n => File.Exists(FolderRecord.PathIn(folder, n)) && !record.IsOwn(folder, n)).Order(StringComparer.Ordinal)];

    /// <summary>Deletes temporary files of runs that are no longer there.</summary>
    public static void SweepTemporary(string folder)
    {
        foreach (string own in Folders(folder))
        {
            TemporaryFiles.Sweep(own);
        }
    }

    /// <summary>Temporary files that lie in the folder: of a run that was cut off, or that is at work now.</summary>
    public static IReadOnlyList<string> Leftover(string folder) => [.. Folders(folder)
        .SelectMany(f => Directory.EnumerateFiles(f).Where(TemporaryFiles.IsOne))
        .Select(p => Path.GetRelativePath(folder, p).Replace('\\', '/'))
        .Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Present(string folder) => OwnFolders
        .Where(f => Directory.Exists(Path.Combine(folder, f)))
        .SelectMany(f => Directory.EnumerateFiles(Path.Combine(folder, f)).Where(p => !TemporaryFiles.IsOne(p)).Select(p => $"{f}/{Path.GetFileName(p)}"))
        .Order(StringComparer.Ordinal);

    private static IEnumerable<string> Folders(string folder) =>
        OwnFolders.Select(f => Path.Combine(folder, f)).Prepend(folder).Where(Directory.Exists);
}
