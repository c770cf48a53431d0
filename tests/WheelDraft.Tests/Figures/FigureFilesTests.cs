using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Drawing;
using WheelDraft.Formats.Outputs;
using Xunit;

namespace WheelDraft.Tests.Figures;

/// <summary>Figures as files: three formats each, and the page of captions.</summary>
public sealed class FigureFilesTests : IDisposable
{
    private readonly OutsideFolder _folder = new();

    private static readonly Lazy<OutputFile[]> Bench = new(() => [.. OutputFiles.Of(Demos.Of("propagation-bench"), new OutputRequest { Kinds = [], FigureWidthMm = 160, PngDpi = 60 })]);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Of_FiguresNotAskedFor_MakesNone() =>
        Assert.DoesNotContain(OutputFiles.Of(Demos.Of("tank-doser"), new OutputRequest { Kinds = [OutputKind.Draw] }), f => f.Name.StartsWith("figures/", StringComparison.Ordinal));

    [Fact]
    public void Of_Figures_AreMadeInThreeFormatsWithCaptions()
    {
        string[] made = [.. Bench.Value.Select(f => f.Name)];
        string[] names = [.. made.Where(f => f.EndsWith(".svg", StringComparison.Ordinal)).Select(f => f[..^4])];
        Assert.True(names.Length >= 18);
        Assert.Equal(names.SelectMany(n => new[] { n + ".svg", n + ".png", n + ".pdf" }).Append("figures/captions.md").Order(StringComparer.Ordinal), made.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Captions_OfEveryFigure_AreThereAndDiffer()
    {
        string page = Encoding.UTF8.GetString(Bench.Value.Single(f => f.Name is "figures/captions.md").Bytes);
        string[] names = [.. Bench.Value.Where(f => f.Name.EndsWith(".svg", StringComparison.Ordinal)).Select(f => f.Name["figures/".Length..^4])];
        string[] Lines(string start) => [.. page.Split('\n').Where(l => l.StartsWith(start, StringComparison.Ordinal)).Select(l => l[start.Length..].Trim())];
        Assert.Equal(names, Lines("## ").Where(h => !h.Contains(' ', StringComparison.Ordinal)), StringComparer.Ordinal);
        foreach (string[] texts in new[] { Lines("Caption:"), Lines("Alternative text:") })
        {
            Assert.Equal(names.Length, texts.Length);
            Assert.All(texts, t => Assert.True(t.Length > 20 && t.EndsWith('.'), t));
            Assert.Equal(texts.Length, texts.Distinct(StringComparer.Ordinal).Count());
        }

        Assert.All(names, n => Assert.Contains($"<img src=\"figures/{n}.svg\" alt=\"", page, StringComparison.Ordinal));
        Assert.Contains("<iframe src=\"show/index.html#t=0&amp;view=compact\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TheSameDesignTwice_GivesTheSameBytes()
    {
        OutputFile[] again = [.. OutputFiles.Of(Demos.Of("propagation-bench"), new OutputRequest { Kinds = [], FigureWidthMm = 160, PngDpi = 60 })];
        Assert.Equal(Bench.Value.Select(f => (f.Name, Convert.ToHexString(f.Bytes))), again.Select(f => (f.Name, Convert.ToHexString(f.Bytes))));
    }

    // poppler reads the words of every figure back.
    [Fact]
    [Trait("Needs", "pdftotext")]
    public async Task Pdf_OfEveryFigure_HasItsTexts()
    {
        OutsideProgram reader = OutsideProgram.OrSkip("/usr/bin/pdftotext", "-v");
        foreach (Sheet figure in DesignFigures.Of(Demos.Of("propagation-bench"), 160))
        {
            OutputFile file = Bench.Value.Single(f => string.Equals(f.Name, $"figures/{figure.Words.Name}.pdf", StringComparison.Ordinal));
            string read = Bare(await reader.RunAsync("-raw", await _folder.WriteAsync("figure.pdf", file.Bytes), "-"));
            Assert.All(figure.Texts, t => Assert.True(read.Contains(Bare(t.Text), StringComparison.Ordinal), $"{figure.Words.Name} lacks '{t.Text}'"));
        }
    }

    [Theory]
    [InlineData("figures/wheel.svg", 160.0, true)]
    [InlineData("figures/captions.md", 160.0, true)]
    [InlineData("figures/wheel.svg", null, false)]
    public void IsReplaced_AnEarlierFigure_GoesWhereFiguresAreMadeAgain(string name, double? widthMm, bool goes) =>
        Assert.Equal(goes, OutputFiles.IsReplaced(name, Demos.Of("tank-doser"), new OutputRequest { FigureWidthMm = widthMm }));

    // Poppler ends words where letters stand apart, so blanks do not count.
    private static string Bare(string text) => Regex.Replace(text, @"\s+", "", RegexOptions.None, TimeSpan.FromMinutes(1));
}
