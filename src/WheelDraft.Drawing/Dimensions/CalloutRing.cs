using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A note about a point of a round part.</summary>
/// <param name="At">The point, on the paper.</param>
/// <param name="Text">The words.</param>
public sealed record RingCallout(Point At, string Text);

/// <summary>Leaders round a circular part: texts in a column on either side, evenly spaced, sorted so that no two leaders cross.</summary>
/// <remarks>Each point goes to the side that it lies on, top to bottom by its angle; where a side is full, the points nearest
/// the upright axis change over. Pairs of leaders that still cross exchange their texts' places until none does: every
/// exchange shortens the leaders' total, so it ends. Texts of one line, their shelves level.</remarks>
public sealed class CalloutRing
{
    private static readonly TextStyle Style = DimensionForm.TextStyle;

    // Between neighbouring texts, mm: the letters with descenders, the shelf under them, and air.
    private const double LeastPitchMm = 5.2;
    private const double WidestPitchMm = 14;

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

    /// <summary>Most callouts that find room, whatever their points.</summary>
    public int Capacity => 2 * SideCapacity;

    private int SideCapacity => Math.Max(0, (int)Math.Floor(Area.Height / LeastPitchMm));

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
        List<DimensionLayout> layouts = [.. Column(left, -1), .. Column(right, 1)];
        TextRegistry texts = pen.Texts;
        if (layouts.Exists(l => !l.Text.Box.IsInside(Area) || !texts.IsFree(l.Text.Box) || l.Lines.Any(p => !texts.IsFree(p.Start, p.End))))
        {
            return false;
        }

        foreach (DimensionLayout layout in layouts)
        {
            pen.Line(layout.Lines, LineStyle.Dimension).Add(layout.Heads).Add(layout.Text);
            foreach (Piece line in layout.Lines)
            {
                texts.TakeLine(line.Start, line.End);
            }
        }

        return true;
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

    private List<DimensionLayout> Column(List<RingCallout> callouts, int side)
    {
        const double kneeMm = 6;
        double x = side > 0 ? Part.MaxX + kneeMm : Part.MinX - kneeMm;
        List<RingCallout> sorted = [.. callouts.OrderByDescending(c => Height(c, side))];
        double pitch = sorted.Count == 0 ? 0 : Math.Min(WidestPitchMm, Area.Height / sorted.Count);
        double span = pitch * sorted.Count;
        double middle = Math.Clamp(Part.Centre.Y, Area.MinY + (span / 2), Area.MaxY - (span / 2));
        double[] shelves = [.. sorted.Select((_, i) => middle + (span / 2) - (pitch * i) - pitch + DescentMm)];
        Uncross(sorted, shelves, x);
        return [.. sorted.Select((c, i) => Layout(c, new Point(x, shelves[i]), side))];
    }

    // Below a shelf, mm: nothing but air.
    private const double DescentMm = 0.6;

    /// <summary>Where a callout stands in its column: by its angle, top to bottom.</summary>
    private double Height(RingCallout callout, int side)
    {
        Vector from = callout.At - Part.Centre;
        return Math.Atan2(from.Y, side * from.X);
    }

    private static void Uncross(List<RingCallout> callouts, double[] shelves, double x)
    {
        bool crossing = true;
        for (int round = 0; crossing && round < callouts.Count * callouts.Count; round++)
        {
            crossing = false;
            for (int i = 0; i < callouts.Count; i++)
            {
                for (int k = i + 1; k < callouts.Count; k++)
                {
                    if (TextRegistry.Crosses(callouts[i].At, new Point(x, shelves[i]), callouts[k].At, new Point(x, shelves[k])))
                    {
                        (callouts[i], callouts[k]) = (callouts[k], callouts[i]);
                        crossing = true;
                    }
                }
            }
        }
    }

    private static DimensionLayout Layout(RingCallout callout, Point knee, int side)
    {
        double width = TextFit.WidthMm(callout.Text, Style);
        Point end = knee + new Vector(side * (width + 1.5), 0);
        Point left = side > 0 ? knee : end;
        SheetText text = new(callout.Text, new(left + new Vector((width + 1.5) / 2, DimensionForm.AboveMm), TextAlong.Middle), Style);
        return new DimensionLayout(text, DimensionForm.Lines((callout.At, knee), (knee, end)), [], [DimensionForm.Head(callout.At, callout.At - knee)]);
    }
}
