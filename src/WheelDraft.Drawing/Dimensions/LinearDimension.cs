using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Along what a linear dimension measures.</summary>
internal enum LinearDirection
{
    /// <summary>Along the line between its two points.</summary>
    Aligned,

    /// <summary>Across the sheet.</summary>
    Level,

    /// <summary>Up the sheet.</summary>
    Upright,
}

/// <summary>The distance of two points.</summary>
internal sealed record LinearDimension : DimensionMark
{
    private const int Levels = 6;
    private const double ExtensionGapMm = 1;

    // ISO 129-1 annex, from memory: eight line widths of 0.25 mm.
    private const double OvershootMm = 2;

    /// <summary>Between two points, the line offset to the left of the direction from the first to the second.</summary>
    /// <param name="from">First point, on the paper.</param>
    /// <param name="to">Second point, on the paper.</param>
    /// <param name="offsetMm">Offset of the dimension line from the first point, mm; negative to the right. Further lines are tried beyond it.</param>
    /// <param name="text">The size.</param>
    public LinearDimension(Point from, Point to, double offsetMm, string text)
        : base(text)
    {
        From = from;
        To = to;
        OffsetMm = offsetMm;
    }

    /// <summary>First point.</summary>
    public Point From { get; }

    /// <summary>Second point.</summary>
    public Point To { get; }

    /// <summary>Offset of the line from the first point to the left of the direction measured along, mm.</summary>
    public double OffsetMm { get; }

    /// <summary>Along what it measures.</summary>
    public LinearDirection Direction { get; init; }

    internal override IEnumerable<DimensionLayout> Layouts()
    {
        Vector along = Direction switch
        {
            LinearDirection.Level => new Vector(To.X < From.X ? -1 : 1, 0),
            LinearDirection.Upright => new Vector(0, To.Y < From.Y ? -1 : 1),
            _ => From == To ? new Vector(1, 0) : (To - From).Unit(),
        };
        double side = OffsetMm < 0 ? -1 : 1;
        for (int level = 0; level < Levels; level++)
        {
            double offset = OffsetMm + (side * level * DimensionForm.LevelMm);
            for (int place = 0; place < 3; place++)
            {
                if (At(along, offset, place) is DimensionLayout layout)
                {
                    yield return layout;
                }
            }
        }
    }

    /// <summary>Text between the arrows (0), beyond the second point (1) or beyond the first (2).</summary>
    private DimensionLayout? At(Vector along, double offsetMm, int place)
    {
        double length = (To - From).Dot(along);
        Point a = From + (along.Left * offsetMm);
        Point b = a + (along * length);
        double width = DimensionForm.TextWidthMm(Text);
        bool roomy = length >= width + (2 * DimensionForm.HeadMm);
        if (place == 0 && !roomy)
        {
            return null;
        }

        double turn = DimensionForm.Readable(along.AngleRad);
        Vector up = Vector.Polar(1, turn).Left * DimensionForm.AboveMm;
        double beyond = (2 * DimensionForm.HeadMm) + 1 + (width / 2);
        Point middle = place switch
        {
            0 => a.Towards(b, 0.5),
            1 => b + (along * beyond),
            _ => a - (along * beyond),
        };
        SheetText text = new(Text, new(middle + up, TextAlong.Middle, TextAcross.Baseline, turn), DimensionForm.TextStyle);
        double tail = (2 * DimensionForm.HeadMm) + 1;
        bool inside = length >= (2 * DimensionForm.HeadMm) + 1;
        Point start = place == 2 ? a - (along * (tail + width)) : inside ? a : a - (along * tail);
        Point end = place == 1 ? b + (along * (tail + width)) : inside ? b : b + (along * tail);
        Vector out1 = inside ? -along : along;
        return new DimensionLayout(
            text,
            DimensionForm.Lines((start, end)),
            [.. Extension(From, a), .. Extension(To, b)],
            [DimensionForm.Head(a, out1), DimensionForm.Head(b, -out1)]);
    }

    private static IReadOnlyList<Piece> Extension(Point feature, Point onLine)
    {
        Vector way = onLine - feature;
        return way.Length <= ExtensionGapMm
            ? []
            : DimensionForm.Lines((feature + (way.Unit() * ExtensionGapMm), onLine + (way.Unit() * OvershootMm)));
    }
}
