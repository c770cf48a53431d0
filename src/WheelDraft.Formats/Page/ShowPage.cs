using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Formats.Report;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

// The folder "Page": a design as one page to look at and play with. The markup is made here, once; in "Browser" page.css is its look,
// words.js says its words in the language of its readers, solver.js solves the circuit at one instant, sections.js part by part so that little is solved anew, chart.js and
// picture.js show it, page.js moves what moves, screws.js, story.js and link.js what their names say, and fit.js keeps the time at hand and the print on two pages. The page loads nothing but itself.

/// <summary>Writes show/index.html: one self-contained page on which the wheel turns and the lamps light.</summary>
internal static partial class ShowPage
{
    // In the order in which each finds those before it.
    internal static readonly string[] Scripts = ["words.js", "solver.js", "sections.js", "chart.js", "picture.js", "page.js", "screws.js", "story.js", "link.js", "fit.js"];

    /// <summary>The page, UTF-8, lines ending in a line feed; the same bytes for the same design.</summary>
    /// <param name="design">The design.</param>
    /// <param name="measured">What a bench log of a made wheel says, laid over the chart of the turn; null for the design alone.</param>
    public static byte[] Write(Design design, BenchComparison? measured = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        string style = PageText.Read("page.css");
        string script = string.Concat(Scripts.Select(PageText.Read));
        CircuitNetwork network = design.Circuit.Network;
        Dictionary<string, string> parts = new(StringComparer.Ordinal)
        {
            ["policy"] = Policy(style, script),
            ["title"] = SvgMarkup.Escaped(design.Brief.Title),
            ["number"] = SvgMarkup.Escaped(design.Brief.DrawingNumber ?? ""),
            ["facts"] = ShowWords.Facts(design),
            ["verdict"] = ShowWords.Verdict(design),
            ["intro"] = ShowWords.Intro(design),
            ["screws"] = Joined(ShowScrews.Write(design)),
            ["stories"] = Joined(ShowStories.Write(design)),
            ["embed"] = SvgMarkup.Escaped(ShowLink.Frame(design, "index.html")),
            ["style"] = style,
            ["script"] = script,
            ["data"] = ShowData.Write(design, network),
            ["turn"] = FixedPoint.Short(design.Motion.TurnTimeS, 9),
            ["wheel"] = Joined(ShowWheel.Write(design, network)),
            ["key-made"] = design.Wheel.Feed is null ? "on a land" : "touches copper",
            ["key-open"] = design.Wheel.Feed is null ? "between lands" : "over a window",
            ["chart"] = Joined(ShowChart.Write(design, network, measured)),
            ["wiring"] = Joined(ShowWiring.Write(design, network)),
            ["inputs"] = Joined(ShowControls.Inputs(design)),
            ["lamps"] = Joined(ShowControls.Lamps(network)),
            ["faults"] = Joined(ShowControls.Faults(design)),
            ["interlocks"] = Joined(ShowControls.Interlocks(design)),
            ["times"] = Joined(ShowTables.Times(design)),
            ["truth"] = Joined(ShowTruth.Write(design)),
            ["input"] = design.Brief.InputMark.Length > 0 ? $" Input {design.Brief.InputMark}." : "",
            ["cautions"] = string.Concat(Cautions.For(design).Select(c => $"<li>{SvgMarkup.Escaped(c)}</li>\n")),
        };
        return Encoding.UTF8.GetBytes(MarkupWords.Read(PageText.Fill(PageText.Read("page.html"), parts)));
    }

    // A browser makes a node of every line break between two tags, a thousand and more in a large page; of one inside a tag it makes none.
    private static string Joined(string markup) => Between().Replace(markup, "><${tag}\n");

    [GeneratedRegex(@">\n<(?<tag>/?\w+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, Budgets.PatternMs)]
    private static partial Regex Between();

    /// <summary>Nothing from anywhere; the one style and the one script that carry these hashes.</summary>
    private static string Policy(string style, string script) =>
        $"default-src 'none'; style-src '{Hash(style)}'; script-src '{Hash(script)}'; base-uri 'none'; form-action 'none'";

    private static string Hash(string text) => $"sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}";
}
