using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The arrow that shows the rolling direction of a blank's stock.</summary>
internal static class GrainArrow
{
    private const double LongMm = 14;
    private const double TallMm = 5;
    private static readonly LineStyle Fine = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Dimension, 0.25);

    /// <summary>Draws it, its left end at a point, its word after it; nothing where the direction is not stated.</summary>
    public static void Draw(GroupPen pen, Point left, StripGrain? grain)
    {
        ArgumentNullException.ThrowIfNull(pen);
        if (grain is null)
        {
            return;
        }

        Vector half = grain == StripGrain.Along ? new(LongMm / 2, 0) : new(0, TallMm / 2);
        Point middle = left + new Vector(half.X, 0);
        pen.Line(middle - half, middle + half, Fine).Add(DimensionForm.Head(middle + half, half)).Add(DimensionForm.Head(middle - half, -half));
        pen.Text("grain", new(middle + new Vector(half.X + 2, 0), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
    }
}
