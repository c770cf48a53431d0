using System.Text;

namespace WheelDraft.Formats.Explaining;

/// <summary>Every explanation that is part of the program.</summary>
internal static class ExplanationBook
{
    private const string Folder = "Codes.";

    // What matters most first; what only the command line can get wrong last.
    private static readonly string[] Order = ["spacing", "rules", "programme", "wheel", "setting-out", "strips", "circuit", "cams", "cutting", "drawings", "against", "bench", "arguments"];

    /// <summary>The families.</summary>
    public static IReadOnlyList<ExplanationFamily> Families() => [.. Order.Select(f => ExplanationReader.Read(f, Text(f)))];

    /// <summary>All explanations, family by family.</summary>
    public static IReadOnlyList<Explanation> All() => [.. Families().SelectMany(f => f.Codes)];

    /// <summary>What a code means; null for one that is not known. Brackets round it and capitals do not matter.</summary>
    public static Explanation? Find(string code)
    {
        string bare = code.Trim().TrimStart('[').TrimEnd(']');
        return All().FirstOrDefault(e => string.Equals(e.Code, bare, StringComparison.OrdinalIgnoreCase));
    }

    private static string Text(string family)
    {
        using Stream stream = typeof(ExplanationBook).Assembly.GetManifestResourceStream(Folder + family + ".md") ?? throw new InvalidOperationException($"The texts of '{family}' are not in the program.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
