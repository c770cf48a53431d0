using WheelDraft.Engineering;
using WheelDraft.Formats.Languages;
using Xunit;

namespace WheelDraft.Tests.Languages;

/// <summary>The tables that come with the program, and what is said of a wrong one.</summary>
public sealed class PhraseTablesTests
{
    // A phrase that changes may lack its words until somebody gives them; more than a few would be a table given up.
    private const double LeastShare = 0.97;

    public static TheoryData<string> Languages => [.. PhraseTables.Languages];

    [Theory]
    [MemberData(nameof(Languages))]
    public void Shipped_Table_IsRead_LosesNothingThatIsSetIn_AndSaysWhoLookedAtIt(string language)
    {
        PhraseTableResult read = PhraseTables.Read(Embedded.Text(language + ".toml"));
        Assert.Empty(read.Diagnostics);
        Assert.Equal(language, read.Table!.Language);
        Assert.Equal("not reviewed by a native speaker", read.Table.Review);
        Assert.InRange(read.Table.Known / (double)EnglishPhrases.All.Count, LeastShare, 1);
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void Shipped_Table_KeepsFiguresAndKeysOfEachPhrase(string language)
    {
        // What a person must copy or compare: figures, keys in quotes, layers, standards. The oracle is the English phrase itself.
        PhraseTable table = PhraseTables.Shipped(language)!;
        string[] odd = [.. table.Words.Where(w => !Kept(w.Key).SequenceEqual(Kept(w.Value), StringComparer.Ordinal)).Select(w => $"{w.Key} => {w.Value}")];
        Assert.True(odd.Length == 0, string.Join("\n", odd.Take(10)));
    }

    [Fact]
    public void ToToml_OfATable_IsReadBackTheSame()
    {
        PhraseTable german = PhraseTables.Shipped("de")!;
        PhraseTable again = PhraseTables.Read(german.ToToml()).Table!;
        Assert.Equal(german.Words.Where(w => w.Value.Length > 0).OrderBy(w => w.Key, StringComparer.Ordinal), again.Words.Where(w => w.Value.Length > 0).OrderBy(w => w.Key, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("language = \"de\"\n[words]\n\"{1} of {2}\" = \"{1}\"", 3, "the words leave out {2}, and what is set in there would be lost")]
    [InlineData("language = \"de\"\n[words]\n\"open\" = \"offen {1}\"", 3, "the words have {1}, which the English text has not")]
    [InlineData("language = \"de\"\n[words]\n\"open\" = 3", 3, "the words for \"open\" are no text")]
    [InlineData("language = \"deutsch bitte\"\n[words]\n\"open\" = \"offen\"", 1, "language is \"deutsch bitte\"")]
    [InlineData("[words]\n\"open\" = \"offen\"", 1, "the table does not say its language")]
    [InlineData("language = \"de\"\nopen = \"offen\"", 2, "'open' is no key of a table of words")]
    [InlineData("language = \"de\"\n[words]\n\"open\" = \"of\\u202Efen\"", 3, "the text holds the invisible character U+202E")]
    [InlineData("language = \"de\"\n[words]\n\"open\" = \"offen", 3, "")]
    public void Read_WrongTable_IsRefusedWithItsPlace(string text, int line, string wrong)
    {
        PhraseTableResult read = PhraseTables.Read(text);
        Assert.Null(read.Table);
        Assert.Contains(read.Diagnostics, d => d.Place.Line == line && d.Wrong.Contains(wrong, StringComparison.Ordinal));
    }

    [Fact]
    public void BookOf_InchDesign_ReadsLengthsOfAPhraseInInches_OrLeavesItEnglish()
    {
        Brief inches = Demos.Of("kiln-room").Brief;
        Assert.Equal(DrawingUnit.Inch, inches.DrawingUnit);
        PhraseTable table = new("de", "Deutsch", "", new Dictionary<string, string>(StringComparer.Ordinal) { ["leave 2 mm to 3 mm free"] = "2 mm bis 3 mm frei lassen", ["leave 5 mm free"] = "einen halben Zentimeter frei lassen" });
        PhraseBook book = table.BookOf(inches);
        Assert.Equal("0.0787 in bis 0.1181 in frei lassen", book.Say(ReadersUnit.Of(inches).Words("leave 2 mm to 3 mm free")));
        Assert.Equal("leave 0.1969 in free", book.Say(ReadersUnit.Of(inches).Words("leave 5 mm free")));
    }

    private static IEnumerable<string> Kept(string phrase) => KeptPattern.Matches(phrase).Select(m => m.Value).Order(StringComparer.Ordinal);

    private static readonly System.Text.RegularExpressions.Regex KeptPattern = new(
        @"(?<![{\d.\p{L}])\d+(?:\.\d+)?(?![}\d])|\b[a-z]+_[a-z_]+\b|\b(?:OUTLINE|WINDOW|FOLD|MARK|NOTE|IEC|DXF)\b|`[^`]*`",
        System.Text.RegularExpressions.RegexOptions.CultureInvariant | System.Text.RegularExpressions.RegexOptions.ExplicitCapture,
        TimeSpan.FromMinutes(1));
}
