using System.Text;

namespace WheelDraft.Engineering;

/// <summary>Names as they stand in file names: letters a to z and digits in lower case, letters of Latin, Greek and Cyrillic transliterated
/// (<see cref="Transliteration"/>), every other run one hyphen.</summary>
internal static class FileSlugs
{
    /// <summary>The slugs of names of one kind, in their order, each once.</summary>
    /// <remarks>A slug that is empty or was given before gets -2, -3, … after it. Hyphens at the ends are left out.</remarks>
    public static IReadOnlyList<string> Of(IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        HashSet<string> given = new(StringComparer.Ordinal);
        return [.. names.Select(n => Unused(Plain(n), given))];
    }

    private static string Unused(string plain, HashSet<string> given)
    {
        string slug = plain;
        for (int again = 2; slug.Length == 0 || !given.Add(slug); again++)
        {
            string number = Wording.Number(again, 0);
            slug = plain.Length == 0 ? number : $"{plain}-{number}";
        }

        return slug;
    }

    private static string Plain(string name)
    {
        StringBuilder slug = new();
        foreach (char c in Transliteration.Of(name.ToLowerInvariant()))
        {
            if (char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c))
            {
                slug.Append(c);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        return slug.ToString().TrimEnd('-');
    }
}
