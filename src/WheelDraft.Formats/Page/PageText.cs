using System.Text;

namespace WheelDraft.Formats.Page;

/// <summary>The page's own source files, embedded, and how a template is filled.</summary>
internal static class PageText
{
    /// <summary>A source file of this folder, lines ending in a line feed.</summary>
    /// <param name="name">Its file name.</param>
    /// <exception cref="ArgumentException">There is no such file.</exception>
    public static string Read(string name)
    {
        using Stream stream = typeof(PageText).Assembly.GetManifestResourceStream("Page." + name)
            ?? throw new ArgumentException($"The page has no source file '{name}'.", nameof(name));
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    /// <summary>A template with every <c>{{name}}</c> replaced; what is put in is not looked at again.</summary>
    /// <exception cref="KeyNotFoundException">The template names a part that is not given.</exception>
    public static string Fill(string template, IReadOnlyDictionary<string, string> parts)
    {
        StringBuilder filled = new(template.Length);
        int at = 0;
        while (template.IndexOf("{{", at, StringComparison.Ordinal) is int open && open >= 0)
        {
            int close = template.IndexOf("}}", open, StringComparison.Ordinal);
            filled.Append(template, at, open - at).Append(parts[template[(open + 2)..close]]);
            at = close + 2;
        }

        return filled.Append(template, at, template.Length - at).ToString();
    }
}
