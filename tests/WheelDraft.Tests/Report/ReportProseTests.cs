using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Prose;
using WheelDraft.Formats.Report;
using Xunit;

namespace WheelDraft.Tests.Report;

/// <summary>The report as people read it: a first page that stands alone, tables that a printed page holds, and the same in one HTML file.</summary>
public sealed partial class ReportProseTests
{
    public static TheoryData<string> Names => [.. Demos.Names];

    // Rows of 545 characters stood in the report of the bench: on paper, and on most screens, no table at all.
    [Theory]
    [MemberData(nameof(Names))]
    public void Markdown_Demo_NoRowIsWiderThanAPrintedPage(string name) =>
        Assert.DoesNotContain(Lines(Demos.Of(name)), l => l.StartsWith('|') && l.Length > TableFit.MostWide);

    // Sixteen nets made 2,050 lines.
    [Fact]
    public void Markdown_SixteenNets_StaysReadable()
    {
        Design design = Design.Of(Many(14));
        Assert.True(design.Spacing.Rows.Select(r => r.Nets.First).Concat(design.Spacing.Rows.Select(r => r.Nets.Second)).Distinct(StringComparer.Ordinal).Count() >= 15);
        string[] lines = Lines(design);
        int body = Array.FindIndex(lines, l => l.StartsWith("## Appendix", StringComparison.Ordinal));
        Assert.InRange(body, 1, 900);
        Assert.InRange(lines.Length, body, 1500);
        Assert.DoesNotContain(lines, l => l.StartsWith('|') && l.Length > TableFit.MostWide);
    }

