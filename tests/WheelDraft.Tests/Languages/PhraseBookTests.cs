using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Languages;

/// <summary>How finished texts find their words. The table and the sentences are made up for these tests.</summary>
public sealed class PhraseBookTests
{
    private static PhraseBook Book => new(
        "de",
        ["Nothing misses.", "{1} warnings.", "{1} is closed from {2} to {3}", " It parks at {1}.", "wiper", "run {1}", "run", "edge", "Motor", "{1} and {2}", "The wheel stands still.", ", with {1} open", "untold {1}"],
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["Nothing misses."] = "Nichts verfehlt.",
            ["{1} warnings."] = "{1} Warnungen.",
            ["{1} is closed from {2} to {3}"] = "von {2} bis {3} ist {1} geschlossen",
            [" It parks at {1}."] = " Es parkt bei {1}.",
            ["wiper"] = "Schleifer",
            ["run {1}"] = "Lauf {1}",
            ["run"] = "Lauf",
            ["Motor"] = "Motor",
            ["edge"] = "Kante",
            ["{1} and {2}"] = "{1} und {2}",
            ["The wheel stands still."] = "Das Rad steht.",
            [", with {1} open"] = ", wobei {1} offen ist",
        },
        ["mist", "lid switch", "edge valve"]);

    [Theory]
    [InlineData("Nothing misses.", "Nichts verfehlt.")]
    [InlineData("**Nothing misses.** 4 warnings.", "**Nichts verfehlt.** 4 Warnungen.")]
    [InlineData("'mist' is closed from 3 s to 5 s", "von 3 s bis 5 s ist 'mist' geschlossen")]
    [InlineData("'mist' is closed from 3 s to 5 s, with lid switch open", "von 3 s bis 5 s ist 'mist' geschlossen, wobei lid switch offen ist")]
    [InlineData("The wheel stands still. It parks at 358.2°.", "Das Rad steht. Es parkt bei 358.2°.")]
    [InlineData("It parks at 358.2°.", "Es parkt bei 358.2°.")]
    [InlineData("mist wiper 270°", "mist Schleifer 270°")]
    [InlineData("- 12.5 mm", "- 12.5 mm")]
    [InlineData("", "")]
    [InlineData("lid switch", "lid switch")]
    public void Say_PhraseOfTheTable_IsInItsWords_WithWhatIsSetIn(string english, string words) => Assert.Equal(words, Book.Say(english));

    [Fact]
    public void Say_NameOfThePersonThatIsAlsoAWord_KeepsTheName()
    {
        // An output called "edge valve" and one called "mist": their names are nobody's words.
        Assert.Equal("edge valve und mist", Book.Say("edge valve and mist"));
        PhraseBook run = new("de", ["run {1}", "run", "wiper"], new Dictionary<string, string>(StringComparer.Ordinal) { ["run {1}"] = "Lauf {1}", ["run"] = "Lauf", ["wiper"] = "Schleifer" }, ["run"]);
        Assert.Equal("run Schleifer 90°", run.Say("run wiper 90°"));
    }

    [Fact]
    public void Say_TextWithoutWords_StaysEnglishWhole_AndIsNamedOnce()
    {
        PhraseBook book = Book;
        Assert.Equal("Something quite new happened to the gearbox.", book.Say("Something quite new happened to the gearbox."));
        Assert.Equal("untold mist", book.Say("untold mist"));
        _ = book.Say("untold mist");
        Assert.Equal(["Something quite new happened to the gearbox.", "untold {1}"], book.Missing);
    }

    [Fact]
    public void Say_MostlyEnglish_IsNotHalfTranslated() =>
        // "and" alone is known: a sentence of two languages would read worse than either.
        Assert.Equal("gearbox housing and bearing seat", Book.Say("gearbox housing and bearing seat"));

    [Fact]
    public void Say_SentenceThatBeginsWithACapital_BeginsWithOneInOtherWords() => Assert.Equal("Schleifer", Book.Say("Wiper"));

    [Fact]
    public void Read_OutsideOfUse_IsEnglish_AndInsideNothingIsLookedUpTwice()
    {
        Assert.Equal("wiper", ReadersWords.Read("wiper"));
        using (ReadersWords.Use(Book))
        {
            Assert.Equal("Schleifer", ReadersWords.Read("wiper"));
            Assert.Equal("run", ReadersWords.Read(ReadersWords.AsItStands("run")));
            Assert.Equal("de", ReadersWords.Language);
        }

        Assert.Equal("en", ReadersWords.Language);
    }
}
