using System.Globalization;
using System.Text;

namespace WheelDraft.Fuzz;

/// <summary>The folder of failing cases: a line in failures.log for each, the first few of a kind as files, with their words beside them.</summary>
internal sealed class Failures(string folder)
{
    // Enough of a kind to see what they share.
    private const int MostAlike = 3;

    private readonly string[] _known = [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "known.txt")).Where(l => l.Length > 0 && !l.StartsWith('#'))];

    /// <summary>The log.</summary>
    public static string LogOf(string folder) => Path.Combine(folder, "failures.log");

    /// <summary>Whether a kind of failure is listed as known.</summary>
    public bool IsKnown(string shape) => _known.Any(k => shape.StartsWith(k, StringComparison.Ordinal));

    /// <summary>How many cases of a kind lie in the folder.</summary>
    public int CountOf(ITarget target, string shape) =>
        Directory.Exists(FolderOf(target)) ? Directory.EnumerateFiles(FolderOf(target), Slug(shape) + "-*" + target.Ending).Count() : 0;

    /// <summary>Takes one in.</summary>
    public void Add(ITarget target, long number, (string Shape, string Words) failure, byte[] bytes)
    {
        Directory.CreateDirectory(FolderOf(target));
        string line = string.Create(CultureInfo.InvariantCulture, $"{target.Name}\t{number}\t{failure.Shape}\t{failure.Words.Split('\n')[0]}\n");
        File.AppendAllText(LogOf(folder), line);
        if (CountOf(target, failure.Shape) < MostAlike)
        {
            string path = Path.Combine(FolderOf(target), string.Create(CultureInfo.InvariantCulture, $"{Slug(failure.Shape)}-{number}"));
            File.WriteAllBytes(path + target.Ending, bytes);
            File.WriteAllText(path + ".words", failure.Words);
        }
    }

    private string FolderOf(ITarget target) => Path.Combine(folder, target.Name);

    private static string Slug(string shape)
    {
        StringBuilder slug = new();
        foreach (char c in shape)
        {
            slug.Append(char.IsAsciiLetterOrDigit(c) ? c : '-');
        }

        return slug.Length > 90 ? slug.ToString(0, 90) : slug.ToString();
    }
}
