namespace WheelDraft.Fuzz;

/// <summary>What a piece of a parameter file is.</summary>
internal enum TomlPiece
{
    /// <summary>Blanks, ends of lines, comments.</summary>
    Blank,

    /// <summary>A text in quotes of any kind, quotes included.</summary>
    Text,

    /// <summary>A bare key, a number, a word.</summary>
    Bare,

    /// <summary>A mark: = [ ] { } , .</summary>
    Mark,
}

/// <summary>Takes any text apart like a parameter file, and never fails.</summary>
internal static class TomlTokens
{
    /// <summary>The pieces; set together they are the text.</summary>
    public static List<(TomlPiece Kind, string Text)> Of(string text)
    {
        List<(TomlPiece, string)> pieces = [];
        for (int at = 0; at < text.Length;)
        {
            TomlPiece kind = KindOf(text[at]);
            int end = kind switch
            {
                TomlPiece.Blank => text[at] == '#' ? EndOfLine(text, at) : at + 1,
                TomlPiece.Text => EndOfText(text, at),
                TomlPiece.Mark => at + 1,
                _ => EndOfBare(text, at),
            };
            pieces.Add((kind, text[at..end]));
            at = end;
        }

        return pieces;
    }

    private static TomlPiece KindOf(char c) => c switch
    {
        ' ' or '\t' or '\r' or '\n' or '#' => TomlPiece.Blank,
        '"' or '\'' => TomlPiece.Text,
        '=' or '[' or ']' or '{' or '}' or ',' => TomlPiece.Mark,
        _ => TomlPiece.Bare,
    };

    private static int EndOfLine(string text, int at) => text.IndexOf('\n', at) is >= 0 and int end ? end : text.Length;

    private static int EndOfText(string text, int at)
    {
        for (int i = at + 1; i < text.Length; i++)
        {
            if (text[i] == '\\' && text[at] == '"')
            {
                i++;
            }
            else if (text[i] == text[at])
            {
                return i + 1;
            }
            else if (text[i] == '\n')
            {
                return i;
            }
        }

        return text.Length;
    }

    private static int EndOfBare(string text, int at)
    {
        int end = at + 1;
        while (end < text.Length && KindOf(text[end]) == TomlPiece.Bare)
        {
            end++;
        }

        return end;
    }
}
