using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Raster;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Svg;

/// <summary>Writes the groups and items of one sheet.</summary>
internal sealed class SvgBody
{
    private readonly StringBuilder _text = new();
    private readonly Sheet _sheet;
    private readonly SvgOptions _options;
    private readonly SvgClasses _classes;

    internal SvgBody(Sheet sheet, SvgOptions options, SvgClasses classes)
    {
        _sheet = sheet;
        _options = options;
        _classes = classes;
    }

    internal StringBuilder Write()
    {
        _text.Append("<rect class=\"").Append(_classes.Paper()).Append("\" width=\"").Append(SvgMarkup.Number(_sheet.WidthMm))
            .Append("\" height=\"").Append(SvgMarkup.Number(_sheet.HeightMm)).Append("\"/>\n");
        foreach (SheetGroup group in _sheet.Groups)
        {
            Add(group, 0);
        }

        return _text;
    }

    /// <summary>One item by itself, as a line of markup.</summary>
    internal string Item(SheetItem item)
    {
        _text.Clear();
        Add(item, 0);
        return _text.ToString();
    }

    private void Add(SheetGroup group, int depth)
    {
        string id = SvgMarkup.Escaped($"{_options.PrefixOf(_sheet)}-{group.Id}");
        Indent(depth).Append("<g id=\"").Append(id).Append("\" data-role=\"").Append(group.Name.Role).Append("\">\n");
        Indent(depth + 1).Append("<title>").Append(SvgMarkup.Escaped(ReadersWords.Read(group.Name.Title))).Append("</title>\n");
        if (group.Name.Description is string description)
        {
            Indent(depth + 1).Append("<desc>").Append(SvgMarkup.Escaped(description)).Append("</desc>\n");
        }

        foreach (SheetNode node in group.Content)
        {
            if (node is SheetGroup nested)
            {
                Add(nested, depth + 1);
            }
            else
            {
                Add((SheetItem)node, depth + 1);
            }
        }

        Indent(depth).Append("</g>\n");
    }

    private void Add(SheetItem item, int depth)
    {
        switch (item)
        {
            case SheetArea area:
                AddArea(area, depth);
                break;
            case SheetLine line:
                Shape(depth, _classes.Line(line.Style), line.Runs);
                break;
            case SheetText text when _options.Text == SvgText.Strokes:
                AddStrokes(text, depth);
                break;
            case SheetText text:
                AddText(text, depth);
                break;
            default:
                throw new NotSupportedException($"No SVG for {item.GetType().Name}.");
        }
    }

    private void AddArea(SheetArea area, int depth)
    {
        bool patterned = area.PatternLines.Count + area.PatternDots.Count > 0;
        StrokeRun[] contours = [.. area.Shapes.SelectMany(s => s.Contours).Select(c => new StrokeRun(c.Pieces, true))];
        bool dashed = area.Edge is { IsContinuous: false };
        bool inOne = area.Edge is not null && !patterned && !dashed;
        Shape(depth, _classes.Area(area.Fill) + (inOne ? " " + _classes.Edge(area.Edge!) : ""), contours);
        if (area.PatternLines.Count > 0)
        {
            Shape(depth, _classes.PatternLines(area.Fill), [.. area.PatternLines.Select(l => new StrokeRun([l], false))]);
        }

        if (area.PatternDots.Count > 0)
        {
            double radius = area.Fill.Pattern.StrokeMm / 2;
            Shape(depth, _classes.PatternDots(area.Fill), [.. area.PatternDots.Select(d => new StrokeRun(Contour.Circle(d, radius).Pieces, true))]);
        }

        if (area.Edge is LineStyle edge && !inOne)
        {
            Shape(depth, _classes.Line(edge), [.. area.Shapes.SelectMany(s => s.Contours).SelectMany(c => new SheetLine(c, edge).Runs)]);
        }
    }

    private void AddStrokes(SheetText text, int depth)
    {
        ScriptText? script = ScriptText.Of(text, _options.Font);
        IReadOnlyList<Piece> strokes = script?.Strokes ?? text.Strokes;
        string label = $" aria-label=\"{SvgMarkup.Escaped(text.Text)}\"";
        if (strokes.Count > 0)
        {
            Shape(depth, _classes.Letters(text.Style), StrokeRun.Of(strokes), label);
        }

        if (script is not null)
        {
            SvgPath path = new(_sheet.HeightMm);
            path.Add(script.Outlines);
            Indent(depth).Append("<path class=\"").Append(_classes.Outlines(text.Style)).Append('"').Append(strokes.Count > 0 ? "" : label).Append(" d=\"").Append(path).Append("\"/>\n");
        }
    }

    private void AddText(SheetText text, int depth)
    {
        Point at = text.BaselineAnchor;
        string x = SvgMarkup.Number(at.X);
        string y = SvgMarkup.Number(_sheet.HeightMm - at.Y);
        string turn = FixedPoint.Short(-Angles.DegFromRad(text.Place.TurnRad), 4);
        Indent(depth).Append("<text class=\"").Append(_classes.Text(text.Style)).Append("\" x=\"").Append(x).Append("\" y=\"").Append(y).Append('"');
        string? anchor = text.Place.Along switch { TextAlong.Middle => "middle", TextAlong.End => "end", _ => null };
        if (anchor is not null)
        {
            _text.Append(" text-anchor=\"").Append(anchor).Append('"');
        }

        if (turn is not "0")
        {
            _text.Append(" transform=\"rotate(").Append(turn).Append(' ').Append(x).Append(' ').Append(y).Append(")\"");
        }

        // Renderers fold runs of blanks into one unless instructed otherwise.
        bool blanks = text.Text.Contains("  ", StringComparison.Ordinal) || text.Text.Length != text.Text.Trim().Length;
        _text.Append(blanks ? " xml:space=\"preserve\">" : ">").Append(SvgMarkup.Escaped(text.Text)).Append("</text>\n");
    }

    private void Shape(int depth, string classes, IReadOnlyList<StrokeRun> runs, string attributes = "")
    {
        if (runs.Count == 1 && SvgPath.OnlyCircle(runs[0].Pieces) is Arc circle)
        {
            Indent(depth).Append("<circle class=\"").Append(classes).Append('"').Append(attributes)
                .Append(" cx=\"").Append(SvgMarkup.Number(circle.Centre.X)).Append("\" cy=\"").Append(SvgMarkup.Number(_sheet.HeightMm - circle.Centre.Y))
                .Append("\" r=\"").Append(SvgMarkup.Number(circle.RadiusMm)).Append("\"/>\n");
            return;
        }

        SvgPath path = new(_sheet.HeightMm);
        foreach (StrokeRun run in runs)
        {
            path.Add(run);
        }

        Indent(depth).Append("<path class=\"").Append(classes).Append('"').Append(attributes).Append(" d=\"").Append(path).Append("\"/>\n");
    }

    private StringBuilder Indent(int depth) => _text.Append(' ', depth);
}
