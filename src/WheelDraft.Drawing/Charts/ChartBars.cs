using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Bars, whiskers and marks along an axis, in one row.</summary>
/// <param name="Pen">The pen.</param>
/// <param name="Axis">The axis.</param>
/// <param name="MiddleMm">Height of the row's middle on the paper, mm.</param>
/// <param name="BarMm">Height of its bars, mm.</param>
internal sealed record ChartRow(GroupPen Pen, ChartAxis Axis, double MiddleMm, double BarMm)
{
    // Shorter than this a bar is no area; a line stands for it.
    private const double LeastBarMm = 0.05;

    /// <summary>Draws a bar from one value to another; what lies outside the axis is left out.</summary>
    public ChartRow Bar(double from, double to, Fill fill, LineStyle? edge = null)
    {
        double left = Axis.Of(Math.Max(from, Axis.From));
        double right = Axis.Of(Math.Min(to, Axis.To));
        if (right - left >= LeastBarMm)
        {
            Pen.Box(new Bounds(left, MiddleMm - (BarMm / 2), right, MiddleMm + (BarMm / 2)), fill, edge);

            // Labels stand wholly in a bar or wholly beside it.
            TakeUpright(left);
            TakeUpright(right);
        }
        else if (right >= left)
        {
            Pen.Line(new Point(left, MiddleMm - (BarMm / 2)), new Point(left, MiddleMm + (BarMm / 2)), edge ?? LineStyle.Edge);
        }

        return this;
    }

    /// <summary>Draws a bar on an axis that is one turn long: what runs beyond its end goes on at its beginning.</summary>
    public ChartRow BarRound(double from, double length, Fill fill, LineStyle? edge = null)
    {
        double turn = Axis.To - Axis.From;
        Bar(from, from + length, fill, edge);
        return from + length > Axis.To ? Bar(from - turn, from + length - turn, fill, edge) : this;
    }

    /// <summary>Draws a whisker: from the least to the greatest value, a cross stroke at either end.</summary>
    public ChartRow Whisker(double least, double greatest)
    {
        const double strokeShare = 0.35;
        double left = Axis.Of(Math.Max(least, Axis.From));
        double right = Axis.Of(Math.Min(greatest, Axis.To));
        double half = BarMm * strokeShare;
        LineStyle style = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Whisker, 0.35);
        if (right - left > Tolerances.JoinMm)
        {
            Pen.Line(new Point(left, MiddleMm), new Point(right, MiddleMm), style);
        }

        TakeUpright(left);
        TakeUpright(right);
        Pen.Texts.TakeLine(new Point(left, MiddleMm), new Point(right, MiddleMm));
        foreach (double end in (double[])[least, greatest])
        {
            // An end beyond the axis has no stroke: the whisker goes on there.
            if (end >= Axis.From && end <= Axis.To)
            {
                Pen.Line(new Point(Axis.Of(end), MiddleMm - half), new Point(Axis.Of(end), MiddleMm + half), style);
            }
        }

