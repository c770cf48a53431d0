using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A note about a point of a round part.</summary>
/// <param name="At">The point, on the paper.</param>
/// <param name="Text">The words.</param>
internal sealed record RingCallout(Point At, string Text)
{
    /// <summary>The item of the parts list that it names, in a circle before the words; null for none.</summary>
    public int? Item { get; init; }

    /// <summary>Its number, drawn in a circle instead of the words, which then stand in a key; null for words.</summary>
    public int? Number { get; init; }
}

/// <summary>Leaders round a circular part: texts in a column on either side, evenly spaced, sorted so that no two leaders cross.</summary>
/// <remarks>Each point goes to the side that it lies on, top to bottom by its angle; where a side is full, the points nearest
/// the upright axis change over. Pairs of leaders that still cross exchange their texts' places until none does: every
/// exchange shortens the leaders' total, so it ends. Texts of one line, their shelves level. Numbers instead of words stand in
/// circles that leaders point to (ISO 6433, from memory).</remarks>
internal sealed class CalloutRing
{
    private static readonly TextStyle Style = DimensionForm.TextStyle;

    // Between neighbouring texts, mm: the letters with descenders, the shelf under them, and air.
    private const double LeastPitchMm = 5.2;

    // Numbers stand in circles and are larger than dimensions (ISO 6433, from memory), mm.
    private static readonly TextStyle NumberStyle = TextStyle.Label;
    private const double CircleMm = 3.6;
    private const double LeastNumberPitchMm = 8.2;

    private const double WidestPitchMm = 14;

    // Numbers of items stand in circles no higher than the pitch, mm.
    private const double ItemMm = 2.3;

    /// <summary>Round a part.</summary>
    /// <param name="part">What the texts stay out of, on the paper.</param>
    /// <param name="area">What they stay inside of.</param>
    public CalloutRing(Bounds part, Bounds area)
    {
        Part = part;
        Area = area;
    }

    /// <summary>What texts stay out of.</summary>
    public Bounds Part { get; }

    /// <summary>What texts stay inside of.</summary>
    public Bounds Area { get; }

    /// <summary>Whether callouts are numbers instead of words.</summary>
    public CalloutMarks Marks { get; init; }

    /// <summary>Most callouts that find room, whatever their points.</summary>
    public int Capacity => 2 * SideCapacity;

    /// <summary>What the circle of an item adds to that, mm.</summary>
    public const double ItemWidthMm = (2 * ItemMm) + 1;

    /// <summary>Width that a column of such callouts takes beside the part, mm.</summary>
    /// <param name="marks">Words or numbers.</param>
    /// <param name="texts">The words.</param>
    public static double ColumnMm(CalloutMarks marks, IEnumerable<string> texts) =>
        marks == CalloutMarks.Numbers ? 2 * CircleMm : texts.Select(DimensionForm.TextWidthMm).DefaultIfEmpty(0).Max();

    private int SideCapacity => Math.Max(0, (int)Math.Floor(Area.Height / (Marks == CalloutMarks.Numbers ? LeastNumberPitchMm : LeastPitchMm)));

    /// <summary>Draws all callouts, or none when they do not all find room.</summary>
    /// <returns>Whether they are drawn; if not, a table takes their place.</returns>
    public bool TryDraw(GroupPen pen, IReadOnlyList<RingCallout> callouts)
    {
        ArgumentNullException.ThrowIfNull(pen);
        ArgumentNullException.ThrowIfNull(callouts);
        if (callouts.Count > Capacity)
        {
            return false;
        }

        (List<RingCallout> left, List<RingCallout> right) = Sides(callouts);
        List<PlacedCallout> placed = [.. Column(left, -1), .. Column(right, 1)];
        TextRegistry texts = pen.Texts;
        if (placed.Exists(p => !p.Box.IsInside(Area) || !texts.IsFree(p.Box) || p.Layout.Lines.Any(l => !texts.IsFree(l.Start, l.End))))
        {
            return false;
        }

        foreach (PlacedCallout callout in placed)
        {
            Draw(pen, callout);
        }

        return true;
    }

    /// <summary>Callouts in the order in which they stand round the part, as a clock goes from the upper right one on.</summary>
    public IReadOnlyList<RingCallout> InOrder(IReadOnlyList<RingCallout> callouts)
    {
        (List<RingCallout> left, List<RingCallout> right) = Sides(callouts);
        return [.. Column(right, 1).Select(p => p.Callout), .. Column(left, -1).Select(p => p.Callout).Reverse()];
    }

    private static void Draw(GroupPen pen, PlacedCallout placed)
    {
        (RingCallout callout, DimensionLayout layout) = placed;
        if (placed.Item is Point item)
        {
            pen.Line(Contour.Circle(item, ItemMm), LineStyle.Dimension).Text(Invariant.Text($"{callout.Item}"), new(item, TextAlong.Middle, TextAcross.Middle), Style);
        }

        GroupPen own = callout.Number is int number ? pen.Group(Invariant.Text($"callout-{number}"), callout.Text, "callout") : pen.Numbered(callout.Text, "callout");
        own.Line(layout.Lines, LineStyle.Dimension).Add(layout.Heads).Add(layout.Text);
        if (callout.Number is not null)
        {
            own.Line(Contour.Circle(layout.Text.Box.Centre, CircleMm), LineStyle.Dimension);
        }

        foreach (Piece line in layout.Lines)
        {
            pen.Texts.TakeLine(line.Start, line.End);
        }
    }

