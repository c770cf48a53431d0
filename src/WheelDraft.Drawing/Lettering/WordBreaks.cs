using System.Globalization;
using System.Text;

namespace WheelDraft.Drawing;

/// <summary>Where a word that is too long for its line is broken.</summary>
/// <remarks>Best at a soft hyphen, after a hyphen or stroke, and between two characters of a script without blanks; else before a consonant that a vowel follows,
/// as Latin, Greek and Cyrillic words are spelled; else anywhere, two letters at least on either side. Where letters are parted a hyphen is written; between digits none,
/// which would be read as a minus. No dictionary is asked: names are of any language.</remarks>
internal static class WordBreaks
{
    private const string Vowels = "aeiouyæøœαεηιουωаеиоуыэюяієїё";

    // Of the longest part that fits, what a better place may cost.
    private const double LeastShareAtMark = 0.4;
    private const double LeastShareBySound = 0.55;

    /// <summary>The word in parts that fit, hyphens written; soft hyphens elsewhere are left out.</summary>
    /// <param name="word">Without blanks.</param>
    /// <param name="fits">Whether a part fits; a part of one character stands even where it does not.</param>
    public static IReadOnlyList<string> Parts(string word, Func<string, bool> fits)
    {
        ArgumentNullException.ThrowIfNull(fits);
        List<string> parts = [];
        string rest = word;
        while (!fits(Plain(rest)))
        {
            (string head, string tail) = Cut(rest, fits);
            if (tail.Length == 0)
            {
                break;
            }

            parts.Add(head);
            rest = tail;
        }

        return [.. parts, Plain(rest)];
    }

    private enum BreakKind
    {
        // By how good they are.
        Anywhere,
        BySound,
        AtMark,
    }

    private readonly record struct WordBreak(int At, BreakKind How, bool Hyphen);

    private static (string Head, string Tail) Cut(string word, Func<string, bool> fits)
    {
        string[] letters = [.. Alphabet.Letters(word, withHidden: true).Select(l => l.Text)];
        List<WordBreak> places = [];
        for (int i = 1; i < letters.Length; i++)
        {
            WordBreak place = PlaceAt(letters, i);
            if (!fits(Head(letters, place)))
            {
                break;
            }

            places.Add(place);
        }

        int longest = places.Count > 0 ? places.Max(p => p.At) : 0;
        WordBreak best = places.LastOrDefault(
            p => p.How == BreakKind.AtMark && p.At >= longest * LeastShareAtMark,
            places.LastOrDefault(p => p.How == BreakKind.BySound && p.At >= longest * LeastShareBySound, places.LastOrDefault(p => IsFair(letters, p), places.LastOrDefault(new WordBreak(1, BreakKind.Anywhere, false)))));
        return (Head(letters, best), string.Concat(letters[best.At..]));
    }

    private static WordBreak PlaceAt(string[] letters, int at)
    {
        string before = letters[at - 1];
        string after = letters[at];
        if (before is "\u00AD")
        {
            return new(at, BreakKind.AtMark, true);
        }

        if (before is "-" or "/" or "‐" or "–" or "_" or "+" or "." or "," or ";" or ":" || (IsWordLike(before) && IsWordLike(after)))
        {
            return new(at, BreakKind.AtMark, false);
        }

        bool parted = IsLetter(before) && IsLetter(after);
        bool sound = parted && at >= 2 && at + 1 < letters.Length && !IsVowel(after) && IsVowel(letters[at + 1]) && letters[..at].Any(IsVowel);
        return new(at, sound ? BreakKind.BySound : BreakKind.Anywhere, parted);
    }

    private static bool IsFair(string[] letters, WordBreak place) => place.At >= 2 && letters.Length - place.At >= 2;

    private static string Head(string[] letters, WordBreak place) => Plain(string.Concat(letters[..place.At])) + (place.Hyphen ? "-" : "");

    private static string Plain(string part) => part.Replace("\u00AD", "", StringComparison.Ordinal);

    private static bool IsLetter(string letter) => Rune.IsLetter(Rune.GetRuneAt(letter, 0));

    // Ideographs, kana, hangul and letters of scripts without blanks are broken between any two.
    private static bool IsWordLike(string letter) => Rune.GetRuneAt(letter, 0) is { Value: >= 0x0E00 } rune && Rune.GetUnicodeCategory(rune) == UnicodeCategory.OtherLetter;

    private static bool IsVowel(string letter)
    {
        int bare = Rune.ToLowerInvariant(Rune.GetRuneAt(letter, 0)).Value;
        while (AlphabetMarks.Composed(bare) is (int of, string mark) && mark is not "same")
        {
            bare = of;
        }

        return bare == 'ı' || (bare <= char.MaxValue && Vowels.Contains((char)bare, StringComparison.Ordinal));
    }
}
