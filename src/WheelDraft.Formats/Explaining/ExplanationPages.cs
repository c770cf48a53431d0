using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Explaining;

/// <summary>All explanations as one page in Markdown.</summary>
internal static class ExplanationPages
{
    /// <summary>The page, LF line ends.</summary>
    /// <param name="pictures">The folder of the pictures, from the page; null leaves pictures out.</param>
    public static string Page(string? pictures)
    {
        IReadOnlyList<ExplanationFamily> families = ExplanationBook.Families();
        StringBuilder page = new("# Every code of a finding\n\nWritten by `wheeldraft explain --page`. A finding ends with its code in brackets; `wheeldraft explain CODE` shows in the terminal what stands here. Mains voltage kills: a finding that is cured is no permission to touch what is live.\n");
        foreach (ExplanationFamily family in families)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n- [{family.Title}](#{Anchor(family.Title)}): {string.Join(", ", family.Codes.Select(c => $"[{c.Code}](#{Anchor(c.Code)})"))}");
        }

        page.Append('\n');
        Dictionary<string, string> shown = new(StringComparer.Ordinal);
        foreach (ExplanationFamily family in families)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {family.Title}\n\n{family.Words}\n");
            foreach (Explanation explanation in family.Codes)
            {
                One(page, explanation, pictures is null ? "" : Picture(explanation, pictures, shown));
            }
        }

        return page.ToString();
    }

    // Each picture once on the page; after that a link to where it is.
    private static string Picture(Explanation explanation, string pictures, Dictionary<string, string> shown) =>
        explanation.Notes.Picture is not string picture ? ""
        : shown.TryAdd(picture, explanation.Code) ? $"\n![{ExplanationPictures.Caption(picture)}]({pictures}/{picture}.svg)\n"
        : $"\nThe picture at [{shown[picture]}](#{Anchor(shown[picture])}) shows it.\n";

    private static void One(StringBuilder page, Explanation explanation, string picture)
    {
        ExplanationNotes notes = explanation.Notes;
        page.Append(CultureInfo.InvariantCulture, $"\n### {explanation.Code}\n\n**{explanation.Title}.** {string.Join("\n\n", explanation.Meaning)}\n{picture}\n- **Why it matters:** {notes.Why}\n- **Source:** {notes.Source}\n- **How to cure it:** {notes.Cure}\n");
        if (notes.Keys.Count > 0)
        {
            page.Append(CultureInfo.InvariantCulture, $"- **Keys:** {string.Join(", ", notes.Keys.Select(k => $"`{k}`"))}\n");
        }

        page.Append(CultureInfo.InvariantCulture, $"- **See also:** {string.Join(", ", notes.See.Select(s => $"[{s}](#{Anchor(s)})"))}\n")
            .Append(CultureInfo.InvariantCulture, $"\n```{explanation.Example.Language}\n{string.Join('\n', explanation.Example.Lines)}\n```\n");
    }

    /// <summary>The name by which a link finds a heading, as readers of Markdown make it: small letters, dots dropped, blanks as hyphens.</summary>
    public static string Anchor(string heading) =>
        string.Concat(heading.ToLowerInvariant().Where(c => char.IsLetterOrDigit(c) || c is '-' or '_' or ' ').Select(c => c == ' ' ? '-' : c));
}
