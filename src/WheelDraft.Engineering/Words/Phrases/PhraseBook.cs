using System.Collections.Concurrent;

namespace WheelDraft.Engineering;

/// <summary>Finished English texts in another language, by a table of phrases; what the table lacks stays in English and is remembered.</summary>
/// <remarks>
/// The program thinks and words everything in English; a person who reads another language reads it everywhere. Texts are changed at the last moment, where they
/// leave for that person, as lengths are taken into inches (<see cref="LengthsInText"/>), so that no stage needs to know who reads. A text is held against the
/// phrases of the table; what is set into a phrase is looked up in turn. Of several phrases that fit, the one that leaves the least in English counts, then the one
/// that takes least of the person's own names for its own words, then the one with most fixed letters. A text of which more than a quarter would stay English stays whole: half a sentence in each language reads worse than either.
/// The answer depends on the text alone. Figures, units, file names, what stands in quotes and the person's own names stay as they are.
/// </remarks>
internal sealed class PhraseBook
{
    // Of phrases that fit a text, those with most fixed letters are tried; beyond these few only chance fits.
    private const int MostTried = 6;

    // A quarter.
    private const double MostEnglish = 0.25;

    // Letters of a label that may be read word by word.
    private const int MostLabel = 24;

    private readonly Dictionary<string, string> _words;
    private readonly ILookup<string, Phrase> _byKey;
    private readonly HashSet<string> _english;
    private readonly HashSet<string> _own;
    private readonly HashSet<string> _ownWords;
    private readonly ConcurrentDictionary<string, Reading> _read = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, bool> _missing = new(StringComparer.Ordinal);

    /// <summary>A table in use.</summary>
    /// <param name="language">Its language, as BCP 47 has it: "de".</param>
    /// <param name="english">Every phrase that the program may say.</param>
    /// <param name="words">Phrases in that language, by the English ones; phrases beyond the program's own are taken as well.</param>
    /// <param name="own">The person's own texts, which are never changed.</param>
    public PhraseBook(string language, IEnumerable<string> english, IReadOnlyDictionary<string, string> words, IEnumerable<string> own)
    {
        ArgumentNullException.ThrowIfNull(words);
        Language = language;
        _words = words.Where(w => w.Value.Length > 0).ToDictionary(StringComparer.Ordinal);
        _english = new(english.Concat(words.Keys), StringComparer.Ordinal);
        foreach (string joined in _english.Where(p => p.Trim(' ').Length < p.Length).ToArray())
        {
            // By itself it stands without its blanks.
            _english.Add(joined.Trim(' '));
            if (_words.TryGetValue(joined, out string? other))
            {
                _words.TryAdd(joined.Trim(' '), other.Trim(' '));
            }
        }

        _own = new(own, StringComparer.Ordinal);
        _ownWords = new(_own.SelectMany(FreeText.WordsOf), StringComparer.Ordinal);
        _byKey = _english.Order(StringComparer.Ordinal).SelectMany(Phrase.Of).Where(p => p.Places > 0).ToLookup(p => p.KeyWord, StringComparer.Ordinal);
    }

    /// <summary>The language, as BCP 47 has it.</summary>
    public string Language { get; }

    /// <summary>What was said in English for want of words, each once, in ordinal order: phrases of the table, and texts that are none.</summary>
    public IReadOnlyList<string> Missing => [.. _missing.Keys.Order(StringComparer.Ordinal)];

    /// <summary>A finished text in the language.</summary>
    public string Say(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Reading read = Read(text);
        foreach (string missing in read.Missing)
        {
            _missing.TryAdd(missing, true);
        }

        return read.Words;
    }

    /// <summary>A text as it is read.</summary>
    /// <param name="Words">In the language, as far as there are words.</param>
    /// <param name="English">Letters that stayed English.</param>
    /// <param name="Taken">Letters of phrases that may be the person's own names.</param>
    /// <param name="Fixed">Letters of phrases that were found.</param>
    /// <param name="Missing">What there are no words for.</param>
    private sealed record Reading(string Words, int English, int Taken, int Fixed, IReadOnlyList<string> Missing)
    {
        public static Reading Free(string text) => new(text, 0, 0, 0, []);
    }

    // Remembered, for the same words stand in many texts; what a text holds is shorter than the text, so that this ends.
    private Reading Read(string text) => _read.GetOrAdd(text, Worked);

    private Reading Worked(string text)
    {
        string trimmed = text.Trim(' ');
        if (trimmed.Length < text.Length)
        {
            int before = text.Length - text.TrimStart(' ').Length;
            Reading inner = trimmed.Length == 0 ? Reading.Free("") : Read(trimmed);
            return inner with { Words = text[..before] + inner.Words + text[(before + trimmed.Length)..] };
        }

        int letters = FreeText.Letters(text, _own);
        if (letters == 0 || FreeText.Before(text, _own) == text.Length)
        {
            return Reading.Free(text);
        }

        if (Exact(text) is Reading exact)
        {
            return exact;
        }

        if (_ownWords.Contains(text))
        {
            return Reading.Free(text);
        }

        Reading stays = new(text, letters, 0, 0, [text]);
        Reading best = Best([stays, .. Phrased(text)]);
        best = best is { English: 0, Taken: 0 } ? best : Best([best, .. Parted(text)]);
        return best.English > MostEnglish * letters ? stays with { Missing = best.Missing } : best;
    }

    private static Reading Best(IEnumerable<Reading> readings) =>
        readings.Aggregate((a, b) => (b.English, b.Taken, -b.Fixed).CompareTo((a.English, a.Taken, -a.Fixed)) < 0 ? b : a);

