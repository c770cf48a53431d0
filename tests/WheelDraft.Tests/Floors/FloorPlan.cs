using System.Text.RegularExpressions;

namespace WheelDraft.Tests.Floors;

/// <summary>The floors on which the chapters (folders) of a project stand, as cases/floors.txt lists them: the top floor first.</summary>
internal sealed record FloorPlan(string Project, IReadOnlyList<IReadOnlyList<string>> Floors)
{
    /// <summary>The list as it stands in the file, which DEVELOPERS.md repeats word for word.</summary>
    public static string Text { get; } = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "cases", "floors.txt"));

    /// <summary>One plan a project.</summary>
    public static IReadOnlyList<FloorPlan> All { get; } = [.. Text.Split("\n\n", StringSplitOptions.RemoveEmptyEntries).Select(Read)];

    /// <summary>The number of the floor that a chapter stands on, the ground being 0; null when the list does not have it.</summary>
    public int? FloorOf(string chapter)
    {
        for (int i = 0; i < Floors.Count; i++)
        {
            if (Floors[i].Contains(chapter, StringComparer.Ordinal))
            {
                return Floors.Count - 1 - i;
            }
        }

        return null;
    }

    private static FloorPlan Read(string block)
    {
        // A floor's chapters, then behind a bar what lives there in words; behind the project's name likewise.
        string[] lines = block.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return new(lines[0].Split(' ')[0], [.. lines.Skip(1).Select(l => (IReadOnlyList<string>)l.Split('|')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries))]);
    }
}

/// <summary>The sources of the repository, found from where this file was compiled.</summary>
internal static partial class Sources
{
    /// <summary>The repository's folder.</summary>
    public static string Root { get; } = Path.GetFullPath(Path.Combine(Here(), "..", "..", ".."));

    /// <summary>The chapter in which each type of a project is declared, by the type's name; the project's own folder is ".".</summary>
    public static Dictionary<string, string> ChaptersOf(string project)
    {
        string folder = Path.Combine(Root, "src", project);
        Dictionary<string, string> chapters = new(StringComparer.Ordinal);
        foreach (string file in Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string chapter = Path.GetRelativePath(folder, Path.GetDirectoryName(file)!).Replace('\\', '/');
            if (Regex.IsMatch(chapter, "^(obj|bin)(/|$)", RegexOptions.ExplicitCapture, TimeSpan.FromMinutes(1)))
            {
                continue;
            }

            foreach (Match declared in Declaration().Matches(File.ReadAllText(file)))
            {
                chapters.TryAdd(declared.Groups["name"].Value, chapter);
            }
        }

        return chapters;
    }

    // A type at the outermost level: file-scoped namespaces leave it at the start of its line.
    [GeneratedRegex(@"^(?:(?:public|internal|sealed|abstract|static|partial|readonly|file) )*(?:class|struct|interface|enum|record(?: struct| class)?) (?<name>[A-Z]\w*)", RegexOptions.Multiline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Declaration();

    private static string Here([System.Runtime.CompilerServices.CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
