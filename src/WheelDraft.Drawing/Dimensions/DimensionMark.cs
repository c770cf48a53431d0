using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A dimension after ISO 129-1, on the paper: it knows several ways of being drawn, the best first.</summary>
/// <remarks>Points and lengths are those of the paper; the text gives the true size. Text stands above its line and is read from
/// below or from the right.</remarks>
internal abstract record DimensionMark
{
    private protected DimensionMark(string text) => Text = text;

    /// <summary>What is written: the size of the model.</summary>
    public string Text { get; }

    /// <summary>What is dimensioned, in words: for the table of sizes where there is no room on the drawing.</summary>
    public string Subject { get; init; } = "";

    internal abstract IEnumerable<DimensionLayout> Layouts();
}

/// <summary>One way of drawing a dimension: its text and its lines.</summary>
/// <param name="Text">The text.</param>
/// <param name="Lines">Dimension and leader lines: no text may lie across them, they cross no text.</param>
/// <param name="Extensions">Extension lines: they cross no text.</param>
/// <param name="Heads">Arrowheads.</param>
internal sealed record DimensionLayout(SheetText Text, IReadOnlyList<Piece> Lines, IReadOnlyList<Piece> Extensions, IReadOnlyList<SheetArea> Heads)
{
    public IEnumerable<Piece> AllLines => Lines.Concat(Extensions);
}

/// <summary>Forms that all dimensions share.</summary>
internal static class DimensionForm
{
    public static readonly TextStyle TextStyle = new(2.5, TextWeight.Regular, Ink.Dimension);

    /// <summary>Arrowheads: narrow, closed, filled, 15° (ISO 129-1), 3 mm long at lines of 0.25 mm.</summary>
    public const double HeadMm = 3;

    /// <summary>Between dimension lines side by side, mm: text of 2.5 mm, air above and below.</summary>
    public const double LevelMm = 6.5;

    /// <summary>Text above its line, mm.</summary>
    public const double AboveMm = 0.9;

    private const double HeadHalfAngleRad = 7.5 * Math.PI / 180;

    /// <summary>An arrowhead whose tip is at a point, flying in a direction.</summary>
    public static SheetArea Head(Point tip, Vector flight)
    {
        Vector back = -flight.Unit() * HeadMm;
        Vector half = back.Left * Math.Tan(HeadHalfAngleRad);
        return new SheetArea(new Outline(Contour.Polygon(tip, tip + back + half, tip + back - half)), Fill.Solid(Ink.Dimension));
    }

    /// <summary>The reading direction along a line: from the left or from below, never upside down.</summary>
    public static double Readable(double angleRad)
    {
        // Exactly upright lines are read from the right: a hair of rounding must not turn them over.
        const double hairRad = 1e-9;
        double a = Angles.Signed(angleRad);
        return a > (Math.PI / 2) + hairRad ? a - Math.PI : a <= -(Math.PI / 2) + hairRad ? a + Math.PI : a;
    }

    public static double TextWidthMm(string text) => TextFit.WidthMm(text, TextStyle);

    public static Segment? Line(Point from, Point to) => from.DistanceTo(to) > Tolerances.JoinMm ? new Segment(from, to) : null;

    public static IReadOnlyList<Piece> Lines(params ReadOnlySpan<(Point From, Point To)> lines)
    {
        List<Piece> pieces = [];
        foreach ((Point from, Point to) in lines)
        {
            if (Line(from, to) is Segment segment)
            {
                pieces.Add(segment);
            }
        }

        return pieces;
    }
}
