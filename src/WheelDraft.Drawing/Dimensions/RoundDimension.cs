using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A diameter or radius, by a leader from outside or inside that points to the middle, text above its shelf.</summary>
internal sealed record RoundDimension : DimensionMark
{
    private static readonly double[] LeaderMm = [9, 14, 20, 28, 38, 50, 65];
    private static readonly int[] TurnsDeg = [0, 12, -12, 25, -25, 40, -40, 60, -60, 85, -85, 120, -120, 150, -150, 180];

    /// <summary>Of a circle on the paper.</summary>
    /// <param name="centre">Centre, on the paper.</param>
    /// <param name="radiusMm">Radius on the paper, mm.</param>
    /// <param name="atRad">Where on the circle the arrow points, if there is room; others are tried.</param>
    /// <param name="text">The size, its sign Ø or R before it.</param>
    public RoundDimension(Point centre, double radiusMm, double atRad, string text)
        : base(text)
    {
        Centre = centre;
        RadiusMm = radiusMm;
        AtRad = atRad;
    }

    /// <summary>Centre.</summary>
    public Point Centre { get; }

    /// <summary>Radius on the paper, mm.</summary>
    public double RadiusMm { get; }

    /// <summary>Direction of the arrow's tip from the centre, radians.</summary>
    public double AtRad { get; }

    /// <summary>Where the arrow may point: all the circle, or the arc that there is.</summary>
    public CircleArc Within { get; init; } = CircleArc.Full;

    internal override IEnumerable<DimensionLayout> Layouts()
    {
        foreach (int turn in TurnsDeg)
        {
            double at = AtRad + Angles.RadFromDeg(turn);
            if (turn != 0 && !Within.Contains(at))
            {
                continue;
            }

            foreach (double leader in LeaderMm)
            {
                yield return At(at, leader);
            }
        }
    }

    private DimensionLayout At(double atRad, double leaderMm)
    {
        Point tip = Centre + Vector.Polar(RadiusMm, atRad);
        Point elbow = Centre + Vector.Polar(RadiusMm + leaderMm, atRad);
        return Leader.Layout(Text, tip, elbow);
    }
}

/// <summary>A note on a leader: an arrow to a point and a text on a shelf.</summary>
internal sealed record CalloutDimension : DimensionMark
{
    private static readonly double[] LeaderMm = [9, 14, 20, 28, 38, 50, 65, 85, 110];
    private static readonly int[] TurnsDeg = [0, 15, -15, 30, -30, 50, -50, 75, -75, 105, -105, 135, -135, 165, -165];

    /// <summary>At a point of the paper.</summary>
    /// <param name="at">Where the arrow points.</param>
    /// <param name="towardsRad">Direction in which the text is wanted; others are tried.</param>
    /// <param name="text">The words.</param>
    public CalloutDimension(Point at, double towardsRad, string text)
        : base(text)
    {
        At = at;
        TowardsRad = towardsRad;
    }

    /// <summary>Where the arrow points.</summary>
    public Point At { get; }

    /// <summary>Direction of the text from there, radians.</summary>
    public double TowardsRad { get; }

    internal override IEnumerable<DimensionLayout> Layouts() =>
        from turn in TurnsDeg
        from leader in LeaderMm
        select Leader.Layout(Text, At, At + Vector.Polar(leader, TowardsRad + Angles.RadFromDeg(turn)));
}

/// <summary>A leader: a slanting line with an arrow, a level shelf, the text above it.</summary>
internal static class Leader
{
    public static DimensionLayout Layout(string text, Point tip, Point elbow)
    {
        double width = DimensionForm.TextWidthMm(text);
        double side = elbow.X >= tip.X ? 1 : -1;
        Point end = elbow + new Vector(side * (width + 1), 0);
        Point left = side > 0 ? elbow : end;
        SheetText written = new(text, new(left + new Vector((width + 1) / 2, DimensionForm.AboveMm), TextAlong.Middle), DimensionForm.TextStyle);
        return new DimensionLayout(written, DimensionForm.Lines((tip, elbow), (elbow, end)), [], [DimensionForm.Head(tip, tip - elbow)]);
    }
}
