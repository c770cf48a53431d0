using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Formats.Languages;

// The folder "Languages": the fixed words of sheets, page, report and build texts in other languages than English. english.txt is the list of all phrases, made from
// the sources by a test; one TOML file a language has the words beside. How a finished text finds its words is Engineering's (Words/Phrases).

/// <summary>Words in one language beside the English ones.</summary>
/// <param name="Language">The language, as BCP 47 has it: "de".</param>
/// <param name="Name">Its own name for itself.</param>
/// <param name="Review">Who has looked at it, or that nobody has.</param>
/// <param name="Words">Phrases by the English ones; an empty one is not translated yet.</param>
internal sealed record PhraseTable(string Language, string Name, string Review, IReadOnlyDictionary<string, string> Words)
{
    /// <summary>A table without words.</summary>
    public static PhraseTable Empty { get; } = new("", "", "", new Dictionary<string, string>(StringComparer.Ordinal));

    /// <summary>How many of the program's phrases have words.</summary>
    public int Known => EnglishPhrases.All.Count(p => Words.GetValueOrDefault(p, "").Length > 0);

    /// <summary>The words in use for a design.</summary>
    public PhraseBook BookOf(Brief brief)
    {
        Dictionary<string, string> words = new(Words, StringComparer.Ordinal);
        if (brief.DrawingUnit == DrawingUnit.Inch)
        {
            // Lengths that stand in a phrase itself are read in inches as well.
            foreach (string phrase in EnglishPhrases.All.Concat(Words.Keys).Where(LengthsInText.AreIn))
            {
                (string english, string other) = InchPhrases.Of(phrase, Words.GetValueOrDefault(phrase, ""));
                words[english] = other;
            }
        }

        return new(Language, EnglishPhrases.All, words, [.. OwnTexts.Of(brief), .. CuttingProcesses.All.Select(p => p.Name)]);
    }

    /// <summary>The table as a file to fill in: every phrase of the program, then those that are this table's alone.</summary>
    public string ToToml()
    {
        StringBuilder text = new();
        text.Append("# Words for sheets, page, report and build texts: make FILE --words this.toml\n")
            .Append("# {1}, {2}, ... stand for what is set in; each stands in the words once at least, in any order. Words left \"\" stay English.\n")
            .Append("# Figures keep their form: a decimal point.\n\n")
            .Append("language = ").Append(FileText.Quoted(Language)).Append("   # BCP 47, e.g. \"de\": becomes the language of pages, SVG and PDF\n")
            .Append("name = ").Append(FileText.Quoted(Name)).Append('\n')
            .Append("review = ").Append(FileText.Quoted(Review)).Append("\n\n[words]\n");
        foreach (string phrase in EnglishPhrases.All.Concat(Words.Keys.Except(EnglishPhrases.All, StringComparer.Ordinal)))
        {
            text.Append(FileText.Quoted(phrase)).Append(" = ").Append(FileText.Quoted(Words.GetValueOrDefault(phrase, ""))).Append('\n');
        }

        return text.ToString();
    }
}
