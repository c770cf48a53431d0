using System.Security.Cryptography;
using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Report;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

// The folder "Page": a design as one page to look at and play with. The markup is made here, once; in "Browser" page.css is its look,
// words.js says its words in the language of its readers, solver.js solves the circuit at one instant, sections.js part by part so that little is solved anew, chart.js and
// picture.js show it, page.js moves what moves, screws.js, story.js and link.js what their names say, and fit.js keeps the time at hand and the print on two pages. The page loads nothing but itself.

/// <summary>Writes show/index.html: one self-contained page on which the wheel turns and the lamps light.</summary>
internal static class ShowPage
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
            ["screws"] = ShowScrews.Write(design),
            ["stories"] = ShowStories.Write(design),
            ["embed"] = SvgMarkup.Escaped(ShowLink.Frame(design, "index.html")),
            ["style"] = style,
            ["script"] = script,
            ["data"] = ShowData.Write(design, network),
            ["turn"] = FixedPoint.Short(design.Motion.TurnTimeS, 9),
            ["wheel"] = ShowWheel.Write(design, network),
            ["key-made"] = design.Wheel.Feed is null ? "on a land" : "touches copper",
            ["key-open"] = design.Wheel.Feed is null ? "between lands" : "over a window",
            ["chart"] = ShowChart.Write(design, network, measured),
            ["wiring"] = ShowWiring.Write(design, network),
            ["inputs"] = ShowControls.Inputs(design),
            ["lamps"] = ShowControls.Lamps(network),
            ["faults"] = ShowControls.Faults(design),
            ["interlocks"] = ShowControls.Interlocks(design),
            ["times"] = ShowTables.Times(design),
            ["truth"] = ShowTables.Truth(design),
            ["input"] = design.Brief.InputMark.Length > 0 ? $" Input {design.Brief.InputMark}." : "",
            ["cautions"] = string.Concat(Cautions.For(design).Select(c => $"<li>{SvgMarkup.Escaped(c)}</li>\n")),
        };
        return Encoding.UTF8.GetBytes(MarkupWords.Read(PageText.Fill(PageText.Read("page.html"), parts)));
    }

    /// <summary>Nothing from anywhere; the one style and the one script that carry these hashes.</summary>
    private static string Policy(string style, string script) =>
        $"default-src 'none'; style-src '{Hash(style)}'; script-src '{Hash(script)}'; base-uri 'none'; form-action 'none'";

    private static string Hash(string text) => $"sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}";
}
