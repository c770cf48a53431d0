using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>How views are folded out (ISO 5456-2).</summary>
internal enum Projection
{
    /// <summary>First angle: what is seen from the left stands to the right.</summary>
    FirstAngle,

    /// <summary>Third angle: what is seen from the left stands to the left.</summary>
    ThirdAngle,
}

/// <summary>The fields of a title block, after ISO 7200:2004; what is not known is left blank to be filled in by hand.</summary>
internal sealed record TitleBlock
{
    /// <summary>Title: the design's.</summary>
    public required string Title { get; init; }

    /// <summary>Supplementary title: what this sheet shows.</summary>
    public required string Subtitle { get; init; }

    /// <summary>Document type: part drawing, timing chart, circuit diagram.</summary>
    public required string DocumentType { get; init; }

    /// <summary>Identification number.</summary>
    public string Number { get; init; } = "";

    /// <summary>Sheet number.</summary>
    public int Sheet { get; init; } = 1;

    /// <summary>Number of sheets.</summary>
    public int Sheets { get; init; } = 1;

    /// <summary>Date of issue; only ever the file's.</summary>
    public string Date { get; init; } = "";

    /// <summary>Legal owner.</summary>
    public string Owner { get; init; } = "";

    /// <summary>Creator.</summary>
    public string Creator { get; init; } = "";

    /// <summary>Approval person.</summary>
    public string Approval { get; init; } = "";

    /// <summary>Revision index.</summary>
    public string Revision { get; init; } = "";

    /// <summary>Mark of the parameter file that it was drawn from.</summary>
    public string Input { get; init; } = "";

    /// <summary>Scale, as 2:1; empty for charts and diagrams.</summary>
    public string Scale { get; init; } = "";

    /// <summary>Unit of lengths and the decimal sign, as "mm, decimal point".</summary>
    public string Units { get; init; } = "";

    /// <summary>How views are folded out, or null where there is one view or none.</summary>
    public Projection? Projection { get; init; }

    /// <summary>Width of every title block, mm (ISO 7200).</summary>
    public const double WidthMm = 180;

    /// <summary>Height of this form of it, mm.</summary>
    public const double HeightMm = 40;

    private const double TitleWidthMm = 100;

    /// <summary>Draws it, its lower right corner at a point.</summary>
    /// <returns>The area that it takes.</returns>
    internal Bounds Draw(SheetBuilder sheet, Point lowerRight)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        GroupPen pen = sheet.Group("title-block", "Title block", "title-block");
        Bounds all = new(lowerRight.X - WidthMm, lowerRight.Y, lowerRight.X, lowerRight.Y + HeightMm);
        pen.Box(all, Fill.Of(FillKind.Paper), LineStyle.Wide(LineKind.ContinuousWide, Ink.Frame, SheetFrame.FrameLineMm));
        Fields fields = new(pen, all);
        TextStyle value = TextStyle.Small;
        fields.Row(31, 9, [(60, "Document type", DocumentType, value), (24, "Scale", Scale, TextStyle.Label), (30, "Units", Units, value), (22, "Input file", Input, value), (22, "Projection", "", value), (22, "Paper", sheet.Size.Name, value)]);
        fields.Row(22, 9, [(60, "Legal owner", Owner, value), (42, "Created by", Creator, value), (42, "Approved by", Approval, value), (36, "Date of issue", Date, value)]);
        fields.Row(0, 22, [(TitleWidthMm, "Title", "", value), (44, "Identification number", Number, TextStyle.Label), (16, "Revision", Revision, TextStyle.Label), (20, "Sheet", Invariant.Text($"{Sheet} / {Sheets}"), TextStyle.Label)]);
        fields.Titles(new Bounds(all.MinX, all.MinY, all.MinX + TitleWidthMm, all.MinY + 22), Title, Subtitle);
        if (Projection is Projection projection)
        {
            ProjectionSymbol.Draw(pen, new Point(all.MinX + 147, all.MinY + 33.9), projection);
        }

