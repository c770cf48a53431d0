using System.Text.Json;
using Microsoft.CodeAnalysis.CSharp;
using WheelDraft.Formats.Explaining;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Explaining;

/// <summary>Every code that the program can give is explained, and every explanation is of a code, with keys, codes, pictures and examples that are there.</summary>
public sealed class ExplanationTests
{
    // Keys, and names of figures, that look like codes where they stand.
    private static readonly string[] NotCodes = ["environment.altitude", "feed.net", "supply.frequency"];

    private static readonly IReadOnlyList<Explanation> All = ExplanationBook.All();

    public static TheoryData<string> Codes => [.. All.Select(e => e.Code)];

    [Fact]
    public void Explanations_OfTheSources_HaveEveryCodeAndNoOther()
    {
        IReadOnlyDictionary<string, string> given = CodeScan.OfProject(Path.Combine(Repository(), "src"));
        Assert.True(given.Count > 150, "codes are no longer found");
        string[] missing = [.. given.Keys.Except(NotCodes, StringComparer.Ordinal).Except(All.Select(e => e.Code), StringComparer.Ordinal)];
        Assert.True(missing.Length == 0, $"codes without an explanation in Formats/Explaining/Codes: {string.Join(", ", missing.Select(m => $"{m} ({given[m]})"))}");
        string[] idle = [.. All.Select(e => e.Code).Except(given.Keys, StringComparer.Ordinal)];
        Assert.True(idle.Length == 0, $"explanations of codes that nothing gives: {string.Join(", ", idle)}");
        Assert.All(NotCodes, n => Assert.Contains(n, given.Keys, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("yield return Finding.Note(\"word\", \"Text\");", "word")]
    [InlineData("throw new DesignRefusedException(\"a.b-c\", text);", "a.b-c")]
    [InlineData("Warn(\"strip.nose\", \"shape\", text);", "strip.nose")]
    [InlineData("x = bad ? \"a.one\" : \"a.two\";", "a.one,a.two")]
    [InlineData("y = brief.PlaceOf(\"wheel.web\");", "")]
    [InlineData("z = Read(\"page.css\");", "")]
    public void CodeScan_OfASource_FindsItsCodes(string statement, string codes)
    {
        Microsoft.CodeAnalysis.SyntaxNode root = CSharpSyntaxTree.ParseText($"class C {{ void M() {{ {statement} }} }}", cancellationToken: TestContext.Current.CancellationToken).GetRoot(TestContext.Current.CancellationToken);
        Assert.Equal(codes, string.Join(',', CodeScan.OfSource(root, [root])));
    }

    [Fact]
    public void CodeScan_CodePutTogether_IsFoundForEachCaller()
    {
        Microsoft.CodeAnalysis.SyntaxNode root = CSharpSyntaxTree.ParseText("class C { void M(int a, string o) { throw new DesignRefusedException($\"arguments.{o}\", \"no\"); } void N() { M(1, \"here\"); C.M(2, \"there\"); } }", cancellationToken: TestContext.Current.CancellationToken).GetRoot(TestContext.Current.CancellationToken);
        Assert.Equal("arguments.here,arguments.there", string.Join(',', CodeScan.OfSource(root, [root])));
    }

    [Fact]
    public void Explanations_Codes_StandOnceEach() => Assert.Equal(All.Count, All.Select(e => e.Code).Distinct(StringComparer.Ordinal).Count());

    [Theory]
    [MemberData(nameof(Codes))]
    public void Explanation_KeysCodesAndPicture_AreThere(string code)
    {
        Explanation explanation = All.First(e => string.Equals(e.Code, code, StringComparison.Ordinal));
        Assert.All(explanation.Notes.Keys, k => Assert.True(KnownKeys.Contains(k), $"{code}: there is no key '{k}'"));
        Assert.NotEmpty(explanation.Notes.See);
        Assert.All(explanation.Notes.See, s => Assert.Contains(s, All.Select(e => e.Code), StringComparer.Ordinal));
        Assert.DoesNotContain(code, explanation.Notes.See, StringComparer.Ordinal);
        if (explanation.Notes.Picture is string picture)
        {
            Assert.Contains(picture, ExplanationPictures.Names, StringComparer.Ordinal);
        }

        Assert.All((string[])[explanation.Notes.Why, explanation.Notes.Source, explanation.Notes.Cure, .. explanation.Meaning], w => Assert.EndsWith(".", w, StringComparison.Ordinal));
        Assert.False(explanation.Title.EndsWith('.'), explanation.Title);
    }

    /// <summary>A part of a parameter file may lack what stands elsewhere; what it says must be right.</summary>
    [Theory]
    [MemberData(nameof(Codes))]
    public void Explanation_ExampleOfAFile_HasKnownKeysAndGoodValues(string code)
    {
        ExplanationExample example = All.First(e => string.Equals(e.Code, code, StringComparison.Ordinal)).Example;
        Assert.NotEmpty(example.Lines);
        Assert.Contains(example.Language, (string[])["toml", "sh", "text"], StringComparer.Ordinal);
        if (example.Language is "toml")
        {
            ParameterResult read = ParameterReader.Read(System.Text.Encoding.UTF8.GetBytes(string.Join('\n', example.Lines) + "\n"));
            Diagnostic[] wrong = [.. read.Diagnostics.Where(d => !IsOfWhatIsLeftOut(d))];
            Assert.True(wrong.Length == 0, $"{code}: {string.Join("; ", wrong.Select(d => d.ToString("example")))}");
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void ExplanationLines_OfACode_FitAWindow(string code)
    {
        Explanation explanation = All.First(e => string.Equals(e.Code, code, StringComparison.Ordinal));
        string[] lines = [.. ExplanationLines.Of(explanation)];
        string[] words = [.. lines.Except(explanation.Example.Lines.Select(l => "  " + l), StringComparer.Ordinal)];
        Assert.All(words, l => Assert.True(l.Length <= ExplanationLines.Width, l));
        Assert.DoesNotContain(lines, l => l.Contains("**", StringComparison.Ordinal) || l.EndsWith(' '));
        Assert.Equal(code, lines[0]);
    }

    [Fact]
    public void Explanations_OfTheSamples_AreThereForEveryFinding()
    {
        string[] reports = Directory.GetFiles(Path.Combine(Repository(), "output-samples"), "report.json", SearchOption.AllDirectories);
        Assert.True(reports.Length >= 6);
        foreach (string report in reports)
        {
            using JsonDocument read = JsonDocument.Parse(File.ReadAllBytes(report));
            Assert.All(read.RootElement.GetProperty("findings").EnumerateArray(), f => Assert.NotNull(ExplanationBook.Find(f.GetProperty("code").GetString()!)));
        }
    }

    [Theory]
    [InlineData("spacing.creepage")]
    [InlineData("[spacing.creepage]")]
    [InlineData("Spacing.Creepage")]
    public void Find_AsItStandsBehindAFinding_IsFound(string written) => Assert.Equal("spacing.creepage", ExplanationBook.Find(written)?.Code);

    [Theory]
    [InlineData("# T\n\nw.\n\n## a.b: t\n\nm.\n\n- Why: w\n- Source: s\n- Cure: c\n\n```sh\nx\n```\n", null)]
    [InlineData("# T\n\nw.\n\n## a.b\n\nm.\n", "line 6: a heading is '## code: title'")]
    [InlineData("# T\n\nw.\n\n## a.b: t\n\n- Why: w\n- Source: s\n- Cure: c\n\n```sh\nx\n```\n", "'a.b' has no words of its own")]
    [InlineData("# T\n\nw.\n\n## a.b: t\n\nm.\n\n- Why: w\n\n```sh\nx\n```\n", "'Source' is missing above")]
    [InlineData("# T\n\nw.\n\n## a.b: t\n\nm.\n\n- Why: w\n- Why: w\n", "each name once")]
    [InlineData("# T\n\nw.\n\n## a.b: t\n\nm.\n\n- Why: w\n- Source: s\n- Cure: c\n", "an example in a fence")]
    public void Read_TextThatIsLaidOutOtherwise_SaysWhere(string text, string? wrong)
    {
        if (wrong is null)
        {
            Assert.Equal("a.b", ExplanationReader.Read("f", text).Codes[0].Code);
        }
        else
        {
            Assert.Contains(wrong, Assert.Throws<FormatException>(() => ExplanationReader.Read("f", text)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Pictures_Texts_LieOnTheirPaperApart()
    {
        foreach (WheelDraft.Drawing.Primer primer in WheelDraft.Drawing.Primer.All)
        {
            Assert.Empty(SheetAudit.OverlappingTexts(primer.ToSheet()));
            Assert.Empty(SheetAudit.TextsOffPaper(primer.ToSheet()));
        }
    }

    [Fact]
    public void Pictures_All_AreUsed() => Assert.All(ExplanationPictures.Names, n => Assert.Contains(All, e => string.Equals(e.Notes.Picture, n, StringComparison.Ordinal)));

    private static readonly HashSet<string> KnownKeys = [.. KeyReference.All().SelectMany(k => (string[])[$"{k.Table.Trim('[', ']').Replace("the file", "file", StringComparison.Ordinal)}.{k.Name}", k.Table.Trim('[', ']')])];

    // "[wheel] has no 'bore', which decides what the wheel sits on"; ""floor" is no surface; there is no surface in the file".
    private static bool IsOfWhatIsLeftOut(Diagnostic found) =>
        found.Wrong.Contains(", which decides ", StringComparison.Ordinal) || found.Wrong.StartsWith("nothing else is on the net", StringComparison.Ordinal)
        || Enumerable.Any<string>(["surface", "input", "output", "load", "input or output"], w => found.Wrong.EndsWith($"is no {w}", StringComparison.Ordinal));

    private static string Repository()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "WheelDraft.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }
}