    /// <summary>A callout in its column.</summary>
    private sealed record PlacedCallout(RingCallout Callout, DimensionLayout Layout)
    {
        /// <summary>The middle of its item's circle; null without one.</summary>
        public Point? Item { get; init; }

        /// <summary>What it takes beside its leader: its text, or its circle.</summary>
        public TextBox Box => Callout.Number is null ? Layout.Text.Box : new TextBox(Layout.Text.Box.Centre, 2 * CircleMm, 2 * CircleMm, 0);
    }

    private (List<RingCallout> Left, List<RingCallout> Right) Sides(IReadOnlyList<RingCallout> callouts)
    {
        double axis = Part.Centre.X;

        // Those nearest the axis stand last on either side, ready to change over.
        List<RingCallout> left = [.. callouts.Where(c => c.At.X < axis).OrderBy(c => c.At.X)];
        List<RingCallout> right = [.. callouts.Where(c => c.At.X >= axis).OrderByDescending(c => c.At.X)];
        Relieve(left, right);
        Relieve(right, left);
        return (left, right);
    }

    private void Relieve(List<RingCallout> full, List<RingCallout> other)
    {
        while (full.Count > SideCapacity && other.Count < SideCapacity)
        {
            other.Add(full[^1]);
            full.RemoveAt(full.Count - 1);
        }
    }

    private List<PlacedCallout> Column(List<RingCallout> callouts, int side)
    {
        const double kneeMm = 6;
        double x = side > 0 ? Part.MaxX + kneeMm : Part.MinX - kneeMm;
        List<RingCallout> sorted = [.. callouts.OrderByDescending(c => Height(c, side))];
        double pitch = sorted.Count == 0 ? 0 : Math.Min(WidestPitchMm, Area.Height / sorted.Count);
        double span = pitch * sorted.Count;
        double middle = Math.Clamp(Part.Centre.Y, Area.MinY + (span / 2), Area.MaxY - (span / 2));
        double[] shelves = [.. sorted.Select((_, i) => middle + (span / 2) - (pitch * i) - pitch + DescentMm)];
        Point[] knees = [.. shelves.Select(y => Marks == CalloutMarks.Numbers ? new Point(x + (side * CircleMm), y + CircleMm) : new Point(x, y))];
        Uncross(sorted, knees);
        return [.. sorted.Select((c, i) => new PlacedCallout(c, c.Number is int number ? Numbered(c, knees[i], number) : Layout(c, knees[i], side)) { Item = c.Number is null && c.Item is not null ? ItemAt(knees[i], side) : null })];
    }

    // Below a shelf, mm: nothing but air.
    private const double DescentMm = 0.6;

    /// <summary>Where a callout stands in its column: by its angle, top to bottom.</summary>
    private double Height(RingCallout callout, int side)
    {
        Vector from = callout.At - Part.Centre;
        return Math.Atan2(from.Y, side * from.X);
    }

    private static void Uncross(List<RingCallout> callouts, Point[] knees)
    {
        bool crossing = true;
        for (int round = 0; crossing && round < callouts.Count * callouts.Count; round++)
        {
            crossing = false;
            for (int i = 0; i < callouts.Count; i++)
            {
                for (int k = i + 1; k < callouts.Count; k++)
                {
                    if (TextRegistry.Crosses(callouts[i].At, knees[i], callouts[k].At, knees[k]))
                    {
                        (callouts[i], callouts[k]) = (callouts[k], callouts[i]);
                        crossing = true;
                    }
                }
            }
        }
    }

    private static Point ItemAt(Point knee, int side) => knee + new Vector(side * ItemMm, ItemMm);

    // With an item the leader ends on its circle, and the shelf begins behind that.
    private static DimensionLayout Layout(RingCallout callout, Point knee, int side)
    {
        if (callout.Item is not null)
        {
            Point middle = ItemAt(knee, side);
            DimensionLayout words = Layout(callout with { Item = null, At = knee }, knee + new Vector(side * ((2 * ItemMm) + 0.6), 0), side);
            Point foot = middle + ((callout.At - middle).Unit() * ItemMm);
            return words with { Lines = [new Segment(callout.At, foot), words.Lines[^1]], Heads = [DimensionForm.Head(callout.At, callout.At - foot)] };
        }

        double width = TextFit.WidthMm(callout.Text, Style);
        Point end = knee + new Vector(side * (width + 1.5), 0);
        Point left = side > 0 ? knee : end;
        SheetText text = new(callout.Text, new(left + new Vector((width + 1.5) / 2, DimensionForm.AboveMm), TextAlong.Middle), Style);
        return new DimensionLayout(text, DimensionForm.Lines((callout.At, knee), (knee, end)), [], [DimensionForm.Head(callout.At, callout.At - knee)]);
    }

    /// <summary>A number in a circle, its leader from the circle towards whose centre it points.</summary>
    private static DimensionLayout Numbered(RingCallout callout, Point centre, int number)
    {
        SheetText figure = new(Invariant.Text($"{number}"), new(centre, TextAlong.Middle, TextAcross.Middle), NumberStyle);
        Point foot = centre + ((callout.At - centre).Unit() * CircleMm);
        return new DimensionLayout(figure, DimensionForm.Lines((callout.At, foot)), [], [DimensionForm.Head(callout.At, callout.At - foot)]);
    }
}
