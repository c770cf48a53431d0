using System.Buffers;
using System.Buffers.Text;
using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Prose;

/// <summary>Writes a page as one self-contained HTML file: no script, no network, pictures inside; printed, its pages are numbered.</summary>
/// <remarks>The words are those of the Markdown page; tables are whole, since a browser wraps their cells.</remarks>
internal static class HtmlWriter
{
    private const string Policy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

    /// <summary>The bytes of the page.</summary>
    /// <param name="page">The page.</param>
    /// <param name="pictures">The SVG file of each picture by its place beside the page; one that was not made is left out.</param>
    public static byte[] Write(ProsePage page, IReadOnlyDictionary<string, byte[]> pictures)
    {
        HtmlText html = new();
        string title = page.Blocks.OfType<ProseHeading>().FirstOrDefault()?.Words ?? "";
        html.Append($"<!DOCTYPE html>\n<html lang=\"{ReadersWords.Language}\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append($"<meta http-equiv=\"Content-Security-Policy\" content=\"{Policy}\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light\">\n<meta name=\"generator\" content=\"WheelDraft\">\n")
            .Append($"<title>{Escaped(title)}</title>\n<style>\n{Style()}</style>\n</head>\n<body>\n<main>\n");
        Queue<ProseAnchor> parts = new(ProseAnchor.Of(page));
        foreach (ProseBlock block in page.Blocks)
        {
            Add(html, block, (page, parts, pictures));
        }

        return html.Append("</main>\n</body>\n</html>\n").ToArray();
    }

    private static void Add(HtmlText html, ProseBlock block, (ProsePage Page, Queue<ProseAnchor> Parts, IReadOnlyDictionary<string, byte[]> Pictures) of)
    {
        switch (block)
        {
            case ProseHeading heading:
                string level = Wording.Number(heading.Level, 0);
                string id = heading.Level == 2 && of.Parts.TryPeek(out ProseAnchor part) && string.Equals(part.Words, heading.Words, StringComparison.Ordinal) ? $" id=\"{of.Parts.Dequeue().Id}\"" : "";
                html.Append($"<h{level}{id}>{Inline(heading.Words)}</h{level}>\n");
                break;
            case ProseParagraph paragraph:
                html.Append($"<p>{Inline(paragraph.Words)}</p>\n");
                break;
            case ProseList list:
                string kind = list.IsNumbered ? "ol" : "ul";
                html.Append($"<{kind}>\n{string.Concat(list.Items.Select(i => $"<li>{Inline(i)}</li>\n"))}</{kind}>\n");
                break;
            case ProseTable table:
                Table(html, table);
                break;
            case ProsePicture picture:
                if (of.Pictures.TryGetValue(picture.File, out byte[]? svg))
                {
                    html.Append($"<figure><img alt=\"{Escaped(picture.Caption)}\" src=\"data:image/svg+xml;base64,").AppendBase64(svg).Append($"\"><figcaption>{Inline(picture.Caption)}</figcaption></figure>\n");
                }

                break;
            case ProseContents:
                html.Append($"<nav aria-label=\"{Escaped(ReadersWords.Read("Contents"))}\">\n<ul>\n{string.Concat(ProseAnchor.Of(of.Page).Select(a => $"<li><a href=\"#{a.Id}\">{Inline(a.Words)}</a></li>\n"))}</ul>\n</nav>\n");
                break;
            default:
                throw new NotSupportedException($"A block of kind {block.GetType().Name}.");
        }
    }

    // Wide ones scroll by themselves on a narrow screen, reached by keys too.
    private static void Table(HtmlText html, ProseTable table)
    {
        html.Append("<div class=\"table\" tabindex=\"0\" role=\"group\" aria-label=\"Table\">\n<table>\n<thead><tr>")
            .Append(string.Concat(table.Head.Select(h => $"<th scope=\"col\">{Inline(h)}</th>"))).Append("</tr></thead>\n<tbody>\n");
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            html.Append($"<tr>{string.Concat(row.Select((c, i) => i == 0 ? $"<th scope=\"row\">{Inline(c)}</th>" : $"<td{(IsFigure(c) ? " class=\"n\"" : "")}>{Inline(c)}</td>"))}</tr>\n");
        }

        html.Append("</tbody>\n</table>\n</div>\n");
    }

    // A figure, or one with another in brackets: right-aligned.
    private static bool IsFigure(string cell) => cell.Length > 0 && cell.All(c => char.IsAsciiDigit(c) || c is '.' or '-' or '−' or '+' or ' ' or '(' or ')');

    /// <summary>Words with their **strong** and `code` marks turned into elements; an odd mark stays as it is.</summary>
    private static string Inline(string words) => Marked(Marked(Escaped(words), "**", "strong"), "`", "code");

    private static string Marked(string html, string mark, string element)
    {
        string[] pieces = html.Split(mark);
        int whole = pieces.Length % 2 == 1 ? pieces.Length : pieces.Length - 1;
        StringBuilder text = new(pieces[0]);
        for (int i = 1; i < pieces.Length; i++)
        {
            text.Append(i >= whole ? mark : i % 2 == 1 ? $"<{element}>" : $"</{element}>").Append(pieces[i]);
        }

        return text.ToString();
    }

    private static string Escaped(string words) => words.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal);

    private static string Style()
    {
        using Stream stream = typeof(HtmlWriter).Assembly.GetManifestResourceStream("Prose.prose.css") ?? throw new InvalidOperationException("The look of reports is not in the program.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    // The page as it grows, in UTF-8: with its pictures it is some megabytes, too much to be copied as text first.
    private sealed class HtmlText
    {
        private readonly ArrayBufferWriter<byte> _bytes = new();

        public HtmlText Append(string text)
        {
            _bytes.Advance(Encoding.UTF8.GetBytes(text, _bytes.GetSpan(Encoding.UTF8.GetMaxByteCount(text.Length))));
            return this;
        }

        public HtmlText AppendBase64(byte[] file)
        {
            _ = Base64.EncodeToUtf8(file, _bytes.GetSpan(Base64.GetMaxEncodedToUtf8Length(file.Length)), out _, out int written);
            _bytes.Advance(written);
            return this;
        }

        public byte[] ToArray() => _bytes.WrittenSpan.ToArray();
    }
}
