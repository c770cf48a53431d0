using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>An angle about a centre, from one direction to another: an arc with two arrows, its text along it.</summary>
internal sealed record AngularDimension : DimensionMark
{
    private const int Levels = 6;
    private const double ExtensionGapMm = 1;
    private const double OvershootMm = 2;

    /// <summary>From a direction through a sweep.</summary>
    /// <param name="centre">Centre, on the paper.</param>
    /// <param name="arc">The directions, on the paper.</param>
    /// <param name="radiusMm">Radius of the dimension line, mm on the paper; further ones are tried beyond it.</param>
    /// <param name="text">The angle.</param>
    /// <exception cref="ArgumentException">The arc is empty.</exception>
    public AngularDimension(Point centre, CircleArc arc, double radiusMm, string text)
        : base(text)
    {
        if (arc.IsEmpty)
        {
            throw new ArgumentException("An angle of 0 cannot be drawn.", nameof(arc));
        }

        Centre = centre;
        Arc = arc;
        RadiusMm = radiusMm;
    }

    /// <summary>Centre.</summary>
    public Point Centre { get; }

    /// <summary>The directions.</summary>
    public CircleArc Arc { get; }

    /// <summary>Radius of the dimension line, mm.</summary>
    public double RadiusMm { get; }

    /// <summary>Where the extension lines begin, mm from the centre: the edge that is dimensioned.</summary>
    public double EdgeRadiusMm { get; init; }

    internal override IEnumerable<DimensionLayout> Layouts()
    {
        for (int level = 0; level < Levels; level++)
        {
            double radius = RadiusMm + (level * DimensionForm.LevelMm);
            double share = DimensionForm.TextWidthMm(Text) / radius;
            double heads = 2 * DimensionForm.HeadMm / radius;
            if (Arc.SweepRad > share + heads)
            {
                yield return At(radius, Arc.MiddleRad);
                yield return At(radius, Arc.StartRad + (Arc.SweepRad * 0.3));
                yield return At(radius, Arc.StartRad + (Arc.SweepRad * 0.7));
            }

            yield return At(radius, Arc.EndRad + heads + (0.7 * share));
            yield return At(radius, Arc.StartRad - heads - (0.7 * share));
        }
    }

    private DimensionLayout At(double radiusMm, double textRad)
    {
        double turn = DimensionForm.Readable(textRad - (Math.PI / 2));
        bool outward = Vector.Polar(1, turn).Left.Dot(Vector.Polar(1, textRad)) > 0;

        // Straight text over a curved line: its ends must clear the arc as its middle does.
        double half = DimensionForm.TextWidthMm(Text) / 2;
        double sag = radiusMm - Math.Sqrt(Math.Max(0, (radiusMm * radiusMm) - (half * half)));
        double rise = DimensionForm.AboveMm + (outward ? 0 : sag);
        Point anchor = Centre + Vector.Polar(radiusMm + (outward ? rise : -rise), textRad);
        SheetText text = new(Text, new(anchor, TextAlong.Middle, TextAcross.Baseline, turn), DimensionForm.TextStyle);

        double head = DimensionForm.HeadMm / radiusMm;
        bool inside = Arc.SweepRad > 2.2 * head;
        double from = inside ? Arc.StartRad : Arc.StartRad - (2 * head);
        double to = inside ? Arc.EndRad : Arc.EndRad + (2 * head);
        double beyond = Angles.Signed(textRad - Arc.MiddleRad);
        double reach = Math.Abs(beyond) + (half / radiusMm);
        bool textOutside = reach > (Arc.SweepRad / 2) + 1e-9;
        from = textOutside && beyond < 0 ? Math.Min(from, Arc.MiddleRadUnwrapped() - reach) : from;
        to = textOutside && beyond > 0 ? Math.Max(to, Arc.MiddleRadUnwrapped() + reach) : to;
        double sweep = Math.Min(to - from, Angles.TurnRad);
        return new DimensionLayout(
            text,
            [new Arc(Centre, radiusMm, from, sweep)],
            [.. Ray(Arc.StartRad, radiusMm), .. Ray(Arc.EndRad, radiusMm)],
            Arc.IsFull ? [] : [HeadAt(Arc.StartRad, radiusMm, inside ? -1 : 1), HeadAt(Arc.EndRad, radiusMm, inside ? 1 : -1)]);
    }

    private IReadOnlyList<Piece> Ray(double atRad, double radiusMm) =>
        radiusMm - EdgeRadiusMm <= ExtensionGapMm
            ? []
            : DimensionForm.Lines((Centre + Vector.Polar(EdgeRadiusMm + ExtensionGapMm, atRad), Centre + Vector.Polar(radiusMm + OvershootMm, atRad)));

    /// <summary>The head lies along the chord from its tip to where the arc leaves it.</summary>
    private SheetArea HeadAt(double atRad, double radiusMm, double sense)
    {
        Point tip = Centre + Vector.Polar(radiusMm, atRad);
        Point behind = Centre + Vector.Polar(radiusMm, atRad - (sense * DimensionForm.HeadMm / radiusMm));
        return DimensionForm.Head(tip, tip - behind);
    }
}

internal static class CircleArcMiddle
{
    /// <summary>The middle direction in the same turn as the start: between start and end.</summary>
    public static double MiddleRadUnwrapped(this CircleArc arc) => arc.StartRad + (arc.SweepRad / 2);
}
