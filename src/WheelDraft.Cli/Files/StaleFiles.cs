using WheelDraft.Formats.Outputs;

namespace WheelDraft.Cli;

/// <summary>Files of an earlier run that would mislead beside those of this one.</summary>
internal static class StaleFiles
{
    /// <summary>Cutting files that are withheld now, pictures of a moment that was not asked for now, and pictures of a longer film; names below the folder.</summary>
    /// <remarks>Those that this run writes anew may be among them; they stay.</remarks>
    public static IReadOnlyList<string> In(string folder, OutputRequest request, bool areCutFilesWithheld) =>
    [
        .. areCutFilesWithheld ? Named(folder, OutputFiles.CutFolder, OutputFiles.IsCutFile) : [],
        .. request.Kinds.Contains(OutputKind.Draw) || request.Kinds.Contains(OutputKind.Png) ? Named(folder, OutputFiles.DrawFolder, n => n is "moment.svg" or "moment.png") : [],
        .. request.Film is not null ? Named(folder, OutputFiles.FilmFolder, OutputFiles.IsFrame) : [],
    ];

    private static IEnumerable<string> Named(string folder, string below, Func<string, bool> isOurs)
    {
        string path = Path.Combine(folder, below);
        return Directory.Exists(path)
            ? Directory.EnumerateFiles(path).Select(f => Path.GetFileName(f)!).Where(isOurs).Order(StringComparer.Ordinal).Select(n => $"{below}/{n}")
            : [];
    }
}
