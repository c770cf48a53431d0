using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A small figure that shows how wheel angles count: from the home mark, anticlockwise seen from the wiper side.</summary>
internal static class AngleSense
{
    /// <summary>Width of the figure with its words, mm.</summary>
    public const double WidthMm = 30;

    /// <summary>Height of the figure, mm.</summary>
    public const double HeightMm = 13;

    private const double RadiusMm = 5;
    private static readonly LineStyle Fine = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Dimension, 0.25);

    /// <summary>Draws it in the first corner of an area that is free.</summary>
    /// <returns>Whether one was.</returns>
    public static bool TryDraw(SheetBuilder sheet, Bounds area)
    {
        Point[] corners =
        [
            new(area.MinX, area.MinY),
            new(area.MaxX - WidthMm, area.MinY),
            new(area.MinX, area.MaxY - HeightMm),
            new(area.MaxX - WidthMm, area.MaxY - HeightMm),
        ];
        foreach (Point corner in corners)
        {
            Bounds room = new(corner.X, corner.Y, corner.X + WidthMm, corner.Y + HeightMm);
            if (sheet.Texts.IsFree(TextBox.Of(room)))
            {
                Draw(sheet.Group("sense", "How wheel angles count", "direction"), corner);
                return true;
            }
        }

        return false;
    }

    /// <summary>Draws it, its lower left corner at a point.</summary>
    public static void Draw(GroupPen pen, Point corner)
    {
        Point centre = corner + new Vector(RadiusMm + 0.5, HeightMm / 2);
        const double sweepRad = 1.9;
        Arc arc = new(centre, RadiusMm, 0, sweepRad);
        pen.Line(centre, centre + new Vector(RadiusMm + 2, 0), Fine).Line([arc], Fine).Add(DimensionForm.Head(arc.End, arc.TangentAt(1)));
        pen.Text("0° home", new(centre + new Vector(RadiusMm + 3, 0), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
        pen.Text("+ angles", new(centre + new Vector(RadiusMm + 3, 4), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
    }
}
