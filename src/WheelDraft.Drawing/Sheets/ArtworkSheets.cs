using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The wheel's copper in solid black at true size, for etching and for printing on film: as seen from the wiper side, and mirrored.</summary>
internal static class ArtworkSheets
{
    // From the copper to the register marks, and their reach, mm.
    private const double RegisterMm = 4;
    private const double RegisterReachMm = 2;

    /// <summary>Direct, then mirrored.</summary>
    public static IReadOnlyList<Sheet> Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        string title = design.Brief.Title;
        return
        [
            Draw(design, false, new("artwork-direct", $"{title}: artwork, direct", "The wheel's copper in solid black, as seen from the wiper side."), "Artwork, direct: as seen from the wiper side. Black stays copper."),
            Draw(design, true, new("artwork-mirrored", $"{title}: artwork, mirrored", "The wheel's copper in solid black, mirrored."), "Artwork, mirrored: for film or paper whose printed side lies on the copper. Black stays copper."),
        ];
    }

    /// <summary>The mirror: in the home line, so that the home mark stays where it is.</summary>
    public static Placement Mirror => Placement.MirrorInX;

    private static Sheet Draw(Design design, bool mirrored, SheetWords words, string caption)
    {
        Outline[] copper = [.. design.Wheel.Copper.Select(c => mirrored ? c.Outline.Placed(Mirror) : c.Outline)];
        double half = design.Wheel.OuterDiameterMm / 2;
        TemplatePart part = TemplatePart.Of(
            words,
            new(-half, -half, half, half),
            new(),
            [caption, $"Finished sizes: add what your etching takes from the edges. {(design.Wheel.Feed is null ? "The circle shows the disc and is thin enough to be etched away. " : "")}Lay films on each other by the corner crosses."]);
        part.In("artwork", "Copper").Pen.Add(new SheetArea([.. copper.Select(c => c.Placed(part.View.ToPaper))], Fill.Solid(Ink.Outline)));
        LineStyle fine = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.1);
        ViewPen register = part.In("register", "Register crosses");
        foreach ((int x, int y) in ((int, int)[])[(-1, -1), (1, -1), (1, 1), (-1, 1)])
        {
            Point at = new(x * (half + RegisterMm), y * (half + RegisterMm));
            register.Line(at - new Vector(RegisterReachMm, 0), at + new Vector(RegisterReachMm, 0), fine);
            register.Line(at - new Vector(0, RegisterReachMm), at + new Vector(0, RegisterReachMm), fine);
        }

        if (design.Wheel.Feed is null)
        {
            register.Line(Contour.Circle(Point.Origin, half), fine);
        }

        return part.Build();
    }
}