    [Fact]
    public void Markdown_FirstPage_HasVerdictFiguresPicturesAndContents()
    {
        string text = Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(Demos.Of("propagation-bench"), new(DespiteFindings: false, ["wheel", "timing"]))));
        string first = text[..text.IndexOf("## Findings", StringComparison.Ordinal)];
        foreach (string part in (string[])["**Nothing misses.**", "| mist ", "Tightest clearance", "'no mist while the lid is open'", "](draw/wheel.svg)", "](draw/timing.svg)", "- [Open contacts](#open-contacts)", "(#appendix-spacing-step-by-step)"])
        {
            Assert.Contains(part, first, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("draw/", Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(Demos.Of("propagation-bench")))).Replace("draw/run-", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    // A design that misses says what misses on its first page.
    [Fact]
    public void Markdown_DesignThatMisses_SaysSoOnItsFirstPage()
    {
        Design design = Design.Of(ReportSchemaTests.Missing());
        string text = Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(design)));
        string first = text[..text.IndexOf("## Contents", StringComparison.Ordinal)];
        Assert.Contains(design.Findings.First(f => f.Severity == FindingSeverity.Error).Message[..40], first, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing misses", text, StringComparison.Ordinal);
    }

    // Oracle: an XML reader, since the page is written as well-formed XML but for its void elements and doctype.
    [Theory]
    [InlineData("propagation-bench")]
    [InlineData("seed-drier")]
    public void Html_Demo_IsSelfContainedAndLinksToItsOwnParts(string name)
    {
        Dictionary<string, byte[]> files = OutputFiles.Of(Demos.Of(name), new() { Kinds = [OutputKind.Report, OutputKind.Draw] }).ToDictionary(f => f.Name, f => f.Bytes, StringComparer.Ordinal);
        string html = Encoding.UTF8.GetString(files["report.html"]);
        XElement root = XDocument.Parse(Void().Replace(html.Replace("<!DOCTYPE html>\n", "", StringComparison.Ordinal), "<${name}${rest}/>")).Root!;
        string[] ids = [.. root.Descendants().Attributes("id").Select(a => a.Value)];
        Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
        string[] links = [.. root.Descendants("a").Attributes("href").Select(a => a.Value)];
        Assert.NotEmpty(links);
        Assert.All(links, l => Assert.Contains(l[1..], ids, StringComparer.Ordinal));
        string[] pictures = [.. root.Descendants("img").Attributes("src").Select(a => a.Value)];
        Assert.Equal(name is "seed-drier" ? 4 : 5, pictures.Length);
        Assert.All(pictures, p => Assert.StartsWith("data:image/svg+xml;base64,", p, StringComparison.Ordinal));
        Assert.All(root.Descendants("img"), i => Assert.NotEmpty(i.Attribute("alt")!.Value));
        Assert.Empty(root.Descendants("script"));
        Assert.DoesNotContain("//", root.Descendants("style").Single().Value, StringComparison.Ordinal);
        Assert.All(root.Descendants("tr"), r => Assert.Equal(r.Ancestors("table").First().Descendants("tr").First().Elements().Count(), r.Elements().Count()));
    }

    // What a person called a thing is never markup, in neither format.
    [Fact]
    public void Write_NamesThatLookLikeMarkup_StayWords()
    {
        ProsePage page = new(ReadersUnit.Millimetres);
        page.Heading(1, "<b>&\"").Paragraph("a ](x) <i>").Table(["Name"], [["p|q<u>"]]);
        Assert.Contains("&lt;b>", Encoding.UTF8.GetString(MarkdownWriter.Write(page)), StringComparison.Ordinal);
        Assert.Contains("p\\|q&lt;u>", Encoding.UTF8.GetString(MarkdownWriter.Write(page)), StringComparison.Ordinal);
        string html = Encoding.UTF8.GetString(HtmlWriter.Write(page, new Dictionary<string, byte[]>(StringComparer.Ordinal)));
        Assert.Contains("<h1>&lt;b&gt;&amp;&quot;</h1>", html, StringComparison.Ordinal);
        Assert.Contains(">p|q&lt;u&gt;</th>", html, StringComparison.Ordinal);
    }

    // Oracle: the cells that went in. Nothing is cut, no row is too wide unless two columns alone are, every cell is in a table or in the list.
    [Fact]
    public void Fit_AnyTable_KeepsEveryCellAndFits()
    {
        Random dice = new(7);
        for (int n = 0; n < 400; n++)
        {
            int columns = 1 + dice.Next(12), rows = 1 + dice.Next(9);
            string[][] cells = [.. Enumerable.Range(0, rows).Select(r => Enumerable.Range(0, columns).Select(c => FormattableString.Invariant($"r{r}c{c}") + new string('x', dice.Next(5) == 0 ? dice.Next(160) : dice.Next(20))).ToArray())];
            if (dice.Next(3) == 0)
            {
                Array.ForEach(cells, r => r[0] = "same");
            }

            FittedTable fitted = TableFit.Of(new([.. Enumerable.Range(0, columns).Select(c => FormattableString.Invariant($"head {c}"))], cells));
            string all = string.Join('\n', fitted.Tables.SelectMany(t => t.Rows).SelectMany(r => r)) + "\n" + string.Join('\n', fitted.Words?.Items ?? []);
            Assert.All(cells.SelectMany(r => r), c => Assert.Contains(c, all, StringComparison.Ordinal));
            Assert.All(fitted.Tables.Where(t => t.Head.Count > 3), t => Assert.InRange(TableFit.Widths(t).Sum() + (3 * t.Head.Count) + 1, 0, TableFit.MostWide));
        }
    }

    private static string[] Lines(Design design) => Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(design))).Split('\n');

    // A wheel of so many outputs, a terminal of each net standing round it.
    private static Brief Many(int outputs)
    {
        StringBuilder toml = new("""
            format = 1
            title = "Many nets"
            [supply]
            voltage = "230 V"
            frequency = "50 Hz"
            frequency_tolerance = "1 %"
            overvoltage_category = "II"
            [environment]
            pollution_degree = 2
            condensation = false
            [drive]
            turn_time = "600 s"
            direction = "clockwise"
            [spacing]
            standard = "IEC 60664-1"
            between_live = "functional"
            to_earthed = "basic"
            to_touchable = "reinforced"
            open_contact = "functional"
            [wheel]
            construction = "windowed"
            outer_diameter = "auto"
            thickness = "0.5 mm"
            material = "C11000-H02"
            bore = { diameter = "6 mm" }
            shaft = "insulating"
            web = "1.2 mm"
            [carrier]
            material_group = "II"
            thickness = "3 mm"
            [process]
            name = "fibre-laser"
            [feed]
            net = "L"
            station = "0 deg"
            contact_length = "0.8 mm"
            contact_width = "2 mm"

            """);
        for (int i = 0; i < outputs; i++)
        {
            toml.Append(FormattableString.Invariant($$"""
                [[output]]
                name = "out {{i + 1}}"
                on = [ { from = "{{10 + (i * 30)}} s", for = "60 s" } ]
                tolerance = "5 s"
                station = "{{(i + 1) * 24}} deg"
                contact_length = "0.4 mm"
                contact_width = "2 mm"
                [[load]]
                name = "lamp {{i + 1}}"
                between = ["out {{i + 1}}", "N"]
                power = "5 W"
                [[part]]
                name = "terminal {{i + 1}}"
                kind = "live"
                net = "out {{i + 1}}"
                rectangle = { from = ["{{(i * 12) - 90}} mm", "200 mm"], to = ["{{(i * 12) - 84}} mm", "210 mm"] }
                z = ["0 mm", "8 mm"]

                """));
        }

        ParameterResult read = ParameterReader.Read(Encoding.UTF8.GetBytes(toml.ToString()));
        return read.Brief ?? throw new InvalidOperationException(string.Join('\n', read.Diagnostics));
    }

    [GeneratedRegex("<(?<name>meta|img)(?<rest>[^>]*)>", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Void();
}
