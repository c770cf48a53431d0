using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The figures of a design: each view by itself, for a text of a given width.</summary>
internal static class DesignFigures
{
    /// <summary>The narrowest figure, mm: what holds two columns of callouts and a wheel between them.</summary>
    public const double LeastWidthMm = 60;

    /// <summary>The widest figure, mm: a page of A3 across.</summary>
    public const double MostWidthMm = 400;

    /// <summary>Draws all figures in a fixed order; names, which become file names, differ. The title of each is its caption, the description its alternative text.</summary>
    /// <param name="design">The design.</param>
    /// <param name="widthMm">Width of every figure, <see cref="LeastWidthMm"/> to <see cref="MostWidthMm"/>.</param>
    /// <param name="options">How they are drawn; as usual when null.</param>
    /// <param name="leaveOut">Told which figures cannot be drawn, why and what helps. Null for the first such one to end the drawing with its exception.</param>
    /// <exception cref="NoRoomException">A figure has no room for its picture, and nobody wants to be told.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The width is out of range.</exception>
    public static IReadOnlyList<Sheet> Of(Design design, double widthMm, SheetOptions? options = null, Action<string>? leaveOut = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentOutOfRangeException.ThrowIfLessThan(widthMm, LeastWidthMm);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(widthMm, MostWidthMm);
        FigureTask task = new(design, widthMm, options ?? SheetOptions.Usual);
        return SheetSet.Drawn(SheetSet.Figure, [.. InOrder(task)], leaveOut);
    }

    // One line a view: wheel, strips, assembly, timing, circuit, spacing, the moment, runs.
    private static IEnumerable<UndrawnSheet> InOrder(FigureTask task)
    {
        Design design = task.Design;
        return
        [
            new("wheel", () => WheelFigures.Wheel(task)),
            new("wheel-edges", () => WheelFigures.Edges(task)),
            new("section", () => WheelFigures.Section(task)),
            .. design.Strips.Strips.SelectMany((s, i) => new UndrawnSheet[]
            {
                new($"blank of strip {s.Form.Strip.Name}", () => PartFigures.Blank(task, i)),
                new($"strip {s.Form.Strip.Name} from the side", () => PartFigures.Side(task, i)),
            }),
            .. AssemblySheet.IsWanted(design) ? [new("assembly", () => PartFigures.Plan(task)), new("assembly-side", () => PartFigures.Elevation(task))] : (UndrawnSheet[])[],
            new("timing", () => ChartFigures.Timing(task)),
            new("circuit", () => ChartFigures.Circuit(task)),
            new("spacing", () => SpacingFigures.Overview(task)),
            .. SpacingFigures.Lettered(TightPlaces.Of(design)).Select(p => new UndrawnSheet(SpacingFigures.NameOf(p.Letter), () => SpacingFigures.Detail(task, p.Place, p.Letter))),
            new("moment", () => ChartFigures.Moment(task)),
            .. design.Brief.Scenarios.Select((s, i) => new UndrawnSheet($"run {s.Name}", () => ChartFigures.Run(task, i))),
        ];
    }
}
