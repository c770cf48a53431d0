using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Gets from a text to a clean syntax tree, reporting each statement that is not TOML once and going on without it.</summary>
internal sealed class SyntaxPass(string text, DiagnosticList diagnostics)
{
    /// <summary>Faulty statements after which no more are looked for: such a text is no parameter file.</summary>
    private const int MostFaults = 50;

    private readonly string[] _lines = text.Split('\n');

    /// <summary>Names of keys and tables that stand in statements that could not be read, so that they are not reported as missing as well.</summary>
    public HashSet<string> Unread { get; } = new(StringComparer.Ordinal);

    /// <summary>The tree of all statements that could be read; null when it cannot be built.</summary>
    public DocumentSyntax? Parse()
    {
        IReadOnlyList<Statement>? statements = null;
        for (int fault = 0; fault < MostFaults; fault++)
        {
            if (!TryParse(out DocumentSyntax? document, out (TextPlace? Place, string Message) found))
            {
                statements ??= new StatementScanner(_lines).Scan();
                if (!Report(statements, found.Place ?? Nesting.Deepest(_lines), found.Message) || found.Place is null)
                {
                    return null;
                }

                continue;
            }

            return document;
        }

        return null;
    }

    private bool TryParse(out DocumentSyntax? document, out (TextPlace? Place, string Message) fault)
    {
        fault = default;
        document = null;
        try
        {
            DocumentSyntax parsed = SyntaxParser.Parse(string.Join('\n', _lines), "", validate: false);
            if (!parsed.HasErrors)
            {
                document = parsed;
                return true;
            }

            DiagnosticMessage first = parsed.Diagnostics.OrderBy(d => d.Span.Start.Line).ThenBy(d => d.Span.Start.Column).First();
            fault = (TomlTree.PlaceOf(first.Span.Start), first.Message);
        }
        catch (ArgumentOutOfRangeException)
        {
            // The parser stumbles over a backslash in a text right before the end of the file.
            fault = (EndOfText, "Invalid End-Of-File found on string");
        }
        catch (TomlException deep)
        {
            // The parser does not say where, and there is no going on from here.
            fault = (null, deep.Message);
        }

        return false;
    }

    private TextPlace EndOfText
    {
        get
        {
            int last = Math.Max(0, Array.FindLastIndex(_lines, l => l.Length > 0));
            return new TextPlace(last + 1, Math.Max(1, _lines[last].Length));
        }
    }

    /// <summary>Reports a fault and blanks what belongs to it; false when nothing could be blanked.</summary>
    private bool Report(IReadOnlyList<Statement> statements, TextPlace place, string message)
    {
        int line = Math.Min(place.Line - 1, _lines.Length - 1);
        int index = IndexAt(statements, line);
        if (index < 0)
        {
            diagnostics.Add(place, SyntaxWords.Of(message));
            return false;
        }

        // A fault at the head of a statement comes from the one before when that was left open.
        if (index > 0 && statements[index - 1].OpenAt is not null && !IsBlank(statements[index - 1]))
        {
            index--;
        }

        Statement statement = statements[index];
        if (IsBlank(statement))
        {
            diagnostics.Add(place, SyntaxWords.Of(message));
            return false;
        }

        if (statement.OpenAt is { } open)
        {
            diagnostics.Add(new TextPlace(open.Line + 1, open.Column + 1), $"this {open.Bracket} is never closed", $"end it with {(open.Bracket == '[' ? ']' : '}')}");
        }
        else
        {
            diagnostics.Add(place, SyntaxWords.Of(message));
        }

        Blank(statements, index);
        return true;
    }

    private static int IndexAt(IReadOnlyList<Statement> statements, int line)
    {
        for (int i = statements.Count - 1; i >= 0; i--)
        {
            if (statements[i].FirstLine <= line)
            {
                return i;
            }
        }

        return -1;
    }

    private bool IsBlank(Statement statement) => Enumerable.Range(statement.FirstLine, statement.LastLine - statement.FirstLine + 1).All(i => _lines[i].Length == 0);

    /// <summary>Takes a statement out; with a header everything under it, which would otherwise fall to the table before.</summary>
    private void Blank(IReadOnlyList<Statement> statements, int index)
    {
        int last = index;
        while (statements[index].IsHeader && last + 1 < statements.Count && !statements[last + 1].IsHeader)
        {
            last++;
        }

        for (int i = index; i <= last; i++)
        {
            Unread.Add(statements[i].Name);
            for (int line = statements[i].FirstLine; line <= statements[i].LastLine; line++)
            {
                _lines[line] = "";
            }
        }
    }
}
