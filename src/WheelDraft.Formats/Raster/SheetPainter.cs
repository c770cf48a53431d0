using SkiaSharp;
using WheelDraft.Drawing;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Raster;

// The folder "Raster": sheets painted on a canvas, and the PNG files made so. Texts are drawn as stroke lettering, and from the font that a parameter
// file names where that lacks letters: no font of any machine is touched.

/// <summary>Paints a sheet on a canvas whose unit is one millimetre, y downwards, origin in the sheet's upper left corner.</summary>
internal sealed class SheetPainter
{
    private readonly SKCanvas _canvas;
    private readonly Theme _theme;
    private readonly ScriptFont? _font;

    // How far beyond its bounds a path can colour a pixel; two would do.
    private const float SmoothedPx = 4;

    // The rows of what was painted last.
    private (float Top, float Bottom) _painted;

    internal SheetPainter(SKCanvas canvas, Theme theme, ScriptFont? font = null) => (_canvas, _theme, _font) = (canvas, theme, font);

    /// <summary>Paints the items; the ground is painted already.</summary>
    internal void PaintItems(Sheet sheet)
    {
        foreach (SheetItem item in sheet.Items)
        {
            Paint(item, sheet.HeightMm);
        }
    }

    /// <summary>Paints those of the items that come on some rows; the ground is painted already.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="on">On which rows of the picture each item is, everywhere where that is not known; known afterwards for those that were painted.</param>
    /// <param name="rows">From which row, and to which, not included.</param>
    internal void PaintItems(Sheet sheet, (float Top, float Bottom)[] on, (int Top, int Bottom) rows)
    {
        int i = 0;
        foreach (SheetItem item in sheet.Items)
        {
            if (on[i].Bottom >= rows.Top && on[i].Top <= rows.Bottom)
            {
                _painted = (float.PositiveInfinity, float.NegativeInfinity);
                Paint(item, sheet.HeightMm);
                on[i] = _painted;
            }

            i++;
        }
    }

    private void Paint(SheetItem item, double heightMm)
    {
        switch (item)
        {
            case SheetArea area:
                PaintArea(area, heightMm);
                break;
            case SheetLine line:
                Stroke(line.Runs, heightMm, Pen(_theme.Of(line.Style.Ink), line.Style.WidthMm, line.Style.Ends));
                break;
            case SheetText text:
                PaintText(text, heightMm);
                break;
            default:
                throw new NotSupportedException($"No painting of {item.GetType().Name}.");
        }
    }

    private void PaintArea(SheetArea area, double heightMm)
    {
        using (SKPaint filling = Filling(_theme.Of(area.Fill)))
        using (SKPath shape = PaintedPath.Of(area.Shapes.SelectMany(s => s.Contours).Select(c => new StrokeRun(c.Pieces, true)), heightMm))
        {
            Draw(shape, filling);
        }

        if (area.PatternLines.Count > 0)
        {
            StrokeRun[] lines = [.. area.PatternLines.Select(l => new StrokeRun([l], false))];
            Stroke(lines, heightMm, Pen(_theme.OfPattern(area.Fill), area.Fill.Pattern.StrokeMm, LineEnds.Flat));
        }

        if (area.PatternDots.Count > 0)
        {
            double radius = area.Fill.Pattern.StrokeMm / 2;
            using SKPaint filling = Filling(_theme.OfPattern(area.Fill));
            using SKPath dots = PaintedPath.Of(area.PatternDots.Select(d => new StrokeRun(Contour.Circle(d, radius).Pieces, true)), heightMm);
            Draw(dots, filling);
        }

        if (area.Edge is LineStyle edge)
        {
            StrokeRun[] runs = [.. area.Shapes.SelectMany(s => s.Contours).SelectMany(c => new SheetLine(c, edge).Runs)];
            Stroke(runs, heightMm, Pen(_theme.Of(edge.Ink), edge.WidthMm, edge.Ends));
        }
    }

