using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Parameters;

/// <summary>Characters that no text may hold, because nobody sees them, because they turn the direction of what follows, or because they are no characters:
/// two names that look alike are then one name, and a name on a drawing is the one in the file.</summary>
/// <remarks>Control characters; and of the Unicode Standard, from memory: the property Default_Ignorable_Code_Point (joiners, direction marks, embeddings and
/// isolates, fillers, variation selectors, tags), the separators of lines and paragraphs, marks of annotation, and noncharacters, which XML forbids.</remarks>
internal static class UnseenCharacters
{
    // First and last of each range, ascending.
    private static readonly (int First, int Last)[] Ranges =
    [
        (0x0000, 0x001F), (0x007F, 0x009F), (0x00AD, 0x00AD), (0x034F, 0x034F), (0x061C, 0x061C), (0x115F, 0x1160), (0x17B4, 0x17B5), (0x180B, 0x180F),
        (0x200B, 0x200F), (0x2028, 0x202E), (0x2060, 0x206F), (0x3164, 0x3164), (0xFDD0, 0xFDEF), (0xFE00, 0xFE0F), (0xFEFF, 0xFEFF), (0xFFA0, 0xFFA0),
        (0xFFF0, 0xFFFB), (0xFFFE, 0xFFFF), (0x1BCA0, 0x1BCA3), (0x1D173, 0x1D17A), (0xE0000, 0xE0FFF),
    ];

    /// <summary>The first of them in a text; null when there is none.</summary>
    public static Rune? FirstIn(string text)
    {
        foreach (Rune rune in text.EnumerateRunes())
        {
            if ((rune.Value & 0xFFFE) == 0xFFFE || Ranges.Any(r => rune.Value >= r.First && rune.Value <= r.Last))
            {
                return rune;
            }
        }

        return null;
    }

    /// <summary>Those of four digits as the inside of a character class of a regular expression; the others have no form there that every reader understands.</summary>
    public static string InClass { get; } = string.Concat(Ranges.Where(r => r.Last <= 0xFFFF).Select(r =>
        string.Create(CultureInfo.InvariantCulture, $"\\u{r.First:X4}{(r.First == r.Last ? "" : $"-\\u{r.Last:X4}")}")));
}
