namespace WheelDraft.Formats.Parameters;

/// <summary>Lists in running text.</summary>
internal static class Words
{
    /// <summary>"a", "a or b", "a, b or c".</summary>
    public static string Or(IEnumerable<string> items) => Join(items, "or");

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string And(IEnumerable<string> items) => Join(items, "and");

    /// <summary>A text in double quotes.</summary>
    public static string Quoted(string text) => $"\"{text}\"";

    /// <summary>With its article.</summary>
    public static string A(string noun) => noun.Length > 0 && "aeiou".Contains(noun[0], StringComparison.OrdinalIgnoreCase) ? $"an {noun}" : $"a {noun}";

    /// <summary>With a capital first letter.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Join(IEnumerable<string> items, string last)
    {
        string[] all = [.. items];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} {last} {all[^1]}";
    }
}