    private void PaintText(SheetText text, double heightMm)
    {
        ScriptText? script = ScriptText.Of(text, _font);
        Stroke(StrokeRun.Of(script?.Strokes ?? text.Strokes), heightMm, Pen(_theme.Of(text.Style.Ink), text.Style.StrokeMm, LineEnds.Round));
        if (script is not null)
        {
            using SKPaint filling = Filling(_theme.Of(text.Style.Ink));
            using SKPath outlines = PaintedPath.Of(script.Outlines, heightMm);
            Draw(outlines, filling);
        }
    }

    private void Stroke(IReadOnlyList<StrokeRun> runs, double heightMm, SKPaint pen)
    {
        using (pen)
        using (SKPath path = PaintedPath.Of(runs, heightMm))
        {
            Draw(path, pen);
        }
    }

    private void Draw(SKPath path, SKPaint paint)
    {
        _canvas.DrawPath(path, paint);

        // Half a line to either side, and generously what smoothing adds.
        SKRect bounds = path.Bounds;
        bounds.Inflate(paint.StrokeWidth, paint.StrokeWidth);
        SKRect pixels = _canvas.TotalMatrix.MapRect(bounds);
        _painted = (Math.Min(_painted.Top, pixels.Top - SmoothedPx), Math.Max(_painted.Bottom, pixels.Bottom + SmoothedPx));
    }

    private static SKPaint Filling(Rgb colour) => new() { Style = SKPaintStyle.Fill, IsAntialias = true, Color = Colour(colour) };

    private static SKPaint Pen(Rgb colour, double widthMm, LineEnds ends) => new()
    {
        Style = SKPaintStyle.Stroke,
        IsAntialias = true,
        Color = Colour(colour),
        StrokeWidth = (float)widthMm,
        StrokeJoin = SKStrokeJoin.Round,
        StrokeCap = ends == LineEnds.Round ? SKStrokeCap.Round : SKStrokeCap.Butt,
    };

    private static SKColor Colour(Rgb colour) => new(colour.Red, colour.Green, colour.Blue);
}

/// <summary>Paths for painting: arcs as cubics of this project's own, at most an eighth of a turn each.</summary>
/// <remarks>The canvas's own arcs would come out as over a hundred curves a circle in a PDF.</remarks>
internal static class PaintedPath
{
    internal static SKPath Of(IEnumerable<StrokeRun> runs, double heightMm)
    {
        using SKPathBuilder path = new() { FillType = SKPathFillType.EvenOdd };
        foreach (StrokeRun run in runs)
        {
            path.MoveTo(At(run.Pieces[0].Start, heightMm));
            foreach (Piece piece in run.Pieces)
            {
                if (piece is Arc arc)
                {
                    Along(path, arc, heightMm);
                }
                else
                {
                    path.LineTo(At(piece.End, heightMm));
                }
            }

            if (run.IsClosed)
            {
                path.Close();
            }
        }

        return path.Detach();
    }

    /// <summary>Outlines of letters of a font, filled by the way they go round.</summary>
    internal static SKPath Of(IEnumerable<OutlineStep> steps, double heightMm)
    {
        using SKPathBuilder path = new() { FillType = SKPathFillType.Winding };
        foreach (OutlineStep step in steps)
        {
            SKPoint[] p = [.. step.Points.Select(q => At(q, heightMm))];
            switch (step.Verb)
            {
                case 'M':
                    path.MoveTo(p[0]);
                    break;
                case 'L':
                    path.LineTo(p[0]);
                    break;
                case 'Q':
                    path.QuadTo(p[0], p[1]);
                    break;
                case 'C':
                    path.CubicTo(p[0], p[1], p[2]);
                    break;
                default:
                    path.Close();
                    break;
            }
        }

        return path.Detach();
    }

    private static void Along(SKPathBuilder path, Arc arc, double heightMm)
    {
        foreach (ArcCubic cubic in ArcCubics.Of(arc))
        {
            path.CubicTo(At(cubic.First, heightMm), At(cubic.Second, heightMm), At(cubic.End, heightMm));
        }
    }

    private static SKPoint At(Point p, double heightMm) => new((float)p.X, (float)(heightMm - p.Y));
}
