using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Prose;
using WheelDraft.Formats.Report;
using WheelDraft.Formats.Svg;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>Letters that the stroke alphabet lacks: told once, or drawn from the font that the file names.</summary>
public sealed class NamedFontTests : IDisposable
{
    // Armenian, which the stroke alphabet lacks and the font has; beside it an ideograph, which both lack.
    private const string FontFile = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";
    private const string Armenian = "Հայոց";

    private readonly OutsideFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void MissingLettersWereToldHundredsOfTimes()
    {
        List<string> told = [];
        Design design = Design.Of(Read("漢字 " + Armenian, "", null).Brief!);
        Files(design, OutputKind.Draw, told.Add);
        string sentence = Assert.Single(told);
        Assert.Contains("漢", sentence, StringComparison.Ordinal);
        Assert.Contains("[drawing_office] font", sentence, StringComparison.Ordinal);
        string report = Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(design)));
        Assert.Equal(2, report.Split("The lettering has no letters for").Length);
    }

    [Theory]
    [InlineData("fonts/none.ttf", "cannot be read")]
    [InlineData("short.ttf", "is not a font")]
    [InlineData("words.ttf", "is not a font")]
    public void Read_FontThatIsNone_IsToldAtItsKey(string path, string words)
    {
        byte[]? Beside(string asked) => asked is "short.ttf" ? [0, 1] : asked is "words.ttf" ? Encoding.ASCII.GetBytes(new string('x', 400)) : null;
        Diagnostic fault = Assert.Single(Read("Timer", path, Beside).Diagnostics);
        Assert.Contains(words, fault.Message, StringComparison.Ordinal);
        Assert.Contains(path, fault.Message, StringComparison.Ordinal);
        Assert.Equal(Text("Timer", path).Split('\n').Index().Single(l => l.Item.StartsWith("font = ", StringComparison.Ordinal)).Index + 1, fault.Place.Line);
    }

    [Fact]
    [Trait("Needs", "pdftotext")]
    public async Task Make_FontNamed_DrawsFromItAndStaysText()
    {
        Assert.SkipUnless(File.Exists(FontFile), "The font is not here.");
        byte[] font = await File.ReadAllBytesAsync(FontFile, TestContext.Current.CancellationToken);
        List<string> told = [];
        Design design = Design.Of(Read(Armenian, "own.ttf", _ => font).Brief!);
        OutputFile set = Assert.Single(Files(design, OutputKind.Pdf, told.Add));
        Assert.Empty(told);
        string file = await _folder.WriteAsync("set.pdf", set.Bytes);
        string read = await OutsideProgram.OrSkip("/usr/bin/pdftotext", "-v").RunAsync(file, "-");
        Assert.Contains(Armenian, read, StringComparison.Ordinal);

        // As strokes the letters are outlines, filled; without the font they are boxes.
        string svg = Encoding.UTF8.GetString(Files(design, OutputKind.Draw, told.Add)[0].Bytes);
        Assert.Contains("-outlines-text\" aria-label=\"" + Armenian, svg, StringComparison.Ordinal);
        Design without = Design.Of(Read(Armenian, "", null).Brief!);
        Assert.DoesNotContain("-outlines-", Encoding.UTF8.GetString(Files(without, OutputKind.Draw, told.Add)[0].Bytes), StringComparison.Ordinal);
    }

    private static OutputFile[] Files(Design design, OutputKind kind, Action<string> warn) =>
        [.. OutputFiles.Of(design, new OutputRequest { Kinds = [kind], Text = SvgText.Strokes }, warn)];

    private static ParameterResult Read(string title, string font, Func<string, byte[]?>? beside) => ParameterReader.Read(Encoding.UTF8.GetBytes(Text(title, font)), beside);

    private static string Text(string title, string font)
    {
        string demo = Encoding.UTF8.GetString(SheetDesigns.DemoBytes("seed-drier"));
        string titled = string.Join('\n', demo.Split('\n').Select(l => l.StartsWith("title = ", StringComparison.Ordinal) ? $"title = \"{title}\"" : l));
        return font.Length == 0 ? titled : $"{titled}\n[drawing_office]\nfont = \"{font}\"\n";
    }
}
