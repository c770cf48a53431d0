using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Pdf;
using WheelDraft.Tests.Sheets;
using Xunit;

namespace WheelDraft.Tests.Pdf;

/// <summary>What poppler reads back out of our PDF.</summary>
public sealed partial class PdfTextTests : IDisposable
{
    private readonly OutsideFolder _folder = new();

    public static TheoryData<string> Demos => [.. SheetDesigns.Demos];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Demos))]
    [Trait("Needs", "pdftotext")]
    public async Task PdfHadNoText(string demo)
    {
        IReadOnlyList<Sheet> sheets = Tests.Demos.SheetsOf(demo);
        string file = await _folder.WriteAsync("set.pdf", PdfWriter.Write(sheets, new("Set")));
        string[] pages = (await OutsideProgram.OrSkip("/usr/bin/pdftotext", "-v").RunAsync("-raw", file, "-")).Split('\f');
        for (int i = 0; i < sheets.Count; i++)
        {
            AssertRead(sheets[i], pages[i]);
        }
    }

    [Fact]
    [Trait("Needs", "pdftotext")]
    public async Task Write_EveryScript_IsReadBack()
    {
        string[] texts = ["Größe ŁąčĐŐŘ ấ", "ΑΒΓΔ αβγς ΐ", "ЖЩЮЯ жщюя Ї", "漢字 boxed", "(a) \\ <b> 50 % ± Ø", string.Concat(Enumerable.Range(0x100, 128).Concat(Enumerable.Range(0x410, 64)).Concat(Enumerable.Range(0x1EA0, 90)).Select(c => (char)c).Where(c => c is not ('ŉ' or 'ſ')))];
        Sheet sheet = new(new("card", "Card", "A card."), new PaperSize("card", 1200, 100), [new(new("texts", "Texts", "texts"), [.. texts.Select((t, i) => new SheetText(t, new(new(5, 90 - (i * 14))), TextStyle.Label))])], []);
        string file = await _folder.WriteAsync("card.pdf", PdfWriter.Write([sheet], new("Card")));
        AssertRead(sheet, await OutsideProgram.OrSkip("/usr/bin/pdftotext", "-v").RunAsync("-raw", file, "-"));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    [Trait("Needs", "pdfinfo")]
    public async Task Pdf_EveryFileOfADesign_HasFontsOutlineLanguageAndNumber(string demo)
    {
        Design design = SheetDesigns.Demo(demo);
        OutputFile[] files = [.. OutputFiles.Of(design, new OutputRequest { Kinds = [OutputKind.Pdf, OutputKind.Print], DespiteFindings = true }).Where(f => f.Name.EndsWith(".pdf", StringComparison.Ordinal))];
        Assert.Equal(3, files.Length);
        foreach (OutputFile made in files)
        {
            // Each was 0.6 to 3 MB when every letter was drawn anew.
            Assert.InRange(made.Bytes.Length, 1, 600_000);
            string file = await _folder.WriteAsync("made.pdf", made.Bytes);
            string[] fonts = [.. (await OutsideProgram.OrSkip("/usr/bin/pdffonts", "-v").RunAsync(file)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)];
            Assert.NotEmpty(fonts);
            Assert.All(fonts, f => Assert.Matches(@"Type 3 +Custom +yes no +yes", f));
            string info = await OutsideProgram.OrSkip("/usr/bin/pdfinfo", "-v").RunAsync(file);
            Assert.Contains("Subject: ", info, StringComparison.Ordinal);
            Assert.Contains($"Keywords:        {design.Brief.DrawingNumber}\n", info, StringComparison.Ordinal);
            string packet = await OutsideProgram.OrSkip("/usr/bin/pdfinfo", "-v").RunAsync("-meta", file);
            Assert.Contains("<dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>", packet, StringComparison.Ordinal);
            Assert.Contains($"<dc:identifier>{design.Brief.DrawingNumber}</dc:identifier>", packet, StringComparison.Ordinal);
            Assert.Contains("/Lang(en)", Encoding.Latin1.GetString(made.Bytes), StringComparison.Ordinal);
            string outline = await OutsideProgram.OrSkip("/usr/bin/pdftohtml", "-v").RunAsync("-xml", "-i", "-stdout", file);
            int entries = Entry().Count(outline);
            int expected = made.Name is "draw/set.pdf" ? Tests.Demos.SheetsOf(demo).Count : 3;
            Assert.True(entries >= expected, FormattableString.Invariant($"{made.Name}: {entries} entries"));
        }
    }

    /// <summary>Every text of the sheet, in drawing order, blanks apart: they tell no more than where poppler ends a line.</summary>
    private static void AssertRead(Sheet sheet, string page)
    {
        string read = Bare(page);
        int at = 0;
        foreach (SheetText text in sheet.Texts)
        {
            int found = read.IndexOf(Bare(text.Text), at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"{sheet.Words.Name}: '{text.Text}' is not read after '{read[Math.Max(0, at - 30)..at]}' but '{read[at..Math.Min(read.Length, at + 60)]}'");
            at = found + Bare(text.Text).Length;
        }
    }

    private static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    [GeneratedRegex("<item ", RegexOptions.None, 60_000)]
    private static partial Regex Entry();
}
