using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Prose;

/// <summary>A part of a page and the name by which a link finds it.</summary>
/// <param name="Words">Its heading.</param>
/// <param name="Id">Small letters, digits and hyphens, as readers of Markdown make them from headings: unique on the page.</param>
internal readonly record struct ProseAnchor(string Words, string Id)
{
    /// <summary>The parts of a page, those of level 2, in order; the list of contents is none.</summary>
    public static IEnumerable<ProseAnchor> Of(ProsePage page)
    {
        Dictionary<string, int> seen = new(StringComparer.Ordinal);
        for (int i = 0; i < page.Blocks.Count; i++)
        {
            if (page.Blocks[i] is not ProseHeading heading || page.Blocks.ElementAtOrDefault(i + 1) is ProseContents)
            {
                continue;
            }

            string id = IdOf(heading.Words);
            int before = seen.GetValueOrDefault(id);
            seen[id] = before + 1;
            if (heading.Level == 2)
            {
                yield return new(heading.Words, before == 0 ? id : $"{id}-{Wording.Number(before, 0)}");
            }
        }
    }

    private static string IdOf(string words)
    {
        StringBuilder id = new();
        foreach (char c in words.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(c) || c is '-' or '_')
            {
                id.Append(c);
            }
            else if (c == ' ')
            {
                id.Append('-');
            }
        }

        return id.ToString();
    }
}
