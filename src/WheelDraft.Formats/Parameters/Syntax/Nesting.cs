using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Finds where brackets are nested deepest, for a text that the parser gives up on.</summary>
internal static class Nesting
{
    /// <summary>Place of the bracket that opens the deepest level, texts and comments left out; 1:1 without brackets.</summary>
    public static TextPlace Deepest(IReadOnlyList<string> lines)
    {
        TextPlace place = new(1, 1);
        (int depth, int most) = (0, 0);
        for (int line = 0; line < lines.Count; line++)
        {
            char mark = '\0';
            for (int column = 0; column < lines[line].Length; column++)
            {
                char c = lines[line][column];
                if (mark != '\0' || c is '"' or '\'')
                {
                    mark = mark == '\0' ? c : c == mark ? '\0' : mark;
                }
                else if (c == '#')
                {
                    break;
                }
                else
                {
                    depth += c is '[' or '{' ? 1 : c is ']' or '}' ? -1 : 0;
                    if (depth > most)
                    {
                        (most, place) = (depth, new TextPlace(line + 1, column + 1));
                    }
                }
            }
        }

        return place;
    }
}
