using System.Text.RegularExpressions;
using WheelDraft.Cli;
using WheelDraft.Formats.Explaining;
using WheelDraft.Formats.Handbook;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Handbook;

/// <summary>The guide: every command and output in it, its links and pictures, its cautions, and the site that is made of it.</summary>
/// <remarks><c>WHEELDRAFT_RENEW_GUIDE=1</c> writes outputs, pictures and the page of codes again; outputs that are shown in part ("…") are kept.</remarks>
public sealed partial class HandbookTests
{
    private static readonly string Docs = Path.Combine(Repository(), "docs");
    private static readonly bool Renew = Environment.GetEnvironmentVariable("WHEELDRAFT_RENEW_GUIDE") is not null;

    public static TheoryData<string> Pages => [.. Directory.GetFiles(Docs, "*.md").Select(f => Path.GetFileNameWithoutExtension(f)).Where(n => n is not "codes").Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_FollowedFromTopToBottom_DoesWhatItShows(string page) => new HandbookSession(Path.Combine(Docs, page + ".md"), Renew).Follow();

    [Fact]
    public void CodesPage_IsWhatTheProgramWrites()
    {
        string file = Path.Combine(Docs, "codes.md"), page = ExplanationPages.Page("pictures/codes");
        if (Renew)
        {
            Directory.CreateDirectory(Path.Combine(Docs, "pictures/codes"));
            File.WriteAllText(file, page);
            foreach (string name in ExplanationPictures.Names)
            {
                File.WriteAllText(Path.Combine(Docs, $"pictures/codes/{name}.svg"), ExplanationPictures.Svg(name));
            }
        }

        Assert.True(string.Equals(page, File.ReadAllText(file), StringComparison.Ordinal), "docs/codes.md: WHEELDRAFT_RENEW_GUIDE=1 writes it again");
        Assert.Equal(ExplanationPictures.Names.Order(StringComparer.Ordinal), Directory.GetFiles(Path.Combine(Docs, "pictures/codes")).Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal));
        Assert.All(ExplanationPictures.Names, n => Assert.Equal(ExplanationPictures.Svg(n), File.ReadAllText(Path.Combine(Docs, $"pictures/codes/{n}.svg"))));
    }

    [Fact]
    public void Pages_All_CarryTheCaution() => Assert.All(Directory.GetFiles(Docs, "*.md"), f => Assert.Contains("Mains voltage kills", File.ReadAllText(f), StringComparison.Ordinal));

    /// <summary>Commands and options that are named in a sentence are not run; they are there.</summary>
    [Fact]
    public void Pages_CommandsAndOptionsInSentences_AreKnown()
    {
        CommandWords program = CommandWords.Of(new Switches().Root(CommandList.All(), new Surroundings { Out = TextWriter.Null, Error = TextWriter.Null, Folder = null }));
        string[] options = [.. program.All.SelectMany(c => c.Options).SelectMany(o => o.Names)];
        int named = 0;
        foreach (string file in Directory.GetFiles(Docs, "*.md"))
        {
            foreach (string[] words in InCode().Matches(Fenced().Replace(File.ReadAllText(file), "")).Select(m => m.Groups["code"].Value.Split(' ')).Where(w => w[0] is "wheeldraft" || w[0].StartsWith("--", StringComparison.Ordinal)))
            {
                named++;
                CommandWords? command = words[0] is "wheeldraft" && words.Length > 1 ? program.Parts.FirstOrDefault(c => string.Equals(c.Name, words[1], StringComparison.Ordinal)) : null;
                Assert.True(words[0] is not "wheeldraft" || words.Length == 1 || command is not null || words[1].StartsWith("--", StringComparison.Ordinal), $"{Path.GetFileName(file)}: {string.Join(' ', words)}");
                string[] known = command is null ? options : [.. command.All.SelectMany(c => c.Options).SelectMany(o => o.Names)];
                Assert.All(words.Where(w => w.StartsWith('-') && w.Length > 1), w => Assert.Contains(w.Split('=')[0], known, StringComparer.Ordinal));
            }
        }

        Assert.True(named > 30);
    }

    [Fact]
    public void Pages_LinksAndPictures_LeadToWhatIsThere()
    {
        foreach (string file in Directory.GetFiles(Docs, "*.md"))
        {
            string text = File.ReadAllText(file);
            foreach (string target in Link().Matches(text).Select(m => m.Groups["to"].Value).Where(t => !t.StartsWith("https:", StringComparison.Ordinal)))
            {
                string[] parts = target.Split('#');
                string aim = parts[0].Length == 0 ? file : Path.GetFullPath(Path.Combine(Docs, parts[0]));
                Assert.True(File.Exists(aim), $"{Path.GetFileName(file)} links to {target}");
                if (parts.Length == 2)
                {
                    string[] anchors = [.. File.ReadAllLines(aim).Where(l => l.StartsWith('#')).Select(l => ExplanationPages.Anchor(l.TrimStart('#', ' ')))];
                    Assert.True(anchors.Contains(parts[1], StringComparer.Ordinal), $"{Path.GetFileName(file)} links to {target}");
                }
            }
        }
    }

