namespace WheelDraft.Formats.Handbook;

// The folder "Handbook": the guide for people who use the program. Its pages are the Markdown files of docs/, which are part of the program, and two that are
// made from its own definitions: every key, every code. Here they become one site of plain files that needs no network and no script.

/// <summary>A page of the guide.</summary>
/// <param name="Name">Its file without the end: <c>first-wheel</c>.</param>
/// <param name="Markdown">Its text; the first line is its heading.</param>
internal sealed record HandbookPage(string Name, string Markdown)
{
    /// <summary>The words of its heading.</summary>
    public string Title => Markdown.Split('\n', 2)[0].TrimStart('#', ' ');
}
