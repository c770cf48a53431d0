using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Raster;

/// <summary>Every sheet of every example, drawn once for all tests of pictures.</summary>
/// <remarks>In the light theme all as usual; of the example with the most sheets also those that show a moment of the turn or
/// callouts as numbers; of the one with the fewest, in this manner, in the other themes: they differ in colours only.</remarks>
internal static class DemoSheets
{
    private static readonly Lazy<IReadOnlyList<PicturedSheet>> Drawn = new(Draw);

    internal static IReadOnlyList<PicturedSheet> All => Drawn.Value;

    /// <summary>Example, sheet and manner of all.</summary>
    internal static TheoryData<string, string, string> Rows => RowsOf(All);

    /// <summary>The same of those in the light theme.</summary>
    internal static TheoryData<string, string, string> LightRows => RowsOf(All.Where(s => s.Theme == Theme.Light));

    internal static PicturedSheet Of(string demo, string sheet, string manner) => All.Single(s => (s.Demo, s.Sheet.Words.Name, s.Manner) == (demo, sheet, manner));

    private static TheoryData<string, string, string> RowsOf(IEnumerable<PicturedSheet> sheets)
    {
        TheoryData<string, string, string> rows = [];
        foreach (PicturedSheet sheet in sheets)
        {
            rows.Add(sheet.Demo, sheet.Sheet.Words.Name, sheet.Manner);
        }

        return rows;
    }

    private static PicturedSheet[] Draw()
    {
        (string Demo, IReadOnlyList<Sheet> Sheets)[] demos = [.. Demos.Names.Select(n => (n, Demos.SheetsOf(n)))];
        (string fullest, IReadOnlyList<Sheet> most) = demos.MaxBy(d => d.Sheets.Count);
        HashSet<string> usual = [.. most.Select(s => SvgWriter.Write(s))];
        IReadOnlyList<Sheet> atAMoment = DesignSheets.Of(Demos.Of(fullest), AtAMoment(Demos.Of(fullest)));
        string sparest = demos.MinBy(d => d.Sheets.Count).Demo;
        IReadOnlyList<Sheet> few = DesignSheets.Of(Demos.Of(sparest), AtAMoment(Demos.Of(sparest)));
        return
        [
            .. demos.SelectMany(d => d.Sheets.Select(s => new PicturedSheet(d.Demo, s, Theme.Light))),
            .. atAMoment.Where(s => !usual.Contains(SvgWriter.Write(s))).Select(s => new PicturedSheet(fullest, s, Theme.Light) { Manner = "light, at a moment" }),
            .. Theme.All.Where(t => t != Theme.Light).SelectMany(t => few.Select(s => new PicturedSheet(sparest, s, t) { Manner = $"{t.Name}, at a moment" })),
        ];
    }

    /// <summary>A third of the turn on, every input closed, callouts as numbers.</summary>
    private static SheetOptions AtAMoment(Design design) =>
        new() { Moment = design.Circuit.At(Angles.TurnRad / 3, (1 << design.Circuit.Inputs.Count) - 1), Callouts = CalloutMarks.Numbers };
}