    private Reading? Exact(string text)
    {
        foreach ((string asked, Func<string, string> back) in new (string, Func<string, string>)[] { (text, w => w), (FirstLetter.Other(text), w => AsBegun(w, text)) })
        {
            if (_words.TryGetValue(asked, out string? words))
            {
                return new(back(words), 0, _ownWords.Contains(text) ? text.Length : 0, text.Count(char.IsLetter), []);
            }

            if (_english.Contains(asked))
            {
                return new(text, text.Count(char.IsLetter), 0, text.Count(char.IsLetter), [asked]);
            }
        }

        return null;
    }

    private IEnumerable<Reading> Phrased(string text)
    {
        string other = FirstLetter.Other(text);
        return FreeText.WordsOf(text).Concat(FreeText.WordsOf(other)).Append("").Distinct(StringComparer.Ordinal)
            .SelectMany(w => _byKey[w])
            .SelectMany(p => p.Matches(text).Select(m => (Phrase: p, Set: m, IsOther: false)).Concat(!p.BeginsFixed || string.Equals(other, text, StringComparison.Ordinal) ? [] : p.Matches(other).Select(m => (Phrase: p, Set: m, IsOther: true))))
            .OrderByDescending(m => m.Phrase.Letters).ThenBy(m => m.Phrase.Text, StringComparer.Ordinal)
            .Take(MostTried)
            // What is joined to a text belongs to all of it, not to what is set into its last place: the first of equals counts.
            .OrderBy(m => m.Phrase.IsJoinedBefore || m.Phrase.IsJoinedAfter ? 0 : 1)
            .Select(m => (Reading: Filled(m.Phrase, m.Set), m.IsOther))
            .Select(m => m.IsOther ? m.Reading with { Words = AsBegun(m.Reading.Words, text) } : m.Reading);
    }

    // Words begin with a capital where the text does, and with a small letter where it does: not in a language whose nouns keep theirs.
    private string AsBegun(string words, string text) =>
        char.IsUpper(text[0]) != (words.Length > 0 && char.IsUpper(words[0])) && (char.IsUpper(text[0]) || !Language.StartsWith("de", StringComparison.Ordinal)) ? FirstLetter.Other(words) : words;

    private Reading Filled(Phrase phrase, IReadOnlyList<string> set)
    {
        Reading[] inner = [.. set.Select(Read)];
        bool has = _words.TryGetValue(phrase.Text, out string? words);
        string[] said = [.. inner.Select(i => i.Words)];
        return new(
            Joined(phrase, has ? words! : phrase.Text, said),
            inner.Sum(i => i.English) + (has ? 0 : phrase.Letters),
            inner.Sum(i => i.Taken) + phrase.LettersAmong(_own),
            inner.Sum(i => i.Fixed) + phrase.Letters,
            [.. inner.SelectMany(i => i.Missing), .. has ? [] : (string[])[phrase.Text]]);
    }

    // What stands before or after a joined phrase is no place of its words.
    private static string Joined(Phrase phrase, string words, string[] set)
    {
        int before = phrase.IsJoinedBefore ? 1 : 0;
        int after = phrase.IsJoinedAfter ? 1 : 0;
        string middle = Phrase.Fill(before + after == 0 ? words.Trim(' ') : words, set[before..^after]);
        return (before > 0 ? set[0] : "") + middle + (after > 0 ? set[^1] : "");
    }

    // Without its last stop; in bold or with a part in bold; without what needs no words at both ends; as sentences, lists, what stands in brackets or after a colon.
    private IEnumerable<Reading> Parted(string text)
    {
        if (text.Length > 1 && text[^1] is '.' or ':' or '?')
        {
            yield return Within(text, 0, 1);
        }

        if (text.StartsWith("**", StringComparison.Ordinal) && text.IndexOf("**", 2, StringComparison.Ordinal) is int bold && bold > 2)
        {
            yield return bold + 2 == text.Length ? Within(text, 2, 2) : Both(Within(text[..(bold + 2)], 2, 2), "", Read(text[(bold + 2)..]));
        }

        int before = FreeText.Before(text, _own);
        int after = FreeText.After(text[before..], _own);
        if (before + after > 0 && before + after < text.Length)
        {
            yield return Within(text, before, after);
        }

        if (before > 0 && before < text.Length && after > 0)
        {
            yield return Within(text, before, 0);
            yield return Within(text, 0, after);
        }

        foreach (string sign in FreeText.Signs)
        {
            if (text.IndexOf(sign, StringComparison.Ordinal) is int at && at > 0 && at + sign.Length < text.Length)
            {
                int stop = sign[0] == '.' ? 1 : 0;
                yield return Both(Read(text[..(at + stop)]), sign[stop..], Read(text[(at + sign.Length)..]));
            }
        }

        // A label of two or three words, each of which is known: a name and what it is.
        if (text.Length <= MostLabel && text.IndexOf(' ', StringComparison.Ordinal) is int blank && blank > 0)
        {
            yield return Both(Read(text[..blank]), " ", Read(text[(blank + 1)..]));
        }
    }

    private Reading Within(string text, int before, int after)
    {
        Reading inner = Read(text[before..^after]);
        return inner with { Words = text[..before] + inner.Words + text[^after..] };
    }

    private static Reading Both(Reading first, string between, Reading second) =>
        new(first.Words + between + second.Words, first.English + second.English, first.Taken + second.Taken, first.Fixed + second.Fixed, [.. first.Missing, .. second.Missing]);
}
