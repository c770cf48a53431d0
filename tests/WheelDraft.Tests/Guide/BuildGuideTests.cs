using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using WheelDraft.Cli;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Guide;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Report;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Guide;

/// <summary>The guide to building: each of its figures stands on a sheet or in the report, and a step that does not apply is absent.</summary>
public sealed class BuildGuideTests
{
    private const double InchMm = 25.4;

    public static TheoryData<string> Files => [.. Demos.Names, .. Starters];

    private static string[] Starters { get; } = ["old-wheel", "folded-strips", "damp-mains"];

    private static string Markdown(Design design) => Encoding.UTF8.GetString(GuideMarkdown.Write(BuildGuide.Of(design)));

    [Theory]
    [MemberData(nameof(Files))]
    public void Write_EveryFigureThatItNames_StandsOnASheetOrInTheReport(string file)
    {
        Design design = Starters.Contains(file, StringComparer.Ordinal) ? Starter(file) : Demos.Of(file);
        Known known = Known.Of(design);
        List<string> unknown = [];
        foreach (string line in Markdown(design).Split('\n').Where(l => !l.StartsWith("![", StringComparison.Ordinal)))
        {
            // The number of a step is no figure; neither is one inside a name.
            string words = Regex.Replace(line, @"^\d+\. ", "", RegexOptions.None, TimeSpan.FromMinutes(1));
            unknown.AddRange(Figures(words).Where(f => !known.Has(f)).Select(f => $"{f} in: {line}"));
        }

        Assert.True(unknown.Count == 0, string.Join("\n", unknown));
    }

    // The test above must be able to fail.
    [Fact]
    public void Known_FigureThatNoSheetHas_IsNotFound() => Assert.False(Known.Of(Demos.Of("propagation-bench")).Has("41.317"));

