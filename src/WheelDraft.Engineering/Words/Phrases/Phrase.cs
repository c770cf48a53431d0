using System.Globalization;
using System.Text;

namespace WheelDraft.Engineering;

/// <summary>A fixed text with places for what is set in: <c>{1} of {2}</c>. A text that begins or ends with a blank or a comma has a place there too.</summary>
internal sealed class Phrase
{
    private readonly IReadOnlyList<string> _chunks;

    private Phrase(string text, IReadOnlyList<string> chunks) => (Text, _chunks) = (text, chunks);

    /// <summary>The text with {1}, {2}, … as it stands in the table.</summary>
    public string Text { get; }

    /// <summary>Whether another text stands before it, which is the first thing set in.</summary>
    public bool IsJoinedBefore { get; private init; }

    /// <summary>Whether another text stands after it, which is the last thing set in.</summary>
    public bool IsJoinedAfter { get; private init; }

    /// <summary>How many letters are fixed: the more, the surer a text that fits it is meant.</summary>
    public int Letters => _chunks.Sum(c => c.Count(char.IsLetter));

    /// <summary>How many things are set in.</summary>
    public int Places => _chunks.Count - 1;

    /// <summary>Whether it begins with words of its own.</summary>
    public bool BeginsFixed => _chunks[0].Length > 0;

    /// <summary>How many letters of whole fixed words are among some words.</summary>
    public int LettersAmong(IReadOnlySet<string> words) => _chunks.SelectMany(WholeWords).Where(words.Contains).Sum(w => w.Length);

    /// <summary>The longest fixed word that stands whole, between characters that are no letters; empty if none does.</summary>
    public string KeyWord => _chunks.SelectMany(WholeWords).OrderByDescending(w => w.Length).ThenBy(w => w, StringComparer.Ordinal).FirstOrDefault("");

    /// <summary>Reads a text of the table. One that begins or ends with a blank or a comma is joined to another text there, or stands by itself without the blank.</summary>
    public static IEnumerable<Phrase> Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        bool before = text.Length > 0 && text[0] is ' ' or ',' or ';';
        bool after = text.Length > 0 && text[^1] == ' ';
        yield return new(text, Chunks(text.Trim(' ')));
        if (before || after)
        {
            yield return new(text, [.. before ? [""] : (string[])[], .. Chunks(text), .. after ? [""] : (string[])[]]) { IsJoinedBefore = before, IsJoinedAfter = after };
        }
    }

    private static List<string> Chunks(string text)
    {
        List<string> chunks = [];
        StringBuilder chunk = new();
        for (int i = 0; i < text.Length; i++)
        {
            int end = PlaceEnd(text, i);
            if (end > 0)
            {
                chunks.Add(chunk.ToString());
                chunk.Clear();
                i = end - 1;
                continue;
            }

            chunk.Append(text[i]);
        }

        chunks.Add(chunk.ToString());
        return chunks;
    }

    /// <summary>What is set in at each place if a text is this phrase: the shortest way from the left, and that from the right where it is another; nothing if it is not.
    /// What is set in may be nothing.</summary>
    public IEnumerable<IReadOnlyList<string>> Matches(string text)
    {
        if (Places == 0)
        {
            return string.Equals(text, _chunks[0], StringComparison.Ordinal) ? [[]] : [];
        }

        if (!text.StartsWith(_chunks[0], StringComparison.Ordinal) || !text.EndsWith(_chunks[^1], StringComparison.Ordinal) || text.Length < _chunks.Sum(c => c.Length))
        {
            return [];
        }

        int[]? left = FromLeft(text);
        if (left is null)
        {
            return [];
        }

        int[] right = FromRight(text);
        return left.SequenceEqual(right) ? [Between(text, left)] : [Between(text, left), Between(text, right)];
    }

    // Where each chunk begins, as far to the left as it goes.
    private int[]? FromLeft(string text)
    {
        int[] starts = new int[_chunks.Count];
        int at = _chunks[0].Length;
        int last = text.Length - _chunks[^1].Length;
        for (int i = 1; i < Places; i++)
        {
            starts[i] = at > last ? -1 : text.IndexOf(_chunks[i], at, last - at, StringComparison.Ordinal);
            if (starts[i] < 0)
            {
                return null;
            }

            at = starts[i] + _chunks[i].Length;
        }

        starts[^1] = last;
        return last < at ? null : starts;
    }

    // As far to the right; there is a way, for there is one from the left.
    private int[] FromRight(string text)
    {
        int[] starts = new int[_chunks.Count];
        int end = starts[^1] = text.Length - _chunks[^1].Length;
        for (int i = Places - 1; i > 0; i--)
        {
            end = starts[i] = text.AsSpan(0, end).LastIndexOf(_chunks[i].AsSpan(), StringComparison.Ordinal);
        }

        return starts;
    }

    private string[] Between(string text, int[] starts) =>
        [.. Enumerable.Range(0, Places).Select(i => text[(starts[i] + _chunks[i].Length)..starts[i + 1]])];

    /// <summary>A text of the table with its places filled; a place that the phrase has and the text lacks is left out, one beyond them stays as it is.</summary>
    /// <param name="text">The text in another language, with {1}, {2}, … in any order.</param>
    /// <param name="set">What is set in.</param>
    public static string Fill(string text, IReadOnlyList<string> set)
    {
        StringBuilder filled = new();
        for (int i = 0; i < text.Length; i++)
        {
            int end = PlaceEnd(text, i);
            if (end > 0 && int.Parse(text.AsSpan(i + 1, end - i - 2), CultureInfo.InvariantCulture) is int place && place >= 1 && place <= set.Count)
            {
                filled.Append(set[place - 1]);
                i = end - 1;
                continue;
            }

            filled.Append(text[i]);
        }

        return filled.ToString();
    }

    /// <summary>The numbers of the places of a text, in ascending order.</summary>
    public static IReadOnlyList<int> PlacesOf(string text)
    {
        SortedSet<int> places = [];
        for (int i = 0; i < text.Length; i++)
        {
            int end = PlaceEnd(text, i);
            if (end > 0)
            {
                places.Add(int.Parse(text.AsSpan(i + 1, end - i - 2), CultureInfo.InvariantCulture));
            }
        }

        return [.. places];
    }

    /// <summary>One past the closing bracket of a place that begins here; 0 if none does.</summary>
    private static int PlaceEnd(string text, int at)
    {
        if (text[at] != '{')
        {
            return 0;
        }

        int end = at + 1;
        while (end < text.Length && char.IsAsciiDigit(text[end]) && end < at + 4)
        {
            end++;
        }

        return end > at + 1 && end < text.Length && text[end] == '}' ? end + 1 : 0;
    }

    // A word at either end of a chunk may be the half of one, where a place is beside it: only at a text's own ends does it surely stand whole.
    private IEnumerable<string> WholeWords(string chunk, int index)
    {
        int start = -1;
        for (int i = 0; i <= chunk.Length; i++)
        {
            if (i < chunk.Length && char.IsLetter(chunk[i]))
            {
                start = start < 0 ? i : start;
                continue;
            }

            bool cutLeft = start == 0 && index > 0;
            bool cutRight = i == chunk.Length && index < _chunks.Count - 1;
            if (start >= 0 && !cutLeft && !cutRight)
            {
                yield return chunk[start..i];
            }

            start = -1;
        }
    }
}
