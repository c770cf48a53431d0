using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Formats.Raster;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Svg;

/// <summary>Path data of pieces, with y turned to run downwards.</summary>
internal sealed class SvgPath
{
    private readonly StringBuilder _data = new();
    private readonly double _heightMm;

    internal SvgPath(double heightMm) => _heightMm = heightMm;

    /// <summary>The one whole circle that the pieces are, or null.</summary>
    internal static Arc? OnlyCircle(IReadOnlyList<Piece> pieces) =>
        pieces.Count == 1 && pieces[0] is Arc { Span.IsFull: true } circle ? circle : null;

    internal SvgPath Add(Outline shape)
    {
        foreach (Contour contour in shape.Contours)
        {
            Add(contour.Pieces, closed: true);
        }

        return this;
    }

    /// <summary>Outlines of letters of a font.</summary>
    internal SvgPath Add(IEnumerable<OutlineStep> steps)
    {
        foreach (OutlineStep step in steps)
        {
            _data.Append(step.Verb);
            for (int i = 0; i < step.Points.Count; i++)
            {
                _data.Append(i > 0 ? " " : "");
                Coordinates(step.Points[i]);
            }
        }

        return this;
    }

    internal SvgPath Add(StrokeRun run)
    {
        Add(run.Pieces, run.IsClosed);
        return this;
    }

    internal SvgPath Add(IReadOnlyList<Piece> pieces, bool closed)
    {
        if (OnlyCircle(pieces) is Arc circle)
        {
            WholeCircle(circle);
            return this;
        }

        Move(pieces[0].Start);
        for (int i = 0; i < pieces.Count; i++)
        {
            bool closing = closed && i == pieces.Count - 1;
            if (pieces[i] is Arc arc)
            {
                Along(arc);
            }
            else if (!closing)
            {
                At("L", pieces[i].End);
            }
        }

        if (closed)
        {
            _data.Append('Z');
        }

        return this;
    }

    public override string ToString() => _data.ToString();

    /// <summary>Centre and radius are rounded first, so that both halves span exactly two radii: else a renderer would move the centre.</summary>
    private void WholeCircle(Arc circle)
    {
        double radius = Math.Round(circle.RadiusMm, SvgMarkup.Decimals);
        double x = Math.Round(circle.Centre.X, SvgMarkup.Decimals);
        double y = Math.Round(_heightMm - circle.Centre.Y, SvgMarkup.Decimals);
        string r = SvgMarkup.Number(radius);
        string level = SvgMarkup.Number(y);
        string right = SvgMarkup.Number(x + radius);
        string left = SvgMarkup.Number(x - radius);
        int sweep = circle.SweepRad > 0 ? 0 : 1;
        _data.Append('M').Append(right).Append(' ').Append(level);
        foreach (string end in (string[])[left, right])
        {
            _data.Append('A').Append(r).Append(' ').Append(r).Append(" 0 0 ").Append(sweep).Append(' ').Append(end).Append(' ').Append(level);
        }

        _data.Append('Z');
    }

    /// <summary>In equal parts of at most a quarter turn: near half a turn, rounded end points would move the centre by far more than they moved.</summary>
    private void Along(Arc arc)
    {
        const double roundingRad = 1e-9;
        int parts = (int)Math.Ceiling((Math.Abs(arc.SweepRad) - roundingRad) / (Math.PI / 2));
        string radius = SvgMarkup.Number(arc.RadiusMm);
        string flags = arc.SweepRad > 0 ? " 0 0 0 " : " 0 0 1 ";
        for (int part = 1; part <= Math.Max(parts, 1); part++)
        {
            _data.Append('A').Append(radius).Append(' ').Append(radius).Append(flags);
            Coordinates(part >= parts ? arc.End : arc.PointAt(part / (double)parts));
        }
    }

    private void Move(Point to) => At("M", to);

    private void At(string command, Point to)
    {
        _data.Append(command);
        Coordinates(to);
    }

    private void Coordinates(Point to) =>
        _data.Append(SvgMarkup.Number(to.X)).Append(' ').Append(SvgMarkup.Number(_heightMm - to.Y));
}