    [Fact]
    public void Site_EveryPage_StandsAloneWithCautionAndLinksThatLeadOn()
    {
        IReadOnlyList<(string Name, byte[] Bytes)> files = HandbookSite.Files("Written by WheelDraft 1.2.3.");
        string[] names = [.. files.Select(f => f.Name)];
        Assert.Equal(Directory.GetFiles(Docs, "*.md").Select(f => Path.GetFileNameWithoutExtension(f) + ".html").Concat(["keys.html", "measuring-an-old-wheel.html"]).Order(StringComparer.Ordinal), names.Order(StringComparer.Ordinal));
        foreach ((string name, byte[] bytes) in files)
        {
            string html = System.Text.Encoding.UTF8.GetString(bytes);
            Assert.Contains(HandbookPages.Caution, html, StringComparison.Ordinal);
            Assert.Contains("Written by WheelDraft 1.2.3.", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<!-- ", html, StringComparison.Ordinal);
            Assert.All(Source().Matches(html).Select(m => m.Groups["to"].Value), s => Assert.StartsWith("data:image/svg+xml", s, StringComparison.Ordinal));
            foreach (string target in Reference().Matches(html).Select(m => m.Groups["to"].Value))
            {
                string[] parts = target.Split('#');
                string aim = parts[0].Length == 0 ? name : parts[0];
                Assert.True(names.Contains(aim, StringComparer.Ordinal), $"{name} links to {target}");
                if (parts.Length == 2)
                {
                    Assert.Contains($" id=\"{parts[1]}\"", System.Text.Encoding.UTF8.GetString(files.First(f => string.Equals(f.Name, aim, StringComparison.Ordinal)).Bytes), StringComparison.Ordinal);
                }
            }
        }
    }

    [Fact]
    public void Guide_WrittenTwice_IsTheSame()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("guide", "-o", "site"));
        Assert.Contains("pages; open", run.Error, StringComparison.Ordinal);
        string first = File.ReadAllText(run.PathOf("site/index.html"));
        Assert.Equal(0, run.Run("guide", "-o", "site"));
        Assert.Equal(first, File.ReadAllText(run.PathOf("site/index.html")));
        File.WriteAllText(run.PathOf("mine.txt"), "");
        Assert.Equal(3, run.Run("guide", "-o", "mine.txt"));
    }

    /// <summary>Every file that make writes is in the list, and the list has no other.</summary>
    [Fact]
    public void FilesPage_HoldsEveryFileAndNoOther()
    {
        string[] shown = [.. File.ReadLines(Path.Combine(Docs, "files.md")).Where(l => l.StartsWith("| `", StringComparison.Ordinal)).SelectMany(l => InCode().Matches(l.Split('|')[1]).Select(m => m.Groups["code"].Value))];
        Regex[] patterns = [.. shown.Select(p => new Regex($"^{Regex.Escape(p).Replace("NAME", "[a-z0-9-]+", StringComparison.Ordinal)}$", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1)))];
        HashSet<string> made = [.. Directory.GetDirectories(Path.Combine(Repository(), "output-samples")).SelectMany(d => Directory.GetFiles(d, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(d, f).Replace('\\', '/')))];
        made.UnionWith(MadeWithEveryOption());
        Assert.All(made, f => Assert.True(patterns.Any(p => p.IsMatch(f)), $"{f} is not in docs/files.md"));
        Assert.All(patterns.Zip(shown), p => Assert.True(made.Any(f => p.First.IsMatch(f)), $"nothing makes {p.Second}"));
    }

    private static string[] MadeWithEveryOption()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("new", "a.toml", "--like", "low-voltage"));
        File.AppendAllText(run.PathOf("a.toml"), "\n[[sheet]]\nmaterial = \"C26000-H02\"\nthickness = \"0.8 mm\"\nsize = [\"300 mm\", \"200 mm\"]\ngap = \"2 mm\"\nsets = 1\n");
        File.WriteAllText(run.PathOf("a.toml"), File.ReadAllText(run.PathOf("a.toml")).Replace("name = \"fretsaw\"", "name = \"fretsaw\"\nkerf = \"0.3 mm\"", StringComparison.Ordinal));
        Assert.Equal(0, run.Run("make", "a.toml", "--only", "cut,draw,png", "--cut", "dxf,svg", "--nominal", "--frame", "5 s", "--frames", "1", "--film", "svg,apng", "--film-width", "240", "--figure=80", "--dpi", "20"));
        return [.. Directory.GetFiles(run.PathOf("out/a"), "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(run.PathOf("out/a"), f).Replace('\\', '/'))];
    }

    private static string Repository()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "WheelDraft.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }

    [GeneratedRegex(@"\]\((?<to>[^)\s]+)\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Link();

    [GeneratedRegex("href=\"(?<to>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Reference();

    [GeneratedRegex("src=\"(?<to>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Source();

    [GeneratedRegex("```.*?```", RegexOptions.Singleline, 1000)]
    private static partial Regex Fenced();

    [GeneratedRegex("`(?<code>[^`]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex InCode();
}
