using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Pdf;

/// <summary>Paints sheets on a page of a PDF whose unit is one millimetre, y up, origin in the lower left corner.</summary>
internal sealed class PdfPainter
{
    private readonly StringBuilder _drawn = new();
    private readonly PdfLettering _lettering;
    private readonly Theme _theme;

    // What was set last, so that it is not set again.
    private string _fill = "";
    private string _stroke = "";
    private string _pen = "";

    internal PdfPainter(PdfLettering lettering, Theme theme)
    {
        (_lettering, _theme) = (lettering, theme);

        // Points of 1/72 in to millimetres; round joins throughout.
        _drawn.Append("2.8346457 0 0 2.8346457 0 0 cm\n1 j\n");
    }

    /// <summary>What was painted, as a content stream.</summary>
    internal string Content => _drawn.ToString();

    /// <summary>The whole sheet with its ground.</summary>
    internal void Paint(Sheet sheet)
    {
        Fill(_theme.Paper);
        Box(new(0, 0, sheet.WidthMm, sheet.HeightMm)).Append(" f\n");
        PaintItems(sheet);
    }

    /// <summary>The items alone, without the ground.</summary>
    internal void PaintItems(Sheet sheet)
    {
        foreach (SheetItem item in sheet.Items)
        {
            Paint(item);
        }
    }

    /// <summary>What a window on a page shows of a sheet that is shifted behind it; what lies outside is left out, words too.</summary>
    /// <param name="sheet">The sheet behind the window.</param>
    /// <param name="shift">From a point of the sheet to its place on the page, mm.</param>
    /// <param name="window">The window, mm on the page.</param>
    internal void PaintWindow(Sheet sheet, Vector shift, Bounds window)
    {
        Save();
        Box(window).Append(" W n\n");
        Matrix(1, shift);
        Bounds seen = new(window.MinX - shift.X, window.MinY - shift.Y, window.MaxX - shift.X, window.MaxY - shift.Y);
        foreach (SheetItem item in sheet.Items.Where(i => i.Bounds.Overlaps(seen)))
        {
            Paint(item);
        }

        Restore();
    }

    /// <summary>A sheet made smaller or larger so that it just fits a room of a page, in its middle.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="room">The room, mm on the page.</param>
    internal void PaintInto(Sheet sheet, Bounds room)
    {
        double scale = Math.Min(room.Width / sheet.WidthMm, room.Height / sheet.HeightMm);
        Save();
        Matrix(scale, new(room.Centre.X - (scale * sheet.WidthMm / 2), room.Centre.Y - (scale * sheet.HeightMm / 2)));
        PaintItems(sheet);
        Restore();
    }

    private void Paint(SheetItem item)
    {
        switch (item)
        {
            case SheetArea area:
                PaintArea(area);
                break;
            case SheetLine line:
                Stroke(line.Runs, line.Style);
                break;
            case SheetText text:
                PaintText(text);
                break;
            default:
                throw new NotSupportedException($"No painting of {item.GetType().Name}.");
        }
    }

    private void PaintArea(SheetArea area)
    {
        bool patterned = area.PatternLines.Count + area.PatternDots.Count > 0;
        bool inOne = area.Edge is { IsContinuous: true } && !patterned;
        Fill(_theme.Of(area.Fill));
        if (inOne)
        {
            Pen(_theme.Of(area.Edge!.Ink), area.Edge.WidthMm, area.Edge.Ends);
        }

        PdfPath.Append(_drawn, area.Shapes.SelectMany(s => s.Contours).Select(c => new StrokeRun(c.Pieces, true)));
        _drawn.Append(inOne ? "B*\n" : "f*\n");
        PaintPattern(area);
        if (area.Edge is LineStyle edge && !inOne)
        {
            Stroke([.. area.Shapes.SelectMany(s => s.Contours).SelectMany(c => new SheetLine(c, edge).Runs)], edge);
        }
    }