        return this;
    }

    /// <summary>Draws a whisker on an axis that is one turn long: what lies beyond one end is drawn at the other.</summary>
    public ChartRow WhiskerRound(double least, double greatest)
    {
        double turn = Axis.To - Axis.From;
        foreach (double shift in (double[])[0, -turn, turn])
        {
            if (least + shift <= Axis.To && greatest + shift >= Axis.From)
            {
                Whisker(least + shift, greatest + shift);
            }
        }

        return this;
    }

    private void TakeUpright(double x) => Pen.Texts.TakeLine(new Point(x, MiddleMm - (BarMm / 2)), new Point(x, MiddleMm + (BarMm / 2)));

    /// <summary>Writes a label for what lies between two values: in the bar on a plate, else to the right, to the left, above or below it.</summary>
    /// <returns>Whether there was room.</returns>
    public bool Label(double from, double to, string text, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        const double gapMm = 1.2;
        const double widerMm = 5;
        double left = Axis.Of(Math.Max(from, Axis.From));
        double right = Axis.Of(Math.Min(to, Axis.To));
        SheetText inside = new(text, new(new((left + right) / 2, MiddleMm), TextAlong.Middle, TextAcross.Middle), style);
        if (inside.Box.WidthMm + gapMm <= right - left && inside.Box.HeightMm <= BarMm && Pen.Texts.IsFree(inside.Box))
        {
            Pen.PlatedText(text, inside.Place, style);
            return true;
        }

        double off = (BarMm / 2) + gapMm;
        return Pen.TryText(
            text,
            [
                new(new(right + gapMm, MiddleMm), TextAlong.Start, TextAcross.Middle),
                new(new(right + widerMm, MiddleMm), TextAlong.Start, TextAcross.Middle),
                new(new(left - gapMm, MiddleMm), TextAlong.End, TextAcross.Middle),
                new(new(left - widerMm, MiddleMm), TextAlong.End, TextAcross.Middle),
                new(new((left + right) / 2, MiddleMm + off), TextAlong.Middle),
                new(new((left + right) / 2, MiddleMm - off), TextAlong.Middle, TextAcross.Top),
                new(new(right - gapMm, MiddleMm + off), TextAlong.End),
                new(new(left + gapMm, MiddleMm + off), TextAlong.Start),
            ],
            style);
    }
}

/// <summary>A legend: small fields of filling or line, each with its meaning, in a row that breaks where it must.</summary>
internal sealed record ChartLegend(IReadOnlyList<LegendEntry> Entries)
{
    private const double FieldMm = 8;

    // As long as an interrupted line needs to show its pattern.
    private const double LineMm = 14;
    private const double RowMm = 6;
    private const double GapMm = 6;

    /// <summary>Height that it takes at a width, mm.</summary>
    public double HeightMm(double widthMm) => RowMm * (Places(widthMm).Select(p => p.Row).DefaultIfEmpty().Max() + 1);

    /// <summary>Draws it, its upper left corner at a point.</summary>
    /// <returns>The area that it takes.</returns>
    public Bounds Draw(GroupPen pen, Point topLeft, double widthMm)
    {
        ArgumentNullException.ThrowIfNull(pen);
        foreach ((LegendEntry entry, double along, int row) in Places(widthMm))
        {
            double x = topLeft.X + along;
            double y = topLeft.Y - (RowMm / 2) - (RowMm * row);
            if (entry.Fill is Fill fill)
            {
                pen.Box(new Bounds(x, y - 1.8, x + FieldMm, y + 1.8), fill, entry.Line ?? LineStyle.Thin);
            }
            else if (entry.Line is LineStyle line)
            {
                pen.Line(new Point(x, y), new Point(x + LineMm, y), line);
            }

            pen.Text(entry.Text, new(new(x + FieldOf(entry) + 1.5, y), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
        }

        return new Bounds(topLeft.X, topLeft.Y - HeightMm(widthMm), topLeft.X + widthMm, topLeft.Y);
    }

    private static double FieldOf(LegendEntry entry) => entry.Fill is null ? LineMm : FieldMm;

    private IEnumerable<(LegendEntry Entry, double AlongMm, int Row)> Places(double widthMm)
    {
        double x = 0;
        int row = 0;
        foreach (LegendEntry whole in Entries)
        {
            // A name that is longer than the legend is wide stands in full in the tables.
            LegendEntry entry = whole with { Text = TextFit.Shortened(whole.Text, widthMm - FieldOf(whole) - 1.5, TextStyle.Small) };
            double width = FieldOf(entry) + 1.5 + TextFit.WidthMm(entry.Text, TextStyle.Small) + GapMm;
            if (x > 0 && x + width - GapMm > widthMm)
            {
                (x, row) = (0, row + 1);
            }

            yield return (entry, x, row);
            x += width;
        }
    }
}

/// <summary>An entry of a legend: a filling with or without an edge, or a line.</summary>
/// <param name="Text">What it means.</param>
/// <param name="Fill">The filling, or null for a line.</param>
/// <param name="Line">The line, or the filling's edge.</param>
internal sealed record LegendEntry(string Text, Fill? Fill, LineStyle? Line = null);
