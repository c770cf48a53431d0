using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>A design whose every name is one that a careless writer would break on, through every output.</summary>
/// <remarks>Oracles are readers of others, and the same design with plain names: its markup has the same skeleton, whatever the names are.</remarks>
public sealed partial class NastyNamesTests(NastyNamesTests.PlainDesign plain) : IClassFixture<NastyNamesTests.PlainDesign>
{
    // Every name of the demo, in an order of no meaning; which nasty one each gets turns from round to round.
    private static readonly string[] Replaced =
    [
        "run", "stir", "mist", "mist valve", "fan", "humidity switch", "lid", "lid side", "no mist while the lid is open", "one dry hour begins",
        "motor case", "floor", "feed strip", "run strip", "stir strip", "mist strip",
    ];

    private static readonly string[] Kinds = ["report", "cut", "draw", "pdf", "print", "show", "bench"];

    private static string Demo { get; } = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "parameters", "propagation-bench.toml")) + Briefs.FewDraws;

    private static (bool IsTitle, string Text)[] Names { get; } =
    [
        .. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "cases", "nasty-names.txt"))
            .Where(l => l.Length > 0 && l[0] != '#')
            .Select(l => (l[0] == '!', (string)JsonNode.Parse(l.TrimStart('!'))!)),
    ];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Make_NastyNames_EveryOutputIsSound(int round)
    {
        string[] names = [.. Names.Where(n => !n.IsTitle).Select(n => n.Text)];
        string title = Names.Where(n => n.IsTitle).ElementAt(round).Text;
        string[] given = [.. Replaced.Select((_, i) => names[((round * 7) + i) % names.Length])];
        using CliRun run = new();
        File.WriteAllText(run.PathOf("a.toml"), Renamed(title, given));
        Assert.True(run.Run("make", "a.toml", "-o", "made", "--text", "live", "--only", string.Join(',', Kinds)) <= 1, run.Error);
        Assert.DoesNotContain(run.Out + run.Error, MustNotBeSeen);
        Assert.True(run.Run("run", "a.toml", "-o", "made", "--text", "live") <= 1, run.Error);
        Assert.DoesNotContain(run.Out + run.Error, MustNotBeSeen);
        Dictionary<string, byte[]> files = Files(run.PathOf("made"));
        Assert.All(files.Keys, n => Assert.Matches("^[a-z0-9-]+(/[a-z0-9-]+)?\\.[a-z]+$", n));
        foreach ((string name, byte[] bytes) in files)
        {
            Judge(name, bytes, title);
        }

        JsonNode report = JsonNode.Parse(files["report.json"])!;
        Assert.Equal(title, (string)report["title"]!);
        Assert.Equal(given[2], (string)report["wheel"]!["rings"]!.AsArray().Single(r => string.Equals((string)r!["output"]!, given[2], StringComparison.Ordinal))!["output"]!);
    }

    // Once the labels of long names left the plan of the assembly a width below nothing, and the run ended with a fault of the program.
    [Fact]
    public void Make_LongestNames_StandInFullInTheAssembly()
    {
        using CliRun run = new();
        string widest = new('W', 60);
        File.WriteAllText(run.PathOf("a.toml"), Demo.Replace("\"mist strip\"", $"\"{widest}\"", StringComparison.Ordinal).Replace("\"run\"", $"\"{string.Concat(Enumerable.Repeat("\U0001f600", 60))}\"", StringComparison.Ordinal));
        Assert.True(run.Run("make", "a.toml", "-o", "made", "--only", "draw", "--text", "live") <= 1, run.Error);
        string drawing = File.ReadAllText(run.PathOf("made/draw/assembly.svg"), new UTF8Encoding(false, throwOnInvalidBytes: true));
        Assert.DoesNotContain('\ufffd', XDocument.Parse(drawing).Root!.Value);
        Assert.Contains(widest, drawing, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData('\u0007', "control character (U+0007)")]
    [InlineData('\u001b', "control character (U+001B)")]
    [InlineData('\u009b', "control character (U+009B)")]
    [InlineData('\n', "control character (U+000A)")]
    [InlineData('\u200b', "U+200B")]
    [InlineData('\u200f', "U+200F")]
    [InlineData('\u202e', "U+202E")]
    [InlineData('\u2066', "U+2066")]
    [InlineData('\u2028', "U+2028")]
    [InlineData('\u00ad', "U+00AD")]
    [InlineData('\ufe0f', "U+FE0F")]
    [InlineData('\u3164', "U+3164")]
    [InlineData('\ufeff', "U+FEFF")]
    [InlineData('\uffff', "U+FFFF")]
    public void Read_CharacterThatCannotBeSeen_IsRefusedWithItsPlace(char unseen, string words)
    {
        string escape = $"\\u{(int)unseen:x4}";
        foreach ((string old, string found) in new[] { ("name = \"mist\"", "'name'"), ("title = \"Propagation bench controller\"", "'title'") })
        {
            string text = Demo.Replace(old, old[..^1] + escape + "x\"", StringComparison.Ordinal);
            int line = text[..text.IndexOf(escape, StringComparison.Ordinal)].Count(c => c == '\n') + 1;
            Diagnostic told = ParameterReader.Read(text).Diagnostics.First(d => d.Place.Line == line);
            Assert.Contains(found, told.Message, StringComparison.Ordinal);
            Assert.Contains(words, told.Message, StringComparison.Ordinal);
            Assert.DoesNotContain(told.Message, MustNotBeSeen);
        }
    }

    [Theory]
    [InlineData(" mist")]
    [InlineData("mist ")]
    [InlineData("mist\\u00a0")]
    [InlineData("\\U000e0041mist")]
    public void Read_NameThatLooksLikeAnother_IsRefused(string name)
    {
        Assert.Null(ParameterReader.Read(Demo.Replace("name = \"mist\"", $"name = \"{name}\"", StringComparison.Ordinal)).Brief);
    }

    // Once coordinates a little below zero were told as (-0.00, -1.59).
    [Theory]
    [InlineData("kiln-room")]
    [InlineData("propagation-bench")]
    public void Make_Demo_WritesNoNegativeZero(string demo)
    {
        using CliRun run = new();
        File.Copy(Path.Combine(AppContext.BaseDirectory, "parameters", demo + ".toml"), run.PathOf("a.toml"));
        Assert.True(run.Run("make", "a.toml", "-o", "made", "--text", "live", "--only", "report,cut,draw,show") <= 1, run.Error);
        foreach ((string name, byte[] bytes) in Files(run.PathOf("made")).Where(f => f.Key is not "manifest.json"))
        {
            Match found = NegativeZero().Match(Encoding.UTF8.GetString(bytes));
            Assert.False(found.Success, $"{name}: {found.Value}");
        }
    }

    private static bool MustNotBeSeen(char c) => (char.IsControl(c) && c != '\n') || char.GetUnicodeCategory(c)
        is System.Globalization.UnicodeCategory.Format or System.Globalization.UnicodeCategory.LineSeparator or System.Globalization.UnicodeCategory.ParagraphSeparator;

    private static void DoesNotContainUnseen(string text) => Assert.DoesNotContain(text, MustNotBeSeen);

    private static string Renamed(string title, string[] given)
    {
        string text = Demo.Replace("Propagation bench controller", Escaped(title), StringComparison.Ordinal);
        return string.Concat(Regex.Split(text, "(?<quoted>\"[^\"\n]*\")", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(10)).Select(part =>
            Array.IndexOf(Replaced, part.Trim('"')) is >= 0 and int at && part.StartsWith('"') ? $"\"{Escaped(given[at])}\"" : part));
    }

    private static string Escaped(string name) => name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal);

    private static Dictionary<string, byte[]> Files(string folder) => Directory.GetFiles(folder, "*", SearchOption.AllDirectories)
        .ToDictionary(f => Path.GetRelativePath(folder, f).Replace('\\', '/'), File.ReadAllBytes, StringComparer.Ordinal);

    private void Judge(string name, byte[] bytes, string title)
    {
        string text = Encoding.UTF8.GetString(bytes);
        switch (Path.GetExtension(name))
        {
            case ".svg":
                Svg(name, text, title);
                break;
            case ".html" when name is "report.html":
                Assert.Contains(title, WebUtility.HtmlDecode(text), StringComparison.Ordinal);
                Assert.All(PlainDesign.Tags(text), t => Assert.Contains(t.TrimStart('<', '/').Split(' ', '>')[0], ReportTags, StringComparer.Ordinal));
                break;
            case ".html":
                Assert.Equal(plain.PageTags, PlainDesign.Tags(text));
                Assert.Contains(title, WebUtility.HtmlDecode(text), StringComparison.Ordinal);
                break;
            case ".dxf":
                Dxf(name, text);
                break;
            case ".csv":
                Csv(text);
                break;
            case ".md":
                Markdown(name, text);
                break;
            default:
                break;
        }
    }

    // What a report in HTML is made of; a name that became markup would bring another.
    private static readonly string[] ReportTags =
    [
        "!DOCTYPE", "html", "head", "meta", "title", "style", "body", "main", "nav", "h1", "h2", "h3", "p", "ul", "ol", "li", "a", "strong", "code", "div", "table", "thead", "tbody", "tr", "th", "td", "figure", "img", "figcaption",
    ];

    private static void Svg(string name, string text, string title)
    {
        XDocument drawing = XDocument.Parse(text);
        Assert.All(drawing.Descendants(), e =>
        {
            Assert.Contains(e.Name.LocalName, (string[])["svg", "title", "desc", "style", "g", "path", "text", "tspan", "defs", "clipPath", "rect", "circle", "line", "use", "marker", "pattern", "polyline", "polygon"], StringComparer.Ordinal);
            Assert.DoesNotContain(e.Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal) || a.Value.Contains("javascript:", StringComparison.Ordinal));
        });
        Assert.All(drawing.Descendants().Where(e => e.Attribute("id") is not null), e => Assert.Matches("^[A-Za-z][A-Za-z0-9_.-]*$", e.Attribute("id")!.Value));
        Assert.True(drawing.Descendants().Any(e => !e.HasElements && e.Value.Contains(title, StringComparison.Ordinal)), $"{name} does not hold its title as it is");
    }

    // The pairs of a DXF file stay pairs: a number, then a value, on ASCII lines of at most 2049 characters.
    private static void Dxf(string name, string text)
    {
        string[] lines = text.TrimEnd('\n').Split('\n');
        Assert.Equal(0, lines.Length % 2);
        Assert.All(lines.Where((_, i) => i % 2 == 0), l => Assert.Matches("^ *[0-9]+$", l));
        Assert.All(lines, l => Assert.True(l.Length <= 2049 && l.All(c => c is >= ' ' and <= '~'), $"{name}: {l}"));
        Assert.Equal("EOF", lines[^1]);
        Assert.DoesNotContain(lines, l => l.Contains("%%d", StringComparison.OrdinalIgnoreCase) || l.Contains('^', StringComparison.Ordinal));
    }

    private static void Csv(string text)
    {
        List<string[]> rows = [.. text.TrimEnd('\n').Split('\n').Select(Cells)];
        Assert.All(rows, r => Assert.Equal(rows[0].Length, r.Length));
        Assert.All(rows.SelectMany(r => r), c => Assert.True(c.Length == 0 || !"=+-@\t\r".Contains(c[0], StringComparison.Ordinal) || double.TryParse(c, System.Globalization.CultureInfo.InvariantCulture, out _), c));
    }

    // RFC 4180, read by itself: quotes toggle, doubled ones stand for one.
    private static string[] Cells(string line)
    {
        List<string> cells = [""];
        bool isQuoted = false;
        foreach (char c in line)
        {
            isQuoted ^= c == '"';
            if (c == ',' && !isQuoted)
            {
                cells.Add("");
            }
            else
            {
                cells[^1] += c;
            }
        }

        Assert.False(isQuoted, line);
        return [.. cells.Select(c => c.Length > 1 && c[0] == '"' ? c[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal) : c)];
    }

    // GitHub Flavored Markdown: a cell ends at a pipe that no backslash escapes; a backslash escapes a backslash.
    private static void Markdown(string name, string text)
    {
        int columns = 0;
        foreach (string line in text.Split('\n'))
        {
            DoesNotContainUnseen(line);
            Assert.DoesNotContain("<", line, StringComparison.Ordinal);
            Assert.DoesNotContain("](", OwnLink().Replace(line, ""), StringComparison.Ordinal);
            if (!line.StartsWith('|'))
            {
                columns = 0;
                continue;
            }

            int found = UnescapedPipe().Count(line);
            columns = columns == 0 ? found : columns;
            Assert.True(found == columns, $"{name}: {line}");
        }
    }

    [GeneratedRegex(@"(?<=^|[^\\])(?:\\\\)*\|", RegexOptions.None, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex UnescapedPipe();

    [GeneratedRegex(@"(?<![\w.\-+)])-0(?:\.0*)?(?![\w.])", RegexOptions.None, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex NegativeZero();

    /// <summary>The demo as it is, to compare with.</summary>
    public sealed class PlainDesign
    {
        public PlainDesign()
        {
            using CliRun run = new();
            File.WriteAllText(run.PathOf("a.toml"), Demo);
            run.Run("make", "a.toml", "-o", "made", "--text", "live", "--only", "show");
            PageTags = Tags(File.ReadAllText(run.PathOf("made/show/index.html")));
        }

        public IReadOnlyList<string> PageTags { get; }

        /// <summary>Names of tags and of their attributes, in order; what a browser takes for markup. Values in quotation marks are left out.</summary>
        internal static IReadOnlyList<string> Tags(string page) =>
            [.. Regex.Matches(page, "<[a-zA-Z/!?](?:[^>\"']|\"[^\"]*\"|'[^']*')*>", RegexOptions.None, TimeSpan.FromSeconds(10))
                .Select(m => Regex.Replace(m.Value, "\"[^\"]*\"|'[^']*'", "", RegexOptions.None, TimeSpan.FromSeconds(10)))
                .GroupBy(t => t, StringComparer.Ordinal).Select(g => g.Key).Order(StringComparer.Ordinal)];
    }

    // A picture of the set, or a part of the page itself.
    [GeneratedRegex(@"\]\((?:draw/[a-z0-9-]+\.svg|#[a-z0-9-]+)\)", RegexOptions.CultureInvariant, 60_000)]
    private static partial Regex OwnLink();
}
