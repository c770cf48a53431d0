using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Pictures of distances.</summary>
internal static class SpacingPrimers
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Primer> All { get; } =
    [
        new("clearance", "A clearance is the shortest way through air between two conductors; a solid rib between them makes it longer.", 46, Clearance),
        new("creepage", "A creepage distance is the shortest way over the insulating surface: down into a groove that is wider than X and up again, straight across a narrower one, and over a rib.", 46, Creepage),
        new("open-contact", "The open contact: the nose of the wiper stands in the window, and the gap is from its round underside to the nearest edge of copper, with wear, play and cut edges counted.", 46, OpenContact),
    ];

    private static void Clearance(PrimerPen pen)
    {
        pen.Box(FillKind.Insulation, new(4, 6, 96, 14))
            .Box(FillKind.Net1, new(10, 14, 24, 26)).Word(17, 20, "L")
            .Box(FillKind.Net2, new(76, 14, 90, 22)).Word(83, 18, "N")
            .Box(FillKind.Insulation, new(48, 14, 51, 34)).Word(49.5, 9, "rib")
            .Line(PrimerPen.Look, new(24, 26), new(48, 34), new(51, 34), new(76, 22));
        pen.Head(new(24, 26), new(-24, -8)).Head(new(76, 22), new(25, -12)).Told(50, 40, "clearance: the shortest way through air");
    }

    private static void Creepage(PrimerPen pen)
    {
        pen.Shape(FillKind.Insulation, new(4, 4), new(96, 4), new(96, 20), new(70, 20), new(70, 32), new(66, 32), new(66, 20), new(52, 20), new(52, 12), new(51, 12), new(51, 20), new(42, 20), new(42, 10), new(32, 10), new(32, 20), new(4, 20))
            .Box(FillKind.Net1, new(8, 20, 20, 26)).Word(14, 23, "L")
            .Box(FillKind.Net2, new(80, 20, 92, 26)).Word(86, 23, "N")
            .Line(PrimerPen.Look, new(20, 20), new(32, 20), new(32, 10), new(42, 10), new(42, 20), new(66, 20), new(66, 32), new(70, 32), new(70, 20), new(80, 20))
            .Head(new(20, 20), new(-1, 0)).Head(new(80, 20), new(1, 0));
        pen.Told(50, 40, "creepage distance: the shortest way over the surface")
            .Word(37, 27, "wider than X").Word(53, 7.5, "narrower: straight across").Word(78, 34, "rib");
    }

    private static void OpenContact(PrimerPen pen)
    {
        pen.Box(FillKind.Carrier, new(4, 4, 96, 14))
            .Box(FillKind.Copper, new(4, 14, 34, 19)).Word(21, 25, "copper of the wheel")
            .Box(FillKind.Copper, new(78, 14, 96, 19))
            .Shape(FillKind.Net2, new Contour([new Arc(new(56, 24), 10, Math.PI, Math.PI), new Segment(new(66, 24), new(66, 32)), new Segment(new(66, 32), new(46, 32)), new Segment(new(46, 32), new(46, 24))]))
            .Word(56, 26, "wiper")
            .Measure(new(34, 19), new(47.34, 19));
        pen.Told(40, 40, "gap of the open contact").Line(LineStyle.Thin, new(40, 38), new(40.5, 20.5)).Word(70, 9, "window over the carrier");
    }
}