    [Fact]
    public void Of_WheelWithoutStrips_HasNoStepForThem()
    {
        string words = Markdown(Demos.Of("tank-doser"));
        foreach (string absent in (string[])["Fold", "rivet with", "receptacle for", "base", "Adjusting", "screw", "protective conductor", "isolating transformer", "flat,"])
        {
            Assert.DoesNotContain(absent, words[words.IndexOf("## What you need", StringComparison.Ordinal)..], StringComparison.OrdinalIgnoreCase);
        }

        Assert.Contains("safety transformer", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_WheelWithEverything_HasEachStep()
    {
        string words = Markdown(Demos.Of("propagation-bench"));
        foreach (string there in (string[])["Set to", "contact rivet", "receptacle for a tab 4.8x0.5", "cut/base.dxf", "## Adjusting", "mL", "protective conductor", "isolating transformer", "has a flat", "no mist while the lid is open", "lid side – N"])
        {
            Assert.Contains(there, words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Of_LandsWheel_NamesBothTerminalsOfARing()
    {
        string words = Markdown(Demos.Of("seed-drier"));
        Assert.Contains("heater return – heater", words, StringComparison.Ordinal);
        Assert.Contains("Cut the carrier", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_DesignThatMisses_WritesNoGuide()
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("a.toml"), new ChangedDemo("tank-doser").And("\n[[part]]\nname = \"frame\"\nkind = \"earthed\"\ncircle = { at = [\"9 mm\", \"0 mm\"], diameter = \"4 mm\" }\nz = [\"0.1 mm\", \"4 mm\"]\n").Text);
        Assert.Equal(1, run.Run("make", run.PathOf("a.toml"), "-o", run.PathOf("out"), "--only", "print"));
        Assert.False(File.Exists(run.PathOf("out/build.md")));
        Assert.Equal(1, run.Run("make", run.PathOf("a.toml"), "-o", run.PathOf("out"), "--only", "print", "--despite-findings"));
        Assert.Contains("MISSES: DO NOT BUILD", File.ReadAllText(run.PathOf("out/build.md")), StringComparison.Ordinal);
        Assert.True(File.Exists(run.PathOf("out/print/build.pdf")));

        // Once it is withheld the guide of an earlier run goes, as a template does.
        Assert.Equal(1, run.Run("make", run.PathOf("a.toml"), "-o", run.PathOf("out"), "--only", "print"));
        Assert.False(File.Exists(run.PathOf("out/build.md")));
        Assert.False(File.Exists(run.PathOf("out/print/build.pdf")));
    }

    // From an empty folder: every file that the guide names is there.
    [Theory]
    [InlineData("damp-mains")]
    [InlineData("old-wheel")]
    [InlineData("folded-strips")]
    public void Make_StarterFilledIn_WritesEveryFileThatItsGuideNames(string starter)
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("new", run.PathOf("mine.toml"), "--like", starter));
        string text = File.ReadAllText(run.PathOf("mine.toml"));
        File.WriteAllText(run.PathOf("mine.toml"), Regex.Replace(text, "(?m)^title = \"[^\"]*\"", "title = \"Somebody's own\"", RegexOptions.None, TimeSpan.FromMinutes(1)));
        Assert.Equal(0, run.Run("make", run.PathOf("mine.toml"), "-o", run.PathOf("out"), "--only", "report,cut,draw,print"));
        string words = File.ReadAllText(run.PathOf("out/build.md"));
        string[] named = [.. Regex.Matches(words, @"\b(?:cut|draw|print)/[\w\-]+\.\w+|\breport\.md", RegexOptions.None, TimeSpan.FromMinutes(1)).Select(m => m.Value).Distinct(StringComparer.Ordinal)];
        Assert.True(named.Length > 5, string.Join(", ", named));
        Assert.All(named, n => Assert.True(File.Exists(run.PathOf("out/" + n)), n));
    }

    [Theory]
    [InlineData("tank-doser", "595.27559 841.88976")]
    [InlineData("kiln-room", "612 792")]
    public void Pages_OfADesign_AreOfThePaperThatPeoplePrintOn(string file, string points)
    {
        Design design = Demos.Of(file);
        byte[] first = GuidePages.Write(BuildGuide.Of(design), Demos.SheetsOf(file), TemplateSheets.PaperOf(design), (design.Brief, null));
        Assert.Contains($"/MediaBox[0 0 {points}]", Encoding.Latin1.GetString(first), StringComparison.Ordinal);
        Assert.Equal(first, GuidePages.Write(BuildGuide.Of(design), DesignSheets.Of(design), TemplateSheets.PaperOf(design), (design.Brief, null)));
    }

    private static Design Starter(string name) =>
        Design.Of(ParameterReader.Read(TemplateShelf.All.Single(t => string.Equals(t.Name, name, StringComparison.Ordinal)).Bytes()).Brief!);

    private static IEnumerable<string> Figures(string words) =>
        Regex.Matches(words, @"(?<![\w.\-/])-?\d+(?:\.\d+)?(?![\w]*[a-zA-Z_/\-]\w*\.)(?!\w)", RegexOptions.None, TimeSpan.FromMinutes(1)).Select(m => m.Value);

    /// <summary>Every number of the report and every text of the sheets.</summary>
    private sealed class Known
    {
        // Coordinates are so many that some number of them is near to any.
        private static readonly string[] Coordinates = ["solids", "spacing", "all_pairs", "outline", "states", "points"];

        private readonly double[] _numbers;
        private readonly double[] _units;
        private readonly double[] _sure;
        private readonly string _texts;

        private Known(Design design, double[] numbers, string texts)
        {
            (_numbers, _texts) = (numbers, texts);
            _units = design.Brief.DrawingUnit == DrawingUnit.Inch ? [1, 1 / InchMm, 1 / (InchMm * InchMm)] : [1];

            // The station at which the home mark of a wheel that turns clockwise stands.
            _sure = [.. ColdTest.Of(design.Circuit).Rows.SelectMany(r => r.SureDeg is (double from, double to) ? (double[])[from, to] : [])];
        }

        public static Known Of(Design design)
        {
            string report = Encoding.UTF8.GetString(ReportJson.Write(design));
            List<double> numbers = [];
            List<string> texts = [];
            Gather(JsonNode.Parse(report), numbers, texts);
            Sheet[] sheets = [.. DesignSheets.Of(design), .. TemplateSheets.Parts(design), .. BaseTemplate.Parts(design), TemplateSheets.Instructions(design, PaperSize.A4)];
            texts.AddRange(sheets.SelectMany(s => s.Texts).Select(t => t.Text));
            return new(design, [.. numbers], " " + string.Join(" ", texts) + " ");
        }

        // As it is written on a sheet, or as a number of the report in its unit or another that people read, to the last digit shown.
        public bool Has(string figure)
        {
            if (Regex.IsMatch(_texts, $@"(?<![\d.]){Regex.Escape(figure)}(?![\d]|\.\d)", RegexOptions.None, TimeSpan.FromMinutes(1)))
            {
                return true;
            }

            double value = double.Parse(figure, CultureInfo.InvariantCulture);
            int decimals = figure.Contains('.', StringComparison.Ordinal) ? figure.Length - figure.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
            double last = Math.Pow(10, -decimals) * 1.0001;
            return _numbers.Any(n => _units.Any(k => Math.Abs((n * k) - value) <= last)) || _sure.Any(n => Math.Abs(360 - n - value) <= last);
        }

        private static void Gather(JsonNode? node, List<double> numbers, List<string> texts)
        {
            switch (node)
            {
                case JsonObject o:
                    foreach ((_, JsonNode? inside) in o.Where(p => !Coordinates.Contains(p.Key, StringComparer.Ordinal)))
                    {
                        Gather(inside, numbers, texts);
                    }

                    break;
                case JsonArray a:
                    foreach (JsonNode? inside in a)
                    {
                        Gather(inside, numbers, texts);
                    }

                    break;
                case JsonValue v when v.GetValueKind() == System.Text.Json.JsonValueKind.Number:
                    numbers.Add(v.GetValue<double>());
                    break;
                case JsonValue v when v.GetValueKind() == System.Text.Json.JsonValueKind.String:
                    texts.Add(v.GetValue<string>());
                    break;
                default:
                    break;
            }
        }
    }
}