        return all;
    }

    /// <summary>Cells with a small heading and a value each.</summary>
    private sealed class Fields(GroupPen pen, Bounds block)
    {
        private static readonly TextStyle Heading = new(1.8, TextWeight.Regular, Ink.Quiet);
        private static readonly LineStyle Rule = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Frame, 0.25);
        private const double HeadingPadMm = 1.2;
        private const double PadMm = 1.6;

        public void Row(double fromMm, double heightMm, IReadOnlyList<(double WidthMm, string Heading, string Value, TextStyle Style)> cells)
        {
            double x = block.MinX;
            double bottom = block.MinY + fromMm;
            if (bottom + heightMm < block.MaxY)
            {
                pen.Line(new Point(block.MinX, bottom + heightMm), new Point(block.MaxX, bottom + heightMm), Rule);
            }

            foreach ((double width, string heading, string value, TextStyle style) in cells)
            {
                if (x > block.MinX)
                {
                    pen.Line(new Point(x, bottom), new Point(x, bottom + heightMm), Rule);
                }

                pen.Text(TextFit.Shortened(heading, width - PadMm - 0.4, Heading), new(new(x + PadMm, bottom + heightMm - HeadingPadMm), TextAlong.Start, TextAcross.Top), Heading);
                Value(new Bounds(x + PadMm, bottom, x + width - PadMm, bottom + heightMm - HeadingPadMm - Heading.HeightMm - 0.9), value, style);
                x += width;
            }
        }

        /// <summary>Title above, supplementary title below, each in half of the field.</summary>
        public void Titles(Bounds cell, string title, string subtitle)
        {
            double width = cell.Width - (2 * PadMm);
            double half = (cell.Height - HeadingPadMm - Heading.HeightMm - HeadingAirMm) / 2;
            FittedText first = TextFit.IntoField(title, width, half, TextStyle.Title);
            Lines(first, new Point(cell.MinX + PadMm, cell.MinY + (1.5 * half) + (first.HeightMm / 2)));
            FittedText second = TextFit.IntoField(subtitle, width, half, TextStyle.Label);
            Lines(second, new Point(cell.MinX + PadMm, cell.MinY + (0.5 * half) + (second.HeightMm / 2)));
        }

        private const double HeadingAirMm = 0.4;

        private void Value(Bounds room, string value, TextStyle style)
        {
            if (value.Length == 0)
            {
                return;
            }

            FittedText fitted = TextFit.IntoField(value, room.Width, room.Height, style);
            Lines(fitted, new Point(room.MinX, (room.MinY + room.MaxY + fitted.HeightMm) / 2));
        }

        private void Lines(FittedText fitted, Point topLeft)
        {
            for (int i = 0; i < fitted.Lines.Count; i++)
            {
                pen.Text(fitted.Lines[i], new(topLeft - new Vector(0, i * fitted.PitchMm), TextAlong.Start, TextAcross.Top), fitted.Style);
            }
        }
    }
}

/// <summary>The sign of the manner of projection: a cut cone from the side and from its narrow end.</summary>
internal static class ProjectionSymbol
{
    /// <summary>Draws it about a middle, about 15 by 5 mm.</summary>
    public static void Draw(GroupPen pen, Point middle, Projection projection)
    {
        const double largeMm = 2;
        const double smallMm = 1;
        const double apartMm = 4.25;
        double side = projection == Projection.FirstAngle ? 1 : -1;

        // The cone's narrow end is to the left. Seen from there, the rings stand to the right in first angle, to the left in third.
        Point cone = middle - new Vector(side * apartMm, 0);
        Point rings = middle + new Vector(side * apartMm, 0);
        Contour cut = Contour.Polygon(cone + new Vector(-2.5, -smallMm), cone + new Vector(2.5, -largeMm), cone + new Vector(2.5, largeMm), cone + new Vector(-2.5, smallMm));
        pen.Line(cut, LineStyle.Thin).Line(Contour.Circle(rings, largeMm), LineStyle.Thin).Line(Contour.Circle(rings, smallMm), LineStyle.Thin);
        LineStyle axis = LineStyle.Wide(LineKind.ChainNarrow, Ink.Centre, 0.13);
        pen.Line(cone - new Vector(3.3, 0), cone + new Vector(3.3, 0), axis);
        pen.Line(rings - new Vector(2.6, 0), rings + new Vector(2.6, 0), axis);
        pen.Line(rings - new Vector(0, 2.6), rings + new Vector(0, 2.6), axis);
    }
}
