using WheelDraft.Engineering;
using WheelDraft.Formats.Languages;
using WheelDraft.Formats.Outputs;
using Xunit;

namespace WheelDraft.Tests.Languages;

/// <summary>Everything that people read of a design, in words that are none: whatever stays English comes from no table.</summary>
public sealed class OtherWordsTests
{
    // Windows, inches, lands, a cam: between them they say what all demos say.
    public static TheoryData<string> Names => ["propagation-bench", "kiln-room", "seed-drier", "fry-feeder"];

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryOutput_OfADemo_FindsWordsForAllThatItSays(string demo)
    {
        Design design = Demos.Of(demo);
        PhraseBook book = new PhraseTable("x-none", "none", "", EnglishPhrases.All.ToDictionary(p => p, Accented, StringComparer.Ordinal)).BookOf(design.Brief);
        using (ReadersWords.Use(book))
        {
            _ = OutputFiles.Of(design, new OutputRequest { Kinds = [OutputKind.Report, OutputKind.Draw, OutputKind.Print, OutputKind.Show, OutputKind.Bench], FigureWidthMm = null }).Count();
        }

        Assert.True(book.Missing.Count == 0, string.Join("\n", book.Missing));
    }

    /// <summary>Every letter of a phrase with a mark; places stay.</summary>
    internal static string Accented(string phrase) => string.Concat(phrase.Select(c => c switch { 'a' => 'á', 'e' => 'é', 'i' => 'í', 'o' => 'ó', 'u' => 'ú', 'n' => 'ñ', _ => c }));
}
