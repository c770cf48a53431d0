using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Changes texts of a parameter file where they stand; comments, order and layout stay as they are.</summary>
internal static class ValueEdit
{
    /// <summary>The text with other words between the quotes of some keys' values.</summary>
    /// <param name="text">The file.</param>
    /// <param name="values">Where each key stands, and what its value is to be: no quotes, no backslashes.</param>
    /// <returns>Null when a value is not a text on the line of its key.</returns>
    public static string? Replaced(string text, IEnumerable<(TextPlace Key, string Value)> values)
    {
        // From the end, so that places before a change stay right.
        foreach ((TextPlace key, string value) in values.OrderByDescending(v => v.Key.Line).ThenByDescending(v => v.Key.Column))
        {
            if (Between(text, key) is not (int from, int to))
            {
                return null;
            }

            text = string.Concat(text.AsSpan(0, from), value, text.AsSpan(to));
        }

        return text;
    }

    /// <summary>From after the opening quote to the closing one.</summary>
    private static (int From, int To)? Between(string text, TextPlace key)
    {
        int line = 0;
        for (int i = 1; i < key.Line; i++)
        {
            int end = text.IndexOf('\n', line);
            if (end < 0)
            {
                return null;
            }

            line = end + 1;
        }

        int lineEnd = text.IndexOf('\n', line) is >= 0 and int found ? found : text.Length;
        int equals = text.IndexOf('=', Math.Min(line + key.Column - 1, lineEnd), lineEnd - Math.Min(line + key.Column - 1, lineEnd));
        if (equals < 0)
        {
            return null;
        }

        int open = equals + 1;
        while (open < lineEnd && text[open] is ' ' or '\t')
        {
            open++;
        }

        if (open >= lineEnd || text[open] is not ('"' or '\''))
        {
            return null;
        }

        int close = text.IndexOf(text[open], open + 1);
        return close < 0 || close >= lineEnd || text.AsSpan(open, close - open).Contains('\\') ? null : (open + 1, close);
    }
}
