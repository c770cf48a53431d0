using System.Globalization;

namespace WheelDraft.Formats.Explaining;

/// <summary>Reads a family of explanations from its Markdown.</summary>
/// <remarks>A heading and a sentence for the family; then, for each code, a heading <c>## code: title</c>, paragraphs, the list of named lines and one fenced
/// example. A paragraph or list item is one line. What is not so is a fault of the text, found by the tests.</remarks>
internal sealed class ExplanationReader
{
    private readonly string _file;
    private readonly string[] _lines;
    private int _at;

    private ExplanationReader(string file, string text) => (_file, _lines) = (file, text.Split('\n'));

    /// <summary>The family of a text.</summary>
    /// <param name="file">Name of the file, without its end.</param>
    /// <param name="text">Its Markdown.</param>
    /// <exception cref="FormatException">The text is not laid out so; the message says where.</exception>
    public static ExplanationFamily Read(string file, string text) => new ExplanationReader(file, text).Family();

    private ExplanationFamily Family()
    {
        string title = After("# ");
        string words = string.Join(' ', Paragraphs());
        List<Explanation> codes = [];
        while (_at < _lines.Length)
        {
            codes.Add(One());
        }

        return new(_file, title, words, codes);
    }

    private Explanation One()
    {
        string[] heading = After("## ").Split(": ", 2);
        if (heading.Length != 2)
        {
            throw Wrong("a heading is '## code: title'");
        }

        List<string> meaning = Paragraphs();
        Dictionary<string, string> notes = Notes();
        ExplanationExample example = Example();
        SkipBlank();
        return meaning.Count == 0
            ? throw Wrong($"'{heading[0]}' has no words of its own")
            : new(heading[0], heading[1], meaning, new(Need(notes, "Why"), Need(notes, "Source"), Need(notes, "Cure"), Listed(notes, "Keys"), Listed(notes, "See"), notes.GetValueOrDefault("Picture")), example);
    }

    private List<string> Paragraphs()
    {
        List<string> paragraphs = [];
        SkipBlank();
        while (_at < _lines.Length && _lines[_at].Length > 0 && !_lines[_at].StartsWith("- ", StringComparison.Ordinal) && _lines[_at][0] != '#' && !_lines[_at].StartsWith("```", StringComparison.Ordinal))
        {
            paragraphs.Add(_lines[_at++]);
            SkipBlank();
        }

        return paragraphs;
    }

    private Dictionary<string, string> Notes()
    {
        Dictionary<string, string> notes = new(StringComparer.Ordinal);
        while (_at < _lines.Length && _lines[_at].StartsWith("- ", StringComparison.Ordinal))
        {
            string[] note = _lines[_at++][2..].Split(": ", 2);
            if (note.Length != 2 || !notes.TryAdd(note[0], note[1]))
            {
                throw Wrong("a list item is '- Name: words', each name once");
            }
        }

        return notes;
    }

    private ExplanationExample Example()
    {
        SkipBlank();
        if (_at >= _lines.Length || !_lines[_at].StartsWith("```", StringComparison.Ordinal))
        {
            throw Wrong("an example in a fence ends every explanation");
        }

        string language = _lines[_at++][3..];
        int from = _at;
        while (_at < _lines.Length && _lines[_at] is not "```")
        {
            _at++;
        }

        return new(language, _lines[from..Math.Min(_at++, _lines.Length)]);
    }

    private void SkipBlank()
    {
        while (_at < _lines.Length && _lines[_at].Length == 0)
        {
            _at++;
        }
    }

    private string After(string mark) => _at < _lines.Length && _lines[_at].StartsWith(mark, StringComparison.Ordinal) ? _lines[_at++][mark.Length..] : throw Wrong($"'{mark}' is missing");

    private string Need(Dictionary<string, string> notes, string name) => notes.GetValueOrDefault(name) ?? throw Wrong($"'{name}' is missing above");

    private static IReadOnlyList<string> Listed(Dictionary<string, string> notes, string name) =>
        notes.GetValueOrDefault(name) is string list ? [.. list.Split(", ").Select(l => l.Trim('`'))] : [];

    private FormatException Wrong(string what) => new(string.Create(CultureInfo.InvariantCulture, $"{_file}.md, line {_at + 1}: {what}."));
}
