using System.Text;
using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace WheelDraft.Formats.Handbook;

/// <summary>The guide as a site: one HTML file a page, everything in it, opened from disk.</summary>
internal sealed class HandbookSite
{
    private const string Policy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().UseAutoIdentifiers(AutoIdentifierOptions.GitHub).DisableHtml().Build();

    private readonly IReadOnlyList<HandbookPage> _pages = HandbookPages.All();
    private readonly string _made;

    private HandbookSite(string made) => _made = made;

    /// <summary>The files of the site.</summary>
    /// <param name="made">What made it, name and version, for the foot of each page.</param>
    public static IReadOnlyList<(string Name, byte[] Bytes)> Files(string made)
    {
        HandbookSite site = new(made);
        return [.. site._pages.Select(p => ($"{p.Name}.html", Encoding.UTF8.GetBytes(site.Page(p))))];
    }

    private string Page(HandbookPage page)
    {
        string links = string.Concat(_pages.Select(p => $"<li><a href=\"{p.Name}.html\"{(p == page ? " aria-current=\"page\"" : "")}>{Escaped(p.Title)}</a></li>\n"));
        return $"<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"{Policy}\">\n"
            + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n"
            + $"<title>{Escaped(page.Title)} · WheelDraft</title>\n<style>\n{HandbookPages.Style()}</style>\n</head>\n<body>\n"
            + $"<nav aria-label=\"Pages of the guide\">\n<ul>\n{links}</ul>\n</nav>\n<main>\n{Body(page)}</main>\n"
            + $"<footer>\n<p><strong>Caution.</strong> {HandbookPages.Caution}</p>\n<p>{Escaped(_made)}</p>\n</footer>\n</body>\n</html>\n";
    }

    private string Body(HandbookPage page)
    {
        // Lines for the tests alone, as comments.
        string text = string.Join('\n', page.Markdown.Split('\n').Where(l => !l.StartsWith("<!--", StringComparison.Ordinal)));
        MarkdownDocument document = Markdown.Parse(text, Pipeline);
        foreach (LinkInline link in document.Descendants<LinkInline>())
        {
            link.Url = link.IsImage ? Inside(link.Url ?? "") : Target(link.Url ?? "");
        }

        return document.ToHtml(Pipeline).Replace("<pre>", "<pre tabindex=\"0\">", StringComparison.Ordinal).Replace("<table>", "<div class=\"table\" tabindex=\"0\" role=\"group\" aria-label=\"Table\"><table>", StringComparison.Ordinal).Replace("</table>", "</table></div>", StringComparison.Ordinal);
    }

    // The pages of docs/ lie in one folder here, whatever folder they are in there.
    private string Target(string url)
    {
        (string file, string part) = url.Split('#', 2) is [var before, var after] ? (before, "#" + after) : (url, "");
        string name = Path.GetFileNameWithoutExtension(file);
        return file.EndsWith(".md", StringComparison.Ordinal) && _pages.Any(p => string.Equals(p.Name, name, StringComparison.Ordinal)) ? $"{name}.html{part}" : url;
    }

    private static string Inside(string place) => HandbookPages.Picture(place) is string svg ? $"data:image/svg+xml;base64,{Convert.ToBase64String(Encoding.UTF8.GetBytes(svg))}" : place;

    private static string Escaped(string words) => words.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal);
}
