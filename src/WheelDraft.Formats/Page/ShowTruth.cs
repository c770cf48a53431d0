using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

/// <summary>The truth table, for readers, screen readers and the printed handout: one row an interval of the turn.</summary>
/// <remarks>A small one has a column a load. In a large one nearly every cell would say "off", forty of them side by side in rows by the hundred, and the browser would lay out
/// tens of thousands of parts at each change: there a row names what is on, and leaves out what is off.</remarks>
internal static class ShowTruth
{
    // Cells up to which every load has its own column; twelve loads are as many as a screen shows without scrolling, and eighty rows as many as anyone scrolls through.
    private const int MostCells = 960;

    /// <summary>What every load does in every interval of the turn, whatever the inputs do.</summary>
    public static string Write(Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        bool isLarge = circuit.Intervals.Count * circuit.Loads.Count > MostCells;
        return isLarge ? Named(design) : Columns(design);
    }

    private static string Columns(Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        Markup html = Head(circuit.Loads.Select(l => SvgMarkup.Escaped(l)));
        for (int i = 0; i < circuit.Intervals.Count; i++)
        {
            Row(html, design, i, string.Concat(Enumerable.Range(0, circuit.Loads.Count).Select(l => Entry(circuit.Truth(i, l)))));
        }

        return html.Add("</tbody>\n</table>\n").ToString();
    }

    /// <summary>By name: what is on; what inputs decide, by their position; what cannot be decided. A column that no row needs is left out.</summary>
    private static string Named(Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        (string Load, TruthEntry Entry)[][] rows = [.. Enumerable.Range(0, circuit.Intervals.Count)
            .Select(i => circuit.Loads.Select((load, l) => (load, circuit.Truth(i, l))).ToArray())];
        (string Title, Func<(string Load, TruthEntry Entry)[], string> Cell)[] columns = [.. Kinds.Where(k => rows.Any(r => k.Cell(r).Length > 0))];
        Markup html = new Markup().Add("<p class=\"hint\">What a row does not name is off.</p>\n").Add(Head(columns.Select(c => c.Title)).ToString());
        for (int i = 0; i < rows.Length; i++)
        {
            Row(html, design, i, string.Concat(columns.Select(c => c.Cell(rows[i]) is { Length: > 0 } cell ? cell : "<td></td>")));
        }

        return html.Add("</tbody>\n</table>\n").ToString();
    }

    private static readonly (string Title, Func<(string Load, TruthEntry Entry)[], string> Cell)[] Kinds =
    [
        ("On", row => Names(row, LoadTruth.On) is { Length: > 0 } names ? $"<td class=\"on\">● {names}</td>" : ""),
        ("On when", row => ByCondition(row, LoadTruth.WithInputs) is { Length: > 0 } names ? $"<td class=\"with\">◐ {names}</td>" : ""),
        ("Undecided", row => ByCondition(row, LoadTruth.Undecided) is { Length: > 0 } names ? $"<td class=\"unsure\">? {names}</td>" : ""),
    ];

    private static string Names(IEnumerable<(string Load, TruthEntry Entry)> row, LoadTruth truth) =>
        SvgMarkup.Escaped(string.Join(", ", row.Where(r => r.Entry.Truth == truth).Select(r => r.Load)));

    // "door open: valve 2, valve 4; door open, start closed: valve 7": each condition once, in the order of the loads. What has none stands first.
    private static string ByCondition((string Load, TruthEntry Entry)[] row, LoadTruth truth) =>
        SvgMarkup.Escaped(string.Join("; ", row.Where(r => r.Entry.Truth == truth)
            .GroupBy(r => r.Entry.Condition, r => r.Load, StringComparer.Ordinal)
            .OrderBy(g => g.Key.Length > 0)
            .Select(g => string.Join(": ", ((string[])[When(g.Key, truth), string.Join(", ", g)]).Where(w => w.Length > 0)))));

    private static string When(string condition, LoadTruth truth) => condition.Length > 0 && truth == LoadTruth.Undecided ? $"on with {condition}" : condition;

    private static Markup Head(IEnumerable<string> titles) =>
        new Markup().Add($"<table class=\"truth\">\n<thead><tr><th scope=\"col\">From</th>{string.Concat(titles.Select(t => $"<th scope=\"col\">{t}</th>"))}</tr></thead>\n<tbody>\n");

    private static void Row(Markup html, Design design, int interval, string cells)
    {
        double from = design.Motion.SecondsFromRad(design.Circuit.Intervals[interval].FromRad);
        html.Put($"<tr data-from=\"{FixedPoint.Short(from, 9)}\"><th scope=\"row\">{Wording.Seconds(from)}</th>").Add(cells).Add("</tr>\n");
    }

    private static string Entry(TruthEntry entry) => entry.Truth switch
    {
        LoadTruth.On => "<td class=\"on\">● on</td>",
        LoadTruth.Off => "<td class=\"off\">off</td>",
        LoadTruth.WithInputs => $"<td class=\"with\">◐ {SvgMarkup.Escaped(entry.Condition)}</td>",
        _ => $"<td class=\"unsure\">? undecided{(entry.Condition.Length > 0 ? $"; on with {SvgMarkup.Escaped(entry.Condition)}" : "")}</td>",
    };
}
