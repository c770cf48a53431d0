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

    // Small letters only where something finds no room otherwise, and where they help.
    private static Sheet Fitted(FigureTask task, Func<FigureTask, Sheet> draw)
    {
        Sheet? usual = OrNull(() => draw(task));
        if (usual is { Warnings.Count: 0 })
        {
            return usual;
        }

        Sheet? small = usual is null ? draw(task.InSmallLetters) : OrNull(() => draw(task.InSmallLetters));
        return usual is null || small?.Warnings.Count < usual.Warnings.Count ? small! : usual;
    }

    private static Sheet? OrNull(Func<Sheet> draw)
    {
        try
        {
            return draw();
        }
        catch (NoRoomException)
        {
            return null;
        }
    }

    // One line a view: wheel, cams, strips, assembly, timing, circuit, spacing, the moment, runs.
    private static IEnumerable<UndrawnSheet> InOrder(FigureTask all)
    {
        Design design = all.Design;
        UndrawnSheet Of(string name, Func<FigureTask, Sheet> draw) => new(name, () => Fitted(all, draw));
        return
        [
            Of("wheel", task => WheelFigures.Wheel(task)),
            Of("wheel-edges", task => WheelFigures.Edges(task)),
            Of("section", task => WheelFigures.Section(task)),
            .. design.Cams.SelectMany((c, i) => new UndrawnSheet[]
            {
                Of($"cam {c.Brief.Name}", task => CamFigures.Plan(task, i)),
                Of($"motion of cam {c.Brief.Name}", task => CamFigures.Motion(task, i)),
            }),
            .. design.Strips.Strips.SelectMany((s, i) => new UndrawnSheet[]
            {
                Of($"blank of strip {s.Form.Strip.Name}", task => PartFigures.Blank(task, i)),
                Of($"strip {s.Form.Strip.Name} from the side", task => PartFigures.Side(task, i)),
            }),
            .. AssemblySheet.IsWanted(design) ? [Of("assembly", task => PartFigures.Plan(task)), Of("assembly-side", task => PartFigures.Elevation(task))] : (UndrawnSheet[])[],
            Of("timing", task => ChartFigures.Timing(task)),
            Of("circuit", task => ChartFigures.Circuit(task)),
            Of("spacing", task => SpacingFigures.Overview(task)),
            .. SpacingFigures.Lettered(TightPlaces.Of(design)).Select(p => Of(SpacingFigures.NameOf(p.Letter), task => SpacingFigures.Detail(task, p.Place, p.Letter))),
            Of("moment", task => ChartFigures.Moment(task)),
            .. design.Brief.Scenarios.Select((s, i) => Of($"run {s.Name}", task => ChartFigures.Run(task, i))),
        ];
    }
}
