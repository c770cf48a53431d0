using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Languages;
using Xunit;

namespace WheelDraft.Tests.Languages;

/// <summary>Sheets laid out in other words: longer ones, with accents. No text meets another or leaves its paper.</summary>
public sealed class SheetsInOtherWordsTests
{
    public static TheoryData<string, string> Sheets => [.. PhraseTables.Languages.Select(l => (l, "propagation-bench")), ("de", "tank-doser"), ("pl", "seed-drier")];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Sheets_InAnyLanguage_HaveTextsThatDoNotMeet_AndStayOnThePaper(string language, string demo)
    {
        Design design = Demos.Of(demo);
        using (ReadersWords.Use(PhraseTables.Shipped(language)!.BookOf(design.Brief)))
        {
            foreach (Sheet sheet in DesignSheets.Of(design))
            {
                Assert.True(SheetAudit.OverlappingTexts(sheet) is var met && met.Count == 0, sheet.Words.Name + ": " + string.Join("; ", met.Select(m => $"'{m.First.Text}' and '{m.Second.Text}'")));
                Assert.True(SheetAudit.TextsOffPaper(sheet) is var off && off.Count == 0, sheet.Words.Name + ": " + string.Join("; ", off.Select(t => t.Text)));
            }
        }
    }
}