    private void PaintPattern(SheetArea area)
    {
        if (area.PatternLines.Count > 0)
        {
            Pen(_theme.OfPattern(area.Fill), area.Fill.Pattern.StrokeMm, LineEnds.Flat);
            PdfPath.Append(_drawn, area.PatternLines.Select(l => new StrokeRun([l], false)));
            _drawn.Append("S\n");
        }

        if (area.PatternDots.Count > 0)
        {
            // A line without length and with round ends is a dot (ISO 32000-1, 8.5.3.2).
            Pen(_theme.OfPattern(area.Fill), area.Fill.Pattern.StrokeMm, LineEnds.Round);
            foreach (Point dot in area.PatternDots)
            {
                PdfPath.At(_drawn, dot).Append("m ");
                PdfPath.At(_drawn, dot).Append("l\n");
            }

            _drawn.Append("S\n");
        }
    }

    private void Stroke(IReadOnlyList<StrokeRun> runs, LineStyle style)
    {
        Pen(_theme.Of(style.Ink), style.WidthMm, style.Ends);
        PdfPath.Append(_drawn, runs);
        _drawn.Append("S\n");
    }

    private void PaintText(SheetText text)
    {
        // Some programs fill the letters of such fonts and some stroke them: either way in the text's colour.
        Fill(_theme.Of(text.Style.Ink));
        StrokeColour(_theme.Of(text.Style.Ink));
        string height = PdfPath.Number(text.Style.HeightMm);
        double cos = Math.Cos(text.Place.TurnRad);
        double sin = Math.Sin(text.Place.TurnRad);
        _drawn.Append("BT ").Append(Part(cos)).Append(' ').Append(Part(sin)).Append(' ').Append(Part(-sin)).Append(' ').Append(Part(cos)).Append(' ');
        PdfPath.At(_drawn, _lettering.StartOf(text)).Append("Tm");
        foreach ((string font, string codes) in _lettering.Runs(text.Text, text.Style.Weight))
        {
            _drawn.Append(" /").Append(font).Append(' ').Append(height).Append(" Tf<").Append(codes).Append(">Tj");
        }

        _drawn.Append(" ET\n");
    }

    private static string Part(double share) => FixedPoint.Short(share, 6);

    private void Fill(Rgb colour) => Set(ref _fill, Colour(colour) + " rg\n");

    private void StrokeColour(Rgb colour) => Set(ref _stroke, Colour(colour) + " RG\n");

    private void Pen(Rgb colour, double widthMm, LineEnds ends)
    {
        StrokeColour(colour);
        Set(ref _pen, $"{PdfPath.Number(widthMm)} w {(ends == LineEnds.Round ? "1" : "0")} J\n");
    }

    private void Set(ref string last, string words)
    {
        if (!string.Equals(last, words, StringComparison.Ordinal))
        {
            _drawn.Append(words);
            last = words;
        }
    }

    private static string Colour(Rgb colour)
    {
        // To four decimals, which every level of 255 survives.
        static string Share(byte level) => FixedPoint.Short(level / 255.0, 4);
        return $"{Share(colour.Red)} {Share(colour.Green)} {Share(colour.Blue)}";
    }

    private StringBuilder Box(Bounds box) => _drawn
        .Append(PdfPath.Number(box.MinX)).Append(' ').Append(PdfPath.Number(box.MinY)).Append(' ')
        .Append(PdfPath.Number(box.Width)).Append(' ').Append(PdfPath.Number(box.Height)).Append(" re");

    private void Matrix(double scale, Vector shift)
    {
        string s = FixedPoint.Short(scale, 7);
        _drawn.Append(s).Append(" 0 0 ").Append(s).Append(' ').Append(PdfPath.Number(shift.X)).Append(' ').Append(PdfPath.Number(shift.Y)).Append(" cm\n");
    }

    private void Save() => _drawn.Append("q\n");

    private void Restore()
    {
        _drawn.Append("Q\n");
        (_fill, _stroke, _pen) = ("", "", "");
    }
}
