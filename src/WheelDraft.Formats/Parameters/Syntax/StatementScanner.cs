namespace WheelDraft.Formats.Parameters;

/// <summary>Parts a document into statements without understanding it, so that a fault in one does not spread to the next.</summary>
/// <remarks>Only used after the parser has found a fault. A list that was never closed ends where a line looks like a new statement.</remarks>
internal sealed class StatementScanner(IReadOnlyList<string> lines)
{
    private readonly List<(int Line, int Column, char Bracket)> _open = [];
    private int _line;

    /// <summary>The statements in file order.</summary>
    public IReadOnlyList<Statement> Scan()
    {
        List<Statement> found = [];
        while (_line < lines.Count)
        {
            string text = lines[_line].Trim();
            if (text.Length == 0 || text[0] == '#')
            {
                _line++;
                continue;
            }

            found.Add(One(text));
        }

        return found;
    }

    private Statement One(string text)
    {
        int first = _line;
        bool header = IsHeader(text);
        _open.Clear();
        do
        {
            ScanLine();
            _line++;
        }
        while (!header && _open.Count > 0 && _line < lines.Count && !LooksNew(lines[_line].Trim()));
        (int, int, char)? open = _open.Count > 0 && !header ? _open[0] : null;
        return new Statement(first, Math.Min(_line, lines.Count) - 1, NameOf(text, header), header, open);
    }

    /// <summary>Whether a line inside open brackets cannot belong to them: a header, or a key outside any brace.</summary>
    private bool LooksNew(string text) =>
        (IsHeader(text) && text.Any(char.IsAsciiLetter) && !text.Contains('"', StringComparison.Ordinal))
        || (!_open.Exists(o => o.Bracket == '{') && KeyLength(text) > 0);

    private static bool IsHeader(string text) => text.StartsWith('[');

    /// <summary>Length of a bare key followed by "=", 0 when there is none.</summary>
    private static int KeyLength(string text)
    {
        int end = 0;
        while (end < text.Length && (char.IsAsciiLetterOrDigit(text[end]) || text[end] is '_' or '-' or '.'))
        {
            end++;
        }

        return end > 0 && text.AsSpan(end).TrimStart().StartsWith("=") ? end : 0;
    }

    private static string NameOf(string text, bool header)
    {
        if (header)
        {
            return text.TrimStart('[').Split(']', '#', '=')[0].Trim();
        }

        int key = KeyLength(text);
        return key > 0 ? text[..key] : text.Split('=', ' ')[0].Trim('"', '\'');
    }

    /// <summary>Follows brackets through the current line, over comments and texts; a text of several lines moves the current line on.</summary>
    private void ScanLine()
    {
        for (int at = 0; _line < lines.Count && at < lines[_line].Length; at++)
        {
            char c = lines[_line][at];
            if (c == '#')
            {
                return;
            }

            if (c is '"' or '\'')
            {
                at = SkipText(at, c);
            }
            else if (c is '[' or '{')
            {
                _open.Add((_line, at, c));
            }
            else if (c is ']' or '}' && _open.Count > 0)
            {
                _open.RemoveAt(_open.Count - 1);
            }
        }
    }

    /// <summary>The position of a text's closing mark, or the end of the line when it has none.</summary>
    private int SkipText(int from, char mark)
    {
        string line = lines[_line];
        string triple = new(mark, 3);
        if (string.CompareOrdinal(line, from, triple, 0, 3) == 0)
        {
            return SkipLongText(from + 3, triple);
        }

        int at = from + 1;
        while (at < line.Length && line[at] != mark)
        {
            at += line[at] == '\\' && mark == '"' ? 2 : 1;
        }

        return at;
    }

    private int SkipLongText(int from, string triple)
    {
        int start = _line;
        int at = lines[_line].IndexOf(triple, Math.Min(from, lines[_line].Length), StringComparison.Ordinal);
        while (at < 0 && _line + 1 < lines.Count)
        {
            _line++;
            at = lines[_line].IndexOf(triple, StringComparison.Ordinal);
        }

        if (at < 0)
        {
            _line = start;
            return lines[start].Length;
        }

        return at + 2;
    }
}
