using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;

namespace WheelDraft.Cli;

/// <summary>The files of a run as lines of a terminal: one a folder, the pictures of a film by their number, and where to read on.</summary>
internal static class WrittenLines
{
    // What a person opens first, and why, in this order.
    private static readonly (string Name, string Why)[] ReadOn =
    [
        ("report.md", "all figures, and why"),
        ("show/index.html", "the wheel turning"),
        ("draw/set.pdf", "all drawings"),
        ("print/template.pdf", "to saw by"),
        ("cut/wheel.dxf", "for the shop"),
        ("cut/wheel-nominal.dxf", "for the shop"),
        ("cut/wheel.svg", "for the shop"),
    ];

    /// <summary>The lines.</summary>
    /// <param name="folder">The folder as the person named it.</param>
    /// <param name="names">Names in it, parted by slashes.</param>
    public static IEnumerable<string> Of(string folder, IReadOnlyCollection<string> names) =>
    [
        $"  written into {folder}:",
        .. names.GroupBy(FolderOf, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"    {(g.Key.Length == 0 ? "" : g.Key + "/ ")}{Files(g.Key, [.. g])}"),
        .. Next(folder, names),
    ];

    private static string FolderOf(string name) => name.Contains('/', StringComparison.Ordinal) ? name[..name.LastIndexOf('/')] : "";

    private static string Files(string folder, string[] names) => string.Equals(folder, OutputFiles.FilmFolder, StringComparison.Ordinal)
        ? $"{Wording.Number(names.Length, 0)} pictures"
        : string.Join(", ", names.Select(n => n[(folder.Length == 0 ? 0 : folder.Length + 1)..])
            .GroupBy(n => Path.GetFileNameWithoutExtension(n), StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.Key + string.Join(" and ", g.Select(n => Path.GetExtension(n)).Order(StringComparer.Ordinal))));

    private static IEnumerable<string> Next(string folder, IReadOnlyCollection<string> names)
    {
        string[] next = [.. ReadOn.Where(r => names.Contains(r.Name, StringComparer.Ordinal)).Select(r => $"{Path.Combine(folder, r.Name)} ({r.Why})")];
        return next.Length == 0 ? [] : [$"  read on: {string.Join(", ", next)}"];
    }
}
