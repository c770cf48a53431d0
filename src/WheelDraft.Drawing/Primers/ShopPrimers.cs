using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Pictures of strips, cams and cutting.</summary>
internal static class ShopPrimers
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Primer> All { get; } =
    [
        new("contact", "A strip from the side: its foot is clamped, the riser lifts the arm, and the wheel pushes the contact back by the deflection, which gives the force.", 50, Strip),
        new("cam", "A cam lifts its roller along the way of the lever, but pushes it along the normal of its face: the angle between the two is the pressure angle.", 56, Cam),
        new("kerf", "A cutter takes a kerf. Its middle runs half a kerf beside the finished edge, and inside corners keep at least half a kerf of radius.", 50, Kerf),
    ];

    private static void Strip(PrimerPen pen)
    {
        pen.Box(FillKind.Insulation, new(4, 6, 40, 11)).Word(22, 4, "clamp")
            .Shape(FillKind.Copper, new(6, 11), new(36, 11), new(36, 32), new(82, 32), new(82, 33.2), new(34.8, 33.2), new(34.8, 12.2), new(6, 12.2))
            .Box(FillKind.Part, new(12, 12.2, 26, 16))
            .Shape(FillKind.Net1, new Contour([new Arc(new(78, 30), 4, Math.PI, Math.PI), new Segment(new(82, 30), new(82, 32)), new Segment(new(82, 32), new(74, 32)), new Segment(new(74, 32), new(74, 30))]))
            .Box(FillKind.Copper, new(54, 22, 96, 26)).Box(FillKind.Carrier, new(54, 16, 96, 22)).Word(75, 12.5, "copper on its carrier")
            .Line(LineStyle.Phantom, new(36, 32), new(80, 27))
            .Word(56, 27.8, "free")
            .Arrow(new(78, 44), new(78, 34));
        pen.Told(86, 40, "force").Word(27, 24, "riser").Word(56, 38, "arm, pressed");
    }

    private static void Cam(PrimerPen pen)
    {
        Point axis = new(34, 20);
        const double lifted = 0.9;
        Arc low = new(axis, 14, lifted, Angles.TurnRad - (2 * lifted));
        Point left = low.Start, right = low.End;
        Point top = new(56, 20);
        pen.Shape(FillKind.Part, new Contour([low, new Segment(right, top), new Segment(top, left)]))
            .Along(LineStyle.Centre, new Segment(new(34, 2), new(34, 38)), new Segment(new(16, 20), new(64, 20)));
        Vector face = (left - top).Unit();
        Vector normal = new(face.Y, -face.X);
        Point touch = top + (face * 8);
        Point roller = touch + (normal * 5);
        pen.Shape(FillKind.Net8, Contour.Circle(roller, 5))
            .Arrow(roller, roller + (normal * 18))
            .Line(LineStyle.Thin, roller, roller + new Vector(20, 0)).Word(roller.X + 21, roller.Y - 4, "way of the lever");
        Point between = roller + new Vector(14.5, 6);
        pen.Told(between.X + 14, between.Y + 4, "pressure angle").Word(roller.X + 12, roller.Y + 20, "normal of the face").Word(34, 12, "cam");
    }

    private static void Kerf(PrimerPen pen)
    {
        pen.Shape(FillKind.Copper, new Contour(
            [
                new Segment(new(6, 6), new(94, 6)), new Segment(new(94, 6), new(94, 18)), new Segment(new(94, 18), new(46, 18)),
                new Arc(new(46, 22), 4, 3 * Math.PI / 2, -Math.PI / 2), new Segment(new(42, 22), new(42, 42)), new Segment(new(42, 42), new(6, 42)), new Segment(new(6, 42), new(6, 6)),
            ]))
            .Word(24, 24, "finished part");
        LineStyle middle = LineStyle.Of(LineKind.ChainNarrow, Ink.Accent);
        pen.Along(middle, new Segment(new(94, 21), new(46, 21)), new Arc(new(46, 22), 1, 3 * Math.PI / 2, -Math.PI / 2), new Segment(new(45, 22), new(45, 42)))
            .Along(LineStyle.Thin, new Arc(new(74, 21), 3, 0, Angles.TurnRad))
            .Measure(new(74, 18), new(74, 24)).Told(84, 27, "kerf").Told(66, 34, "middle of the cut").Line(LineStyle.Thin, new(53, 32), new(46, 28));
    }
}
