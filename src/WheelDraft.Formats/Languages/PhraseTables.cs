using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Tomlyn.Syntax;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Formats.Languages;

/// <summary>A table read from a file.</summary>
/// <param name="Table">The table, or null where the file is wrong.</param>
/// <param name="Diagnostics">All that is wrong, with its place.</param>
internal sealed record PhraseTableResult(PhraseTable? Table, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>The tables that come with the program, and the reader of others.</summary>
internal static partial class PhraseTables
{
    /// <summary>The languages that come with the program, English aside.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["de", "es", "fr", "it", "nl", "pl"];

    /// <summary>The table of a language that comes with the program; null if there is none.</summary>
    public static PhraseTable? Shipped(string language) =>
        Languages.Contains(language, StringComparer.Ordinal) ? Read(Embedded.Text(language + ".toml")).Table : null;

    /// <summary>Reads a table from the bytes of a file.</summary>
    public static PhraseTableResult Read(ReadOnlySpan<byte> bytes)
    {
        DiagnosticList diagnostics = new();
        return FileText.Of(bytes, "a table of words", diagnostics) is string text ? Read(text) : new(null, diagnostics.InFileOrder());
    }

    /// <summary>Reads a table from a text.</summary>
    public static PhraseTableResult Read(string text)
    {
        DiagnosticList diagnostics = new();
        if (new SyntaxPass(text, diagnostics).Parse() is not DocumentSyntax document)
        {
            return new(null, diagnostics.InFileOrder());
        }

        TomlTable root = new TomlTree(diagnostics).Build(document);
        string language = Text(root, "language", diagnostics);
        string name = Text(root, "name", diagnostics);
        string review = Text(root, "review", diagnostics);
        Dictionary<string, string> words = Words(root, diagnostics);
        if (language.Length > 0 && !LanguageTag().IsMatch(language))
        {
            diagnostics.Add(root.Find("language")!.Place, $"language is \"{language}\"", "a language goes by its tag of BCP 47: \"de\", \"pt-BR\"");
        }
        else if (language.Length == 0 && diagnostics.Count == 0)
        {
            diagnostics.Add(new TextPlace(1, 1), "the table does not say its language", "add one, as BCP 47 names it, for those who have the drawings read aloud: language = \"de\"");
        }

        return new(diagnostics.Count == 0 ? new PhraseTable(language, name.Length > 0 ? name : language, review, words) : null, diagnostics.InFileOrder());
    }

    private static string Text(TomlTable root, string key, DiagnosticList diagnostics)
    {
        switch (root.Find(key))
        {
            case null:
                return "";
            case { Value: TomlText text }:
                return Checked(text.Value, text.Place, diagnostics);
            case { } other:
                diagnostics.Add(other.Place, $"{key} is no text", $"write it in quotes: {key} = \"...\"");
                return "";
        }
    }

    private static Dictionary<string, string> Words(TomlTable root, DiagnosticList diagnostics)
    {
        Dictionary<string, string> words = new(StringComparer.Ordinal);
        foreach (TomlEntry entry in root.Entries.Where(e => e.Name is not ("language" or "name" or "review" or "words")))
        {
            diagnostics.Add(entry.Place, $"'{entry.Name}' is no key of a table of words", "the keys are language, name, review and the table [words]");
        }

        if (root.Find("words")?.Value is not TomlTable table)
        {
            diagnostics.Add(root.Find("words")?.Place ?? new TextPlace(1, 1), "there is no table [words]", "wheeldraft words writes one to fill in");
            return words;
        }

        foreach (TomlEntry entry in table.Entries)
        {
            if (entry.Value is not TomlText text)
            {
                diagnostics.Add(entry.Place, $"the words for \"{entry.Name}\" are no text", "write them in quotes");
                continue;
            }

            words[entry.Name] = Checked(text.Value, text.Place, diagnostics);
            Places(entry, text, diagnostics);
        }

        return words;
    }

    // What is set in is a figure, a name, a place: words that lose it would say less than the program found out.
    private static void Places(TomlEntry entry, TomlText words, DiagnosticList diagnostics)
    {
        if (words.Value.Length == 0)
        {
            return;
        }

        IReadOnlyList<int> asked = Phrase.PlacesOf(entry.Name);
        IReadOnlyList<int> given = Phrase.PlacesOf(words.Value);
        foreach (int lost in asked.Except(given))
        {
            diagnostics.Add(words.Place, $"the words leave out {Place(lost)}, and what is set in there would be lost", $"put {Place(lost)} where it belongs");
        }

        foreach (int odd in given.Except(asked))
        {
            diagnostics.Add(words.Place, $"the words have {Place(odd)}, which the English text has not", asked.Count == 0 ? "nothing is set in there" : $"it has {string.Join(", ", asked.Select(Place))}");
        }
    }

    private static string Place(int number) => $"{{{Wording.Number(number, 0)}}}";

    // As in names of a parameter file: nothing that cannot be seen, nothing that changes the direction of what follows.
    private static string Checked(string text, TextPlace place, DiagnosticList diagnostics)
    {
        if (UnseenCharacters.FirstIn(text.Replace('\n', ' ')) is Rune odd)
        {
            diagnostics.Add(place, string.Create(CultureInfo.InvariantCulture, $"the text holds the invisible character U+{odd.Value:X4}"), "leave it out");
        }

        return text;
    }

    [GeneratedRegex("^[A-Za-z]{2,8}(?:-[A-Za-z0-9]{1,8})*$", RegexOptions.CultureInvariant, Budgets.PatternMs)]
    private static partial Regex LanguageTag();
}
