namespace WheelDraft.Tests.Handbook;

/// <summary>A fenced block of a page of the guide.</summary>
/// <param name="Info">What stands behind the fence: <c>sh</c>, <c>text</c>, <c>toml my-wheel.toml: before</c>.</param>
/// <param name="From">Its first line in the page, from 0, without the fence.</param>
/// <param name="Lines">Its lines.</param>
internal sealed record ShownBlock(string Info, int From, string[] Lines)
{
    private const string Fence = "```";

    /// <summary>The words of the block, each line ended.</summary>
    public string Text => string.Concat(Lines.Select(l => l + "\n"));

    /// <summary>The blocks of a page, in order.</summary>
    public static IReadOnlyList<ShownBlock> Of(string[] page)
    {
        List<ShownBlock> blocks = [];
        for (int i = 0; i < page.Length; i++)
        {
            if (page[i].StartsWith(Fence, StringComparison.Ordinal))
            {
                int end = Array.IndexOf(page, Fence, i + 1);
                blocks.Add(new(page[i][Fence.Length..], i + 1, page[(i + 1)..end]));
                i = end;
            }
        }

        return blocks;
    }

    /// <summary>Whether an output is as shown: line by line, where "…" stands for any lines, or for the rest of a line.</summary>
    public static bool IsShown(string[] shown, string[] output) => shown.Length == 0
        ? output.Length == 0
        : shown[0] is "…"
            ? Enumerable.Range(0, output.Length + 1).Any(skip => IsShown(shown[1..], output[skip..]))
            : output.Length > 0 && IsLine(shown[0], output[0]) && IsShown(shown[1..], output[1..]);

    private static bool IsLine(string shown, string line) => shown.EndsWith('…') ? line.StartsWith(shown[..^1].TrimEnd(), StringComparison.Ordinal) : string.Equals(shown, line, StringComparison.Ordinal);
}
