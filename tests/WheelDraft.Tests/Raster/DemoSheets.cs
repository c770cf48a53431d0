using WheelDraft.Drawing;
using Xunit;

namespace WheelDraft.Tests.Raster;

/// <summary>Every sheet of every example, drawn once for all tests of pictures.</summary>
internal static class DemoSheets
{
    private static readonly Lazy<IReadOnlyList<PicturedSheet>> Drawn = new(Draw);

    /// <summary>All in the light theme; in the others, one of each kind from the example with the most.</summary>
    internal static IReadOnlyList<PicturedSheet> All => Drawn.Value;

    /// <summary>Example, sheet and theme of all.</summary>
    internal static TheoryData<string, string, string> Rows => RowsOf(All);

    /// <summary>The same of those in the light theme.</summary>
    internal static TheoryData<string, string, string> LightRows => RowsOf(All.Where(s => s.Theme == Theme.Light));

    internal static PicturedSheet Of(string demo, string sheet, string theme) => All.Single(s => (s.Demo, s.Sheet.Words.Name, s.Theme.Name) == (demo, sheet, theme));

    private static TheoryData<string, string, string> RowsOf(IEnumerable<PicturedSheet> sheets)
    {
        TheoryData<string, string, string> rows = [];
        foreach (PicturedSheet sheet in sheets)
        {
            rows.Add(sheet.Demo, sheet.Sheet.Words.Name, sheet.Theme.Name);
        }

        return rows;
    }

    private static PicturedSheet[] Draw()
    {
        (string Demo, IReadOnlyList<Sheet> Sheets)[] demos = [.. Demos.Names.Select(n => (n, DesignSheets.Of(Demos.Of(n))))];
        (string fullest, IReadOnlyList<Sheet> most) = demos.MaxBy(d => d.Sheets.Count);
        Sheet[] kinds = [.. most.DistinctBy(s => s.Words.Name.Split('-')[0], StringComparer.Ordinal)];
        return
        [
            .. demos.SelectMany(d => d.Sheets.Select(s => new PicturedSheet(d.Demo, s, Theme.Light))),
            .. Theme.All.Where(t => t != Theme.Light).SelectMany(t => kinds.Select(s => new PicturedSheet(fullest, s, t))),
        ];
    }
}
