using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Frame, centring marks, trimming marks and reference fields of a sheet, after ISO 5457:1999 (from memory).</summary>
/// <remarks>Filing margin 20 mm on the left, 10 mm elsewhere, frame and centring marks 0.7 mm, fields of 50 mm counted from the
/// middle, letters downwards without I and O, numerals across, 3.5 mm high; A4 is labelled above and on the right only.</remarks>
internal static class SheetFrame
{
    /// <summary>Width of the frame's line, mm.</summary>
    public const double FrameLineMm = 0.7;

    private const double FilingMarginMm = 20;
    private const double MarginMm = 10;
    private const double FieldMm = 50;

    // The strip of fields lies round the frame.
    private const double StripMm = 5;

    // The standard's marks reach 10 mm into the drawing; 3 mm are found as easily and leave the drawing its room.
    private const double CentringInsideMm = 3;
    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    private static readonly LineStyle Frame = LineStyle.Wide(LineKind.ContinuousWide, Ink.Frame, FrameLineMm);
    private static readonly LineStyle Rule = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Frame, 0.35);

    /// <summary>The drawing space inside the frame.</summary>
    public static Bounds SpaceOf(PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return new(FilingMarginMm, MarginMm, size.WidthMm - MarginMm, size.HeightMm - MarginMm);
    }

    /// <summary>Draws the frame and the title block.</summary>
    /// <returns>The drawing space above the title block (on sheets wider than it, the strip beside it is
    /// <see cref="BesideTitleBlock"/>), with a little air to frame and block.</returns>
    public static Bounds Draw(SheetBuilder sheet, TitleBlock titleBlock)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(titleBlock);
        Bounds space = SpaceOf(sheet.Size);
        GroupPen pen = sheet.Group("frame", "Frame and reference fields", "frame");
        pen.Line(Contour.Rectangle(new(space.MinX, space.MinY), new(space.MaxX, space.MaxY)), Frame);
        CentringMarks(pen, sheet, space);
        ReferenceFields(pen, sheet.Size, space);
        Bounds block = titleBlock.Draw(sheet, new Point(space.MaxX, space.MinY));
        sheet.Texts.Block(block);
        sheet.Texts.Confine(space.Grown(-FrameAirMm));
        return RoomOf(sheet.Size);
    }

    /// <summary>What <see cref="Draw"/> leaves above the title block, before anything is drawn.</summary>
    public static Bounds RoomOf(PaperSize size)
    {
        Bounds space = SpaceOf(size);
        return new Bounds(space.MinX + AirMm, space.MinY + TitleBlock.HeightMm + AirMm, space.MaxX - AirMm, space.MaxY - AirMm);
    }

    /// <summary>The drawing space to the left of the title block; without width on A4.</summary>
    public static Bounds BesideTitleBlock(PaperSize size)
    {
        Bounds space = SpaceOf(size);
        double right = Math.Max(space.MinX + AirMm, space.MaxX - TitleBlock.WidthMm - AirMm);
        return new(space.MinX + AirMm, space.MinY + AirMm, right, space.MinY + TitleBlock.HeightMm - AirMm);
    }

    private const double AirMm = 4;

    // Texts that look for a place keep off the frame's line.
    private const double FrameAirMm = 1.5;

    private static void CentringMarks(GroupPen pen, SheetBuilder sheet, Bounds space)
    {
        Point middle = sheet.Paper.Centre;
        (Point From, Point To)[] marks =
        [
            (new(middle.X, space.MaxY + StripMm), new(middle.X, space.MaxY - CentringInsideMm)),
            (new(middle.X, space.MinY - StripMm), new(middle.X, space.MinY)),
            (new(space.MinX - StripMm, middle.Y), new(space.MinX + CentringInsideMm, middle.Y)),
            (new(space.MaxX + StripMm, middle.Y), new(space.MaxX - CentringInsideMm, middle.Y)),
        ];
        foreach ((Point from, Point to) in marks)
        {
            pen.Line(from, to, Frame);
            sheet.Texts.TakeLine(from, to);
        }
    }

    private static void ReferenceFields(GroupPen pen, PaperSize size, Bounds space)
    {
        Bounds strip = space.Grown(StripMm);
        pen.Line(Contour.Rectangle(new(strip.MinX, strip.MinY), new(strip.MaxX, strip.MaxY)), Rule);
        bool everySide = size.WidthMm > size.HeightMm;
        double[] across = Limits(space.MinX, space.MaxX, size.WidthMm / 2);
        double[] down = Limits(space.MinY, space.MaxY, size.HeightMm / 2);
        for (int i = 0; i + 1 < across.Length; i++)
        {
            string numeral = (i + 1).ToString(CultureInfo.InvariantCulture);
            Field(pen, numeral, new(across[i], space.MaxY, across[i + 1], strip.MaxY), i > 0 ? new(across[i], space.MaxY) : null, new Vector(0, StripMm));
            if (everySide)
            {
                Field(pen, numeral, new(across[i], strip.MinY, across[i + 1], space.MinY), i > 0 ? new(across[i], space.MinY) : null, new Vector(0, -StripMm));
            }
        }

        for (int i = 0; i + 1 < down.Length; i++)
        {
            string letter = Letters[down.Length - 2 - i].ToString();
            Field(pen, letter, new(space.MaxX, down[i], strip.MaxX, down[i + 1]), i > 0 ? new(space.MaxX, down[i]) : null, new Vector(StripMm, 0));
            if (everySide)
            {
                Field(pen, letter, new(strip.MinX, down[i], space.MinX, down[i + 1]), i > 0 ? new(space.MinX, down[i]) : null, new Vector(-StripMm, 0));
            }
        }
    }

    /// <summary>Field limits from the middle outwards; what is left at the ends joins the last field when it is less than half of one.</summary>
    private static double[] Limits(double from, double to, double middle)
    {
        List<double> limits = [from, to];
        for (int k = -100; k <= 100; k++)
        {
            double at = middle + (k * FieldMm);
            if (at > from + (FieldMm / 4) && at < to - (FieldMm / 4))
            {
                limits.Add(at);
            }
        }

        limits.Sort();
        return [.. limits];
    }

    private static void Field(GroupPen pen, string label, Bounds field, Point? ruleAt, Vector rule)
    {
        if (ruleAt is Point at)
        {
            pen.Line(at, at + rule, Rule);
        }

        pen.Text(label, new(field.Centre, TextAlong.Middle, TextAcross.Middle), new TextStyle(FieldLabelMm, TextWeight.Regular, Ink.Frame));
    }

    // 3.5 mm letters by the standard; in a strip of 5 mm they leave 0.7 mm above and below.
    private const double FieldLabelMm = 3.5;
}
